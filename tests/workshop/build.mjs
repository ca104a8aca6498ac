// Bundles everything that is shipped into dist/. Each file appears whole or not at all, so that a command that runs
// meanwhile never reads half of one.
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { noticesFile, noticesFor, packagesIn } from './notices.mjs';
import { shipped } from './shipped.mjs';

export const root = fileURLToPath(new URL('../..', import.meta.url));
const dist = join(root, 'dist');

const onNode = { platform: 'node', target: 'node20', format: 'cjs' };
const inBrowser = { platform: 'browser', target: 'es2022' };

/** What is built: from which file, into which, and how. `pintle.cjs` comes last: its age is the age of the build. */
export const entries = [
  { from: 'server/lsp/node.ts', to: 'server.cjs', options: onNode },
  { from: 'server/lsp/worker.ts', to: 'server-worker.js', options: { ...inBrowser, format: 'iife' } },
  { from: 'client/desktop.ts', to: 'extension.cjs', options: { ...onNode, external: ['vscode'] } },
  { from: 'client/web.ts', to: 'extension-web.cjs', options: { ...inBrowser, format: 'cjs', external: ['vscode'] } },
  { from: 'client/preview/page/page.ts', to: 'preview.js', options: { ...inBrowser, format: 'iife' } },
  { from: 'client/preview/page/page.css', to: 'preview.css', options: inBrowser },
  // The language server's libraries take longer to load than a check takes to run: only `serve` asks for them.
  { from: 'server/cli/main.ts', to: 'pintle.cjs', options: { ...onNode, external: ['./server.cjs'] } },
];

/** The folders that have a page each: rules and figures. */
export const pageRooms = ['rules', 'figures'];

export async function buildAll() {
  const started = new Date();
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  mkdirSync(dist, { recursive: true });
  copyPages();
  // The pages that it leads to lie elsewhere in what is shipped.
  const manual = readFileSync(join(root, 'server', 'vocabulary', 'manual.md'), 'utf8');
  writeWhole(join(dist, 'manual.md'), manual.replace(/\]\(\.\.\/(\w+)\/([\w-]+)\/page\.md\)/g, '](pages/$1/$2.md)'));
  const bundled = new Set();
  for (const { from, to, options } of entries) {
    const result = await build({
      ...options,
      entryPoints: [join(root, from)],
      outfile: join(dist, to),
      bundle: true,
      minify: true,
      keepNames: false,
      sourcemap: false,
      legalComments: 'none',
      charset: 'utf8',
      define: { pintleVersion: JSON.stringify(version) },
      logLevel: 'warning',
      write: false,
      metafile: true,
      absWorkingDir: root,
    });
    for (const folder of packagesIn(result.metafile)) bundled.add(folder);
    for (const file of result.outputFiles) writeWhole(file.path, file.contents);
  }
  writeWhole(join(dist, noticesFile), noticesFor([...bundled].sort(), root));
  const command = join(dist, 'pintle.cjs');
  chmodSync(command, 0o755);
  utimesSync(command, started, started);
}

const baseSite = (name) => readFileSync(join(root, 'examples', 'bases', `${name}.gate`), 'utf8');

function copyPages() {
  for (const room of pageRooms) {
    const to = join(dist, 'pages', room);
    mkdirSync(to, { recursive: true });
    const names = readdirSync(join(root, 'server', room), { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && existsSync(join(root, 'server', room, entry.name, 'page.md')))
      .map((entry) => entry.name);
    for (const name of names)
      writeWhole(join(to, `${name}.md`), shipped(readFileSync(join(root, 'server', room, name, 'page.md'), 'utf8'), baseSite));
    for (const file of readdirSync(to))
      if (!names.includes(file.replace(/\.md$/, ''))) rmSync(join(to, file), { recursive: true, force: true });
  }
}

function writeWhole(path, contents) {
  mkdirSync(dirname(path), { recursive: true });
  const temporary = `${path}.${process.pid}.tmp`;
  writeFileSync(temporary, contents);
  renameSync(temporary, path);
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  buildAll().catch((error) => {
    // esbuild has already said what is wrong, and where.
    console.error(error?.errors === undefined ? String(error?.message ?? error) : 'The build failed; see above.');
    process.exitCode = 1;
  });
