import { previewing } from '../../editor/index.ts';
import { drawingToFile } from '../../engine/inside.ts';
import {
  type DrawingFileAnswer,
  type DrawingParams,
  drawingRequest,
  type PreviewAnswer,
  type PreviewParams,
  previewRequest,
} from '../requests.ts';
import type { Feature } from './feature.ts';

const nothing: PreviewAnswer = { title: '', counts: { error: 0, warning: 0, note: 0 }, drawings: [], things: [], style: '' };
const noDrawing: DrawingFileAnswer = { svg: '', width: 0, height: 0 };
const themes: ReadonlySet<unknown> = new Set(['light', 'dark', 'print'] satisfies DrawingParams['theme'][]);

export const feature: Feature = {
  answer: ({ connection, linesFor, answers: { inSteps } }) => {
    connection.onRequest<PreviewAnswer, never>(
      previewRequest,
      inSteps<PreviewParams, PreviewAnswer>('preview', nothing, function* (analysis) {
        const lines = linesFor(analysis);
        const { things, ...rest } = yield* previewing(analysis);
        return { ...rest, things: things.map(({ id, label, start, end }) => ({ id, label, range: lines.range({ start, end }) })) };
      }) as never,
    );
    connection.onRequest<DrawingFileAnswer, never>(
      drawingRequest,
      inSteps<DrawingParams, DrawingFileAnswer>('drawing', noDrawing, (analysis, { id, theme }) =>
        drawingToFile(analysis, id, themes.has(theme) ? theme : 'light'),
      ) as never,
    );
  },
};
