// What stands above a leaf, a drive, a panel or the site: what is found in it, and how near it comes to a limit.
import type { Span, Statement } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { spareInWords } from '../engine/inside.ts';
import { type Finding, type Margin, marginsOf } from '../rules/index.ts';
import { type Reader, readerOf } from '../vocabulary/index.ts';

export interface Lens {
  /** The head of the block that it stands above. */
  readonly at: Span;
  readonly word: string;
  /** `1 error, 2 warnings · lag when opening 0.4 s to spare`. */
  readonly title: () => string;
}

const bearing: ReadonlySet<string> = new Set(['site', 'leaf', 'drive', 'panel']);

/** A lens for each such block that is written with its braces, in the order of the text. */
export function lenses(analysis: Analysis): Lens[] {
  const reader = readerOf(analysis.installation);
  const found: Lens[] = [];
  for (const statement of analysis.installation.reading.tree.items) {
    const word = statement.word;
    if (word === undefined || statement.body === undefined || !bearing.has(word.text)) continue;
    found.push({
      at: { start: statement.start, end: word.end },
      word: word.text,
      title: () => titleOf(analysis, statement, word.text, reader),
    });
  }
  return found;
}

function titleOf(analysis: Analysis, statement: Statement, word: string, reader: Reader): string {
  const isSite = word === 'site';
  const isInside = (at: Span): boolean => isSite || (at.start >= statement.start && at.end <= statement.end);
  const first = statement.values[0];
  const name = first?.kind === 'word' ? first.text : '';
  // Of a leaf, a drive or a panel: what is about it, wherever it is said.
  const isAbout = ({ held, subject, at }: Margin): boolean =>
    isInside(at) || (held.figure?.startsWith(`${word}.`) === true && (subject === name || subject.startsWith(`${name}/`)));
  const margin = tightest(marginsOf(analysis.installation).filter(isAbout));
  return [counted(analysis.findings.filter(isInside)), margin === undefined ? '' : inWords(margin, reader, isSite)]
    .filter((part) => part !== '')
    .join(' · ');
}

/** `1 error, 2 warnings`; `no findings` says no more than that. */
export function counted(findings: readonly Finding[]): string {
  const count = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) count[severity]++;
  const parts = (['error', 'warning', 'note'] as const).flatMap((severity) =>
    count[severity] === 0 ? [] : [`${count[severity]} ${severity}${count[severity] === 1 ? '' : 's'}`],
  );
  return parts.length === 0 ? 'no findings' : parts.join(', ');
}

/** The margin of which the greatest share is used; those of rules that give errors before the others. */
export function tightest(margins: readonly Margin[]): Margin | undefined {
  let best: Margin | undefined;
  for (const margin of margins) if (best === undefined || compare(margin, best) < 0) best = margin;
  return best;
}

const usedOf = ({ used, kept }: Margin): number => used ?? (kept ? 0 : Number.POSITIVE_INFINITY);
const compare = (a: Margin, b: Margin): number =>
  Number(a.kept) - Number(b.kept) || Number(b.rule.severity === 'error') - Number(a.rule.severity === 'error') || usedOf(b) - usedOf(a);

const inWords = (margin: Margin, reader: Reader, withSubject: boolean): string =>
  `${withSubject && margin.subject !== '' ? `${margin.subject} ` : ''}${margin.held.name} ${spareInWords(margin, reader)}`;
