// The server as a real process, bundled as it is shipped, over each transport; and as a worker.
import { fork, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { buildSync } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  createProtocolConnection,
  IPCMessageReader,
  IPCMessageWriter,
  type MessageReader,
  type MessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { site } from '../editor/bench.ts';
import { folder } from './folder.ts';

const place = folder();
const bin = mkdtempSync(join(tmpdir(), 'pintle-bin-'));
const bundle = join(bin, 'serve.cjs');
afterAll(() => {
  place.end();
  rmSync(bin, { recursive: true, force: true });
});
beforeAll(() => {
  const node = fileURLToPath(new URL('../../server/lsp/node.ts', import.meta.url));
  writeFileSync(
    join(bin, 'entry.ts'),
    `import { serveStdio } from ${JSON.stringify(node)};\nserveStdio();\nconsole.log('a stray line');\n`,
  );
  const root = fileURLToPath(new URL('../..', import.meta.url));
  buildSync({
    entryPoints: [join(bin, 'entry.ts')],
    outfile: bundle,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    nodePaths: [join(root, 'node_modules')],
    define: { pintleVersion: '"9.8.7"' },
    logLevel: 'error',
  });
  mkdirSync(join(bin, 'pages', 'rules'), { recursive: true });
});

async function converse(reader: MessageReader, writer: MessageWriter): Promise<string[]> {
  const connection = createProtocolConnection(reader, writer);
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  const greeting = await connection.sendRequest<{ serverInfo: unknown }>('initialize', {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: [{ uri: place.uri, name: 'x' }],
    capabilities: { textDocument: { diagnostic: { codeDescriptionSupport: true } } },
  });
  // The version that was built in, and the pages that lie beside what was built.
  expect(greeting.serverInfo).toEqual({ name: 'pintle', version: '9.8.7' });
  await connection.sendNotification('initialized', {});
  const uri = place.uriOf('gates/north.gate');
  await connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'pintle', version: 1, text: site().replace('2.10 m', '2.10') },
  });
  const report = await connection.sendRequest<{ items: { code: string; codeDescription?: { href: string } }[] }>(
    'textDocument/diagnostic',
    { textDocument: { uri } },
  );
  await connection.sendRequest('shutdown');
  await connection.sendNotification('exit');
  connection.dispose();
  for (const { code, codeDescription } of report.items)
    expect(codeDescription?.href).toBe(pathToFileURL(join(bin, 'pages', 'rules', `${code}.md`)).href);
  return report.items.map((item) => item.code);
}

test.each([[['--stdio']], [[]]])('over standard input and output, arguments %j', async (args) => {
  const child = spawn(process.execPath, [bundle, ...args], { stdio: ['pipe', 'pipe', 'ignore'] });
  const ended = new Promise((resolve) => child.on('exit', resolve));
  expect(await converse(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin))).toContain('unit-missing');
  expect(await ended).toBe(0);
});

test('over the editor’s own channel', async () => {
  const child = fork(bundle, ['--node-ipc'], { stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
  const ended = new Promise((resolve) => child.on('exit', resolve));
  expect(await converse(new IPCMessageReader(child), new IPCMessageWriter(child))).toContain('unit-missing');
  expect(await ended).toBe(0);
});

test('ends when the client goes away without a word', async () => {
  const child = spawn(process.execPath, [bundle, '--stdio'], { stdio: ['pipe', 'pipe', 'ignore'] });
  const ended = new Promise((resolve) => child.on('exit', resolve));
  child.stdin.end();
  expect(await ended).toBe(1);
});

test.each([
  ['after shutdown', ['initialize', 'shutdown', 'exit'], 0],
  ['without shutdown', ['initialize', 'exit'], 1],
  ['before anything else', ['exit'], 1],
  ['after a shutdown that was refused', ['shutdown', 'exit'], 1],
])('leaves %s with its own code', async (_, methods, code) => {
  const child = spawn(process.execPath, [bundle, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  const ended = new Promise((resolve) => child.on('exit', resolve));
  let said = '';
  child.stderr.on('data', (chunk) => (said += String(chunk)));
  methods.forEach((method, id) => {
    const params = method === 'initialize' ? { params: { processId: null, rootUri: null, capabilities: {} } } : {};
    const body = JSON.stringify({ jsonrpc: '2.0', ...(method === 'exit' ? {} : { id }), method, ...params });
    child.stdin.write(`Content-Length: ${body.length}\r\n\r\n${body}`);
  });
  expect(await ended).toBe(code);
  expect(said).toBe('pintle: a stray line\n');
});

test('a stream that cannot be followed ends the process, with one line', async () => {
  const child = spawn(process.execPath, [bundle, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  const ended = new Promise((resolve) => child.on('exit', resolve));
  let [said, answered] = ['', ''];
  child.stderr.on('data', (chunk) => (said += String(chunk)));
  child.stdout.on('data', (chunk) => (answered += String(chunk)));
  child.stdin.write('Content-Length: many\r\n\r\n{}');
  expect(await ended).toBe(1);
  expect(said).toBe('pintle: a stray line\npintle: Content-Length is no number of bytes. The conversation ends here.\n');
  expect(answered).toContain('"code":-32700');
});

test('as a worker: no disk, every library from the client', async () => {
  // Bundled for a browser: nothing of node may be left in it, or the bundler would refuse.
  const worker = join(bin, 'worker.mjs');
  buildSync({
    entryPoints: [fileURLToPath(new URL('../../server/lsp/browser.ts', import.meta.url))],
    outfile: worker,
    bundle: true,
    platform: 'browser',
    format: 'esm',
    logLevel: 'error',
  });
  const { serveWorker } = (await import(/* @vite-ignore */ pathToFileURL(worker).href)) as { serveWorker: (scope: unknown) => void };
  const { port1, port2 } = new MessageChannel();
  const answers: Record<string, unknown>[] = [];
  const send = (message: object): void => port2.postMessage({ jsonrpc: '2.0', ...message });
  port2.on('message', (sent: Record<string, unknown>) => {
    answers.push(sent);
    if (sent['id'] !== undefined && sent['method'] !== undefined)
      send({ id: sent['id'], result: sent['method'] === 'pintle/read' ? { missing: true } : null });
  });
  serveWorker(port1);
  port1.start();
  const answer = async (id: number): Promise<Record<string, unknown>> => {
    for (let i = 0; i < 6000; i++) {
      const found = answers.find((one) => one['id'] === id && 'result' in one);
      if (found !== undefined) return found['result'] as Record<string, unknown>;
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    throw new Error('no answer');
  };
  send({
    id: 1,
    method: 'initialize',
    params: {
      processId: null,
      rootUri: null,
      initializationOptions: { readsFiles: true },
      workspaceFolders: [{ uri: 'memfs:/x', name: 'x' }],
      capabilities: { textDocument: { diagnostic: {} } },
    },
  });
  await answer(1);
  send({ method: 'initialized', params: {} });
  send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri: 'memfs:/x/gates/a.gate', languageId: 'pintle', version: 1, text: site() } },
  });
  send({ id: 2, method: 'textDocument/diagnostic', params: { textDocument: { uri: 'memfs:/x/gates/a.gate' } } });
  const report = (await answer(2)) as { items: { code: string }[] };
  expect(report.items.filter((item) => item.code === 'use-missing-file')).toHaveLength(4);
  expect(answers.filter((one) => one['method'] === 'pintle/read').map((one) => (one['params'] as { uri: string }).uri)).toContain(
    'memfs:/x/library/drives.gate',
  );
  port1.close();
});
