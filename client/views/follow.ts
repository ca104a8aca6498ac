// Which text is looked at, and when to look again: shared by the views beside the text.
import * as vscode from 'vscode';
import { isOurs } from '../texts.ts';

/** The text of ours that is looked at, or was last while it is still shown. */
export function activeDocument(): vscode.TextDocument | undefined {
  const active = vscode.window.activeTextEditor?.document;
  if (active !== undefined && isOurs(active)) return active;
  return vscode.window.visibleTextEditors.find(({ document }) => isOurs(document))?.document;
}

/** Calls `look` once the keys rest, whenever another text is looked at, the text or what is found in it changes. */
export function whenItChanges(look: () => void, delay = 200): vscode.Disposable {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const later = (): void => {
    clearTimeout(timer);
    timer = setTimeout(look, delay);
  };
  return vscode.Disposable.from(
    vscode.window.onDidChangeActiveTextEditor(later),
    vscode.workspace.onDidChangeTextDocument(({ document }) => isOurs(document) && later()),
    vscode.workspace.onDidCloseTextDocument((document) => isOurs(document) && later()),
    vscode.languages.onDidChangeDiagnostics(
      ({ uris }) => uris.some(({ path, scheme }) => path.endsWith('.gate') || scheme === 'untitled') && later(),
    ),
    new vscode.Disposable(() => clearTimeout(timer)),
  );
}
