import { type SignatureHelp, type SignatureHelpParams, SignatureHelpTriggerKind } from 'vscode-languageserver';
import { signature } from '../../editor/index.ts';
import { documentation } from '../convert.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ signatureHelpProvider: { triggerCharacters: [' '], retriggerCharacters: [' ', ':', '"', '\n'] } }),
  answer: ({ connection, client, answers }) => {
    connection.onSignatureHelp(
      answers.about('signature help', null as SignatureHelp | null, ({ analysis, lines }, { position, context }: SignatureHelpParams) => {
        const found = signature(analysis, lines.offset(position));
        // Lines of one value explain themselves; help for them is for who asks.
        const isAsked = context === undefined || context.triggerKind === SignatureHelpTriggerKind.Invoked || context.isRetrigger;
        if (found === undefined || (!isAsked && found.parameters.length < 2)) return null;
        const takes = client.takes.signature;
        return {
          signatures: [
            {
              label: found.label,
              documentation: documentation(found.doc, takes.documentation),
              parameters: found.parameters.map(({ start, end, doc }) => ({
                label: takes.offsets ? [start, end] : found.label.slice(start, end),
                documentation: documentation(doc, takes.documentation),
              })),
              ...(takes.active ? { activeParameter: found.active } : {}),
            },
          ],
          activeSignature: 0,
          activeParameter: found.active,
        };
      }),
    );
  },
};
