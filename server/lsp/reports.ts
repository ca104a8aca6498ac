// Diagnostics: pushed where the client cannot ask for them, given where it can. Never both.
import type { Connection, Diagnostic, DocumentDiagnosticReport, WorkspaceDocumentDiagnosticReport } from 'vscode-languageserver';
import { diagnostics } from '../editor/index.ts';
import type { Analysis } from '../engine/index.ts';
import type { Answering } from './answering.ts';
import type { Client } from './client.ts';
import { type Around, contentName, toDiagnostic } from './convert.ts';
import type { Document, Lines } from './documents.ts';
import type { Host } from './host.ts';
import type { Pace } from './pace.ts';
import type { Session } from './session.ts';
import { isInside, pathOf } from './uris.ts';

/** Quiet time before the rules that take long are run on a large file, in milliseconds. */
const restBefore = 200;
/** Reports of a workspace sent at a time. */
const batch = 50;

export interface Report {
  readonly items: Diagnostic[];
  /** Equal for equal items, on every run and machine: a client may keep it over a restart. */
  readonly id: string;
}

export interface Reports {
  readonly reportOf: (analysis: Analysis) => Report;
  /** Pushes the diagnostics of texts when the edits rest; nothing where the client asks for them. */
  readonly publishLater: (documents: Iterable<Document>) => void;
  readonly clear: (document: Document) => Promise<void>;
  /** A file, or all of them, is not what it was when it was reported. */
  readonly forget: (path?: string) => void;
}

export interface ReportsOptions {
  readonly connection: Connection;
  readonly host: Host;
  readonly session: Session;
  readonly pace: Pace;
  readonly client: Client;
  readonly answers: Answering;
  readonly linesFor: (analysis: Analysis) => Lines;
  readonly aroundFor: (analysis: Analysis) => Around;
}

export function createReports({ connection, host, session, pace, client, answers, linesFor, aroundFor }: ReportsOptions): Reports {
  const { documents } = session;
  const { answering } = answers;

  const reports = new WeakMap<Analysis, Report>();
  const reportOf = (analysis: Analysis): Report => {
    const known = reports.get(analysis);
    if (known !== undefined) return known;
    const report = pace.timed('diagnostics', () => {
      const lines = linesFor(analysis);
      const around = aroundFor(analysis);
      const { takes } = client;
      const items = diagnostics(analysis).map((diagnostic) =>
        toDiagnostic(diagnostic, lines, around, takes.pull ? takes.pulled : takes.pushed),
      );
      return { items, id: takes.pull ? contentName(JSON.stringify(items)) : '' };
    });
    reports.set(analysis, report);
    return report;
  };

  // --- Pushed.

  const unpublished = new Set<Document>();
  const published = new WeakMap<Document, { readonly analysis: Analysis; readonly version: number }>();
  let isPublishing = false;
  const fail = (error: unknown): void => client.complain('diagnostics', error);

  const publishLater = (given: Iterable<Document>): void => {
    if (client.takes.pull) return;
    for (const document of given) unpublished.add(document);
    if (isPublishing || unpublished.size === 0) return;
    isPublishing = true;
    void publishAll()
      .catch(fail)
      .finally(() => {
        isPublishing = false;
        publishLater([]);
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
      void publish(next).catch(fail);
    }
  };

  const publish = async (document: Document): Promise<void> => {
    const { version } = document;
    const analysis = await session.analyse(document);
    if (analysis === undefined || document.version !== version || client.isDown || !documents.isOpen(document)) return;
    const last = published.get(document);
    if (last !== undefined && last.analysis === analysis && last.version === version) return;
    published.set(document, { analysis, version });
    await connection.sendDiagnostics({
      uri: document.uri,
      ...(client.takes.pushed.version ? { version } : {}),
      diagnostics: reportOf(analysis).items,
    });
    if (analysis.phase !== 'whole') completeLater(document);
  };

  // --- What takes long, when the keys rest.

  const incomplete = new Set<Document>();
  let restTimer: ReturnType<typeof setTimeout> | undefined;

  const completeLater = (document: Document): void => {
    incomplete.add(document);
    clearTimeout(restTimer);
    restTimer = setTimeout(() => void complete().catch(fail), restBefore);
  };

  const complete = async (): Promise<void> => {
    const documents = [...incomplete];
    incomplete.clear();
    for (const document of documents) {
      const { version } = document;
      const analysis = await session.analyse(document, 'whole');
      if (analysis === undefined || document.version !== version || client.isDown) continue;
      client.refresh('lenses');
      if (client.takes.pull) client.refresh('diagnostics');
      else publishLater([document]);
    }
  };

  // --- Asked for.

  const nothing = (): DocumentDiagnosticReport => ({ kind: 'full', items: [] });
  const full = (report: Report, previous: string | undefined): DocumentDiagnosticReport =>
    report.id === previous ? { kind: 'unchanged', resultId: report.id } : { kind: 'full', resultId: report.id, items: report.items };

  connection.languages.diagnostics.on(
    answering('diagnostics', nothing(), async ({ textDocument, previousResultId }, token) => {
      await pace.settled();
      if (token.isCancellationRequested) return nothing();
      const document = documents.get(textDocument.uri);
      if (document === undefined) {
        const analysis = await session.judgeFile(pathOf(textDocument.uri));
        return typeof analysis === 'string' ? nothing() : full(reportOf(analysis), previousResultId);
      }
      documents.touch(document);
      // A client that cannot be told to ask again gets everything at once.
      const analysis = await session.analyse(document, client.takes.refreshes.diagnostics ? 'quick' : 'whole');
      if (analysis === undefined) return nothing();
      if (analysis.phase !== 'whole') completeLater(document);
      return full(reportOf(analysis), previousResultId);
    }),
  );

  /** Reports of files that are not open, until they or what they see change. */
  const ofClosed = new Map<
    string,
    Report & { readonly libraries: readonly string[]; readonly day: string; readonly stamp: string | undefined }
  >();

  const reportOfClosed = async (path: string): Promise<Report | undefined> => {
    const known = ofClosed.get(path);
    // Where the client tells of changes there is no need to look.
    const stamp = client.watches ? undefined : host.disk?.stamp(path);
    if (known !== undefined && known.day === host.today() && known.stamp === stamp) return known;
    const before = forgotten;
    const analysis = await session.judgeFile(path);
    if (typeof analysis === 'string') return undefined;
    const report = { ...reportOf(analysis), libraries: analysis.installation.libraries, day: host.today(), stamp };
    // What changed while it was worked out is not in it: it may be told, for the change will be told too, but not kept.
    if (forgotten === before) ofClosed.set(path, report);
    return report;
  };

  connection.languages.diagnostics.onWorkspace((params, token, _progress, partial) =>
    answering('workspace diagnostics', { items: [] as WorkspaceDocumentDiagnosticReport[] }, async () => {
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
        const analysis = await session.analyse(document, 'whole');
        if (analysis === undefined) continue;
        seen.add(document.path);
        send({ ...full(reportOf(analysis), previous.get(document.path)?.value), uri: document.uri, version: document.version });
      }
      if (!client.watches) {
        for (const path of session.recheck()) forget(path);
        await session.findFiles();
      }
      for (const path of session.files()) {
        await rest();
        if (token.isCancellationRequested) return { items: [] };
        if (seen.has(path) || documents.at(path) !== undefined) continue;
        const report = await reportOfClosed(path);
        if (report === undefined) continue;
        seen.add(path);
        send({ ...full(report, previous.get(path)?.value), uri: previous.get(path)?.uri ?? session.uriOf(path), version: null });
      }
      // What was reported and is gone: nothing may be left of it.
      for (const [path, { uri }] of previous) if (!seen.has(path)) send({ kind: 'full', uri, version: null, items: [] });
      if (partial === undefined) return { items };
      if (items.length > 0) partial.report({ items });
      return { items: [] };
    })(params, token),
  );

  let forgotten = 0;
  const forget = (path?: string): void => {
    forgotten++;
    if (path === undefined) ofClosed.clear();
    else
      for (const [other, report] of ofClosed)
        if (isInside(other, path) || report.libraries.some((library) => isInside(library, path))) ofClosed.delete(other);
  };

  return {
    reportOf,
    publishLater,
    clear: async (document) => {
      unpublished.delete(document);
      incomplete.delete(document);
      forget(document.path);
      if (!client.takes.pull) await connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    },
    forget,
  };
}
