import { mayPromise, promises } from '../../editor/index.ts';
import { type FilePromises, type PromisesAnswer, type PromisesParams, promisesRequest } from '../requests.ts';
import { pathOf } from '../uris.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  answer: ({ connection, session, pace, linesFor, answers }) => {
    connection.onRequest(
      promisesRequest,
      answers.answering('promises', [] as PromisesAnswer, async ({ uris }: PromisesParams, token) => {
        const rest = pace.rester();
        const found: FilePromises[] = [];
        const { documents } = session;
        const paths =
          uris === undefined ? new Set([...documents.byUse().map(({ path }) => path), ...session.files()]) : new Set(uris.map(pathOf));
        for (const path of paths) {
          await rest();
          if (token.isCancellationRequested) return [];
          const document = documents.at(path);
          const read = session.read(path);
          if (typeof read === 'string' || !mayPromise(read.text)) continue;
          const analysis = document === undefined ? await session.judgeFile(path) : await session.analyse(document, 'whole');
          if (analysis === undefined || typeof analysis === 'string') continue;
          const lines = linesFor(analysis);
          const list = promises(analysis).map(({ id, label, start, end, kept, message }) => ({
            id,
            label,
            range: lines.range({ start, end }),
            kept,
            message,
          }));
          if (list.length > 0) found.push({ uri: session.uriOf(path), promises: list });
        }
        return found.sort((a, b) => (a.uri < b.uri ? -1 : 1));
      }),
    );
  },
};
