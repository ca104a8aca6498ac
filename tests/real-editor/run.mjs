// The tests in a real editor: `node tests/real-editor/run.mjs [desktop] [web] [screen] [preview] [--only NAME] [--keep]`.
// The packed extension goes into a VS Code of its own; most tests run inside it, beside the extension, a few through the
// screen. Where a part is missing it says so; with PINTLE_REQUIRE_ALL=1 that is a failure.
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { build } from 'esbuild';
import { pack } from '../workshop/package.mjs';
import { prepare } from '../workshop/prepare.mjs';
import { here, missingParts, root } from './parts.mjs';

const layers = ['desktop', 'web', 'screen', 'preview'];
const asked = process.argv.slice(2).filter((argument) => layers.includes(argument));
const wanted = asked.length > 0 ? asked : layers;
const keep = process.argv.includes('--keep');
/** Of `desktop` and `web`, only tests whose names hold one of these: `--only figures`. */
const only = process.argv.flatMap((argument, index, all) => (all[index - 1] === '--only' ? [argument] : []));

const missing = missingParts();
if (missing.length > 0) {
  const required = process.env.PINTLE_REQUIRE_ALL === '1';
  for (const part of missing) console.log(`${required ? 'missing for' : 'skipped:'} tests in a real editor (${part})`);
  process.exit(required ? 1 : 0);
}

// Whoever is interrupted ends what it has started, too; editor.mjs hears the exit.
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(130));
const started = Date.now();
const base = mkdtempSync(join(tmpdir(), 'pintle-editor-'));
const results = [];
/** Told of each test as it ends. */
const report = (layer, name, error) => {
  results.push({ layer, name, error });
  console.log(
    `${error === undefined ? 'ok  ' : 'FAIL'} ${layer}: ${name}${error === undefined ? '' : `\n       ${error.replaceAll('\n', '\n       ')}`}`,
  );
};

let editor;
try {
  prepare();
  const vsix = join(base, 'pintle.vsix');
  pack(vsix);
  const { startBrowser, startServer } = await import('./editor.mjs');
  const site = join(base, 'site');
  cpSync(join(root, 'examples'), site, { recursive: true });
  const [server, browser] = await Promise.all([startServer(base, vsix), startBrowser(), bundle(join(base, 'host'))]);
  editor = { server, browser };
  const given = { server, browser, base, site, report };
  for (const layer of wanted) {
    const from = Date.now();
    try {
      await (await import(`./layer-${layer}.mjs`)).runLayer(given);
    } catch (error) {
      report(layer, 'runs to its end', error?.stack ?? String(error));
    }
    console.log(`     ${layer}: ${((Date.now() - from) / 1000).toFixed(0)} s`);
  }
} catch (error) {
  report('real editor', 'starts', error?.stack ?? String(error));
} finally {
  await editor?.browser.close().catch(() => undefined);
  editor?.server.stop();
  if (keep) console.log(`kept: ${base}`);
  else rmSync(base, { recursive: true, force: true, maxRetries: 3 });
}

const failed = results.filter(({ error }) => error !== undefined).length;
console.log(
  `Tests in a real editor: ${results.length - failed} of ${results.length} passed, ${((Date.now() - started) / 1000).toFixed(0)} s`,
);
process.exitCode = failed > 0 || results.length === 0 ? 1 : 0;

/** The tests that run inside, as an extension under test wants them: one for the desktop and one for the browser. */
async function bundle(folder) {
  mkdirSync(folder, { recursive: true });
  const manifest = {
    name: 'host',
    publisher: 'pintle-tests',
    version: '0.0.1',
    engines: { vscode: '*' },
    activationEvents: [],
    main: './nothing.js',
    browser: './nothing.js',
  };
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest));
  writeFileSync(join(folder, 'nothing.js'), 'exports.activate = () => undefined;\n');
  const examples = join(root, 'examples');
  const files = readdirSync(examples, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const texts = Object.fromEntries(
    files.map((entry) => [
      relative(examples, join(entry.parentPath, entry.name)),
      readFileSync(join(entry.parentPath, entry.name), 'utf8'),
    ]),
  );
  await build({
    entryPoints: ['desktop', 'web'].map((name) => join(here, 'suite', `${name}.ts`)),
    outdir: folder,
    bundle: true,
    format: 'cjs',
    platform: 'browser',
    target: 'es2022',
    external: ['vscode'],
    define: { exampleTexts: JSON.stringify(texts), wantedTests: JSON.stringify(only) },
    absWorkingDir: root,
    logLevel: 'warning',
  });
}
