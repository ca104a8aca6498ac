// A sliding leaf on a rack: speed, force to keep it moving, distance to stop it.
//
// SI throughout: m, kg, s, N, rad, rad/s. Anything impossible gives undefined.

/** Standard gravity in m/s² (SI Brochure, 9th edition, 2019). */
const gravity = 9.80665;

/**
 * Speed of a rack in m/s, with the sign of the shaft speed: module (m, above 0) · teeth (whole, 1 or more) · shaft speed
 * (rad/s) / 2. It is the textbook's π·m·z·n/60 with n in turns a minute.
 */
export function rackSpeed(module: number, teeth: number, shaftSpeed: number): number | undefined {
  if (!Number.isFinite(module) || !(module > 0) || !Number.isInteger(teeth) || teeth < 1 || !Number.isFinite(shaftSpeed)) return undefined;
  return (module * teeth * shaftSpeed) / 2;
}

/**
 * Force in N that keeps a sliding leaf moving at even speed: m·g·(c·cos α + sin α). Mass in kg (above 0), rolling
 * coefficient without unit (0 or above), slope α in radians, above −π/2 and below π/2, positive where the leaf moves
 * uphill. A result below 0 means that the leaf runs away downhill and has to be held back by that much.
 */
export function travelForce(mass: number, rollingCoefficient: number, slope: number): number | undefined {
  if (!Number.isFinite(mass) || !(mass > 0) || !Number.isFinite(rollingCoefficient) || rollingCoefficient < 0) return undefined;
  if (!(Math.abs(slope) < Math.PI / 2)) return undefined;
  return mass * gravity * (rollingCoefficient * Math.cos(slope) + Math.sin(slope));
}

/**
 * Distance in m from the moment something is noticed to standstill: v·t + v²/(2a). Speed in m/s and reaction time in s
 * (0 or above), deceleration in m/s² (above 0, taken as even).
 */
export function stoppingDistance(speed: number, reactionTime: number, deceleration: number): number | undefined {
  if (!Number.isFinite(speed) || speed < 0 || !Number.isFinite(reactionTime) || reactionTime < 0) return undefined;
  if (!Number.isFinite(deceleration) || !(deceleration > 0)) return undefined;
  return speed * reactionTime + (speed * speed) / (2 * deceleration);
}
