// Which texts are ours: sites and libraries that somebody works on. What an editor only shows is no site, whatever its name:
// an older version beside the file, an output, a cell of a notebook. Nobody can mend it, so nobody judges it.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export const languageId = 'pintle';

/** Where texts lie that are ours. The client reads the list anew at every start. */
const selector: { language: string; scheme: string }[] = [];

const isKnown = (scheme: string): boolean => selector.some((one) => one.scheme === scheme);

/** A new text, a file of a folder that is open, or one that can be written. */
const isSomebodysWork = ({ scheme }: vscode.Uri): boolean =>
  scheme === 'untitled' ||
  scheme === 'file' ||
  (vscode.workspace.workspaceFolders ?? []).some(({ uri }) => uri.scheme === scheme) ||
  vscode.workspace.fs.isWritableFileSystem(scheme) === true;

function learn(uri: vscode.Uri): boolean {
  if (isKnown(uri.scheme) || !isSomebodysWork(uri)) return false;
  selector.push({ language: languageId, scheme: uri.scheme });
  return true;
}

/** For the client: whatever it asks the server about, it asks about these texts only. */
export function documentSelector(): { language: string; scheme: string }[] {
  for (const scheme of ['file', 'untitled']) learn(vscode.Uri.from({ scheme, path: '/' }));
  for (const { uri } of vscode.workspace.workspaceFolders ?? []) learn(uri);
  for (const { uri, languageId: id } of vscode.workspace.textDocuments) if (id === languageId) learn(uri);
  return selector;
}

/** Of our language and somebody's work: the server judges it. */
export const isOurs = ({ languageId: id, uri }: vscode.TextDocument): boolean => id === languageId && isKnown(uri.scheme);

/** Of our language, and nobody judges it. */
export const isOnlyShown = (document: vscode.TextDocument): boolean => document.languageId === languageId && !isOurs(document);

/**
 * Starts the client anew when a text comes from where none has come from before: it asks only about places that it knew at its
 * start.
 */
export function followPlaces(client: BaseLanguageClient): vscode.Disposable {
  let last: Promise<unknown> = Promise.resolve();
  return vscode.workspace.onDidOpenTextDocument(({ languageId: id, uri }) => {
    if (id === languageId && learn(uri)) last = last.then(() => restart(client)).catch(() => undefined);
  });
}

export async function restart(client: BaseLanguageClient): Promise<void> {
  if (client.needsStop()) {
    // One that is starting can be stopped only when it runs.
    await client.start();
    await client.stop();
  }
  await client.start();
}

/** Whether a text is seen in a tab, alone or beside another. */
export function isInTab(uri: vscode.Uri): boolean {
  const text = uri.toString();
  return vscode.window.tabGroups.all.some(({ tabs }) =>
    tabs.some(({ input }) =>
      input instanceof vscode.TabInputTextDiff
        ? input.original.toString() === text || input.modified.toString() === text
        : (input instanceof vscode.TabInputText || input instanceof vscode.TabInputCustom) && input.uri.toString() === text,
    ),
  );
}
