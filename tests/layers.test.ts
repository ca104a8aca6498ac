// Who may know whom: the table of rooms in DEVELOPERS.md against what the sources import.
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, root, sources, type Source } from './kit/sources.ts';

/** Rooms as the table calls them, outermost folders of their own. */
const core = ['grammar', 'server/vocabulary', 'server/model', 'server/circuits', 'server/figures', 'server/safeguards', 'server/rules', 'server/diagnosis', 'server/papers', 'server/engine', 'server/editor'];
const rooms = [...core, 'server/lsp', 'server/cli', 'client'];

interface Row {
  readonly rooms: ReadonlySet<string>;
  readonly packages: ReadonlySet<string>;
}

/** The third column of the table, by room. */
function tableOf(text: string): Map<string, Row> {
  const table = new Map<string, Row>();
  const full = (name: string): string | undefined => rooms.find((room) => room === name || room === `server/${name}`);
  for (const line of text.split('\n')) {
    const cells = line.split('|').map((cell) => cell.trim());
    const room = /^`([a-z/]+)`$/.exec(cells[1] ?? '')?.[1];
    if (cells.length !== 5 || room === undefined || full(room) === undefined) continue;
    const may = (cells[3] ?? '').split(/,\s*/).flatMap((name) => (name === 'all above' ? [...table.keys()] : [name]));
    table.set(room, { rooms: new Set(may.flatMap((name) => full(name) ?? [])), packages: new Set(may.filter((name) => name !== '' && full(name) === undefined)) });
  }
  return table;
}

const table = tableOf(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'));

/** What goes past the table, and why it may. Each must be in use. */
const noted: readonly { readonly from: string; readonly to: RegExp; readonly typeOnly?: boolean; readonly why: string }[] = [
  { from: 'server/safeguards', to: /^server\/figures\/[a-z-]+\/[a-z]+\.ts$/, why: 'the workings of a figure' },
  { from: 'server/rules', to: /^server\/figures\/[a-z-]+\/[a-z]+\.ts$/, why: 'a rule reads the workings of one figure, not only its number' },
  { from: 'server/rules', to: /^server\/figures\/[a-z-]+\.ts$/, why: 'what those workings share' },
  { from: 'server/papers', to: /^server\/figures\/[a-z-]+(\/[a-z]+)?\.ts$/, why: 'a drawing shows the workings of a figure, not only its number' },
  { from: 'client', to: /^server\/lsp\/requests\.ts$/, why: 'names and shapes of the requests that client and server share' },
];

const roomOf = (path: string): string | undefined => rooms.find((room) => path.startsWith(room + '/'));
const packageOf = (from: string): string => (from.startsWith('@') ? from.split('/').slice(0, 2).join('/') : (from.split('/')[0] ?? from));

/** Every import that goes past the table, as a sentence; uses of noted ones are counted. */
function faults(files: readonly Source[], used: Set<unknown> = new Set()): string[] {
  const found: string[] = [];
  for (const { path, text } of files) {
    const room = roomOf(path);
    if (room === undefined) {
      found.push(`${path} stands in no room`);
      continue;
    }
    const may = table.get(room);
    for (const { from, typeOnly } of importsOf(text)) {
      if (!from.startsWith('.')) {
        if (from.startsWith('node:')) {
          if (core.includes(room)) found.push(`${path} imports ${from}: the core reads nothing of the machine`);
        } else if (may?.packages.has(packageOf(from)) !== true && !(room === 'server/lsp' && /^vscode-languageserver/.test(from))) found.push(`${path} imports the package ${from}`);
        continue;
      }
      const target = posix.normalize(posix.join(posix.dirname(path), from));
      // The bundles and the workshop are not sources of a room.
      const other = roomOf(target);
      if (other === room) continue;
      const exception = noted.find((note) => note.from === room && note.to.test(target) && (note.typeOnly !== true || typeOnly));
      if (exception !== undefined) used.add(exception);
      else if (other === undefined) found.push(`${path} imports ${target}, which is in no room`);
      else if (may?.rooms.has(other) !== true) found.push(`${path} imports ${other}`);
      else if (target !== `${other}/index.ts`) found.push(`${path} reaches into ${target}`);
    }
  }
  return found;
}

const files = sources(['grammar', 'server', 'client'], ['.ts']);

test('the table names every room that there is', () => {
  const present = rooms.filter((room) => files.some((file) => roomOf(file.path) === room));
  expect([...table.keys()].map((name) => rooms.find((room) => room === name || room === `server/${name}`))).toEqual(expect.arrayContaining(present));
  expect(table.get('grammar')).toEqual({ rooms: new Set(), packages: new Set(['chevrotain']) });
  expect(table.get('server/model')?.rooms).toEqual(new Set(['grammar', 'server/vocabulary']));
});

test('every import keeps to the table', () => {
  expect(files.length).toBeGreaterThan(100);
  const used = new Set<unknown>();
  expect(faults(files, used)).toEqual([]);
  // An exception that nobody needs is taken back.
  expect(noted.filter((note) => !used.has(note)).map((note) => `${note.from} → ${note.to}`)).toEqual([]);
});

test('no two rooms know each other', () => {
  const reach = (room: string, seen = new Set<string>()): Set<string> => {
    for (const next of table.get(room)?.rooms ?? []) if (!seen.has(next)) reach(next, seen.add(next));
    return seen;
  };
  for (const room of table.keys()) expect(reach(room).has(room), room).toBe(false);
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
    ['server/editor/x.ts', "import { Range } from 'vscode-languageserver';"],
    ['server/editor/x.ts', "import {\n  a,\n  b,\n} from '../lsp/server.ts';"],
    ['server/lsp/x.ts', "import { run } from '../cli/run.ts';"],
    ['server/cli/x.ts', "import { hover } from '../editor/index.ts';"],
    ['server/engine/x.ts', "import { hover } from '../editor/index.ts';"],
    ['server/papers/x.ts', "import '../editor/index.ts';"],
    ['client/x.ts', "import { parse } from '../grammar/index.ts';"],
    ['client/x.ts', "import { check } from '../server/lsp/server.ts';"],
    ['server/other/x.ts', ''],
  ];
  test.each(cases)('%s: %s', (path, text) => {
    expect(faults([{ path, text }])).toHaveLength(1);
  });
  test('and none where all is well', () => {
    expect(faults([{ path: 'server/model/x.ts', text: "import { parse } from '../../grammar/index.ts';\nimport { a } from './y.ts';\n// import { b } from '../rules/index.ts';\n" }])).toEqual([]);
  });
});
