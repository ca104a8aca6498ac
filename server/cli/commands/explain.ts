import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { allFigures, allRules, type FigureKind, nearest } from '../../engine/inside.ts';
import { type Arguments, didYouMean } from '../arguments.ts';
import type { Command } from '../command.ts';
import { exit, type Terminal, WrongUse } from '../terminal.ts';

export const command: Command = {
  name: 'explain',
  order: 4,
  usage: 'explain [RULE|FIGURE]',
  summary: 'Explains a rule or a figure; without a name, lists them all.',
  options: {},
  details:
    'A figure can be named by its page (leaf-inertia) or by its id, with a name of your file in it or not\n(leaf.west.inertia, leaf.NAME.inertia).',
  run: runExplain,
};

function runExplain(given: Arguments, terminal: Terminal): number {
  const [name, ...more] = given.paths;
  if (more.length > 0) throw new WrongUse('“pintle explain” takes one rule or figure.');
  if (name === undefined) {
    terminal.out(lists());
    return exit.fine;
  }
  const page = pageOf(name) ?? figurePage(name);
  if (page === undefined)
    throw new WrongUse(`There is no rule or figure “${name}”.${didYouMean(nearest(name, known()))} “pintle explain” lists them all.`);
  terminal.out(page);
  return exit.fine;
}

const known = (): string[] => [...allRules.map((rule) => rule.name), ...allFigures.map((figure) => figure.id)];

function pageOf(name: string): string | undefined {
  if (!/^[a-z0-9-]+$/.test(name)) return undefined;
  return page('rules', name) ?? page('figures', name);
}

/** The pages stand beside the bundled command. */
function page(room: 'rules' | 'figures', name: string): string | undefined {
  try {
    return readFileSync(join(__dirname, 'pages', room, `${name}.md`), 'utf8');
  } catch {
    return undefined;
  }
}

/** The page that tells of a figure's id; where there is none, what the figure itself says. */
function figurePage(name: string): string | undefined {
  const kind = allFigures.find((figure) => isNamed(figure, name));
  if (kind === undefined) return undefined;
  const pages = readdirSync(join(__dirname, 'pages', 'figures'))
    .sort()
    .map((file) => page('figures', file.replace(/\.md$/, '')) ?? '');
  const telling = pages.find((text) => text.includes('`' + kind.id + '`'));
  if (telling !== undefined) return telling;
  return [
    `# ${kind.id}\n\n${kind.title}${kind.unit === '1' ? '' : `, in ${kind.unit}`}.`,
    `## Formula\n\n${kind.formula}`,
    `## What changes it\n\n${kind.changedBy}`,
    `## Source\n\n${kind.source.text} (${kind.source.standing})\n`,
  ].join('\n\n');
}

function isNamed(figure: FigureKind, name: string): boolean {
  if (figure.id === name) return true;
  const [before, after] = figure.id.split('NAME');
  return after !== undefined && name.length > figure.id.length - 'NAME'.length && name.startsWith(before as string) && name.endsWith(after);
}

function lists(): string {
  const widest = Math.max(0, ...allRules.map((rule) => rule.name.length));
  const widestId = Math.max(0, ...allFigures.map((figure) => figure.id.length));
  const rules = allRules.map((rule) => `  ${rule.severity.padEnd(7)}  ${rule.name.padEnd(widest)}  ${rule.title}\n`);
  const figures = allFigures.map(
    (figure) => `  ${figure.id.padEnd(widestId)}  ${figure.title}${figure.unit === '1' ? '' : ` (${figure.unit})`}\n`,
  );
  return `Rules\n${rules.join('')}\nFigures\n${figures.join('')}\n“pintle explain NAME” tells more of one.\n`;
}
