/**
 * Time that a vehicle needs to be clear of the gate: its length and the zone behind the gate line, at its speed.
 * Lengths in metres, speed in metres a second; seconds. Undefined for a speed that is not above zero.
 */
export function clearanceTime(vehicleLength: number, zone: number, speed: number): number | undefined {
  if (!(speed > 0) || !(vehicleLength >= 0) || !(zone >= 0)) return undefined;
  return (vehicleLength + zone) / speed;
}
