// The reference manual, from the vocabulary table and the lists of rules and figures.
import { parse, type Value } from '../../grammar/index.ts';
import { allFigures } from '../../server/figures/index.ts';
import { allRules } from '../../server/rules/index.ts';
import {
  type Dimension,
  headerShape,
  type LineSpec,
  languageVersion,
  lineShape,
  type QuantitySlot,
  type Slot,
  siUnit,
  type Unit,
  unitNamed,
  unitsOf,
} from '../../server/vocabulary/index.ts';
import { allBlocks, linesOfAnyBlock, linesOfFile } from './generated-places.ts';
import { settingsPage } from './generated-settings.ts';
import { traceability } from './generated-traceability.ts';

const code = (text: string): string => '`' + text + '`';
/** A cell of a table: on one line, its bars kept apart from the table's. */
const cell = (text: string): string => text.replace(/\s+/g, ' ').replaceAll('|', '\\|');
const row = (...cells: string[]): string => `| ${cells.map(cell).join(' | ')} |`;
const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string[] => [
  row(...heads),
  `|${heads.map(() => '---').join('|')}|`,
  ...rows.map((cells) => row(...cells)),
];
const rounded = (value: number): string => String(Number(value.toPrecision(6)));
const gate = (text: string): string[] => ['```gate', text, '```'];

const shape = `## The language in short

A file describes one site, or is a library of models. It is plain text in UTF-8 and ends in \`.gate\`. One line states one
fact; a block in braces holds the facts of one thing.

\`\`\`gate
language ${languageVersion}
use "../library/drives.gate"

# A remark runs to the end of its line.
leaf west {
  width 2.10 m
  mass 165 kg
  opens inward 95 deg
}

drive west-ram : birch-ram {
  moves west
  post-bracket 140 mm by 120 mm
}
\`\`\`

**Order.** \`language ${languageVersion}\` stands first. Apart from that, blocks and lines stand in any order. A line that a block can
hold once may stand in it once.

**Names.** A block's name is chosen by you: letters, digits and hyphens, a letter first, capitals told apart from small
letters. Leaves have their names for themselves, cables too; sensors, drives and controls share theirs, because a panel is
wired to all of them. \`: name\` behind a block's name says of which model it is.

**Numbers** have a decimal point and their unit behind them: \`2.10 m\`, \`-5 mm\`. There is no unit for a whole file, and a
bare number is an error. Where a count is asked for (\`leaves 2\`) there is no unit. \`2 s .. 120 s\` is a range, and one
unit at its end holds for both ends; \`± 5 %\` behind a quantity is its tolerance (\`+-\` is read as the same).

**Texts** stand in double quotes, on one line. \`\\"\` is a quote and \`\\\\\` is a backslash.

**Dates** are written year first: \`2026-05-14\`.

**Lists** are words one behind the other, with or without commas: \`watches closing, opening\`.

**Parts with a keyword** in front (\`by\`, \`at\`, \`until\`) may stand in any order behind the first part of the line.

**Libraries.** \`use "path"\` makes the models of another file known. The path is relative to the file that says it, has
forward slashes, and never leads out of the folder that is open (or, on the command line, out of the workspace). What a
library uses is known as well. Two models of one name are an error.

**Accepting a finding.** \`accept RULE because "…" by "initials" until DATE\` accepts what a rule finds in the block around
the line, or in the whole file if it stands outside all blocks. It ends on its date, and one that matches nothing is
itself reported. Findings that no local reason can overrule can't be accepted; the list of rules says which.

**Canonical form.** The formatter indents by two spaces, puts one space between the words of a line, keeps at most one
blank line and every remark, and reorders nothing.

**What does not belong in a file.** Transmitter codes, PINs, passwords and telephone numbers: a file under version
control is read by many.
`;

function unitTable(): string[] {
  const dimensions = (Object.keys(siUnit) as Dimension[]).filter((dimension) => unitsOf(dimension).length > 0);
  const rows = dimensions.flatMap((dimension) =>
    unitsOf(dimension).map((unit) => [
      dimension,
      code(unit.name),
      [...new Set(unit.also.map((name) => code(name.normalize('NFC'))))].join(', '),
      unit.says,
      sizeOf(unit),
    ]),
  );
  return [
    '## Units',
    '',
    'Units are told apart by capital and small letters. A temperature is a point on a scale; a temperature difference is not.',
    '',
    ...table(['measures', 'unit', 'also read', 'in words', 'in SI'], rows),
    '',
    'The pound, the inch and the foot are those of the international agreement of 1959; a wire gauge n has the diameter 0.127 mm · 92^((36 − n)/39) (ASTM B258).',
  ];
}

/** What one of the unit is in SI, in words and figures. */
function sizeOf(unit: Unit): string {
  const si = siUnit[unit.dimension] === '1' ? '' : ` ${siUnit[unit.dimension]}`;
  if (unit.name === 'AWG') return `see below; ${code('14 AWG')} is ${rounded(unit.toSi(14) * 1e6)} mm2`;
  if (unit.dimension === 'temperature')
    return `${code(`0 ${unit.name}`)} is ${rounded(unit.toSi(0))} K, ${code(`100 ${unit.name}`)} is ${rounded(unit.toSi(100))} K`;
  const size = unit.toSi(1);
  return `${Number(size.toPrecision(10)) === size ? String(size) : Number(size.toPrecision(7)).toString()}${si}`;
}

/** The unit in which the example of a line speaks of a dimension, or the usual one. */
function unitOf(dimension: Dimension, example: string): Unit | undefined {
  const names = (value: Value): (string | undefined)[] =>
    value.kind === 'number' ? [value.unit?.text, ...(value.upTo === undefined ? [] : names(value.upTo))] : [];
  const spoken = (parse(example).items[0]?.values ?? []).flatMap(names).flatMap((name) => (name === undefined ? [] : [unitNamed(name)]));
  return spoken.find((unit) => unit?.dimension === dimension) ?? unitsOf(dimension)[0];
}

function amount(si: number, unit: Unit): string {
  return `${rounded(unit.fromSi(si))} ${unit.name}`;
}

function limits(slot: QuantitySlot, example: string): string {
  const unit = unitOf(slot.dimension, example);
  if (unit === undefined) return slot.dimension;
  const fallback = slot.fallback === undefined ? '' : `; ${amount(slot.fallback, unit)} if not stated`;
  return `${slot.dimension}, ${amount(slot.min, unit)} to ${amount(slot.max, unit)}${fallback}`;
}

function takes(slot: Slot, example: string): string {
  switch (slot.kind) {
    case 'quantity':
      return limits(slot, example);
    case 'tolerance':
      return `a tolerance in per cent${slot.fallback === undefined ? '' : `; ± ${rounded(slot.fallback * 100)} % if not stated`}`;
    case 'range':
      return `a range of ${slot.dimensions.join(' or ')}, its smaller end first`;
    case 'count':
      return `a whole number, ${slot.min} to ${slot.max}`;
    case 'choice':
      return slot.fallback === undefined ? 'one of the words below' : `one of the words below; ${code(slot.fallback)} if not stated`;
    case 'name':
      return 'a name, which this line gives';
    case 'ref':
      return `the name of a ${slot.to === 'device' ? 'sensor, drive or control' : slot.to}`;
    case 'text':
      return 'a text';
    case 'date':
      return 'a date';
  }
}

function lineSection(word: string, spec: LineSpec, level: string): string[] {
  const marks = [
    spec.required === true ? 'Must be stated.' : '',
    spec.many === true ? 'May stand more than once.' : '',
    spec.safety === true ? '**Safety-critical.**' : '',
  ]
    .filter((mark) => mark !== '')
    .join(' ');
  const out = [
    `${level} ${word}`,
    '',
    [spec.doc, marks].filter((part) => part !== '').join(' '),
    '',
    '```text',
    lineShape(word, spec),
    '```',
  ];
  const slots = Object.values<Slot>(spec.slots);
  if (slots.length > 0) out.push('');
  for (const slot of slots) {
    const where = slot.after === undefined ? '' : ` behind ${code(slot.after)}`;
    const how = [
      takes(slot, spec.example),
      ...(slot.many === true ? ['one or more'] : []),
      ...(slot.optional === true && slot.kind !== 'tolerance' ? ['may be left out'] : []),
    ].join('; ');
    out.push(`- ${slot.doc}${where === '' ? '' : ` It stands${where}.`} *${how}*`);
    if (slot.kind === 'choice') for (const [option, meaning] of Object.entries(slot.options)) out.push(`  - ${code(option)}: ${meaning}`);
  }
  out.push('', `Example: ${code(spec.example)}`);
  if (spec.source !== undefined) out.push('', `Source: ${spec.source}.`);
  return [...out, ''];
}

export function manual(): string {
  const out: string[] = [
    '<!-- Generated from the vocabulary, the rules and the figures by `npm run generate`. Do not edit. -->',
    '# The Pintle manual',
    '',
    'Every word of the language, every unit, every rule and every figure. Limits are those outside which a number is surely a',
    'slip of the pen; what is good practice is said by the rules. A line is called safety-critical where what it says decides',
    'whether somebody can be hurt: editors set it apart, and no fix that changes it is made without a look.',
    '',
    '- [The language in short](#the-language-in-short)',
    '- [Units](#units)',
    '- [Lines that stand by themselves](#lines-that-stand-by-themselves)',
    '- [Blocks](#blocks)',
    ...allBlocks()
      .filter(({ path }) => path.length === 0)
      .map(({ word }) => `  - [${word}](#${word})`),
    '- [Rules](#rules)',
    '- [What asks for what](#what-asks-for-what)',
    '- [Figures](#figures)',
    '- [Settings of the editor](#settings-of-the-editor)',
    '',
    shape,
    ...unitTable(),
    '',
    '## Lines that stand by themselves',
    '',
    '`language` and `use` stand outside all blocks, `accept` there or in any block of a site.',
    '',
  ];
  for (const [word, spec] of Object.entries(linesOfFile)) out.push(...lineSection(word, spec, '###'));
  for (const [word, spec] of Object.entries(linesOfAnyBlock)) out.push(...lineSection(word, spec, '###'));
  out.push('## Blocks', '');
  for (const { path, word, spec } of allBlocks()) {
    const level = path.length === 0 ? '###' : '####';
    const inside = path.length === 0 ? '' : ` It stands in a ${code(path.at(-1) ?? '')}.`;
    out.push(
      `${level} ${word}`,
      '',
      spec.doc + inside + (spec.model === undefined ? '' : ` Its model is a ${code(spec.model)}.`),
      '',
      '```text',
      headerShape(word, spec),
      '```',
      '',
      ...gate(spec.example),
      '',
    );
    for (const [line, of] of Object.entries(spec.lines)) out.push(...lineSection(line, of, level + '#'));
  }
  out.push(
    '## Rules',
    '',
    'What each rule finds, why it matters and what to do stands on its own page: `pintle explain RULE`. An *error* means that a',
    'person can be hurt or that it cannot work; a *warning*, that it may be so; a *note* is worth knowing.',
    '',
    ...table(
      ['rule', 'severity', 'what it finds', 'can be accepted', 'source'],
      [...allRules]
        .sort((a, b) => (a.name < b.name ? -1 : 1))
        .map((rule) => [
          code(rule.name),
          rule.severity,
          rule.title,
          rule.acceptable === 'warnings' ? 'as a warning' : rule.acceptable ? 'yes' : 'no',
          rule.source.text,
        ]),
    ),
    '',
    ...traceability(table),
    '## Figures',
    '',
    'What is worked out of a file. NAME stands for the name of the leaf, drive, cable or other subject, PANEL for that of a',
    'panel. Values are in SI, angles in degrees. Ids stay the same from version to version;',
    '`pintle figures FILE --output json` prints them.',
    '',
    ...table(
      ['id', 'unit', 'what it is', 'formula', 'source'],
      [...allFigures]
        .sort((a, b) => (a.id < b.id ? -1 : 1))
        .map((figure) => [code(figure.id), figure.unit, figure.title, figure.formula, figure.source.text]),
    ),
    '',
    ...settingsPage(),
  );
  return out.join('\n').replace(/\n{3,}/g, '\n\n');
}
