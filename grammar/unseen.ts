// Characters that show nothing: two names that differ only in them read alike.

/**
 * From and to, in order. Those that Unicode calls Default_Ignorable_Code_Point (DerivedCoreProperties.txt; a test holds this list
 * against it), and four kinds that it does not, though they show nothing either: the braille pattern without dots, the marks
 * around annotations, the joiners of hieroglyphs, the notehead that is none.
 */
export const unseenRanges: readonly (readonly [from: number, to: number])[] = [
  [0xad, 0xad],
  [0x34f, 0x34f],
  [0x61c, 0x61c],
  [0x115f, 0x1160],
  [0x17b4, 0x17b5],
  [0x180b, 0x180f],
  [0x200b, 0x200f],
  [0x202a, 0x202e],
  [0x2060, 0x206f],
  [0x2800, 0x2800],
  [0x3164, 0x3164],
  [0xfe00, 0xfe0f],
  [0xfeff, 0xfeff],
  [0xffa0, 0xffa0],
  [0xfff0, 0xfffb],
  [0x13430, 0x1343f],
  [0x1bca0, 0x1bca3],
  [0x1d159, 0x1d159],
  [0x1d173, 0x1d17a],
  [0xe0000, 0xe0fff],
];

const beyond = unseenRanges.filter(([from]) => from > 0xffff);

/** True for a character of two units that shows nothing. */
export const isUnseenPair = (code: number): boolean => beyond.some(([from, to]) => code >= from && code <= to);

const unseen = new RegExp(`[${unseenRanges.map(([from, to]) => `\\u{${from.toString(16)}}-\\u{${to.toString(16)}}`).join('')}]+`, 'gu');

/** A text as it is seen. */
export const withoutUnseen = (text: string): string => text.replace(unseen, '');
