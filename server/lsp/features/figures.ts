import { figuresShown } from '../../engine/index.ts';
import { type FigureAnswer, type FiguresParams, figuresRequest } from '../requests.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  answer: ({ connection, session, pace, linesFor, answers }) => {
    const { answering } = answers;
    connection.onRequest(
      figuresRequest,
      answering('figures', [] as FigureAnswer[], async (params: FiguresParams) => {
        const analysis = await session.analysisOf(params.uri);
        if (analysis === undefined) return [];
        const lines = linesFor(analysis);
        return pace
          .timed('figures', () => figuresShown(analysis))
          .map(({ id, title, value, unit, shown, formula, inputs, source, start }) => ({
            id,
            title,
            value,
            unit,
            shown,
            formula,
            inputs,
            source,
            line: lines.position(start).line,
          }));
      }),
    );
  },
};
