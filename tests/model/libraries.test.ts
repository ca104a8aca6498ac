// What a file can see through its `use` lines, and what is said where they lead nowhere, in circles or to two of a name.
import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/index.ts';
import { inOneGo } from '../../server/engine/inside.ts';
import { buildingShelf, type Installation, type Lookup, libraryOf, mostLibraries, resolve } from '../../server/model/index.ts';
import { readFile } from '../../server/vocabulary/index.ts';

/** The installation of one file among others, all in a root `/w`. */
function installation(
  path: string,
  files: Readonly<Record<string, string>>,
  special: Readonly<Record<string, 'outside' | 'unreadable' | 'waiting'>> = {},
): Installation & { readonly lookups: readonly string[] } {
  const lookups: string[] = [];
  const lookup: Lookup = (asked) => {
    lookups.push(asked);
    const text = files[asked];
    return special[asked] ?? (text === undefined ? 'missing' : libraryOf(asked, readFile(parse('language 1\n' + text)), '/w'));
  };
  const reading = readFile(parse('language 1\n' + (files[path] ?? '')));
  const shelf = inOneGo(buildingShelf(path, reading, '/w', lookup));
  return { ...resolve(path, reading, shelf), lookups };
}
const kinds = (of: Installation): string[] => of.problems.map((problem) => problem.kind);
const model = (name: string): string => `drive-model ${name} {\n  kind rack\n}\n`;
const uses = (...paths: string[]): string => paths.map((path) => `use "${path}"\n`).join('');
const drive = (name: string): string => `drive d : ${name} {\n  moves l\n}\nleaf l {\n  width 2 m\n  mass 5 kg\n}\n`;

test('a model is found in a library, and in a library of a library', () => {
  const files = {
    '/w/s.gate': uses('a.gate') + drive('far'),
    '/w/a.gate': uses('deep/b.gate') + model('near'),
    '/w/deep/b.gate': uses('../c.gate'),
    '/w/c.gate': model('far'),
  };
  const of = installation('/w/s.gate', files);
  expect(kinds(of)).toEqual([]);
  expect(of.drives[0]?.model?.path).toBe('/w/c.gate');
  expect(of.libraries).toEqual(['/w/a.gate', '/w/deep/b.gate', '/w/c.gate']);
});

test('a model is found in the file itself', () => {
  expect(kinds(installation('/w/s.gate', { '/w/s.gate': model('own') + drive('own') }))).toEqual([]);
});

test('what is not used is not seen', () => {
  const of = installation('/w/s.gate', { '/w/s.gate': drive('far'), '/w/c.gate': model('far') });
  expect(kinds(of)).toEqual(['model-unknown']);
  expect(of.drives[0]?.model).toBeUndefined();
  expect(of.lookups).toEqual([]);
});

test('a model of another kind is not taken for it', () => {
  expect(kinds(installation('/w/s.gate', { '/w/s.gate': 'sensor-model m {\n  kind beam\n}\n' + drive('m') }))).toEqual(['model-unknown']);
});

test('a name that is nearly right is suggested', () => {
  const of = installation('/w/s.gate', { '/w/s.gate': uses('a.gate') + drive('birch-rum'), '/w/a.gate': model('birch-ram') });
  expect(of.problems[0]?.detail).toMatchObject({ name: 'birch-rum', meant: 'birch-ram' });
});

describe('circles', () => {
  test('of one file', () => {
    expect(kinds(installation('/w/a.gate', { '/w/a.gate': uses('a.gate') + model('m') }))).toEqual(['use-cycle']);
  });
  test('of two files', () => {
    const files = { '/w/a.gate': uses('b.gate') + model('m'), '/w/b.gate': uses('a.gate') + model('n') };
    const of = installation('/w/a.gate', files);
    expect(kinds(of)).toEqual(['use-cycle']);
    expect(of.problems[0]?.detail).toEqual({ chain: ['/w/a.gate', '/w/b.gate', '/w/a.gate'] });
    expect(kinds(installation('/w/b.gate', files))).toEqual(['use-cycle']);
  });
  test('of three files', () => {
    const files = { '/w/a.gate': uses('b.gate'), '/w/b.gate': uses('c.gate'), '/w/c.gate': uses('a.gate') + model('m') };
    for (const path of Object.keys(files)) expect(kinds(installation(path, files)), path).toEqual(['use-cycle']);
  });
  test('that a site only leads to: the site still sees all models', () => {
    const files = { '/w/s.gate': uses('b.gate') + drive('m'), '/w/b.gate': uses('c.gate'), '/w/c.gate': uses('b.gate') + model('m') };
    const of = installation('/w/s.gate', files);
    expect(of.drives[0]?.model?.path).toBe('/w/c.gate');
    expect(kinds(of)).toEqual(['use-cycle']);
  });
});

test('a diamond is no circle, and its foot is looked at once', () => {
  const files = {
    '/w/s.gate': uses('a.gate', 'b.gate') + drive('m'),
    '/w/a.gate': uses('foot.gate') + model('x'),
    '/w/b.gate': uses('foot.gate') + 'drive-model y {\n  kind rack\n}\n',
    '/w/foot.gate': model('m'),
  };
  const of = installation('/w/s.gate', files);
  expect(kinds(of).filter((kind) => kind !== 'use-unused')).toEqual([]);
  expect(of.lookups.filter((path) => path === '/w/foot.gate')).toHaveLength(1);
});

describe('a file that is not there', () => {
  test('directly', () => {
    const of = installation('/w/s.gate', { '/w/s.gate': uses('gone.gate') });
    expect(of.problems.map(({ kind, detail }) => [kind, detail])).toEqual([['use-missing-file', { path: 'gone.gate', fault: 'missing' }]]);
    expect(of.libraries).toEqual(['/w/gone.gate']);
  });
  test('in a library: told at the line that leads there', () => {
    const of = installation('/w/s.gate', { '/w/s.gate': uses('a.gate'), '/w/a.gate': uses('gone.gate') });
    expect(kinds(of)).toEqual(['library-has-errors']);
    expect(of.problems[0]?.detail).toEqual({ library: '/w/a.gate', unfollowed: 'gone.gate', others: 0 });
  });
  test('that cannot be read, that lies behind a link, that is still to come', () => {
    const files = { '/w/s.gate': uses('a.gate') };
    expect(kinds(installation('/w/s.gate', files, { '/w/a.gate': 'unreadable' }))).toEqual(['use-missing-file']);
    expect(kinds(installation('/w/s.gate', files, { '/w/a.gate': 'outside' }))).toEqual(['use-outside-root']);
    expect(kinds(installation('/w/s.gate', files, { '/w/a.gate': 'waiting' }))).toEqual([]);
  });
  test('outside of the root: it is not even looked at', () => {
    const of = installation('/w/s.gate', { '/w/s.gate': uses('../x.gate', '/etc/x.gate', 'a\\\\b.gate') });
    expect(kinds(of)).toEqual(['use-outside-root', 'use-path-unfit', 'use-path-unfit']);
    expect(of.lookups).toEqual([]);
  });
  test('a library with mistakes is told, and its sound models are seen', () => {
    const of = installation('/w/s.gate', { '/w/s.gate': uses('a.gate') + drive('m'), '/w/a.gate': 'leef x {\n}\n' + model('m') });
    expect(kinds(of)).toEqual(['library-has-errors']);
    expect(of.drives[0]?.model).toBeDefined();
  });
});

describe('two of one name', () => {
  test('models in two libraries: told once, the first one counts', () => {
    const of = installation('/w/s.gate', {
      '/w/s.gate': uses('a.gate', 'b.gate') + drive('m'),
      '/w/a.gate': model('m'),
      '/w/b.gate': model('m'),
    });
    expect(kinds(of)).toEqual(['model-repeated']);
    expect(of.problems[0]?.detail).toMatchObject({ name: 'm', first: '/w/a.gate', second: '/w/b.gate' });
    expect(of.drives[0]?.model?.path).toBe('/w/a.gate');
  });
  test('a model in the file and one in a library', () => {
    const of = installation('/w/s.gate', { '/w/s.gate': uses('a.gate') + model('m') + drive('m'), '/w/a.gate': model('m') });
    expect(kinds(of)).toEqual(['model-repeated']);
    expect(of.drives[0]?.model?.path).toBe('/w/s.gate');
  });
  test('models in one file', () => {
    expect(kinds(installation('/w/a.gate', { '/w/a.gate': model('m') + model('m') }))).toEqual(['name-repeated']);
  });
  test('one library by two ways is not two', () => {
    const of = installation('/w/s.gate', { '/w/s.gate': uses('a.gate', './a.gate') + drive('m'), '/w/a.gate': model('m') });
    expect(kinds(of)).toEqual(['use-repeated']);
  });
});

test('a use line of which nothing is used is told, unless it leads to one that is', () => {
  const files = {
    '/w/s.gate': uses('a.gate', 'b.gate') + drive('m'),
    '/w/a.gate': uses('c.gate'),
    '/w/b.gate': model('other'),
    '/w/c.gate': model('m'),
  };
  const of = installation('/w/s.gate', files);
  expect(of.problems.map((problem) => [problem.kind, files['/w/s.gate'].slice(problem.start - 11, problem.end - 11)])).toEqual([
    ['use-unused', 'use "b.gate"'],
  ]);
});

describe('names', () => {
  const of = (text: string): Installation => installation('/w/s.gate', { '/w/s.gate': text });
  const told = (text: string): [string, string | undefined][] =>
    of(text).problems.map((problem) => [problem.kind, 'name' in problem.detail ? problem.detail.name : undefined]);
  const leaf = (name: string, more = ''): string => `leaf ${name} {\n  width 2 m\n  mass 5 kg\n${more}}\n`;

  test('a leaf, a sensor and a cable of one name are told apart by where they are named', () => {
    expect(
      told(
        leaf('a') + 'sensor a {\n  watches closing\n  on a closing-edge\n}\ncable a {\n  feeds a\n  length 5 m\n  carries 1 A at 24 V\n}\n',
      ),
    ).toEqual([]);
  });
  test('a sensor, a drive and a control share their names: a panel is wired to them', () => {
    expect(told('sensor a {\n  watches closing\n}\ncontrol a {\n  acts impulse\n}\n')).toEqual([['name-repeated', 'a']]);
  });
  test('names differ by case', () => {
    expect(told(leaf('a') + leaf('A'))).toEqual([]);
  });
  test('a name that is not there is told where it stands, with the nearest one', () => {
    const problems = of(leaf('west') + 'drive d {\n  moves wset\n}\n').problems;
    expect(problems).toMatchObject([{ kind: 'name-unknown', detail: { name: 'wset', meant: 'west', what: 'leaf' } }]);
  });
  test('every kind of name is looked up', () => {
    const text = `
leaf a {
  closes onto x1
}
drive d {
  moves x2
}
sensor s {
  watches closing
  on x3 closing-edge
  chains-into x4
}
panel p {
  wire x5 to B1
  registered x6
}
cable c {
  feeds x7
}
motion {
  order opening x8 a
  pedestrian x9
}
panel-model m {
  terminal B1 safety-input common x10
}
`;
    expect(
      told(text)
        .filter(([kind]) => kind === 'name-unknown')
        .map(([, name]) => name)
        .sort(),
    ).toEqual(['x1', 'x10', 'x2', 'x3', 'x4', 'x5', 'x6', 'x7', 'x8', 'x9']);
  });
  test('what is linked is linked both ways', () => {
    const site = of(
      leaf('west', '  closes onto east\n') +
        leaf('east') +
        'drive d {\n  moves west\n}\nsensor e {\n  watches closing\n  on west closing-edge\n  chains-into f\n}\nsensor f {\n  watches closing\n}\npanel p {\n  wire e to B1 B2\n  wire d test to M1\n  registered e, f\n}\n',
    );
    expect(site.problems).toEqual([]);
    const [west, east] = site.leaves;
    expect(west?.covers).toBe(east);
    expect(east?.coveredBy).toBe(west);
    expect(west?.drives).toEqual([site.drives[0]]);
    const [e, f] = site.sensors;
    expect(e?.leaf).toBe(west);
    expect(e?.next).toBe(f);
    expect(e?.wires[0]?.ends.map((end) => [end.at.text, end.terminal])).toEqual([
      ['B1', undefined],
      ['B2', undefined],
    ]);
    expect([e?.registered, f?.registered]).toEqual([true, true]);
    expect(site.panels[0]?.wires[1]).toMatchObject({ part: 'test', device: { kind: 'drive' } });
  });
  test('a drive is not a sensor', () => {
    expect(told('drive d {\n  moves l\n}\n' + leaf('l') + 'panel p {\n  registered d\n}\n')).toEqual([['name-unknown', 'd']]);
  });
  test('leaves that cover each other or themselves', () => {
    expect(told(leaf('a', '  closes onto a\n')).map(([kind]) => kind)).toEqual(['overlap-circular']);
    expect(told(leaf('a', '  closes onto b\n') + leaf('b', '  closes onto a\n')).map(([kind]) => kind)).toEqual(['overlap-circular']);
  });
  test('terminals of a panel model', () => {
    const site = of(
      'panel-model m {\n  terminal B0 common\n  terminal B1 safety-input common B0\n  terminal B1 motor\n}\npanel p : m {\n  wire s to B1 B9\n  select reply steps\n}\nsensor s {\n  watches closing\n}\n',
    );
    expect(site.problems.map((problem) => problem.kind)).toEqual(['name-repeated']);
    expect(site.panels[0]?.wires[0]?.ends.map((end) => end.terminal?.role)).toEqual(['safety-input', undefined]);
  });
});

test('what a file is', () => {
  expect(installation('/w/s.gate', { '/w/s.gate': '' }).kind).toBe('empty');
  expect(installation('/w/s.gate', { '/w/s.gate': model('m') }).kind).toBe('library');
  expect(installation('/w/s.gate', { '/w/s.gate': 'motion {\n}\n' }).kind).toBe('site');
});

describe('many files', () => {
  const chain = (length: number, foot = ''): Record<string, string> => {
    const files: Record<string, string> = { '/w/s.gate': uses('l1.gate') + drive('m') };
    for (let i = 1; i < length; i++) files[`/w/l${i}.gate`] = uses(`l${i + 1}.gate`);
    files[`/w/l${length}.gate`] = foot + model('m');
    return files;
  };

  test('in a chain: followed to the end, without an end of the stack', () => {
    expect(kinds(installation('/w/s.gate', chain(mostLibraries)))).toEqual([]);
  });
  test('more of them than are read: told once, with the first that is left out', () => {
    const of = installation('/w/s.gate', chain(mostLibraries + 3200));
    expect(kinds(of)).toEqual(['use-leads-too-far', 'model-unknown']);
    expect(of.problems[0]?.detail).toEqual({ most: mostLibraries, first: `/w/l${mostLibraries + 1}.gate` });
    expect(of.lookups).toHaveLength(mostLibraries);
  });
  test('each use line that has no room left is told, and those that lead where it has been are not', () => {
    const files: Record<string, string> = { ...chain(mostLibraries), '/w/x.gate': model('x'), '/w/y.gate': model('y') };
    files['/w/s.gate'] = uses('l1.gate', 'x.gate', 'l7.gate', 'y.gate') + drive('m');
    expect(kinds(installation('/w/s.gate', files))).toEqual(['use-leads-too-far', 'use-leads-too-far']);
  });
  test('in a ring: each of them is looked at once, and the circle is told once', () => {
    const files: Record<string, string> = {};
    for (let i = 0; i < 900; i++) files[`/w/l${i}.gate`] = uses(`l${(i + 1) % 900}.gate`, 'l0.gate', 'l450.gate');
    const of = installation('/w/l7.gate', files);
    expect(of.lookups).toHaveLength(899);
    expect(kinds(of)).toEqual(['use-cycle']);
  });
  test('with mistakes: one line tells the first, and how many more there are', () => {
    const files: Record<string, string> = { '/w/s.gate': uses('l0.gate') };
    for (let i = 0; i < 40; i++) files[`/w/l${i}.gate`] = uses(`l${i + 1}.gate`, 'gone.gate', 'gone-too.gate') + 'leef x {\n}\n';
    const of = installation('/w/s.gate', files);
    expect(of.problems.map(({ kind, detail }) => [kind, detail])).toEqual([
      ['library-has-errors', { library: '/w/l0.gate', unfollowed: undefined, others: 39 }],
    ]);
  });
});
