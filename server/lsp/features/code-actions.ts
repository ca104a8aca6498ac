import { CodeActionKind, type CodeAction, type CodeActionParams } from 'vscode-languageserver';
import { fixAll, fixes } from '../../editor/index.ts';
import { textEdit, type Feature } from './feature.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.pintle`;

export const feature: Feature = {
  capabilities: () => ({ codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind] } }),
  answer: ({ connection, client, reports, answers }) => {
    const { about } = answers;
    connection.onCodeAction(
      about('code actions', [] as CodeAction[], ({ document, analysis, lines, version }, { range, context }: CodeActionParams) => {
        const wants = (kind: string): boolean => context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(only + '.'));
        const actions: CodeAction[] = [];
        if (wants(CodeActionKind.QuickFix)) {
          const shown = reports.reportOf(analysis).items;
          for (const fix of fixes(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) })) {
            const diagnostic = shown[analysis.findings.indexOf(fix.finding)];
            actions.push({
              title: fix.title,
              kind: CodeActionKind.QuickFix,
              ...(diagnostic === undefined ? {} : { diagnostics: [diagnostic] }),
              ...(fix.safe ? { isPreferred: true } : {}),
              edit: textEdit(client, document, version, fix.edits, lines),
            });
          }
        }
        // Offered in a list only where something at the caret needs it; asked for by name, always.
        if (context.only !== undefined && wants(fixAllKind)) {
          const all = fixAll(analysis);
          if (all !== undefined) actions.push({ title: `Apply ${all.count === 1 ? 'the safe fix' : `all ${all.count} safe fixes`}`, kind: fixAllKind, edit: textEdit(client, document, version, all.edits, lines) });
        }
        return actions;
      }),
    );
  },
};
