// What a client says of itself: whatever shape it has, it costs the client no more than what is wrong in it; folders have
// settings of their own; and what only some clients know is sent to those alone.
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import type { CodeAction, InlayHint } from 'vscode-languageserver/node';
import { version } from '../../server/engine/inside.ts';
import { takesOf } from '../../server/lsp/takes.ts';
import { site } from '../editor/bench.ts';
import { connect, itemsOf, usual } from './client.ts';
import { folder } from './folder.ts';
import { raw } from './raw.ts';
import { ends, start } from './start.ts';

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);
const pathsOf = (value: unknown, path: readonly string[] = []): (readonly string[])[] => [
  path,
  ...(isFields(value) ? Object.entries(value).flatMap(([name, inner]) => pathsOf(inner, [...path, name])) : []),
];
const withAt = (value: unknown, [name, ...rest]: readonly string[], put: unknown): unknown =>
  name === undefined ? put : { ...(value as Fields), [name]: withAt(isFields(value) ? value[name] : {}, rest, put) };

const whole = { ...usual(), workspace: { ...(usual() as { workspace: Fields }).workspace, applyEdit: true } };
const paths = pathsOf(whole);
const nonsense = fc.oneof(
  fc.constantFrom(null, 0, 5, -1, '', 'x', true, false),
  fc.constantFrom<unknown>([], [null], [{}], {}, { valueSet: null }, { x: 1 }, [[]]),
  fc.jsonValue({ maxDepth: 2 }),
);

describe('capabilities of any shape', () => {
  test('are read, and what has another shape than it should counts as not said', () => {
    const nothing = takesOf({});
    for (const given of [undefined, null, 5, 'x', [], [{}], { textDocument: null }, { textDocument: [], workspace: 'x' }])
      expect(takesOf(given)).toEqual(nothing);
    const shape = (value: unknown): unknown =>
      value instanceof Set || Array.isArray(value)
        ? 'list'
        : isFields(value)
          ? Object.entries(value).map(([name, inner]) => [name, shape(inner)])
          : '';
    const wanted = JSON.stringify(shape(nothing)).replaceAll(/"list"/g, '""');
    fc.assert(
      fc.property(fc.constantFrom(...paths), nonsense, (path, put) => {
        expect(JSON.stringify(shape(takesOf(withAt(whole, path, put)))).replaceAll(/"list"/g, '""')).toBe(wanted);
      }),
      { numRuns: 2000 },
    );
    // Own names alone count, not those that every object has.
    expect(takesOf(JSON.parse('{"__proto__": {"workspace": {"configuration": true}}, "constructor": 5}'))).toEqual(nothing);
  });

  test('one thing that is wrong costs nothing else: the greeting, symbols and actions are there', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths), nonsense, async (path, put) => {
        const client = raw();
        expect((await client.initialize({ capabilities: withAt(whole, path, put) })).result).toBeDefined();
        const uri = 'untitled:one';
        const text = site().replace('width 2.10 m', 'width 2.10');
        client.send({
          jsonrpc: '2.0',
          method: 'textDocument/didOpen',
          params: { textDocument: { uri, languageId: 'pintle', version: 1, text } },
        });
        expect((await client.ask('textDocument/documentSymbol', { textDocument: { uri } })).result).not.toEqual([]);
        const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
        const actions = (await client.ask('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics: [] } }))
          .result;
        // Who says nothing at all takes no actions.
        if (path.length > 0) expect((actions as CodeAction[]).map(({ title }) => title)).toContainEqual(expect.stringContaining('2.10 m'));
        expect(client.heard.filter(({ method, params }) => method === 'window/logMessage' && (params as Fields)['type'] === 1)).toEqual([]);
      }),
      { numRuns: 120 },
    );
  });

  test('a client that takes actions as commands only has them carried out', async () => {
    const { client, place } = await start({
      capabilities: { textDocument: { codeAction: null }, workspace: { applyEdit: true } },
    });
    expect(client.capabilities['executeCommandProvider']).toEqual({ commands: ['pintle.apply'] });
    const edits: unknown[] = [];
    client.connection.onRequest('workspace/applyEdit', ({ edit }: { edit: unknown }) => (edits.push(edit), { applied: true }));
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site().replace('width 2.10 m', 'width 2.10'));
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const commands = await client.request<{ title: string; command: string; arguments: unknown[] }[]>('textDocument/codeAction', {
      textDocument: { uri },
      range,
      context: { diagnostics: [] },
    });
    const found = commands.find(({ title }) => title.includes('2.10 m'));
    expect(found).toMatchObject({ command: 'pintle.apply' });
    expect(await client.request('workspace/executeCommand', { command: found?.command, arguments: found?.arguments })).toBeNull();
    expect(JSON.stringify(edits)).toContain('" m"');
    await client.edit(uri, { start: 0, end: 0, text: '\n' });
    const again = client.request('workspace/executeCommand', { command: found?.command, arguments: found?.arguments });
    await expect(again).rejects.toMatchObject({ code: -32801 });
    await expect(client.request('workspace/executeCommand', { command: 'pintle.other' })).rejects.toMatchObject({ code: -32602 });
    expect(edits).toHaveLength(1);
  });
});

describe('a greeting', () => {
  test('names the version', async () => {
    const { result } = await raw().initialize();
    expect(result).toMatchObject({ serverInfo: { name: 'pintle', version } });
  });

  test.each([
    ['workspaceFolders: null and a rootUri', (uri: string) => ({ workspaceFolders: null, rootUri: uri })],
    ['a rootPath, as clients of long ago', (_: string, path: string) => ({ rootUri: null, rootPath: path })],
    [
      'folders that are no folders beside one that is',
      (uri: string) => ({ workspaceFolders: [null, 5, {}, { uri: 5 }, { uri, name: 'x' }] }),
    ],
    ['a process that is none', (uri: string) => ({ processId: -7.5, rootUri: uri, trace: 5, workDoneToken: {} })],
  ])('%s', async (_, greeting) => {
    const place = folder({ 'gates/far.gate': 'language 1\nleaf somewhere {\n}\n' });
    ends.push(() => place.end());
    const client = raw();
    await client.initialize(greeting(place.uri, place.path));
    let found: unknown;
    for (let i = 0; i < 500 && JSON.stringify(found ?? []) === '[]'; i++)
      found = (await client.ask('workspace/symbol', { query: 'somewhere' })).result;
    expect(found).toMatchObject([{ name: 'somewhere', location: { uri: place.uriOf('gates/far.gate') } }]);
  });
});

describe('settings', () => {
  const places: ReturnType<typeof folder>[] = [];
  afterEach(() => {
    for (const place of places.splice(0)) place.end();
  });
  const labels = (hints: readonly InlayHint[]): string[] => hints.map(({ label }) => String(label));

  test('each folder has its own, a file in none those of no folder; a change, or another folder, is asked about anew', async () => {
    const [one, other, third] = [folder(), folder(), folder()];
    places.push(one, other, third);
    const values: Record<string, unknown> = { [one.uri]: { show: false }, [other.uri]: { show: true, force: true } };
    let asked: unknown[] = [];
    const client = await connect({
      folders: [one.uri, other.uri],
      capabilities: { workspace: { configuration: true, codeLens: { refreshSupport: true } } },
    });
    ends.push(() => client.end());
    let lenses = 0;
    client.connection.onRequest('workspace/codeLens/refresh', () => void lenses++);
    client.connection.onRequest('workspace/configuration', ({ items }: { items: { scopeUri?: string }[] }) => {
      asked = items;
      return items.map(({ scopeUri }) => ({
        values: scopeUri === undefined ? { show: false } : values[scopeUri],
        lenses: { show: scopeUri !== other.uri },
      }));
    });
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    const uris = [one.uriOf('gates/a.gate'), other.uriOf('gates/a.gate'), third.uriOf('gates/a.gate')] as const;
    for (const uri of uris) await client.open(uri, site());
    await client.until(() => client.refreshes.inlays > 0 && lenses > 0);
    expect(asked).toEqual([{ section: 'pintle' }, { section: 'pintle', scopeUri: one.uri }, { section: 'pintle', scopeUri: other.uri }]);
    expect(await client.inlays(uris[0])).toEqual([]);
    expect(labels(await client.inlays(uris[1])).length).toBeGreaterThan(3);
    expect(await client.inlays(uris[2])).toEqual([]);
    const shown = async (uri: string): Promise<number> =>
      (await client.request<unknown[]>('textDocument/codeLens', { textDocument: { uri } })).length;
    expect(await shown(uris[0])).toBeGreaterThan(0);
    expect(await shown(uris[1])).toBe(0);

    values[one.uri] = { show: true };
    const refreshes = client.refreshes.inlays;
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.until(() => client.refreshes.inlays > refreshes);
    const less = labels(await client.inlays(uris[0]));
    expect(less.length).toBeGreaterThan(3);
    values[third.uri] = { show: true };
    await client.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added: [{ uri: third.uri, name: 'c' }], removed: [{ uri: one.uri, name: 'a' }] },
    });
    await client.until(async () => (await client.inlays(uris[2])).length > 0);
    expect(asked).toHaveLength(3);
    // A folder that is gone has the settings of none.
    expect(await client.inlays(uris[0])).toEqual([]);
  });

  test('one of a folder inside another counts; an answer that is none leaves what the client said at first', async () => {
    const outer = folder();
    places.push(outer);
    const inner = outer.uriOf('gates');
    for (const [answer, shown] of [
      [(items: unknown[]) => items.map((_, index) => ({ values: { show: index === 2 } })), true],
      [() => null, false],
      [() => [], false],
      [() => ({ length: 3 }), false],
    ] as const) {
      const client = await connect({
        folders: [outer.uri, inner],
        options: { settings: { values: { show: false } } },
        settings: () => null,
      });
      ends.push(() => client.end());
      client.connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) => answer(items));
      await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
      const uri = outer.uriOf('gates/a.gate');
      await client.open(uri, site());
      await client.request('pintle/rules', {});
      expect((await client.inlays(uri)).length > 0).toBe(shown);
    }
  });
});

describe('what only some clients know', () => {
  test('the text of a file is asked only of a client that gives it', async () => {
    for (const readsFiles of [true, false]) {
      const asked: string[] = [];
      const client = await connect({
        folders: ['memfs://host/x'],
        host: { disk: undefined },
        read: (uri) => (asked.push(uri), { missing: true }),
        options: { readsFiles },
      });
      ends.push(() => client.end());
      await client.open('memfs://host/x/gates/a.gate', site());
      const items = itemsOf(await client.pullOf('memfs://host/x/gates/a.gate'));
      expect(items.filter(({ code }) => code === 'use-missing-file')).toHaveLength(4);
      expect(asked.length).toBe(readsFiles ? 4 : 0);
    }
  });

  test('lenses are there for those who can show them', async () => {
    const lenses = async (options: object): Promise<unknown[]> => {
      const { client, place } = await start({ options: { lensCommand: undefined, ...options } });
      const uri = place.uriOf('gates/a.gate');
      await client.open(uri, site());
      const found = await client.request<{ command?: { command: string } }[]>('textDocument/codeLens', { textDocument: { uri } });
      expect(client.capabilities['codeLensProvider'] === undefined).toBe(found.length === 0);
      return found.map(({ command }) => command?.command);
    };
    expect(await lenses({})).toEqual([]);
    expect(await lenses({ previewCommand: 'show' })).toEqual(['show']);
    expect((await lenses({ lensCommand: '', previewCommand: 'show' })).filter((command) => command === undefined).length).toBeGreaterThan(
      3,
    );
  });

  test('each finding leads to the page of its rule: the client’s, else those beside the server, else none', async () => {
    for (const [pages, own, wanted] of [
      ['file:///shipped/pages', undefined, 'file:///shipped/pages/rules/'],
      ['file:///shipped/pages', 'https://example.test/p/', 'https://example.test/p/rules/'],
      [undefined, undefined, undefined],
    ] as const) {
      const { client, place } = await start({ host: { pages }, options: own === undefined ? {} : { pages: own } });
      const uri = place.uriOf('gates/a.gate');
      await client.open(
        uri,
        site('accept seat-outside-practice because "worn" by "KL" until 2027-01-01\n').replace('width 2.10 m', 'width 2.10'),
      );
      const found = itemsOf(await client.pullOf(uri)).find(({ code }) => code === 'unit-missing');
      expect(found?.codeDescription?.href).toBe(wanted === undefined ? undefined : `${wanted}unit-missing.md`);
      const [link] = (await client.request<{ data: unknown[] }[]>('textDocument/documentLink', { textDocument: { uri } })).filter(
        ({ data }) => data[0] === 'rule',
      );
      expect(link === undefined).toBe(wanted === undefined);
    }
  });

  test('a name that may not be changed: the reason, as a request that failed', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/a.gate');
    await client.open(uri, site());
    const refused = { code: -32803, message: expect.stringMatching(/^[A-Z“].*\.$/) };
    await expect(client.request('textDocument/prepareRename', client.at(uri, 'wi|dth'))).rejects.toMatchObject(refused);
    await expect(client.request('textDocument/rename', { ...client.at(uri, 'wi|dth'), newName: 'x' })).rejects.toMatchObject(refused);
    await expect(client.request('textDocument/rename', { ...client.at(uri, 'leaf |east'), newName: 'a b' })).rejects.toMatchObject(refused);
    await expect(client.request('textDocument/rename', { ...client.at(uri, 'leaf |east'), newName: 'west' })).rejects.toMatchObject(
      refused,
    );
  });

  test('the types of tokens are the protocol’s own where the client knows no others', async () => {
    const standard = ['keyword', 'property', 'number', 'string', 'variable', 'parameter'];
    const { client, place } = await start({
      options: { ownTokenTypes: false },
      capabilities: { textDocument: { semanticTokens: { tokenTypes: standard, tokenModifiers: ['declaration'] } } },
    });
    const { legend } = client.capabilities['semanticTokensProvider'] as { legend: { tokenTypes: string[]; tokenModifiers: string[] } };
    expect(legend.tokenTypes.filter((type) => !standard.includes(type))).toEqual([]);
    expect(legend.tokenModifiers).toEqual(['declaration']);
    const uri = place.uriOf('gates/a.gate');
    await client.open(uri, 'language 1\nleaf west {\n  width 2 m\n}\n');
    const { data } = await client.request<{ data: number[] }>('textDocument/semanticTokens/full', { textDocument: { uri } });
    const types = data.filter((_, i) => i % 5 === 3).map((type) => legend.tokenTypes[type]);
    expect(types.slice(-5)).toEqual(['keyword', 'variable', 'property', 'number', 'number']);
  });
});
