// The tests that run beside the extension in the extension host of a desktop.
import * as vscode from 'vscode';
import { activation, changing, commands, diagnostics, files, moving, reading } from './basics.ts';
import { features, onDesktop, preview } from './features.ts';
import { equal, runAll, type Test } from './kit.ts';
import { cells, texts } from './texts.ts';

const host: Test = {
  name: 'this is the extension host of a desktop: Node, and files',
  body: async () => {
    equal(
      [typeof (globalThis as { importScripts?: unknown }).importScripts, vscode.workspace.workspaceFolders?.[0]?.uri.scheme],
      ['undefined', 'file'],
      'the host',
    );
  },
};

export const run = (): Promise<void> =>
  runAll([
    host,
    ...activation,
    ...diagnostics,
    ...texts,
    ...cells,
    ...files,
    ...reading,
    ...moving,
    ...changing,
    ...commands,
    ...features,
    ...preview,
    ...onDesktop,
  ]);
