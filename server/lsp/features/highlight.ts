import type { TextDocumentPositionParams } from 'vscode-languageserver';
import { highlight } from '../../editor/index.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ documentHighlightProvider: true }),
  answer: ({ connection, answers }) => {
    const { about } = answers;
    connection.onDocumentHighlight(
      about('highlight', [], ({ analysis, lines }, { position }: TextDocumentPositionParams) =>
        highlight(analysis, lines.offset(position)).map((reference) => ({
          range: lines.range(reference),
          kind: reference.declares ? (3 as const) : (2 as const),
        })),
      ),
    );
  },
};
