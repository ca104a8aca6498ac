// What several rules say of cables and what protects them. No rule of its own.
import type { Most, Rating } from '../figures/current-rating/working.ts';
import type { Source } from '../figures/index.ts';
import type { Cable } from '../model/index.ts';
import { shown } from './numbers.ts';
import { toFact } from './related.ts';
import type { Related, Report } from './rule.ts';

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

/** Where the rating is not known: the most that a cable can carry however it is laid. */
export const mostSource: Source = {
  text: 'current ratings of BS 7671 and IEC 60364-5-52 in the most favourable way of laying it; of thinner conductors by the heat that they lose',
  standing: 'derived',
};

/** What is said of a current that a cable of unknown rating cannot bear; an error where it is surely so. */
export function overMost(
  cable: Cable,
  current: number,
  most: Most,
): Pick<Report, 'severity' | 'source' | 'related'> & { readonly bears: string } {
  const surely = most.derived || current > 1.5 * most.current;
  const area = `${shown((cable.model?.facts.area?.value ?? 0) * 1e6)} mm²`;
  return {
    severity: surely ? 'error' : 'warning',
    source: mostSource,
    related: ratingRelated(cable),
    bears: `${cable.facts.method === undefined ? 'however it is laid' : 'laid so'} a conductor of ${area} bears at most ${shown(most.current)} A${surely ? '' : ' (from memory)'}.`,
  };
}

/** The overload protection at the beginning of a cable: of two devices in a row the smaller one. */
export function protectionOf({
  facts: { breaker, fuse },
}: Cable): NonNullable<Cable['facts']['breaker'] | Cable['facts']['fuse']> | undefined {
  return fuse !== undefined && (breaker === undefined || fuse.rating < breaker.rating) ? fuse : breaker;
}
