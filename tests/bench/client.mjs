// A client of the real server in a process of its own, for the measurements that go through the protocol.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import { root } from './engine.mjs';
import { random } from './sites.mjs';

const usual = 20;

/** Why it can't be run, or undefined. */
export function serverMissing() {
  return existsSync(join(root, 'dist', 'server.cjs')) && existsSync(join(root, 'dist', 'pintle.cjs'))
    ? undefined
    : 'dist/server.cjs or dist/pintle.cjs is missing; build first';
}

/** The same promise, which fails after so many seconds. */
export const within = (promise, what, patience = usual) => {
  let timer;
  return Promise.race([
    promise,
    new Promise((_, failed) => (timer = setTimeout(() => failed(new Error(`no ${what} within ${patience} s`)), patience * 1000))),
  ]).finally(() => clearTimeout(timer));
};

export class Client {
  /** `flags` are given to node before the program; `errors` is where its standard error goes. */
  static async start(folder, flags = [], errors = 'inherit') {
    const client = new Client();
    client.process = spawn(process.execPath, [...flags, join(root, 'dist', 'pintle.cjs'), 'serve', '--stdio'], {
      cwd: folder,
      stdio: ['pipe', 'pipe', errors],
    });
    client.connection = createMessageConnection(
      new StreamMessageReader(client.process.stdout),
      new StreamMessageWriter(client.process.stdin),
    );
    client.waiting = new Map();
    client.logged = [];
    const { connection } = client;
    connection.onNotification('textDocument/publishDiagnostics', (published) => client.waiting.get(published.uri)?.(published));
    connection.onNotification('window/logMessage', ({ message }) => client.logged.push(message));
    connection.onRequest('workspace/configuration', ({ items }) => items.map(() => null));
    for (const method of [
      'client/registerCapability',
      'client/unregisterCapability',
      'window/workDoneProgress/create',
      'workspace/diagnostic/refresh',
      'workspace/inlayHint/refresh',
      'workspace/semanticTokens/refresh',
      'workspace/codeLens/refresh',
    ])
      connection.onRequest(method, () => null);
    connection.listen();
    const uri = pathToFileURL(folder).href;
    const { capabilities } = await within(
      connection.sendRequest('initialize', {
        processId: process.pid,
        rootUri: uri,
        workspaceFolders: [{ uri, name: 'bench' }],
        capabilities: {
          general: { positionEncodings: ['utf-16'] },
          textDocument: {
            synchronization: { dynamicRegistration: false },
            publishDiagnostics: { versionSupport: true, relatedInformation: true },
            inlayHint: { resolveSupport: { properties: ['tooltip'] } },
            completion: { completionItem: { snippetSupport: true } },
            diagnostic: { dynamicRegistration: false, relatedDocumentSupport: false },
          },
          workspace: {
            workspaceFolders: true,
            configuration: true,
            workspaceEdit: { documentChanges: true },
            diagnostics: { refreshSupport: true },
          },
        },
      }),
      'answer to initialize',
    );
    await connection.sendNotification('initialized', {});
    client.capabilities = capabilities;
    client.pulls = capabilities.diagnosticProvider !== undefined;
    const sync = capabilities.textDocumentSync;
    client.incremental = (typeof sync === 'number' ? sync : sync?.change) === 2;
    return client;
  }

  /** The diagnostics of that version of a document, and of no older one. */
  async diagnostics(uri, version, send) {
    if (this.pulls) {
      await send();
      const report = await within(this.connection.sendRequest('textDocument/diagnostic', { textDocument: { uri } }), 'diagnostics');
      return report.items ?? [];
    }
    const published = new Promise((done) =>
      this.waiting.set(uri, (given) => (given.version === undefined || given.version >= version ? done(given.diagnostics) : undefined)),
    );
    await send();
    return await within(published, 'diagnostics');
  }

  async stop() {
    try {
      await within(this.connection.sendRequest('shutdown'), 'answer to shutdown');
      await this.connection.sendNotification('exit');
    } finally {
      this.connection.dispose();
      this.process.kill();
    }
  }
}

export class Document {
  constructor(client, uri, text) {
    Object.assign(this, { client, uri, text, version: 1 });
  }

  open() {
    return this.client.diagnostics(this.uri, 1, () =>
      this.client.connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri: this.uri, languageId: 'pintle', version: 1, text: this.text },
      }),
    );
  }

  /** Line and character of an offset. */
  position(offset) {
    const before = this.text.lastIndexOf('\n', offset - 1);
    let line = 0;
    for (let at = this.text.indexOf('\n'); at >= 0 && at < offset; at = this.text.indexOf('\n', at + 1)) line++;
    return { line, character: offset - before - 1 };
  }

  /** Puts `typed` in the place of what stands between the offsets; milliseconds until the diagnostics are there. */
  async edit(start, end, typed) {
    const range = { start: this.position(start), end: this.position(end) };
    this.text = this.text.slice(0, start) + typed + this.text.slice(end);
    const version = ++this.version;
    const contentChanges = [this.client.incremental ? { range, text: typed } : { text: this.text }];
    const began = process.hrtime.bigint();
    const found = await this.client.diagnostics(this.uri, version, () =>
      this.client.connection.sendNotification('textDocument/didChange', { textDocument: { uri: this.uri, version }, contentChanges }),
    );
    return { milliseconds: Number(process.hrtime.bigint() - began) / 1e6, found };
  }
}

/** Where to type: inside a word, behind a digit, at the end of a line, in a comment; spread over the whole file. */
export function places(text, count, seed) {
  const next = random(seed);
  const fits = [/[a-z](?=[a-z])/g, /\d(?=[ .\d])/g, /[^\s{](?=\n)/g, /# [a-z]/g];
  const typed = ['abc', '123', ' 4 ', 'xyz'];
  return Array.from({ length: count }, (_, i) => {
    const pattern = fits[i % fits.length];
    pattern.lastIndex = Math.floor(next() * text.length * 0.95);
    const match = pattern.exec(text) ?? /language/.exec(text);
    return { at: match.index + match[0].length, typed: typed[i % typed.length] };
  });
}
