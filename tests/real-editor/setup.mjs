// Installs VS Code as code-server, the Node that it needs, and what drives a browser: some 600 MB in this folder, and
// nothing of it in what is shipped. Nothing is compiled and no install script runs. Quick when all is there already.
import { spawnSync } from 'node:child_process';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { chromium, codeServer, here, isSetUp, missingParts, newerNode, stamp, stampText } from './parts.mjs';

class Failure extends Error {}

function npm(folder, ...args) {
  const path = process.env.npm_execpath;
  const [command, first] = path?.endsWith('.js') ? [process.execPath, [path]] : ['npm', []];
  const env = { ...process.env, npm_config_loglevel: 'error', PATH: [dirname(newerNode), process.env.PATH].join(delimiter) };
  // What npm told the script that called us is not for the folders that it works in now.
  for (const name of Object.keys(env))
    if (/^npm_(package_|lifecycle_|config_(local_prefix|prefix|global_prefix))/.test(name) || name === 'INIT_CWD') delete env[name];
  const result = spawnSync(command, [...first, ...args, '--ignore-scripts', '--no-audit', '--no-fund'], {
    cwd: folder,
    encoding: 'utf8',
    env,
  });
  if (result.status !== 0)
    throw new Failure(
      `npm ${args.join(' ')} in ${folder} failed.\n${result.stdout ?? ''}${result.stderr ?? ''}${result.error?.message ?? ''}`.trim(),
    );
}

function setUp() {
  const started = Date.now();
  const modules = join(here, 'node_modules');
  // After half an install npm repairs the wrong things: begin with nothing.
  rmSync(modules, { recursive: true, force: true });
  console.log('Installing code-server for the tests in a real editor …');
  npm(here, 'ci');
  const vscode = join(codeServer, 'lib', 'vscode');
  // `npm ci` fails here: the list that code-server ships does not agree with its own package.json.
  npm(vscode, 'install', '--omit=dev');
  npm(join(vscode, 'extensions'), 'install', '--omit=dev');
  for (const name of ['copilot', 'mermaid-markdown-features']) rmSync(join(vscode, 'extensions', name), { recursive: true, force: true });
  const github = join(vscode, 'node_modules', '@github');
  for (const name of readdirSync(github)) if (name.startsWith('copilot')) rmSync(join(github, name), { recursive: true, force: true });
  writeFileSync(stamp, stampText());
  console.log(`Set up in ${Math.round((Date.now() - started) / 1000)} s.`);
}

try {
  const [hopeless] = process.platform === 'linux' && process.arch === 'x64' ? [] : missingParts();
  if (hopeless !== undefined) throw new Failure(`The tests in a real editor cannot be set up here: ${hopeless}.`);
  if (isSetUp()) console.log('code-server is set up.');
  else setUp();
  if (chromium() === undefined)
    throw new Failure(
      'There is no chromium in /usr/bin. Install it (Debian: `apt-get install --no-install-recommends chromium`), or name one in PINTLE_CHROMIUM.',
    );
} catch (error) {
  console.error(error instanceof Failure ? error.message : error);
  process.exitCode = 1;
}
