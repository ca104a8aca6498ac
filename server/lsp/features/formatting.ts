import { type DocumentOnTypeFormattingParams, type DocumentRangeFormattingParams, MessageType, type TextEdit } from 'vscode-languageserver';
import { type Formatting, formatting, rangeFormatting, typedFormatting } from '../../editor/index.ts';
import type { At } from '../answering.ts';
import { toEdits } from '../convert.ts';
import type { Document } from '../documents.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
  }),
  answer: ({ connection, client, answers }) => {
    const { about } = answers;
    /** Texts whose formatting was refused: it is said once, until it works again. */
    const refused = new WeakSet<Document>();
    const editsOf = ({ document, lines }: At, found: Formatting): TextEdit[] => {
      if ('edits' in found) {
        refused.delete(document);
        return toEdits(found.edits, lines);
      }
      client.log(`${document.path}: ${found.refused}`);
      if (!refused.has(document))
        void connection.sendNotification('window/showMessage', { type: MessageType.Info, message: found.refused });
      refused.add(document);
      return [];
    };
    connection.onDocumentFormatting(about('formatting', null, (at) => editsOf(at, formatting(at.analysis.text))));
    connection.onDocumentRangeFormatting(
      about('formatting', null as TextEdit[] | null, (at, { range }: DocumentRangeFormattingParams) =>
        editsOf(at, rangeFormatting(at.analysis.text, { start: at.lines.offset(range.start), end: at.lines.offset(range.end) })),
      ),
    );
    // Nothing is said here: who types is not done.
    connection.onDocumentOnTypeFormatting(
      about('formatting', null as TextEdit[] | null, ({ analysis, lines }, { position, ch }: DocumentOnTypeFormattingParams) =>
        toEdits(typedFormatting(analysis, lines.offset(position), ch), lines),
      ),
    );
  },
};
