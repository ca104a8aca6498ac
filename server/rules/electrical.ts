// What several rules say of cables and what protects them. No rule of its own.
import type { Rating } from '../figures/current-rating/working.ts';
import type { Source } from '../figures/index.ts';
import type { Cable } from '../model/index.ts';
import { shown } from './numbers.ts';
import { toFact } from './related.ts';
import type { Related } from './rule.ts';

export const ratingSource: Source = { text: 'BS 7671, 433.1 and Appendix 4, Tables 4D1A, 4D2A and 4C1', standing: 'published' };
const ratingByMemory: Source = { text: 'current ratings of BS 7671, IEC 60364-5-52 or the NEC, from memory', standing: 'from memory' };

export const ratingSourceText = (rating: Rating): Source => (rating.standing === 'published' ? ratingSource : ratingByMemory);

/** How a rating comes about, for the end of a sentence. */
export function ratingInWords(rating: Rating): string {
  const parts = [`${shown(rating.tabulated)} A in the table`];
  if (rating.ca !== 1) parts.push(`${shown(rating.ca)} for ${shown(rating.ambient)} °C`);
  if (rating.cg !== 1) parts.push(`${shown(rating.cg)} for ${rating.circuits} circuits together`);
  return ` (${parts.join(', ')}${rating.standing === 'from memory' ? ', from memory' : ''}${rating.atLeast ? '; its insulation may bear more' : ''})`;
}

export const ratingRelated = ({ facts: { method, ambient, grouped } }: Cable): readonly Related[] => [
  ...toFact('how it is laid', method),
  ...toFact('how warm it is there', ambient),
  ...toFact('what it is laid with', grouped),
];

/** The overload protection at the beginning of a cable: of two devices in a row the smaller one. */
export function protectionOf({
  facts: { breaker, fuse },
}: Cable): NonNullable<Cable['facts']['breaker'] | Cable['facts']['fuse']> | undefined {
  return fuse !== undefined && (breaker === undefined || fuse.rating < breaker.rating) ? fuse : breaker;
}
