// Forms to be filled in: what a finding misses, an acceptance of it, and the lines that a block lacks. They say nothing that nobody chose:
// what is left unfilled is itself found, as a value that is missing or a reason that is not given.
import { firstIndex, lineEndIn, type Span, type Statement } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { type Installation, perSubject } from '../model/index.ts';
import { addLine, type Edit, type Finding, indentAt, lineEndOf, lineStartOf, ruleNamed } from '../rules/index.ts';
import { type BlockSpec, blocks, type LineSpec } from '../vocabulary/index.ts';

import { monthsAfter } from './completion.ts';
import { partsToWire } from './fitting.ts';
import { blockSpecOf, blocksAround, type Enclosing, headEnd, statementsOf } from './places.ts';
import { asPlain, asSnippet, blockPieces, linePieces, type Piece, unchosen } from './snippets.ts';

/** Text to be put in at one place, for those who know places to fill and for those who do not. */
export interface Insertion {
  readonly title: string;
  readonly edit: Edit;
  /**
   * The same with its places: `$1`, `${1:…}`. It begins where a line begins: an editor indents what it puts in by what stands
   * before it on its line, and here all of that is in the text already.
   */
  readonly form: Edit;
}

function insertion(text: string, at: { readonly start: number; readonly end: number }, pieces: readonly Piece[]): Omit<Insertion, 'title'> {
  return { edit: { ...at, text: asPlain(pieces) }, form: fromLineStart(text, { ...at, text: asSnippet(pieces) }) };
}

/** The same change, begun at the start of a line. */
function fromLineStart(text: string, edit: Edit): Edit {
  const { start, end } = edit;
  const lineEnd = /^\r?\n/.exec(text.slice(end, end + 2))?.[0];
  // Behind a line is before the next one.
  if (start === end && lineEnd !== undefined && edit.text.startsWith(lineEnd)) {
    const lines = edit.text.slice(lineEnd.length);
    return { start: end + lineEnd.length, end: end + lineEnd.length, text: `${lines}${lines.includes('$0') ? '' : '$0'}${lineEnd}` };
  }
  const from = lineStartOf(text, start);
  return { start: from, end, text: asSnippet([text.slice(from, start)]) + edit.text };
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
  return insertion(text, { start, end }, pieces);
}

const hasBrokenBraces = ({ installation }: Analysis): boolean => isBroken(installation);
const isBroken = perSubject(({ reading }: Installation): boolean =>
  reading.tree.problems.some((problem) => problem.kind.startsWith('brace') || problem.kind === 'nested-too-deep'),
);

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
  const behind = lastOfHead(installation);
  const newLine = lineEndIn(text);
  const at = behind === undefined ? 0 : lineEndOf(text, behind.end);
  const pieces: Piece[] = behind === undefined ? [...line, newLine] : [newLine, ...line];
  return { title, ...insertion(text, { start: at, end: at }, pieces) };
}

/** The forms that add what a finding misses, the likeliest first; none where nobody can say what that would be. */
export function additions(analysis: Analysis, finding: Finding): Insertion[] {
  if (hasBrokenBraces(analysis)) return [];
  const { installation } = analysis;
  switch (finding.rule) {
    case 'panel-missing':
      return newBlock(analysis, 'panel', installation.reading.tree.items.at(-1));
    case 'site-missing':
      return newBlock(
        analysis,
        'site',
        installation.reading.tree.items.findLast((item) => ['language', 'use'].includes(item.word?.text ?? '') && item.body === undefined),
      );
    case 'sensor-not-wired':
      return installation.panels.flatMap((panel) => {
        const sensor = installation.sensors.find(({ nameAt }) => nameAt?.start === finding.start);
        return sensor === undefined || panel.at.body === undefined
          ? []
          : [
              {
                title: `Wire “${sensor.name}” to “${panel.name}”…`,
                ...intoBlock(analysis.text, panel.at, [wireLine(sensor.name)], ['wire']),
              },
            ];
      });
  }
  const block = inHead.has(finding.rule) ? statementAt(analysis, finding.start) : enclosing(analysis, finding.start).at(-1);
  if (block?.spec === undefined) return [];
  const { statement, spec, word } = block;
  if (inHead.has(finding.rule)) return missingInHead(analysis, finding, statement, word, spec);
  const stated = new Set((statement.body?.items ?? []).map((item) => item.word?.text ?? ''));
  const linesOf = (names: readonly string[]): Piece[][] =>
    names.flatMap((name) => {
      const line = (spec.lines as Readonly<Record<string, LineSpec>>)[name];
      return line === undefined || (line.many !== true && stated.has(name)) ? [] : [linePieces(name, line)];
    });
  const add = (names: readonly string[]): Insertion[] => {
    const lines = linesOf(names);
    const title = `Add ${names.map((name) => `“${name}”`).join(', ')} to ${blockTitle(statement, word)}…`;
    return lines.length === 0 ? [] : [{ title, ...intoBlock(analysis.text, statement, lines, []) }];
  };
  if (finding.lacks.length > 0) return add(finding.lacks.filter((name) => !stated.has(name)));
  // How a leaf opens is the writer's to say.
  const lacksItsWay = word === 'leaf' && finding.rule === 'fact-missing' && !stated.has('opens') && !stated.has('slides');
  return lacksItsWay ? [...add(['opens']), ...add(['slides'])] : [];
}

/** Rules that find something missing in the head of a block. */
const inHead: ReadonlySet<string> = new Set(['block-without-body', 'name-missing', 'model-missing']);

/** The statement that begins at an offset or holds it in its head, with what it may hold. */
function statementAt(analysis: Analysis, offset: number): Enclosing | undefined {
  for (const { statement, around } of statementsOf(analysis.installation.reading.tree))
    if (offset >= statement.start && offset <= headEnd(statement)) {
      const outer = around[around.length - 1];
      const word = statement.word?.text ?? '';
      return { statement, word, spec: blockSpecOf(outer?.spec, outer === undefined, word) };
    }
  return undefined;
}

const wireLine = (name: string): Piece[] => [`wire ${name} to `, { key: `wire ${name}` }];

function blockTitle(statement: Statement, word: string): string {
  const name = statement.values.find((value) => value.kind === 'word')?.text;
  return `${word}${name === undefined ? '' : ` “${name}”`}`;
}

/** A whole block, behind a statement or before everything. */
function newBlock({ text }: Analysis, word: 'panel' | 'site', behind: Statement | undefined): Insertion[] {
  const newLine = lineEndIn(text);
  const block = blockPieces(word, blocks[word]).map((piece) => (typeof piece === 'string' ? piece.replaceAll('\n', newLine) : piece));
  const at = behind === undefined ? 0 : lineEndOf(text, behind.end);
  const pieces: Piece[] = behind === undefined ? [...block, newLine, newLine] : [newLine, newLine, ...block];
  return [{ title: `Add a ${word}…`, ...insertion(text, { start: at, end: at }, pieces) }];
}

/** What the head of a block must have and has not: its name, its model, its braces. */
function missingInHead(analysis: Analysis, finding: Finding, statement: Statement, word: string, spec: BlockSpec): Insertion[] {
  const { text, shelf } = analysis;
  const named = statement.values.find((value) => value.kind === 'word');
  const put = (title: string, at: number, pieces: readonly Piece[]): Insertion[] => [
    { title, ...insertion(text, { start: at, end: at }, pieces) },
  ];
  if (finding.rule === 'name-missing')
    return put(`Give this ${word} a name…`, statement.word?.end ?? statement.start, [' ', { key: 'name', shown: 'name' }]);
  if (finding.rule === 'model-missing') {
    if (spec.model === undefined || named === undefined) return [];
    const known = [...((shelf.models as Readonly<Record<string, ReadonlyMap<string, unknown>>>)[spec.model]?.keys() ?? [])].sort();
    const model: Piece = known.length > 0 ? { key: 'model', choices: [unchosen, ...known] } : { key: 'model' };
    return put(`Say of which model ${blockTitle(statement, word)} is…`, named.end, [' : ', model]);
  }
  const indent = indentAt(text, statement.start);
  const pieces = blockPieces(word, spec);
  const body = pieces
    .slice(pieces.indexOf(' {'))
    .map((piece) => (typeof piece === 'string' ? piece.replaceAll('\n', lineEndIn(text) + indent) : piece));
  return put(`Write the braces of ${blockTitle(statement, word)}…`, statement.end, body);
}
/** The last line of what a file starts with. */
const lastOfHead = perSubject(({ reading }: Installation): Statement | undefined =>
  reading.tree.items.findLast((item) => ['language', 'use', 'accept'].includes(item.word?.text ?? '') && item.body === undefined),
);

/** The innermost block around a stretch; an acceptance in it holds for it. */
function innermostHolding(items: readonly Statement[], { start, end }: Span): Statement | undefined {
  const block = items[firstIndex(items, (item) => item.end >= end)];
  return block?.body === undefined || block.word === undefined || block.start > start
    ? undefined
    : (innermostHolding(block.body.items, { start, end }) ?? block);
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
        lines.push(wireLine(it.name));
  }
  if (lines.length === 0) return undefined;
  return {
    title: `Add what ${blockTitle(statement, word)} lacks (${lines.length} ${lines.length === 1 ? 'line' : 'lines'})`,
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
