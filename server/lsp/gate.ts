// What stands between the stream and the server: only well-formed messages pass, at times when they are allowed, and each
// request that does not pass is answered with the error that the protocol has for it. Nothing is said before the greeting.
import {
  ErrorCodes,
  type Message,
  type MessageReader,
  MessageType,
  type MessageWriter,
  type NotificationMessage,
  type RequestMessage,
  type ResponseMessage,
} from 'vscode-languageserver';
import { isRecord, shapes } from './shapes.ts';

/** Stands for a message that is not JSON. */
export const notJson = Symbol('not JSON');

/** Before `initialize`, after it, and after `shutdown`. */
type Stage = 'new' | 'running' | 'down';
type Id = string | number;

export interface Gate {
  /** What the server reads from and writes to. */
  readonly reader: MessageReader;
  readonly writer: MessageWriter;
  /** True once the client has said that the server is to end. */
  readonly isDown: () => boolean;
}

/**
 * A gate before a reader and a writer. `broken` is told, once the client has been answered, why nothing more can be read:
 * a sentence.
 */
export function createGate(reader: MessageReader, writer: MessageWriter, broken: (why: string) => void = () => undefined): Gate {
  let stage: Stage = 'new';
  let greeting: Id | undefined;
  /** Requests of the client that are not answered yet, and our own. */
  const open = new Set<Id>();
  const asked = new Set<Id>();
  /** What the server would say before it has answered `initialize`. */
  const held: Message[] = [];

  const fail = async (id: Id | null, code: number, message: string): Promise<void> => {
    const response: ResponseMessage = { jsonrpc: '2.0', id, error: { code, message } };
    // Who does not hear it has gone.
    await writer.write(response).catch(() => undefined);
  };
  const log = (message: string): void => {
    const notification: NotificationMessage = { jsonrpc: '2.0', method: 'window/logMessage', params: { type: MessageType.Error, message } };
    if (stage === 'running') void writer.write(notification).catch(() => undefined);
  };

  const request = (id: unknown, method: string, given: unknown, pass: (message: RequestMessage) => void): void => {
    if (!isId(id)) return void fail(null, ErrorCodes.InvalidRequest, `${method}: an id is a whole number or a text.`);
    if (open.has(id)) return void fail(id, ErrorCodes.InvalidRequest, `${method}: a request with this id is being answered.`);
    if (stage === 'down') return void fail(id, ErrorCodes.InvalidRequest, `${method}: the server was told to shut down.`);
    if (stage === 'new' && method !== 'initialize')
      return void fail(id, ErrorCodes.ServerNotInitialized, `${method}: the server waits for initialize.`);
    if (stage === 'running' && method === 'initialize')
      return void fail(id, ErrorCodes.InvalidRequest, 'initialize: the server has been initialized.');
    const params = structured(given);
    const wrong = params === wrongParams ? 'the parameters are no object' : shapes.requests[method]?.(params, 'params');
    if (wrong !== undefined) return void fail(id, ErrorCodes.InvalidParams, `${method}: ${wrong}.`);
    if (method === 'initialize') [stage, greeting] = ['running', id];
    if (method === 'shutdown') stage = 'down';
    open.add(id);
    pass({
      jsonrpc: '2.0',
      id,
      method,
      ...(params === undefined ? {} : { params: method === 'initialize' ? greeted(params as Fields) : (params as object) }),
    });
  };

  const notification = (method: string, given: unknown, pass: (message: NotificationMessage) => void): void => {
    if (stage !== 'running' && method !== 'exit') return;
    const params = structured(given);
    const wrong = params === wrongParams ? 'the parameters are no object' : shapes.notifications[method]?.(params, 'params');
    if (wrong === undefined) pass({ jsonrpc: '2.0', method, ...(params === undefined ? {} : { params: params as object }) });
    else log(`${method} was left unheeded: ${wrong}.`);
  };

  const receive = (message: unknown, pass: (message: Message) => void): void => {
    if (message === notJson) return void fail(null, ErrorCodes.ParseError, 'The message is not JSON.');
    if (Array.isArray(message)) return void fail(null, ErrorCodes.InvalidRequest, 'The protocol knows no batches of messages.');
    if (!isRecord(message)) return void fail(null, ErrorCodes.InvalidRequest, 'A message is an object.');
    const { jsonrpc, id, method, params } = message;
    if (method === undefined && isId(id) && asked.has(id)) {
      asked.delete(id);
      // An answer without anything is nothing.
      pass(
        ('error' in message && message['error'] !== null ? message : { result: null, ...message, error: undefined }) as unknown as Message,
      );
    } else if (method === undefined && ('result' in message || 'error' in message)) return;
    else if (jsonrpc !== '2.0' || typeof method !== 'string')
      void fail(isId(id) ? id : null, ErrorCodes.InvalidRequest, jsonrpc === '2.0' ? 'A method is a text.' : 'jsonrpc is not “2.0”.');
    else if ('id' in message) request(id, method, params, pass);
    else notification(method, params, pass);
  };

  return {
    reader: {
      onError: reader.onError,
      onClose: reader.onClose,
      onPartialMessage: reader.onPartialMessage,
      listen: (callback) => {
        reader.onError(({ message }) => void fail(null, ErrorCodes.ParseError, message).then(() => broken(message)));
        return reader.listen((message) => receive(message, callback));
      },
      dispose: () => reader.dispose(),
    },
    writer: {
      onError: writer.onError,
      onClose: writer.onClose,
      write: async (message) => {
        const { id, method, error } = message as Partial<RequestMessage & ResponseMessage>;
        if (method === undefined && isId(id)) {
          open.delete(id);
          if (id === greeting && error !== undefined) stage = 'new';
          const written = writer.write(message);
          if (id !== greeting) return written;
          greeting = undefined;
          for (const one of held.splice(0)) void writer.write(one).catch(() => undefined);
          return written;
        }
        if (stage === 'new' || greeting !== undefined) return void held.push(message);
        if (isId(id)) asked.add(id);
        return writer.write(message);
      },
      end: () => writer.end(),
      dispose: () => writer.dispose(),
    },
    isDown: () => stage === 'down',
  };
}

type Fields = Readonly<Record<string, unknown>>;

/** A number that is not whole, or too large to come back as it was, names nothing. */
const isId = (id: unknown): id is Id => typeof id === 'string' || Number.isSafeInteger(id);

const wrongParams = Symbol('wrong parameters');

/** Parameters by name; undefined for none. A list of one, as some write what has no names, is that one. */
function structured(params: unknown): unknown {
  if (params === undefined || params === null) return undefined;
  if (Array.isArray(params)) return params.length > 1 ? wrongParams : structured(params[0]);
  return isRecord(params) ? params : wrongParams;
}

/** What the library reads of a greeting, made safe for it: it looks into capabilities, and watches the process. */
function greeted(params: Fields): Fields {
  const { processId, capabilities, trace, workDoneToken: _, ...rest } = params;
  return {
    ...rest,
    processId: Number.isSafeInteger(processId) && (processId as number) > 0 ? processId : null,
    capabilities: isRecord(capabilities) ? capabilities : {},
    ...(typeof trace === 'string' ? { trace } : {}),
  };
}
