import type { InlayHint, InlayHintParams } from 'vscode-languageserver';
import { inlayTooltip, inlayValues } from '../../editor/index.ts';
import type { Topic } from '../../engine/inside.ts';
import { documentation } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: ({ takes }) => ({ inlayHintProvider: takes.lazyTooltips ? { resolveProvider: true } : true }),
  answer: ({ connection, session, client, configuration, answers }) => {
    const { documents } = session;
    const { about, filling } = answers;
    connection.languages.inlayHint.on(
      about('inlay values', [] as InlayHint[], async ({ document, analysis, lines }, { range }: InlayHintParams) => {
        const settings = await configuration.of(document.path);
        if (!settings['values.show']) return [];
        const wants = (topic: Topic): boolean => settings[`values.${topic}`];
        return inlayValues(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) }, wants).map(
          (value): InlayHint => ({
            position: lines.position(value.offset),
            label: value.label,
            paddingLeft: true,
            // Several stand side by side.
            paddingRight: true,
            ...(client.takes.lazyTooltips
              ? { data: [document.uri, value.id] }
              : { tooltip: documentation(value.tooltip(), client.takes.hover) }),
          }),
        );
      }),
    );
    connection.languages.inlayHint.resolve(
      filling<InlayHint>('inlay values', async (given) => {
        const [uri, id] = Array.isArray(given.data) ? (given.data as unknown[]) : [];
        const document = typeof uri === 'string' ? documents.get(uri) : undefined;
        const analysis = document === undefined ? undefined : await session.analyse(document);
        const tooltip = analysis === undefined || typeof id !== 'string' ? undefined : inlayTooltip(analysis, id);
        return tooltip === undefined ? given : { ...given, tooltip: documentation(tooltip, client.takes.hover) };
      }) as Parameters<typeof connection.languages.inlayHint.resolve>[0],
    );
  },
};
