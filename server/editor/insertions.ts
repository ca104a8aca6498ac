// Forms to be filled in: an acceptance of a finding, and the lines that a block lacks. They say nothing that nobody chose:
// what is left unfilled is itself found, as a value that is missing or a reason that is not given.
import type { Span, Statement } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { addLine, type Edit, type Finding, ruleNamed } from '../rules/index.ts';
import type { LineSpec } from '../vocabulary/index.ts';
import { monthsAfter } from './completion.ts';
import { partsToWire } from './fitting.ts';
import { blockSpecOf, blocksAround, type Enclosing, headEnd, statementsOf } from './places.ts';
import { asPlain, asSnippet, linePieces, type Piece } from './snippets.ts';

/** Text to be put in at one place, for those who know places to fill and for those who do not. */
export interface Insertion {
  readonly title: string;
  readonly edit: Edit;
  /** The text of the edit with its places: `$1`, `${1:…}`. */
  readonly snippet: string;
}

/** Stands for the new line while its place is worked out. */
const here = '\u0000';

/** Puts lines into a block, behind its last one of the `like` words, each with the indentation of the block. */
function intoBlock(
  text: string,
  block: Statement,
  lines: readonly (readonly Piece[])[],
  like: readonly string[],
): Omit<Insertion, 'title'> {
  const { start, end, text: frame } = addLine(text, block, here, like);
  const [lead = '', tail = ''] = frame.split(here);
  const indent = lead.slice(Math.max(lead.lastIndexOf('\n'), lead.lastIndexOf('\r')));
  const pieces: Piece[] = [lead];
  lines.forEach((line, i) => pieces.push(...(i === 0 ? [] : [(lead.includes('\r\n') ? '\r' : '') + indent]), ...line));
  pieces.push(tail);
  return { edit: { start, end, text: asPlain(pieces) }, snippet: asSnippet(pieces) };
}

const hasBrokenBraces = ({ installation }: Analysis): boolean =>
  installation.reading.tree.problems.some((problem) => problem.kind.startsWith('brace') || problem.kind === 'nested-too-deep');

/** Months that an acceptance holds unless its writer says otherwise. */
const acceptedFor = 6;

/**
 * An acceptance of a finding, in the innermost block that holds it, with its reason and its initials still to be written;
 * undefined where the rule cannot be overruled, or the text is too broken to say where.
 */
export function acceptance(analysis: Analysis, finding: Finding, today: string): Insertion | undefined {
  const may = ruleNamed(finding.rule)?.acceptable;
  if (may === undefined || may === false || (may === 'warnings' && finding.severity === 'error') || hasBrokenBraces(analysis))
    return undefined;
  const { text, installation } = analysis;
  const { tree } = installation.reading;
  const line: Piece[] = [
    `accept ${finding.rule} because `,
    { key: 'reason', quoted: 'form' },
    ' by ',
    { key: 'initials', quoted: 'form' },
    ' until ',
    { key: 'end', shown: monthsAfter(today, acceptedFor) },
  ];
  const title = `Accept “${finding.rule}” here, with a reason…`;
  const block = innermostHolding(tree.items, finding);
  if (block !== undefined) return { title, ...intoBlock(text, block, [line], ['accept']) };
  // In no block: it then holds for the whole file, behind what a file starts with.
  const behind = tree.items.findLast((item) => ['language', 'use', 'accept'].includes(item.word?.text ?? '') && item.body === undefined);
  const newLine = /\r\n/.test(text) ? '\r\n' : '\n';
  const at = behind === undefined ? 0 : lineEnd(text, behind.end);
  const pieces: Piece[] = behind === undefined ? [...line, newLine] : [newLine, ...line];
  return { title, edit: { start: at, end: at, text: asPlain(pieces) }, snippet: asSnippet(pieces) };
}

const lineEnd = (text: string, offset: number): number => {
  let at = offset;
  while (at < text.length && text.charAt(at) !== '\n' && text.charAt(at) !== '\r') at++;
  return at;
};

/** The innermost block around a stretch; an acceptance in it holds for it. */
function innermostHolding(items: readonly Statement[], { start, end }: Span): Statement | undefined {
  const block = items.find((item) => item.body !== undefined && item.word !== undefined && item.start <= start && item.end >= end);
  return block === undefined ? undefined : (innermostHolding(block.body?.items ?? [], { start, end }) ?? block);
}

/** Lines that the block around an offset lacks, as its rules say: each by its word, its values still to be written. */
export function missingLines(analysis: Analysis, offset: number): Insertion | undefined {
  if (hasBrokenBraces(analysis)) return undefined;
  const { text, installation } = analysis;
  const around = enclosing(analysis, offset);
  const block = around[around.length - 1];
  if (block?.spec === undefined) return undefined;
  const { statement, spec, word } = block;
  const head = { start: statement.start, end: headEnd(statement) };
  const lacking = new Set(
    analysis.findings.filter((finding) => finding.start >= head.start && finding.end <= head.end).flatMap((finding) => finding.lacks),
  );
  const stated = new Set((statement.body?.items ?? []).map((item) => item.word?.text ?? ''));
  // Whether a leaf swings or slides is the writer's to say; where its drive is known, the drive has said it.
  if (word === 'leaf' && !stated.has('opens') && !stated.has('slides')) {
    const kind = installation.leaves.find((leaf) => leaf.at === statement)?.drives[0]?.model?.facts.kind?.value;
    if (kind !== undefined) lacking.add(kind === 'rack' ? 'slides' : 'opens');
  }
  const lines: (readonly Piece[])[] = Object.entries<LineSpec>(spec.lines).flatMap(([line, of]) =>
    lacking.has(line) && (of.many === true || !stated.has(line)) ? [linePieces(line, of)] : [],
  );
  if (word === 'panel' && installation.panels.length === 1) {
    const unwired = new Set(analysis.findings.filter((finding) => finding.rule === 'sensor-not-wired').map((finding) => finding.start));
    for (const it of installation.sensors)
      if (
        it.nameAt !== undefined &&
        unwired.has(it.nameAt.start) &&
        partsToWire(installation, { kind: 'sensor', it }, () => false).includes('signal')
      )
        lines.push([`wire ${it.name} to `, { key: `wire ${it.name}` }]);
  }
  if (lines.length === 0) return undefined;
  const name = statement.values.find((value) => value.kind === 'word')?.text;
  return {
    title: `Add what ${word}${name === undefined ? '' : ` “${name}”`} lacks (${lines.length} ${lines.length === 1 ? 'line' : 'lines'})`,
    ...intoBlock(text, statement, lines, []),
  };
}

/** The blocks around an offset; a caret on the header of a block is in it. */
function enclosing(analysis: Analysis, offset: number): readonly Enclosing[] {
  const { tree } = analysis.installation.reading;
  for (const { statement, around } of statementsOf(tree))
    if (statement.body !== undefined && offset >= statement.start && offset <= statement.body.start) {
      const outer = around[around.length - 1];
      const word = statement.word?.text ?? '';
      return [...around, { statement, word, spec: blockSpecOf(outer?.spec, outer === undefined, word) }];
    }
  return blocksAround(tree, offset);
}
