// What the tests inside the editor share: a small runner (an extension host has none, and a browser's no modules either),
// checks, and ways to files, texts and places.
import * as vscode from 'vscode';

export interface Test {
  readonly name: string;
  readonly body: () => Promise<void>;
  /** It starts programs, and may take twice as long as others. */
  readonly isSlow?: boolean;
}

/** What run.mjs reads from the console. */
const mark = '[pintle-test]';
/** A test that hangs must not take the others with it. */
const patience = 25_000;

/** Parts of the names of the tests that are wanted; run.mjs puts them in. None: all of them. */
declare const wantedTests: readonly string[];

/** Runs tests one after the other, each with a tidy editor; throws when one has failed. */
export async function runAll(given: readonly Test[]): Promise<void> {
  const tests = given.filter(({ name }) => wantedTests.length === 0 || wantedTests.some((part) => name.includes(part)));
  let failed = 0;
  for (const [index, { name, body, isSlow }] of tests.entries()) {
    let error: string | undefined;
    try {
      await within(isSlow === true ? patience * 2 : patience, body());
    } catch (thrown) {
      error = thrown instanceof Error ? (thrown instanceof Mismatch ? thrown.message : (thrown.stack ?? thrown.message)) : String(thrown);
      failed++;
    }
    try {
      await within(patience, tidy());
    } catch (thrown) {
      error ??= `afterwards: ${String(thrown)}`;
    }
    console.log(`${mark} ${JSON.stringify({ index, of: tests.length, name, ...(error === undefined ? {} : { error }) })}`);
  }
  if (failed > 0) throw new Error(`${failed} of ${tests.length} failed`);
}

class Mismatch extends Error {}

async function within<T>(milliseconds: number, work: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>(
    (_, reject) => (timer = setTimeout(() => reject(new Mismatch(`nothing after ${milliseconds / 1000} s`)), milliseconds)),
  );
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}

// --- Checks.

export function ok(holds: unknown, what: string): asserts holds {
  if (holds === false || holds === undefined || holds === null) throw new Mismatch(what);
}
export function equal(actual: unknown, expected: unknown, what: string): void {
  const [a, b] = [JSON.stringify(actual), JSON.stringify(expected)];
  if (a !== b) throw new Mismatch(`${what}: ${a}, but should be ${b}`);
}
export function includes(text: string, part: string, what: string): void {
  if (!text.includes(part)) throw new Mismatch(`${what} should have ${JSON.stringify(part)}: ${JSON.stringify(text.slice(0, 400))}`);
}
export const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Asks until it is so. What editors show comes when it comes; how fast is measured elsewhere. */
export async function until<T>(
  what: string,
  get: () => T | Promise<T>,
  holds: (value: T) => unknown = (value) => value !== undefined,
): Promise<T> {
  let last: T | undefined;
  for (const end = Date.now() + 15_000; Date.now() < end; await pause(40)) {
    last = await get();
    if (holds(last) === true) return last;
  }
  throw new Mismatch(`${what}; last seen: ${JSON.stringify(last)?.slice(0, 600)}`);
}

// --- Files and texts.

export const folder = (): vscode.Uri => {
  const [first] = vscode.workspace.workspaceFolders ?? [];
  ok(first, 'no folder is open');
  return first.uri;
};
export const uri = (path: string): vscode.Uri => vscode.Uri.joinPath(folder(), path);
export const read = async (path: string): Promise<string> => new TextDecoder().decode(await vscode.workspace.fs.readFile(uri(path)));
export const write = async (path: string, text: string): Promise<vscode.Uri> => {
  await vscode.workspace.fs.writeFile(uri(path), new TextEncoder().encode(text));
  return uri(path);
};
export const remove = (path: string): Thenable<void> => vscode.workspace.fs.delete(uri(path), { recursive: true });

/** Opens a file as a click does. (A text that an extension opens stays open for minutes after its editor is closed.) */
export async function open(path: string): Promise<vscode.TextDocument> {
  const wanted = uri(path).toString();
  await vscode.commands.executeCommand('vscode.open', uri(path), { preview: false });
  const document = await until(
    `${path} is open`,
    () => vscode.window.visibleTextEditors.find((editor) => editor.document.uri.toString() === wanted)?.document,
  );
  ok(document, 'nothing is open');
  return document;
}

/** A text with one part of it replaced; the part must be there. */
export function changed(text: string, part: string | RegExp, by: string): string {
  const after = text.replace(part, by);
  ok(after !== text, `${String(part)} is not in the text`);
  return after;
}

/** A file in `scratch/`, opened; it is gone after the test. From there `../library/…` leads to the library. */
export async function scratch(name: string, text: string): Promise<vscode.TextDocument> {
  await write(`scratch/${name}`, text);
  return open(`scratch/${name}`);
}

/** Replaces one part of an open text, as typing would. */
export async function replace(document: vscode.TextDocument, part: string | RegExp, by: string): Promise<void> {
  const text = document.getText();
  await setText(document, changed(text, part, by));
}
export async function setText(document: vscode.TextDocument, text: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, new vscode.Range(new vscode.Position(0, 0), document.positionAt(document.getText().length)), text);
  ok(await vscode.workspace.applyEdit(edit), 'the text cannot be changed');
}

export function at(document: vscode.TextDocument, part: string, shift = 0): vscode.Position {
  const offset = document.getText().indexOf(part);
  ok(offset >= 0, `${JSON.stringify(part)} is not in ${document.uri.path}`);
  return document.positionAt(offset + shift);
}
export const rangeOf = (document: vscode.TextDocument, part: string): vscode.Range =>
  new vscode.Range(at(document, part), at(document, part, part.length));
export const whole = (document: vscode.TextDocument): vscode.Range =>
  new vscode.Range(new vscode.Position(0, 0), document.positionAt(document.getText().length));

// --- What Pintle says.

export const ruleOf = (diagnostic: vscode.Diagnostic): string => {
  const { code } = diagnostic;
  return String(typeof code === 'object' ? code.value : code);
};
export const found = (file: vscode.Uri): vscode.Diagnostic[] =>
  vscode.languages.getDiagnostics(file).filter(({ source }) => source === 'pintle');
export const rulesIn = (file: vscode.Uri): string[] => found(file).map(ruleOf).sort();
export const untilRule = (file: vscode.Uri, rule: string): Promise<string[]> =>
  until(
    `${rule} in ${file.path}`,
    () => rulesIn(file),
    (rules) => rules.includes(rule),
  );
export const untilNoRule = (file: vscode.Uri, rule: string): Promise<string[]> =>
  until(
    `no ${rule} in ${file.path}`,
    () => rulesIn(file),
    (rules) => !rules.includes(rule),
  );

export const hoverAt = async (document: vscode.TextDocument, position: vscode.Position): Promise<string> =>
  (await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', document.uri, position))
    .flatMap(({ contents }) => contents)
    .map((content) => (typeof content === 'string' ? content : content.value))
    .join('\n');

export const labelOf = (label: string | { label: string } | { value: string }[]): string =>
  typeof label === 'string' ? label : Array.isArray(label) ? label.map(({ value }) => value).join('') : label.label;

/** What would be offered here. */
export const offered = async (
  document: vscode.TextDocument,
  position: vscode.Position,
  trigger?: string,
): Promise<vscode.CompletionItem[]> =>
  (
    await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      position,
      trigger,
      200,
    )
  ).items;

/** The tabs that are open, by their labels. */
export const tabs = (): vscode.Tab[] => vscode.window.tabGroups.all.flatMap((group) => [...group.tabs]);

async function tidy(): Promise<void> {
  for (const document of vscode.workspace.textDocuments)
    if (document.isDirty && document.languageId === 'pintle') {
      await vscode.window.showTextDocument(document, { preview: false });
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    }
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await vscode.commands.executeCommand('workbench.action.editorLayoutSingle');
  try {
    await remove('scratch');
  } catch {
    // None was made.
  }
}

/** Sets a setting for the time of a test. */
export async function withSetting(name: string, value: unknown, body: () => Promise<void>): Promise<void> {
  const configuration = vscode.workspace.getConfiguration();
  await configuration.update(name, value, vscode.ConfigurationTarget.Workspace);
  try {
    await body();
  } finally {
    await configuration.update(name, undefined, vscode.ConfigurationTarget.Workspace);
  }
}
