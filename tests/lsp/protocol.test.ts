import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  DocumentDiagnosticReport,
  DocumentSymbol,
  Hover,
  InlayHint,
  Location,
  LocationLink,
  TextEdit,
  WorkspaceDiagnosticReport,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { site, uses } from '../editor/bench.ts';
import { within } from '../kit/marker.ts';
import { connect, itemsOf } from './client.ts';
import { type Folder, folder } from './folder.ts';
import { ends, start } from './start.ts';

const codes = (report: DocumentDiagnosticReport): unknown[] => itemsOf(report).map((item) => item.code);
const wrong = site().replace('width 2.10 m', 'width 2.10');
const change = (text: string, from: string, to: string) => ({ ...within(text, `|${from}|`), text: to });

describe('diagnostics that are asked for', () => {
  test('a file with a mistake, unchanged, mended', async () => {
    const { client, place } = await start();
    expect(client.capabilities['diagnosticProvider']).toMatchObject({ interFileDependencies: true, workspaceDiagnostics: true });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, wrong);
    const first = await client.pullOf(uri);
    const item = itemsOf(first).find((one) => one.code === 'unit-missing');
    expect(item).toMatchObject({ source: 'pintle', severity: 1 });
    expect(String(item?.message).split('\n')).toHaveLength(3);
    expect(item?.message).toMatch(/\nWhy: .*\nWhat to do: /);
    const again = await client.pullOf(uri, first.resultId);
    expect(again).toEqual({ kind: 'unchanged', resultId: first.resultId });
    await client.edit(uri, change(wrong, 'width 2.10', 'width 2.10 m'));
    const mended = await client.pullOf(uri, first.resultId);
    expect(mended.kind).toBe('full');
    expect(codes(mended)).not.toContain('unit-missing');
    expect(client.pushes).toEqual([]);
  });

  test('the page of the rule, the tag and the other places are sent', async () => {
    const { client, place } = await start({ options: { pages: 'https://example.test/docs/' } });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site('leaf west {\n  width 1 m\n  mass 50 kg\n  opens inward 90 deg\n}\n'));
    const items = itemsOf(await client.pullOf(uri));
    for (const item of items) expect(item.codeDescription?.href).toBe(`https://example.test/docs/rules/${item.code}.md`);
    expect(items.find((item) => item.code === 'use-unused')?.tags).toEqual([1]);
    const repeated = items.find((item) => item.code === 'name-repeated');
    expect(repeated?.relatedInformation?.[0]?.location.uri).toBe(uri);
    expect(repeated?.relatedInformation?.[0]?.location.range.start).toEqual(client.at(uri, 'leaf |west').position);
  });

  test('a place in another file has the URI and the lines of that file', async () => {
    const { client, place } = await start();
    place.write('library/more.gate', 'language 1\n\ndrive-model birch-ram "Another" {\n  kind linear-ram\n}\n');
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site().replace('use "../library/panels.gate"', 'use "../library/panels.gate"\nuse "../library/more.gate"'));
    const related = itemsOf(await client.pullOf(uri)).flatMap((item) => item.relatedInformation ?? []);
    for (const one of related) expect(one.location.uri === uri || one.location.uri.startsWith(place.uri)).toBe(true);
    expect(codes(await client.pullOf(uri))).toContain('model-repeated');
  });

  test('the whole workspace: open and closed files, nothing left of a deleted one', async () => {
    const { client, place } = await start(
      {},
      { 'gates/south.gate': wrong, 'gates/east.gate': site(), 'node_modules/x/y.gate': 'nonsense' },
    );
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, wrong);
    const ask = (previous: { uri: string; value: string }[]) =>
      client.request<WorkspaceDiagnosticReport>('workspace/diagnostic', { previousResultIds: previous });
    let report = await ask([]);
    await client.until(async () => report.items.length >= 7 || (report = await ask([])).items.length >= 7);
    expect(report.items.map((item) => decodeURIComponent(item.uri.slice(item.uri.lastIndexOf('/') + 1))).sort()).toEqual([
      'cables.gate',
      'drives.gate',
      'east.gate',
      'north.gate',
      'panels.gate',
      'sensors.gate',
      'south.gate',
    ]);
    const south = report.items.find((item) => item.uri.endsWith('south.gate'));
    expect(south !== undefined && codes(south)).toContain('unit-missing');
    expect(report.items.find((item) => item.uri === uri)?.version).toBe(1);
    const previous = report.items.map((item) => ({ uri: item.uri, value: item.resultId as string }));
    expect(new Set((await ask(previous)).items.map((item) => item.kind))).toEqual(new Set(['unchanged']));
    place.remove('gates/south.gate');
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: south?.uri, type: 3 }] });
    const after = await ask(previous);
    expect(after.items.find((item) => item.uri === south?.uri)).toEqual({ kind: 'full', uri: south?.uri, version: null, items: [] });
  });
});

describe('diagnostics that are pushed', () => {
  test('to a client that cannot ask, and none are left after closing', async () => {
    const { client, place } = await start({ pull: false });
    expect(client.capabilities['diagnosticProvider']).toBeUndefined();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, wrong);
    await client.until(() => client.pushed.has(uri));
    expect(client.pushed.get(uri)?.diagnostics.map((item) => item.code)).toContain('unit-missing');
    await client.edit(uri, change(wrong, 'width 2.10', 'width 2.10 m'));
    await client.until(() => client.pushed.get(uri)?.version === 2);
    expect(client.pushed.get(uri)?.diagnostics.map((item) => item.code)).not.toContain('unit-missing');
    await client.edit(uri, change(client.text(uri), 'width 2.10 m', 'width 2.10'));
    await client.close(uri);
    await client.request('pintle/rules', null);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(client.pushed.get(uri)?.diagnostics).toEqual([]);
    expect(client.refreshes.diagnostics).toBe(0);
  });

  test('a burst of edits is one analysis, of the newest text', async () => {
    const { client, place } = await start({ pull: false });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    await client.until(() => client.pushed.has(uri));
    const before = client.analyses.length;
    const pushes = client.pushes.length;
    const end = site().length;
    await client.edit(
      uri,
      ...[...'accept seat-outside-practice because "x"'].map((key, index) => ({ start: end + index, end: end + index, text: key })),
    );
    await client.until(() => (client.pushed.get(uri)?.version ?? 0) > 40);
    expect(client.analyses.length - before).toBe(1);
    expect(client.pushes.length - pushes).toBe(1);
  });

  test('a text that is closed or edited while a library is on its way is not pushed late', async () => {
    let asked = 0;
    let answer = (): void => undefined;
    const answered = new Promise<void>((resolve) => (answer = resolve));
    const read = async (): Promise<unknown> => (asked++, await answered, { missing: true });
    const client = await connect({ pull: false, folders: ['memfs://host/x'], host: { disk: undefined }, read });
    ends.push(() => client.end());
    const [closed, edited] = ['memfs://host/x/gates/a.gate', 'memfs://host/x/gates/b.gate'] as const;
    await client.open(closed, site());
    await client.open(edited, site());
    await client.until(() => asked > 0);
    await client.close(closed);
    await client.edit(edited, { start: 0, end: 0, text: '\n' });
    await client.request('pintle/rules', null);
    answer();
    await client.until(() => client.pushed.has(edited));
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(client.pushes.filter((uri) => uri === edited)).toHaveLength(1);
    expect(client.pushed.get(edited)?.version).toBe(2);
    expect(client.pushes.filter((uri) => uri === closed)).toHaveLength(1);
    expect(client.pushed.get(closed)?.diagnostics).toEqual([]);
  });

  test('of several files the one last edited comes first', async () => {
    const { client, place } = await start({ pull: false });
    const uris = ['a', 'b', 'c'].map((name) => place.uriOf(`gates/${name}.gate`));
    await Promise.all(uris.map((uri) => client.open(uri, site())));
    await client.edit(uris[1] as string, { start: 0, end: 0, text: '\n' });
    await client.until(() => client.pushed.size === 3 && client.pushed.get(uris[1] as string)?.version === 2);
    expect(client.pushes[0]).toBe(uris[1]);
  });
});

describe('libraries', () => {
  const badLibrary = (place: Folder): void => void place.write('library/drives.gate', 'language 1\n');

  test.each([{ pull: true }, { pull: false }])('a change on the disk reaches the files that use it ($pull)', async ({ pull }) => {
    const { client, place } = await start({ pull });
    await client.until(() => client.registered.includes('workspace/didChangeWatchedFiles'));
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const now = async (): Promise<unknown[]> =>
      pull ? codes(await client.pullOf(uri)) : (client.pushed.get(uri)?.diagnostics ?? []).map((item) => item.code);
    await client.until(() => pull || client.pushed.has(uri));
    expect(await now()).not.toContain('model-unknown');
    badLibrary(place);
    const tell = (type: number) =>
      client.connection.sendNotification('workspace/didChangeWatchedFiles', {
        changes: [{ uri: place.uriOf('library/drives.gate'), type }],
      });
    const pushes = client.pushes.length;
    await tell(2);
    await client.until(() => (pull ? client.refreshes.diagnostics > 0 : client.pushes.length > pushes));
    expect(await now()).toContain('model-unknown');
    await client.until(() => client.refreshes.inlays > 0);
    expect(client.refreshes.inlays).toBeGreaterThan(0);
    place.remove('library/drives.gate');
    await tell(3);
    await client.until(() => pull || (client.pushed.get(uri)?.diagnostics ?? []).some((item) => item.code === 'use-missing-file'));
    expect(await now()).toContain('use-missing-file');
  });

  test('a library that is open counts as it is in the editor, and as it is on the disk once it is closed', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    const drives = place.uriOf('library/drives.gate');
    await client.open(uri, site());
    expect(codes(await client.pullOf(uri))).not.toContain('model-unknown');
    await client.open(drives, 'language 1\n');
    expect(codes(await client.pullOf(uri))).toContain('model-unknown');
    await client.until(() => client.refreshes.diagnostics > 0);
    await client.close(drives);
    expect(codes(await client.pullOf(uri))).not.toContain('model-unknown');
  });

  test('without watchers, saving and opening look again', async () => {
    const { client, place } = await start({ watch: false });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    expect(codes(await client.pullOf(uri))).not.toContain('model-unknown');
    badLibrary(place);
    await client.connection.sendNotification('textDocument/didSave', { textDocument: { uri } });
    expect(codes(await client.pullOf(uri))).toContain('model-unknown');
  });

  test('none from outside the folder, not through a link either', async () => {
    const outside = folder({ 'far.gate': 'language 1\ndrive-model far "Far" {\n  kind linear-ram\n}\n' });
    ends.push(() => outside.end());
    const { client, place } = await start();
    symlinkSync(join(outside.path, 'far.gate'), join(place.path, 'library/linked.gate'));
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\nuse "../library/linked.gate"\nuse "../../elsewhere.gate"\n');
    const found = itemsOf(await client.pullOf(uri)).filter((item) => item.code === 'use-outside-root');
    expect(found.map((item) => item.range.start.line)).toEqual([1, 2]);
    const completions = await client.request<CompletionList>('textDocument/completion', client.at(uri, 'linked'));
    expect(completions.items.map((item) => item.label)).not.toContain('../library/linked.gate');
  });

  test('each file in its own folder; one in no folder may use what stands beside its folder', async () => {
    const other = folder();
    ends.push(() => other.end());
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    const loose = other.uriOf('gates/loose.gate');
    await client.open(uri, site());
    await client.open(loose, site());
    for (const code of ['use-missing-file', 'use-outside-root', 'model-unknown'])
      expect(codes(await client.pullOf(loose))).not.toContain(code);
    const deep = other.uriOf('gates/deep/down.gate');
    await client.open(deep, 'language 1\nuse "../../library/drives.gate"\n');
    expect(codes(await client.pullOf(deep))).toContain('use-outside-root');
    await client.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added: [{ uri: other.uri, name: 'other' }], removed: [] },
    });
    expect(codes(await client.pullOf(deep))).not.toContain('use-outside-root');
  });

  test('a pipe or a folder named as a library does not hold the server up', async () => {
    const { client, place } = await start();
    const { execFileSync } = await import('node:child_process');
    execFileSync('mkfifo', [join(place.path, 'library/pipe.gate')]);
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\nuse "../library/pipe.gate"\nuse "../library"\n');
    expect(codes(await client.pullOf(uri)).filter((code) => code === 'use-missing-file')).toHaveLength(2);
  });

  test('a virtual file system is asked of the client; nothing is said before it has answered', async () => {
    const asked: string[] = [];
    const texts = new Map<string, string>();
    const place = folder();
    ends.push(() => place.end());
    const { readFileSync } = await import('node:fs');
    const read = async (uri: string): Promise<unknown> => {
      asked.push(uri);
      await new Promise((resolve) => setTimeout(resolve, 20));
      const name = uri.slice('memfs://host/team%20one/'.length);
      try {
        return { text: texts.get(uri) ?? readFileSync(join(place.path, name), 'utf8') };
      } catch {
        return { missing: true };
      }
    };
    for (const pull of [true, false]) {
      asked.length = 0;
      const client = await connect({ pull, folders: ['memfs://host/team%20one'], read, host: { disk: undefined } });
      ends.push(() => client.end());
      const uri = 'memfs://host/team%20one/gates/north.gate';
      await client.open(uri, site() + 'use "../library/none.gate"\n');
      if (!pull) await client.until(() => client.pushed.has(uri));
      const found = pull ? codes(await client.pullOf(uri)) : (client.pushed.get(uri)?.diagnostics ?? []).map((item) => item.code);
      expect(found).not.toContain('model-unknown');
      expect(found.filter((code) => code === 'use-missing-file')).toHaveLength(1);
      expect(client.pushes.length).toBe(pull ? 0 : 1);
      expect(asked).toHaveLength(5);
      texts.set('memfs://host/team%20one/library/drives.gate', 'language 1\n');
      await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
        changes: [{ uri: 'memfs://host/team%20one/library/drives.gate', type: 2 }],
      });
      await client.until(() => pull || client.pushes.length > 1);
      expect(pull ? codes(await client.pullOf(uri)) : (client.pushed.get(uri)?.diagnostics ?? []).map((item) => item.code)).toContain(
        'model-unknown',
      );
      texts.clear();
    }
  });
});

describe('features', () => {
  test('hover, definition, references, highlight, symbols', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const hover = await client.request<Hover>('textDocument/hover', client.at(uri, '2.10 m'));
    expect(hover.contents).toMatchObject({ kind: 'markdown', value: expect.stringContaining('2100 mm') });
    const [link] = await client.request<LocationLink[]>('textDocument/definition', client.at(uri, 'birch-ram'));
    expect(link?.targetUri).toBe(place.uriOf('library/drives.gate'));
    expect(link?.targetSelectionRange.start.line).toBeGreaterThan(0);
    const references = await client.request<Location[]>('textDocument/references', {
      ...client.at(uri, 'leaf w|est'),
      context: { includeDeclaration: true },
    });
    expect(references).toHaveLength(3);
    expect(await client.request('textDocument/documentHighlight', client.at(uri, 'leaf w|est'))).toHaveLength(3);
    const outline = await client.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri } });
    expect(outline.map((symbol) => symbol.name)).toEqual([
      'site',
      'west',
      'east',
      'west-ram',
      'lower-beam',
      'west-edge',
      'fobs',
      'main',
      'motion',
    ]);
  });

  test('references to a model reach open and closed files', async () => {
    const { client, place } = await start({}, { 'gates/south.gate': site() });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    await client.open(place.uriOf('library/drives.gate'), '');
    await client.close(place.uriOf('library/drives.gate'));
    let places: Location[] = [];
    for (let i = 0; i < 50 && places.length < 3; i++)
      places = await client.request<Location[]>('textDocument/references', {
        ...client.at(uri, 'birch-ram'),
        context: { includeDeclaration: true },
      });
    expect(places.map((one) => one.uri).sort()).toEqual(
      [place.uriOf('gates/north.gate'), place.uriOf('gates/south.gate'), place.uriOf('library/drives.gate')].sort(),
    );
  });

  test('completion in order, with its documentation on demand', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site().replace('select reply steps', 'wire fobs to '));
    const list = await client.request<CompletionList>('textDocument/completion', client.at(uri, 'wire fobs to |'));
    const labels = [...list.items].sort((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1)).map((item) => item.label);
    expect(labels.slice(0, 2)).toEqual(['K1', 'K2']);
    // A stop takes no command.
    expect(labels).not.toContain('H1');
    expect(labels.at(-1)).toBe('K0');
    const item = list.items.find((one) => one.label === 'K1') as CompletionItem;
    expect(item.documentation).toBeUndefined();
    const resolved = await client.request<CompletionItem>('completionItem/resolve', item);
    expect(JSON.stringify(resolved.documentation)).toContain('normally-open');
  });

  test('formatting keeps the line ends, refuses a broken text and says so once', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\r\nleaf a {\r\nwidth   2 m\r\n}\r\n');
    const edits = await client.request<TextEdit[]>('textDocument/formatting', {
      textDocument: { uri },
      options: { tabSize: 8, insertSpaces: false },
    });
    expect(TextDocument.applyEdits(TextDocument.create(uri, '', 0, client.text(uri)), edits)).toBe(
      'language 1\r\nleaf a {\r\n  width 2 m\r\n}\r\n',
    );
    await client.edit(uri, { start: client.text(uri).length, end: client.text(uri).length, text: 'leaf b {' });
    for (let i = 0; i < 2; i++)
      expect(
        await client.request('textDocument/formatting', { textDocument: { uri }, options: { tabSize: 2, insertSpaces: true } }),
      ).toEqual([]);
    expect(client.shown).toHaveLength(1);
    expect(client.shown[0]).toContain('line 5');
  });

  test('quick fixes carry the version of the text; only safe ones are applied together', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, wrong);
    const ask = (only?: string[]) =>
      client.request<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri },
        range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
        context: { diagnostics: [], ...(only === undefined ? {} : { only }) },
      });
    const actions = await ask();
    const unit = actions.find((action) => action.title.includes('2.10 m'));
    expect(unit?.isPreferred).toBeUndefined();
    expect(unit?.edit?.documentChanges?.[0]).toMatchObject({ textDocument: { uri, version: 1 }, edits: [{ newText: ' m' }] });
    expect(unit?.diagnostics?.[0]?.code).toBe('unit-missing');
    const [all, ...rest] = await ask(['source.fixAll']);
    expect(rest).toEqual([]);
    expect(all?.kind).toBe('source.fixAll.pintle');
    expect(JSON.stringify(all)).not.toContain('" m"');
    expect(await ask(['refactor'])).toEqual([]);
  });

  test('inlay values, their tooltip on demand, and the switch', async () => {
    let show = true;
    const { client, place } = await start({ settings: () => ({ values: { show } }) });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const hints = await client.inlays(uri);
    const hint = hints.find((one) => String(one.label).startsWith('run time ')) as InlayHint;
    expect(String(hint.label)).toMatch(/ s$/);
    expect(hint.tooltip).toBeUndefined();
    const resolved = await client.request<InlayHint>('inlayHint/resolve', hint);
    expect(JSON.stringify(resolved.tooltip)).toContain('Source: ');
    show = false;
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.until(() => client.refreshes.inlays > 0);
    expect(await client.inlays(uri)).toEqual([]);
  });

  test('figures and rules for the client', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const figures = await client.request<
      { id: string; value: number; unit: string; shown: string; inputs: unknown[]; line: number; source: string }[]
    >('pintle/figures', { uri });
    const mass = figures.find((figure) => figure.id === 'leaf.west.inertia');
    expect(mass).toMatchObject({
      unit: expect.stringContaining('kg'),
      shown: expect.stringContaining('kg'),
      line: client.at(uri, 'mass 165 kg').position.line,
    });
    const rules = await client.request<{ name: string }[]>('pintle/rules', null);
    expect(rules.find((rule) => rule.name === 'unit-missing')).toMatchObject({ severity: 'error', title: expect.any(String) });
  });
});

describe('positions', () => {
  test('CRLF, a lone CR and pairs of surrogates', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    const text = 'language 1\r\nsite "𝄞 yard" {\r\n}\rleaf 𝄞𝄞 {\r\n  width 2100 # 𝄞\r\n}\r\n';
    await client.open(uri, text);
    const item = itemsOf(await client.pullOf(uri)).find((one) => one.code === 'unit-missing');
    expect(item?.range).toEqual({ start: { line: 4, character: 8 }, end: { line: 4, character: 12 } });
    await client.edit(uri, { ...within(text, '2100|'), text: ' mm' }, { start: 0, end: 0, text: '# 𝄞\r\n' });
    expect(codes(await client.pullOf(uri))).not.toContain('unit-missing');
  });

  test('positions outside the text are moved inside', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\nleaf a {\n}\n');
    for (const position of [
      { line: 900, character: 7 },
      { line: 0, character: 9999 },
    ])
      await client.request('textDocument/hover', { textDocument: { uri }, position });
    await client.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: 2 },
      contentChanges: [{ range: { start: { line: 400, character: 0 }, end: { line: 500, character: 3 } }, text: '# end' }],
    });
    const symbols = await client.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri } });
    expect(symbols.map((symbol) => symbol.name)).toEqual(['a']);
    // Far behind the end of a line is its end, before the line end; two changes of one message are made one after the other.
    await client.open(uri, 'language 1\r\nleaf a {\r\n}\r\n');
    const at = (line: number, character: number) => ({ start: { line, character }, end: { line, character } });
    await client.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: 2 },
      contentChanges: [
        { range: at(1, 9999), text: '\r\n  width 2100' },
        { range: at(2, 12), text: ' # x' },
      ],
    });
    const item = itemsOf(await client.pullOf(uri)).find((one) => one.code === 'unit-missing');
    expect(item?.range).toEqual({ start: { line: 2, character: 8 }, end: { line: 2, character: 12 } });
  });
});

describe('health', () => {
  test('a cancelled request is not answered, and one about a text that changed is dropped', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const { CancellationTokenSource } = await import('vscode-languageserver/node');
    const source = new CancellationTokenSource();
    const asked = client.connection.sendRequest('textDocument/hover', client.at(uri, 'width'), source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: -32800 });
    expect(await client.request('textDocument/hover', client.at(uri, 'width'))).not.toBeNull();
    // A library that is slow to come holds the answer up until the text is another one.
    const slow = await connect({
      folders: ['memfs://host/x'],
      host: { disk: undefined },
      read: () => new Promise((resolve) => setTimeout(() => resolve({ missing: true }), 100)),
    });
    ends.push(() => slow.end());
    const far = 'memfs://host/x/gates/north.gate';
    await slow.open(far, site());
    const stale = slow.request('textDocument/hover', slow.at(far, 'width'));
    await slow.edit(far, { start: 0, end: 0, text: '\n' });
    await expect(stale).rejects.toMatchObject({ code: -32801 });
    expect(await slow.request('textDocument/hover', slow.at(far, 'width'))).not.toBeNull();
  });

  test('nonsense is answered with nothing, and the next question as ever', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, '{{{{ "\u0000 } ± .. : \ud800 leaf leaf {');
    expect((await client.pullOf(uri)).kind).toBe('full');
    await client.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: 'file:///not/open.gate', version: 9 },
      contentChanges: [{ text: 'x' }],
    });
    await client.connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: null });
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: 'not a uri %%%', type: 77 }] });
    await client.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: 'untitled:Untitled-1', languageId: 'pintle', version: 1, text: uses },
    });
    expect(codes(await client.pullOf('untitled:Untitled-1')).filter((code) => code === 'use-outside-root')).toHaveLength(4);
    await client.request('textDocument/hover', { textDocument: { uri: 'file:///not/open.gate' }, position: { line: 0, character: 0 } });
    await expect(client.request('textDocument/inlayHint', { textDocument: { uri }, range: null })).rejects.toMatchObject({ code: -32602 });
    await client.request('pintle/figures', {}).catch(() => undefined);
    expect(await client.request('pintle/rules', null)).not.toEqual([]);
    expect(client.logged.length).toBeGreaterThan(0);
  });

  test('the day is the reader’s: an acceptance ends when the day has come', async () => {
    let day = '2027-01-01';
    const { client, place } = await start({ host: { today: () => day } });
    const uri = place.uriOf('gates/north.gate');
    await client.open(
      uri,
      site('accept seat-outside-practice because "worn" by "KL" until 2027-01-01\n').replace('seat 1.5 s', 'seat 4 s'),
    );
    expect(codes(await client.pullOf(uri))).not.toContain('seat-outside-practice');
    day = '2027-01-02';
    expect(codes(await client.pullOf(uri))).toContain('seat-outside-practice');
  });

  test('a file that is there but not open is judged from the disk', async () => {
    const { client, place } = await start({}, { 'gates/south.gate': wrong });
    expect(codes(await client.pullOf(place.uriOf('gates/south.gate')))).toContain('unit-missing');
    writeFileSync(join(place.path, 'gates/south.gate'), site());
    expect(codes(await client.pullOf(place.uriOf('gates/south.gate')))).not.toContain('unit-missing');
    expect(codes(await client.pullOf(place.uriOf('gates/none.gate')))).toEqual([]);
  });
});
