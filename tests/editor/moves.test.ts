import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Move, movedTo, usesAfter } from '../../server/editor/index.ts';
import { Workspace, withEdits } from '../../server/engine/index.ts';
import { asOf, library, site } from './bench.ts';

const root = '/site';
const after = (path: string, text: string, ...moves: Move[]): string =>
  withEdits(
    text,
    usesAfter(path, text, moves, root, () => root),
  );
const used = (text: string): string[] => [...text.matchAll(/use "([^"]*)"/g)].map((match) => match[1] ?? '');

test.each<[what: string, path: string, text: string, moves: Move[], uses: string[]]>([
  [
    'a library is renamed',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\nuse "../library/drives.gate"\n',
    [{ from: '/site/library/panels.gate', to: '/site/library/boards.gate' }],
    ['../library/boards.gate', '../library/drives.gate'],
  ],
  [
    'a library moves into a folder',
    '/site/a.gate',
    'use "library/panels.gate"\n',
    [{ from: '/site/library/panels.gate', to: '/site/library/old/panels.gate' }],
    ['library/old/panels.gate'],
  ],
  [
    'a folder of libraries is renamed',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\nuse "../library/drives.gate"\n',
    [{ from: '/site/library', to: '/site/shelf' }],
    ['../shelf/panels.gate', '../shelf/drives.gate'],
  ],
  [
    'the file itself moves',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\n',
    [{ from: '/site/gates/a.gate', to: '/site/a.gate' }],
    ['library/panels.gate'],
  ],
  [
    'the file moves with what it uses: nothing changes',
    '/site/library/a.gate',
    'use "panels.gate"\n',
    [{ from: '/site/library', to: '/site/deep/er/library' }],
    ['panels.gate'],
  ],
  [
    'the file moves up beside what it uses',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\n',
    [
      { from: '/site/gates/a.gate', to: '/site/library/in/a.gate' },
      { from: '/site/library/panels.gate', to: '/site/library/in/panels.gate' },
    ],
    ['panels.gate'],
  ],
  [
    'both move, to different places',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\n',
    [
      { from: '/site/gates', to: '/site/x/y' },
      { from: '/site/library/panels.gate', to: '/site/p.gate' },
    ],
    ['../../p.gate'],
  ],
  [
    'a path that is written oddly and still leads there stays',
    '/site/gates/a.gate',
    'use ".././library//drives.gate"\n',
    [{ from: '/site/gates/a.gate', to: '/site/yards/a.gate' }],
    ['.././library//drives.gate'],
  ],
  [
    'a folder whose name only starts the same',
    '/site/gates/a.gate',
    'use "../library2/panels.gate"\n',
    [{ from: '/site/library', to: '/site/shelf' }],
    ['../library2/panels.gate'],
  ],
  [
    'a target outside the root cannot be followed',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\n',
    [{ from: '/site/library', to: '/elsewhere' }],
    ['../library/panels.gate'],
  ],
  [
    'a name that no path can hold',
    '/site/gates/a.gate',
    'use "../library/panels.gate"\n',
    [{ from: '/site/library/panels.gate', to: '/site/library/a"b.gate' }],
    ['../library/panels.gate'],
  ],
  [
    'a line that leads nowhere',
    '/site/gates/a.gate',
    'use "../../../x.gate"\nuse ""\nuse "a\\\\b.gate"\n',
    [{ from: '/site/gates/a.gate', to: '/site/a.gate' }],
    ['../../../x.gate', '', 'a\\\\b.gate'],
  ],
])('%s', (_what, path, text, moves, uses) => {
  expect(used(after(path, text, ...moves))).toEqual(uses);
});

test('what is inside a folder that moves moves with it; the most exact move counts', () => {
  const moves = [
    { from: '/a', to: '/b' },
    { from: '/a/c', to: '/d' },
  ];
  expect(movedTo('/a/x/y.gate', moves)).toBe('/b/x/y.gate');
  expect(movedTo('/a/c/y.gate', moves)).toBe('/d/y.gate');
  expect(movedTo('/ab/y.gate', moves)).toBe('/ab/y.gate');
});

test('after any moves that keep to the root, every file sees what it saw', () => {
  const folders = ['gates', 'library', 'yards/north', 'deep/er/still'];
  const files = new Map<string, string>([
    ...library,
    ['/site/gates/north.gate', site()],
    ['/site/gates/all.gate', 'language 1\nuse "../library/panels.gate"\nuse "north.gate"\n'],
    ['/site/yards/north/x.gate', site().replaceAll('../library', '../../library')],
  ]);
  const sees = (texts: ReadonlyMap<string, string>, path: string): { models: string[]; rules: string[] } => {
    const analysis = new Workspace({ root, read: (at) => (texts.has(at) ? { text: texts.get(at) as string } : 'missing') }).judge(
      path,
      texts.get(path) as string,
      asOf,
    );
    return {
      models: Object.values(analysis.shelf.models).flatMap((models) => [...models.keys()]),
      rules: analysis.findings.map((finding) => finding.rule),
    };
  };
  const moveOf = fc
    .tuple(
      fc.constantFrom(...files.keys(), '/site/gates', '/site/library', '/site/yards'),
      fc.constantFrom(...folders),
      fc.constantFrom('a.gate', 'b c.gate', 'ü.gate', 'm'),
    )
    .map(([from, folder, name]) => ({ from, to: `/site/new/${folder}/${from.endsWith('.gate') ? name.replace(/^m$/, 'm.gate') : name}` }));
  fc.assert(
    fc.property(fc.array(moveOf, { minLength: 1, maxLength: 2 }), (moves) => {
      const there = new Map([...files].map(([path, text]) => [movedTo(path, moves), after(path, text, ...moves)]));
      fc.pre(there.size === files.size);
      for (const path of files.keys()) expect(sees(there, movedTo(path, moves))).toEqual(sees(files, path));
    }),
    { numRuns: 100 },
  );
});
