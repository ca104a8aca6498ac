import type { SelectionRange, SelectionRangeParams } from 'vscode-languageserver';
import { selectionAt } from '../../editor/index.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ selectionRangeProvider: true }),
  answer: ({ connection, answers }) => {
    const { about } = answers;
    connection.onSelectionRanges(
      about('selection ranges', [] as SelectionRange[], ({ analysis, lines }, { positions }: SelectionRangeParams) =>
        positions.map((position) => {
          let range: SelectionRange | undefined;
          for (const span of selectionAt(analysis, lines.offset(position)).reverse())
            range = { range: lines.range(span), ...(range === undefined ? {} : { parent: range }) };
          return range ?? { range: { start: position, end: position } };
        }),
      ),
    );
  },
};
