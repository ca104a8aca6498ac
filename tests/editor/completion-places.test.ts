// At each place exactly what fits it; and whatever is taken there, nothing is broken by it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Completion, completion, monthsAfter } from '../../server/editor/index.ts';
import { type Analysis, Workspace } from '../../server/engine/index.ts';
import { blocks } from '../../server/vocabulary/index.ts';
import { asOf, bench, library, site, uses } from './bench.ts';

const context = { libraries: [...library.keys()], today: asOf };

/** The labels, best first; the one that is chosen beforehand with a star. */
function labels(marked: string): string {
  const { analysis, offset } = bench(marked);
  const { items } = completion(analysis, offset, context);
  return [...items]
    .sort((a, b) => a.rank - b.rank)
    .map((item) => item.label + (item.preselect ? '*' : ''))
    .join(' ');
}
const inPanel = (line: string): string => site().replace('select reply steps', line);
const inMotion = (line: string): string => site().replace('dwell 25 s', line);
/** More devices than the small site has: none of them is wired. */
const more = `sensor east-edge : finch-edge {
  watches closing
  on east closing-edge
}
sensor far : finch-relay {
  watches closing
}
sensor plain {
}
sensor loop : finch-loop {
  watches closing
}
drive east-ram : birch-ram {
  moves east
}
control bell {
  by push-button
  acts impulse
}
`;
const wiring = (line: string): string => site(more).replace('select reply steps', line);
/** What a leaf can say, what it must say first; without the words that do not fit. */
const leafWords = (...unfit: readonly string[]): string => {
  const must = ['width', 'mass'];
  const all = [...must, ...Object.keys(blocks.leaf.lines).filter((word) => !must.includes(word))];
  return [...all.filter((word) => !unfit.includes(word)), 'accept', 'expects'].join(' ');
};
const leaf = (line: string): string => `language 1\nleaf a {\n  ${line}\n  |\n}`;

const templates =
  'drive-and-edge-library edge-with-wiring measured-forces panel-library safety-function sliding-gate swing-leaf swing-pair';

describe('exactly what fits', () => {
  test.each<[what: string, marked: string, labels: string]>([
    [
      'an empty file',
      '|',
      `language use site leaf drive sensor control panel motion cable measured function panel-model drive-model sensor-model cable-model ${templates} accept expects-no expects`,
    ],
    [
      'a site: nothing that it can hold once and holds',
      site('|'),
      `use leaf drive sensor control panel cable measured function panel-model drive-model sensor-model cable-model ${templates} accept expects-no expects`,
    ],
    ['a leaf that is neither swing nor sliding yet', 'language 1\nleaf a {\n  |\n}', leafWords()],
    ['a swing leaf', leaf('opens inward 90 deg'), leafWords('opens', 'slides', 'passes', 'tail', 'roller-spacing')],
    [
      'a sliding leaf',
      leaf('slides left 2 m'),
      leafWords('opens', 'slides', 'hinge-tilt', 'rises', 'hinge-guard', 'thickness', 'hinge-gap', 'hinge-offset', 'post-proud'),
    ],
    ['a ram', `${uses}drive a : birch-ram {\n  |\n}`, 'moves post-bracket leaf-bracket fitted release accept expects'],
    ['an arm', `${uses}drive a : birch-arm {\n  |\n}`, 'moves shaft leaf-bracket fitted release accept expects'],
    ['a rack', `${uses}drive a : birch-rack {\n  |\n}`, 'moves fitted release accept expects'],
    ['a beam', `${uses}sensor a : finch-beam {\n  |\n}`, 'watches height on own-supply fitted accept expects'],
    ['an edge', `${uses}sensor a : finch-edge {\n  |\n}`, 'watches on terminator leakage chains-into fitted accept expects'],
    [
      'an edge that is terminated',
      `${uses}sensor a : finch-edge {\n  terminator 8.2 kohm\n  |\n}`,
      'watches on leakage fitted accept expects',
    ],
    ['a loop', `${uses}sensor a : finch-loop {\n  |\n}`, 'watches own-supply fitted accept expects'],
    ['a panel that learns', inPanel('|'), 'wire link select registered isolator accessory fitted battery solar accept expects'],
    [
      'a panel that does not learn and has no selectors',
      `panel-model plain-box {\n  terminal S0 common\n  terminal S1 safety-input normally-closed common S0\n}\npanel a : plain-box {\n  |\n}`,
      'wire link isolator accessory fitted battery solar accept expects',
    ],
    ['a motion of two leaves', inMotion('|'), 'speed force lag order dwell pre-warning pedestrian accept expects'],
    [
      'a motion of one leaf',
      'language 1\nleaf a {\n}\nmotion {\n  |\n}',
      'speed force slow-zone seat dwell pre-warning pedestrian accept expects',
    ],
    [
      'a model of a ram',
      'language 1\ndrive-model a {\n  kind linear-ram\n  |\n}',
      'stroke speed senses-obstacles limits-force ramp slow-speed thrust stops-in seat widest-leaf heaviest-leaf consumes motor least-voltage double-insulated duty pfhd performance-level category mttfd b10d coverage common-cause',
    ],

    ['devices that want a wire, all signals first', wiring('wire |'), 'east-edge far plain loop west-ram east-ram fobs bell'],
    ['a line is not in its own way', site().replace('wire west-edge to E0 E1', 'wire |west-edge to E0 E1'), 'west-edge west-ram fobs'],
    ['an edge has one connection', wiring('wire east-edge |'), 'to*'],
    ['the free input for an edge, then its return', wiring('wire east-edge to |'), 'E2 E0'],
    ['the return of the input', wiring('wire east-edge to E2 |'), 'E0*'],
    ['an input with its return is whole', wiring('wire east-edge to E2 E0 |'), ''],
    ['a free input of that return', wiring('wire east-edge to E0 |'), 'E2*'],
    ['ends of the line itself are free', site().replace('wire west-edge to E0 E1', 'wire west-edge to E0 |E1'), 'E1 E2'],
    ['a relay sensor has three connections', wiring('wire far |'), 'to supply test'],
    ['two of them once its signal is wired', wiring('wire far to G1 G0\n  wire far |'), 'supply test'],
    ['inputs for a relay, those for a stop after the others', wiring('wire far to |'), 'G1 G2 H1 H0 G0'],
    ['a normally-open relay goes to no normally-closed input', wiring('wire loop to |'), 'K1 K2 K0'],
    ['a supply', wiring('wire far supply to |'), 'V1 X1'],
    ['the return of a supply, which no input claims', wiring('wire far supply to V1 |'), 'V0*'],
    ['a test', wiring('wire far test to |'), 'X1*'],
    ['a sensor of which nothing is known', wiring('wire plain to |'), 'K1 K2 G1 G2 E2 H1 K0 H0 G0 E0 T0 T1'],
    ['motor outputs', wiring('wire east-ram to |'), 'LA1 LA2 LB1 LB2'],
    ['the other end of the same output', wiring('wire east-ram to LB1 |'), 'LB2 LA1 LA2'],
    ['outputs that are free', wiring('wire west-ram to LA1 LA2\n  wire east-ram to |'), 'LB1 LB2'],
    ['a button', wiring('wire bell |'), 'to*'],
    ['inputs for a button', wiring('wire bell to |'), 'K1 K2 K0'],
    ['inputs for one that stops the gate', wiring('wire bell to |').replace(/(control bell \{[^}]*acts )impulse/, '$1stop'), 'H1 H0'],
    ['inputs that a link can close', inPanel('link |'), 'H1 G1 G2'],
    ['its own return', inPanel('link H1 |'), 'H0*'],
    ['inputs of that return', inPanel('link G0 |'), 'G1 G2'],
    ['those that no link closes', inPanel('link H1 H0\n  link |'), 'G1 G2'],
    ['a link has two ends', inPanel('link H1 H0 |'), ''],
    ['selectors that are not set', inPanel('select |'), 'reply*'],
    ['none is left', site().replace('select reply steps', 'select reply steps\n  select |'), ''],
    ['its positions', inPanel('select reply |'), 'steps closes-alone held'],
    ['sensors to learn', inPanel('registered |'), 'lower-beam*'],
    ['what feeds an accessory', inPanel('accessory "x" draws 5 mA from |'), 'V1 W1'],

    ['leaves without a drive', site('drive b {\n  moves |\n}'), 'east*'],
    ['the leaf that this very drive moves is free for it', site().replace('moves west', 'moves |west'), 'west east'],
    ['leaves that can be covered', site().replace('closes onto east', 'closes onto |'), 'east*'],
    ['none that is covered already, nor one that covers this one', site('leaf north {\n  closes onto |\n}'), 'west*'],
    ['edges that no other leads to', site(more).replace('on east closing-edge', 'chains-into |'), 'west-edge plain'],
    [
      'and none that leads back',
      site(more).replace('on east closing-edge', 'chains-into west-edge').replace('terminator 8.2 kohm', 'chains-into |'),
      'plain*',
    ],
    ['edges of a swing leaf', site('sensor x {\n  on west |\n}'), 'closing-edge receiving-edge opening-edge hinge-edge bottom-edge'],
    [
      'edges of a sliding leaf',
      'language 1\nleaf a {\n  slides left 2 m\n}\nsensor x {\n  on a |\n}',
      'closing-edge receiving-edge opening-edge bottom-edge post-edge',
    ],
    [
      'what no cable feeds first',
      site('cable x {\n  feeds west-ram\n}\ncable y {\n  feeds |\n}'),
      'lower-beam west-edge fobs main west-ram',
    ],
    ['parts of a safety function are no controls', site('function f {\n  parts |\n}'), 'lower-beam west-edge west-ram main'],
    ['the movement that no lag tells of', inMotion('lag |'), 'closing'],
    ['the second leaf', inMotion('order opening west |'), 'east*'],
    [
      'facts that no other adjuster sets',
      'language 1\npanel-model x {\n  adjuster a {\n    sets dwell\n  }\n  adjuster b {\n    sets |\n  }\n}',
      'lag-opening lag-closing seat slow-zone force speed',
    ],
    [
      'inputs without a window',
      'language 1\npanel-model x {\n  terminal A0 common\n  terminal A1 edge-input common A0\n  terminal A2 edge-input common A0\n  terminal M motor\n  window A1 1 kohm .. 2 kohm\n  window |\n}',
      'A2*',
    ],
    [
      'terminals that give something',
      'language 1\npanel-model x {\n  terminal A0 common\n  terminal A2 edge-input common A0\n  terminal M motor\n  terminal V supply-out\n  output M gives 1 A at 24 V\n  output |\n}',
      'V*',
    ],
    ['movements that are not named yet', 'language 1\nsensor a {\n  watches closing |\n}', 'opening pedestrian'],

    ['parts of an acceptance', site('accept use-unused |'), 'because until by'],
    ['a reason', site('accept use-unused because |'), '"…"'],
    ['an end: in three months, six, and a year', site('accept use-unused because "x" until |'), '2027-02-20 2027-05-20 2027-11-20'],
    ['the day of a measurement', 'language 1\nmeasured {\n  on |\n}', '2026-11-20'],
    ['a day that nobody here can know', 'language 1\nmeasured {\n  instrument "x" calibrated |\n}', ''],
    [
      'libraries that are not used',
      'language 1\nuse "../library/cables.gate"\nuse |',
      '../library/drives.gate ../library/panels.gate ../library/sensors.gate',
    ],
    [
      'the one that this very line uses',
      'language 1\nuse "../library/ca|bles.gate"\n',
      '../library/cables.gate ../library/drives.gate ../library/panels.gate ../library/sensors.gate',
    ],
    ['the version', 'language |', '1*'],
    ['units of a speed', `language 1\nsite {\n  working-wind 12 |`, 'm/s mm/s km/h m/min ft/s ft/min mph'],
  ])('%s', (_what, marked, expected) => {
    expect(labels(marked)).toBe(expected);
  });
});

test('rules for an acceptance: those with findings here first, with how many, and never one that cannot be accepted', () => {
  const { analysis, offset } = bench(inMotion('seat 4 s\n  accept |').replace('seat 1.5 s\n', ''));
  const items = completion(analysis, offset, context).items;
  expect(items.filter((item) => item.rank === 0).every((item) => /^\d+ findings? here · /.test(item.detail))).toBe(true);
  expect(items.filter((item) => item.rank === 0).map((item) => item.label)).toContain('seat-outside-practice');
  expect(items.map((item) => item.label)).not.toContain('unit-missing');
  const promised = bench(site('expects |'));
  expect(completion(promised.analysis, promised.offset, context).items.map((item) => item.label)).toContain('unit-missing');
});

test('months later: the same day, or the last of the month', () => {
  expect(monthsAfter('2026-11-20', 6)).toBe('2027-05-20');
  expect(monthsAfter('2026-08-31', 6)).toBe('2027-02-28');
  expect(monthsAfter('2027-08-31', 6)).toBe('2028-02-29');
  expect(monthsAfter('2026-12-31', 12)).toBe('2027-12-31');
});

// --- Taking an item.

/** The text with an item taken and the rest of what it stands in replaced, and where places to fill are. */
function taken(text: string, replace: { readonly start: number; readonly end: number }, item: Completion): string {
  return text.slice(0, replace.start) + item.plain + text.slice(replace.end);
}
const judge = (path: string, text: string): Analysis =>
  new Workspace({ root: '/site', read: (at) => (library.has(at) ? { text: library.get(at) as string } : 'missing') }).judge(
    path,
    text,
    asOf,
  );
const names = [
  'name-unknown',
  'model-unknown',
  'terminal-unknown',
  'selector-unknown',
  'acceptance-of-unknown-rule',
  'use-missing-file',
  'use-outside-root',
  'use-cycle',
  'word-unknown',
  'choice-unknown',
  'unit-unknown',
  'unit-wrong',
];
/** How often what is wrong with the shape, and each name on a line that leads nowhere. */
function faults({ installation, findings, text }: Analysis, line: number | undefined): Map<string, number> {
  const counts = new Map<string, number>();
  const add = (key: string): void => void counts.set(key, (counts.get(key) ?? 0) + 1);
  for (const problem of installation.reading.tree.problems) add(problem.kind);
  const lineAt = (offset: number): number => text.slice(0, offset).split('\n').length;
  // A model that is still to be named stands for nothing yet.
  for (const finding of findings)
    if (
      line !== undefined &&
      names.includes(finding.rule) &&
      lineAt(finding.start) === line &&
      text.slice(finding.start, finding.end) !== 'model'
    )
      add(finding.rule);
  return counts;
}
const worse = (before: Map<string, number>, after: Map<string, number>): string[] =>
  [...after].filter(([key, count]) => count > (before.get(key) ?? 0)).map(([key]) => key);

test('taking any item at any place of a whole file breaks no shape; at the end of its line it names nothing unknown', () => {
  // At the end of a word of a line that is cut there: as it stands when somebody has typed so far.
  const texts = [site(more), ...library.values()];
  fc.assert(
    fc.property(fc.constantFrom(...texts), fc.nat(), fc.nat(), fc.boolean(), (text, place, pick, cut) => {
      const offset = place % (text.length + 1);
      const end = text.indexOf('\n', offset);
      // Braces of the line stay; what a writer has not yet written of it is not there.
      const rest = end < 0 ? '' : text.slice(offset, end);
      const isCut = cut && !/[{}]/.test(rest);
      const now = isCut ? text.slice(0, offset) + text.slice(offset + rest.length) : text;
      const path = '/site/gates/north.gate';
      const analysis = judge(path, now);
      const { items, replace } = completion(analysis, offset, context);
      const item = items[pick % Math.max(1, items.length)];
      // A sign waits for its number: nothing but a number could stand there, and that is the writer's.
      if (item === undefined || item.label === '±') return;
      // Behind a word that is exchanged stand the values of the one before: what they mean then is the writer's to say.
      const shapeOnly = !isCut && rest.slice(replace.end - offset).trim() !== '';
      const line = shapeOnly ? undefined : now.slice(0, offset).split('\n').length;
      const before = faults(analysis, line);
      const after = faults(judge(path, taken(now, replace, item)), line);
      expect(worse(before, after), `${JSON.stringify(now.slice(Math.max(0, offset - 60), offset))} + ${item.label}`).toEqual([]);
    }),
    { numRuns: 1500 },
  );
});
