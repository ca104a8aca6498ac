// What helps to write, through the protocol: rename, moved files, layout while typing, signatures, completion, actions.
import { describe, expect, test } from 'vitest';
import type { CodeAction, CompletionList, SignatureHelp, TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { site } from '../editor/bench.ts';
import { type Client, type ClientOptions, itemsOf } from './client.ts';
import type { Folder } from './folder.ts';
import { start } from './start.ts';

const edited = (text: string, edits: readonly TextEdit[]): string =>
  TextDocument.applyEdits(TextDocument.create('x:x', '', 0, text), [...edits]);
const changesOf = (edit: WorkspaceEdit): TextDocumentEdit[] => edit.documentChanges as TextDocumentEdit[];
const nameOf = (uri: string): string => decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
/** The reason with which a request is refused. */
const reasonOf = (asked: Promise<unknown>): Promise<string> =>
  asked.then(
    () => 'it was not refused',
    (error: Error) => error.message,
  );

describe('rename', () => {
  test('asks first, then changes every place with the version of the text', async () => {
    const { client, place } = await start({
      capabilities: { textDocument: { rename: { prepareSupport: true } }, workspace: { workspaceEdit: { documentChanges: true } } },
    });
    expect(client.capabilities['renameProvider']).toEqual({ prepareProvider: true });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const at = client.at(uri, 'onto ea|st');
    expect(await client.request('textDocument/prepareRename', at)).toEqual({
      range: { start: client.at(uri, 'onto |east').position, end: client.at(uri, 'onto east|').position },
      placeholder: 'east',
    });
    const edit = await client.request<WorkspaceEdit>('textDocument/rename', { ...at, newName: 'far' });
    expect(changesOf(edit)).toHaveLength(1);
    expect(changesOf(edit)[0]?.textDocument).toEqual({ uri, version: 1 });
    expect(edited(site(), changesOf(edit)[0]?.edits as TextEdit[])).toBe(
      site().replace('onto east', 'onto far').replace('leaf east', 'leaf far'),
    );
  });

  test('a model: its library on the disk, open texts as they are, and closed files; others are left alone', async () => {
    const south = site().replace('panel main : rowan-pair', 'panel main   : rowan-pair');
    const { client, place } = await start(
      {},
      { 'gates/south.gate': south, 'gates/east.gate': site().replaceAll('rowan-pair', 'marram-one'), 'node_modules/x.gate': south },
    );
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    await client.open(place.uriOf('gates/west.gate'), `# rowan-pair\n${site()}`);
    const edit = await client.request<WorkspaceEdit>('textDocument/rename', { ...client.at(uri, 'rowan-pair'), newName: 'rowan-two' });
    const changed = changesOf(edit);
    expect(changed.map(({ textDocument, edits }) => [nameOf(textDocument.uri), textDocument.version, edits.length]).sort()).toEqual([
      ['north.gate', 1, 1],
      ['panels.gate', null, 1],
      ['south.gate', null, 1],
      ['west.gate', 1, 1],
    ]);
    const there = changed.find(({ textDocument }) => nameOf(textDocument.uri) === 'south.gate');
    expect(edited(south, there?.edits as TextEdit[])).toBe(south.replace('rowan-pair', 'rowan-two'));
  });

  test('a reason for people where it cannot be, and nothing is changed', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    expect(await reasonOf(client.request('textDocument/prepareRename', client.at(uri, 'width')))).toContain('a word of the language');
    expect(await reasonOf(client.request('textDocument/rename', { ...client.at(uri, 'leaf |west'), newName: 'east' }))).toContain(
      'already the name of a leaf',
    );
    expect(await reasonOf(client.request('textDocument/rename', { ...client.at(uri, 'leaf |west'), newName: 'a b' }))).toContain(
      'is not a name',
    );
    expect(await reasonOf(client.request('textDocument/rename', { ...client.at(uri, 'rowan-pair'), newName: 'marram-one' }))).toContain(
      'already the name of a panel model',
    );
    expect(client.logged.filter((line) => line.includes('Error'))).toEqual([]);
  });

  test('where other files cannot be listed, a name that they may speak of stays; one of the file itself does not', async () => {
    const { client, place } = await start({ folders: [] });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    expect(await reasonOf(client.request('textDocument/rename', { ...client.at(uri, 'rowan-pair'), newName: 'x' }))).toContain(
      'they cannot be listed here',
    );
    expect(
      changesOf(await client.request<WorkspaceEdit>('textDocument/rename', { ...client.at(uri, 'leaf |west'), newName: 'x' })),
    ).toHaveLength(1);
  });

  test('an edit that comes meanwhile makes the answer worthless: none, or one for the text as it was', async () => {
    const { client, place } = await start({}, { 'gates/south.gate': site() });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const asked = client.request<WorkspaceEdit>('textDocument/rename', { ...client.at(uri, 'rowan-pair'), newName: 'x' }).then(
      ({ documentChanges }) =>
        documentChanges?.flatMap((change) =>
          'textDocument' in change && change.textDocument.uri === uri ? [change.textDocument.version] : [],
        ),
      (error: Error) => error.message,
    );
    await client.edit(uri, { start: 0, end: 0, text: '# ' });
    // Version 1 is what the editor has left behind: it will not make these edits.
    expect(['the text has changed', [1]]).toContainEqual(await asked);
  });

  test('a client that knows no versions gets plain changes', async () => {
    const { client, place } = await start({ capabilities: { workspace: { workspaceEdit: { documentChanges: false } } } });
    expect(client.capabilities['renameProvider']).toBe(true);
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const edit = await client.request<WorkspaceEdit>('textDocument/rename', { ...client.at(uri, 'leaf |east'), newName: 'far' });
    expect(Object.keys(edit.changes ?? {})).toEqual([uri]);
  });
});

describe('files that are moved', () => {
  test('the filters are told, beside those of what has already happened', async () => {
    const { client } = await start();
    const { fileOperations } = client.capabilities['workspace'] as {
      fileOperations: Record<string, { filters: { pattern: { glob: string } }[] }>;
    };
    expect(Object.keys(fileOperations).sort()).toEqual(['didDelete', 'didRename', 'willRename']);
    expect(fileOperations['willRename']?.filters.map((filter) => filter.pattern.glob)).toEqual(['**/*.gate', '**']);
  });

  test('a folder of libraries: every `use` that leads into it, in open and in closed files', async () => {
    const { client, place } = await start({}, { 'gates/south.gate': site(), 'gates/plain.gate': 'language 1\n' });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, `# new\n${site()}`);
    const edit = await client.request<WorkspaceEdit>('workspace/willRenameFiles', {
      files: [{ oldUri: place.uriOf('library'), newUri: place.uriOf('shelf') }],
    });
    expect(
      changesOf(edit)
        .map(({ textDocument, edits }) => [nameOf(textDocument.uri), textDocument.version, edits.length])
        .sort(),
    ).toEqual([
      ['north.gate', 1, 4],
      ['south.gate', null, 4],
    ]);
    const here = changesOf(edit).find(({ textDocument }) => textDocument.uri === uri);
    expect(edited(client.text(uri), here?.edits as TextEdit[])).toBe(client.text(uri).replaceAll('../library/', '../shelf/'));
  });

  test('one file: its own `use` lines follow it; a move that changes nothing needs no edit', async () => {
    const { client, place } = await start({}, { 'gates/south.gate': site() });
    const move = (from: string, to: string) =>
      client.request<WorkspaceEdit | null>('workspace/willRenameFiles', {
        files: [{ oldUri: place.uriOf(from), newUri: place.uriOf(to) }],
      });
    expect(JSON.stringify(await move('gates/south.gate', 'south.gate'))).toContain('"library/panels.gate"');
    expect(await move('gates/south.gate', 'gates/other.gate')).toBeNull();
    expect(await move('gates/none.gate', 'gates/other.gate')).toBeNull();
  });
});

describe('layout', () => {
  test('a range, and while typing; a broken text is told of once, and never while typing', async () => {
    const { client, place } = await start();
    expect(client.capabilities['documentOnTypeFormattingProvider']).toEqual({ firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] });
    const uri = place.uriOf('gates/north.gate');
    const text = 'language 1\nleaf a {\nwidth   2 m\n}\nleaf b {\nmass   5 kg\n}\n';
    await client.open(uri, text);
    const options = { tabSize: 2, insertSpaces: true };
    const range = { start: { line: 1, character: 0 }, end: { line: 3, character: 1 } };
    const edits = await client.request<TextEdit[]>('textDocument/rangeFormatting', { textDocument: { uri }, range, options });
    expect(edited(text, edits)).toBe(text.replace('width   2', '  width 2'));
    const typed = await client.request<TextEdit[]>('textDocument/onTypeFormatting', { ...client.at(uri, 'kg\n}|'), ch: '}', options });
    expect(edited(text, typed)).toBe(text.replace('mass   5', '  mass 5'));
    await client.edit(uri, { start: text.length, end: text.length, text: 'leaf c {' });
    for (let i = 0; i < 2; i++)
      expect(await client.request('textDocument/rangeFormatting', { textDocument: { uri }, range, options })).toEqual([]);
    expect(await client.request('textDocument/onTypeFormatting', { ...client.at(uri, 'kg\n}|'), ch: '}', options })).toEqual([]);
    expect(client.shown).toHaveLength(1);
  });
});

describe('signatures', () => {
  test('the values of a line, the one that comes next, and nothing where it is whole', async () => {
    const { client, place } = await start({
      capabilities: {
        textDocument: {
          signatureHelp: { signatureInformation: { parameterInformation: { labelOffsetSupport: true } } },
          hover: { contentFormat: ['markdown'] },
        },
      },
    });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\nleaf a {\n  opens inward \n  mass \n  height 2 m\n}\n');
    const ask = (needle: string, context?: unknown) =>
      client.request<SignatureHelp | null>('textDocument/signatureHelp', {
        ...client.at(uri, `${needle}|`),
        ...(context === undefined ? {} : { context }),
      });
    const help = await ask('opens inward ');
    expect(help?.signatures[0]?.label).toBe('opens inward|outward ANGLE');
    expect(help?.activeParameter).toBe(1);
    expect(help?.signatures[0]?.parameters?.[1]?.label).toEqual([21, 26]);
    expect(JSON.stringify(help?.signatures[0]?.parameters?.[1]?.documentation)).toContain('Between');
    // A space alone brings no help for lines of one value.
    expect(await ask('mass ', { triggerKind: 2, triggerCharacter: ' ', isRetrigger: false })).toBeNull();
    expect((await ask('mass ', { triggerKind: 1, isRetrigger: false }))?.signatures[0]?.label).toBe('mass MASS');
    expect(await ask('height 2 m', undefined)).not.toBeNull();
    expect(await ask('language')).toBeNull();
  });
});

describe('completion', () => {
  const withItems = (item: Readonly<Record<string, unknown>>): ClientOptions => ({
    capabilities: { textDocument: { completion: { completionItem: item } } },
  });

  test('insert and replace, what is chosen beforehand, and no commit characters', async () => {
    const { client, place } = await start(withItems({ insertReplaceSupport: true, snippetSupport: true }));
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site().replace('select reply steps', 'wire fobs to K1 K9'));
    const list = await client.request<CompletionList>('textDocument/completion', client.at(uri, 'K1 K|9'));
    const item = list.items.find((one) => one.label === 'K0');
    expect(item?.preselect).toBe(true);
    expect(item?.textEdit).toMatchObject({
      newText: 'K0',
      insert: { end: client.at(uri, 'K1 K|9').position },
      replace: { end: client.at(uri, 'K1 K9|').position },
    });
    expect(list.items.some((one) => one.commitCharacters !== undefined)).toBe(false);
    expect(list.items.some((one) => one.documentation !== undefined)).toBe(false);
  });

  test('blocks and templates: places to fill for those who know them, else what can be read without', async () => {
    const ask = async (client: Client, place: Folder): Promise<(label: string) => string | undefined> => {
      const uri = place.uriOf('gates/north.gate');
      await client.open(uri, 'language 1\n\n');
      const list = await client.request<CompletionList>('textDocument/completion', {
        textDocument: { uri },
        position: { line: 1, character: 0 },
      });
      return (label) => (list.items.find((one) => one.label === label)?.textEdit as TextEdit | undefined)?.newText;
    };
    const rich = await start(withItems({ snippetSupport: true }));
    const first = await ask(rich.client, rich.place);
    expect(first('swing-pair')).toContain('closes onto $1 overlap');
    expect(first('leaf')).toContain('leaf ${1:name} {\n  width $2');
    const plain = await start(withItems({ snippetSupport: false }));
    const second = await ask(plain.client, plain.place);
    expect(second('swing-pair')).toContain('closes onto west overlap\n');
    for (const label of ['swing-pair', 'leaf', 'panel-library']) expect(second(label)).not.toMatch(/\$|…/);
  });

  test('the days come from the host', async () => {
    const { client, place } = await start({ host: { today: () => '2030-01-31' } });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site('accept use-unused because "x" until '));
    const list = await client.request<CompletionList>('textDocument/completion', client.at(uri, 'until |'));
    expect(list.items.map((item) => item.label)).toEqual(['2030-04-30', '2030-07-31', '2031-01-31']);
  });
});

describe('code actions', () => {
  const everywhere = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
  const ask = (client: Client, uri: string, only?: string[], range: unknown = everywhere) =>
    client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri },
      range,
      context: { diagnostics: [], ...(only === undefined ? {} : { only }) },
    });
  const lazy = {
    textDocument: { codeAction: { dataSupport: true, resolveSupport: { properties: ['edit'] } } },
    workspace: { workspaceEdit: { documentChanges: true } },
  };

  test('each says its class; only what is safe is preferred, and a safety value is never changed in bulk', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site().replace('watches closing\n  on', 'watches Closing\n  on').replace('mass 165 kg', 'mass 165 KG'));
    const actions = await ask(client, uri);
    const watch = actions.find((action) => action.title.startsWith('Write “closing”'));
    expect(watch?.title).toContain('(changes a safety value: look at the gate)');
    expect(watch?.data).toMatchObject({ class: 'safety' });
    expect(watch?.isPreferred).toBeUndefined();
    const unused = actions.find((action) => action.title === 'Remove this line');
    expect(unused).toMatchObject({ isPreferred: true, data: { class: 'safe' } });
    const [all] = await ask(client, uri, ['source.fixAll']);
    expect(JSON.stringify(all?.edit)).not.toContain('closing');
    for (const action of actions) expect(action.isPreferred === true).toBe((action.data as { class: string }).class === 'safe');
  });

  test('a misspelt word, through the protocol', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\nleaf a {\n  widht 2 m\n  opens inwards 90 deg\n}\n');
    const actions = await ask(client, uri);
    const mend = (title: string): string =>
      edited(
        client.text(uri),
        changesOf(actions.find((action) => action.title.startsWith(title))?.edit as WorkspaceEdit)[0]?.edits as TextEdit[],
      );
    expect(mend('Write “width”')).toContain('  width 2 m\n');
    expect(mend('Write “inward”')).toContain('opens inward 90 deg');
  });

  test('edits on demand; a text that has changed since gets none', async () => {
    const { client, place } = await start({ capabilities: lazy });
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const [action] = await ask(client, uri, ['quickfix']);
    expect(action?.edit).toBeUndefined();
    const resolved = await client.request<CodeAction>('codeAction/resolve', action);
    expect(changesOf(resolved.edit as WorkspaceEdit)[0]?.textDocument).toEqual({ uri, version: 1 });
    await client.edit(uri, { start: 0, end: 0, text: '# ' });
    expect(await reasonOf(client.request('codeAction/resolve', action))).toBe('the text has changed');
  });

  test.each([true, false])(
    'an acceptance: in the block, refused until it is filled in (places to fill: %s)',
    async (snippetEditSupport) => {
      const { client, place } = await start({
        capabilities: { workspace: { workspaceEdit: { documentChanges: true, snippetEditSupport } } },
      });
      const uri = place.uriOf('gates/north.gate');
      await client.open(uri, site().replace('seat 1.5 s', 'seat 4 s'));
      const actions = await ask(client, uri, ['quickfix']);
      const accept = actions.find((action) => action.title === 'Accept “seat-outside-practice” here, with a reason…');
      expect(accept?.kind).toBe('quickfix.accept.pintle');
      expect(accept?.isPreferred).toBeUndefined();
      const [edit] = (changesOf(accept?.edit as WorkspaceEdit)[0]?.edits ?? []) as {
        range: never;
        newText?: string;
        snippet?: { kind: string; value: string };
      }[];
      if (snippetEditSupport) {
        expect(edit?.snippet).toEqual({
          kind: 'snippet',
          value: '  accept seat-outside-practice because "$1" by "$2" until ${3:2027-05-20}$0\n',
        });
        return;
      }
      const text = edited(client.text(uri), [edit as TextEdit]);
      await client.edit(uri, { start: 0, end: client.text(uri).length, text });
      const rules = itemsOf(await client.pullOf(uri)).map((item) => item.code);
      expect(rules).toContain('acceptance-without-reason');
      expect(rules).toContain('seat-outside-practice');
      expect(actions.some((action) => action.title.includes('unit-missing'))).toBe(false);
    },
  );

  test('an error that cannot be accepted has its page offered, where the client can show it', async () => {
    // An edge on the terminals of a beam: nobody can write for somebody else where it belongs.
    const text = site().replace('wire west-edge to E0 E1', 'wire west-edge to T0 T1');
    for (const explainCommand of ['some.explanation', undefined]) {
      const { client, place } = await start({ options: explainCommand === undefined ? {} : { explainCommand } });
      const uri = place.uriOf('gates/north.gate');
      await client.open(uri, text);
      const items = itemsOf(await client.pullOf(uri));
      const error = items.find((item) => item.code === 'terminal-unfit');
      expect(error?.severity).toBe(1);
      const actions = await ask(client, uri, ['quickfix'], error?.range);
      expect(actions[0]?.kind).not.toBe('quickfix.accept.pintle');
      const explained = actions.filter(({ kind }) => kind === 'quickfix.explain.pintle').map(({ command }) => command);
      expect(explained).toEqual(
        explainCommand === undefined
          ? []
          : expect.arrayContaining([{ title: 'Explain “terminal-unfit”', command: explainCommand, arguments: ['terminal-unfit'] }]),
      );
      // What cannot work is not accepted.
      expect(actions.some(({ title }) => title.startsWith('Accept “terminal-unfit”'))).toBe(false);
      expect(actions.filter(({ isPreferred }) => isPreferred === true).map(({ kind }) => kind)).not.toContain('quickfix.accept.pintle');
    }
  });

  test('what a block lacks, as a source action at the caret', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, 'language 1\nleaf a {\n  opens inward 90 deg\n}\n');
    const at = { start: { line: 1, character: 6 }, end: { line: 1, character: 6 } };
    const [action, ...rest] = await ask(client, uri, ['source.addMissing'], at);
    expect(rest).toEqual([]);
    expect(action?.kind).toBe('source.addMissing.pintle');
    expect(action?.title).toMatch(/^Add what leaf “a” lacks \(\d lines\)$/);
    const text = edited(client.text(uri), changesOf(action?.edit as WorkspaceEdit)[0]?.edits as TextEdit[]);
    expect(text).toContain('  opens inward 90 deg\n  width\n  mass\n');
    expect(await ask(client, uri, ['source.addMissing'], { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } })).toEqual([]);
  });
});

describe('whatever is sent', () => {
  test('places outside the text, unknown texts and nonsense are answered', async () => {
    const { client, place } = await start();
    const uri = place.uriOf('gates/north.gate');
    await client.open(uri, site());
    const far = { textDocument: { uri }, position: { line: 99999, character: 99999 } };
    const none = { textDocument: { uri: 'untitled:none' }, position: { line: 0, character: 0 } };
    expect(await reasonOf(client.request('textDocument/rename', { ...far, newName: 'x' }))).toContain('none stands here');
    expect(await client.request('textDocument/rename', { ...none, newName: 'x' })).toBeNull();
    expect(await client.request('textDocument/signatureHelp', far)).toBeNull();
    expect(await client.request('textDocument/onTypeFormatting', { ...far, ch: '\n', options: {} })).toEqual([]);
    expect(
      await client.request('textDocument/rangeFormatting', {
        textDocument: none.textDocument,
        range: { start: far.position, end: far.position },
        options: {},
      }),
    ).toBeNull();
    expect(await client.request('workspace/willRenameFiles', { files: [] })).toBeNull();
    expect(await client.request('workspace/willRenameFiles', { files: [{ oldUri: '', newUri: '%' }] })).toBeNull();
    for (const data of [
      undefined,
      null,
      7,
      {},
      { uri: 'x', version: 1, start: 0, end: 0, index: 0 },
      { uri, version: 1, start: -5, end: 1e9, only: null, index: 99 },
    ])
      expect(await reasonOf(client.request('codeAction/resolve', { title: 'x', data }))).toMatch(/was not refused|the text has changed/);
  });
});
