// What is known of the client: what it can take, what it wants, and how to tell it something.
import { type ClientCapabilities, type Connection, ErrorCodes, ResponseError } from 'vscode-languageserver';
import type { ReadResult } from '../engine/index.ts';
import type { ClientTakes } from './convert.ts';
import { type InitializationOptions, type ReadAnswer, type ReadParams, readRequest } from './requests.ts';
import { normally, type Settings } from './settings.ts';

/** Longest wait for a file of the client's, in milliseconds. */
const longestRead = 10_000;
/** Quiet time before the client is told to ask again, in milliseconds. */
const refreshAfter = 50;

/** What a client can be told to ask for again. */
export type Refreshed = 'diagnostics' | 'inlays' | 'lenses' | 'tokens';

/** One for each connection; filled in when the client introduces itself. */
export interface Client {
  capabilities: ClientCapabilities;
  takes: ClientTakes;
  options: InitializationOptions;
  settings: Settings;
  /** It tells of changes of files. */
  watches: boolean;
  /** It has said goodbye. */
  isDown: boolean;
  readonly log: (line: string) => void;
  readonly complain: (what: string, error: unknown) => void;
  /** Asks for the text of a file that only the client can read. */
  readonly readFile: (uri: string) => Promise<ReadResult>;
  /** Tells it, after a while and once for many reasons, to ask again. */
  readonly refresh: (...what: Refreshed[]) => void;
  readonly stop: () => void;
}

export function createClient(connection: Connection): Client {
  const tell = (how: 'log' | 'error', line: string): void => {
    try {
      connection.console[how](line);
    } catch {
      // The client is gone; there is nobody to tell.
    }
  };
  const complain = (what: string, error: unknown): void =>
    tell('error', `${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);

  const readFile = async (uri: string): Promise<ReadResult> => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<'late'>((resolve) => {
      timer = setTimeout(() => resolve('late'), longestRead);
    });
    try {
      const answer = await Promise.race([connection.sendRequest<ReadAnswer>(readRequest, { uri } satisfies ReadParams), late]);
      if (answer === 'late') return 'unreadable';
      return 'text' in answer && typeof answer.text === 'string'
        ? { text: answer.text.charCodeAt(0) === 0xfeff ? answer.text.slice(1) : answer.text }
        : 'missing';
    } catch (error) {
      if (error instanceof ResponseError && error.code === ErrorCodes.MethodNotFound) return 'missing';
      complain(`reading ${uri}`, error);
      return 'unreadable';
    } finally {
      clearTimeout(timer);
    }
  };

  const wanted = new Set<Refreshed>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const refreshNow = (): void => {
    timer = undefined;
    const { workspace } = client.capabilities;
    const fail = (error: unknown): void => complain('refresh', error);
    if (wanted.has('diagnostics') && client.takes.pull && workspace?.diagnostics?.refreshSupport === true)
      connection.languages.diagnostics.refresh().catch(fail);
    if (wanted.has('inlays') && workspace?.inlayHint?.refreshSupport === true) connection.languages.inlayHint.refresh().catch(fail);
    if (wanted.has('lenses') && workspace?.codeLens?.refreshSupport === true)
      connection.sendRequest('workspace/codeLens/refresh').catch(fail);
    if (wanted.has('tokens') && workspace?.semanticTokens?.refreshSupport === true) connection.languages.semanticTokens.refresh();
    wanted.clear();
  };

  const client: Client = {
    capabilities: {},
    takes: takesOf({}),
    options: {},
    settings: normally,
    watches: false,
    isDown: false,
    log: (line) => tell('log', line),
    complain,
    readFile,
    refresh: (...what) => {
      for (const one of what) wanted.add(one);
      if (!client.isDown) timer ??= setTimeout(refreshNow, refreshAfter);
    },
    stop: () => {
      client.isDown = true;
      clearTimeout(timer);
    },
  };
  return client;
}

/** What of the protocol a client understands; what it does not say, it does not understand. */
export function takesOf({ textDocument, workspace }: ClientCapabilities): ClientTakes {
  const diagnostic = textDocument?.diagnostic ?? textDocument?.publishDiagnostics;
  return {
    markdown: textDocument?.hover?.contentFormat?.includes('markdown') ?? false,
    snippets: textDocument?.completion?.completionItem?.snippetSupport ?? false,
    insertReplace: textDocument?.completion?.completionItem?.insertReplaceSupport ?? false,
    related: diagnostic?.relatedInformation ?? false,
    unnecessary: diagnostic?.tagSupport?.valueSet.includes(1) ?? false,
    codeDescription: diagnostic?.codeDescriptionSupport ?? false,
    documentChanges: workspace?.workspaceEdit?.documentChanges ?? false,
    nestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport ?? false,
    locationLinks: textDocument?.definition?.linkSupport ?? false,
    lazyTooltips: textDocument?.inlayHint?.resolveSupport?.properties.includes('tooltip') ?? false,
    pull: textDocument?.diagnostic !== undefined,
  };
}

/** What the client passed at the start; what does not fit is left out. */
export function optionsOf(given: unknown): InitializationOptions {
  if (typeof given !== 'object' || given === null) return {};
  const { pages, settings, suggestCommand, previewCommand } = given as Record<string, unknown>;
  return {
    ...(typeof pages === 'string' && pages !== '' ? { pages } : {}),
    ...(typeof settings === 'object' && settings !== null ? { settings } : {}),
    ...(typeof suggestCommand === 'string' && suggestCommand !== '' ? { suggestCommand } : {}),
    ...(typeof previewCommand === 'string' && previewCommand !== '' ? { previewCommand } : {}),
  };
}
