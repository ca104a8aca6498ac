import type { DocumentLink } from 'vscode-languageserver';
import { links } from '../../editor/index.ts';
import { rulePage } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ documentLinkProvider: { resolveProvider: true } }),
  answer: ({ connection, session, client, answers }) => {
    const { about, filling } = answers;
    const tooltip = (said: string): { tooltip?: string } => (client.takes.linkTooltips ? { tooltip: said } : {});
    connection.onDocumentLinks(
      about('links', [] as DocumentLink[], ({ analysis, lines }) => {
        const workspace = session.workspaceOf(analysis.path);
        return links(analysis).flatMap((link): DocumentLink[] => {
          if (link.kind === 'rule')
            return client.options.pages === undefined
              ? []
              : [{ range: lines.range(link), ...tooltip(`Why, and what to do: ${link.name}`), data: ['rule', link.name] }];
          // A path that leads nowhere is no link; a finding says so.
          return session.textOf(link.path, workspace) === undefined
            ? []
            : [{ range: lines.range(link), ...tooltip('Open this library'), data: ['file', link.path] }];
        });
      }),
    );
    connection.onDocumentLinkResolve(
      filling<DocumentLink>('links', (link) => {
        const [kind, to] = Array.isArray(link.data) ? (link.data as unknown[]) : [];
        if (typeof to !== 'string') return link;
        const target =
          kind === 'file'
            ? session.uriOf(to)
            : kind === 'rule' && client.options.pages !== undefined
              ? rulePage(client.options.pages, to)
              : undefined;
        return target === undefined ? link : { ...link, target };
      }),
    );
  },
};
