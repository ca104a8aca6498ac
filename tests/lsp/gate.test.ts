// What is sent at the wrong time or in the wrong shape: each is answered with the error that the protocol has for it, and the
// next question as ever. Codes and times: LSP 3.18, “Base Protocol” and “Server lifecycle”; JSON-RPC 2.0, section 5.1.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Frames } from '../../server/lsp/framing.ts';
import { site } from '../editor/bench.ts';
import { framed, raw } from './raw.ts';

const parseError = -32700;
const invalidRequest = -32600;
const methodNotFound = -32601;
const invalidParams = -32602;
const notInitialized = -32002;
const cancelled = -32800;

const uri = 'untitled:one';
const opened = { textDocument: { uri, languageId: 'pintle', version: 1, text: site() } };
const at = { textDocument: { uri }, position: { line: 0, character: 3 } };
const start = { line: 0, character: 0 };

describe('at the wrong time', () => {
  test('before initialize a request is refused as too early, and a notification is not heard', async () => {
    const client = raw();
    for (const [method, params] of [
      ['textDocument/hover', at],
      ['shutdown', undefined],
      ['pintle/rules', undefined],
      ['no/such', {}],
    ] as const)
      expect((await client.ask(method, params)).error?.code, method).toBe(notInitialized);
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: opened });
    client.send({ jsonrpc: '2.0', method: 'initialized', params: {} });
    expect((await client.initialize()).result).toBeDefined();
    expect((await client.ask('textDocument/documentSymbol', { textDocument: { uri } })).result).toEqual([]);
    // Nothing was said before the greeting was answered.
    expect(client.heard.findIndex(({ method }) => method !== undefined)).toBe(-1);
  });

  test('initialize is answered once', async () => {
    const client = raw();
    expect((await client.initialize()).result).toBeDefined();
    expect((await client.ask('initialize', { processId: null, rootUri: null, capabilities: {} })).error?.code).toBe(invalidRequest);
    expect((await client.ask('pintle/rules')).result).not.toEqual([]);
  });

  test('a greeting that is refused leaves the server waiting for another', async () => {
    const client = raw();
    expect((await client.ask('initialize', 5)).error?.code).toBe(invalidParams);
    expect((await client.ask('initialize')).error?.code).toBe(invalidParams);
    expect((await client.ask('pintle/rules')).error?.code).toBe(notInitialized);
    expect((await client.initialize()).result).toBeDefined();
  });

  test('after shutdown every request is refused, and no notification is heard', async () => {
    const client = raw();
    await client.initialize();
    expect(await client.ask('shutdown')).toMatchObject({ result: null });
    const before = client.heard.length;
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: opened });
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: {} });
    for (const method of ['textDocument/hover', 'shutdown', 'initialize', 'no/such'])
      expect((await client.ask(method, at)).error?.code, method).toBe(invalidRequest);
    expect(client.heard.length - before).toBe(4);
  });
});

describe('in the wrong shape', () => {
  const wrongs: readonly (readonly [method: string, params: unknown])[] = [
    ['textDocument/hover', undefined],
    ['textDocument/hover', 'x'],
    ['textDocument/hover', [1, 2]],
    ['textDocument/hover', {}],
    ['textDocument/hover', { textDocument: null, position: start }],
    ['textDocument/hover', { textDocument: { uri: 5 }, position: start }],
    ['textDocument/hover', { textDocument: { uri } }],
    ['textDocument/hover', { textDocument: { uri }, position: { line: '0', character: 0 } }],
    ['textDocument/hover', { textDocument: { uri }, position: { line: 0.5, character: 0 } }],
    ['textDocument/hover', { textDocument: { uri }, position: { line: -1, character: 0 } }],
    ['textDocument/rename', { ...at, newName: null }],
    ['textDocument/codeAction', { textDocument: { uri }, range: { start, end: start } }],
    ['textDocument/inlayHint', { textDocument: { uri }, range: null }],
    ['textDocument/selectionRange', { textDocument: { uri }, positions: {} }],
    ['completionItem/resolve', {}],
    ['workspace/symbol', {}],
    ['workspace/diagnostic', {}],
    ['pintle/figures', {}],
    ['pintle/promises', { uris: [5] }],
  ];
  test.each(wrongs)('%s %j is answered with InvalidParams', async (method, params) => {
    const client = raw();
    await client.initialize();
    const { error } = await client.ask(method, params);
    expect(error?.code).toBe(invalidParams);
    expect(error?.message).toMatch(new RegExp(`^${method.replace('/', '/')}: .*\\.$`));
    expect(client.heard.filter((one) => one.method !== undefined)).toEqual([]);
  });

  test.each([undefined, null, 5, {}, ['x']])('a text that is opened with %j as its text is not open, and a line says so', async (text) => {
    const client = raw();
    await client.initialize();
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: { textDocument: { ...opened.textDocument, text } } });
    const { params } = await client.next(({ method }) => method === 'window/logMessage');
    expect((params as { message: string }).message).toMatch(
      /^textDocument\/didOpen was left unheeded: params\.textDocument\.text is .*\.$/,
    );
    expect((await client.ask('textDocument/documentSymbol', { textDocument: { uri } })).result).toEqual([]);
  });

  test('a change that cannot be made gives the text up, and says so, for what it is now nobody knows', async () => {
    const client = raw();
    await client.initialize();
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: opened });
    expect((await client.ask('textDocument/documentSymbol', { textDocument: { uri } })).result).not.toEqual([]);
    const change = { textDocument: { uri, version: 2 }, contentChanges: [{ range: { start, end: { line: 0 } }, text: '' }] };
    client.send({ jsonrpc: '2.0', method: 'textDocument/didChange', params: change });
    const { params } = await client.next(({ method }) => method === 'window/showMessage');
    expect(params).toMatchObject({ type: 1, message: expect.stringContaining('open it again') });
    await client.next(
      ({ method, params }) => method === 'textDocument/publishDiagnostics' && JSON.stringify(params).includes('"diagnostics":[]'),
    );
    expect((await client.ask('textDocument/documentSymbol', { textDocument: { uri } })).result).toEqual([]);
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: opened });
    expect((await client.ask('textDocument/documentSymbol', { textDocument: { uri } })).result).not.toEqual([]);
  });

  test('what is no message', async () => {
    const client = raw();
    await client.initialize();
    for (const [body, code] of [
      ['{"jsonrpc": "2.0", "id"', parseError],
      ['', parseError],
      ['[]', invalidRequest],
      [JSON.stringify([{ jsonrpc: '2.0', id: 1, method: 'shutdown' }]), invalidRequest],
      ['null', invalidRequest],
      ['5', invalidRequest],
      ['"x"', invalidRequest],
      ['{}', invalidRequest],
      ['{"id":null,"jsonrpc":"2.0","method":"pintle/rules"}', invalidRequest],
      ['{"id":1.5,"jsonrpc":"2.0","method":"pintle/rules"}', invalidRequest],
      ['{"id":1e300,"jsonrpc":"2.0","method":"pintle/rules"}', invalidRequest],
      ['{"id":{},"jsonrpc":"2.0","method":"pintle/rules"}', invalidRequest],
    ] as const) {
      client.bytes(framed(body));
      expect((await client.next(({ id }) => id === null)).error?.code, body).toBe(code);
    }
    for (const wrong of [{ method: 5 }, { method: 'pintle/rules', jsonrpc: '1.0' }, {}]) {
      client.send({ jsonrpc: '2.0', id: 77, ...wrong });
      expect((await client.next(({ id }) => id === 77)).error?.code, JSON.stringify(wrong)).toBe(invalidRequest);
    }
    expect((await client.ask('pintle/rules')).result).not.toEqual([]);
    expect(client.heard.filter((one) => one.method !== undefined)).toEqual([]);
  });

  test('an id that is in use is refused, and the request that has it is answered', async () => {
    const client = raw();
    await client.initialize();
    client.send({ jsonrpc: '2.0', id: 5, method: 'pintle/rules' });
    client.send({ jsonrpc: '2.0', id: 5, method: 'pintle/rules' });
    const answers = [await client.next(({ id }) => id === 5), await client.next(({ id }) => id === 5)];
    expect(answers.map(({ error }) => error?.code)).toContain(invalidRequest);
    expect(answers.filter(({ result }) => Array.isArray(result))).toHaveLength(1);
    expect((await client.ask('pintle/rules', null, 5)).result).not.toEqual([]);
  });

  test('what nobody knows: requests have no such method, notifications and answers pass by', async () => {
    const client = raw();
    await client.initialize();
    for (const method of ['no/such', '$/no', 'textDocument/willSaveWaitUntil'])
      expect((await client.ask(method, {})).error?.code).toBe(methodNotFound);
    const before = client.heard.length;
    for (const message of [
      { method: 'no/such', params: {} },
      { method: '$/no' },
      { method: '$/cancelRequest', params: { id: 99 } },
      { id: 4711, result: null },
      { id: 4711, error: { code: 1, message: 'x' } },
      { id: null, result: 5 },
    ])
      client.send({ jsonrpc: '2.0', ...message });
    expect((await client.ask('pintle/rules')).result).not.toEqual([]);
    expect(client.heard.length - before).toBe(1);
    client.send({ jsonrpc: '2.0', method: '$/cancelRequest', params: null });
    expect((await client.next(({ method }) => method === 'window/logMessage')).params).toMatchObject({ type: 1 });
  });

  test('a request that is cancelled is answered as such', async () => {
    const client = raw();
    await client.initialize();
    client.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: opened });
    client.bytes(
      [
        { id: 'x', method: 'textDocument/hover', params: at },
        { method: '$/cancelRequest', params: { id: 'x' } },
      ]
        .map((message) => framed(JSON.stringify({ jsonrpc: '2.0', ...message })))
        .join(''),
    );
    expect((await client.next(({ id }) => id === 'x')).error?.code).toBe(cancelled);
  });

  test('an answer of the client without anything in it is nothing, and not an error', async () => {
    const client = raw();
    await client.initialize({ capabilities: { workspace: { configuration: true } } });
    const { id } = await client.next(({ method }) => method === 'workspace/configuration');
    client.send({ jsonrpc: '2.0', id });
    expect((await client.ask('pintle/rules')).result).not.toEqual([]);
    expect(client.heard.filter(({ method }) => method === 'window/logMessage')).toEqual([]);
  });
});

describe('the stream', () => {
  const body = '{"jsonrpc":"2.0","id":1,"method":"shutdown"}';
  test.each([
    ['none', 'Content-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n'],
    ['no number', 'Content-Length: twelve\r\n\r\n'],
    ['negative', 'Content-Length: -5\r\n\r\n'],
    ['a fraction', 'Content-Length: 5.5\r\n\r\n'],
    ['empty', 'Content-Length: \r\n\r\n'],
    ['twice', `Content-Length: ${body.length}\r\nContent-Length: ${body.length}\r\n\r\n`],
    ['huge', 'Content-Length: 99999999999\r\n\r\n'],
    ['beyond counting', `Content-Length: ${'9'.repeat(400)}\r\n\r\n`],
    ['no header', 'hello\r\n\r\n'],
    ['lines without a return', `Content-Length: ${body.length}\n\n`],
    ['another charset', `Content-Length: ${body.length}\r\nContent-Type: application/vscode-jsonrpc; charset=utf-16\r\n\r\n`],
    ['headers without an end', `X-Long: ${'x'.repeat(5000)}`],
  ])('a length that is %s ends it, with one answer', async (_, headers) => {
    const client = raw();
    client.bytes(headers + body);
    const answer = await client.next(({ id }) => id === null);
    expect(answer.error?.code).toBe(parseError);
    expect(answer.error?.message).toMatch(/^[A-Z].*\.$/);
    for (let i = 0; i < 100 && client.broken.length === 0; i++) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(client.broken).toEqual([answer.error?.message]);
    client.bytes(framed(body));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(client.heard).toHaveLength(1);
  });

  test.each([
    ['short', body.length - 3],
    ['long', body.length + 7],
  ])('a length that is too %s spoils the message, and then the stream', async (_, length) => {
    const client = raw();
    client.bytes(`Content-Length: ${length}\r\n\r\n${body}${framed(body)}`);
    const codes = [await client.next(({ id }) => id === null), await client.next(({ id }) => id === null)].map(({ error }) => error?.code);
    expect(codes).toEqual([parseError, parseError]);
    for (let i = 0; i < 100 && client.broken.length === 0; i++) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(client.broken).toHaveLength(1);
  });

  test('messages come out whole, however the bytes arrive', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'grapheme', maxLength: 40 }), { minLength: 1, maxLength: 6 }),
        fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 20 }),
        fc.boolean(),
        (bodies, cuts, isTyped) => {
          const type = isTyped ? 'Content-Type: application/vscode-jsonrpc; charset=utf-8\r\n' : '';
          const bytes = Buffer.from(bodies.map((one) => type + framed(one)).join(''));
          const frames = new Frames();
          const found: string[] = [];
          for (let from = 0, i = 0; from < bytes.length; i++) {
            const to = from + (cuts[i % cuts.length] as number);
            found.push(...frames.push(bytes.subarray(from, to)).map(String));
            from = to;
          }
          expect(frames.fault).toBeUndefined();
          expect(found).toEqual(bodies);
        },
      ),
    );
  });
});

test('no answer and no line of the log, whatever is sent, holds a place in the program', async () => {
  const json = fc.jsonValue({ maxDepth: 3 });
  const method = fc.constantFrom(
    'textDocument/hover',
    'textDocument/didOpen',
    'textDocument/didChange',
    'workspace/didChangeConfiguration',
    'workspace/didChangeWorkspaceFolders',
    'workspace/willRenameFiles',
    'codeAction/resolve',
    'workspace/executeCommand',
    'callHierarchy/incomingCalls',
    '$/setTrace',
    '$/cancelRequest',
    'pintle/preview',
  );
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(method, json, fc.boolean()), { minLength: 1, maxLength: 8 }), async (messages) => {
      const client = raw();
      await client.initialize({ capabilities: { workspace: { configuration: true } } });
      messages.forEach(
        ([method, params, isRequest], id) => void client.send({ jsonrpc: '2.0', ...(isRequest ? { id } : {}), method, params }),
      );
      for (const [id, [, , isRequest]] of messages.entries()) if (isRequest) await client.next((answer) => answer.id === id);
      expect((await client.ask('pintle/rules')).result).not.toEqual([]);
      expect(
        client.heard.filter((one) => /\bat .*:\d+:\d+|TypeError|undefined \(reading/.test(JSON.stringify(one.error ?? one.params ?? ''))),
      ).toEqual([]);
    }),
    { numRuns: 60 },
  );
});
