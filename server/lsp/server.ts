// The protocol, from greeting to goodbye: open texts, files, folders, settings. When to work anew and what is stale is
// decided here; reports.ts and the features answer.
import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  FileOperationPatternKind,
  type InitializeParams,
  type InitializeResult,
  type ServerCapabilities,
  TextDocumentSyncKind,
  type WorkspaceFoldersChangeEvent,
} from 'vscode-languageserver';
import type { Analysis } from '../engine/index.ts';
import { createAnswering } from './answering.ts';
import { createClient, optionsOf, takesOf } from './client.ts';
import type { Around } from './convert.ts';
import { type Document, Lines } from './documents.ts';
import { allFeatures } from './features/all.ts';
import type { Host } from './host.ts';
import { createPace } from './pace.ts';
import { createReports } from './reports.ts';
import { createSession } from './session.ts';
import { readSettings } from './settings.ts';
import { pathOf } from './uris.ts';

/** How often it is looked whether a new day has begun, in milliseconds. */
const dayCheck = 600_000;

/** Answers a client until it hangs up. Nothing that a client sends ends the server. */
export function startServer(connection: Connection, host: Host): void {
  const client = createClient(connection);
  const pace = createPace(host, client.log);
  const session = createSession({ host, pace, ask: client.readFile });
  const { documents } = session;

  const linesOf = new WeakMap<Analysis, Lines>();
  const linesFor = (analysis: Analysis): Lines => {
    let lines = linesOf.get(analysis);
    if (lines === undefined) linesOf.set(analysis, (lines = new Lines(analysis.text, analysis.lineStarts)));
    return lines;
  };

  const aroundFor = (analysis: Analysis): Around => {
    const workspace = session.workspaceOf(analysis.path);
    const others = new Map<string, Lines | undefined>();
    return {
      pages: client.options.pages,
      uri: session.uriOf,
      lines: (path) => {
        if (path === analysis.path) return linesFor(analysis);
        if (!others.has(path)) {
          const text = session.textOf(path, workspace);
          others.set(path, text === undefined ? undefined : new Lines(text));
        }
        return others.get(path);
      },
    };
  };

  const answers = createAnswering(host, session, pace, client, linesFor);
  const { hearing } = answers;
  const reports = createReports({ connection, host, session, pace, client, answers, linesFor, aroundFor });
  for (const feature of allFeatures) feature.answer({ connection, session, pace, client, answers, reports, linesFor, aroundFor });

  /** Something that other texts can see has changed. */
  const othersChanged = (readers: readonly Document[]): void => {
    reports.publishLater(readers);
    client.refresh('diagnostics', 'inlays', 'lenses', 'tokens');
  };

  // --- Open texts.

  const documentChanged = (document: Document): void => {
    pace.edited();
    const readers = session.readersOf(document.path);
    session.changed(document.path, 'edited');
    // Files that are not open may see this one.
    reports.forget(document.path);
    reports.publishLater([document]);
    if (readers.length > 0) othersChanged(readers);
  };

  connection.onDidOpenTextDocument(
    hearing('open', ({ textDocument }) => {
      recheckUnwatched();
      documentChanged(documents.open(textDocument.uri, textDocument.version, textDocument.text));
    }),
  );
  connection.onDidChangeTextDocument(
    hearing('change', ({ textDocument, contentChanges }) => {
      const document = documents.change(textDocument.uri, textDocument.version, contentChanges);
      if (document === undefined) client.log(`a change of ${textDocument.uri}, which is not open`);
      else documentChanged(document);
    }),
  );
  connection.onDidSaveTextDocument(hearing('save', () => recheckUnwatched()));
  connection.onDidCloseTextDocument(
    hearing('close', async ({ textDocument }) => {
      const document = documents.close(textDocument.uri);
      if (document === undefined) return;
      const readers = session.readersOf(document.path);
      session.closed(document);
      await reports.clear(document);
      if (readers.length > 0) othersChanged(readers);
    }),
  );

  const recheckUnwatched = (): void => {
    if (client.watches) return;
    const stale = session.recheck();
    if (stale.length === 0) return;
    reports.forget();
    othersChanged(documents.byUse());
  };

  // --- Files on the disk, folders, settings, the day.

  const filesChanged = (changes: readonly { readonly path: string; readonly what: 'created' | 'changed' | 'deleted' }[]): void => {
    for (const { path, what } of changes) {
      session.changed(path, what);
      reports.forget(path);
    }
    if (changes.length > 0) othersChanged(documents.byUse());
  };

  connection.onDidChangeWatchedFiles(
    hearing('watched files', ({ changes }) => {
      filesChanged(
        changes.map(({ uri, type }) => ({
          path: pathOf(uri),
          what: type === FileChangeType.Created ? 'created' : type === FileChangeType.Deleted ? 'deleted' : 'changed',
        })),
      );
    }),
  );

  let today = host.today();
  const dayTimer = setInterval(() => {
    const day = host.today();
    if (day === today) return;
    today = day;
    reports.forget();
    othersChanged(documents.byUse());
  }, dayCheck);
  if (typeof dayTimer === 'object' && 'unref' in dayTimer) dayTimer.unref();

  const applySettings = (given: unknown): void => {
    const wanted = readSettings(given ?? client.options.settings);
    if (JSON.stringify(wanted) === JSON.stringify(client.settings)) return;
    client.settings = wanted;
    client.refresh('inlays', 'lenses');
  };

  const fetchSettings = async (): Promise<void> => {
    if (client.capabilities.workspace?.configuration === true) applySettings(await connection.workspace.getConfiguration('pintle'));
  };

  connection.onDidChangeConfiguration(
    hearing('settings', async ({ settings: given }) => {
      if (client.capabilities.workspace?.configuration === true) await fetchSettings();
      else if (typeof given === 'object' && given !== null && 'pintle' in given) applySettings(given.pintle);
    }),
  );

  const foldersChanged = (folders: readonly string[]): void => {
    session.setFolders(folders);
    reports.forget();
    othersChanged(documents.byUse());
    void session.findFiles().catch((error: unknown) => client.complain('finding files', error));
  };

  // --- The beginning and the end.

  connection.onInitialize((params): InitializeResult => {
    client.capabilities = params.capabilities;
    client.takes = takesOf(params.capabilities);
    client.options = optionsOf(params.initializationOptions);
    client.settings = readSettings(client.options.settings);
    session.setFolders(foldersOf(params));
    const each = allFeatures.map((feature) => feature.capabilities?.(client) ?? {});
    const abilities: Partial<ServerCapabilities> = Object.assign({}, ...each);
    const fileOperations: object = Object.assign({}, ...each.map(({ workspace }) => workspace?.fileOperations));
    return {
      serverInfo: { name: 'pintle' },
      capabilities: {
        positionEncoding: 'utf-16',
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
        ...abilities,
        ...(client.takes.pull
          ? { diagnosticProvider: { identifier: 'pintle', interFileDependencies: true, workspaceDiagnostics: true } }
          : {}),
        workspace: {
          workspaceFolders: { supported: true, changeNotifications: true },
          fileOperations: { didDelete: { filters: folderFilters }, didRename: { filters: folderFilters }, ...fileOperations },
        },
      },
    };
  });

  connection.onInitialized(() => {
    const { workspace } = client.capabilities;
    // One by one and none waits for another: a client that refuses one may well grant the next.
    const step = (what: string, work: () => Promise<unknown>): void => void hearing(what, async () => void (await work()))(undefined);
    if (workspace?.workspaceFolders === true)
      connection.workspace.onDidChangeWorkspaceFolders(
        hearing('folders', (event: WorkspaceFoldersChangeEvent) => {
          const gone = new Set(event.removed.map((folder) => folderPath(folder.uri)));
          foldersChanged([
            ...session.folders().filter((folder) => !gone.has(folder)),
            ...event.added.map((folder) => folderPath(folder.uri)),
          ]);
        }),
      );
    if (workspace?.didChangeConfiguration?.dynamicRegistration === true)
      step('registering for settings', () => connection.client.register(DidChangeConfigurationNotification.type, { section: 'pintle' }));
    if (workspace?.didChangeWatchedFiles?.dynamicRegistration === true)
      step('registering for files', async () => {
        await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.gate' }] });
        client.watches = true;
      });
    step('settings', fetchSettings);
    step('finding files', session.findFiles);
  });

  connection.workspace.onDidDeleteFiles(
    hearing('deleted files', ({ files }) => filesChanged(files.map(({ uri }) => ({ path: pathOf(uri), what: 'deleted' as const })))),
  );
  connection.workspace.onDidRenameFiles(
    hearing('renamed files', ({ files }) =>
      filesChanged(
        files.flatMap(({ oldUri, newUri }) => [
          { path: pathOf(oldUri), what: 'deleted' as const },
          { path: pathOf(newUri), what: 'created' as const },
        ]),
      ),
    ),
  );

  connection.onShutdown(() => {
    clearInterval(dayTimer);
    client.stop();
  });

  connection.listen();
}

/** Folders, and files of ours: what a client tells when it deletes or renames them itself. */
const folderFilters = [
  { scheme: 'file', pattern: { glob: '**/*.gate', matches: FileOperationPatternKind.file } },
  { scheme: 'file', pattern: { glob: '**', matches: FileOperationPatternKind.folder } },
];

const folderPath = (uri: string): string => pathOf(uri).replace(/\/+$/, '');

function foldersOf(params: InitializeParams): string[] {
  const uris = params.workspaceFolders?.map((folder) => folder.uri) ?? (typeof params.rootUri === 'string' ? [params.rootUri] : []);
  return uris.map(folderPath);
}
