// One VS Code: code-server with directories of its own, and a browser that opens pages of it.
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { chromium as launcher } from 'playwright-core';
import { chromium, codeServer, newerNode } from './parts.mjs';

const entry = join(codeServer, 'out', 'node', 'entry.js');

/** What every window starts with: nothing that moves, asks, or calls out. */
export const quiet = {
  'workbench.startupEditor': 'none',
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'window.commandCenter': false,
  'chat.commandCenter.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'security.workspace.trust.enabled': false,
  'extensions.ignoreRecommendations': true,
  'git.enabled': false,
  'editor.minimap.enabled': false,
  'workbench.reduceMotion': 'on',
  'files.autoSave': 'off',
};

const freePort = () =>
  new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });

/** Starts a code-server that has this extension and lives in this folder; `stop` ends all of its processes. */
export async function startServer(folder, vsix, settings = {}) {
  const user = join(folder, 'user');
  const extensions = join(folder, 'extensions');
  const home = join(folder, 'home');
  for (const path of [join(user, 'User'), extensions, home]) mkdirSync(path, { recursive: true });
  writeFileSync(join(user, 'User', 'settings.json'), JSON.stringify({ ...quiet, ...settings }));
  // Without a gallery nothing is asked of the network.
  const env = { ...process.env, HOME: home, EXTENSIONS_GALLERY: '{"serviceUrl":"","itemUrl":"","resourceUrlTemplate":""}' };
  for (const name of Object.keys(env)) if (/^(npm_|VSCODE_|NODE_OPTIONS$|XDG_)/.test(name)) delete env[name];
  const places = ['--user-data-dir', user, '--extensions-dir', extensions, '--config', join(folder, 'none.yaml')];
  execFileSync(newerNode, [entry, ...places, '--install-extension', vsix], { env, stdio: ['ignore', 'pipe', 'pipe'] });

  const port = await freePort();
  const said = join(folder, 'server.log');
  const log = openSync(said, 'a');
  const flags = [
    '--auth',
    'none',
    '--bind-addr',
    `127.0.0.1:${port}`,
    '--disable-telemetry',
    '--disable-update-check',
    '--disable-workspace-trust',
    '--disable-getting-started-override',
    '--vscode-option',
    'enable-smoke-test-driver',
  ];
  const server = spawn(newerNode, [entry, ...places, ...flags], { env, detached: true, stdio: ['ignore', log, log] });
  const stop = () => {
    try {
      process.kill(-server.pid, 'SIGKILL');
    } catch {
      // It has ended by itself.
    }
  };
  process.once('exit', stop);
  const address = `http://127.0.0.1:${port}`;
  for (let tries = 0; ; tries++) {
    try {
      if ((await fetch(`${address}/healthz`)).ok) break;
    } catch {
      // Not yet.
    }
    if (tries > 300 || server.exitCode !== null) {
      stop();
      throw new Error(`code-server does not start:\n${readFileSync(said, 'utf8').slice(-2000)}`);
    }
    await wait(100);
  }
  return { address, authority: `127.0.0.1:${port}`, group: server.pid, stop, extensions };
}

export const startBrowser = () =>
  launcher.launch({
    executablePath: chromium(),
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });

/** The address of a page that shows a folder, with a file of it opened where one is named. */
export function pageAddress(server, folder, payload = [], file) {
  const entries = [...payload, ...(file === undefined ? [] : [['openFile', remote(server, file)]])];
  return `${server.address}/?folder=${encodeURIComponent(folder)}&payload=${encodeURIComponent(JSON.stringify(entries))}`;
}

export const remote = (server, path) => `vscode-remote://${server.authority}${path}`;

/** The command lines of the processes that a server started, itself included. */
export function processesOf(group) {
  const text = execFileSync('ps', ['-eo', 'pgid=,args='], { encoding: 'utf8' });
  return text.split('\n').flatMap((line) => {
    const [, id, command] = /^\s*(\d+) (.*)$/.exec(line) ?? [];
    return Number(id) === group ? [command] : [];
  });
}
