// The tests of the preview's page alone, without VS Code: `node tests/real-editor/preview/run.mjs [part of a test's name]`.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { missingParts } from '../parts.mjs';

const missing = missingParts();
if (missing.length > 0) {
  const required = process.env.PINTLE_REQUIRE_ALL === '1';
  for (const part of missing) console.log(`${required ? 'missing for' : 'skipped:'} tests of the preview's page (${part})`);
  process.exit(required ? 1 : 0);
}

const [{ startBrowser }, { runLayer }] = [await import('../editor.mjs'), await import('./page.mjs')];
const base = mkdtempSync(join(tmpdir(), 'pintle-preview-'));
const browser = await startBrowser();
const results = [];
try {
  await runLayer({
    browser,
    base,
    only: process.argv[2],
    report: (layer, name, error) => {
      results.push(error);
      console.log(
        `${error === undefined ? 'ok  ' : 'FAIL'} ${layer}: ${name}${error === undefined ? '' : `\n       ${error.replaceAll('\n', '\n       ')}`}`,
      );
    },
  });
} finally {
  await browser.close();
  rmSync(base, { recursive: true, force: true, maxRetries: 3 });
}
const failed = results.filter((error) => error !== undefined).length;
console.log(`Tests of the preview's page: ${results.length - failed} of ${results.length} passed`);
process.exitCode = failed > 0 || results.length === 0 ? 1 : 0;
