import { showingFigures } from '../../engine/inside.ts';
import { type FigureAnswer, type FiguresParams, figuresRequest } from '../requests.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  answer: ({ connection, linesFor, answers }) => {
    connection.onRequest(
      figuresRequest,
      answers.inSteps('figures', [] as FigureAnswer[], function* (analysis, _: FiguresParams) {
        const lines = linesFor(analysis);
        return (yield* showingFigures(analysis)).map(
          ({ id, title, value, unit, shown, formula, inputs, source, start }): FigureAnswer => ({
            id,
            title,
            value,
            unit,
            shown,
            formula,
            inputs,
            source,
            line: lines.position(start).line,
          }),
        );
      }),
    );
  },
};
