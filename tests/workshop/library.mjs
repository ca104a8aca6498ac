// Makes dist/npm: what the npm package holds, with a manifest of its own. Nothing in it has to be installed along.
import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { nameOf, noticesFile, noticesIn, packagesIn, packagesNamed } from './notices.mjs';
import { lendReadme, packedReadme, returnReadme } from './readme.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const engine = 'server/engine/index';

/** The manifest of the package, from that of the checkout. */
export const manifest = ({ name, version, description, license, engines, keywords }) => ({
  name,
  version,
  description,
  keywords,
  license,
  type: 'module',
  engines: { node: engines.node },
  bin: { pintle: './pintle.cjs' },
  exports: { '.': { types: `./types/${engine}.d.ts`, default: './index.js' }, './package.json': './package.json' },
  sideEffects: false,
});

/** The names that a file of types takes from elsewhere or hands on: each with the file that it names, and what it is called there. */
function borrowed(path, text) {
  const found = [];
  for (const [, verb, list, from] of text.matchAll(/^(import|export)(?: type)? \{([^}]*)\} from '(\.[^']+)';$/gm)) {
    const file = posix.normalize(posix.join(posix.dirname(path), from)).replace(/\.ts$/, '');
    for (const item of list.split(',')) {
      const names = /^(?:type )?(\w+)(?: as (\w+))?$/.exec(item.trim());
      if (names !== null) found.push({ verb, file, name: names[1], as: names[2] ?? names[1] });
    }
  }
  return found;
}

/**
 * The types that a program outside may meet, from those of all files: imports lead past the faces of rooms to where a name is
 * declared, and files that nothing leads to are left out.
 */
export function reachable(read, entry) {
  const texts = new Map();
  const home = (file, name) => {
    const passed = borrowed(file, read(file)).find((one) => one.verb === 'export' && one.as === name);
    return passed === undefined ? { file, name } : home(passed.file, passed.name);
  };
  const visit = (path) => {
    if (texts.has(path)) return;
    texts.set(path, '');
    const text = read(path);
    const lines = borrowed(path, text).map(({ verb, file, name, as }) => {
      const at = home(file, name);
      visit(at.file);
      const from = posix.relative(posix.dirname(path), at.file);
      return `${verb} { ${at.name === as ? as : `${at.name} as ${as}`} } from '${from.startsWith('.') ? '' : './'}${from}.js';`;
    });
    const own = text.replace(/^(?:import|export)(?: type)? \{[^}]*\} from '\.[^']+';\n/gm, '');
    texts.set(path, [...lines, own].join('\n').trimEnd() + '\n');
  };
  visit(entry);
  return texts;
}

/** Writes the package into a folder; `dist` has been built. */
export async function writeLibrary(to) {
  rmSync(to, { recursive: true, force: true });
  mkdirSync(to, { recursive: true });
  const checkout = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  writeFileSync(join(to, 'package.json'), JSON.stringify(manifest(checkout), null, 2) + '\n');
  const { metafile } = await build({
    entryPoints: [join(root, `${engine}.ts`)],
    outfile: join(to, 'index.js'),
    bundle: true,
    platform: 'browser',
    target: 'es2022',
    format: 'esm',
    minify: true,
    charset: 'utf8',
    legalComments: 'none',
    logLevel: 'warning',
    metafile: true,
    absWorkingDir: root,
    define: { pintleVersion: JSON.stringify(checkout.version) },
  });
  const told = packagesNamed(noticesIn(join(root, 'dist')));
  const untold = packagesIn(metafile).filter((folder) => !told.has(nameOf(folder, root)));
  if (untold.length > 0) throw new Error(`The notices do not speak of ${untold.join(', ')}.`);
  for (const file of ['pintle.cjs', 'server.cjs', 'manual.md', noticesFile]) copyFileSync(join(root, 'dist', file), join(to, file));
  cpSync(join(root, 'dist', 'pages'), join(to, 'pages'), { recursive: true });
  for (const file of ['LICENSE', 'CHANGELOG.md']) copyFileSync(join(root, file), join(to, file));
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const moved = { 'server/vocabulary/manual.md': 'manual.md' };
  writeFileSync(
    join(to, 'README.md'),
    packedReadme(readme, (path) => existsSync(join(to, path)), moved),
  );
  const types = join(root, 'dist', 'types');
  rmSync(types, { recursive: true, force: true });
  const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  const project = join(root, 'tests', 'workshop', 'tsconfig.types.json');
  const { status, stdout } = spawnSync(process.execPath, [tsc, '-p', project], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`The types could not be written.\n${stdout}`);
  for (const [path, text] of reachable((file) => readFileSync(join(types, `${file}.d.ts`), 'utf8'), engine)) {
    const file = join(to, 'types', `${path}.d.ts`);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  rmSync(types, { recursive: true, force: true });
}

/** Packs the package into a folder; gives the name of the file. */
export function packLibrary(library, to) {
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith('.js') ? [process.execPath, [npm]] : [process.platform === 'win32' ? 'npm.cmd' : 'npm', []];
  const options = { cwd: library, encoding: 'utf8', shell: command.endsWith('.cmd') };
  const { status, stdout, stderr } = spawnSync(
    command,
    [...first, 'pack', '--pack-destination', to, '--json', '--ignore-scripts'],
    options,
  );
  if (status !== 0) throw new Error(`Packing failed.\n${stdout}${stderr}`);
  return JSON.parse(stdout)[0].filename;
}

const library = join(root, 'dist', 'npm');

/**
 * `npm pack` in the checkout packs dist/npm under the checkout's own manifest, and always the README that lies beside it: for as long
 * as it packs, that is the one of dist/npm, with links that lead somewhere.
 */
const steps = {
  packing: async () => {
    await writeLibrary(library);
    const readme = readFileSync(join(root, 'README.md'), 'utf8');
    const moved = { 'server/vocabulary/manual.md': 'dist/npm/manual.md' };
    lendReadme(packedReadme(readme, (path) => existsSync(join(library, path)), moved));
  },
  packed: returnReadme,
  write: async () => {
    await writeLibrary(library);
    console.log(`dist/${packLibrary(library, join(root, 'dist'))}`);
  },
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    await steps[process.argv[2] ?? 'write']();
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
