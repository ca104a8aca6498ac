// What can be done about a finding, and how far each change can be trusted.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/index.ts';
import { acceptance, type Insertion, missingLines } from '../../server/editor/index.ts';
import { type Analysis, classOf, fixes, safeFixes, Workspace, withEdits } from '../../server/engine/index.ts';
import { blocks, changesSafety } from '../../server/vocabulary/index.ts';
import { within } from '../kit/marker.ts';
import { asOf, bench, library, site, uses } from './bench.ts';

const judge = (text: string): Analysis =>
  new Workspace({ root: '/site', read: (at) => (library.has(at) ? { text: library.get(at) as string } : 'missing') }).judge(
    '/site/gates/north.gate',
    text,
    asOf,
  );
const all = { start: 0, end: Number.MAX_SAFE_INTEGER };
const classes = (text: string): string[] => fixes(judge(text), all).map((fix) => `${fix.class}: ${fix.title}`);

describe('the class of a fix', () => {
  test('what changes no fact is safe; what changes one is for review; what safety hangs on says so', () => {
    expect(blocks.sensor.lines.watches).toHaveProperty('safety', true);
    expect(classes('language 1\nuse "../library/cables.gate"\nleaf a {\n}\n')).toEqual(['safe: Remove this line']);
    expect(classes('language 1\nleaf a {\n  widht 2 m\n}\n').filter((one) => one.includes('width'))).toEqual([
      expect.stringMatching(/^(review|safety): Write “width”/),
    ]);
    // Only a capital letter: a rule calls it safe, but the line says when a sensor is heeded.
    const text = 'language 1\nsensor a {\n  watches Closing\n}\n';
    expect(
      judge(text)
        .findings.flatMap((finding) => finding.fixes)
        .some((fix) => fix.safe),
    ).toBe(true);
    expect(classes(text)).toEqual(['safety: Write “closing” (changes a safety value: look at the gate)']);
    expect(safeFixes(judge(text))).toBeUndefined();
  });

  test('a double of a safety-critical line may go in bulk: it changes nothing', () => {
    const text = 'language 1\nsensor a {\n  watches closing\n  watches closing\n}\n';
    expect(classes(text)).toEqual(['safe: Remove this line']);
    expect(safeFixes(judge(text))?.mended.length).toBe(1);
  });

  test('changes of lines that are safety-critical are seen, others are not', () => {
    const tree = parse(site());
    const change = (from: string, to: string): boolean => {
      const { start, end } = within(site(), `|${from}|`);
      return changesSafety(tree, [{ start, end, text: to }]);
    };
    expect(change('watches closing\n  on', 'watches opening\n  on')).toBe(true);
    expect(change('watches closing\n  on', 'on')).toBe(true);
    expect(change('users limited', 'users public')).toBe(true);
    expect(change('watches closing\n  on', 'watches   closing # x\n  on')).toBe(false);
    expect(change('"Heron Court"', '"Heron Court 2"')).toBe(true);
    expect(change('use "../library/cables.gate"\n', '')).toBe(false);
    // In one block, a line that is marked and one that is not.
    const marked = (word: string): boolean =>
      (blocks.cable.lines as Readonly<Record<string, { readonly safety?: boolean }>>)[word]?.safety === true;
    const cable = Object.entries(blocks.cable.lines).map(([word, line]) => ({ word, line: `  ${line.example}\n` }));
    for (const { word, line } of cable)
      expect(changesSafety(parse(`cable a {\n${line}}\n`), [{ start: 10, end: 10 + line.length, text: '' }]), word).toBe(marked(word));
    expect(new Set(cable.map(({ word }) => marked(word)))).toEqual(new Set([true, false]));
  });

  test('nothing that is applied in bulk changes a safety-critical line, whatever the text', () => {
    const slips = [
      ['watches closing', 'watches Closing'],
      ['users limited', 'users Limited'],
      ['mass 165 kg', 'mass 165 KG'],
      ['opens inward', 'Opens inward'],
      ['wire west-edge', 'Wire west-edge'],
      ['  seat 1.5 s', '  seat 1.5 s\n  seat 1.5 s'],
      ['terminator 8.2 kohm', 'terminator 8.2 KOhm'],
      ['language 1\n', ''],
    ] as const;
    fc.assert(
      fc.property(fc.subarray([...slips]), (chosen) => {
        const text = chosen.reduce((now, [from, to]) => now.replace(from, to), site());
        const analysis = judge(text);
        const bulk = safeFixes(analysis);
        if (bulk !== undefined) expect(changesSafety(analysis.installation.reading.tree, bulk.edits)).toBe(false);
        for (const finding of analysis.findings)
          for (const fix of finding.fixes) if (classOf(analysis, fix) === 'safe') expect(fix.safe).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

// --- Accepting.

const made = (text: string, { edit }: Insertion): string => withEdits(text, [edit]);
/** The text with the form filled in. */
const filled = (text: string): string => text.replace('because ""', 'because "looked at it"').replace('by ""', 'by "KL"');

test('a form for an acceptance: in the innermost block, refused until it is filled in, and then it holds', () => {
  const text = site().replace('seat 1.5 s', 'seat 4 s').replace('motion {', 'motion { # as set');
  const analysis = judge(text);
  const finding = analysis.findings.find((one) => one.rule === 'seat-outside-practice');
  const form = acceptance(analysis, finding as NonNullable<typeof finding>, asOf);
  if (form === undefined) throw new Error('no form');
  expect(form.title).toBe('Accept “seat-outside-practice” here, with a reason…');
  const empty = made(text, form);
  expect(empty).toContain('  dwell 25 s\n  accept seat-outside-practice because "" by "" until 2027-05-20\n}');
  expect(form.form.text).toContain('because "$1" by "$2" until ${3:2027-05-20}');
  const unfilled = judge(empty).findings.map((one) => one.rule);
  expect(unfilled).toContain('acceptance-without-reason');
  expect(unfilled).toContain('seat-outside-practice');
  const after = judge(filled(empty));
  expect(after.accepted.map((one) => one.rule)).toContain('seat-outside-practice');
  expect(after.findings.map((one) => one.rule)).not.toContain('acceptance-without-reason');
});

test('the innermost block: what a battery is found for stands in the battery', () => {
  const text = site().replace('select reply steps', 'battery {\n    voltage 24 V\n    capacity 1 Ah over 20 h\n    lasts 480 h\n  }');
  const analysis = judge(text);
  const from = text.indexOf('battery {');
  const inside = analysis.findings.filter((finding) => finding.start >= from && finding.end <= text.indexOf('}', from));
  const forms = inside.flatMap((finding) => acceptance(analysis, finding, asOf) ?? []);
  expect(forms.length).toBeGreaterThan(0);
  for (const form of forms) expect(made(text, form)).toMatch(/ {4}lasts 480 h\n {4}accept \S+ because "" by "" until 2027-05-20\n {2}\}/);
});

test('none for what cannot be overruled, nor where braces do not pair', () => {
  const text = 'language 1\nleaf a {\n  width 2\n}\n';
  for (const finding of judge(text).findings.filter((one) => one.rule === 'unit-missing' || one.rule === 'fact-missing'))
    expect(acceptance(judge(text), finding, asOf)).toBeUndefined();
  const broken = judge(site().replace('seat 1.5 s\n', 'seat 4 s\n').replace('leaf east {', 'leaf east'));
  for (const finding of broken.findings)
    if (broken.installation.reading.tree.problems.length > 0) expect(acceptance(broken, finding, asOf)).toBeUndefined();
});

test('whatever can be accepted in any site: the form keeps the shape, and filled in it takes the finding away', () => {
  const changes = [
    ['seat 1.5 s', 'seat 4 s'],
    ['dwell 25 s', 'dwell 2 s'],
    ['users limited', 'users public'],
    ['height 200 mm', 'height 900 mm'],
    ['terminator 8.2 kohm', 'terminator 4.7 kohm'],
    ['motion {\n  slow-zone last 10 %\n  seat 1.5 s\n  lag opening 3 s\n  dwell 25 s\n}', 'motion { seat 4 s }'],
    [
      'panel main : rowan-pair {',
      'panel main : rowan-pair {\n\n  battery {\n    voltage 24 V\n    capacity 1 Ah over 20 h\n    lasts 48 h\n  }',
    ],
    ['\n', '\r\n'],
  ] as const;
  let count = 0;
  fc.assert(
    fc.property(fc.subarray([...changes]), fc.nat(), (chosen, pick) => {
      const text = chosen.reduce((now, [from, to]) => (from === '\n' ? now.replaceAll(from, to) : now.replace(from, to)), site());
      const analysis = judge(text);
      const forms = analysis.findings.flatMap((finding) => {
        const form = acceptance(analysis, finding, asOf);
        return form === undefined ? [] : [{ finding, form }];
      });
      const one = forms[pick % Math.max(1, forms.length)];
      if (one === undefined) return;
      count++;
      const now = made(text, one.form);
      expect(parse(now).problems).toEqual([]);
      if (text.includes('\r\n')) expect(now).not.toMatch(/[^\r]\n/);
      expect(judge(now).findings.map((finding) => finding.rule)).toContain('acceptance-without-reason');
      const after = judge(filled(now));
      expect(after.accepted.some((finding) => finding.rule === one.finding.rule && finding.what === one.finding.what)).toBe(true);
    }),
    { numRuns: 120 },
  );
  expect(count).toBeGreaterThan(60);
});

// --- What a block lacks.

const adds = (marked: string): string | undefined => {
  const { analysis, offset, text } = bench(marked);
  const form = missingLines(analysis, offset);
  return form === undefined
    ? undefined
    : `${form.title}\n${made(text, form)
        .split('\n')
        .filter((line) => !text.split('\n').includes(line))
        .join('\n')}`;
};

test.each<[what: string, marked: string, added: string | undefined]>([
  [
    'required lines',
    'language 1\nleaf we|st {\n  opens inward 90 deg\n  height 2 m\n  room-when-open 1 m\n  hinge-guard 1 m\n  ground-gap 130 mm\n}\n',
    'Add what leaf “west” lacks (2 lines)\n  width\n  mass',
  ],
  ['a caret inside the block', 'language 1\ncontrol a {\n  by keypad\n|\n}\n', 'Add what control “a” lacks (1 line)\n  acts'],
  [
    'what a rule asks for by the model',
    `${uses}leaf a {\n  slides left 2 m\n}\ndrive b : birch-ram {|\n  moves a\n}\n`,
    'Add what drive “b” lacks (2 lines)\n  post-bracket\n  leaf-bracket',
  ],
  [
    'how a leaf opens, where its drive says it',
    `${uses}leaf a {|\n  width 2 m\n  mass 90 kg\n}\ndrive b : birch-rack {\n  moves a\n}\n`,
    'Add what leaf “a” lacks (2 lines)\n  slides\n  room-when-open',
  ],
  ['not where nobody says it', 'language 1\nleaf a {|\n  width 2 m\n  mass 90 kg\n}\n', undefined],
  [
    'sensors without a wire, in the panel',
    site('sensor far : finch-edge {\n  watches closing\n  on east closing-edge\n  terminator 8.2 kohm\n}\n').replace(
      'panel main',
      'panel |main',
    ),
    'Add what panel “main” lacks (1 line)\n  wire far to',
  ],
  ['nothing', site().replace('panel main', 'panel |main'), undefined],
  [
    'a line that stands there and cannot be read',
    'language 1\nleaf a {|\n  width 2\n  mass 5 kg\n  opens inward 90 deg\n  room-when-open 1 m\n  hinge-guard 1 m\n  ground-gap 130 mm\n}\n',
    undefined,
  ],
  ['outside all blocks', 'language 1\n|\nleaf a {\n}\n', undefined],
  ['where braces do not pair', 'language 1\nleaf a {|\nmotion {\n}\n', undefined],
])('adding: %s', (_what, marked, added) => {
  expect(adds(marked)).toBe(added);
});

test('what is added is unfinished, and every line of it is found; it claims nothing', () => {
  for (const word of [
    'leaf a',
    'drive a',
    'sensor a',
    'control a',
    'cable a',
    'measured',
    'panel-model a',
    'drive-model a',
    'sensor-model a',
    'cable-model a',
    'site',
  ]) {
    const text = `language 1\n${word} {\n}\n`;
    const form = missingLines(judge(text), within(text, word).offset);
    if (form === undefined) continue;
    const now = made(text, form);
    const lines = now
      .split('\n')
      .slice(2, -2)
      .filter((line) => line !== '');
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(line).toMatch(/^ {2}[a-z-]+(?: [a-z-]+)?$/);
    const found = judge(now).findings.filter((finding) => finding.rule === 'value-missing').length;
    expect(found, now).toBe(lines.length);
    expect(missingLines(judge(now), within(now, word).offset)).toBeUndefined();
  }
});
