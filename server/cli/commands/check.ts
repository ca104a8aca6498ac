import { fixAll } from '../../engine/index.ts';
import { type Arguments, asOfDay, shardOf } from '../arguments.ts';
import { Baseline } from '../baseline.ts';
import type { Command } from '../command.ts';
import { count, visible } from '../display.ts';
import type { GateFile } from '../files.ts';
import { allOutputs } from '../outputs/all.ts';
import type { Output } from '../outputs/output.ts';
import { type CheckedFile, countsInWords, countsOf, fails, type Report, type ReportedFinding, Reporter, severities } from '../report.ts';
import { Roots } from '../roots.ts';
import { findFiles } from '../search.ts';
import { Sites } from '../sites.ts';
import { Sweeper } from '../sweeper.ts';
import { exit, type Terminal, WrongUse } from '../terminal.ts';
import { version } from '../version.ts';
import { writeText } from '../write.ts';

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
      oneOf: severities,
      help: 'the mildest finding that gives exit code 1: error (default), warning or note',
    },
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
--root; else the nearest one above the file that holds .git; else the current folder; else the folder that all
paths given have in common. The top of a disk is the root only where --root names it.

Links are followed as far as the root goes. A link that leads out of it, or into a hidden folder that nobody named,
is told and not read, whether it was found or named, and so is what is no plain file. A file or a folder that you name
outside --root is read all the same; its “use” lines and links then stay in its own folder, or lead to --root.

A baseline counts findings by file and rule, so that old findings do not hide new ones. Up to the count they are not
reported and do not count for the exit code; the summary says how many are held back. The run that writes the
baseline reports everything, as if there were none. Paths in it are seen from its own folder.

--fix never changes a value: fixes that do are left to a person. Files are replaced whole or not at all.

Exit code: 0 when nothing is at or above --fail-on, 1 when something is, 2 for wrong use or input that cannot be read.`,
  run: runCheck,
};

function runCheck(given: Arguments, terminal: Terminal): number {
  const wanted = given.value('output') ?? usual;
  const output = formats.find(({ name }) => name === wanted) as Output;
  const failOn = severities.find((severity) => severity === given.value('fail-on')) ?? 'error';
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
  const unreadable = found.troubles.map(({ shown, why }) => ({ path: shown, why }));
  for (const { shown, why } of found.troubles) terminal.err(`pintle: ${visible(shown)}: ${why}\n`);
  if (found.files.length === 0 && unreadable.length === 0)
    throw new WrongUse(`There is no .gate file in ${given.paths.map((path) => `“${path}”`).join(', ')}.`);
  const files = shard === undefined ? found.files : found.files.filter((_, index) => index % shard.of === shard.part - 1);

  if (given.has('fix')) unreadable.push(...fixFiles(files, roots, asOf, terminal));
  const checked = checkFiles(files, new Sites(roots), asOf, terminal, given.has('quiet'), unreadable);
  const { reported, held } = hold(checked, baseline);
  const all = reported.flatMap((file) => file.findings);
  const report: Report = {
    version,
    files: reported,
    counts: countsOf(all),
    accepted: reported.reduce((sum, file) => sum + file.accepted, 0),
    heldBack: countsOf(held),
    unreadable,
    failOn,
  };
  terminal.out(output.write(report, { colour: terminal.colour, columns: terminal.columns, quiet: given.has('quiet') }));
  if (all.some((finding) => finding.rule === 'use-outside-root') && !given.has('root') && !given.has('quiet'))
    terminal.err(
      'The folder that “use” lines may not leave is the one that holds .git, or else the current one; --root FOLDER names another.\n',
    );
  if (baseline !== undefined) tendBaseline(baseline, checked, report, given, output.reader === 'program', terminal);
  if (unreadable.length > 0) return exit.wrong;
  return all.some((finding) => fails(finding.severity, failOn)) ? exit.findings : exit.fine;
}

function checkFiles(
  files: readonly GateFile[],
  sites: Sites,
  asOf: string,
  terminal: Terminal,
  quiet: boolean,
  unreadable: { path: string; why: string }[],
): CheckedFile[] {
  const reporter = new Reporter(terminal.folder, sites);
  const progress = new Progress(terminal, files.length, quiet);
  const checked: CheckedFile[] = [];
  for (const file of files) {
    progress.step();
    const read = sites.read(file.path);
    if ('why' in read) {
      unreadable.push({ path: file.shown, why: read.why });
      terminal.err(`pintle: ${visible(file.shown)}: ${read.why}\n`);
    } else
      checked.push(
        reporter.file(
          file,
          read,
          read.flaw !== undefined && read.flaw.kind !== 'not-utf-8' ? undefined : sites.judge(file.path, read.text, asOf),
        ),
      );
  }
  progress.end();
  return checked;
}

/** Applies the safe fixes; gives the files that could not be written. */
function fixFiles(files: readonly GateFile[], roots: Roots, asOf: string, terminal: Terminal): { path: string; why: string }[] {
  const troubles: { path: string; why: string }[] = [];
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
      troubles.push({ path: file.shown, why: `not fixed, ${why}` });
      terminal.err(`pintle: ${visible(file.shown)}: not fixed, ${why}\n`);
    } else for (const { rule, title } of fixed.mended) terminal.err(`fixed ${visible(file.shown)}: ${visible(title)} (${rule})\n`);
  }
  return troubles;
}

function hold(
  checked: readonly CheckedFile[],
  baseline: Baseline | undefined,
): { readonly reported: readonly CheckedFile[]; readonly held: readonly ReportedFinding[] } {
  if (baseline?.counts === undefined) return { reported: checked, held: [] };
  const split = checked.map((file) => baseline.split(file));
  return { reported: split.map(({ over }) => over), held: split.flatMap(({ held }) => held) };
}

function tendBaseline(
  baseline: Baseline,
  checked: readonly CheckedFile[],
  report: Report,
  given: Arguments,
  machine: boolean,
  terminal: Terminal,
): void {
  const name = visible(given.value('baseline') ?? '');
  if (baseline.counts === undefined) {
    baseline.write(checked);
    const all = countsInWords(report.counts);
    terminal.err(
      `There was no baseline, so ${name} was written from this run (${all === '' ? 'no findings' : all}). Runs with it from now on report what is new.\n`,
    );
    return;
  }
  const held = countsInWords(report.heldBack);
  if (machine && held !== '') terminal.err(`${held} known from the baseline and not shown.\n`);
  const slack = baseline.slack(checked);
  if (slack === 0) return;
  if (given.has('update-baseline')) {
    baseline.shrink(checked);
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
