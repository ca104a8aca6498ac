// The npm package as a stranger meets it: packed, installed into an empty folder without a network, run, imported, type-checked.
// Once from dist/npm, as it is handed on, and once by `npm pack` in the checkout, of which tests/workshop/library.mjs does the first part.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../kit/sources.ts';
import { packLibrary, reachable, writeLibrary } from '../workshop/library.mjs';

const folder = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-stranger-')));
const library = join(root, 'dist', 'npm');

const site = `language 1

leaf west {
  width 2 m
  mass 150 kg
  opens inward 90 deg
}
`;

/** What a program outside writes against the package. */
const program = `import { drawingNames, figuresShown, formatted, Workspace, type Analysis, type Severity } from 'pintle';

const workspace = new Workspace({ root: '/sites', read: () => 'missing' });
const text: string = ${JSON.stringify(site)};
const analysis: Analysis = workspace.judge('/sites/gate.gate', text, '2026-11-30');
const severities: Severity[] = analysis.findings.map((finding) => finding.severity);
const [leaf] = analysis.site.leaf;
const width: number | undefined = leaf?.facts.width?.value;
const canonical = formatted(text);
console.log(
  JSON.stringify({
    rules: analysis.findings.map(({ rule }) => rule),
    severities,
    width,
    name: leaf?.name,
    inertia: figuresShown(analysis).find(({ id }) => id === 'leaf.west.inertia')?.value,
    drawings: drawingNames(analysis),
    same: 'text' in canonical && canonical.text === text,
  }),
);
`;

function run(home: string, command: string, args: readonly string[]): { readonly status: number | null; readonly out: string } {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: home, encoding: 'utf8', shell: process.platform === 'win32' });
  return { status, out: `${stdout}${stderr}` };
}

beforeAll(async () => await writeLibrary(library));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.each([
  ['dist/npm', library, ['dependencies', 'peerDependencies', 'optionalDependencies', 'devDependencies', 'scripts', 'private']],
  ['the checkout', root, ['dependencies', 'peerDependencies', 'optionalDependencies']],
])('packed from %s', (name, from, lacks) => {
  const home = join(folder, name.replace(/\W/g, '-'));
  const installed = join(home, 'node_modules', 'pintle');

  beforeAll(() => {
    const tarballs = join(home, 'tarballs');
    mkdirSync(tarballs, { recursive: true });
    const tarball = join(tarballs, packLibrary(from, tarballs));
    writeFileSync(join(home, 'package.json'), '{ "name": "home", "private": true, "type": "module" }\n');
    const { status, out } = run(home, 'npm', ['install', '--offline', '--no-audit', '--no-fund', '--ignore-scripts', tarball]);
    expect(out, 'npm install').toContain('added 1 package');
    expect(status).toBe(0);
    writeFileSync(join(home, 'gate.gate'), site);
    writeFileSync(join(home, 'program.ts'), program);
  });

  test('needs nothing installed along, and says where everything is', () => {
    const manifest = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as Record<string, unknown>;
    expect(manifest['version']).toBe((JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version);
    for (const kind of lacks) expect(manifest, kind).not.toHaveProperty(kind);
  });

  test('holds what it needs and nothing else', () => {
    const files = readdirSync(installed, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => relative(installed, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
    const kinds = new Set(files.map((file) => file.replace(/^dist\/npm\//, '').replace(/^(pages\/\w+|types)\/.*(\.\w+)$/, '$1/…$2')));
    expect([...kinds].sort()).toEqual([
      ...['CHANGELOG.md', 'LICENSE', 'README.md', 'THIRD-PARTY-NOTICES.txt', 'index.js', 'manual.md', 'package.json'],
      ...['pages/figures/….md', 'pages/rules/….md', 'pintle.cjs', 'server.cjs', 'types/….ts'],
    ]);
  });

  describe('the command', () => {
    test('judges a file', () => {
      const { status, out } = run(home, 'npx', ['--offline', 'pintle', 'check', '--as-of', '2026-11-30', 'gate.gate']);
      expect(out).toContain('site-missing');
      expect(status).toBe(1);
    });
    test('explains a rule from the pages that lie beside it', () => {
      const { status, out } = run(home, 'npx', ['--offline', 'pintle', 'explain', 'lag-too-small']);
      expect(out).toContain('lag');
      expect(status).toBe(0);
    });
  });

  describe('the library', () => {
    test('works out what a file says', () => {
      const compiled = program
        .replace(/import \{.*\} from 'pintle';/, "import { drawingNames, figuresShown, formatted, Workspace } from 'pintle';")
        .replace(/: (?:string|Analysis|Severity\[\]|number \| undefined) =/g, ' =');
      writeFileSync(join(home, 'program.mjs'), compiled);
      const { status, out } = run(home, process.execPath, ['program.mjs']);
      expect(status, out).toBe(0);
      const told = JSON.parse(out) as Record<string, unknown>;
      expect(told).toMatchObject({ width: 2, name: 'west', same: true });
      expect(told['rules']).toEqual(['site-missing']);
      // A uniform leaf turning about its end: m·b²/3 (any mechanics textbook) = 150 · 4 / 3.
      expect(told['inertia']).toBeCloseTo(200, 9);
    });
    test('has types that a small program is checked against, and that see its mistakes', () => {
      const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
      const check = (name: string): string => {
        const options = [
          '--noEmit',
          '--strict',
          '--exactOptionalPropertyTypes',
          '--noUncheckedIndexedAccess',
          '--module',
          'nodenext',
          '--target',
          'es2022',
        ];
        return run(home, process.execPath, [tsc, ...options, '--lib', 'es2023,dom', name]).out;
      };
      expect(check('program.ts')).toBe('');
      writeFileSync(
        join(home, 'wrong.ts'),
        program
          .replace('const width: number | undefined', 'const width: string')
          .replace('analysis.findings.map', 'analysis.installation.map'),
      );
      expect(check('wrong.ts')).toMatch(/wrong\.ts.*'installation' does not exist[^]*wrong\.ts.*not assignable to type 'string'/);
    });
  });
});

test('types lead past the faces of rooms to where a name is declared', () => {
  const files: Record<string, string> = {
    'a/index': "export { One, type Two } from './one.ts';\nexport { Far } from '../b/index.ts';\n",
    'a/one': "import type { Far } from '../b/index.ts';\nexport interface One { far: Far }\nexport type Two = 2;\n",
    'b/index': "export type { Near as Far } from './near.ts';\nexport { Nobody } from './nobody.ts';\n",
    'b/near': 'export type Near = 1;\n',
  };
  expect(Object.fromEntries(reachable((path) => files[path] as string, 'a/index'))).toEqual({
    'a/index': "export { One } from './one.js';\nexport { Two } from './one.js';\nexport { Near as Far } from '../b/near.js';\n",
    'a/one': "import { Near as Far } from '../b/near.js';\nexport interface One { far: Far }\nexport type Two = 2;\n",
    'b/near': 'export type Near = 1;\n',
  });
});
