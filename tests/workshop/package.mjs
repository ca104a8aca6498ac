// Packs the extension and looks into what was packed.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkVsix } from './check-vsix.mjs';
import { packedReadme } from './readme.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Packs what `.vscodeignore` lets through into this file. Throws where packing fails.
 * It is done in a folder that holds nothing else: the packer walks through everything it finds, and the tests in real
 * editors keep some hundred thousand files.
 */
export function pack(out) {
  const folder = mkdtempSync(join(tmpdir(), 'pintle-package-'));
  try {
    const kept = readFileSync(join(root, '.vscodeignore'), 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('!'));
    const tops = new Set([...kept.map((line) => line.slice(1).split('/')[0]), '.vscodeignore']);
    for (const top of tops)
      if (existsSync(join(root, top)))
        cpSync(join(root, top), join(folder, top), { recursive: true, filter: (path) => !/\.(vsix|tmp)$/.test(path) });
    adapt(folder);
    mkdirSync(dirname(out), { recursive: true });
    const vsce = join(root, 'node_modules', '@vscode', 'vsce', 'vsce');
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [vsce, 'package', '--no-dependencies', '--no-rewrite-relative-links', '--allow-missing-repository', '--out', out],
      { cwd: folder, encoding: 'utf8' },
    );
    if (status !== 0) throw new Error(`Packing failed.\n${stdout}${stderr}`.trim());
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Manifest and README are those of the checkout, less what only has a meaning there. */
function adapt(folder) {
  const checkout = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const { scripts, devDependencies, files, exports, bin, ...manifest } = checkout;
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest, null, 2) + '\n');
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const moved = { 'server/vocabulary/manual.md': 'dist/manual.md' };
  writeFileSync(
    join(folder, 'README.md'),
    packedReadme(readme, (path) => existsSync(join(folder, path)), moved),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const vsix = join(root, 'dist', 'pintle.vsix');
  try {
    pack(vsix);
    const faults = checkVsix(vsix);
    console.log(`dist/pintle.vsix: ${(statSync(vsix).size / 1024).toFixed(0)} kB`);
    for (const fault of faults) console.error(fault);
    if (faults.length > 0) process.exitCode = 1;
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
