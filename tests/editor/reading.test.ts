// Folding, growing selections, links, lenses, and what depends on what.
import { describe, expect, test } from 'vitest';
import {
  type Dependence,
  dependenceAt,
  dependenceOf,
  dependencesAt,
  dependents,
  foldings,
  highlight,
  indexOf,
  type Judge,
  lenses,
  likenessTo,
  links,
  type Symbol as Outlined,
  selectionAt,
  sources,
  symbols,
} from '../../server/editor/index.ts';
import { within } from '../kit/marker.ts';
import { asOf, type Bench, bench, site, uses } from './bench.ts';

test('blocks, runs of remarks and of libraries fold; what stands on one line does not', () => {
  const text =
    '# one\n# two\nlanguage 1\nuse "a.gate"\nuse "b.gate" # why\n\nleaf a {\n  # three\n  width 2 m # four\n  # five\n  # six\n}\n\nleaf b { width 2 m }\nsite {\n';
  const shown = foldings(bench(text).analysis).map(
    ({ start, end, kind, keepsLast }) => `${kind} ${JSON.stringify(text.slice(start, end))}${keepsLast ? ' …}' : ''}`,
  );
  expect(shown).toEqual([
    'comment "# one\\n# two"',
    'uses "use \\"a.gate\\"\\nuse \\"b.gate\\""',
    `block ${JSON.stringify(text.slice(text.indexOf('leaf a'), text.indexOf('\n\nleaf b')))} …}`,
    'comment "# five\\n  # six"',
  ]);
});

test.each<[what: string, marked: string, ...steps: string[]]>([
  [
    'from a number',
    'leaf a {\n  width 2.1|0 m\n}\n',
    '2.10',
    '2.10 m',
    'width 2.10 m',
    '{\n  width 2.10 m\n}',
    'leaf a {\n  width 2.10 m\n}',
  ],
  ['from its unit', 'leaf a {\n  width 2.10 m|m\n}\n', 'mm', '2.10 mm', 'width 2.10 mm'],
  ['by its keyword', 'leaf a {\n  closes onto b overlap 40| mm\n}\n', '40', '40 mm', 'overlap 40 mm', 'closes onto b overlap 40 mm'],
  ['within quotes', 'use "a/b|.gate"\n', 'a/b.gate', '"a/b.gate"', 'use "a/b.gate"'],
  ['from a name to its block', 'leaf we|st {\n  width 2 m\n}\n', 'west', 'leaf west', 'leaf west {\n  width 2 m\n}'],
  [
    'over all lines of a block',
    'leaf a {\n  width 2 m\n  mass| 3 kg\n}\n',
    'mass',
    'mass 3 kg',
    'width 2 m\n  mass 3 kg',
    '{\n  width 2 m\n  mass 3 kg\n}',
  ],
  ['in a remark', 'leaf a {\n  # no|te\n  width 2 m\n}\n', '# note', '{\n  # note\n  width 2 m\n}'],
  ['on nothing', 'leaf a {\n}\n|\n'],
])('a selection grows %s', (_what, marked, ...steps) => {
  const { analysis, offset, text } = bench(marked);
  const found = selectionAt(analysis, offset).map((span) => text.slice(span.start, span.end));
  expect(found.slice(0, steps.length)).toEqual(steps);
  expect(found.at(-1)).toBe(text);
});

test('names of rules are highlighted like all others', () => {
  const accept = 'accept seat-outside-practice because "x" by "K" until 2027-01-01\n';
  const { analysis, offset, text } = bench(site(`${accept}motion {\n  ${accept}}\n`).replace('accept seat', 'accept se|at'));
  expect(highlight(analysis, offset).map((place) => text.slice(place.start, place.end))).toEqual([
    'seat-outside-practice',
    'seat-outside-practice',
  ]);
});

test('links lead to libraries and to pages of rules', () => {
  const text = site(
    'accept seat-outside-practice because "x" by "K" until 2027-01-01\naccept no-such-rule because "x" by "K" until 2027-01-01\n',
  );
  expect(
    links(bench(text).analysis).map((link) => `${text.slice(link.start, link.end)} → ${link.kind === 'file' ? link.path : link.name}`),
  ).toEqual([
    '../library/drives.gate → /site/library/drives.gate',
    '../library/panels.gate → /site/library/panels.gate',
    '../library/sensors.gate → /site/library/sensors.gate',
    '../library/cables.gate → /site/library/cables.gate',
    'seat-outside-practice → seat-outside-practice',
  ]);
});

describe('lenses', () => {
  const shown = (text: string): string[] =>
    lenses(bench(text).analysis).map((lens) => `${text.slice(lens.at.start, text.indexOf(' {', lens.at.start))}: ${lens.title()}`);
  test('findings and the tightest margin of each leaf, drive, panel and of the site', () => {
    const found = shown(site());
    expect(found.map((one) => one.split(':')[0])).toEqual([
      'site "Heron Court"',
      'leaf west',
      'leaf east',
      'drive west-ram ',
      'panel main ',
    ]);
    expect(found.find((one) => one.startsWith('drive west-ram'))).toMatch(/stroke [\d.]+ mm to spare$/);
    for (const one of found) expect(one).toMatch(/: (?:no findings|(?:\d+ (?:errors?|warnings?|notes?)(?:, )?)+)(?: · .+)?$/);
  });
  test('a limit that is passed is said before all others', () => {
    const found = shown(site().replace('post-bracket 140 mm by 120 mm', 'post-bracket 240 mm by 220 mm'));
    expect(found[0]).toMatch(/west-ram stroke [\d.]+ mm too much$/);
    expect(found.find((one) => one.startsWith('drive west-ram'))).toMatch(/: \d errors?.* · stroke [\d.]+ mm too much$/);
  });
  test('also one of a rule that only warns, before those of errors that are kept', () => {
    expect(shown(site().replace('seat 1.5 s', 'seat 4 s'))[0]).toMatch(/ · seat 2 s too much$/);
  });
  test('none in a library; what stands alone has no margins', () => {
    expect(lenses(bench('language 1\npanel-model x {\n}\n').analysis)).toEqual([]);
    expect(shown('language 1\nleaf a {\n  opens inward 90\n}\n')).toEqual([expect.stringMatching(/^leaf a: \d errors(, \d \w+)*$/)]);
  });
});

test('a name is found by what somebody types of it, the best first', () => {
  const sorted = (query: string, names: string[]): string[] =>
    names
      .flatMap((name) => (likenessTo(query, name) === undefined ? [] : [{ name, rank: likenessTo(query, name) as number }]))
      .sort((a, b) => a.rank - b.rank)
      .map(({ name }) => name);
  expect(sorted('ram', ['tramway', 'west-ram', 'ramp', 'ram', 'rear-arm', 'mar'])).toEqual([
    'ram',
    'ramp',
    'west-ram',
    'tramway',
    'rear-arm',
  ]);
  expect(sorted('WR', ['west-ram', 'ram'])).toEqual(['west-ram']);
  expect(likenessTo('', 'x')).toBeDefined();
});

test('the index of a text holds what its outline holds, from its shape alone', () => {
  const { analysis, text } = bench(site());
  const count = (list: readonly Outlined[]): number => list.reduce((sum, one) => sum + 1 + count(one.children), 0);
  expect(indexOf(text)).toHaveLength(count(symbols(analysis)));
  const inModel = indexOf('language 1\npanel-model x {\n  selector reply {\n    option steps "a"\n  }\n}\n').find(
    (one) => one.name === 'steps',
  );
  expect(inModel).toMatchObject({ word: 'option', container: 'x › reply' });
});

describe('what depends on a value', () => {
  const run = <R>(steps: Generator<unknown, R>): R => {
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value;
    }
  };
  const judgeIn =
    ({ workspace, analysis }: Bench): Judge =>
    (text) =>
      workspace.judging(analysis.path, text, asOf);
  const labels = (found: readonly Dependence[]): string[] => found.map(({ kind, key, label }) => (kind === 'fact' ? label : key));
  const after = (marked: string): string[] => {
    const one = bench(marked);
    const [of] = dependencesAt(one.analysis, one.offset);
    return labels(run(dependents(one.analysis, of as Dependence, judgeIn(one))));
  };
  const before = (text: string, figure: string): string[] => {
    const one = bench(text);
    return labels(run(sources(one.analysis, dependenceOf(one.analysis, 'figure', figure) as Dependence, judgeIn(one))));
  };
  const at = (needle: string): string => site().replace(needle.replace('|', ''), needle);

  test('of a line: the figures that change with it and the rules that go by it', () => {
    const found = after(at('mass 1|65 kg'));
    expect(found).toContain('leaf.west.inertia');
    expect(found).toContain('leaf.west.kinetic-energy');
    expect(found).toContain('leaf-over-drive-rating');
    expect(found).not.toContain('leaf.west.run-time');
    expect(found.some((key) => key.startsWith('leaf.east'))).toBe(false);
  });
  test('also where the line says what would hold without it', () => {
    // 100 % is taken where nothing is stated; the wind force goes by it all the same.
    const windy = site()
      .replace('  users limited', '  users limited\n  wind 22 m/s terrain II')
      .replace('mass 165 kg', 'mass 165 kg\n  infill 10|0 %');
    expect(after(windy)).toContain('leaf.west.wind-force');
  });
  test('a rule that only comes to speak without the line', () => {
    expect(after(at('wire west-edge| to E0 E1'))).toContain('sensor-not-wired');
  });
  test('of a block: all that is worked out of it', () => {
    expect(after(at('leaf we|st'))).toEqual(
      expect.arrayContaining(['leaf.west.inertia', 'leaf.west.run-time', 'drive.west-ram.stroke-used']),
    );
  });
  test('of a figure: the figures that name it, and the rules that bound it', () => {
    const one = bench(site());
    const of = dependenceOf(one.analysis, 'figure', 'drive.west-ram.stroke-used') as Dependence;
    expect(labels(run(dependents(one.analysis, of, judgeIn(one))))).toContain('stroke-too-short');
  });
  test('what a figure is worked out from: lines, models, figures', () => {
    expect(before(site(), 'leaf.west.inertia')).toEqual(['width 2.10 m', 'mass 165 kg', 'opens inward 95 deg']);
    expect(before(site(), 'leaf.west.kinetic-energy')).toEqual(
      expect.arrayContaining([
        'width 2.10 m',
        'mass 165 kg',
        'drive west-ram : birch-ram',
        'post-bracket 140 mm by 120 mm',
        'leaf.west.inertia',
      ]),
    );
    expect(before(site(), 'leaf.west.kinetic-energy')).not.toContain('height 1.80 m');
  });
  test('also with models of the file’s own', () => {
    const text =
      'language 1\nleaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\n\ndrive d : shaft {\n  moves west\n}\n\ndrive-model shaft {\n  kind direct\n  rotation 110 deg\n  shaft-speed 9 deg/s\n}\n';
    expect(before(text, 'leaf.west.run-time')).toEqual(
      expect.arrayContaining(['opens inward 90 deg', 'shaft-speed 9 deg/s', 'kind direct', 'moves west']),
    );
    expect(after(text.replace('shaft-speed 9', 'shaft-speed |9'))).toContain('leaf.west.run-time');
  });
  test('both ways say the same of every line and figure', () => {
    const one = bench(site());
    const { analysis } = one;
    const judge = judgeIn(one);
    const forth = new Set<string>();
    for (const line of one.text.matchAll(/^ {2}\w.*$/gm)) {
      const of = dependencesAt(analysis, (line.index ?? 0) + 2)[0] as Dependence;
      for (const to of run(dependents(analysis, of, judge)))
        if (to.kind === 'figure' && analysis.figures.some((figure) => figure.id === to.key))
          forth.add(`${of.label} at ${of.key} → ${to.key}`);
    }
    const back = new Set<string>();
    for (const figure of analysis.figures)
      for (const from of run(sources(analysis, dependenceOf(analysis, 'figure', figure.id) as Dependence, judge)))
        if (from.kind === 'fact' && !/ : |\{/.test(from.label)) back.add(`${from.label} at ${from.key} → ${figure.id}`);
    expect([...back].sort()).toEqual([...forth].sort());
    expect(forth.size).toBeGreaterThan(50);
  });
  test('blocks that have nothing to do with a figure are not gone through', () => {
    const many =
      site() + Array.from({ length: 30 }, (_, i) => `leaf other-${i} {\n  width 2 m\n  mass 100 kg\n  opens inward 90 deg\n}\n`).join('');
    const one = bench(many);
    let steps = 0;
    const working = sources(one.analysis, dependenceOf(one.analysis, 'figure', 'leaf.west.inertia') as Dependence, judgeIn(one));
    for (;;) {
      const step = working.next();
      if (step.done === true) {
        expect(labels(step.value)).toEqual(['width 2.10 m', 'mass 165 kg', 'opens inward 95 deg']);
        break;
      }
      steps++;
    }
    expect(steps).toBeLessThan(150);
  });
  test('a line where it is written, a figure where it is shown', () => {
    const one = bench(at('mass 165 kg|'));
    expect(dependenceAt(one.analysis, one.offset)?.kind).toBe('figure');
    expect(dependenceAt(one.analysis, one.offset - 1)).toMatchObject({ kind: 'fact', label: 'mass 165 kg' });
    expect(dependencesAt(one.analysis, one.offset).map((node) => node.kind)).toEqual(['fact', 'figure', 'figure']);
  });
  test('nothing on a remark or a library; nothing of a key that is gone', () => {
    const one = bench(`${uses}# note\n`);
    expect(dependencesAt(one.analysis, within(one.text, 'note').offset)).toEqual([]);
    expect(dependencesAt(one.analysis, within(one.text, 'library').offset)).toEqual([]);
    expect(dependenceOf(one.analysis, 'fact', '3')).toBeUndefined();
    expect(dependenceOf(one.analysis, 'fact', 'x')).toBeUndefined();
    expect(dependenceOf(one.analysis, 'figure', 'leaf.west.inertia')).toBeUndefined();
  });
});
