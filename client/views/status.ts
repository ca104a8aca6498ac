// One item in the status bar: the verdict on the file that is looked at.
import * as vscode from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { findingsOf } from '../findings.ts';
import { isOnlyShown } from '../texts.ts';
import { activeDocument, whenItChanges } from './follow.ts';
import { type Counts, notJudged, type Verdict, verdictOf } from './verdict.ts';

export function statusItem(client: BaseLanguageClient): vscode.Disposable {
  const item = vscode.window.createStatusBarItem('pintle.verdict', vscode.StatusBarAlignment.Left, 10);
  item.name = 'Pintle';
  const show = (): void => {
    const isRunning = client.state === State.Running;
    const verdict = verdictNow(isRunning);
    if (verdict === undefined) {
      item.hide();
      return;
    }
    item.text = `$(${verdict.icon}) Pintle: ${verdict.text}`;
    item.tooltip = verdict.tooltip;
    item.accessibilityInformation = { label: `Pintle: ${verdict.text}`, role: 'button' };
    item.command = isRunning ? 'workbench.actions.view.problems' : 'pintle.restartServer';
    item.backgroundColor = verdict.ground === undefined ? undefined : new vscode.ThemeColor(`statusBarItem.${verdict.ground}Background`);
    item.show();
  };
  show();
  return vscode.Disposable.from(item, whenItChanges(show, 50), client.onDidChangeState(show));
}

function verdictNow(isRunning: boolean): Verdict | undefined {
  const active = vscode.window.activeTextEditor?.document;
  if (active !== undefined && isOnlyShown(active)) return notJudged;
  const document = activeDocument();
  return document === undefined ? undefined : verdictOf(isRunning ? countsOf(document.uri) : undefined);
}

function countsOf(uri: vscode.Uri): Counts {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findingsOf(uri))
    counts[severity === vscode.DiagnosticSeverity.Error ? 'error' : severity === vscode.DiagnosticSeverity.Warning ? 'warning' : 'note']++;
  return counts;
}
