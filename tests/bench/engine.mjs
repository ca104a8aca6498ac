// The code under measurement, bundled by esbuild with the settings of the shipped bundle into a temporary folder.

import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

const entry = `
export { Workspace } from './server/engine/index.ts';
export { parse } from './grammar/index.ts';
export { scan } from './grammar/tokens.ts';
export { anywhereLines, blocks, readFile, units } from './server/vocabulary/index.ts';
export { buildShelf, libraryOf, resolve } from './server/model/index.ts';
export { evaluate, allRules } from './server/rules/index.ts';
export { allFigures, figuresOf } from './server/figures/index.ts';
`;

/** Everything that the measurements need of the engine; `table` is what sites.mjs wants. `readable`: not minified, for a profile. */
export async function loadEngine(folder, readable = false) {
  const outfile = join(folder, 'engine.cjs');
  await build({
    stdin: { contents: entry, resolveDir: root, sourcefile: 'bench-entry.ts', loader: 'ts' },
    outfile,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    minify: !readable,
    legalComments: 'none',
    charset: 'utf8',
    define: { pintleVersion: '"bench"' },
    absWorkingDir: root,
    logLevel: 'error',
  });
  const engine = createRequire(import.meta.url)(outfile);
  return { ...engine, outfile, table: { blocks: engine.blocks, anywhereLines: engine.anywhereLines, units: engine.units } };
}
