// One item in the status bar: the verdict on the file that is looked at.
import * as vscode from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { activeDocument, whenItChanges } from './follow.ts';
import { type Counts, verdictOf } from './verdict.ts';

export function statusItem(client: BaseLanguageClient, languageId: string): vscode.Disposable {
  const item = vscode.window.createStatusBarItem('pintle.verdict', vscode.StatusBarAlignment.Left, 10);
  item.name = 'Pintle';
  const show = (): void => {
    const document = activeDocument(languageId);
    if (document === undefined) {
      item.hide();
      return;
    }
    const isRunning = client.state === State.Running;
    const verdict = verdictOf(isRunning ? countsOf(document.uri) : undefined);
    item.text = `$(${verdict.icon}) Pintle: ${verdict.text}`;
    item.tooltip = verdict.tooltip;
    item.accessibilityInformation = { label: `Pintle: ${verdict.text}`, role: 'button' };
    item.command = isRunning ? 'workbench.actions.view.problems' : 'pintle.restartServer';
    item.backgroundColor = verdict.ground === undefined ? undefined : new vscode.ThemeColor(`statusBarItem.${verdict.ground}Background`);
    item.show();
  };
  show();
  return vscode.Disposable.from(item, whenItChanges(languageId, show, 50), client.onDidChangeState(show));
}

function countsOf(uri: vscode.Uri): Counts {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity, source } of vscode.languages.getDiagnostics(uri))
    if (source === 'pintle')
      counts[
        severity === vscode.DiagnosticSeverity.Error ? 'error' : severity === vscode.DiagnosticSeverity.Warning ? 'warning' : 'note'
      ]++;
  return counts;
}
