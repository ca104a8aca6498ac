// Writes all generated files that are stale: first the lists of rules and figures, then what is made with them.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { lists, writeStale } from './lists.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pintle-'));
try {
  const written = writeStale(lists());
  const outfile = join(folder, 'generated.mjs');
  await build({
    entryPoints: [join(root, 'tests', 'workshop', 'generated.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    logLevel: 'warning',
    absWorkingDir: root,
    define: { pintleRoot: JSON.stringify(root) },
  });
  const { generated } = await import(pathToFileURL(outfile).href);
  written.push(...writeStale(generated()));
  for (const path of written) console.log(`wrote ${path}`);
} catch (error) {
  console.error(error?.errors === undefined ? error : 'Nothing more was generated; see above.');
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
