// What the desktop and the web extension share: everything but how the server is started.
import * as vscode from 'vscode';
import { type BaseLanguageClient, type LanguageClientOptions, RequestType } from 'vscode-languageclient';
import {
  type FigureAnswer,
  type FiguresParams,
  figuresRequest,
  type InitializationOptions,
  type ReadAnswer,
  type ReadParams,
  type RulesAnswer,
  readRequest,
  rulesRequest,
} from '../server/lsp/requests.ts';
import { figuresAsText } from './figures.ts';
import { findingsOptions, keepFindings, tellOfFolders } from './findings.ts';
import { keepIndentation } from './indentation.ts';
import { registerPreview } from './preview/panel.ts';
import { documentSelector, followPlaces, isOurs, restart } from './texts.ts';
import { overviewTree } from './views/overview.ts';
import { promisesView } from './views/promises.ts';
import { statusItem } from './views/status.ts';
import { type Given, newSite } from './wizard.ts';

const figuresScheme = 'pintle-figures';

export function clientOptions(context: vscode.ExtensionContext): LanguageClientOptions {
  const options: InitializationOptions = {
    pages: vscode.Uri.joinPath(context.extensionUri, 'dist', 'pages').toString(),
    suggestCommand: 'editor.action.triggerSuggest',
    previewCommand: 'pintle.openPreview',
    // VS Code shows a command without a name as words.
    lensCommand: '',
    readsFiles: true,
    ownTokenTypes: true,
    explainCommand: 'pintle.explainRule',
  };
  return {
    documentSelector: documentSelector(),
    diagnosticCollectionName: 'pintle',
    initializationOptions: options,
    outputChannelName: 'Pintle',
    ...findingsOptions,
  };
}

/** Starts the client, answers its requests for files, and registers the commands. */
export async function run(context: vscode.ExtensionContext, client: BaseLanguageClient): Promise<void> {
  context.subscriptions.push(client.onRequest(new RequestType<ReadParams, ReadAnswer, void>(readRequest), ({ uri }) => readForServer(uri)));
  context.subscriptions.push(statusItem(client), overviewTree(client), promisesView(client), followPlaces(client));
  context.subscriptions.push(
    ...commands(context, client),
    figuresDocuments(client),
    registerPreview(context, client),
    tellOfFolders(client),
    keepFindings(),
    keepIndentation(),
  );
  void vscode.commands.executeCommand('setContext', 'pintle.isActive', true);
  await client.start();
}

async function readForServer(uri: string): Promise<ReadAnswer> {
  try {
    const bytes = await vscode.workspace.fs.readFile(vscode.Uri.parse(uri, true));
    return { text: new TextDecoder().decode(bytes) };
  } catch {
    return { missing: true };
  }
}

function commands(context: vscode.ExtensionContext, client: BaseLanguageClient): vscode.Disposable[] {
  const register = (name: string, work: (given?: unknown) => Promise<unknown> | Thenable<unknown>): vscode.Disposable =>
    vscode.commands.registerCommand(`pintle.${name}`, work);
  const page = (...parts: string[]): vscode.Uri => vscode.Uri.joinPath(context.extensionUri, 'dist', ...parts);
  return [
    register('restartServer', () => restart(client)),
    register('openManual', () => showPage(page('manual.md'))),
    register('explainRule', async (given) => {
      if (typeof given === 'string') return showPage(page('pages', 'rules', `${given}.md`));
      const rules = await client.sendRequest<RulesAnswer>(rulesRequest, {});
      const items = rules.map((rule) => ({ label: rule.name, description: rule.severity, detail: rule.title }));
      const picked = await vscode.window.showQuickPick(items, { title: 'Explain a rule', matchOnDetail: true, placeHolder: 'Which rule?' });
      return picked === undefined ? undefined : showPage(page('pages', 'rules', `${picked.label}.md`));
    }),
    register('showFigures', async () => {
      const document = vscode.window.activeTextEditor?.document;
      if (document === undefined || !isOurs(document)) {
        await vscode.window.showInformationMessage('Open a .gate file first: its figures are shown beside it.');
        return;
      }
      const uri = figuresUri(document.uri);
      figuresChanged.fire(uri);
      await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri), {
        viewColumn: vscode.ViewColumn.Beside,
        preserveFocus: true,
        preview: true,
      });
    }),
    vscode.commands.registerCommand('pintle.newSite', (given?: Given) => newSite(given)),
  ];
}

/** Pages are Markdown: shown rendered where the editor can, as text where it cannot. */
async function showPage(uri: vscode.Uri): Promise<void> {
  try {
    await vscode.commands.executeCommand('markdown.showPreview', uri);
  } catch {
    await vscode.window.showTextDocument(uri, { preview: true });
  }
}

const figuresChanged = new vscode.EventEmitter<vscode.Uri>();

/** The address of the figures of a file: the file's own, carried in the query. By its name it is a plain text, and no site. */
const figuresUri = (file: vscode.Uri): vscode.Uri =>
  vscode.Uri.from({
    scheme: figuresScheme,
    path: `/Figures of ${(file.path.split('/').at(-1) ?? '').replace(/\.gate$/, '') || 'this file'}.txt`,
    query: file.toString(),
  });

/** A read-only text beside a file, with its figures; it follows the file. */
function figuresDocuments(client: BaseLanguageClient): vscode.Disposable {
  const provider = vscode.workspace.registerTextDocumentContentProvider(figuresScheme, {
    onDidChange: figuresChanged.event,
    async provideTextDocumentContent(uri) {
      const params: FiguresParams = { uri: uri.query };
      const figures = await client.sendRequest<readonly FigureAnswer[]>(figuresRequest, params);
      return figuresAsText(uri.query, figures);
    },
  });
  const waiting = new Map<string, ReturnType<typeof setTimeout>>();
  const follow = vscode.workspace.onDidChangeTextDocument(({ document }) => {
    if (!isOurs(document)) return;
    const uri = figuresUri(document.uri);
    if (!vscode.workspace.textDocuments.some((open) => open.uri.toString() === uri.toString())) return;
    const key = uri.toString();
    clearTimeout(waiting.get(key));
    waiting.set(
      key,
      setTimeout(() => (waiting.delete(key), figuresChanged.fire(uri)), 250),
    );
  });
  return vscode.Disposable.from(provider, follow, figuresChanged);
}
