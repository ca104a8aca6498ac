// Makes a fresh clone ready to run: installs what is missing, builds what is stale, and is silent when there is nothing
// to do. Only node's own modules are used here: on a fresh clone there are no others.
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { returnReadme } from './readme.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

function ageOf(path) {
  try {
    return statSync(path).mtimeMs;
  } catch {
    return undefined;
  }
}

/** True when the installed packages are missing or older than the lock file. */
function mustInstall() {
  const installed = ageOf(join(root, 'node_modules', '.package-lock.json'));
  return installed === undefined || installed < (ageOf(join(root, 'package-lock.json')) ?? 0);
}

/** When the newest of these was changed. Folders count too: a file that is gone changes its folder. */
function newest(path) {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return 0;
  let time = stats.mtimeMs;
  if (stats.isDirectory()) for (const name of readdirSync(path)) time = Math.max(time, newest(join(path, name)));
  return time;
}

function mustBuild() {
  const built = ageOf(join(root, 'dist', 'pintle.cjs'));
  if (built === undefined) return true;
  const sources = [
    'grammar',
    'server',
    'client',
    'package.json',
    'package-lock.json',
    'examples/bases',
    'tests/workshop/build.mjs',
    'tests/workshop/notices.mjs',
    'tests/workshop/shipped.mjs',
  ];
  return sources.some((source) => newest(join(root, source)) > built);
}

/** Runs a program in the root; its output is shown only if it fails. */
function run(what, command, args, help) {
  const shell = command.endsWith('.cmd');
  const result = spawnSync(command, args, { cwd: root, encoding: 'utf8', shell, env: { ...process.env, npm_config_loglevel: 'error' } });
  if (result.status === 0) return `${result.stdout}${result.stderr}`.trim();
  const said = `${result.stdout ?? ''}${result.stderr ?? ''}${result.error === undefined ? '' : result.error.message}`.trim();
  throw new Failure(`${what} failed.\n${said}\n${help}`);
}

class Failure extends Error {}

/** Installs and builds where needed; `say` gets what was done. Throws a Failure with a message for people. */
export function prepare(say = console.log) {
  const [major] = process.versions.node.split('.').map(Number);
  if (major < 20) throw new Failure(`Pintle needs Node 20 or newer; this is Node ${process.versions.node}.`);
  // A packing that was broken off may have left another one in its place.
  returnReadme();
  if (mustInstall()) {
    say('Installing the packages that Pintle is built with …');
    const npm = process.env.npm_execpath;
    const [command, first] = npm?.endsWith('.js') ? [process.execPath, [npm]] : [process.platform === 'win32' ? 'npm.cmd' : 'npm', []];
    run(
      'Installing',
      command,
      [...first, 'ci', '--ignore-scripts', '--no-audit', '--no-fund'],
      'Is the network there? Try `npm ci --ignore-scripts` by hand to see more.',
    );
  }
  if (mustBuild()) {
    say('Building …');
    const said = run(
      'Building',
      process.execPath,
      [join(root, 'tests', 'workshop', 'build.mjs')],
      'Try `npm run build` by hand to see more.',
    );
    if (said !== '') say(said);
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  try {
    prepare();
  } catch (error) {
    console.error(error instanceof Failure ? error.message : `Pintle could not be made ready: ${error.message}`);
    process.exitCode = 1;
  }
}
