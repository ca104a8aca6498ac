import type { CodeLens } from 'vscode-languageserver';
import { lenses } from '../../editor/index.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ codeLensProvider: { resolveProvider: true } }),
  answer: ({ connection, session, client, answers }) => {
    const { documents } = session;
    const { about, filling } = answers;
    connection.onCodeLens(
      about('lenses', [] as CodeLens[], ({ document, analysis, lines }) => {
        if (!client.settings['lenses.show']) return [];
        const preview = client.options.previewCommand;
        return lenses(analysis).flatMap((lens): CodeLens[] => {
          const range = lines.range(lens.at);
          const state: CodeLens = { range, data: [document.uri, lens.at.start] };
          if (lens.word !== 'site' || preview === undefined) return [state];
          const open: CodeLens = { range, command: { title: 'Open preview', command: preview, arguments: [document.uri] } };
          return [state, open];
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
        return { ...lens, command: { title: found?.title() ?? '', command: '' } };
      }),
    );
  },
};
