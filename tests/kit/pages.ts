// Reads the pages of rules and figures and runs what stands in them. A page is the manual and a test at once.
//
// Fenced blocks of a rule's page, by their info string:
//   gate flagged [N…] [repeated K]   the page's own rule finds something in it, on exactly these lines:
//                                    those that end in `# flagged` (`# flagged twice`: two findings start there);
//                                    the line below one that says only `# flagged below`;
//                                    or, where a comment would spoil the example, lines N… of the info string.
//   gate fixed                       the text of the flagged block before it once the first fix of each finding of that rule is applied
//   gate sound [repeated K]          the rule finds nothing in it
//   says                             what the page's rule says of the flagged block before it, as `saidOf` writes it
//   figures                          of a figure's page: the values that the block before it gives, `ID VALUE UNIT`
//   working                          what goes into the figures of the fence before it, as `workingOf` writes it
//   gate file PATH [repeated K]      another file for the block that follows, by its path from examples/sound/; or K of them: `<N>` in
//                                    path and text is 1, 2 … K, and `<N+1>` the next number
// An example whose first line is `# from …` shows only what differs from another text: derived.ts says how.
// `repeated K` writes the block K times over. `<U+200B>` stands for that character, which a page could not show.
// A first line `# as of 2026-11-25` (below `# from …`) sets the day. Blocks are judged as examples/sound/page.gate; `use` lines reach the
// real files under examples/.
import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { positionAt } from '../../grammar/index.ts';
import { type Analysis, type ReadResult, Workspace } from '../../server/engine/index.ts';
import type { Installation } from '../../server/model/index.ts';
import type { Edit, Rule } from '../../server/rules/index.ts';
import { expander } from './derived.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url))
  .replaceAll('\\', '/')
  .replace(/\/$/, '');
const examples = realpathSync(`${root}/examples`).replaceAll('\\', '/');
/** The file that a block of a page is judged as; none of that name is on the disk. */
export const pagePath = `${examples}/sound/page.gate`;
const defaultDay = '2026-11-25';

export interface Fence {
  readonly info: readonly string[];
  readonly text: string;
  /** Line of the page on which the fence opens, from 1. */
  readonly line: number;
}

export interface Page {
  readonly path: string;
  readonly heading: string;
  /** The text under each heading of the second level. */
  readonly sections: ReadonlyMap<string, string>;
  readonly text: string;
  readonly fences: readonly Fence[];
}

export interface Block {
  readonly kind: 'flagged' | 'fixed' | 'sound' | 'figures-input';
  readonly text: string;
  /** Whether the page shows only what differs from another text. */
  readonly isDerived: boolean;
  readonly line: number;
  readonly asOf: string;
  /** Other files that it can use, by absolute path. */
  readonly files: ReadonlyMap<string, string>;
  /** Lines on which a finding starts, from 1; a line with two findings stands twice. */
  readonly expected: readonly number[];
}

/** Folders of a room that hold a file of that name. */
export function foldersWith(room: 'rules' | 'figures', file: string): string[] {
  const folder = join(root, 'server', room);
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, file)))
    .map((entry) => entry.name)
    .sort();
}

export function readPage(room: 'rules' | 'figures', name: string): Page {
  const path = `server/${room}/${name}/page.md`;
  const full = join(root, path);
  return parsePage(path, existsSync(full) ? readFileSync(full, 'utf8') : '');
}

export function parsePage(path: string, text: string): Page {
  const sections = new Map<string, string>();
  const fences: Fence[] = [];
  let heading = '';
  let section = '';
  let open: { info: string[]; lines: string[]; line: number } | undefined;
  text.split(/\r?\n/).forEach((line, i) => {
    if (open !== undefined) {
      if (line.trim() === '```') {
        fences.push({ info: open.info, text: open.lines.join('\n') + '\n', line: open.line });
        open = undefined;
      } else open.lines.push(line);
      return;
    }
    const fence = /^```(\S.*)?$/.exec(line);
    if (fence !== null) open = { info: (fence[1] ?? '').trim().split(/\s+/), lines: [], line: i + 1 };
    else if (line.startsWith('# ')) heading ||= line.slice(2).trim();
    else if (line.startsWith('## ')) sections.set((section = line.slice(3).trim()), '');
    else if (section !== '') sections.set(section, sections.get(section) + line + '\n');
  });
  if (open !== undefined) throw new Error(`${path}: the block of line ${open.line} is not closed`);
  return { path, heading, sections, text, fences };
}

/** The text of a base site. */
export const baseSite = (name: string): string =>
  readFileSync(join(root, 'examples/bases', `${name}.gate`), 'utf8').replaceAll('\r\n', '\n');

/** The `gate` blocks of a page, each with the files that stand before it. */
export function blocksOf(page: Page): Block[] {
  const blocks: Block[] = [];
  let files = new Map<string, string>();
  const expand = expander(baseSite);
  for (const fence of page.fences) {
    const [language, kind, ...rest] = fence.info;
    if (language !== 'gate') continue;
    const shown = fence.text.replace(/<U\+([0-9A-F]{4,6})>/g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));
    if (kind === 'file') {
      const [path = '', , count = '1'] = rest;
      for (let number = 1; number <= Number(count); number++) {
        const numbered = (of: string): string => of.replaceAll('<N>', String(number)).replaceAll('<N+1>', String(number + 1));
        files.set(posix.join(posix.dirname(pagePath), numbered(path)), numbered(shown));
      }
      continue;
    }
    if (kind !== 'flagged' && kind !== 'fixed' && kind !== 'sound' && kind !== undefined)
      throw new Error(`${page.path}:${fence.line}: no block is called “${kind}”`);
    const text = expand(kind, shown);
    const repeat = rest.indexOf('repeated');
    const given = (repeat < 0 ? rest : rest.slice(0, repeat)).map(Number);
    if (given.some((line) => !Number.isInteger(line) || line < 1))
      throw new Error(`${page.path}:${fence.line}: “${rest.join(' ')}” is not a list of lines`);
    blocks.push({
      kind: kind ?? 'figures-input',
      isDerived: text !== shown,
      text: repeat < 0 ? text : text.repeat(Number(rest[repeat + 1])),
      line: fence.line,
      asOf: /^# as of (\d{4}-\d{2}-\d{2})/.exec(text)?.[1] ?? defaultDay,
      files,
      expected: given.length > 0 ? given : markedLines(text),
    });
    if (kind !== 'fixed') files = new Map();
  }
  return blocks;
}

function markedLines(text: string): number[] {
  return text.split('\n').flatMap((line, i) => {
    if (/^\s*# flagged below\s*$/.test(line)) return [i + 2];
    const mark = /# flagged( twice)?\s*$/.exec(line);
    return mark === null ? [] : mark[1] === undefined ? [i + 1] : [i + 1, i + 1];
  });
}

const onDisk = new Map<string, ReadResult>();

function readDisk(path: string): ReadResult {
  if (!existsSync(path)) return 'missing';
  const real = realpathSync(path).replaceAll('\\', '/');
  if (real !== examples && !real.startsWith(examples + '/')) return 'outside';
  return statSync(path).isFile() ? { text: readFileSync(path, 'utf8') } : 'unreadable';
}

function workspaceOf(text: string, files: ReadonlyMap<string, string>): Workspace {
  return new Workspace({
    root: examples,
    read: (path) => {
      const given = path === pagePath ? text : files.get(path);
      if (given !== undefined) return { text: given };
      let kept = onDisk.get(path);
      if (kept === undefined) onDisk.set(path, (kept = readDisk(path)));
      return kept;
    },
  });
}

/** Judges a text as if it stood in the examples, with the block's other files beside it. */
export const judge = (text: string, files: ReadonlyMap<string, string> = new Map(), asOf = defaultDay): Analysis =>
  workspaceOf(text, files).judge(pagePath, text, asOf);

/** The installation of such a text, with no rule run on it. */
export const installationOf = (text: string, files: ReadonlyMap<string, string> = new Map()): Installation =>
  workspaceOf(text, files).named(pagePath, text).installation;

export const judgeBlock = (block: Block): Analysis => judge(block.text, block.files, block.asOf);

/** Most findings of one example that a page shows in words. */
const mostSaid = 12;

/**
 * What a rule says of an example, for its page to show: how grave and where, the sentence, what differs from what the rule says
 * in general, the places that belong to it, and what is offered, with each change. Lines are numbered where the page shows all.
 */
export function saidOf(analysis: Analysis, rule: Rule, isDerived = false): string {
  const own = [...analysis.findings, ...analysis.accepted].filter((finding) => finding.rule === rule.name);
  const place = (at: Span): string => placeIn(analysis, at, isDerived);
  const lines = own.slice(0, mostSaid).flatMap((finding) => [
    `${finding.severity} ${isDerived ? 'at' : 'on'} ${place(finding)}: ${finding.what}`,
    ...(finding.why === rule.why ? [] : [`  Why: ${finding.why}`]),
    ...(finding.remedy === rule.remedy ? [] : [`  What to do: ${finding.remedy}`]),
    ...(finding.source === rule.source.text ? [] : [`  Source: ${finding.source}`]),
    ...finding.related.map(
      (related) =>
        `  See ${related.path === undefined ? place(related) : related.path.slice(related.path.lastIndexOf('/') + 1)}: ${related.message}`,
    ),
    ...finding.fixes.map(({ safe, title, edits }) => {
      const changes = edits.map((edit) => `${place(edit)} becomes ${cited(edit.text)}`);
      return `  Offered${safe ? ', also in bulk' : ''}: ${title}: ${changes.join('; ')}`;
    }),
    ...(finding.tag === undefined ? [] : [`  Shown as ${finding.tag}`]),
  ]);
  if (own.length > mostSaid) lines.push(`and ${own.length - mostSaid} more`);
  return lines.map((line) => line.replace(unseen, codeOf) + '\n').join('');
}

const unseen = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u2800\p{Default_Ignorable_Code_Point}]/gu;
const codeOf = (character: string): string => `<U+${(character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}>`;

type Span = Readonly<Record<'start' | 'end', number>>;

/** A place as a page tells of it: by its line; or, where not all lines are shown, by its words, and its block where these stand twice. */
function placeIn(analysis: Analysis, { start, end }: Span, isDerived: boolean): string {
  const { text } = analysis;
  const words = cited(text.slice(start, end));
  if (!isDerived) return `line ${lineOf(analysis, start)}, ${words}`;
  const before = text.slice(0, start).trimEnd();
  if (start === end) return `what follows ${cited(before.slice(before.lastIndexOf('\n') + 1).trim())}`;
  const isOnly = text.indexOf(text.slice(start, end)) === text.lastIndexOf(text.slice(start, end));
  // A head of a block holds its own model and name.
  const lineEnd = text.indexOf('\n', start);
  const head = [...text.slice(0, lineEnd < 0 ? text.length : lineEnd).matchAll(/^\S.*\{/gm)].at(-1)?.[0].replace(/ *[:"{].*$/, '');
  return isOnly || head === undefined ? words : `${words} in ${head}`;
}

/**
 * What goes into figures, each as a person would check it by hand: the line that it stands at, the value in words where it has
 * any, and every number put in, to six digits. Figures that share all of that stand together.
 */
export function workingOf(analysis: Analysis, ids: readonly string[]): string {
  const groups = new Map<string, string[]>();
  for (const id of ids) {
    const figure = analysis.figures.find((one) => one.id === id);
    if (figure === undefined) continue;
    const { at, words, inputs } = figure;
    const working = [
      ` at ${cited(analysis.text.slice(at.start, at.end))}${words === undefined ? '' : `: ${words()}`}`,
      ...inputs().map(
        ({ name, value, unit, from }) =>
          `  ${name}: ${Number(value.toPrecision(6))}${unit === '1' ? '' : ` ${unit}`}${from === undefined ? '' : ` (${from})`}`,
      ),
    ].join('\n');
    const known = groups.get(working);
    if (known === undefined) groups.set(working, [id]);
    else known.push(id);
  }
  return [...groups].map(([working, of]) => `${of.join(', ')}${working}\n`).join('');
}

/** A stretch of a file in one line: its ends, where it is long. */
function cited(text: string): string {
  const line = text.replace(/\s*\n\s*/g, ' ⏎ ');
  return line === '' ? 'nothing' : `“${line.length <= 60 ? line : `${line.slice(0, 30)} … ${line.slice(-25)}`}”`;
}

/** Line of an offset, from 1. */
export const lineOf = (analysis: Analysis, offset: number): number => positionAt(analysis.lineStarts, offset).line + 1;

/** A text with edits applied; edits of two findings that overlap are an error of the rule. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const sorted = [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
  let out = '';
  let at = 0;
  for (const edit of sorted) {
    if (edit.start < at || edit.end < edit.start || edit.end > text.length)
      throw new Error(`edit ${edit.start}–${edit.end} overlaps another one or lies outside the text`);
    out += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return out + text.slice(at);
}

/** A text without emphasis, link marks and line ends, in lower case, for comparing what a page says with what a rule says. */
export const normalised = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[*_`]/g, '')
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/\s+/g, ' ')
    .trim();
