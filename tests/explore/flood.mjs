// `npm run explore -- flood [COUNT] [SEED] [FROM]`: COUNT small texts (10 million unless told) through all that works on a text, in this
// one process (flood.ts). Prints how far it has come, the time, and what is wrong with which text; exits with 1 where anything is.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Texts between two lines of how far it has come, and faults that are worth reading. */
const stretch = 100_000;
const shown = 20;

export async function runFlood(given) {
  const [count = 10_000_000, seed = 20261125, from = 0] = given.map(Number);
  const folder = mkdtempSync(join(tmpdir(), 'pintle-flood-'));
  const outfile = join(folder, 'flood.mjs');
  try {
    await build({
      entryPoints: [join(root, 'tests/explore/flood.ts')],
      outfile,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'esm',
      logLevel: 'warning',
    });
    const { flood } = await import(pathToFileURL(outfile).href);
    console.log(`${count} texts from number ${from} on, with seed ${seed}.`);
    const started = performance.now();
    let faults = 0;
    const told = new Set();
    for (let done = 0; done < count; done += stretch) {
      flood(seed, from + done, Math.min(stretch, count - done), ({ number, text, what }) => {
        if (!told.has(number)) faults += 1;
        if (told.size >= shown && !told.has(number)) return;
        told.add(number);
        console.log(`\nNumber ${number}: ${JSON.stringify(text)}\n  ${what}\n  again: npm run explore -- flood 1 ${seed} ${number}`);
      });
      const seconds = (performance.now() - started) / 1000;
      const so = Math.min(done + stretch, count);
      console.log(`${so} texts, ${seconds.toFixed(0)} s, ${(so / seconds).toFixed(0)} a second, ${faults} with a fault.`);
    }
    return faults === 0;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
