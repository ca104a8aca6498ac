import { type OverviewNode, overview } from '../../editor/index.ts';
import type { Lines } from '../documents.ts';
import { type OverviewAnswer, type OverviewParams, overviewRequest } from '../requests.ts';
import type { Feature } from './feature.ts';

const answerOf = ({ id, kind, label, detail, severity, start, end, children }: OverviewNode, lines: Lines): OverviewAnswer => ({
  id,
  kind,
  label,
  detail,
  ...(severity === undefined ? {} : { severity }),
  range: lines.range({ start, end }),
  children: children.map((child) => answerOf(child, lines)),
});

export const feature: Feature = {
  answer: ({ connection, session, pace, linesFor, answers }) => {
    connection.onRequest(
      overviewRequest,
      answers.answering('overview', [] as OverviewAnswer[], async ({ uri }: OverviewParams) => {
        const analysis = await session.analysisOf(uri);
        if (analysis === undefined) return [];
        const lines = linesFor(analysis);
        return pace.timed('overview', () => overview(analysis).map((node) => answerOf(node, lines)));
      }),
    );
  },
};
