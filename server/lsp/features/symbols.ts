import { symbols } from '../../editor/index.ts';
import { toDocumentSymbols, toSymbolInformation } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ documentSymbolProvider: true }),
  answer: ({ connection, client, answers }) => {
    const { about } = answers;
    connection.onDocumentSymbol(
      about('symbols', [], ({ document, analysis, lines }) =>
        client.takes.symbols.nested
          ? toDocumentSymbols(symbols(analysis), lines, client.takes.symbols.kinds)
          : toSymbolInformation(symbols(analysis), lines, document.uri, client.takes.symbols.kinds),
      ) as Parameters<typeof connection.onDocumentSymbol>[0],
    );
  },
};
