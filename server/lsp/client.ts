// What is known of the client: what it can take, what it wants, and how to tell it something.
import { type Connection, ErrorCodes, ResponseError } from 'vscode-languageserver';
import type { ReadResult } from '../engine/index.ts';
import { type InitializationOptions, type ReadAnswer, type ReadParams, readRequest } from './requests.ts';
import { type ClientTakes, takesOf } from './takes.ts';

/** Longest wait for a file of the client's, in milliseconds. */
const longestRead = 10_000;
/** Quiet time before the client is told to ask again, in milliseconds. */
const refreshAfter = 50;

const refreshMethods = {
  diagnostics: 'workspace/diagnostic/refresh',
  inlays: 'workspace/inlayHint/refresh',
  lenses: 'workspace/codeLens/refresh',
  tokens: 'workspace/semanticTokens/refresh',
} as const;
/** What a client can be told to ask for again. */
export type Refreshed = keyof typeof refreshMethods;

/** What went wrong, in a line: where in the program it did is nothing for the log. */
export const plainly = (error: unknown): string => (error instanceof Error ? error.message : String(error)).replace(/\s*[\r\n]+\s*/g, ' ');

/** One for each connection; filled in when the client introduces itself. */
export interface Client {
  takes: ClientTakes;
  options: InitializationOptions;
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
  const complain = (what: string, error: unknown): void => tell('error', `${what}: ${plainly(error)}`);

  const readFile = async (uri: string): Promise<ReadResult> => {
    if (client.options.readsFiles !== true) return 'missing';
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
    const { pull, refreshes } = client.takes;
    for (const what of wanted)
      if (refreshes[what] && (what !== 'diagnostics' || pull))
        connection.sendRequest(refreshMethods[what]).catch((error: unknown) => complain('refresh', error));
    wanted.clear();
  };

  const client: Client = {
    takes: takesOf({}),
    options: {},
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

/** What the client passed at the start; what does not fit is left out. */
export function optionsOf(given: unknown): InitializationOptions {
  if (typeof given !== 'object' || given === null) return {};
  const { pages, settings, suggestCommand, previewCommand, explainCommand, lensCommand, readsFiles, ownTokenTypes } = given as Record<
    string,
    unknown
  >;
  return {
    ...(typeof pages === 'string' && pages !== '' ? { pages } : {}),
    ...(typeof settings === 'object' && settings !== null ? { settings } : {}),
    ...(typeof suggestCommand === 'string' && suggestCommand !== '' ? { suggestCommand } : {}),
    ...(typeof previewCommand === 'string' && previewCommand !== '' ? { previewCommand } : {}),
    ...(typeof lensCommand === 'string' ? { lensCommand } : {}),
    ...(readsFiles === true ? { readsFiles } : {}),
    ...(ownTokenTypes === true ? { ownTokenTypes } : {}),
    ...(typeof explainCommand === 'string' && explainCommand !== '' ? { explainCommand } : {}),
  };
}
