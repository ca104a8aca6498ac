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

const bodyParts = Object.keys(leastGap) as readonly BodyPart[];

/** The parts of the body that a gap which shrinks to `gap` metres can crush, the largest first. */
export function crushed(gap: number): BodyPart[] {
  return bodyParts.filter((part) => gap < leastGap[part]);
}

/** A gap in which nothing can be caught because nothing fits into it, metres: ASR A1.7, section 6. */
export const closedGap = 0.008;

/**
 * The widest gap that a part of the body does not fit into, metres: fingers by ASR A1.7, hand and arm by the row of
 * EN ISO 13857 from which an arm passes (20 mm), body and head by the end of that table (120 mm); feet and legs, for which
 * there is nothing published at hand, with the hand.
 */
const tooNarrow: Readonly<Record<BodyPart, number>> = {
  body: 0.12,
  head: 0.12,
  leg: 0.02,
  foot: 0.02,
  toes: 0.02,
  arm: 0.02,
  hand: 0.02,
  finger: closedGap,
};

/** The parts of the body that fit into a gap of `greatest` metres and that it crushes when it shrinks to `least`. */
export function caught(least: number, greatest: number): BodyPart[] {
  return bodyParts.filter((part) => least < leastGap[part] && greatest > tooNarrow[part] + 1e-9);
}

/** Whether it catches any. */
export function catches(least: number, greatest: number): boolean {
  return bodyParts.some((part) => least < leastGap[part] && greatest > tooNarrow[part] + 1e-9);
}

/** “a hand, an arm and toes”. */
export function partsInWords(parts: readonly BodyPart[]): string {
  const words = parts.map((part) => (part === 'toes' ? part : part === 'arm' ? 'an arm' : `a ${part}`));
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) as string}`;
}
