import { figuresShown } from '../../editor/index.ts';
import { figuresRequest, type FigureAnswer, type FiguresParams } from '../requests.ts';
import { pathOf } from '../uris.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  answer: ({ connection, session, pace, linesFor, answers }) => {
    const { documents } = session;
    const { answering } = answers;
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
  },
};
