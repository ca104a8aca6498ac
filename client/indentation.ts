// How lines are indented. The canonical form is one for everybody, and an editor indents forms, snippets and new lines by its
// own settings: those are made the same here, for texts of ours only.
import * as vscode from 'vscode';
import { isOurs } from './texts.ts';

/** As the formatter writes it; the manifest has the same as the language's default. */
const canonical = { tabSize: 2, indentSize: 2, insertSpaces: true } as const;

/** Keeps the editors of our texts at it, also where somebody's settings for all languages or for this one say otherwise. */
export function keepIndentation(): vscode.Disposable {
  const keep = (editors: readonly vscode.TextEditor[]): void => {
    for (const editor of editors) {
      const { tabSize, insertSpaces } = editor.options;
      if (isOurs(editor.document) && (tabSize !== canonical.tabSize || insertSpaces !== canonical.insertSpaces)) editor.options = canonical;
    }
  };
  keep(vscode.window.visibleTextEditors);
  return vscode.Disposable.from(
    vscode.window.onDidChangeVisibleTextEditors(keep),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration('editor')) keep(vscode.window.visibleTextEditors);
    }),
  );
}
