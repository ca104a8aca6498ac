// What is shipped beside the bundles: the notices of other people's work, and a README whose links lead somewhere.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { root } from '../kit/sources.ts';
import { noticesFile, noticesFor, packagesNamed } from '../workshop/notices.mjs';
import { packedReadme, relativeLinks } from '../workshop/readme.mjs';

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const dist = join(root, 'dist');
const notices = readFileSync(join(dist, noticesFile), 'utf8');
const read = (path: string): string => readFileSync(path, 'utf8');

/** The packages that we name as bundled, and all that these need: what may be in a bundle, by the packages' own words. */
function mayBeBundled(): Map<string, Manifest> {
  const found = new Map<string, Manifest>();
  const visit = (name: string, from: string): void => {
    let folder = from;
    while (!existsSync(join(folder, 'node_modules', name, 'package.json'))) folder = join(folder, '..');
    const home = join(folder, 'node_modules', name);
    const manifest = JSON.parse(read(join(home, 'package.json'))) as Manifest;
    const known = `${manifest.name} ${manifest.version}`;
    if (found.has(known)) return;
    found.set(known, manifest);
    for (const next of Object.keys(manifest.dependencies ?? {})) visit(next, home);
  };
  for (const name of bundledByDesign) visit(name, root);
  return found;
}
const bundledByDesign = ['chevrotain', 'vscode-languageclient', 'vscode-languageserver', 'vscode-languageserver-textdocument'];

describe('the notices', () => {
  const named = packagesNamed(notices);
  test('speak of every package that is there to be bundled', () => {
    for (const name of bundledByDesign)
      expect(
        [...named].some((one) => one.startsWith(`${name} `)),
        name,
      ).toBe(true);
  });
  test('speak of nothing else', () => {
    const allowed = mayBeBundled();
    for (const name of named) expect([...allowed.keys()]).toContain(name);
  });
  test('give the licence of each, whole', () => {
    // What each licence asks to be handed on, by SPDX’s short names (spdx.org/licenses).
    const marks: Readonly<Record<string, string>> = {
      'Apache-2.0': 'END OF TERMS AND CONDITIONS',
      MIT: 'THE SOFTWARE IS PROVIDED',
      ISC: 'THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS',
      'BlueOak-1.0.0': 'As far as the law allows',
    };
    const allowed = mayBeBundled();
    for (const name of named) {
      const { license } = allowed.get(name) as Manifest;
      expect(marks, `${name}: is its licence one that lets us hand it on?`).toHaveProperty(license);
      const part = notices.slice(notices.indexOf(`${name} (${license})`));
      const mark = (marks[license] as string).toLowerCase();
      expect(part.toLowerCase().replace(/\s+/g, ' ')).toContain(mark.replace(/\s+/g, ' '));
    }
  });
  test('name the holders of rights that the bundles name', () => {
    for (const holder of ['Microsoft Corporation', 'Isaac Z. Schlueter', 'OpenJS Foundation']) expect(notices).toContain(holder);
  });
  test('cannot be made of a package that brings no licence', () => {
    const folder = mkdtempSync(join(tmpdir(), 'pintle-notices-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    mkdirSync(join(folder, 'bare'));
    writeFileSync(join(folder, 'bare', 'package.json'), '{"name":"bare","version":"1.0.0","license":"MIT"}');
    expect(() => noticesFor(['bare'], folder)).toThrow('bare brings no licence');
  });
});

describe('links that are shipped lead to what is shipped', () => {
  const readme = read(join(root, 'README.md'));
  test('in the README of the extension', () => {
    const kept = read(join(root, '.vscodeignore'))
      .split('\n')
      .filter((line) => line.startsWith('!'))
      .map((line) => line.slice(1));
    const has = (path: string): boolean => existsSync(join(root, path)) && kept.some((glob) => matches(path, glob));
    const packed = packedReadme(readme, has, { 'server/vocabulary/manual.md': 'dist/manual.md' });
    expect(relativeLinks(packed)).toContain('dist/manual.md');
    for (const to of relativeLinks(packed)) expect(has(to), to).toBe(true);
    // Nothing is lost but the links: every word is still there.
    expect(packed.replace(/\]\([^)]*\)|[[\]!]/g, '')).toBe(readme.replace(/\]\([^)]*\)|[[\]!]/g, ''));
  });
  test('of a text with all kinds of links', () => {
    const text =
      '[a](there.md#place) [b](gone.md) ![c](gone.png) [d](https://example.org/x) [e](#here) [![f](there.png)](gone.md) [g](./there.md)';
    expect(packedReadme(text, (path) => path.startsWith('there'))).toBe(
      '[a](there.md#place) b  [d](https://example.org/x) [e](#here) ![f](there.png) [g](there.md)',
    );
  });
  test('in the manual and the pages', () => {
    const files = [
      'manual.md',
      ...['rules', 'figures'].flatMap((room) => readdirSync(join(dist, 'pages', room)).map((name) => `pages/${room}/${name}`)),
    ];
    expect(files.length).toBeGreaterThan(150);
    for (const file of files)
      for (const to of relativeLinks(read(join(dist, file)).replace(/```[^]*?```/g, '')))
        expect(existsSync(join(dist, posix.dirname(file), to.split('#')[0] as string)), `${file}: ${to}`).toBe(true);
  });
});

/** A pattern of `.vscodeignore` as they stand there: `*` within a name, `**` over folders. */
function matches(path: string, glob: string): boolean {
  const pattern = glob.replace(/[.+]/g, '\\$&').replace(/\*\*\/|\*/g, (star) => (star === '*' ? '[^/]*' : '(?:.*/)?'));
  return new RegExp(`^${pattern}$`).test(path);
}
