// The installation as a tree beside the text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type OverviewAnswer, type OverviewParams, overviewRequest } from '../../server/lsp/requests.ts';
import { activeDocument, whenItChanges } from './follow.ts';

interface Node {
  readonly uri: vscode.Uri;
  readonly parent: Node | undefined;
  readonly answer: OverviewAnswer;
}

const icons: Readonly<Record<OverviewAnswer['kind'], string>> = {
  site: 'location',
  leaf: 'layout-sidebar-left',
  drive: 'gear',
  sensor: 'broadcast',
  control: 'record-keys',
  panel: 'circuit-board',
  cable: 'plug',
  function: 'shield',
  motion: 'watch',
  hazard: 'eye',
  group: 'folder',
  judgement: 'question',
  terminal: 'debug-disconnect',
  model: 'library',
};
const colours = { error: 'list.errorForeground', warning: 'list.warningForeground', note: undefined } as const;
const words = { error: 'an error in it', warning: 'a warning in it', note: 'a note in it' } as const;

export function overviewTree(client: BaseLanguageClient): vscode.Disposable {
  const changed = new vscode.EventEmitter<undefined>();
  let nodes: readonly Node[] = [];
  let asked = 0;

  const look = async (): Promise<void> => {
    const document = activeDocument();
    const number = ++asked;
    const params: OverviewParams | undefined = document === undefined ? undefined : { uri: document.uri.toString() };
    const answer =
      params === undefined || !client.isRunning()
        ? []
        : await client.sendRequest<readonly OverviewAnswer[]>(overviewRequest, params).catch((): readonly OverviewAnswer[] => []);
    // Of two questions that overlap, the later one counts.
    if (number !== asked) return;
    nodes = document === undefined ? [] : answer.map((one) => ({ uri: document.uri, parent: undefined, answer: one }));
    view.message = document !== undefined && nodes.length === 0 ? 'Nothing in this file yet.' : '';
    changed.fire(undefined);
  };

  const provider: vscode.TreeDataProvider<Node> = {
    onDidChangeTreeData: changed.event,
    getChildren: (node) =>
      node === undefined ? [...nodes] : node.answer.children.map((answer) => ({ uri: node.uri, parent: node, answer })),
    getParent: (node) => node.parent,
    getTreeItem: ({ uri, answer }) => {
      const { id, kind, label, detail, severity, range, children } = answer;
      const state =
        children.length === 0
          ? vscode.TreeItemCollapsibleState.None
          : kind === 'leaf'
            ? vscode.TreeItemCollapsibleState.Expanded
            : vscode.TreeItemCollapsibleState.Collapsed;
      const item = new vscode.TreeItem(label, state);
      item.id = `${uri.toString()}#${id}`;
      item.description = detail;
      const colour = severity === undefined ? undefined : colours[severity];
      item.iconPath = new vscode.ThemeIcon(
        severity === 'error' ? 'error' : severity === 'warning' ? 'warning' : icons[kind],
        colour === undefined ? undefined : new vscode.ThemeColor(colour),
      );
      item.tooltip = `${kind === 'group' ? '' : `${kind} `}${label}${detail === '' ? '' : `: ${detail}`}`;
      item.accessibilityInformation = {
        label: [kind, label, detail, severity === undefined ? '' : words[severity]].filter((part) => part !== '').join(', '),
      };
      item.contextValue = kind;
      const start = new vscode.Position(range.start.line, range.start.character);
      item.command = {
        title: 'Go to it',
        command: 'vscode.open',
        arguments: [uri, { selection: new vscode.Range(start, start), preserveFocus: false } satisfies vscode.TextDocumentShowOptions],
      };
      return item;
    },
  };
  const view = vscode.window.createTreeView('pintle.installation', { treeDataProvider: provider, showCollapseAll: true });
  const start = (): void => void look();
  start();
  return vscode.Disposable.from(view, changed, whenItChanges(start), client.onDidChangeState(start));
}
