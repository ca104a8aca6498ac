// What the server has found, as far as it is shown. The Problems list of an editor has findings of others too, and takes in
// what a task reads from a terminal; a verdict counts these alone.
import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type LanguageClientOptions,
  vsdiag,
} from 'vscode-languageclient';
import { isInTab } from './texts.ts';

/** Everything that is shown, in one collection for each way that findings come. */
const collections = new Set<vscode.DiagnosticCollection>();

/** What the server has found in a text. */
export const findingsOf = (uri: vscode.Uri): vscode.Diagnostic[] =>
  [...collections].flatMap((collection) => [...(collection.get(uri) ?? [])]);

/** Files of the folder are judged at any time; what lies elsewhere is somebody's work only while it is seen. */
const isWanted = (uri: vscode.Uri): boolean => vscode.workspace.getWorkspaceFolder(uri) !== undefined || isInTab(uri);

/**
 * Who asks for findings tells the server what it was told before, so that the server can take it back; but the library forgets
 * what it was told of a text when that is closed. Of a text that is closed and in no folder nothing stays, although it can be
 * open in the background for a while.
 */
export const findingsOptions = {
  diagnosticCollectionProvider: {
    create: (name) => {
      const collection = vscode.languages.createDiagnosticCollection(name);
      collections.add(collection);
      return collection;
    },
    dispose: (collection) => {
      collections.delete(collection);
      collection.dispose();
    },
  },
  middleware: {
    provideWorkspaceDiagnostics: (known, token, report, next) => {
      const told = new Set(known.map(({ uri }) => uri.toString()));
      for (const { uri } of vscode.workspace.textDocuments) told.add(uri.toString());
      return next(
        [...known, ...shown((uri, findings) => findings.length > 0 && !told.has(uri.toString())).map((uri) => ({ uri, value: '' }))],
        token,
        (chunk) =>
          report(
            chunk === null
              ? null
              : {
                  items: chunk.items.flatMap((item) =>
                    isWanted(item.uri)
                      ? [item]
                      : findingsOf(item.uri).length === 0
                        ? []
                        : [{ kind: vsdiag.DocumentDiagnosticReportKind.full, uri: item.uri, version: item.version, items: [] }],
                  ),
                },
          ),
      );
    },
  },
} as const satisfies LanguageClientOptions;

function shown(holds: (uri: vscode.Uri, findings: readonly vscode.Diagnostic[]) => boolean): vscode.Uri[] {
  const uris: vscode.Uri[] = [];
  for (const collection of collections) collection.forEach((uri, findings) => void (holds(uri, findings) && uris.push(uri)));
  return uris;
}

/** How long after the end of a task an editor still tidies up what it read from its terminal, in milliseconds. */
const tidying = 1000;

/**
 * Keeps each finding in the list once. A task that reads the command's lines (`$pintle`) puts them in the place of the server's
 * for files that are not open, and at its end takes away whatever it did not read itself; the server's say more, and they stay.
 */
export function keepFindings(): vscode.Disposable {
  /** How many findings of others stood beside the server's when these were last put back. */
  const others = new Map<string, number>();
  const putBack = (uris: Iterable<vscode.Uri>): void => {
    for (const uri of uris) for (const collection of collections) if (collection.has(uri)) collection.set(uri, collection.get(uri));
  };
  const timers = new Set<ReturnType<typeof setTimeout>>();
  return vscode.Disposable.from(
    vscode.languages.onDidChangeDiagnostics(({ uris }) =>
      putBack(
        uris.filter((uri) => {
          if (!uri.path.endsWith('.gate')) return false;
          const count = vscode.languages.getDiagnostics(uri).filter(({ source }) => source === 'pintle').length - findingsOf(uri).length;
          const before = others.get(uri.toString()) ?? 0;
          if (count > 0) others.set(uri.toString(), count);
          else others.delete(uri.toString());
          // Of one who writes beside and not in its place nothing can be taken away: once is enough.
          return count > 0 && count !== before;
        }),
      ),
    ),
    vscode.tasks.onDidEndTask(() => {
      const timer = setTimeout(() => {
        timers.delete(timer);
        putBack(shown((_, findings) => findings.length > 0));
      }, tidying);
      timers.add(timer);
    }),
    new vscode.Disposable(() => timers.forEach(clearTimeout)),
  );
}

/** Tells the server of folders that are gone: the editor tells of the folder only, and the server asked for .gate files. */
export function tellOfFolders(client: BaseLanguageClient): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher('**/*', true, true, false);
  watcher.onDidDelete((gone) => {
    if (gone.path.endsWith('.gate') || !client.isRunning()) return;
    const folder = `${gone.toString()}/`;
    const hasFiles = shown((uri) => uri.toString().startsWith(folder)).length > 0;
    if (hasFiles)
      void client.sendNotification(DidChangeWatchedFilesNotification.type, {
        changes: [{ uri: client.code2ProtocolConverter.asUri(gone), type: FileChangeType.Deleted }],
      });
  });
  return watcher;
}
