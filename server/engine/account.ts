// The account of what was judged in a file, as it is told to people and programs.
import { headPlace } from '../model/index.ts';
import { tellerOfHazards, verdictOf } from '../rules/index.ts';
import { type Account, accountOf, type Entry, entryInWords, isDraft } from '../safeguards/index.ts';
import type { Analysis } from './analysis.ts';

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** One thing that is judged, or should be. */
export interface JudgedShown extends Stretch {
  /** “the hinge of “west””. */
  readonly what: string;
  readonly verdict: 'judged' | 'covered' | 'not enough' | 'not covered' | 'not judged';
  /** The words of the facts that are missing; empty where it is judged. */
  readonly lacks: readonly string[];
}

/** A fact that is missing, as one asks for it. */
export interface AskShown extends Stretch {
  /** The word of the line that would state it. */
  readonly fact: string;
  readonly question: string;
  /** The library in whose model it is missing; undefined for the file itself. */
  readonly path: string | undefined;
  /** How much would be judged with it that is not judged without. */
  readonly settles: number;
}

export interface AccountShown {
  /** True where the file says that it is a draft. */
  readonly draft: boolean;
  readonly judged: number;
  readonly of: number;
  readonly open: readonly JudgedShown[];
  /** First what settles most. */
  readonly asks: readonly AskShown[];
}

/** What was judged of a file, and what was not. */
export function accountShown(analysis: Analysis): AccountShown {
  const { installation } = analysis;
  const { entries, open, asks }: Account = accountOf(installation);
  return {
    draft: isDraft(installation),
    judged: entries.length - open.length,
    of: entries.length,
    open: open.map(shown),
    asks: asks.map(({ lack, settles }) => ({
      fact: lack.word,
      question: lack.question,
      path: lack.path,
      settles,
      start: lack.at.start,
      end: lack.at.end,
    })),
  };
}

const shown = (entry: Entry): JudgedShown => ({
  what: entryInWords(entry),
  verdict: entry.lacks.length > 0 ? 'not judged' : 'judged',
  lacks: [...new Set(entry.lacks.map(({ word }) => word))],
  start: entry.at.start,
  end: entry.at.end,
});

/** Everything that was judged of a file or should have been, hazards with what came of it. */
export function fullAccount(analysis: Analysis): readonly JudgedShown[] {
  const { installation, findings, accepted } = analysis;
  const { entries } = accountOf(installation);
  const tell = tellerOfHazards(installation, [...findings, ...accepted]);
  const hazards = new Map<string, JudgedShown['verdict']>();
  const graver: readonly JudgedShown['verdict'][] = ['covered', 'not enough', 'not covered'];
  for (const leaf of installation.leaves)
    for (const judged of tell(leaf)) {
      const { kind } = judged.hazard;
      const key = keyOf(kind === 'reach-through' || kind === 'running-past' ? 'passing' : kind, headPlace(leaf).start);
      const verdict = verdictOf(judged);
      const known = hazards.get(key);
      if (known === undefined || graver.indexOf(verdict) > graver.indexOf(known)) hazards.set(key, verdict);
    }
  return entries.map((entry) => {
    const one = shown(entry);
    const verdict = one.verdict === 'judged' ? hazards.get(keyOf(entry.subject, entry.at.start)) : undefined;
    return verdict === undefined ? one : { ...one, verdict };
  });
}

const keyOf = (subject: string, start: number): string => `${subject} ${start}`;
