// Which texts are judged: sites and libraries that somebody works on. What an editor only shows is no site, whatever its name.
import * as vscode from 'vscode';
import { colliding, unsafeSite } from './basics.ts';
import { equal, found, ok, open, pause, read, ruleOf, scratch, type Test, until, untilRule, uri, write } from './kit.ts';

const run = async <T>(command: string, ...given: unknown[]): Promise<T> => vscode.commands.executeCommand<T>(command, ...given);

/** Longer than it takes until the editor asks for the findings of the whole folder again. */
const longEnough = 4500;

/** What is found in texts that are not files of the folder, whoever found it. */
const elsewhere = (): string[] =>
  vscode.languages
    .getDiagnostics()
    .filter(([at, findings]) => findings.length > 0 && !at.toString().startsWith(`${vscode.workspace.workspaceFolders?.[0]?.uri}/`))
    .map(([at, findings]) => `${at.toString(true)}: ${findings.length}, ${ruleOf(findings[0] as vscode.Diagnostic)} for one`);

/** A file system that holds one text. */
class OneFile implements vscode.FileSystemProvider {
  readonly #bytes: Uint8Array;
  readonly onDidChangeFile = new vscode.EventEmitter<vscode.FileChangeEvent[]>().event;
  constructor(text: string) {
    this.#bytes = new TextEncoder().encode(text);
  }
  watch = (): vscode.Disposable => new vscode.Disposable(() => undefined);
  stat = ({ path }: vscode.Uri): vscode.FileStat => {
    if (!path.endsWith('.gate')) throw vscode.FileSystemError.FileNotFound();
    return { type: vscode.FileType.File, ctime: 0, mtime: 0, size: this.#bytes.length };
  };
  readFile = (): Uint8Array => this.#bytes;
  readDirectory = (): [string, vscode.FileType][] => [];
  createDirectory = (): void => undefined;
  writeFile = (): void => undefined;
  delete = (): void => undefined;
  rename = (): void => undefined;
}

export const texts: Test[] = [
  {
    name: 'the figures of a file are judged by nobody, and leave nothing behind',
    body: async () => {
      const document = await open(unsafeSite);
      await untilRule(document.uri, 'lag-too-small');
      await run('pintle.showFigures');
      const shown = await until('figures', () =>
        vscode.workspace.textDocuments.find((text) => text.uri.scheme === 'pintle-figures' && text.getText().includes('inertia')),
      );
      equal(shown?.languageId, 'plaintext', 'the language of the figures');
      await pause(longEnough);
      equal(elsewhere(), [], 'found in what is no site');
      await run('workbench.action.closeAllEditors');
      await pause(longEnough);
      equal(elsewhere(), [], 'left behind');
    },
  },
  {
    name: 'a text that is only shown is not judged: an older version, output',
    body: async () => {
      const text = await read(unsafeSite);
      const document = await open(unsafeSite);
      const used: vscode.Disposable[] = [];
      try {
        used.push(
          vscode.workspace.registerTextDocumentContentProvider('earlier', { provideTextDocumentContent: () => text }),
          vscode.workspace.registerFileSystemProvider('stored', new OneFile(text), { isReadonly: true }),
        );
        const earlier = document.uri.with({ scheme: 'earlier', authority: '' });
        await run('vscode.diff', earlier, document.uri, 'Earlier and now');
        const stored = vscode.Uri.parse('stored:/site.gate');
        await vscode.window.showTextDocument(stored, { preview: false });
        const channel = vscode.window.createOutputChannel('A list of sites', 'pintle');
        used.push(channel);
        channel.append(text);
        channel.show(true);
        const of = (scheme: string): boolean =>
          vscode.workspace.textDocuments.some((one) => one.uri.scheme === scheme && one.languageId === 'pintle');
        await until(
          'all of them are open',
          () => ['earlier', 'stored', 'output'].every(of),
          (all) => all,
        );
        await untilRule(document.uri, 'lag-too-small');
        await pause(longEnough);
        equal(elsewhere(), [], 'found in what is only shown');
        await run('workbench.action.revertAndCloseActiveEditor');
        await run('workbench.action.closeAllEditors');
        await run('workbench.action.closePanel');
      } finally {
        vscode.Disposable.from(...used).dispose();
      }
      await pause(longEnough);
      equal(elsewhere(), [], 'left behind');
    },
  },
  {
    name: 'a file outside the folder is judged while it is shown, and leaves nothing behind',
    body: async () => {
      const path = '../outside/site.gate';
      await write(path, 'language 1\nleaf west {\n  widht 2 m\n}\n');
      const at = uri(path);
      await run('vscode.open', at, { preview: false });
      await untilRule(at, 'word-unknown');
      // Somebody else keeps the text open, as a list of references does.
      await vscode.workspace.openTextDocument(at);
      await run('pintle.openPreview');
      await pause(1000);
      await run('workbench.action.closeAllEditors');
      await until(
        'no findings of a closed file',
        () => found(at),
        (all) => all.length === 0,
      );
      await pause(longEnough);
      equal(elsewhere(), [], 'left behind');
      await run('vscode.open', at, { preview: false });
      await untilRule(at, 'word-unknown');
    },
  },
  {
    name: 'a file of a folder that nobody has seen before is judged: somewhere else, and writable',
    body: async () => {
      const used = vscode.workspace.registerFileSystemProvider('far-away', new OneFile('language 1\nleaf west {\n  widht 2 m\n}\n'));
      try {
        const at = vscode.Uri.parse('far-away:/site.gate');
        await run('vscode.open', at, { preview: false });
        await untilRule(at, 'word-unknown');
        const near = await scratch('near.gate', await colliding());
        await untilRule(near.uri, 'lag-too-small');
        await run('workbench.action.closeAllEditors');
        await until('nothing is left', elsewhere, (left) => left.length === 0);
        ok(true, '');
      } finally {
        used.dispose();
      }
    },
  },
];

/** Needs somebody who knows notebooks. */
export const cells: Test[] = [
  {
    name: 'a cell of a notebook is no site',
    body: async () => {
      const text = await read(unsafeSite);
      await vscode.window.showNotebookDocument(
        await vscode.workspace.openNotebookDocument(
          'jupyter-notebook',
          new vscode.NotebookData([new vscode.NotebookCellData(vscode.NotebookCellKind.Code, text, 'pintle')]),
        ),
      );
      await until('the cell', () => vscode.workspace.textDocuments.find(({ uri: { scheme } }) => scheme === 'vscode-notebook-cell'));
      await pause(longEnough);
      equal(elsewhere(), [], 'found in a cell');
      await run('workbench.action.revertAndCloseActiveEditor');
    },
  },
];
