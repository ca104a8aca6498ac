// One item in the status bar: the verdict on the file that is looked at.
import * as vscode from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { type AccountAnswer, type AccountParams, accountRequest } from '../../server/lsp/requests.ts';
import { findingsOf } from '../findings.ts';
import { isOnlyShown } from '../texts.ts';
import { activeDocument, whenItChanges } from './follow.ts';
import { type Counts, type Judged, notJudged, type Verdict, verdictOf } from './verdict.ts';

export function statusItem(client: BaseLanguageClient): vscode.Disposable {
  const item = vscode.window.createStatusBarItem('pintle.verdict', vscode.StatusBarAlignment.Left, 10);
  item.name = 'Pintle';
  let known: { readonly uri: string; readonly account: AccountAnswer } | undefined;
  let asked = 0;
  const ask = async (): Promise<void> => {
    const uri = activeDocument()?.uri.toString();
    const number = ++asked;
    if (uri === undefined || client.state !== State.Running) return;
    const account = await client.sendRequest<AccountAnswer>(accountRequest, { uri } satisfies AccountParams).catch(() => undefined);
    // Of two questions that overlap, the later one counts.
    if (account === undefined || number !== asked) return;
    known = { uri, account };
    show();
  };
  const show = (): void => {
    const isRunning = client.state === State.Running;
    const verdict = verdictNow(isRunning, (uri) => (known?.uri === uri ? known.account : undefined));
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
  const look = (): void => {
    show();
    void ask();
  };
  look();
  return vscode.Disposable.from(item, whenItChanges(look, 50), client.onDidChangeState(look));
}

function verdictNow(isRunning: boolean, accountOf: (uri: string) => Judged | undefined): Verdict | undefined {
  const active = vscode.window.activeTextEditor?.document;
  if (active !== undefined && isOnlyShown(active)) return notJudged;
  const document = activeDocument();
  return document === undefined ? undefined : verdictOf(isRunning ? countsOf(document.uri) : undefined, accountOf(document.uri.toString()));
}

function countsOf(uri: vscode.Uri): Counts {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findingsOf(uri))
    counts[severity === vscode.DiagnosticSeverity.Error ? 'error' : severity === vscode.DiagnosticSeverity.Warning ? 'warning' : 'note']++;
  return counts;
}
