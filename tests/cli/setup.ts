// The tests in this room run the built command; it is built once, before all of them, where it is stale.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export default function setup(): void {
  const { status, stdout, stderr } = spawnSync(process.execPath, [fileURLToPath(new URL('../workshop/prepare.mjs', import.meta.url))], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The command could not be built.\n${stdout}${stderr}`);
}
