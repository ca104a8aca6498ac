import type { InlayHint, InlayHintParams } from 'vscode-languageserver';
import { inlayValues } from '../../editor/index.ts';
import type { Topic } from '../../engine/inside.ts';
import { markup } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ inlayHintProvider: { resolveProvider: true } }),
  answer: ({ connection, session, client, answers }) => {
    const { documents } = session;
    const { answering, about } = answers;
    connection.languages.inlayHint.on(
      about('inlay values', [] as InlayHint[], ({ document, analysis, lines }, { range }: InlayHintParams) => {
        if (!client.settings['values.show']) return [];
        const wants = (topic: Topic): boolean => client.settings[`values.${topic}`];
        return inlayValues(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) }, wants).map((value) => ({
          position: lines.position(value.offset),
          label: value.label,
          paddingLeft: true,
          // Several stand side by side.
          paddingRight: true,
          ...(client.takes.lazyTooltips ? { data: [document.uri, value.id] } : { tooltip: markup(value.tooltip(), client.takes) }),
        }));
      }),
    );
    connection.languages.inlayHint.resolve(async (hint, token) => {
      const answer = await answering('inlay values', hint, (given: InlayHint) => {
        const [uri, id] = Array.isArray(given.data) ? (given.data as unknown[]) : [];
        const document = typeof uri === 'string' ? documents.get(uri) : undefined;
        if (document === undefined) return given;
        const value = inlayValues(session.analyseNow(document)).find((candidate) => candidate.id === id);
        return value === undefined ? given : { ...given, tooltip: markup(value.tooltip(), client.takes) };
      })(hint, token);
      return answer;
    });
  },
};
