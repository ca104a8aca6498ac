// Other editors with the configuration that their pages document: neovim and emacs start the real `pintle serve --stdio` of
// this checkout on a copy of the examples, and what they get from it is looked at. The commands of the pages are run as they
// stand there, with a home of their own. `node tests/other-editors/run.mjs [neovim|emacs]`.
// What is missing is passed over and told; with PINTLE_REQUIRE_ALL=1 it is a fault. PINTLE_NVIM, PINTLE_EMACS: other editors.
import { spawn, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepare } from '../workshop/prepare.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const here = join(root, 'tests', 'other-editors');
const mustHaveAll = process.env.PINTLE_REQUIRE_ALL === '1';
const wanted = process.argv.slice(2);
const faults = [];
const passedOver = [];

/** Longest time for one editor, in milliseconds. */
const longest = 180_000;
/** Fewest checks that an editor must have told of: one that says nothing has not been tested. */
const fewest = 13;

const runs = (command, ...args) => spawnSync(command, args, { encoding: 'utf8', timeout: 30_000 });
const has = (command) => runs(command, '--version').status === 0;

/** Fenced blocks of a language on a page. */
function blocksOf(page, language) {
  const text = readFileSync(join(root, 'client', 'other-editors', page), 'utf8').replaceAll('\r\n', '\n');
  return [...text.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].filter((match) => match[1] === language).map((match) => match[2]);
}

/** Processes that carry a mark in their environment: an editor's, and all that it has started. */
function marked(mark) {
  if (!existsSync('/proc/self/environ')) return [];
  return readdirSync('/proc').filter((pid) => {
    if (!/^\d+$/.test(pid)) return false;
    try {
      return readFileSync(`/proc/${pid}/environ`, 'utf8').includes(mark) && !readFileSync(`/proc/${pid}/stat`, 'utf8').includes(') Z ');
    } catch {
      return false;
    }
  });
}

/** A home with nothing in it but what a page says, and the examples in a folder that is no repository, and in one. */
function setting() {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-editors-')));
  const home = join(folder, 'home');
  const place = join(folder, 'ex amples');
  mkdirSync(home);
  cpSync(join(root, 'examples'), place, { recursive: true });
  // The same in what looks like a repository: there, files that nobody has opened are known too.
  const rooted = join(folder, 'rooted');
  cpSync(join(root, 'examples'), rooted, { recursive: true });
  mkdirSync(join(rooted, '.git'));
  const mark = randomUUID();
  const env = {
    ...process.env,
    HOME: home,
    PATH: `${join(home, '.local', 'bin')}:${process.env.PATH}`,
    PINTLE_PLACE: place,
    PINTLE_ROOTED: rooted,
    PINTLE_MARK: mark,
  };
  for (const name of Object.keys(env)) if (name.startsWith('XDG_')) delete env[name];
  return { folder, home, place, mark, env };
}

function shell(name, env, script) {
  const { status, stdout, stderr } = spawnSync('sh', ['-eu', '-c', script], { cwd: root, env, encoding: 'utf8', timeout: 60_000 });
  if (status !== 0) faults.push(`${name}: the page's commands failed:\n${script}${stdout}${stderr}`);
  return status === 0;
}

/** Runs an editor to its end, whatever it does, and leaves nothing of it behind. */
async function run(name, command, args, { env, place, mark }) {
  console.log(`\n${name}`);
  const child = spawn(command, args, { cwd: place, env, stdio: ['ignore', 'pipe', 'pipe'], detached: true });
  let said = '';
  let errors = '';
  child.stdout.on('data', (data) => (said += data));
  child.stderr.on('data', (data) => (errors += data));
  let late = false;
  const timer = setTimeout(() => {
    late = true;
    process.kill(-child.pid, 'SIGKILL');
  }, longest);
  const code = await new Promise((resolve) => {
    child.on('error', (error) => resolve(error.message));
    child.on('close', resolve);
    // Something that it has started may hold its output open: that is looked at below.
    child.on('exit', (status) => setTimeout(resolve, 2000, status));
  });
  clearTimeout(timer);
  const lines = `${said}\n${errors}`.split(/\r?\n/);
  for (const line of lines) if (/^(ok|FAULT|) {2,}\S|^FAULT /.test(line)) console.log(`  ${line}`);
  const wrong = lines.filter((line) => /^FAULT |Error running timer|error in process filter|Error detected while/.test(line));
  if (late) wrong.push(`not done after ${longest / 1000} s`);
  else if (code !== 0 && wrong.length === 0) wrong.push(`ended with ${code}:\n${said}${errors}`);
  const good = lines.filter((line) => line.startsWith('ok ')).length;
  if (good < fewest && wrong.length === 0) wrong.push(`only ${good} checks were made:\n${said}${errors}`);
  for (let wait = 0; wait < 50 && marked(mark).length > 0; wait++) await new Promise((resolve) => setTimeout(resolve, 100));
  for (const pid of marked(mark)) {
    wrong.push(`process ${pid} was left behind: ${readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ')}`);
    process.kill(Number(pid), 'SIGKILL');
  }
  faults.push(...wrong.map((what) => `${name}: ${what}`));
}

async function neovim() {
  const command = process.env.PINTLE_NVIM ?? 'nvim';
  if (!has(command)) return void passedOver.push('neovim is not installed (Debian: apt-get install neovim)');
  const compiler = process.env.CC ?? 'cc';
  const [install, configuration, parser] = blocksOf('neovim.md', 'sh');
  for (const colours of ['lines', 'tree-sitter']) {
    if (colours === 'tree-sitter' && !has(compiler)) {
      passedOver.push('neovim’s colours by tree-sitter: no C compiler (Debian: apt-get install gcc libc6-dev)');
      continue;
    }
    const place = setting();
    try {
      if (!shell('neovim', place.env, [install, configuration, ...(colours === 'tree-sitter' ? [parser] : [])].join(''))) continue;
      const env = { ...place.env, PINTLE_COLOURS: colours };
      await run(
        `neovim, ${runs(command, '--version').stdout.split('\n')[0]}, colours by ${colours === 'lines' ? 'the look of the lines' : 'tree-sitter'}`,
        command,
        ['--headless', '-n', '-i', 'NONE', '-c', `luafile ${join(here, 'neovim.lua')}`],
        { ...place, env },
      );
    } finally {
      rmSync(place.folder, { recursive: true, force: true });
    }
  }
}

async function emacs() {
  const command = process.env.PINTLE_EMACS ?? 'emacs';
  if (!has(command)) return void passedOver.push('emacs is not installed (Debian: apt-get install emacs-nox elpa-eglot)');
  // Debian's packages for an emacs that has no eglot of its own; in batch it does not look for them itself.
  const packages = '/usr/share/emacs/site-lisp/elpa';
  const eglot = (args) => runs(command, '-Q', '--batch', ...args, '--eval', "(require 'eglot)").status === 0;
  const folders = existsSync(packages)
    ? readdirSync(packages)
        .filter((name) => /^(eglot|project|xref|seq|jsonrpc|flymake|eldoc)-/.test(name))
        .flatMap((name) => ['-L', join(packages, name)])
    : [];
  const load = eglot([]) ? [] : folders;
  if (!eglot(load)) return void passedOver.push('eglot is not installed (emacs 29 has it; Debian 12: apt-get install elpa-eglot)');
  const place = setting();
  try {
    const [install, configuration] = blocksOf('emacs.md', 'sh');
    if (!shell('emacs', place.env, install + configuration)) return;
    writeFileSync(join(place.home, '.emacs.d', 'init.el'), blocksOf('emacs.md', 'elisp').join('\n'));
    await run(
      `emacs, ${runs(command, '--version').stdout.split('\n')[0]}`,
      command,
      ['-q', '--batch', ...load, '-l', join(place.home, '.emacs.d', 'init.el'), '-l', join(here, 'emacs.el')],
      place,
    );
  } finally {
    rmSync(place.folder, { recursive: true, force: true });
  }
}

prepare();
if (wanted.length === 0 || wanted.includes('neovim')) await neovim();
if (wanted.length === 0 || wanted.includes('emacs')) await emacs();
for (const what of passedOver) console.log(`Not tested: ${what}.`);
if (mustHaveAll) faults.push(...passedOver.map((what) => `missing, and nothing may be: ${what}`));
if (faults.length > 0) {
  console.error(`\nOther editors do not get what they should:\n${faults.map((fault) => `  ${fault}`).join('\n')}`);
  process.exitCode = 1;
} else
  console.log(passedOver.length > 0 ? '\nOther editors: what was tested is as it should be.' : '\nOther editors get what they should.');
