// The features: each is one answer of the editor room, put into the protocol's shape.
import {
  CodeActionKind,
  MessageType,
  type CodeAction,
  type CodeActionParams,
  type CompletionItem,
  type Connection,
  type InlayHint,
  type InlayHintParams,
  type Location,
  type LocationLink,
  type TextDocumentPositionParams,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import {
  completion,
  definition,
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
} from '../editor/index.ts';
import type { Answering } from './answering.ts';
import type { Client } from './client.ts';
import { markup, toCompletionItems, toDocumentSymbols, toEdits, toSymbolInformation, type Around } from './convert.ts';
import { Lines, type Document } from './documents.ts';
import type { Pace } from './pace.ts';
import type { Reports } from './reports.ts';
import { figuresRequest, rulesRequest, type FigureAnswer, type FiguresParams, type RulesAnswer } from './requests.ts';
import type { Session } from './session.ts';
import { isInside, pathOf } from './uris.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.pintle`;

export interface FeaturesOptions {
  readonly connection: Connection;
  readonly session: Session;
  readonly pace: Pace;
  readonly client: Client;
  readonly answers: Answering;
  readonly reports: Reports;
  readonly linesFor: (analysis: Analysis) => Lines;
  readonly aroundFor: (analysis: Analysis) => Around;
}

export function answerFeatures({ connection, session, pace, client, answers, reports, linesFor, aroundFor }: FeaturesOptions): void {
  const { documents } = session;
  const { answering, about } = answers;

  const textEdit = (document: Document, version: number, edits: readonly Edit[], lines: Lines): WorkspaceEdit =>
    client.takes.documentChanges
      ? { documentChanges: [{ textDocument: { uri: document.uri, version }, edits: toEdits(edits, lines) }] }
      : { changes: { [document.uri]: toEdits(edits, lines) } };

  connection.onHover(
    about('hover', null, ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
      const workspace = session.workspaceOf(analysis.path);
      const found = hover(analysis, lines.offset(position), (path) => session.textOf(path, workspace));
      return found === undefined ? null : { contents: markup(found.markdown, client.takes), range: lines.range(found) };
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
      return { isIncomplete, items: toCompletionItems(found, lines, client.takes, client.options.suggestCommand, (_item, index) => [list, index]) };
    }),
  );
  connection.onCompletionResolve(
    answering('completion', undefined as unknown as CompletionItem, (item) => {
      const [list, index] = Array.isArray(item.data) ? (item.data as unknown[]) : [];
      const found = list === offered.list && typeof index === 'number' ? offered.items[index] : undefined;
      const documentation = found?.documentation() ?? '';
      return documentation === '' ? item : { ...item, documentation: markup(documentation, client.takes) };
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
      if (!client.takes.locationLinks) return places.map(({ uri, name }) => ({ uri, range: name }));
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
        if (typeof there !== 'string') collect(there);
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
    about('symbols', [], ({ document, analysis, lines }) => (client.takes.nestedSymbols ? toDocumentSymbols(symbols(analysis), lines) : toSymbolInformation(symbols(analysis), lines, document.uri))) as Parameters<
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
      client.log(`${document.path}: ${found.refused}`);
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
        const shown = reports.reportOf(analysis).items;
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
    about('inlay values', [] as InlayHint[], ({ document, analysis, lines }, { range }: InlayHintParams) => {
      if (!client.inlayValues) return [];
      return inlayValues(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) }).map((value) => ({
        position: lines.position(value.offset),
        label: value.label,
        paddingLeft: true,
        ...(client.takes.lazyTooltips ? { data: [document.uri, value.id] } : { tooltip: markup(value.tooltip(), client.takes) }),
      }));
    }),
  );
  connection.languages.inlayHint.resolve(async (hint, token) => {
    const answer = await answering('inlay values', hint, (given: InlayHint) => {
      const [uri, id] = Array.isArray(given.data) ? (given.data as unknown[]) : [];
      const document = typeof uri === 'string' ? documents.get(uri) : undefined;
      if (document === undefined) return given;
      const value = inlayValues(session.analyseNow(document)).find((candidate) => candidate.id === id);
      return value === undefined ? given : { ...given, tooltip: markup(value.tooltip(), client.takes) };
    })(hint, token);
    return answer;
  });

  // --- Requests of our own.

  connection.onRequest(
    figuresRequest,
    answering('figures', [] as FigureAnswer[], async (params: FiguresParams) => {
      const document = documents.get(params.uri);
      const analysis = document === undefined ? session.judgeFile(pathOf(params.uri)) : await session.analyse(document);
      if (analysis === undefined || typeof analysis === 'string') return [];
      const lines = linesFor(analysis);
      return pace.timed('figures', () => figuresShown(analysis)).map(({ id, title, value, unit, shown, formula, inputs, source, start }) => ({ id, title, value, unit, shown, formula, inputs, source, line: lines.position(start).line }));
    }),
  );
  connection.onRequest<RulesAnswer, never>(rulesRequest, answering<unknown, RulesAnswer>('rules', [], () => rulesShown()));
}
