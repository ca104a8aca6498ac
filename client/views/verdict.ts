// A verdict in a few words. Never “safe”: what was not stated was not judged.

export interface Counts {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
}

export interface Verdict {
  readonly icon: string;
  readonly text: string;
  readonly tooltip: string;
  readonly ground: 'error' | 'warning' | undefined;
}

/** How much of what protects people could be judged. */
export interface Judged {
  readonly draft: boolean;
  readonly judged: number;
  readonly of: number;
  /** The question whose answer settles most. */
  readonly question?: string;
}

/** `counts` is absent while the language server does not run, `judged` where the file is no site or nobody knows yet. */
export function verdictOf(counts: Counts | undefined, judged?: Judged): Verdict {
  const verdict = foundOf(counts);
  if (counts === undefined || judged === undefined || judged.of === 0) return verdict;
  const { draft, judged: done, of, question } = judged;
  const open = of - done;
  return {
    ...verdict,
    icon: open > 0 && verdict.icon === 'pass' ? 'question' : verdict.icon,
    text: `${draft ? 'DRAFT, ' : ''}${verdict.text}, judged ${done} of ${of}`,
    tooltip:
      open === 0 ? verdict.tooltip : `${verdict.tooltip} Not judged: ${open} of ${of}.${question === undefined ? '' : ` ${question}`}`,
  };
}

function foundOf(counts: Counts | undefined): Verdict {
  if (counts === undefined)
    return {
      icon: 'debug-disconnect',
      text: 'not running',
      tooltip: 'The language server does not run, so nothing is judged. Click to start it again.',
      ground: 'warning',
    };
  const { error, warning, note } = counts;
  const parts = [many(error, 'error'), many(warning, 'warning'), many(note, 'note')].filter((part) => part !== '');
  if (parts.length === 0)
    return {
      icon: 'pass',
      text: 'nothing found',
      tooltip: 'No rule finds anything in this file. Only what is stated is judged: the forces still have to be measured on site.',
      ground: undefined,
    };
  const icon = error > 0 ? 'error' : warning > 0 ? 'warning' : 'info';
  const lead =
    error > 0 ? 'Somebody can be hurt, or it cannot work.' : warning > 0 ? 'Some things want a second look.' : 'Nothing but notes.';
  return { icon, text: parts.join(', '), tooltip: `${lead} Click to see each finding.`, ground: error > 0 ? 'error' : undefined };
}

/** For a text of the language that nobody works on: an older version, or what a program has put out. */
export const notJudged: Verdict = {
  icon: 'circle-slash',
  text: 'not judged',
  tooltip: 'This text is only shown, as an older version of a file is, so no rule is run over it. Open the file itself to have it judged.',
  ground: undefined,
};

const many = (count: number, what: string): string => (count === 0 ? '' : count === 1 ? `1 ${what}` : `${count} ${what}s`);
