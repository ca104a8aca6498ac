// Tasks that run the command, for whoever wants the same verdict as the build server. On a desktop only: a browser has no
// processes.
import * as vscode from 'vscode';

const kind = 'pintle';

interface Definition extends vscode.TaskDefinition {
  readonly type: typeof kind;
  /** Path of a file or folder, from the workspace folder. */
  readonly path?: string;
}

export function tasks(context: vscode.ExtensionContext): vscode.Disposable {
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'pintle.cjs').fsPath;
  const task = (definition: Definition, scope: vscode.WorkspaceFolder | vscode.TaskScope.Workspace): vscode.Task => {
    const path = definition.path ?? '.';
    // The editor’s own program runs as node; nothing else has to be installed.
    const run = new vscode.ProcessExecution(process.execPath, [program, 'check', path, '--output', 'lines'], {
      env: { ELECTRON_RUN_AS_NODE: '1' },
    });
    // Nothing reads its lines: the server has found the same, says more of it, and follows the text.
    const made = new vscode.Task(definition, scope, path === '.' ? 'check all files' : `check ${path}`, 'pintle', run, []);
    made.group = vscode.TaskGroup.Build;
    made.presentationOptions = { reveal: vscode.TaskRevealKind.Silent, clear: true };
    made.detail = 'The verdict that a build server gives.';
    return made;
  };
  return vscode.tasks.registerTaskProvider(kind, {
    provideTasks: () => (vscode.workspace.workspaceFolders ?? []).map((folder) => task({ type: kind }, folder)),
    resolveTask: (given) =>
      task(given.definition as Definition, typeof given.scope === 'object' ? given.scope : vscode.TaskScope.Workspace),
  });
}
