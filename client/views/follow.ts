// Which text is looked at, and when to look again: shared by the views beside the text.
import * as vscode from 'vscode';

/** The text of ours that is looked at, or was last while it is still shown. */
export function activeDocument(languageId: string): vscode.TextDocument | undefined {
  const active = vscode.window.activeTextEditor?.document;
  if (active?.languageId === languageId) return active;
  return vscode.window.visibleTextEditors.find(({ document }) => document.languageId === languageId)?.document;
}

/** Calls `look` once the keys rest, whenever another text is looked at, the text or what is found in it changes. */
export function whenItChanges(languageId: string, look: () => void, delay = 200): vscode.Disposable {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const later = (): void => {
    clearTimeout(timer);
    timer = setTimeout(look, delay);
  };
  return vscode.Disposable.from(
    vscode.window.onDidChangeActiveTextEditor(later),
    vscode.workspace.onDidChangeTextDocument(({ document }) => document.languageId === languageId && later()),
    vscode.workspace.onDidCloseTextDocument(({ languageId: id }) => id === languageId && later()),
    vscode.languages.onDidChangeDiagnostics(({ uris }) => uris.some(({ path }) => path.endsWith('.gate')) && later()),
    new vscode.Disposable(() => clearTimeout(timer)),
  );
}
