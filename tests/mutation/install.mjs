// Installs what only the mutation tests need, when it is not there or the lock file is newer.
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const ageOf = (path) => statSync(path, { throwIfNoEntry: false })?.mtimeMs;

export function install() {
  const installed = ageOf(join(here, 'node_modules', '.package-lock.json'));
  if (installed !== undefined && installed >= (ageOf(join(here, 'package-lock.json')) ?? 0)) return;
  console.log('Installing what the mutation tests need …');
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith('.js') ? [process.execPath, [npm]] : [process.platform === 'win32' ? 'npm.cmd' : 'npm', []];
  const env = { ...process.env, npm_config_loglevel: 'error' };
  // What npm told the script that called us is not for this folder.
  for (const name of Object.keys(env))
    if (/^npm_(package_|lifecycle_|config_(local_prefix|prefix|global_prefix))/.test(name) || name === 'INIT_CWD') delete env[name];
  const result = spawnSync(command, [...first, 'ci', '--ignore-scripts', '--no-audit', '--no-fund'], {
    cwd: here,
    encoding: 'utf8',
    env,
    shell: command.endsWith('.cmd'),
  });
  if (result.status === 0) return;
  console.error(`Installing failed.\n${result.stdout ?? ''}${result.stderr ?? ''}${result.error?.message ?? ''}`);
  process.exit(1);
}
