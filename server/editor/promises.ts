// What a file promises of itself, and whether it is so: for a view of tests.
import type { Analysis } from '../engine/index.ts';

export interface Promised {
  /** Stays the same while the promise does. */
  readonly id: string;
  readonly label: string;
  readonly start: number;
  readonly end: number;
  readonly kept: boolean;
  /** Why it is not kept. */
  readonly message: string;
}

/** The promises of a file in the order of the text. */
export function promises(analysis: Analysis): Promised[] {
  const { expects, expectsNo } = analysis.installation.reading;
  const broken = new Map<number, string>();
  for (const finding of analysis.findings) if (finding.rule === 'expectation-not-met') broken.set(finding.start, finding.what);
  const found: Promised[] = [];
  const add = (label: string, at: { readonly start: number }, line: { readonly start: number; readonly end: number }): void => {
    const number = found.filter((other) => other.label === label).length;
    const message = broken.get(at.start);
    found.push({
      id: number === 0 ? label : `${label} (${number + 1})`,
      label,
      start: line.start,
      end: line.end,
      kept: message === undefined,
      message: message ?? '',
    });
  };
  for (const { fact, within } of expects) {
    const name = within?.values.find((value) => value.kind === 'word');
    const where =
      within === undefined
        ? ''
        : ` in ${[within.word?.text ?? '', name?.kind === 'word' ? name.text : ''].filter((part) => part !== '').join(' ')}`;
    add(`${fact.rule.text}${where}`, fact.rule, fact.line);
  }
  if (expectsNo !== undefined)
    add(
      expectsNo.gravest === 'note'
        ? 'nothing else is found'
        : expectsNo.gravest === 'warning'
          ? 'no other error or warning'
          : 'no other error',
      expectsNo.line,
      expectsNo.line,
    );
  return found.sort((a, b) => a.start - b.start);
}

/** A quick look whether a text can hold a promise, before it is judged. */
export const mayPromise = (text: string): boolean => /^\s*expects(-no)?\s/m.test(text);
