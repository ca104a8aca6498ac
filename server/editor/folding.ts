// What can be folded away: blocks, runs of remarks, runs of `use` lines.
import type { Span, Statement } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';

/** A stretch that can be folded: its first line stays; so does its last one where a brace closes it there. */
export interface Folding extends Span {
  readonly kind: 'block' | 'comment' | 'uses';
  readonly keepsLast: boolean;
}

export function foldings(analysis: Analysis): Folding[] {
  const { tree } = analysis.installation.reading;
  const { text } = tree;
  const found: Folding[] = [];
  const put = (start: number, end: number, kind: Folding['kind'], keepsLast = false): void => {
    if (holdsLineEnd(text, start, end)) found.push({ start, end, kind, keepsLast });
  };

  const blocks = (items: readonly Statement[]): void => {
    for (const { start, body } of items) {
      if (body === undefined) continue;
      put(start, body.end, 'block', body.end - 1 > body.start && text.charAt(body.end - 1) === '}');
      blocks(body.items);
    }
  };
  blocks(tree.items);

  let first: Statement | undefined;
  let last: Statement | undefined;
  for (const statement of [...tree.items, undefined]) {
    const isUse = statement?.word?.text === 'use' && statement.body === undefined;
    if (isUse) first ??= statement;
    else {
      if (first !== undefined && last !== undefined && last !== first) put(first.start, last.end, 'uses');
      first = undefined;
    }
    if (isUse) last = statement;
  }

  let run: Span | undefined;
  for (const comment of tree.comments) {
    const isAlone = onlyBlanksBefore(text, comment.start);
    if (run !== undefined && onlyOneLineEndBetween(text, run.end, comment.start)) run = { start: run.start, end: comment.end };
    else {
      if (run !== undefined) put(run.start, run.end, 'comment');
      run = isAlone ? comment : undefined;
    }
  }
  if (run !== undefined) put(run.start, run.end, 'comment');
  return found.sort((a, b) => a.start - b.start || b.end - a.end);
}

const isLineEnd = (code: number): boolean => code === 10 || code === 13;

function holdsLineEnd(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (isLineEnd(text.charCodeAt(at))) return true;
  return false;
}

function onlyBlanksBefore(text: string, offset: number): boolean {
  let at = offset;
  while (at > 0 && !isLineEnd(text.charCodeAt(at - 1))) if (text.charAt(--at).trim() !== '') return false;
  return true;
}

const onlyOneLineEndBetween = (text: string, from: number, to: number): boolean =>
  /^[^\S\r\n]*(?:\r\n|\r|\n)[^\S\r\n]*$/.test(text.slice(from, to));
