// Findings of files that are gone. Who asks for findings tells the server what it was told before, so that the server can
// take it back; but the library forgets what it was told of a text when that is closed, and nobody watches folders.
import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type LanguageClientOptions,
} from 'vscode-languageclient';

/** Everything that is shown, in one collection for each way that findings come. */
const collections = new Set<vscode.DiagnosticCollection>();

/** What makes the client tell the server of everything that it still shows. */
export const tellWhatIsShown = {
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
        report,
      );
    },
  },
} as const satisfies LanguageClientOptions;

function shown(holds: (uri: vscode.Uri, findings: readonly vscode.Diagnostic[]) => boolean): vscode.Uri[] {
  const uris: vscode.Uri[] = [];
  for (const collection of collections) collection.forEach((uri, findings) => void (holds(uri, findings) && uris.push(uri)));
  return uris;
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
