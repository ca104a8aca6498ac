// The protocol. Each feature is one answer of the editor room, put into the protocol's shape; when to work anew, what is
// stale and what the client is told is decided here.
import {
  CodeActionKind,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  FileChangeType,
  FileOperationPatternKind,
  LSPErrorCodes,
  MessageType,
  ResponseError,
  TextDocumentSyncKind,
  type CancellationToken,
  type ClientCapabilities,
  type CodeAction,
  type CodeActionParams,
  type CompletionItem,
  type Connection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type InitializeParams,
  type InitializeResult,
  type InlayHint,
  type Location,
  type LocationLink,
  type TextDocumentPositionParams,
  type WorkspaceDocumentDiagnosticReport,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import {
  completion,
  definition,
  diagnostics,
  figuresShown,
  fixAll,
  fixes,
  formatting,
  highlight,
  hover,
  inlayValues,
  referencesTo,
  referent,
  rulesShown,
  symbols,
  type Analysis,
  type Completion,
  type Edit,
  type ReadResult,
} from '../editor/index.ts';
import { contentName, markup, toCompletionItems, toDiagnostic, toDocumentSymbols, toEdits, toSymbolInformation, type Around, type ClientTakes } from './convert.ts';
import { Lines, type Document } from './documents.ts';
import type { Host } from './host.ts';
import { createPace } from './pace.ts';
import { figuresRequest, readRequest, rulesRequest, type FigureAnswer, type FiguresParams, type InitializationOptions, type ReadAnswer, type ReadParams, type RulesAnswer } from './requests.ts';
import { createSession } from './session.ts';
import { isInside, pathOf } from './uris.ts';

/** Longest wait for a file of the client's, in milliseconds. */
const longestRead = 10_000;
/** Quiet time before the client is told to ask again, in milliseconds. */
const refreshAfter = 50;
/** How often it is looked whether a new day has begun, in milliseconds. */
const dayCheck = 600_000;
/** Reports of a workspace sent at a time. */
const batch = 50;

/** The text changed while an answer was worked out: the answer is about a text that is gone. */
class Stale extends Error {}

interface Report {
  readonly items: Diagnostic[];
  readonly id: string;
}

/** Answers a client until it hangs up. Nothing that a client sends ends the server. */
export function startServer(connection: Connection, host: Host): void {
  const log = (line: string): void => {
    try {
      connection.console.log(line);
    } catch {
      // The client is gone; there is nobody to tell.
    }
  };
  const complain = (what: string, error: unknown): void => {
    try {
      connection.console.error(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    } catch {
      // As above.
    }
  };
  const pace = createPace(host, log);

  const ask = async (uri: string): Promise<ReadResult> => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<'late'>((resolve) => {
      timer = setTimeout(() => resolve('late'), longestRead);
    });
    try {
      const answer = await Promise.race([connection.sendRequest<ReadAnswer>(readRequest, { uri } satisfies ReadParams), late]);
      if (answer === 'late') return 'unreadable';
      return 'text' in answer && typeof answer.text === 'string' ? { text: answer.text.charCodeAt(0) === 0xfeff ? answer.text.slice(1) : answer.text } : 'missing';
    } catch (error) {
      if (error instanceof ResponseError && error.code === ErrorCodes.MethodNotFound) return 'missing';
      complain(`reading ${uri}`, error);
      return 'unreadable';
    } finally {
      clearTimeout(timer);
    }
  };

  const session = createSession({ host, timed: pace.timed, ask });
  const { documents } = session;

  let client: ClientCapabilities = {};
  let takes = takesOf({});
  let options: InitializationOptions = {};
  let settings = { inlayValues: true };
  let watches = false;
  let isDown = false;

  // --- Lines and places.

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
      pages: options.pages,
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

  const reports = new WeakMap<Analysis, Report>();
  const reportOf = (analysis: Analysis): Report => {
    const known = reports.get(analysis);
    if (known !== undefined) return known;
    const report = pace.timed('diagnostics', () => {
      const lines = linesFor(analysis);
      const around = aroundFor(analysis);
      const items = diagnostics(analysis).map((diagnostic) => toDiagnostic(diagnostic, lines, around, takes));
      return { items, id: contentName(JSON.stringify(items)) };
    });
    reports.set(analysis, report);
    return report;
  };

  const textEdit = (document: Document, version: number, edits: readonly Edit[], lines: Lines): WorkspaceEdit =>
    takes.documentChanges
      ? { documentChanges: [{ textDocument: { uri: document.uri, version }, edits: toEdits(edits, lines) }] }
      : { changes: { [document.uri]: toEdits(edits, lines) } };

  // --- Answering: cancelled and stale answers are dropped, errors are logged and never the user's.

  const dropped = (): ResponseError<never> => new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');

  const answering =
    <P, R>(what: string, empty: R, work: (params: P, token: CancellationToken) => Promise<R> | R) =>
    async (params: P, token: CancellationToken): Promise<R | ResponseError<never>> => {
      try {
        // A turn of the queue, in which a cancellation that was sent right behind can arrive.
        await host.tick();
        if (token.isCancellationRequested) return dropped();
        const answer = await work(params, token);
        return token.isCancellationRequested ? dropped() : answer;
      } catch (error) {
        if (error instanceof Stale) return new ResponseError(LSPErrorCodes.ContentModified, 'the text has changed');
        complain(what, error);
        return empty;
      }
    };

  const hearing =
    <P>(what: string, work: (params: P) => void | Promise<void>) =>
    async (params: P): Promise<void> => {
      try {
        await work(params);
      } catch (error) {
        complain(what, error);
      }
    };

  /** An answer about an open text. Where it speaks of places in it, an edit meanwhile makes it worthless. */
  const about =
    <P extends { readonly textDocument: { readonly uri: string } }, R>(
      what: string,
      empty: R,
      work: (at: { readonly document: Document; readonly analysis: Analysis; readonly lines: Lines; readonly version: number }, params: P, token: CancellationToken) => Promise<R> | R,
    ) =>
    async (params: P, token: CancellationToken): Promise<R | ResponseError<never>> => {
      const version = documents.get(params.textDocument.uri)?.version;
      return answering<P, R>(what, empty, async () => {
        const document = documents.get(params.textDocument.uri);
        if (document === undefined || version === undefined) return empty;
        documents.touch(document);
        const analysis = await session.analyse(document);
        if (analysis === undefined || token.isCancellationRequested) return empty;
        if (document.version !== version) throw new Stale();
        const answer = await pace.timed(what, () => work({ document, analysis, lines: linesFor(analysis), version }, params, token));
        if (document.version !== version) throw new Stale();
        return answer;
      })(params, token);
    };

  // --- Diagnostics, pushed where the client cannot ask for them. Never both.

  const unpublished = new Set<Document>();
  const published = new WeakMap<Document, { readonly analysis: Analysis; readonly version: number }>();
  let isPublishing = false;

  const publishLater = (given: Iterable<Document>): void => {
    if (takes.pull) return;
    for (const document of given) unpublished.add(document);
    if (isPublishing || unpublished.size === 0) return;
    isPublishing = true;
    void publishAll().catch((error: unknown) => complain('diagnostics', error)).finally(() => {
      isPublishing = false;
      if (unpublished.size > 0) publishLater([]);
    });
  };

  const publishAll = async (): Promise<void> => {
    for (;;) {
      await pace.settled();
      let next: Document | undefined;
      for (const document of unpublished) if (next === undefined || document.touched > next.touched) next = document;
      if (next === undefined) return;
      unpublished.delete(next);
      // Not waited for: a library that is slow to come must not hold up the others.
      void publish(next).catch((error: unknown) => complain('diagnostics', error));
    }
  };

  const publish = async (document: Document): Promise<void> => {
    const { version } = document;
    const analysis = await session.analyse(document);
    if (analysis === undefined || document.version !== version || isDown || !documents.isOpen(document)) return;
    const last = published.get(document);
    if (last !== undefined && last.analysis === analysis && last.version === version) return;
    published.set(document, { analysis, version });
    await connection.sendDiagnostics({ uri: document.uri, version, diagnostics: reportOf(analysis).items });
  };

  // --- Telling the client to ask again.

  const refreshWanted = new Set<'diagnostics' | 'inlays'>();
  let refreshTimer: ReturnType<typeof setTimeout> | undefined;

  const refreshLater = (...what: ('diagnostics' | 'inlays')[]): void => {
    for (const one of what) refreshWanted.add(one);
    if (refreshTimer !== undefined) return;
    refreshTimer = setTimeout(() => {
      refreshTimer = undefined;
      const wanted = new Set(refreshWanted);
      refreshWanted.clear();
      if (isDown) return;
      const fail = (error: unknown): void => complain('refresh', error);
      if (wanted.has('diagnostics') && takes.pull && client.workspace?.diagnostics?.refreshSupport === true) connection.languages.diagnostics.refresh().catch(fail);
      if (wanted.has('inlays') && client.workspace?.inlayHint?.refreshSupport === true) connection.languages.inlayHint.refresh().catch(fail);
    }, refreshAfter);
  };

  /** Something that other texts can see has changed. */
  const othersChanged = (readers: readonly Document[]): void => {
    publishLater(readers);
    refreshLater('diagnostics', 'inlays');
  };

  // --- Open texts.

  const documentChanged = (document: Document): void => {
    pace.edited();
    const readers = session.readersOf(document.path);
    session.changed(document.path, 'edited');
    publishLater([document]);
    if (readers.length > 0) othersChanged(readers);
  };

  connection.onDidOpenTextDocument(
    hearing('open', ({ textDocument }) => {
      const readers = session.readersOf(pathOf(textDocument.uri));
      recheckUnwatched();
      documentChanged(documents.open(textDocument.uri, textDocument.version, textDocument.text));
      if (readers.length > 0) othersChanged(readers);
    }),
  );
  connection.onDidChangeTextDocument(
    hearing('change', ({ textDocument, contentChanges }) => {
      const document = documents.change(textDocument.uri, textDocument.version, contentChanges);
      if (document === undefined) log(`a change of ${textDocument.uri}, which is not open`);
      else documentChanged(document);
    }),
  );
  connection.onDidSaveTextDocument(hearing('save', () => recheckUnwatched()));
  connection.onDidCloseTextDocument(
    hearing('close', async ({ textDocument }) => {
      const document = documents.close(textDocument.uri);
      if (document === undefined) return;
      unpublished.delete(document);
      const readers = session.readersOf(document.path);
      session.closed(document);
      reported.delete(document.path);
      if (!takes.pull) await connection.sendDiagnostics({ uri: textDocument.uri, diagnostics: [] });
      if (readers.length > 0) othersChanged(readers);
    }),
  );

  const recheckUnwatched = (): void => {
    if (watches) return;
    const stale = session.recheck();
    if (stale.length === 0) return;
    reported.clear();
    othersChanged(documents.byUse());
  };

  // --- Files on the disk, folders, settings, the day.

  const filesChanged = (changes: readonly { readonly path: string; readonly what: 'created' | 'changed' | 'deleted' }[]): void => {
    for (const { path, what } of changes) {
      session.changed(path, what);
      for (const [other, report] of reported) if (isInside(other, path) || report.libraries.some((library) => isInside(library, path))) reported.delete(other);
    }
    if (changes.length > 0) othersChanged(documents.byUse());
  };

  connection.onDidChangeWatchedFiles(
    hearing('watched files', ({ changes }) => {
      filesChanged(changes.map(({ uri, type }) => ({ path: pathOf(uri), what: type === FileChangeType.Created ? 'created' : type === FileChangeType.Deleted ? 'deleted' : 'changed' })));
    }),
  );

  let today = host.today();
  const dayTimer = setInterval(() => {
    const day = host.today();
    if (day === today) return;
    today = day;
    reported.clear();
    othersChanged(documents.byUse());
  }, dayCheck);
  if (typeof dayTimer === 'object' && 'unref' in dayTimer) dayTimer.unref();

  const applySettings = (given: unknown): void => {
    const wanted = typeof given === 'object' && given !== null && 'inlayValues' in given ? given.inlayValues !== false : (options.inlayValues ?? true);
    if (wanted === settings.inlayValues) return;
    settings = { inlayValues: wanted };
    refreshLater('inlays');
  };

  const fetchSettings = async (): Promise<void> => {
    if (client.workspace?.configuration === true) applySettings(await connection.workspace.getConfiguration('pintle'));
  };

  connection.onDidChangeConfiguration(
    hearing('settings', async ({ settings: given }) => {
      if (client.workspace?.configuration === true) await fetchSettings();
      else if (typeof given === 'object' && given !== null && 'pintle' in given) applySettings(given.pintle);
    }),
  );

  const foldersChanged = (folders: readonly string[]): void => {
    session.setFolders(folders);
    reported.clear();
    othersChanged(documents.byUse());
    void session.findFiles().catch((error: unknown) => complain('finding files', error));
  };

  // --- The beginning and the end.

  connection.onInitialize((params): InitializeResult => {
    client = params.capabilities;
    takes = takesOf(client);
    options = optionsOf(params.initializationOptions);
    settings = { inlayValues: options.inlayValues ?? true };
    session.setFolders(foldersOf(params));
    return {
      serverInfo: { name: 'pintle' },
      capabilities: {
        positionEncoding: 'utf-16',
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
        hoverProvider: true,
        completionProvider: { triggerCharacters: [' ', ':', '"', '/'], resolveProvider: true },
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        documentSymbolProvider: true,
        documentFormattingProvider: true,
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind] },
        inlayHintProvider: { resolveProvider: true },
        ...(takes.pull ? { diagnosticProvider: { identifier: 'pintle', interFileDependencies: true, workspaceDiagnostics: true } } : {}),
        workspace: {
          workspaceFolders: { supported: true, changeNotifications: true },
          fileOperations: { didDelete: { filters: folderFilters }, didRename: { filters: folderFilters } },
        },
      },
    };
  });

  connection.onInitialized(
    hearing('start', async () => {
      if (client.workspace?.workspaceFolders === true)
        connection.workspace.onDidChangeWorkspaceFolders((event) => {
          const gone = new Set(event.removed.map((folder) => folderPath(folder.uri)));
          foldersChanged([...session.folders().filter((folder) => !gone.has(folder)), ...event.added.map((folder) => folderPath(folder.uri))]);
        });
      if (client.workspace?.didChangeConfiguration?.dynamicRegistration === true) await connection.client.register(DidChangeConfigurationNotification.type, { section: 'pintle' });
      if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration === true) {
        await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.gate' }] });
        watches = true;
      }
      await fetchSettings();
      await session.findFiles();
    }),
  );

  connection.workspace.onDidDeleteFiles(hearing('deleted files', ({ files }) => filesChanged(files.map(({ uri }) => ({ path: pathOf(uri), what: 'deleted' as const })))));
  connection.workspace.onDidRenameFiles(
    hearing('renamed files', ({ files }) =>
      filesChanged(files.flatMap(({ oldUri, newUri }) => [{ path: pathOf(oldUri), what: 'deleted' as const }, { path: pathOf(newUri), what: 'created' as const }])),
    ),
  );

  connection.onShutdown(() => {
    isDown = true;
    clearInterval(dayTimer);
    clearTimeout(refreshTimer);
    refreshTimer = undefined;
  });

  // --- Diagnostics, asked for.

  const full = (report: Report, previous: string | undefined): DocumentDiagnosticReport =>
    report.id === previous ? { kind: 'unchanged', resultId: report.id } : { kind: 'full', resultId: report.id, items: report.items };

  connection.languages.diagnostics.on(
    answering('diagnostics', { kind: 'full', items: [] } as DocumentDiagnosticReport, async ({ textDocument, previousResultId }, token) => {
      await pace.settled();
      if (token.isCancellationRequested) return { kind: 'full', items: [] };
      const document = documents.get(textDocument.uri);
      if (document === undefined) {
        const found = session.judgeFile(pathOf(textDocument.uri));
        return typeof found === 'object' && 'analysis' in found ? full(reportOf(found.analysis), previousResultId) : { kind: 'full', items: [] };
      }
      documents.touch(document);
      const analysis = await session.analyse(document);
      return analysis === undefined ? { kind: 'full', items: [] } : full(reportOf(analysis), previousResultId);
    }),
  );

  /** Reports of files that are not open, until they or what they see change. */
  const reported = new Map<string, Report & { readonly libraries: readonly string[]; readonly day: string; readonly stamp: string | undefined }>();

  const reportOfClosed = (path: string): Report | undefined => {
    const known = reported.get(path);
    // Where the client tells of changes there is no need to look.
    const stamp = watches ? undefined : host.disk?.stamp(path);
    if (known !== undefined && known.day === host.today() && known.stamp === stamp) return known;
    const found = session.judgeFile(path);
    if (typeof found !== 'object' || !('analysis' in found)) return undefined;
    const { items, id } = reportOf(found.analysis);
    const report = { items, id, libraries: found.analysis.installation.libraries, day: host.today(), stamp };
    reported.set(path, report);
    return report;
  };

  connection.languages.diagnostics.onWorkspace(async (params, token, _progress, partial) => {
    const answer = answering('workspace diagnostics', { items: [] as WorkspaceDocumentDiagnosticReport[] }, async () => {
      const previous = new Map(params.previousResultIds.map(({ uri, value }) => [pathOf(uri), { uri, value }]));
      const rest = pace.rester();
      let items: WorkspaceDocumentDiagnosticReport[] = [];
      const send = (report: WorkspaceDocumentDiagnosticReport): void => {
        items.push(report);
        if (partial === undefined || items.length < batch) return;
        partial.report({ items });
        items = [];
      };
      const seen = new Set<string>();
      for (const document of documents.byUse()) {
        await rest();
        if (token.isCancellationRequested) return { items: [] };
        const analysis = await session.analyse(document);
        if (analysis === undefined) continue;
        seen.add(document.path);
        send({ ...full(reportOf(analysis), previous.get(document.path)?.value), uri: document.uri, version: document.version });
      }
      if (!watches) {
        session.recheck();
        await session.findFiles();
      }
      for (const path of session.files()) {
        await rest();
        if (token.isCancellationRequested) return { items: [] };
        if (seen.has(path) || documents.at(path) !== undefined) continue;
        const report = reportOfClosed(path);
        if (report === undefined) continue;
        seen.add(path);
        send({ ...full(report, previous.get(path)?.value), uri: previous.get(path)?.uri ?? session.uriOf(path), version: null });
      }
      // What was reported and is gone: nothing may be left of it.
      for (const [path, { uri }] of previous) if (!seen.has(path)) send({ kind: 'full', uri, version: null, items: [] });
      if (partial === undefined) return { items };
      if (items.length > 0) partial.report({ items });
      return { items: [] };
    });
    return answer(params, token);
  });

  // --- Features.

  connection.onHover(
    about('hover', null, ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
      const workspace = session.workspaceOf(analysis.path);
      const found = hover(analysis, lines.offset(position), (path) => session.textOf(path, workspace));
      return found === undefined ? null : { contents: markup(found.markdown, takes), range: lines.range(found) };
    }),
  );

  // The last list is kept for its documentation; what is asked of an older one has none.
  let offered: { readonly list: number; readonly items: readonly Completion[] } = { list: 0, items: [] };
  connection.onCompletion(
    about('completion', { isIncomplete: false, items: [] as CompletionItem[] }, ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
      const workspace = session.workspaceOf(analysis.path);
      const found = completion(analysis, lines.offset(position), { libraries: session.libraries(workspace.root) });
      const list = offered.list + 1;
      offered = { list, items: found.items };
      // Units end with the key that makes them whole, so their list must be asked for at each key.
      const isIncomplete = found.items.length === 0 || found.items.some((item) => item.kind === 'unit');
      return { isIncomplete, items: toCompletionItems(found, lines, takes, options.suggestCommand, (_item, index) => [list, index]) };
    }),
  );
  connection.onCompletionResolve(
    answering('completion', undefined as unknown as CompletionItem, (item) => {
      const [list, index] = Array.isArray(item.data) ? (item.data as unknown[]) : [];
      const found = list === offered.list && typeof index === 'number' ? offered.items[index] : undefined;
      const documentation = found?.documentation() ?? '';
      return documentation === '' ? item : { ...item, documentation: markup(documentation, takes) };
    }),
  );

  connection.onDefinition(
    about('definition', null as Location[] | LocationLink[] | null, ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
      const found = definition(analysis, lines.offset(position));
      if (found === undefined) return null;
      const around = aroundFor(analysis);
      const places = found.targets.flatMap((target) => {
        const other = around.lines(target.path);
        // A library that cannot be read has no places, but its file can still be opened.
        return other === undefined && target.whole.end > 0 ? [] : [{ uri: session.uriOf(target.path), name: (other ?? new Lines('')).range(target.name), whole: (other ?? new Lines('')).range(target.whole) }];
      });
      if (!takes.locationLinks) return places.map(({ uri, name }) => ({ uri, range: name }));
      return places.map(({ uri, name, whole }) => ({ originSelectionRange: lines.range(found.from), targetUri: uri, targetRange: whole, targetSelectionRange: name }));
    }) as Parameters<typeof connection.onDefinition>[0],
  );

  connection.onReferences(
    about('references', [] as Location[], async ({ document, analysis, lines, version }, params: TextDocumentPositionParams & { readonly context: { readonly includeDeclaration: boolean } }, token) => {
      const found = referent(analysis, lines.offset(params.position));
      if (found === undefined) return [];
      const places: Location[] = [];
      const collect = (other: Analysis): void => {
        for (const reference of referencesTo(other, found.meaning))
          if (!reference.declares || params.context.includeDeclaration) places.push({ uri: session.uriOf(other.path), range: linesFor(other).range(reference) });
      };
      collect(analysis);
      if (!found.shared) return places;
      const rest = pace.rester();
      const workspace = session.workspaceOf(document.path);
      const seen = new Set([document.path]);
      for (const other of documents.byUse()) {
        if (seen.has(other.path) || session.workspaceOf(other.path) !== workspace) continue;
        await rest();
        seen.add(other.path);
        const there = await session.analyse(other);
        if (there !== undefined) collect(there);
      }
      for (const path of new Set([...session.files(), ...workspace.lookedAt()])) {
        if (seen.has(path) || !isInside(path, workspace.root)) continue;
        await rest();
        if (token.isCancellationRequested || document.version !== version) return [];
        const there = session.judgeFile(path);
        if (typeof there === 'object' && 'analysis' in there) collect(there.analysis);
      }
      return places;
    }),
  );

  connection.onDocumentHighlight(
    about('highlight', [], ({ analysis, lines }, { position }: TextDocumentPositionParams) =>
      highlight(analysis, lines.offset(position)).map((reference) => ({ range: lines.range(reference), kind: reference.declares ? (3 as const) : (2 as const) })),
    ),
  );

  connection.onDocumentSymbol(
    about('symbols', [], ({ document, analysis, lines }) => (takes.nestedSymbols ? toDocumentSymbols(symbols(analysis), lines) : toSymbolInformation(symbols(analysis), lines, document.uri))) as Parameters<
      typeof connection.onDocumentSymbol
    >[0],
  );

  /** Texts whose formatting was refused: it is said once, until it works again. */
  const refused = new WeakSet<Document>();
  connection.onDocumentFormatting(
    about('formatting', null, ({ document, analysis, lines }) => {
      const found = formatting(analysis.text);
      if ('edits' in found) {
        refused.delete(document);
        return toEdits(found.edits, lines);
      }
      log(`${document.path}: ${found.refused}`);
      if (!refused.has(document)) void connection.sendNotification('window/showMessage', { type: MessageType.Info, message: found.refused });
      refused.add(document);
      return [];
    }),
  );

  connection.onCodeAction(
    about('code actions', [] as CodeAction[], ({ document, analysis, lines, version }, { range, context }: CodeActionParams) => {
      const wants = (kind: string): boolean => context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(only + '.'));
      const actions: CodeAction[] = [];
      if (wants(CodeActionKind.QuickFix)) {
        const shown = reportOf(analysis).items;
        for (const fix of fixes(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) })) {
          const diagnostic = shown[analysis.findings.indexOf(fix.finding)];
          actions.push({
            title: fix.title,
            kind: CodeActionKind.QuickFix,
            ...(diagnostic === undefined ? {} : { diagnostics: [diagnostic] }),
            ...(fix.safe ? { isPreferred: true } : {}),
            edit: textEdit(document, version, fix.edits, lines),
          });
        }
      }
      // Offered in a list only where something at the caret needs it; asked for by name, always.
      if (context.only !== undefined && wants(fixAllKind)) {
        const all = fixAll(analysis);
        if (all !== undefined) actions.push({ title: `Apply ${all.count === 1 ? 'the safe fix' : `all ${all.count} safe fixes`}`, kind: fixAllKind, edit: textEdit(document, version, all.edits, lines) });
      }
      return actions;
    }),
  );

  connection.languages.inlayHint.on(
    about('inlay values', [] as InlayHint[], ({ document, analysis, lines }, { range }: { readonly textDocument: { readonly uri: string }; readonly range: { readonly start: { line: number; character: number }; readonly end: { line: number; character: number } } }) => {
      if (!settings.inlayValues) return [];
      return inlayValues(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) }).map((value) => ({
        position: lines.position(value.offset),
        label: value.label,
        paddingLeft: true,
        ...(takes.lazyTooltips ? { data: [document.uri, value.id] } : { tooltip: markup(value.tooltip(), takes) }),
      }));
    }),
  );
  connection.languages.inlayHint.resolve(async (hint, token) => {
    const answer = await answering('inlay values', hint, (given: InlayHint) => {
      const [uri, id] = Array.isArray(given.data) ? (given.data as unknown[]) : [];
      const document = typeof uri === 'string' ? documents.get(uri) : undefined;
      if (document === undefined) return given;
      const value = inlayValues(session.analyseNow(document)).find((candidate) => candidate.id === id);
      return value === undefined ? given : { ...given, tooltip: markup(value.tooltip(), takes) };
    })(hint, token);
    return answer;
  });

  // --- Requests of our own.

  connection.onRequest(
    figuresRequest,
    answering('figures', [] as FigureAnswer[], async (params: FiguresParams) => {
      const document = documents.get(params.uri);
      const analysis = document === undefined ? closedAnalysis(params.uri) : await session.analyse(document);
      if (analysis === undefined) return [];
      const lines = linesFor(analysis);
      return pace.timed('figures', () => figuresShown(analysis)).map(({ id, title, value, unit, shown, formula, inputs, source, start }) => ({ id, title, value, unit, shown, formula, inputs, source, line: lines.position(start).line }));
    }),
  );
  const closedAnalysis = (uri: string): Analysis | undefined => {
    const found = session.judgeFile(pathOf(uri));
    return typeof found === 'object' && 'analysis' in found ? found.analysis : undefined;
  };
  connection.onRequest(rulesRequest, answering<unknown, RulesAnswer>('rules', [], () => rulesShown()));

  connection.listen();
}

const fixAllKind = `${CodeActionKind.SourceFixAll}.pintle`;

/** Folders, and files of ours: what a client tells when it deletes or renames them itself. */
const folderFilters = [
  { scheme: 'file', pattern: { glob: '**/*.gate', matches: FileOperationPatternKind.file } },
  { scheme: 'file', pattern: { glob: '**', matches: FileOperationPatternKind.folder } },
];

function takesOf(client: ClientCapabilities): ClientTakes {
  const { textDocument } = client;
  const diagnostic = textDocument?.diagnostic ?? textDocument?.publishDiagnostics;
  return {
    markdown: textDocument?.hover?.contentFormat?.includes('markdown') ?? false,
    snippets: textDocument?.completion?.completionItem?.snippetSupport ?? false,
    related: diagnostic?.relatedInformation ?? false,
    unnecessary: diagnostic?.tagSupport?.valueSet.includes(1) ?? false,
    codeDescription: diagnostic?.codeDescriptionSupport ?? false,
    documentChanges: client.workspace?.workspaceEdit?.documentChanges ?? false,
    nestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport ?? false,
    locationLinks: textDocument?.definition?.linkSupport ?? false,
    lazyTooltips: textDocument?.inlayHint?.resolveSupport?.properties.includes('tooltip') ?? false,
    pull: textDocument?.diagnostic !== undefined,
  };
}

function optionsOf(given: unknown): InitializationOptions {
  if (typeof given !== 'object' || given === null) return {};
  const { pages, inlayValues: values, suggestCommand } = given as Record<string, unknown>;
  return {
    ...(typeof pages === 'string' && pages !== '' ? { pages } : {}),
    ...(typeof values === 'boolean' ? { inlayValues: values } : {}),
    ...(typeof suggestCommand === 'string' && suggestCommand !== '' ? { suggestCommand } : {}),
  };
}

const folderPath = (uri: string): string => pathOf(uri).replace(/\/+$/, '');

function foldersOf(params: InitializeParams): string[] {
  const uris = params.workspaceFolders?.map((folder) => folder.uri) ?? (typeof params.rootUri === 'string' ? [params.rootUri] : []);
  return uris.map(folderPath);
}
