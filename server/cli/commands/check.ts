import { type Finding, fixAll, type Severity } from '../../engine/index.ts';
import { version } from '../../engine/inside.ts';
import { type Arguments, asOfDay, shardOf } from '../arguments.ts';
import { Baseline } from '../baseline.ts';
import type { Command } from '../command.ts';
import { count, visible, visiblePath } from '../display.ts';
import type { GateFile, Trouble } from '../files.ts';
import { JudgedSum } from '../judged.ts';
import { allOutputs } from '../outputs/all.ts';
import type { Output } from '../outputs/output.ts';
import { countsInWords, countsOf, fails, foundIn, Reporter, severities, sumOf, type Totals } from '../report.ts';
import { Roots } from '../roots.ts';
import { findFiles } from '../search.ts';
import { Sites } from '../sites.ts';
import { Sweeper } from '../sweeper.ts';
import { exit, type Terminal, WrongUse } from '../terminal.ts';
import { writeText } from '../write.ts';

/** Not a severity: that something which protects people could not be judged. */
const notJudged = 'not-judged';

/** What is written where nothing else is asked for. */
const usual = 'text';

const formats = [...allOutputs].sort((a, b) => Number(b.name === usual) - Number(a.name === usual));
const widestName = Math.max(...formats.map(({ name }) => name.length));

export const command: Command = {
  name: 'check',
  order: 1,
  usage: 'check PATH… [options]',
  summary: 'Says what is wrong in files, and in all .gate files of folders.',
  options: {
    output: { value: 'FORMAT', oneOf: formats.map(({ name }) => name), help: `${usual} (default), or another of the formats below` },
    'as-of': { value: 'DATE', help: 'the day that dates are held against, as YYYY-MM-DD; today if not given' },
    'fail-on': {
      value: 'SEVERITY',
      oneOf: [...severities, notJudged],
      many: true,
      help: 'the mildest finding that gives exit code 1: error (default), warning or note; and, beside it, not-judged',
    },
    account: { help: 'tell of every leaf, hazard, control and panel whether it was judged, and what came of it (text)' },
    fix: { help: 'apply the fixes that are safe, then check what came of it' },
    baseline: { value: 'FILE', help: 'leave out the findings that this file counts; write it if it is not there' },
    'update-baseline': { help: 'lower the counts of the baseline to what is found now; never raises one' },
    shard: { value: 'I/N', help: 'only every N-th file, counted from the I-th: to share the work between machines' },
    root: { value: 'FOLDER', help: 'the folder that no “use” line and no link may leave' },
    quiet: { help: 'findings only: no summary, no progress' },
  },
  details: `Formats of --output:
${formats.map(({ name, summary }) => `  ${name.padEnd(widestName)}  ${summary}\n`).join('')}
Folders are searched for files that end in .gate; node_modules and folders whose name starts with a dot are left
out, and read only where a path or a “use” line names them. The root, which no “use” line may leave, is the folder of
--root; else the nearest one above the file that holds .git; else the current folder; else the folder that was named
and holds the file; else, for a file that was named, the folder above its own. The top of a disk is the root only
where --root names it.

Links are followed as far as the root goes. A link that leads out of it, or into a hidden folder that nobody named,
is told and not read, whether it was found or named, and so is what is no plain file. A file or a folder that you name
outside --root is read all the same; its “use” lines and links then stay in its own folder, or lead to --root.

A baseline counts findings by file and rule, so that old findings do not hide new ones. Up to the count they are not
reported and do not count for the exit code; the summary says how many are held back. The run that writes the
baseline reports everything, as if there were none. Paths in it are seen from its own folder.

--fix never changes a value: fixes that do are left to a person. Files are replaced whole or not at all.

Outputs for programs tell paths from the root on, so that a run says the same wherever it is called; from the folder
that all roots have in common, where there are several. “text” and “lines” tell them from the current folder. There,
signs that a terminal or a build server would obey are shown as ␛, <202E> or <0023>#[, and a path that begins like a
command or an option has ./ before it. What was not read stands in every report, as “unreadable-input” where it looks
like a finding.

What protects people and could not be judged, because a fact is missing, is counted and asked for at the end; with
--fail-on not-judged it gives exit code 1, whatever the findings are. In a file of “stage draft” it is never an error.

Exit code: 0 when nothing is at or above --fail-on, 1 when something is, 2 for wrong use or input that cannot be read.`,
  run: runCheck,
};

function runCheck(given: Arguments, terminal: Terminal): number {
  const wanted = given.value('output') ?? usual;
  const output = formats.find(({ name }) => name === wanted) as Output;
  const { failOn, failsOnOpen } = failOnOf(given.values('fail-on'));
  const asOf = asOfDay(given.value('as-of'), terminal.today);
  const shard = shardOf(given.value('shard'));
  if (given.paths.length === 0) throw new WrongUse('“pintle check” needs a file or a folder: pintle check PATH…');
  const baselineName = given.value('baseline');
  const roots = new Roots(terminal.folder, given.value('root'), given.paths);
  const baseline = baselineName === undefined ? undefined : new Baseline(baselineName, terminal.folder, roots);
  if (baseline === undefined && given.has('update-baseline'))
    throw new WrongUse('“--update-baseline” needs the baseline: --baseline FILE.');
  if (baseline !== undefined && baseline.counts === undefined && (shard !== undefined || given.has('update-baseline')))
    throw new WrongUse(
      `There is no baseline “${baselineName}” yet. Write it first, with all files: pintle check PATH… --baseline ${baselineName}`,
    );

  if (baseline !== undefined) new Sweeper(roots, terminal).beside(baseline.path);
  const found = findFiles(given.paths, terminal.folder, roots);
  for (const trouble of found.troubles) tell(trouble, terminal);
  if (found.files.length === 0 && found.troubles.length === 0)
    throw new WrongUse(`There is no .gate file in ${given.paths.map((path) => `“${path}”`).join(', ')}.`);
  const files = shard === undefined ? found.files : found.files.filter((_, index) => index % shard.of === shard.part - 1);
  const troubles = [...found.troubles, ...(given.has('fix') ? fixFiles(files, roots, asOf, terminal) : [])];

  const sites = new Sites(roots);
  const base = roots.baseOf((found.files.length > 0 ? found.files : found.troubles).map(({ path }) => path));
  const reporter = new Reporter(terminal.folder, base, sites);
  const manner = { colour: terminal.colour, columns: terminal.columns, quiet: given.has('quiet'), account: given.has('account') };
  const writer = output.begin({ send: terminal.out, manner, version, failOn });
  const tally = new Tally();
  const unread = ({ path, why }: Trouble): void => {
    tally.unreadable++;
    writer.unread({ ...reporter.path(path), why });
  };
  troubles.forEach(unread);
  const progress = new Progress(terminal, files.length, given.has('quiet'));
  for (const file of files) {
    progress.step();
    const read = sites.read(file.path);
    if ('why' in read) {
      const trouble = { ...file, why: read.why };
      tell(trouble, terminal);
      unread(trouble);
      continue;
    }
    const isText = read.flaw === undefined || read.flaw.kind === 'not-utf-8';
    const analysis = isText ? sites.judge(file.path, read.text, asOf) : undefined;
    const all = foundIn(read, analysis);
    const { over, held } = baseline?.split(file.path, all) ?? { over: all, held: [] };
    tally.add(over, held, analysis?.accepted.length ?? 0);
    const checked = reporter.file(file, read, analysis, over);
    tally.judged.add(checked.account);
    writer.file(checked);
  }
  progress.end();
  writer.end(tally);
  if (tally.hasLeftRoot && !given.has('root') && !given.has('quiet'))
    terminal.err(
      'The folder that “use” lines may not leave is the one that holds .git, or else the current one; --root FOLDER names another.\n',
    );
  if (baseline !== undefined) tendBaseline(baseline, tally, given, output.reader === 'program', terminal);
  if (tally.unreadable > 0) return exit.wrong;
  if (failsOnOpen && tally.judged.judged < tally.judged.of) return exit.findings;
  return severities.some((severity) => tally.counts[severity] > 0 && fails(severity, failOn)) ? exit.findings : exit.fine;
}

/** What fails the run: the mildest severity, and, by a switch of its own, that something is not judged. */
function failOnOf(values: readonly string[]): { readonly failOn: Severity; readonly failsOnOpen: boolean } {
  const asked = values.filter((value) => value !== notJudged);
  if (asked.length > 1 || values.length - asked.length > 1)
    throw new WrongUse('“--fail-on” takes one severity, and once “not-judged” beside it.');
  return { failOn: severities.find((severity) => severity === asked[0]) ?? 'error', failsOnOpen: values.includes(notJudged) };
}

function tell({ shown, why }: Trouble, terminal: Terminal): void {
  terminal.err(`pintle: ${visiblePath(shown)}: ${why}\n`);
}

/** What is kept of the files that are through. */
class Tally implements Totals {
  files = 0;
  readonly judged = new JudgedSum();
  counts = countsOf([]);
  accepted = 0;
  heldBack = countsOf([]);
  unreadable = 0;
  /** A “use” line led out of the root. */
  hasLeftRoot = false;

  add(found: readonly Finding[], held: readonly Finding[], accepted: number): void {
    this.files++;
    this.counts = sumOf(this.counts, countsOf(found));
    this.heldBack = sumOf(this.heldBack, countsOf(held));
    this.accepted += accepted;
    this.hasLeftRoot ||= found.some(({ rule }) => rule === 'use-outside-root');
  }
}

/** Applies the safe fixes; gives the files that could not be written. */
function fixFiles(files: readonly GateFile[], roots: Roots, asOf: string, terminal: Terminal): Trouble[] {
  const troubles: Trouble[] = [];
  const sites = new Sites(roots);
  const sweeper = new Sweeper(roots, terminal);
  for (const file of files) {
    sweeper.beside(file.path);
    const read = roots.read(file.path);
    // A file that is not wholly text would be written back other than it was.
    if ('why' in read || read.flaw !== undefined) continue;
    const fixed = fixAll(read.text, (now) => sites.judge(file.path, now, asOf));
    if (fixed.text === read.text) continue;
    const why = writeText(file.path, read, fixed.text, roots);
    if (why !== undefined) {
      const trouble = { ...file, why: `not fixed, ${why}` };
      troubles.push(trouble);
      tell(trouble, terminal);
    } else for (const { rule, title } of fixed.mended) terminal.err(`fixed ${visiblePath(file.shown)}: ${visible(title)} (${rule})\n`);
  }
  return troubles;
}

function tendBaseline(baseline: Baseline, totals: Totals, given: Arguments, machine: boolean, terminal: Terminal): void {
  const name = visible(given.value('baseline') ?? '');
  if (baseline.counts === undefined) {
    baseline.write();
    const all = countsInWords(totals.counts);
    terminal.err(
      `There was no baseline, so ${name} was written from this run (${all === '' ? 'no findings' : all}). Runs with it from now on report what is new.\n`,
    );
    return;
  }
  const held = countsInWords(totals.heldBack);
  if (machine && held !== '') terminal.err(`${held} known from the baseline and not shown.\n`);
  const slack = baseline.slack();
  if (slack === 0) return;
  if (given.has('update-baseline')) {
    baseline.shrink();
    terminal.err(`The baseline ${name} was lowered by ${count(slack, 'finding')}.\n`);
  } else if (!given.has('quiet'))
    terminal.err(`The baseline ${name} allows ${count(slack, 'finding')} more than there are; --update-baseline lowers it.\n`);
}

/** How far it has come, for a person who has been waiting for more than a second. */
class Progress {
  readonly #terminal: Terminal;
  readonly #all: number;
  readonly #shown: boolean;
  readonly #started: number;
  #last: number;
  #done = 0;
  #drawn = false;

  constructor(terminal: Terminal, all: number, quiet: boolean) {
    this.#terminal = terminal;
    this.#all = all;
    this.#shown = terminal.watched && !quiet;
    this.#started = this.#last = this.#shown ? terminal.now() : 0;
  }

  step(): void {
    this.#done++;
    if (!this.#shown) return;
    const now = this.#terminal.now();
    if (now - this.#started < 1000 || now - this.#last < 100) return;
    this.#last = now;
    this.#drawn = true;
    this.#terminal.err(`\r${this.#done} of ${this.#all} files`);
  }

  end(): void {
    if (this.#drawn) this.#terminal.err('\r\u001b[K');
  }
}
