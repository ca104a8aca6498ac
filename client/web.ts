// The extension in a browser: the server runs in a worker.
import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient, type MessageTransports } from 'vscode-languageclient/browser';
import { clientOptions, run } from './common.ts';
import { languageId } from './texts.ts';

declare class Worker {
  constructor(url: string);
  terminate(): void;
}

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const code = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server-worker.js').toString(true);
  let worker: Worker | undefined;
  // Each start has a worker of its own: a server that has said goodbye answers nobody any more. Its messages and not the worker are
  // handed on, for the editor's workers are of a kind of their own, which the client does not know.
  const freshWorker = async (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(code);
    return { reader: new BrowserMessageReader(worker as never), writer: new BrowserMessageWriter(worker as never) };
  };
  client = new LanguageClient(languageId, 'Pintle', freshWorker, clientOptions(context));
  await run(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.dispose();
}
