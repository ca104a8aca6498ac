// A client for the tests: it speaks the protocol over streams with a server in the same process, and keeps what it is told.
import { PassThrough } from 'node:stream';
import {
  createProtocolConnection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type InlayHint,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { FramedReader, type Host, nodeHost, serve } from '../../server/lsp/node.ts';
import { within } from '../kit/marker.ts';

export interface ClientOptions {
  readonly pull?: boolean;
  /** False: it cannot be told to ask for diagnostics again. */
  readonly refresh?: boolean;
  /** URIs of the workspace folders. */
  readonly folders?: readonly string[];
  readonly host?: Partial<Host>;
  readonly options?: Readonly<Record<string, unknown>>;
  readonly watch?: boolean;
  /** Answers `pintle/read`. */
  readonly read?: (uri: string) => unknown;
  readonly settings?: () => unknown;
  /** Over what the client of most tests can take, at any depth. */
  readonly capabilities?: Readonly<Record<string, unknown>>;
  /** In the place of all that. */
  readonly exactly?: unknown;
  /** Told of each message that goes to or comes from the server. */
  readonly tap?: (from: 'client' | 'server', message: Readonly<Record<string, unknown>>) => void;
}

export interface Client {
  readonly connection: ProtocolConnection;
  readonly capabilities: Record<string, unknown>;
  /** What was pushed last for each file, and how often. */
  readonly pushed: Map<string, { readonly diagnostics: readonly Diagnostic[]; readonly version: number | undefined }>;
  readonly pushes: string[];
  readonly refreshes: { diagnostics: number; inlays: number };
  readonly registered: string[];
  readonly logged: string[];
  readonly shown: string[];
  readonly analyses: string[];
  readonly open: (uri: string, text: string) => Promise<void>;
  /** Makes edits one after another without waiting, as keys come; each is a position in the text as it then is. */
  readonly edit: (uri: string, ...edits: { readonly start: number; readonly end: number; readonly text: string }[]) => Promise<void>;
  readonly text: (uri: string) => string;
  readonly close: (uri: string) => Promise<void>;
  readonly request: <R>(method: string, params: unknown) => Promise<R>;
  readonly pullOf: (uri: string, previous?: string) => Promise<DocumentDiagnosticReport>;
  readonly inlays: (uri: string) => Promise<InlayHint[]>;
  /** Waits until a condition holds; what is still wrong after a minute, on a machine however busy, is what the test then says. */
  readonly until: (holds: () => boolean | Promise<boolean>) => Promise<void>;
  readonly at: (
    uri: string,
    marked: string,
  ) => { readonly textDocument: { uri: string }; readonly position: { line: number; character: number } };
  readonly end: () => Promise<void>;
}

/** What the client of most tests can take. */
export function usual(given: ClientOptions = {}): object {
  const diagnostics = { relatedInformation: true, codeDescriptionSupport: true, tagSupport: { valueSet: [1, 2] } };
  return {
    textDocument: {
      ...(given.pull === false ? {} : { diagnostic: { dynamicRegistration: true, ...diagnostics } }),
      publishDiagnostics: { ...diagnostics, versionSupport: true },
      hover: { contentFormat: ['markdown', 'plaintext'] },
      completion: { completionItem: { snippetSupport: true, preselectSupport: true, documentationFormat: ['markdown'] } },
      signatureHelp: { signatureInformation: { documentationFormat: ['markdown'], activeParameterSupport: true } },
      definition: { linkSupport: true },
      codeLens: { resolveSupport: { properties: ['command'] } },
      documentLink: { tooltipSupport: true },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      codeAction: {
        codeActionLiteralSupport: { codeActionKind: { valueSet: ['', 'quickfix', 'refactor', 'source'] } },
        isPreferredSupport: true,
        dataSupport: true,
      },
      semanticTokens: { requests: { range: true, full: { delta: true } }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] },
      inlayHint: { resolveSupport: { properties: ['tooltip'] } },
    },
    workspace: {
      workspaceFolders: true,
      configuration: given.settings !== undefined,
      didChangeWatchedFiles: { dynamicRegistration: given.watch !== false },
      diagnostics: { refreshSupport: given.refresh !== false },
      inlayHint: { refreshSupport: true },
      fileOperations: { willRename: true, didRename: true, didDelete: true },
      workspaceEdit: { documentChanges: true },
    },
  };
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Some fields, and others that stand over them, at any depth. */
function withMore(one: unknown, other: unknown): unknown {
  if (other === undefined) return one;
  if (!isFields(one) || !isFields(other)) return other;
  return Object.fromEntries([...Object.keys(one), ...Object.keys(other)].map((name) => [name, withMore(one[name], other[name])]));
}

export async function connect(given: ClientOptions = {}): Promise<Client> {
  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const analyses: string[] = [];
  const host: Host = {
    ...nodeHost,
    today: () => '2026-11-20',
    ...given.host,
    observe: (event, detail) => void (event === 'analysis' && analyses.push(detail)),
  };
  serve(new FramedReader(toServer), new StreamMessageWriter(toClient), host);
  const reader = new StreamMessageReader(toClient);
  const writer = new StreamMessageWriter(toServer);
  const { tap } = given;
  if (tap !== undefined) {
    const [listen, write] = [reader.listen.bind(reader), writer.write.bind(writer)];
    reader.listen = (callback) => listen((message) => (tap('server', { ...message }), callback(message)));
    writer.write = (message) => (tap('client', { ...message }), write(message));
  }
  const connection = createProtocolConnection(reader, writer);

  const pushed: Client['pushed'] = new Map();
  const pushes: string[] = [];
  const refreshes = { diagnostics: 0, inlays: 0 };
  const registered: string[] = [];
  const logged: string[] = [];
  const shown: string[] = [];
  connection.onNotification('textDocument/publishDiagnostics', (params: { uri: string; version?: number; diagnostics: Diagnostic[] }) => {
    pushed.set(params.uri, { diagnostics: params.diagnostics, version: params.version });
    pushes.push(params.uri);
  });
  connection.onNotification('window/logMessage', (params: { message: string }) => void logged.push(params.message));
  connection.onNotification('window/showMessage', (params: { message: string }) => void shown.push(params.message));
  connection.onRequest('workspace/diagnostic/refresh', () => void refreshes.diagnostics++);
  connection.onRequest('workspace/inlayHint/refresh', () => void refreshes.inlays++);
  connection.onRequest(
    'client/registerCapability',
    (params: { registrations: { method: string }[] }) => void registered.push(...params.registrations.map((one) => one.method)),
  );
  connection.onRequest('workspace/configuration', (params: { items: unknown[] }) => params.items.map(() => given.settings?.() ?? null));
  if (given.read !== undefined) connection.onRequest('pintle/read', ({ uri }: { uri: string }) => given.read?.(uri));
  connection.listen();

  const initialized = await connection.sendRequest<{ capabilities: Record<string, unknown> }>('initialize', {
    processId: null,
    rootUri: null,
    workspaceFolders: (given.folders ?? []).map((uri) => ({ uri, name: uri })),
    initializationOptions: { readsFiles: given.read !== undefined, lensCommand: '', ownTokenTypes: true, ...given.options },
    capabilities: 'exactly' in given ? given.exactly : withMore(usual(given), given.capabilities),
  });
  await connection.sendNotification('initialized', {});

  const texts = new Map<string, { text: string; version: number }>();
  const until = async (holds: () => boolean | Promise<boolean>): Promise<void> => {
    for (let i = 0; i < 6000 && !(await holds()); i++) await new Promise((resolve) => setTimeout(resolve, 10));
  };
  const request = <R>(method: string, params: unknown): Promise<R> => connection.sendRequest<R>(method, params);
  const textOf = (uri: string): string => texts.get(uri)?.text ?? '';
  return {
    connection,
    capabilities: initialized.capabilities,
    pushed,
    pushes,
    refreshes,
    registered,
    logged,
    shown,
    analyses,
    until,
    request,
    text: textOf,
    open: async (uri, text) => {
      texts.set(uri, { text, version: 1 });
      await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'pintle', version: 1, text } });
    },
    edit: async (uri, ...edits) => {
      const sent = edits.map((edit) => {
        const file = texts.get(uri) as { text: string; version: number };
        // A fresh document for each edit: the library's own way of finding positions, and none of ours.
        const document = TextDocument.create(uri, 'pintle', 0, file.text);
        const range = { start: document.positionAt(edit.start), end: document.positionAt(edit.end) };
        file.text = TextDocument.applyEdits(document, [{ range, newText: edit.text }]);
        file.version++;
        return connection.sendNotification('textDocument/didChange', {
          textDocument: { uri, version: file.version },
          contentChanges: [{ range, text: edit.text }],
        });
      });
      await Promise.all(sent);
    },
    close: async (uri) => {
      texts.delete(uri);
      await connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    },
    pullOf: (uri, previous) =>
      request('textDocument/diagnostic', { textDocument: { uri }, ...(previous === undefined ? {} : { previousResultId: previous }) }),
    inlays: (uri) =>
      request('textDocument/inlayHint', {
        textDocument: { uri },
        range: { start: { line: 0, character: 0 }, end: { line: 1_000_000, character: 0 } },
      }),
    at: (uri, marked) => {
      const text = textOf(uri);
      return { textDocument: { uri }, position: TextDocument.create(uri, 'pintle', 0, text).positionAt(within(text, marked).offset) };
    },
    end: async () => {
      await request('shutdown', null);
      connection.end();
      connection.dispose();
    },
  };
}

export const itemsOf = (report: DocumentDiagnosticReport): readonly Diagnostic[] => ('items' in report ? report.items : []);
