import type { CodeLens, Command } from 'vscode-languageserver';
import { type Lens, lenses } from '../../editor/index.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  // A lens shows what a command of the client does; where it has none there is nothing to show.
  capabilities: ({ options, takes }) => {
    if (options.lensCommand === undefined && options.previewCommand === undefined) return {};
    return { codeLensProvider: takes.lazyLenses ? { resolveProvider: true } : {} };
  },
  answer: ({ connection, session, client, configuration, answers }) => {
    const { documents } = session;
    const { about, filling } = answers;
    const inWords = (lens: Lens | undefined): Command => ({ title: lens?.title() ?? '', command: client.options.lensCommand ?? '' });
    connection.onCodeLens(
      about('lenses', [] as CodeLens[], async ({ document, analysis, lines }) => {
        if (!(await configuration.of(document.path))['lenses.show']) return [];
        const { previewCommand: preview, lensCommand: words } = client.options;
        return lenses(analysis).flatMap((lens): CodeLens[] => {
          const range = lines.range(lens.at);
          const found: CodeLens[] = [];
          if (words !== undefined)
            found.push(client.takes.lazyLenses ? { range, data: [document.uri, lens.at.start] } : { range, command: inWords(lens) });
          if (lens.word === 'site' && preview !== undefined)
            found.push({ range, command: { title: 'Open preview', command: preview, arguments: [document.uri] } });
          return found;
        });
      }),
    );
    connection.onCodeLensResolve(
      filling<CodeLens>('lenses', async (lens): Promise<CodeLens> => {
        const [uri, start] = Array.isArray(lens.data) ? (lens.data as unknown[]) : [];
        const document = typeof uri === 'string' ? documents.get(uri) : undefined;
        const analysis = document === undefined ? undefined : await session.analyse(document);
        const found = analysis === undefined ? undefined : lenses(analysis).find((candidate) => candidate.at.start === start);
        // Nothing to press: the words are all there is. A text that has changed meanwhile is asked about anew.
        return { ...lens, command: inWords(found) };
      }),
    );
  },
};
