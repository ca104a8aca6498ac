import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver';
import { foldings } from '../../editor/index.ts';
import type { Feature } from './feature.ts';

const kinds = { comment: FoldingRangeKind.Comment, uses: FoldingRangeKind.Imports, block: undefined } as const;
/** Told at most, where the client does not say how many it wants. */
const usualLimit = 5000;

export const feature: Feature = {
  capabilities: () => ({ foldingRangeProvider: true }),
  answer: ({ connection, client, answers }) => {
    const { about } = answers;
    connection.onFoldingRanges(
      about('folding', [] as FoldingRange[], ({ analysis, lines }) => {
        const limit = client.takes.folding.most ?? usualLimit;
        const ranges: FoldingRange[] = [];
        for (const { start, end, kind, keepsLast } of foldings(analysis)) {
          const startLine = lines.position(start).line;
          const endLine = lines.position(end).line - (keepsLast ? 1 : 0);
          const shown = kinds[kind];
          const isKnown = shown !== undefined && (client.takes.folding.kinds?.includes(shown) ?? true);
          if (endLine > startLine && ranges.length < limit) ranges.push({ startLine, endLine, ...(isKnown ? { kind: shown } : {}) });
        }
        return ranges;
      }),
    );
  },
};
