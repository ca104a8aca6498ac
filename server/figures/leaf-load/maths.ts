// What a drive has to overcome besides inertia: gravity on hinges that lean or rise, and on a sloping track.
//
// SI throughout: kg, m, rad, N, N·m. Anything impossible gives undefined.

/** Standard gravity in m/s² (SI Brochure, 9th edition, 2019). */
export const gravity = 9.80665;

const above = (value: number): boolean => Number.isFinite(value) && value > 0;
const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;

/**
 * Moment in N·m that pulls a leaf on a leaning hinge axis back to its lowest position: m·g·(w/2)·sin β·sin θ, with θ the
 * angle from there (rad, any). Mass in kg and width in m above 0, tilt β in rad from 0 to below π/2.
 */
export function tiltedHingeMoment(mass: number, width: number, tilt: number, fromLowest: number): number | undefined {
  if (!above(mass) || !above(width) || !(tilt >= 0 && tilt < Math.PI / 2) || !Number.isFinite(fromLowest)) return undefined;
  return ((mass * gravity * width) / 2) * Math.sin(tilt) * Math.sin(fromLowest);
}

/** How far the centre of such a leaf rises from its lowest position, m: (w/2)·sin β·(1 − cos θ). */
export function tiltedHingeRise(width: number, tilt: number, fromLowest: number): number | undefined {
  if (!above(width) || !(tilt >= 0 && tilt < Math.PI / 2) || !Number.isFinite(fromLowest)) return undefined;
  return (width / 2) * Math.sin(tilt) * (1 - Math.cos(fromLowest));
}

/** Moment in N·m of rising hinges that lift a leaf of `mass` (kg) evenly by `rise` (m, 0 or above) over `travel` (rad): m·g·h/Θ. */
export function risingHingeMoment(mass: number, rise: number, travel: number): number | undefined {
  return above(mass) && amount(rise) && above(travel) ? (mass * gravity * rise) / travel : undefined;
}

/** Energy in J that rising hinges store: m·g·h. */
export function risingHingeEnergy(mass: number, rise: number): number | undefined {
  return above(mass) && amount(rise) ? mass * gravity * rise : undefined;
}
