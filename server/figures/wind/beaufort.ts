// The Beaufort scale, for people: what a wind is called.

/** Least ten-minute mean of each number, 10 m above open ground, m/s. Source: World Meteorological Organization, the Beaufort scale. */
const leastSpeed = [0, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7] as const;

const names = [
  'calm',
  'light air',
  'a light breeze',
  'a gentle breeze',
  'a moderate breeze',
  'a fresh breeze',
  'a strong breeze',
  'a near gale',
  'a gale',
  'a strong gale',
  'a storm',
  'a violent storm',
  'a hurricane',
] as const;

/** The Beaufort number of a ten-minute mean wind 10 m above open ground (m/s, 0 or above); undefined for anything else. */
export function beaufort(speed: number): number | undefined {
  if (!(speed >= 0) || !Number.isFinite(speed)) return undefined;
  // The scale is kept to a tenth of a metre a second, and so is the speed.
  const rounded = Math.round(speed * 10) / 10;
  return leastSpeed.findLastIndex((least) => rounded >= least);
}

/** "Beaufort 5, a fresh breeze". */
export function beaufortInWords(speed: number): string | undefined {
  const number = beaufort(speed);
  return number === undefined ? undefined : `Beaufort ${number}, ${names[number] ?? ''}`;
}
