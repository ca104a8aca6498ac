import type { TextDocumentPositionParams } from 'vscode-languageserver';
import { hover } from '../../editor/index.ts';
import { markup } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ hoverProvider: true }),
  answer: ({ connection, session, client, answers }) => {
    const { about } = answers;
    connection.onHover(
      about('hover', null, ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
        const workspace = session.workspaceOf(analysis.path);
        const found = hover(analysis, lines.offset(position), (path) => session.textOf(path, workspace));
        return found === undefined ? null : { contents: markup(found.markdown, client.takes.hover), range: lines.range(found) };
      }),
    );
  },
};
