// A new site from a few answers. Only what was answered is written: a value that nobody stated would stand there as a fact.

import type { choices } from './choices.ts';

type Choices = typeof choices;

export interface LeafAnswers {
  readonly name: string;
  /** As it is written: `2.10 m`. Absent where it is not known yet. */
  readonly width?: string | undefined;
  readonly height?: string | undefined;
  readonly mass?: string | undefined;
}

export interface SiteAnswers {
  readonly title: string;
  readonly rules: keyof Choices['rules'];
  readonly users: keyof Choices['users'];
  readonly sight: keyof Choices['sight'];
  readonly moves: 'swings' | 'slides';
  /** One, or two that meet; of two, the first closes last. */
  readonly leaves: readonly LeafAnswers[];
  readonly opens: keyof Choices['opens'];
  /** Paths of library files, relative to the new file. */
  readonly libraries: readonly string[];
}

/** The text of the new file. */
export function siteText({ title, rules, users, sight, moves, leaves, opens, libraries }: SiteAnswers): string {
  const lines = ['language 1', ...libraries.map((path) => `use ${quoted(path)}`), ''];
  // Until it stands and is measured, what is not judged yet is no error.
  lines.push(`site ${quoted(title)} {`, '  stage draft', `  rules ${rules}`, `  users ${users}`, `  sight ${sight}`, '}');
  leaves.forEach(({ name, width, height, mass }, index) => {
    const other = leaves[1 - index];
    lines.push('', `leaf ${name} {`);
    for (const [word, value] of [
      ['width', width],
      ['height', height],
      ['mass', mass],
    ] as const)
      if (value !== undefined) lines.push(`  ${word} ${tidy(value)}`);
    const missing = [width === undefined ? 'width' : '', height === undefined ? 'height' : '', mass === undefined ? 'mass' : ''].filter(
      (word) => word !== '',
    );
    if (missing.length > 0) lines.push(`  # still to be measured: ${missing.join(', ')}`);
    if (moves === 'swings') lines.push(`  # how far it opens: opens ${opens} … deg`);
    else lines.push('  # how far it travels, and to which side seen from inside: slides left … m');
    if (index === 0 && other !== undefined && moves === 'swings')
      lines.push(`  # where the leaves overlap: closes onto ${other.name} overlap … mm`);
    lines.push('}');
  });
  lines.push(
    '',
    '# Next: the drives with their brackets, the sensors and what they watch, the controls, the panel with its wires, and',
    '# the motion. Each word says what it needs; what is missing or unsafe is underlined. Take “stage draft” away once the',
    '# gate is built: what is not judged then counts.',
    '',
  );
  return lines.join('\n');
}

/** What is wrong with a quantity as somebody typed it, in words; undefined where it can be read. */
export function quantityFault(given: string, units: readonly string[], example: string): string | undefined {
  const text = given.trim();
  if (text === '') return undefined;
  const found = /^(\d+(?:\.\d+)?)\s*(\S+)?$/.exec(text);
  if (found === null) return `Write a number and a unit: ${example}.`;
  if (found[2] === undefined) return `In which unit? ${units.map((unit) => `${found[1]} ${unit}`).join(', ')}?`;
  if (!units.includes(found[2])) return `The unit here is one of ${units.join(', ')}.`;
  return Number(found[1]) > 0 ? undefined : 'It cannot be nothing.';
}

const tidy = (quantity: string): string => quantity.trim().replace(/^(\d+(?:\.\d+)?)\s*(\S+)$/, '$1 $2');

/** Characters that stand in no text of the language: those that drive a machine, turn the direction of reading, or are none. */
const refused = /[\p{Cc}\p{Cs}\p{Default_Ignorable_Code_Point}\u2028\u2029\u2800\ufff9-\ufffb\ufffe\uffff\u{13430}-\u{1343f}\u{1d159}]+/gu;

/** As a text of the language: on one line, its quotes and backslashes escaped. */
const quoted = (text: string): string => `"${text.replace(refused, ' ').trim().replace(/[\\"]/g, '\\$&')}"`;

/** The way from the folder of one path to another path; both absolute with forward slashes. */
export function relativePath(from: string, to: string): string {
  const folder = from.split('/').slice(0, -1);
  const parts = to.split('/');
  let same = 0;
  while (same < folder.length && same < parts.length - 1 && folder[same] === parts[same]) same++;
  return [...folder.slice(same).map(() => '..'), ...parts.slice(same)].join('/');
}
