import { formatted } from '../../engine/index.ts';
import type { Arguments } from '../arguments.ts';
import type { Command } from '../command.ts';
import { count, linePath, visiblePath } from '../display.ts';
import { type FileText, type GateFile, inWords, mostBytes, textOf } from '../files.ts';
import { Roots } from '../roots.ts';
import { findFiles } from '../search.ts';
import { Sweeper } from '../sweeper.ts';
import { exit, type Terminal, WrongUse } from '../terminal.ts';
import { writeText } from '../write.ts';

export const command: Command = {
  name: 'format',
  order: 2,
  usage: 'format PATH… [--check]',
  summary: 'Writes files in their canonical form.',
  options: {
    check: { help: 'change nothing; list the files that would change, and exit with 1 if there are any' },
    root: { value: 'FOLDER', help: 'the folder that no link may leave' },
  },
  details: `The canonical form has two spaces for each level, one space between values, and at most one blank line in a row.
Nothing is reordered and no comment is lost; line ends and a byte order mark stay as they are. “-” reads standard
input and writes standard output.

Folders are searched, and links followed, as by “pintle check”.

A file whose shape cannot be read (a brace or a quote that is not closed, say) is left as it is, and that is said.

Exit code: 0 when all is well, 1 when --check finds a file that would change, 2 for files that cannot be formatted.`,
  run: runFormat,
};

function runFormat(given: Arguments, terminal: Terminal): number {
  if (given.paths.length === 0) throw new WrongUse('“pintle format” needs a file or a folder: pintle format PATH…');
  if (given.paths.includes('-')) {
    if (given.paths.length > 1) throw new WrongUse('“-” stands for standard input and goes with no other path.');
    return formatInput(given.has('check'), terminal);
  }
  const roots = new Roots(terminal.folder, given.value('root'), given.paths);
  const found = findFiles(given.paths, terminal.folder, roots);
  for (const { shown, why } of found.troubles) terminal.err(`pintle: ${visiblePath(shown)}: ${why}\n`);
  if (found.files.length === 0 && found.troubles.length === 0)
    throw new WrongUse(`There is no .gate file in ${given.paths.map((path) => `“${path}”`).join(', ')}.`);
  const sweeper = new Sweeper(roots, terminal);
  const results = found.files.map((file) => {
    if (!given.has('check')) sweeper.beside(file.path);
    return formatFile(file, roots, given.has('check'), terminal);
  });
  const changed = results.filter((result) => result === 'changed').length;
  const failed = results.filter((result) => result === 'failed').length + found.troubles.length;
  const did = given.has('check') ? `${count(changed, 'file')} would change` : `${count(changed, 'file')} changed`;
  terminal.err(
    `${did}, ${results.length - changed - (failed - found.troubles.length)} as they should be${failed > 0 ? `, ${failed} could not be formatted` : ''}\n`,
  );
  if (failed > 0) return exit.wrong;
  return given.has('check') && changed > 0 ? exit.findings : exit.fine;
}

type Result = 'changed' | 'same' | 'failed';

function formatFile(file: GateFile, roots: Roots, checkOnly: boolean, terminal: Terminal): Result {
  const refuse = (why: string): Result => {
    terminal.err(`pintle: ${visiblePath(file.shown)}: ${why}\n`);
    return 'failed';
  };
  const read = roots.read(file.path);
  if ('why' in read) return refuse(read.why);
  const formatted = canonical(read);
  if ('why' in formatted) return refuse(`not formatted, ${formatted.why}`);
  if (formatted.text === read.text) return 'same';
  if (!checkOnly) {
    const why = writeText(file.path, read, formatted.text, roots);
    if (why !== undefined) return refuse(`not formatted, ${why}`);
  }
  terminal.out(`${linePath(file.shown)}\n`);
  return 'changed';
}

function formatInput(checkOnly: boolean, terminal: Terminal): number {
  const refuse = (why: string): number => {
    terminal.err(`pintle: standard input: not formatted, ${why}\n`);
    return exit.wrong;
  };
  let input: ReturnType<Terminal['input']>;
  try {
    input = terminal.input(mostBytes);
  } catch (error) {
    return refuse(inWords(error));
  }
  if ('beyond' in input) return refuse('it is too large');
  const read = textOf(input.bytes);
  const formatted = canonical(read);
  if ('why' in formatted) return refuse(formatted.why);
  if (!checkOnly) terminal.out((read.mark ? '\ufeff' : '') + formatted.text);
  return checkOnly && formatted.text !== read.text ? exit.findings : exit.fine;
}

/** The canonical form of a text with its own line ends, or why there is none. */
function canonical(read: FileText): { readonly text: string } | { readonly why: string } {
  if (read.flaw !== undefined) return { why: read.flaw.kind === 'too-large' ? 'it is too large' : 'it is not UTF-8 text' };
  const result = formatted(read.text);
  if ('text' in result) return result;
  return { why: `its shape cannot be read: ${result.problem} at ${result.line}:${result.column}; “pintle check” says more` };
}
