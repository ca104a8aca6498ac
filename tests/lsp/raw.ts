// A client that sends whatever it is told to, byte by byte, and keeps what comes back: for what no library would send.
import { PassThrough } from 'node:stream';
import { StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { FramedReader, nodeHost, serve } from '../../server/lsp/node.ts';

export interface Answer {
  readonly id?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
  readonly method?: string;
  readonly params?: unknown;
}

export interface Raw {
  readonly heard: Answer[];
  /** Why the server has stopped reading. */
  readonly broken: string[];
  readonly bytes: (bytes: string | Uint8Array) => void;
  readonly send: (message: unknown) => void;
  /** Sends a request and waits for what has its id; with null, for the next answer that has none. */
  readonly ask: (method: string, params?: unknown, id?: string | number) => Promise<Answer>;
  /** Waits for an answer that a condition holds of. */
  readonly next: (holds: (answer: Answer) => boolean) => Promise<Answer>;
  readonly initialize: (params?: object) => Promise<Answer>;
}

export const framed = (body: string): string => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;

export function raw(): Raw {
  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const heard: Answer[] = [];
  const broken: string[] = [];
  serve(new FramedReader(toServer), new StreamMessageWriter(toClient), nodeHost, (why) => void broken.push(why));
  const waiting: (() => void)[] = [];
  new StreamMessageReader(toClient).listen((message) => {
    heard.push(message as Answer);
    for (const wake of waiting.splice(0)) wake();
  });
  const bytes = (given: string | Uint8Array): void => void toServer.write(given);
  const send = (message: unknown): void => bytes(framed(JSON.stringify(message)));
  const taken = new Set<Answer>();
  const next: Raw['next'] = async (holds) => {
    for (;;) {
      const found = heard.find((answer) => !taken.has(answer) && holds(answer));
      if (found !== undefined) {
        taken.add(found);
        return found;
      }
      await new Promise<void>((resolve) => void waiting.push(resolve));
    }
  };
  let count = 0;
  const ask: Raw['ask'] = (method, params, id = `own ${++count}`) => {
    send({ jsonrpc: '2.0', id, method, ...(params === undefined ? {} : { params }) });
    return next((answer) => answer.id === id && answer.method === undefined);
  };
  return {
    heard,
    broken,
    bytes,
    send,
    ask,
    next,
    initialize: async (params = {}) => {
      const answer = await ask('initialize', { processId: null, rootUri: null, capabilities: {}, ...params });
      send({ jsonrpc: '2.0', method: 'initialized', params: {} });
      return answer;
    },
  };
}
