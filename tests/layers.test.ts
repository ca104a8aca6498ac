// Who may know whom: the table of rooms in DEVELOPERS.md against what the sources import.
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, root, type Source, sources } from './kit/sources.ts';

/** Rooms as the table calls them, outermost folders of their own. */
const core = [
  'grammar',
  'server/vocabulary',
  'server/model',
  'server/circuits',
  'server/figures',
  'server/safeguards',
  'server/rules',
  'server/diagnosis',
  'server/papers',
  'server/engine',
  'server/editor',
];
const rooms = [...core, 'server/lsp', 'server/cli', 'client'];

interface Row {
  readonly rooms: ReadonlySet<string>;
  readonly packages: ReadonlySet<string>;
  /** The files by which others may know the room, from its folder; `*` stands for the name of a folder. */
  readonly faces: readonly string[];
}

/** What the table says of each room: whom it may import, and by which files it may be known, `index.ts` where it does not say. */
function tableOf(text: string): Map<string, Row> {
  const table = new Map<string, Row>();
  const full = (name: string): string | undefined => rooms.find((room) => room === name || room === `server/${name}`);
  for (const line of text.split('\n')) {
    const cells = line.split('|').map((cell) => cell.trim());
    const room = /^`([a-z/]+)`$/.exec(cells[1] ?? '')?.[1];
    if (cells.length !== 5 || room === undefined || full(room) === undefined) continue;
    const may = (cells[3] ?? '').split(/,\s*/).flatMap((name) => (name === 'all above' ? [...table.keys()] : [name]));
    const faces = /Public faces: ((?:`[^`]+`(?:, )?)+)/.exec(cells[2] ?? '')?.[1];
    table.set(room, {
      rooms: new Set(may.flatMap((name) => full(name) ?? [])),
      packages: new Set(may.filter((name) => name !== '' && full(name) === undefined)),
      faces: faces === undefined ? ['index.ts'] : faces.split(', ').map((face) => face.slice(1, -1)),
    });
  }
  return table;
}

const table = tableOf(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'));

/** Within the papers: where things stand is worked out without what draws them. */
const scene = 'server/papers/scene/';

const roomOf = (path: string): string | undefined => rooms.find((room) => path.startsWith(room + '/'));
const packageOf = (from: string): string => (from.startsWith('@') ? from.split('/').slice(0, 2).join('/') : (from.split('/')[0] ?? from));

/** Whether a file is one by which its room may be known. */
function isFace(room: string, target: string): boolean {
  const inside = target.slice(room.length + 1).replace(/^[a-z-]+\//, '*/');
  return table.get(room)?.faces.includes(inside) === true;
}

/** Every import that goes past the table, as a sentence. */
function faults(files: readonly Source[]): string[] {
  const found: string[] = [];
  for (const { path, text } of files) {
    const room = roomOf(path);
    if (room === undefined) {
      found.push(`${path} stands in no room`);
      continue;
    }
    const may = table.get(room);
    for (const from of importsOf(text)) {
      if (!from.startsWith('.')) {
        if (from.startsWith('node:')) {
          if (core.includes(room)) found.push(`${path} imports ${from}: the core reads nothing of the machine`);
        } else if (may?.packages.has(packageOf(from)) !== true) found.push(`${path} imports the package ${from}`);
        continue;
      }
      const target = posix.normalize(posix.join(posix.dirname(path), from));
      // The bundles and the workshop are not sources of a room.
      const other = roomOf(target);
      if (other === room) {
        if (path.startsWith(scene) && !target.startsWith(scene)) found.push(`${path} imports ${target}: a scene knows no drawing`);
        continue;
      }
      if (other === undefined) found.push(`${path} imports ${target}, which is in no room`);
      else if (may?.rooms.has(other) !== true) found.push(`${path} imports ${other}`);
      else if (!isFace(other, target)) found.push(`${path} reaches into ${target}`);
    }
  }
  return found;
}

const files = sources(['grammar', 'server', 'client'], ['.ts']);

test('the table names every room that there is', () => {
  const present = rooms.filter((room) => files.some((file) => roomOf(file.path) === room));
  expect([...table.keys()].map((name) => rooms.find((room) => room === name || room === `server/${name}`))).toEqual(
    expect.arrayContaining(present),
  );
  expect(table.get('grammar')).toEqual({ rooms: new Set(), packages: new Set(['chevrotain']), faces: ['index.ts'] });
  expect(table.get('server/figures')?.faces).toEqual(['index.ts', '*/working.ts']);
  expect(table.get('server/model')?.rooms).toEqual(new Set(['grammar', 'server/vocabulary']));
});

test('every import keeps to the table', () => {
  expect(files.length).toBeGreaterThan(100);
  expect(faults(files)).toEqual([]);
});

test('every arrow leads to a room above, so there is no circle', () => {
  const above = new Set<string>();
  for (const [room, { rooms: may }] of table) {
    expect(
      [...may].filter((other) => !above.has(other)),
      room,
    ).toEqual([]);
    above.add(room);
  }
});

/** The folder of a figure that a file stands in; empty for one that stands beside them. */
const folderOf = (path: string): string => /^server\/figures\/([a-z-]+)\//.exec(path)?.[1] ?? '';
/** What may be imported by all figures: it knows none of them. */
const besideFigures = ['server/figures/kind.ts', 'server/figures/rows.ts'];

/** Every import inside the figures that goes past the face of a folder, as a sentence; who knows whom is put into `known`. */
function faultsOfFigures(files: readonly Source[], known: Map<string, Set<string>> = new Map()): string[] {
  const found: string[] = [];
  for (const { path, text } of files) {
    if (!path.startsWith('server/figures/') || path === 'server/figures/all.ts') continue;
    const own = folderOf(path);
    for (const from of importsOf(text)) {
      const target = posix.normalize(posix.join(posix.dirname(path), from));
      if (!from.startsWith('.') || !target.startsWith('server/figures/')) {
        if (path.endsWith('/maths.ts')) found.push(`${path} knows more than numbers: ${from}`);
        continue;
      }
      const other = folderOf(target);
      if (target.endsWith('/figure.ts')) found.push(`${path} imports ${target}: only the list of all figures does`);
      else if (other === own) continue;
      else if (own === '') found.push(`${path} imports ${target}, though it stands beside the figures`);
      else if (!besideFigures.includes(target) && !target.endsWith('/working.ts')) found.push(`${path} reaches into ${target}`);
      else if (other !== '') (known.get(own) ?? known.set(own, new Set()).get(own))?.add(other);
    }
  }
  return found;
}

describe('inside the figures', () => {
  const known = new Map<string, Set<string>>();
  const found = faultsOfFigures(files, known);

  test('a folder is known by its working alone, and figures by the list of them alone', () => {
    expect(found).toEqual([]);
    expect(known.size).toBeGreaterThan(20);
  });

  test('every folder has a working', () => {
    const paths = new Set(files.map(({ path }) => path));
    const folders = new Set([...paths].map(folderOf));
    expect([...folders].filter((name) => name !== '' && !paths.has(`server/figures/${name}/working.ts`))).toEqual([]);
  });

  test('no two of them know each other', () => {
    const reach = (name: string, seen = new Set<string>()): Set<string> => {
      for (const next of known.get(name) ?? []) if (!seen.has(next)) reach(next, seen.add(next));
      return seen;
    };
    for (const name of known.keys()) expect(reach(name).has(name), name).toBe(false);
  });

  const cases: readonly (readonly [path: string, text: string])[] = [
    ['server/figures/a/working.ts', "import { b } from '../b/maths.ts';"],
    ['server/figures/a/working.ts', "import type { B } from '../b/figure.ts';"],
    ['server/figures/a/working.ts', "import { figures } from './figure.ts';"],
    ['server/figures/a/figure.ts', "export { b } from '../b/gaps.ts';"],
    ['server/figures/a/figure.ts', "import { figuresOf } from '../index.ts';"],
    ['server/figures/a/maths.ts', "import type { Leaf } from '../../model/index.ts';"],
    ['server/figures/work.ts', "import { b } from './b/working.ts';"],
  ];
  test.each(cases)('a fault is seen in %s: %s', (path, text) => {
    expect(faultsOfFigures([{ path, text }])).toHaveLength(1);
  });
  test('and none where all is well', () => {
    const known = ['./maths.ts', '../b/working.ts', '../kind.ts', '../../model/index.ts'];
    const text = known.map((from) => `import { a } from '${from}';\n`).join('');
    expect(faultsOfFigures([{ path: 'server/figures/a/working.ts', text }])).toEqual([]);
  });
});

describe('these checks see a fault', () => {
  const cases: readonly (readonly [path: string, text: string])[] = [
    ['grammar/x.ts', "import { readFile } from '../server/vocabulary/index.ts';"],
    ['grammar/x.ts', "import { readFileSync } from 'node:fs';"],
    ['grammar/x.ts', "import x from 'lodash';"],
    ['server/model/x.ts', "import { scan } from '../../grammar/tokens.ts';"],
    ['server/model/x.ts', "import type { Figure } from '../figures/index.ts';"],
    ['server/model/x.ts', "export * from '../rules/index.ts';"],
    ['server/figures/a/x.ts', "const x = await import('../../rules/index.ts');"],
    ['server/rules/a/rule.ts', "import { scan } from '../../../grammar/tokens.ts';"],
    ['server/circuits/x.ts', "import type { Figure } from '../figures/index.ts';"],
    ['server/rules/a/rule.ts', "import { hover } from '../../editor/index.ts';"],
    ['server/rules/a/rule.ts', "import { figures } from '../../figures/b/figure.ts';"],
    ['server/papers/x.ts', "import { b } from '../figures/b/maths.ts';"],
    ['server/papers/x.ts', "import { rowOf } from '../figures/rows.ts';"],
    ['server/editor/x.ts', "import { Range } from 'vscode-languageserver';"],
    ['server/editor/x.ts', "import {\n  a,\n  b,\n} from '../lsp/server.ts';"],
    ['server/lsp/x.ts', "import { run } from '../cli/run.ts';"],
    ['server/cli/x.ts', "import { hover } from '../editor/index.ts';"],
    ['server/engine/x.ts', "import { hover } from '../editor/index.ts';"],
    ['server/papers/x.ts', "import '../editor/index.ts';"],
    ['server/papers/scene/x.ts', "import { line } from '../drawing/svg.ts';"],
    ['server/papers/scene/x.ts', "import { caution } from '../words.ts';"],
    ['client/x.ts', "import { parse } from '../grammar/index.ts';"],
    ['client/x.ts', "import { check } from '../server/lsp/server.ts';"],
    ['server/other/x.ts', ''],
  ];
  test.each(cases)('%s: %s', (path, text) => {
    expect(faults([{ path, text }])).toHaveLength(1);
  });
  test('and none where all is well', () => {
    expect(
      faults([
        {
          path: 'server/model/x.ts',
          text: "import { parse } from '../../grammar/index.ts';\nimport { a } from './y.ts';\n// import { b } from '../rules/index.ts';\n",
        },
      ]),
    ).toEqual([]);
    for (const from of ['../../figures/b/working.ts', '../../figures/index.ts'])
      expect(faults([{ path: 'server/rules/a/rule.ts', text: `import { b } from '${from}';\n` }])).toEqual([]);
  });
});
