import { MessageType } from 'vscode-languageserver';
import { formatting } from '../../editor/index.ts';
import { toEdits } from '../convert.ts';
import type { Document } from '../documents.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ documentFormattingProvider: true }),
  answer: ({ connection, client, answers }) => {
    const { about } = answers;
    /** Texts whose formatting was refused: it is said once, until it works again. */
    const refused = new WeakSet<Document>();
    connection.onDocumentFormatting(
      about('formatting', null, ({ document, analysis, lines }) => {
        const found = formatting(analysis.text);
        if ('edits' in found) {
          refused.delete(document);
          return toEdits(found.edits, lines);
        }
        client.log(`${document.path}: ${found.refused}`);
        if (!refused.has(document)) void connection.sendNotification('window/showMessage', { type: MessageType.Info, message: found.refused });
        refused.add(document);
        return [];
      }),
    );
  },
};
