import { preview } from '../../editor/index.ts';
import { drawingFile } from '../../engine/index.ts';
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
  answer: ({ connection, session, pace, linesFor, answers }) => {
    const { answering } = answers;
    connection.onRequest<PreviewAnswer, never>(
      previewRequest,
      answering<PreviewParams, PreviewAnswer>('preview', nothing, async ({ uri }) => {
        const analysis = await session.analysisOf(uri);
        if (analysis === undefined) return nothing;
        const lines = linesFor(analysis);
        const { things, ...rest } = pace.timed('preview', () => preview(analysis));
        return { ...rest, things: things.map(({ id, label, start, end }) => ({ id, label, range: lines.range({ start, end }) })) };
      }) as never,
    );
    connection.onRequest<DrawingFileAnswer, never>(
      drawingRequest,
      answering<DrawingParams, DrawingFileAnswer>('drawing', noDrawing, async ({ uri, id, theme }) => {
        const analysis = await session.analysisOf(uri);
        return analysis === undefined
          ? noDrawing
          : pace.timed('drawing', () => drawingFile(analysis, id, themes.has(theme) ? theme : 'light'));
      }) as never,
    );
  },
};
