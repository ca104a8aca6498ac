// Inside the extension host of a browser: the same package, loaded from a web address as a site like vscode.dev does, and
// the language server in a worker. No machine stands behind this window: it is not told of one, and its files lie in memory.
import { createReadStream, readdirSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, normalize } from 'node:path';
import { processesOf } from './editor.mjs';
import { runInside } from './inside.mjs';

const types = {
  js: 'text/javascript',
  cjs: 'text/javascript',
  json: 'application/json',
  md: 'text/markdown',
  svg: 'image/svg+xml',
  png: 'image/png',
};

/** Gives out the files of some folders; code-server passes them on, so that they come from the page's own address. */
async function serve(folders) {
  const asked = [];
  const server = createServer((request, response) => {
    const [, name, ...rest] = normalize(decodeURIComponent(new URL(request.url, 'http://x').pathname)).split('/');
    asked.push([name, ...rest].join('/'));
    const file = createReadStream(join(folders[name] ?? '/nonexistent', ...rest));
    file.once('error', () => response.writeHead(404).end());
    file.once('open', () => {
      response.writeHead(200, { 'content-type': types[rest.at(-1).split('.').at(-1)] ?? 'text/plain' });
      file.pipe(response);
    });
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { port: server.address().port, asked, stop: () => server.close() };
}

/** Changes one place of a file on its way to the page. */
const changing = (page, address, place, change) =>
  page.route(address, async (route) => {
    const response = await route.fetch();
    const text = await response.text();
    if (!place.test(text)) throw new Error(`${place} is not in ${address}: is this another version of code-server?`);
    await route.fulfill({ response, body: text.replace(place, change) });
  });

export async function runLayer({ server, browser, base, report }) {
  const installed = readdirSync(server.extensions).find((name) => name.startsWith('pintle.pintle-'));
  const files = await serve({ pintle: join(server.extensions, installed), host: join(base, 'host') });
  const place = (path) => ({ $mid: 1, scheme: 'http', authority: server.authority, path: `/proxy/${files.port}/${path}` });
  /** The settings of a window without a machine: where the extensions are, and which tests to run. */
  const alone = (configuration) => ({
    ...configuration,
    developmentOptions: {
      ...configuration.developmentOptions,
      extensions: [place('pintle'), place('host')],
      extensionTestsPath: place('host/web.js'),
    },
  });
  const before = processesOf(server.group).filter((command) => command.includes('dist/server.cjs')).length;
  let during = 0;
  const look = setInterval(
    () => (during = Math.max(during, processesOf(server.group).filter((command) => command.includes('dist/server.cjs')).length)),
    500,
  );
  const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  const unescaped = (text) => text.replaceAll('&quot;', '"').replaceAll('&amp;', '&');
  try {
    await runInside({
      browser,
      layer: 'web',
      address: `${server.address}/?folder=${encodeURIComponent('tmp:///site')}`,
      report,
      whatElse: async (page) => {
        await changing(
          page,
          `${server.address}/?folder=*`,
          /(?<=id="vscode-workbench-web-configuration" data-settings=")[^"]*/,
          (settings) => escaped(JSON.stringify(alone(JSON.parse(unescaped(settings))))),
        );
        // code-server tells every window that it is the machine behind it.
        await changing(page, '**/workbench/workbench.js', /(?<=remoteAuthority:)location\.host/, () => 'undefined');
      },
    });
  } finally {
    clearInterval(look);
    files.stop();
  }
  const has = (path) => files.asked.includes(path);
  report(
    'web',
    'the client is the web one, and the server is in a worker',
    has('pintle/dist/extension-web.cjs') && has('pintle/dist/server-worker.js') && !has('pintle/dist/extension.cjs')
      ? undefined
      : `asked for: ${files.asked.join(' ')}`,
  );
  report('web', 'no process serves it', during <= before ? undefined : `${during - before} processes run dist/server.cjs`);
}
