// Inside the extension host of a desktop: the packed extension, installed, and the tests beside it.
import { join } from 'node:path';
import { pageAddress, processesOf, remote } from './editor.mjs';
import { runInside } from './inside.mjs';

export async function runLayer({ server, browser, base, site, report }) {
  const host = join(base, 'host');
  const payload = [
    ['extensionDevelopmentPath', remote(server, host)],
    ['extensionTestsPath', remote(server, join(host, 'desktop.js'))],
  ];
  const seen = [];
  const look = setInterval(() => seen.push(...processesOf(server.group)), 500);
  try {
    await runInside({ browser, layer: 'desktop', address: pageAddress(server, site, payload), report });
  } finally {
    clearInterval(look);
  }
  report(
    'desktop',
    'the server runs in a process of its own',
    seen.some((command) => command.includes('dist/server.cjs')) ? undefined : 'no process runs dist/server.cjs',
  );
}
