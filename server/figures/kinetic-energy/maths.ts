// The energy of a moving leaf.
//
// SI throughout: kg, m, kg·m², rad/s, J. Anything impossible gives undefined. Source: any mechanics textbook, such as
// Serway and Jewett, *Physics for Scientists and Engineers*, chapters 7 and 10.

const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;
const above = (value: number): boolean => Number.isFinite(value) && value > 0;

/** Kinetic energy in J of a turning leaf: ½·I·ω², inertia in kg·m² (0 or above), angular speed in rad/s, either way. */
export function kineticEnergy(inertia: number, angularSpeed: number): number | undefined {
  return amount(inertia) && Number.isFinite(angularSpeed) ? (inertia * angularSpeed * angularSpeed) / 2 : undefined;
}

/** Kinetic energy in J of a sliding leaf: ½·m·v², mass in kg (above 0), speed in m/s, either way. */
export function kineticEnergyLinear(mass: number, speed: number): number | undefined {
  return above(mass) && Number.isFinite(speed) ? (mass * speed * speed) / 2 : undefined;
}
