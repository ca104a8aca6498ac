// What files promise of themselves (`expects …`), as tests.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type FilePromises,
  type PromisesAnswer,
  type PromisesParams,
  promisesRequest,
  type RangeAnswer,
} from '../../server/lsp/requests.ts';

const toRange = ({ start, end }: RangeAnswer): vscode.Range => new vscode.Range(start.line, start.character, end.line, end.character);

export function promisesView(client: BaseLanguageClient): vscode.Disposable {
  const controller = vscode.tests.createTestController('pintle.promises', 'Pintle: what files promise');

  const ask = (uris?: readonly string[]): Promise<PromisesAnswer> =>
    client
      .sendRequest<PromisesAnswer>(promisesRequest, (uris === undefined ? {} : { uris }) satisfies PromisesParams)
      .catch((): PromisesAnswer => []);

  /** Puts a file's promises into the tree, what is there already kept; gives its item. */
  const put = ({ uri, promises }: FilePromises): vscode.TestItem => {
    const at = vscode.Uri.parse(uri, true);
    let file = controller.items.get(uri);
    if (file === undefined) {
      file = controller.createTestItem(uri, vscode.workspace.asRelativePath(at), at);
      controller.items.add(file);
    }
    const wanted = new Set(promises.map(({ id }) => id));
    file.children.forEach(({ id }) => void (wanted.has(id) || file.children.delete(id)));
    for (const { id, label, range } of promises) {
      let item = file.children.get(id);
      if (item === undefined) file.children.add((item = controller.createTestItem(id, label, at)));
      item.range = toRange(range);
    }
    return file;
  };

  const discover = async (): Promise<void> => {
    const files = await ask();
    const there = new Set(files.map(({ uri }) => uri));
    controller.items.forEach(({ id }) => void (there.has(id) || controller.items.delete(id)));
    for (const file of files) put(file);
  };
  controller.resolveHandler = async (item) => {
    if (item === undefined) await discover();
  };
  controller.refreshHandler = discover;

  controller.createRunProfile(
    'Check',
    vscode.TestRunProfileKind.Run,
    async (request, token) => {
      const run = controller.createTestRun(request);
      try {
        if (request.include === undefined) await discover();
        const chosen = request.include ?? [...ids(controller.items)].flatMap((id) => controller.items.get(id) ?? []);
        const files = new Map<string, Set<string> | undefined>();
        for (const item of chosen) {
          const file = item.parent ?? item;
          if (item.parent === undefined) files.set(file.id, undefined);
          else if (files.get(file.id) !== undefined || !files.has(file.id))
            files.set(file.id, (files.get(file.id) ?? new Set()).add(item.id));
        }
        const excluded = new Set(request.exclude ?? []);
        const answers = files.size === 0 ? [] : await ask([...files.keys()]);
        for (const answer of answers) {
          if (token.isCancellationRequested) break;
          const file = put(answer);
          const wanted = files.get(file.id);
          for (const { id, kept, message, range } of answer.promises) {
            const item = file.children.get(id);
            if (item === undefined || (wanted !== undefined && !wanted.has(id)) || excluded.has(item) || excluded.has(file)) continue;
            run.started(item);
            if (kept) run.passed(item);
            else {
              const failure = new vscode.TestMessage(message);
              failure.location = new vscode.Location(vscode.Uri.parse(answer.uri, true), toRange(range));
              run.failed(item, failure);
            }
          }
        }
      } finally {
        run.end();
      }
    },
    true,
  );

  let timer: ReturnType<typeof setTimeout> | undefined;
  const later = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void discover(), 1000);
  };
  const isOurs = ({ uri }: vscode.TextDocument): boolean => uri.path.endsWith('.gate');
  return vscode.Disposable.from(
    controller,
    client.onDidChangeState(later),
    vscode.workspace.onDidSaveTextDocument((document) => isOurs(document) && later()),
    vscode.workspace.onDidOpenTextDocument((document) => isOurs(document) && later()),
    vscode.workspace.onDidDeleteFiles(later),
    new vscode.Disposable(() => clearTimeout(timer)),
  );
}

const ids = (items: vscode.TestItemCollection): string[] => {
  const found: string[] = [];
  items.forEach(({ id }) => void found.push(id));
  return found;
};
