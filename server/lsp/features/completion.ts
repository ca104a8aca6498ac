import type { CompletionItem, TextDocumentPositionParams } from 'vscode-languageserver';
import { type Completion, completion } from '../../editor/index.ts';
import { documentation, toCompletionItems } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ completionProvider: { triggerCharacters: [' ', ':', '"', '/'], resolveProvider: true } }),
  answer: ({ connection, session, client, answers }) => {
    const { about, filling } = answers;
    // The last list is kept for its documentation; what is asked of an older one has none.
    let offered: { readonly list: number; readonly items: readonly Completion[] } = { list: 0, items: [] };
    connection.onCompletion(
      about(
        'completion',
        { isIncomplete: false, items: [] as CompletionItem[] },
        ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
          const found = completion(analysis, lines.offset(position), {
            // Only lines that name a file need the list.
            get libraries() {
              return session.libraries(session.rootOf(analysis.path));
            },
            today: session.today(),
          });
          const list = offered.list + 1;
          offered = { list, items: found.items };
          // Units end with the key that makes them whole, so their list must be asked for at each key.
          const isIncomplete = found.items.length === 0 || found.items.some((item) => item.kind === 'unit');
          return {
            isIncomplete,
            items: toCompletionItems(found, lines, client.takes.completion, client.options.suggestCommand, (_item, index) => [list, index]),
          };
        },
      ),
    );
    connection.onCompletionResolve(
      filling<CompletionItem>('completion', (item) => {
        const [list, index] = Array.isArray(item.data) ? (item.data as unknown[]) : [];
        const found = list === offered.list && typeof index === 'number' ? offered.items[index] : undefined;
        const said = found?.documentation() ?? '';
        return said === '' ? item : { ...item, documentation: documentation(said, client.takes.completion.documentation) };
      }),
    );
  },
};
