// The account of what was judged: for every leaf and hazard, every way of commanding, every panel that people rely on. What could not be
// judged stands in it with the facts that are lacking, so that no silence is taken for a verdict.
import { type Installation, perSubject } from '../../model/index.ts';
import { commandsOf } from '../commands.ts';
import { type Entry, type Grade, type Lack, none, type Tell } from './entries.ts';
import { topics } from './topics.ts';

export interface Account {
  /** Everything that is judged or should be, in the order of the topics. */
  readonly entries: readonly Entry[];
  /** Those of them that are not judged. */
  readonly open: readonly Entry[];
  /** What is lacking, first what settles most; each fact once. */
  readonly asks: readonly Ask[];
}

export interface Ask {
  readonly lack: Lack;
  /** How many entries lack it. */
  readonly settles: number;
  /** The gravest of these. */
  readonly grade: Grade;
}

/** True where the file says that it is a draft: what lacks is then still to come. */
export const isDraft = ({ site }: Installation): boolean => site?.facts.stage?.value === 'draft';

export const accountOf = perSubject((installation: Installation): Account => {
  if (installation.kind !== 'site') return empty;
  const entries: Entry[] = [];
  let open: Entry[] | undefined;
  const tell: Tell = (subject, of, at, lacks, grade = 'warning') => {
    const entry: Entry = { subject, of, at, lacks, grade };
    entries.push(entry);
    if (lacks.length > 0) (open ??= []).push(entry);
  };
  const situation = { grave: isGrave(installation) };
  for (const topic of topics) topic(installation, tell, situation);
  return { entries, open: open ?? none, asks: open === undefined ? none : asksOf(open) };
});

const empty: Account = { entries: none, open: none, asks: none };

/** The public may be near, or the gate closes by itself. */
function isGrave(installation: Installation): boolean {
  return (
    (installation.site?.facts.users?.value ?? 'public') === 'public' || commandsOf(installation).some(({ kind }) => kind === 'automatic')
  );
}

const graver: Readonly<Record<Grade, number>> = { note: 0, warning: 1, error: 2 };

function asksOf(open: readonly Entry[]): readonly Ask[] {
  const byFact = new Map<string, { lack: Lack; settles: number; grade: Grade }>();
  for (const { lacks, grade } of open)
    for (const lack of lacks) {
      const key = `${lack.path ?? ''}\n${lack.at.start}\n${lack.word}`;
      const known = byFact.get(key);
      if (known === undefined) byFact.set(key, { lack, settles: 1, grade });
      else {
        known.settles++;
        if (graver[grade] > graver[known.grade]) known.grade = grade;
      }
    }
  // What is asked first settles most; of the same weight, what is graver, then the order of the topics.
  return [...byFact.values()].sort((a, b) => b.settles - a.settles || graver[b.grade] - graver[a.grade]);
}
