// The features for reading, through the protocol: colours, values by topic, lenses, folding, selections, links, symbols of
// the workspace, and what depends on what.
import { afterEach, describe, expect, test } from 'vitest';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CodeLens,
  DocumentLink,
  FoldingRange,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  WorkspaceSymbol,
} from 'vscode-languageserver/node';
import { site } from '../editor/bench.ts';
import { within } from '../kit/marker.ts';
import { type Client, type ClientOptions, connect } from './client.ts';
import { type Folder, folder } from './folder.ts';

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function start(
  options: ClientOptions = {},
  files: Readonly<Record<string, string>> = {},
): Promise<{ client: Client; place: Folder; uri: string }> {
  const place = folder(files);
  ends.push(() => place.end());
  const client = await connect({ folders: [place.uri], ...options });
  ends.push(() => client.end());
  return { client, place, uri: place.uriOf('gates/north.gate') };
}

describe('colours', () => {
  interface Legend {
    readonly tokenTypes: readonly string[];
    readonly tokenModifiers: readonly string[];
  }
  const legendOf = (client: Client): Legend => (client.capabilities['semanticTokensProvider'] as { legend: Legend }).legend;
  /** The tokens as text and type, from the numbers of the protocol. */
  function decoded(client: Client, text: string, data: readonly number[]): string[] {
    const { tokenTypes, tokenModifiers } = legendOf(client);
    const rows = text.split(/\r\n|\n/);
    const found: string[] = [];
    let [line, column] = [0, 0];
    for (let i = 0; i < data.length; i += 5) {
      const [lines, columns, length, type, bits] = data.slice(i, i + 5) as [number, number, number, number, number];
      line += lines;
      column = lines === 0 ? column + columns : columns;
      const word = (rows[line] ?? '').slice(column, column + length);
      expect(word).toHaveLength(length);
      found.push(`${word} ${[tokenTypes[type], ...tokenModifiers.filter((_, bit) => bits & (1 << bit))].join('.')}`);
    }
    return found;
  }

  test('all of a text, and a stretch of it', async () => {
    const { client, uri } = await start();
    const text = site().replaceAll('\n', '\r\n');
    await client.open(uri, text);
    const whole = decoded(
      client,
      text,
      (await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument: { uri } })).data,
    );
    for (const wanted of [
      'leaf block',
      'west variable.declaration',
      'birch-ram class',
      'mass fact',
      '165 number.safety',
      'kg unit.safety',
      'seat fact',
      'inward enumMember.safety',
    ])
      expect(whole).toContain(wanted);
    const at = client.at(uri, 'leaf west').position;
    const part = decoded(
      client,
      text,
      (
        await client.request<SemanticTokens>('textDocument/semanticTokens/range', {
          textDocument: { uri },
          range: { start: at, end: { line: at.line + 1, character: 0 } },
        })
      ).data,
    );
    expect(part).toEqual(['leaf block', 'west variable.declaration']);
  });

  test('after an edit only the difference; all of it for an id that is not the last one', async () => {
    const { client, uri } = await start();
    await client.open(uri, site());
    const first = await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument: { uri } });
    const delta = (previousResultId: string) =>
      client.request<SemanticTokens | SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
        textDocument: { uri },
        previousResultId,
      });
    const same = (await delta(first.resultId as string)) as SemanticTokensDelta;
    expect(same.edits).toEqual([]);
    let data = [...first.data];
    let id = same.resultId as string;
    for (const [from, to] of [
      ['mass 165 kg', 'mass 165.5 kg'],
      ['  height 1.80 m\n', ''],
      ['dwell 25 s', 'dwell 25 s\n  pre-warning 3 s'],
      ['leaf east', 'nonsense east'],
      ['nonsense east', 'leaf east'],
    ] as const) {
      await client.edit(uri, { ...within(client.text(uri), `|${from}|`), text: to });
      const answer = await delta(id);
      if (!('edits' in answer)) throw new Error('the whole text again');
      expect(answer.edits.length).toBe(1);
      for (const edit of answer.edits)
        data = [...data.slice(0, edit.start), ...(edit.data ?? []), ...data.slice(edit.start + edit.deleteCount)];
      expect(answer.edits[0]?.data?.length ?? 0).toBeLessThan(first.data.length / 4);
      id = answer.resultId as string;
      const whole = await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument: { uri } });
      expect(data).toEqual(whole.data);
      id = whole.resultId as string;
    }
    expect(await delta('no such id')).toHaveProperty('data');
  });
});

describe('values by topic', () => {
  const labels = async (settings: object): Promise<string[]> => {
    const { client, uri } = await start({ options: { settings } });
    await client.open(uri, site());
    return (await client.inlays(uri)).map((hint) => String(hint.label));
  };
  test('each has its own switch, and one switches all', async () => {
    const usual = await labels({});
    expect(usual.some((label) => label.startsWith('run time'))).toBe(true);
    expect(usual.some((label) => label.includes('voltage') || label.startsWith('resistance'))).toBe(false);
    const without = await labels({ values: { timing: false } });
    expect(without.some((label) => label.startsWith('run time'))).toBe(false);
    expect(without.length).toBeGreaterThan(0);
    expect((await labels({ values: { measurements: true } })).some((label) => label.startsWith('resistance'))).toBe(true);
    expect(await labels({ values: { show: false, measurements: true } })).toEqual([]);
  });
});

describe('lenses', () => {
  const ask = async (client: Client, uri: string): Promise<CodeLens[]> => {
    const found = await client.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri } });
    return Promise.all(found.map((lens) => (lens.command === undefined ? client.request<CodeLens>('codeLens/resolve', lens) : lens)));
  };
  test('words for each block; the preview only for a client that has one', async () => {
    const { client, uri } = await start();
    await client.open(uri, site());
    const plain = await ask(client, uri);
    expect(plain).toHaveLength(5);
    expect(plain.find((lens) => lens.command?.title.includes('stroke'))).toMatchObject({
      range: { start: client.at(uri, 'drive west-ram').position },
      command: { command: '' },
    });
    const other = await start({ options: { previewCommand: 'some.command' } });
    await other.client.open(other.uri, site());
    const withPreview = await ask(other.client, other.uri);
    expect(withPreview).toHaveLength(6);
    expect(withPreview.find((lens) => lens.command?.command === 'some.command')).toMatchObject({
      range: { start: other.client.at(other.uri, 'site "').position },
      command: { title: 'Open preview', arguments: [other.uri] },
    });
  });
  test('none where they are switched off', async () => {
    const { client, uri } = await start({ options: { settings: { lenses: { show: false } }, previewCommand: 'x' } });
    await client.open(uri, site());
    expect(await ask(client, uri)).toEqual([]);
  });
  test('one of a text that has changed meanwhile is answered all the same', async () => {
    const { client, uri } = await start();
    await client.open(uri, site());
    const [lens] = await client.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri } });
    await client.edit(uri, { start: 0, end: 0, text: '\n\n\n' });
    expect((await client.request<CodeLens>('codeLens/resolve', lens)).command).toEqual({ title: '', command: '' });
    expect((await client.request<CodeLens>('codeLens/resolve', { ...lens, data: 'nonsense' })).command).toEqual({ title: '', command: '' });
  });
});

test('folding: the closing brace stays in view, and no more than the client wants', async () => {
  const { client, uri } = await start();
  await client.open(uri, site());
  const found = await client.request<FoldingRange[]>('textDocument/foldingRange', { textDocument: { uri } });
  const leaf = client.at(uri, 'leaf west').position.line;
  expect(found).toContainEqual({ startLine: leaf, endLine: leaf + 5 });
  expect(found.find((range) => range.kind === 'imports')).toEqual({ startLine: 1, endLine: 4, kind: 'imports' });
  const few = await start({ capabilities: { textDocument: { foldingRange: { rangeLimit: 2 } } } });
  await few.client.open(few.uri, site());
  expect(await few.client.request<FoldingRange[]>('textDocument/foldingRange', { textDocument: { uri: few.uri } })).toHaveLength(2);
});

test('selections for several carets', async () => {
  const { client, uri } = await start();
  await client.open(uri, site());
  const positions = [client.at(uri, '2.10 m').position, client.at(uri, 'onto east').position];
  const found = await client.request<SelectionRange[]>('textDocument/selectionRange', { textDocument: { uri }, positions });
  expect(found).toHaveLength(2);
  const first = client.at(uri, '2.10 m').position;
  expect(found[0]?.range).toEqual({ start: first, end: { ...first, character: first.character + 4 } });
  expect(found[0]?.parent?.range).toEqual({ start: first, end: { ...first, character: first.character + 6 } });
});

test('links are found at once and lead somewhere when they are asked', async () => {
  const { client, place, uri } = await start({ options: { pages: 'https://example.test/docs' } });
  await client.open(
    uri,
    site('accept seat-outside-practice because "x" by "K" until 2027-01-01\n').replace(
      'use "../library/cables.gate"',
      'use "../library/none.gate"',
    ),
  );
  const found = await client.request<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri } });
  expect(found.every((link) => link.target === undefined)).toBe(true);
  const targets = await Promise.all(found.map(async (link) => (await client.request<DocumentLink>('documentLink/resolve', link)).target));
  expect(targets).toEqual([
    ...['drives', 'panels', 'sensors'].map((name) => place.uriOf(`library/${name}.gate`)),
    'https://example.test/docs/rules/seat-outside-practice.md',
  ]);
  const without = await start();
  await without.client.open(without.uri, site('accept seat-outside-practice because "x" by "K" until 2027-01-01\n'));
  expect(await without.client.request<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri: without.uri } })).toHaveLength(4);
});

describe('symbols of the workspace', () => {
  const lazily = {
    workspace: { symbol: { resolveSupport: { properties: ['location.range'] } }, didChangeWatchedFiles: { dynamicRegistration: true } },
  };
  const names = (found: readonly WorkspaceSymbol[]): string[] => found.map((symbol) => symbol.name);
  const ask = (client: Client, query: string) => client.request<WorkspaceSymbol[]>('workspace/symbol', { query });

  test('of open and closed files, as they are now', async () => {
    const { client, place, uri } = await start(
      { capabilities: lazily },
      { 'gates/south.gate': 'language 1\nleaf southern {\n  width 2 m\n}\n' },
    );
    await client.until(async () => names(await ask(client, 'southern')).includes('southern'));
    const [found] = await ask(client, 'southe');
    expect(found).toMatchObject({
      name: 'southern',
      containerName: 'south.gate › leaf',
      location: { uri: place.uriOf('gates/south.gate') },
    });
    expect(found?.location).not.toHaveProperty('range');
    expect(await client.request<WorkspaceSymbol>('workspaceSymbol/resolve', found)).toMatchObject({
      location: { range: { start: { line: 1, character: 5 }, end: { line: 1, character: 13 } } },
    });
    expect(names(await ask(client, 'brchram'))).toContain('birch-ram');
    place.write('gates/south.gate', 'language 1\n\nleaf meridian {\n  width 2 m\n}\n');
    expect(names(await ask(client, 'meridian'))).toEqual(['meridian']);
    expect(names(await ask(client, 'southern'))).toEqual([]);
    await client.open(uri, 'language 1\nleaf typed-now {\n');
    expect(names(await ask(client, 'typednow'))).toEqual(['typed-now']);
    expect(client.analyses).toEqual([]);
  });
  test('with its place at once for a client that does not ask again', async () => {
    const { client, uri } = await start();
    await client.open(uri, site());
    const [found] = await ask(client, 'west-ram');
    expect(found).toMatchObject({ name: 'west-ram', location: { uri, range: { start: client.at(uri, 'west-ram').position } } });
  });
  test('every name of all files is found by itself', async () => {
    const { client } = await start({ capabilities: lazily });
    await client.until(async () => (await ask(client, 'rowan-pair')).length > 0);
    for (const name of ['birch-ram', 'rowan-pair', 'finch-edge', 'heron-signal']) expect(names(await ask(client, name))[0]).toBe(name);
  });
});

describe('what depends on a value', () => {
  const prepare = (client: Client, uri: string, needle: string) =>
    client.request<CallHierarchyItem[] | null>('textDocument/prepareCallHierarchy', client.at(uri, needle));
  test('a line, what follows from it, and what that is worked out from', async () => {
    const { client, uri } = await start();
    await client.open(uri, site());
    const items = (await prepare(client, uri, 'mass 165')) ?? [];
    expect(items[0]).toMatchObject({
      name: 'mass 165 kg',
      detail: 'leaf west',
      uri,
      range: { start: client.at(uri, 'mass 165').position },
    });
    expect(items).toHaveLength(1);
    const end = client.at(uri, 'mass 165 kg|');
    expect(await client.request<CallHierarchyItem[]>('textDocument/prepareCallHierarchy', end)).toMatchObject([
      { detail: expect.stringMatching(/^leaf\.west\./) },
    ]);
    const users = (await client.request<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item: items[0] })).map(
      ({ from, fromRanges }) => (expect(fromRanges).toEqual([from.range]), from),
    );
    expect(users.map((item) => item.detail)).toContain('leaf.west.kinetic-energy');
    expect(users.map((item) => item.name)).toContain('leaf-over-drive-rating');
    const energy = users.find((item) => item.detail === 'leaf.west.kinetic-energy');
    const used = await client.request<CallHierarchyOutgoingCall[]>('callHierarchy/outgoingCalls', { item: energy });
    expect(used.map((call) => call.to.name)).toEqual(expect.arrayContaining(['width 2.10 m', 'mass 165 kg', 'drive west-ram : birch-ram']));
    for (const { fromRanges } of used) expect(fromRanges).toEqual([energy?.selectionRange]);
  });
  test('nothing where nothing stands, of an item from elsewhere, or once the text is another', async () => {
    const { client, uri } = await start();
    await client.open(uri, site('# a remark\n'));
    expect(await prepare(client, uri, 'a remark')).toBeNull();
    const [item] = (await prepare(client, uri, 'mass 165')) as CallHierarchyItem[];
    const digit = within(client.text(uri), 'mass 16|5|');
    await client.edit(uri, { ...digit, text: '6' });
    expect(await client.request('callHierarchy/incomingCalls', { item })).toEqual([]);
    await client.edit(uri, { ...digit, text: '5' });
    expect(await client.request<unknown[]>('callHierarchy/incomingCalls', { item })).not.toEqual([]);
    await client.edit(uri, { start: 0, end: 0, text: '\n' });
    expect(await client.request('callHierarchy/incomingCalls', { item })).toEqual([]);
    expect(await client.request('callHierarchy/outgoingCalls', { item: { ...item, data: { nonsense: true } } })).toEqual([]);
    expect(await client.request('callHierarchy/incomingCalls', { item: { ...item, uri: 'file:///no/such.gate' } })).toEqual([]);
  });
});
