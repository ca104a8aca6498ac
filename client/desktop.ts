// The extension on a desktop: the server runs in a process of its own.
import * as vscode from 'vscode';
import { LanguageClient, type ServerOptions, TransportKind } from 'vscode-languageclient/node';
import { clientOptions, run } from './common.ts';
import { languageId } from './texts.ts';
import { tasks } from './views/tasks.ts';

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
  const server: ServerOptions = { run: { module, transport: TransportKind.ipc }, debug: { module, transport: TransportKind.ipc } };
  client = new LanguageClient(languageId, 'Pintle', server, clientOptions(context));
  context.subscriptions.push(tasks(context));
  await run(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.dispose();
}
