// Runs the built command on files made for the purpose.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished } from 'vitest';

export const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
export const command = join(root, 'dist', 'pintle.cjs');

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Sandbox {
  readonly folder: string;
  readonly path: (name: string) => string;
  readonly write: (name: string, content: string | Uint8Array) => void;
  readonly run: (...args: string[]) => Ran;
}

/** A folder with these files, gone when the test is done. It is its own root: `.git` stands in it. `.parts` holds
 * a library and, having a dot, is not searched. */
export function sandbox(files: Readonly<Record<string, string | Uint8Array>> = {}): Sandbox {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = (name: string): string => join(folder, name);
  const write = (name: string, content: string | Uint8Array): void => {
    mkdirSync(dirname(path(name)), { recursive: true });
    writeFileSync(path(name), content);
  };
  mkdirSync(path('.git'));
  write('.parts/plain.gate', sound);
  for (const [name, content] of Object.entries(files)) write(name, content);
  return { folder, path, write, run: (...args) => run(args, { cwd: folder }) };
}

interface Options {
  readonly cwd?: string;
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly uid?: number;
}

export function run(args: readonly string[], options: Options = {}): Ran {
  const { env, ...rest } = options;
  const ran = spawnSync(process.execPath, [command, ...args], {
    ...rest,
    env: { ...process.env, ...env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 150_000,
  });
  const result = { status: ran.status, stdout: ran.stdout, stderr: ran.stderr };
  expectCalm(result);
  return result;
}

/** Whatever happens, nobody is shown the inside of the program. */
export function expectCalm({ status, stdout, stderr }: Ran): void {
  expect(status, stderr).toBeOneOf([0, 1, 2]);
  for (const said of [stdout, stderr]) {
    expect(said).not.toMatch(/^\s+at .*[(:]\d+/m);
    expect(said).not.toMatch(/node:internal|something went wrong inside/);
  }
}

// Files without a site: only what stands in them is judged, so that they say the same when a rule about sites is added.

/** Nothing to say about it. */
export const sound = 'language 1\ncable-model plain {\n  area 0.5 mm2\n  class 5\n  cores 4\n}\n';
/** An area without its unit: one error, at 3:8. */
export const noUnit = sound.replace(' mm2', '');
/** One library twice: one warning, at 3:5, with a safe fix. `up` leads from the file to the sandbox's folder. */
export const twice = (up = ''): string => `language 1\nuse "${up}.parts/plain.gate"\nuse "${up}.parts/plain.gate"\n`;

export const asOf = ['--as-of', '2026-11-01'] as const;
