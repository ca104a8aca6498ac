// The extension in a browser: the server runs in a worker.
import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions, run } from './common.ts';
import { languageId } from './texts.ts';

declare class Worker {
  constructor(url: string);
}

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const worker = new Worker(vscode.Uri.joinPath(context.extensionUri, 'dist', 'server-worker.js').toString(true));
  client = new LanguageClient(languageId, 'Pintle', worker as never, clientOptions(context));
  await run(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.dispose();
}
