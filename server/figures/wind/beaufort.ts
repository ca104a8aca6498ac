// The Beaufort scale, for people: what a wind is called.

/** Least ten-minute mean of each number, 10 m above open ground, m/s: the scale as meteorological services publish it. */
const leastSpeed = [0, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7] as const;

const names = [
  'calm',
  'light air',
  'light breeze',
  'gentle breeze',
  'moderate breeze',
  'fresh breeze',
  'strong breeze',
  'near gale',
  'gale',
  'strong gale',
  'storm',
  'violent storm',
  'hurricane',
] as const;

/** The Beaufort number of a ten-minute mean wind 10 m above open ground (m/s, 0 or above); undefined for anything else. */
export function beaufort(speed: number): number | undefined {
  if (!(speed >= 0) || !Number.isFinite(speed)) return undefined;
  let number = 0;
  // The scale is kept to a tenth of a metre a second, and so is the speed.
  const rounded = Math.round(speed * 10) / 10;
  while (number < 12 && rounded >= (leastSpeed[number + 1] as number)) number++;
  return number;
}

/** "Beaufort 5, a fresh breeze". */
export function beaufortInWords(speed: number): string | undefined {
  const number = beaufort(speed);
  if (number === undefined) return undefined;
  const name = names[number] as string;
  return `Beaufort ${number}, ${number === 0 || number === 1 ? name : 'a ' + name}`;
}
