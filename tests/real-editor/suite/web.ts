// The tests that run beside the extension in a browser: no Node, no disk, no process; files lie in the browser's memory.
import * as vscode from 'vscode';
import { activation, changing, diagnostics, reading } from './basics.ts';
import { features, preview } from './features.ts';
import { equal, runAll, type Test, write } from './kit.ts';
import { texts } from './texts.ts';

/** The examples, by their paths; run.mjs puts them in. */
declare const exampleTexts: Readonly<Record<string, string>>;

const host: Test = {
  name: 'this is the extension host of a browser: a worker, files in memory, no machine behind it',
  body: async () => {
    equal(
      [
        vscode.env.uiKind,
        vscode.env.remoteName,
        typeof (globalThis as { importScripts?: unknown }).importScripts,
        vscode.workspace.workspaceFolders?.[0]?.uri.scheme,
      ],
      [vscode.UIKind.Web, undefined, 'function', 'tmp'],
      'the host',
    );
    equal(vscode.extensions.getExtension('pintle.pintle')?.extensionUri.scheme, 'http', 'where the extension comes from');
  },
};

export async function run(): Promise<void> {
  for (const [path, text] of Object.entries(exampleTexts)) await write(path, text);
  await runAll([host, ...activation, ...diagnostics, ...texts, ...reading, ...changing.slice(0, 3), ...features.slice(0, 7), ...preview]);
}
