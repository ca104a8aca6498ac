import { type Analysis, type FigureShown, figuresShown, positionAt } from '../../engine/index.ts';
import { caution } from '../../engine/inside.ts';
import { type Arguments, asOfDay } from '../arguments.ts';
import type { Command } from '../command.ts';
import { type Colours, coloursFor, count, excerptOf, guarded, linePath, visible, visiblePath, wrapped } from '../display.ts';
import { absolute, shownFrom } from '../files.ts';
import { jsonOf } from '../json-text.ts';
import { lineShown, secretsAmong } from '../lines.ts';
import { Roots } from '../roots.ts';
import { Sites } from '../sites.ts';
import { exit, type Terminal, WrongUse } from '../terminal.ts';

/** The version of the JSON's shape, not of the program. */
const shapeVersion = 1;

export const command: Command = {
  name: 'figures',
  order: 3,
  usage: 'figures FILE [--output text|json]',
  summary: 'Works out all that follows from a file, with its derivation.',
  options: {
    output: {
      value: 'FORMAT',
      oneOf: ['text', 'json'],
      help: 'text (default), or json with values in SI units, angles in degrees, temperatures in kelvin',
    },
    root: { value: 'FOLDER', help: 'the folder that no “use” line and no link may leave' },
    'as-of': { value: 'DATE', help: 'taken as by “check”; no figure depends on the day' },
  },
  details: `The text tells values in the units of the site's own readers, the JSON in SI. What lacks a fact is left out;
“pintle check” says what is missing. A figure is worked out from what the file says and is no test of the gate.`,
  run: runFigures,
};

function runFigures(given: Arguments, terminal: Terminal): number {
  const [name, ...more] = given.paths;
  if (name === undefined || more.length > 0) throw new WrongUse('“pintle figures” takes one file: pintle figures FILE');
  const asOf = asOfDay(given.value('as-of'), terminal.today);
  const path = absolute(terminal.folder, name);
  const roots = new Roots(terminal.folder, given.value('root'), [name]);
  const read = roots.read(path);
  const why =
    'why' in read
      ? read.why
      : read.flaw === undefined
        ? undefined
        : read.flaw.kind === 'too-large'
          ? 'it is too large'
          : 'it is not UTF-8 text';
  if ('why' in read || why !== undefined) throw new WrongUse(`“${name}” could not be read: ${why}.`);
  const shown = shownFrom(terminal.folder, path);
  const analysis = new Sites(roots).judge(path, read.text, asOf);
  const found = figuresShown(analysis).sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  if (given.value('output') === 'json') terminal.out(asJson(shown, found));
  else terminal.out(guarded(asText(shown, analysis, found, terminal)));
  // Counted as “check” counts: two numbers for one file would make people look for a third thing.
  const errors = analysis.findings.filter(({ severity }) => severity === 'error').length;
  if (errors > 0)
    terminal.err(
      `${visiblePath(shown)} has ${count(errors, 'error')}; figures that hang on what could not be read are left out. “pintle check” tells ${errors === 1 ? 'it' : 'them'}.\n`,
    );
  return exit.fine;
}

function asJson(path: string, found: readonly FigureShown[]): string {
  const figures = found.map(({ id, value, unit, formula, inputs, source }) => ({
    id,
    value: steady(value),
    unit,
    formula,
    inputs: inputs.map(({ name, value, unit, from }) => ({ name, value: steady(value), unit, ...(from === undefined ? {} : { from }) })),
    source,
  }));
  return jsonOf({ version: shapeVersion, path, figures }) + '\n';
}

/** Twelve digits: the last few differ between machines, whose sines and powers are rounded each in its own way. */
function steady(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(12)) + 0 : value;
}

function asText(shown: string, analysis: Analysis, found: readonly FigureShown[], terminal: Terminal): string {
  const colours = coloursFor(terminal.colour);
  if (found.length === 0)
    return `${linePath(shown)}: no figures; ${analysis.installation.kind === 'site' ? 'too little is stated' : 'it describes no site'}.\n`;
  return [
    `${colours.strong(linePath(shown))}\n`,
    ...found.map((figure) => figureText(figure, analysis, colours, terminal.columns)),
    `${wrapped(caution, terminal.columns ?? 0, '')}\n`,
  ].join('\n');
}

function figureText(figure: FigureShown, analysis: Analysis, colours: Colours, columns: number | undefined): string {
  const lines: string[] = [];
  const say = (text: string): void => {
    lines.push(wrapped('  ' + visible(text), columns ?? 0, '    '));
  };
  lines.push(`${colours.strong(visible(figure.id))} = ${colours.note(visible(figure.shown))}`);
  say(figure.title);
  say(figure.formula);
  for (const line of inputLines(figure.inputs)) lines.push('    ' + visible(line));
  say(`Source: ${figure.source}${figure.standing === 'from memory' && !figure.source.includes('from memory') ? ' (from memory)' : ''}`);
  if (figure.changedBy !== '') say(`Changed by: ${figure.changedBy}`);
  const line = positionAt(analysis.lineStarts, figure.start).line;
  lines.push(
    `  Line ${line + 1}: ${colours.faint(excerptOf(lineShown(analysis.text, analysis.lineStarts, line, secretsAmong(analysis.findings)).trim(), 0, 0, 100).line)}`,
  );
  return lines.join('\n') + '\n';
}

function inputLines(inputs: FigureShown['inputs']): string[] {
  const names = Math.max(0, ...inputs.map(({ name }) => name.length));
  const widest = Math.max(0, ...inputs.map(({ shown }) => shown.length));
  return inputs.map(
    ({ name, shown, from }) =>
      `${name.padEnd(names)}  ${shown.padEnd(from === undefined ? 0 : widest)}${from === undefined ? '' : `  ${from}`}`,
  );
}
