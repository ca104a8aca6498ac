// What the command finds in a file is a matter of the file and of what it uses: the same alone, beside others, in whatever order, in a
// share of the work, and in an editor.
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { connect, itemsOf } from '../lsp/client.ts';
import { run } from './kit.ts';

const leaf = 'leaf west {\n  width 2 m\n  mass 5\n}\n';
const model = (name: string): string => `drive-model ${name} {\n  kind rack\n}\n`;
const files: Readonly<Record<string, string>> = {
  'a.gate': `language 1\nuse ""\n${leaf}`,
  'b.gate': `language 1\nuse "\n${leaf}`,
  'c.gate': `language 1\n${leaf}`,
  'd.gate': `language 1\nuse "library/one.gate"\nuse "library/two.gate"\ndrive d : ram {\n  moves west\n}\n${leaf}`,
  'e.gate': `language 1\nuse "library/two.gate"\ndrive d : ram {\n  moves west\n}\n${leaf}`,
  'sites/f.gate': `language 1\nuse "../library/one.gate"\ndrive d : ram {\n  moves west\n}\n${leaf}`,
  'sites/g.gate': `language 1\nuse "../library/round.gate"\n${leaf}`,
  'library/one.gate': `language 1\n${model('ram')}`,
  'library/two.gate': `language 1\nuse "one.gate"\n${model('ram')}${model('rem')}`,
  'library/round.gate': `language 1\nuse "again.gate"\n${model('rum')}`,
  'library/again.gate': `language 1\nuse "round.gate"\nleef\n`,
};
const names = Object.keys(files);

interface Finding {
  readonly rule: string;
  readonly severity: string;
  readonly message: string;
  readonly range: { readonly start: { readonly line: number; readonly column: number } };
}

let folder = '';
let elsewhere = '';
beforeEach(() => {
  elsewhere = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-elsewhere-')));
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-company-')));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
});
afterEach(() => {
  for (const gone of [folder, elsewhere]) rmSync(gone, { recursive: true, force: true });
});

/** What a run finds in each file that it was told of. */
function found(args: readonly string[], cwd: string): Map<string, readonly Finding[]> {
  const { stdout } = run(['check', '--output', 'json', '--as-of', '2026-06-01', ...args], { cwd });
  const report = JSON.parse(stdout) as { files: { path: string; findings: Finding[] }[] };
  return new Map(report.files.map(({ path, findings }) => [names.find((name) => `/${path}`.endsWith(`/${name}`)) ?? path, findings]));
}

const said = (findings: readonly Finding[] | undefined): unknown =>
  findings?.map(({ rule, severity, message, range }) => [rule, severity, message, range.start.line, range.start.column]);

test.each([
  ['from the folder itself', () => folder],
  ['from the folder above', () => tmpdir()],
  ['from elsewhere', () => elsewhere],
])('alone, in any order, and in shares: %s', (_, from) => {
  const cwd = from();
  const path = (name: string): string => relative(cwd, join(folder, name));
  const alone = new Map(names.map((name) => [name, said(found([path(name)], cwd).get(name))]));
  expect(said(found([path('a.gate')], cwd).get('a.gate'))).not.toEqual(said(found([path('c.gate')], cwd).get('c.gate')));
  const runs = [
    [relative(cwd, folder) || '.'],
    names.map(path),
    [...names].reverse().map(path),
    ...names.slice(1).map((name, index) => [path(names[index] as string), path(name)]),
  ];
  for (const args of runs)
    for (const [name, findings] of found(args, cwd)) expect(said(findings), `${name} of ${args.join(' ')}`).toEqual(alone.get(name));
  const shared = [1, 2, 3].flatMap((part) => [...found([relative(cwd, folder) || '.', '--shard', `${part}/3`], cwd)]);
  expect(shared.map(([name]) => name).sort()).toEqual([...names].sort());
  for (const [name, findings] of shared) expect(said(findings), name).toEqual(alone.get(name));
});

test.each([
  ['whose folder is open', true],
  ['in which only the file is open', false],
])('in an editor %s', async (_, isFolderOpen) => {
  const alone = new Map(names.map((name) => [name, found([name], folder).get(name)]));
  const client = await connect({ folders: isFolderOpen ? [pathToFileURL(folder).href] : [] });
  try {
    for (const name of names) {
      const uri = pathToFileURL(join(folder, name)).href;
      client.open(uri, files[name] as string);
      const items = itemsOf(await client.pullOf(uri)).map((item) => [item.code, item.range.start.line + 1, item.range.start.character + 1]);
      expect(items.sort(), name).toEqual(
        (alone.get(name) ?? []).map(({ rule, range }) => [rule, range.start.line, range.start.column]).sort(),
      );
    }
  } finally {
    await client.end();
  }
});
