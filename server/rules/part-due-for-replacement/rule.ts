import { chainOf, missionTime, type Wearing } from '../../figures/safety-function/working.ts';
import { daysBetween } from '../../vocabulary/index.ts';
import { shown } from '../numbers.ts';
import { installationRule, type Report } from '../rule.ts';
import { quoted } from '../words.ts';

const daysOfYear = 365.25;

export const rule = installationRule({
  name: 'part-due-for-replacement',
  severity: 'warning',
  title: 'A part of a safety function wears out before the gate does, or is due to be replaced.',
  why: 'When a tenth of such parts have failed, the rest fail faster and faster, and the numbers that the safety function was reckoned with no longer hold.',
  remedy:
    'Write the replacement into the maintenance plan; once it is replaced, state when, with “fitted”. Or choose a part that lasts longer.',
  source: { text: 'EN ISO 13849-1, Annex C (the 20 years for which safety parts are to serve from memory)', standing: 'from memory' },
  acceptable: true,
  check: ({ functions }, report, asOf) => {
    let told: Set<number> | undefined;
    for (const of of functions)
      for (const part of chainOf(of).wearing) {
        const said = saidOf(part, asOf);
        if (said === undefined || told?.has(part.at.start) === true) continue;
        (told ??= new Set()).add(part.at.start);
        report(said);
      }
  },
});

function saidOf(part: Wearing, asOf: string): Report | undefined {
  const life = Math.min(part.years, missionTime);
  const served = part.since === undefined ? 0 : (daysBetween(part.since, asOf) ?? 0);
  const isDue = served > life * daysOfYear;
  if (!isDue && part.years >= missionTime) return undefined;
  const memory = part.isFromMemory ? ' (its B10D from memory)' : '';
  const wears = `${quoted(part.what)} is to be replaced after ${shown(part.years)} years of so many cycles${memory}`;
  const mission = `${quoted(part.what)} has served for more than the ${missionTime} years for which safety parts are meant (from memory)`;
  if (isDue) return { at: part.at, what: `${part.years < missionTime ? wears : mission}; it has been in use since ${part.since}.` };
  return {
    at: part.at,
    severity: 'note',
    what: `${wears}, sooner than the ${missionTime} years for which safety parts are meant to serve (from memory).`,
  };
}
