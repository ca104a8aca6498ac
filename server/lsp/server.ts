// The protocol, from greeting to goodbye: open texts, files, folders, settings. When to work anew and what is stale is
// decided here; reports.ts and the features answer.
import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  FileChangeType,
  FileOperationPatternKind,
  type InitializeResult,
  MessageType,
  type ServerCapabilities,
  TextDocumentSyncKind,
  type WorkspaceFoldersChangeEvent,
} from 'vscode-languageserver';
import type { Analysis } from '../engine/index.ts';
import { version } from '../engine/inside.ts';
import { createAnswering } from './answering.ts';
import { createClient, optionsOf } from './client.ts';
import { createConfiguration, type Folder } from './configuration.ts';
import type { Around } from './convert.ts';
import { type Document, Lines } from './documents.ts';
import { allFeatures } from './features/all.ts';
import type { Host } from './host.ts';
import { createPace } from './pace.ts';
import { createReports } from './reports.ts';
import { createSession } from './session.ts';
import { changesOfText, isRecord } from './shapes.ts';
import { takesOf } from './takes.ts';
import { pathOf, uriOf } from './uris.ts';

/** How often it is looked whether a new day has begun, in milliseconds. */
const dayCheck = 600_000;

/** Answers a client until it hangs up. Nothing that a client sends ends the server. */
export function startServer(connection: Connection, host: Host): void {
  const client = createClient(connection);
  const pace = createPace(host, client.log);
  const session = createSession({ host, pace, ask: client.readFile });
  const { documents } = session;
  let folders: readonly Folder[] = [];

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
  const configuration = createConfiguration(
    connection,
    client,
    () => folders,
    () => client.refresh('inlays', 'lenses'),
  );
  for (const feature of allFeatures)
    feature.answer({ connection, session, pace, client, answers, reports, configuration, linesFor, aroundFor });

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
      documentChanged(documents.open(textDocument.uri, textDocument.version ?? 0, textDocument.text));
    }),
  );
  connection.onDidChangeTextDocument(
    hearing('change', ({ textDocument, contentChanges }) => {
      const known = documents.get(textDocument.uri);
      if (known === undefined) return client.log(`a change of ${textDocument.uri}, which is not open`);
      const wrong = changesOfText(contentChanges, 'contentChanges');
      if (wrong !== undefined) return giveUp(known, wrong);
      // A client that counts no versions has ours.
      documents.change(known, textDocument.version ?? known.version + 1, contentChanges);
      documentChanged(known);
    }),
  );
  /** A change cannot be made, so what the text is now is not known: nothing may be said of it until it is opened anew. */
  const giveUp = async (document: Document, wrong: string): Promise<void> => {
    client.complain('change', `${document.uri} cannot be followed any more: ${wrong}`);
    await closed(document);
    await connection.sendNotification('window/showMessage', {
      type: MessageType.Error,
      message: `Pintle has lost what is in ${document.uri}: the editor has sent a change that cannot be read. Close the file and open it again.`,
    });
  };
  connection.onDidSaveTextDocument(hearing('save', () => recheckUnwatched()));
  connection.onDidCloseTextDocument(
    hearing('close', async ({ textDocument }) => {
      const document = documents.get(textDocument.uri);
      if (document !== undefined) await closed(document);
    }),
  );
  const closed = async (document: Document): Promise<void> => {
    documents.close(document);
    const readers = session.readersOf(document.path);
    session.closed(document);
    await reports.clear(document);
    if (readers.length > 0) othersChanged(readers);
  };

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

  connection.onDidChangeConfiguration(
    hearing('settings', async ({ settings: given }) => {
      if (client.takes.configuration) await configuration.fetch();
      else if (typeof given === 'object' && given !== null && 'pintle' in given) configuration.push(given.pintle);
    }),
  );

  const setFolders = (given: readonly Folder[]): void => {
    folders = given;
    session.setFolders(given.map(({ path }) => path));
  };

  // --- The beginning and the end.

  connection.onInitialize((params): InitializeResult => {
    const { takes } = Object.assign(client, {
      takes: takesOf(params.capabilities),
      // Where the client has no pages of its own, those beside the server can be read.
      options: { ...(host.pages === undefined ? {} : { pages: host.pages }), ...optionsOf(params.initializationOptions) },
    });
    setFolders(foldersOf({ ...params }));
    // The library puts a listener of its own here just before this, where the client has folders.
    connection.onNotification(
      DidChangeWorkspaceFoldersNotification.type,
      hearing('folders', async ({ event }: { event: WorkspaceFoldersChangeEvent }) => {
        const [added, removed] = [event.added.map(folderOf), new Set(event.removed.map((folder) => folderOf(folder).path))];
        setFolders([...folders.filter(({ path }) => !removed.has(path)), ...added]);
        reports.forget();
        othersChanged(documents.byUse());
        void session.findFiles().catch((error: unknown) => client.complain('finding files', error));
        await configuration.fetch();
      }),
    );
    const each = allFeatures.map((feature) => feature.capabilities?.(client) ?? {});
    const abilities: Partial<ServerCapabilities> = Object.assign({}, ...each);
    const fileOperations: object = Object.assign(
      {},
      takes.moves.didDelete ? { didDelete: { filters: folderFilters } } : {},
      takes.moves.didRename ? { didRename: { filters: folderFilters } } : {},
      ...each.map(({ workspace }) => workspace?.fileOperations),
    );
    return {
      serverInfo: { name: 'pintle', version },
      capabilities: {
        positionEncoding: 'utf-16',
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
        ...abilities,
        ...(takes.pull ? { diagnosticProvider: { identifier: 'pintle', interFileDependencies: true, workspaceDiagnostics: true } } : {}),
        workspace: {
          ...(takes.folders ? { workspaceFolders: { supported: true, changeNotifications: true } } : {}),
          ...(Object.keys(fileOperations).length > 0 ? { fileOperations } : {}),
        },
      },
    };
  });

  connection.onInitialized(() => {
    const { registers } = client.takes;
    // One by one and none waits for another: a client that refuses one may well grant the next.
    const step = (what: string, work: () => Promise<unknown>): void => void hearing(what, async () => void (await work()))(undefined);
    if (registers.settings)
      step('registering for settings', () => connection.client.register(DidChangeConfigurationNotification.type, { section: 'pintle' }));
    if (registers.files)
      step('registering for files', async () => {
        await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.gate' }] });
        client.watches = true;
      });
    step('settings', configuration.fetch);
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

const folderOf = ({ uri }: { readonly uri: string }): Folder => ({ uri, path: pathOf(uri).replace(/\/+$/, '') });

/** The folders of a greeting: those of the workspace, or else the one root, as older clients give it. */
function foldersOf(params: Readonly<Record<string, unknown>>): Folder[] {
  const { workspaceFolders, rootUri, rootPath } = params;
  if (Array.isArray(workspaceFolders))
    return workspaceFolders.filter((one: unknown) => isRecord(one) && typeof one['uri'] === 'string').map(folderOf);
  if (typeof rootUri === 'string') return [folderOf({ uri: rootUri })];
  return typeof rootPath === 'string' && rootPath !== '' ? [folderOf({ uri: uriOf(slashed(rootPath)) })] : [];
}

/** A path of the machine as the engine knows it: `C:\a` is `/c:/a`. */
const slashed = (path: string): string =>
  path.replaceAll('\\', '/').replace(/^([A-Za-z]):/, (_, drive: string) => `/${drive.toLowerCase()}:`);
