// Minimum gaps that crush no part of the body: EN ISO 13854 (EN 349), as published in the glossary of AUVA, Austria.
// They hold for crushing only; not for impact, shearing or drawing in.

export type BodyPart = 'body' | 'head' | 'leg' | 'foot' | 'toes' | 'arm' | 'hand' | 'finger';

/** Least gap in metres. */
export const leastGap: Readonly<Record<BodyPart, number>> = {
  body: 0.5,
  head: 0.3,
  leg: 0.18,
  foot: 0.12,
  toes: 0.05,
  arm: 0.12,
  hand: 0.1,
  finger: 0.025,
};

/** The parts of the body that a gap which shrinks to `gap` metres can crush, the largest first. */
export function crushed(gap: number): BodyPart[] {
  return (Object.keys(leastGap) as BodyPart[]).filter((part) => gap < leastGap[part]);
}
