// How a request is answered: cancelled and stale answers are dropped, errors are logged and never the user's.
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Analysis } from '../engine/index.ts';
import type { Steps } from '../engine/inside.ts';
import type { Client } from './client.ts';
import type { Document, Lines } from './documents.ts';
import type { Host } from './host.ts';
import type { Pace } from './pace.ts';
import type { Session } from './session.ts';

/** The text changed while an answer was worked out: the answer is about a text that is gone. */
class Stale extends Error {}

/** An open text as it was when a request about it came. */
export interface At {
  readonly document: Document;
  readonly analysis: Analysis;
  readonly lines: Lines;
  readonly version: number;
}

export type Answer<P, R> = (params: P, token: CancellationToken) => Promise<R | ResponseError<never>>;

export interface Answering {
  /** A request; `empty` is the answer where the work fails. */
  readonly answering: <P, R>(what: string, empty: R, work: (params: P, token: CancellationToken) => Promise<R> | R) => Answer<P, R>;
  /**
   * A request about a file, open or not, that takes long: its answer is worked out in small steps, and given up when nobody waits for it
   * any more or the text is edited.
   */
  readonly inSteps: <P extends { readonly uri: string }, R>(
    what: string,
    empty: R,
    work: (analysis: Analysis, params: P) => Steps<R>,
  ) => Answer<P, R>;
  /** A request to fill in what was offered: where the work fails, it is given back as it came. */
  readonly filling: <T>(
    what: string,
    work: (given: T, token: CancellationToken) => Promise<T | ResponseError<void>> | T | ResponseError<void>,
  ) => Answer<T, T>;
  /** A notification. */
  readonly hearing: <P>(what: string, work: (params: P) => void | Promise<void>) => (params: P) => Promise<void>;
  /** A request about an open text; an edit that comes meanwhile makes its answer worthless. */
  readonly about: <P extends { readonly textDocument: { readonly uri: string } }, R>(
    what: string,
    empty: R,
    work: (at: At, params: P, token: CancellationToken) => Promise<R> | R,
  ) => Answer<P, R>;
}

export function createAnswering(
  host: Host,
  session: Session,
  pace: Pace,
  client: Client,
  linesFor: (analysis: Analysis) => Lines,
): Answering {
  const { documents } = session;
  const dropped = (): ResponseError<never> => new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');

  const answering: Answering['answering'] =
    (what, empty, work) =>
    async (...given) => {
      // A request that came without parameters has only the token.
      const [params, token] = (given.length < 2 ? [undefined, given[0]] : given) as typeof given;
      try {
        // A turn of the queue, in which a cancellation that was sent right behind can arrive.
        await host.tick();
        if (token.isCancellationRequested) return dropped();
        const answer = await work(params, token);
        return token.isCancellationRequested ? dropped() : answer;
      } catch (error) {
        if (error instanceof Stale) return new ResponseError(LSPErrorCodes.ContentModified, 'the text has changed');
        client.complain(what, error);
        return empty;
      }
    };

  return {
    answering,
    inSteps: (what, empty, work) =>
      answering(what, empty, async (params, token) => {
        const analysis = await session.analysisOf(params.uri);
        if (analysis === undefined) return empty;
        const document = documents.get(params.uri);
        const version = document?.version;
        const isStale = (): boolean => document !== undefined && (!documents.isOpen(document) || document.version !== version);
        const isGivenUp = (): boolean => token.isCancellationRequested || isStale();
        const answer = await pace.driven(what, work(analysis, params), isGivenUp);
        if (answer === undefined && isStale()) throw new Stale();
        return answer ?? empty;
      }),
    filling: (what, work) => (given, token) => answering(what, given, work as (one: typeof given) => Promise<typeof given>)(given, token),
    hearing: (what, work) => async (params) => {
      try {
        await work(params);
      } catch (error) {
        client.complain(what, error);
      }
    },
    about: (what, empty, work) => (params, token) => {
      const uri = params?.textDocument?.uri;
      const version = documents.get(uri)?.version;
      return answering<typeof params, typeof empty>(what, empty, async () => {
        const document = documents.get(uri);
        if (document === undefined || version === undefined) return empty;
        documents.touch(document);
        const analysis = await session.analyse(document);
        if (analysis === undefined || token.isCancellationRequested) return empty;
        if (document.version !== version) throw new Stale();
        const answer = await pace.timed(what, () => work({ document, analysis, lines: linesFor(analysis), version }, params, token));
        if (document.version !== version) throw new Stale();
        return answer;
      })(params, token);
    },
  };
}
