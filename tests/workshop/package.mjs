// Packs the extension and looks into what was packed.
import { spawnSync } from 'node:child_process';
import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkVsix } from './check-vsix.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const vsix = join(root, 'dist', 'pintle.vsix');

mkdirSync(join(root, 'dist'), { recursive: true });
const vsce = join(root, 'node_modules', '@vscode', 'vsce', 'vsce');
const { status, stdout, stderr } = spawnSync(process.execPath, [vsce, 'package', '--no-dependencies', '--no-rewrite-relative-links', '--allow-missing-repository', '--out', vsix], { cwd: root, encoding: 'utf8' });
if (status !== 0) {
  console.error(`Packing failed.\n${stdout}${stderr}`.trim());
  process.exitCode = 1;
} else {
  const faults = checkVsix(vsix);
  console.log(`dist/pintle.vsix: ${(statSync(vsix).size / 1024).toFixed(0)} kB`);
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) process.exitCode = 1;
}
