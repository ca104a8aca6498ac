// A few questions, then a new site file. Escape at any of them leaves everything as it was.
import * as vscode from 'vscode';
import { choices } from './choices.ts';
import { type LeafAnswers, quantityFault, relativePath, type SiteAnswers, siteText } from './new-site.ts';

class Left extends Error {}

/** Given by tests and by other extensions: no questions are asked. */
export interface Given {
  readonly answers: SiteAnswers;
  readonly uri: string;
}

export async function newSite(given?: Given): Promise<void> {
  try {
    const uri = given === undefined ? await askWhere() : vscode.Uri.parse(given.uri, true);
    await write(uri, given?.answers ?? (await askAll(uri)));
  } catch (error) {
    if (error instanceof Left) return;
    await vscode.window.showErrorMessage(
      `The new site could not be written: ${error instanceof Error ? error.message : 'nobody knows why'}.`,
    );
  }
}

async function write(uri: vscode.Uri, answers: SiteAnswers): Promise<void> {
  // Made and opened in one edit that can be undone; a file that is there already is never written over.
  const edit = new vscode.WorkspaceEdit();
  edit.createFile(uri, { overwrite: false, ignoreIfExists: false, contents: new TextEncoder().encode(siteText(answers)) });
  if (!(await vscode.workspace.applyEdit(edit))) {
    await vscode.window.showWarningMessage(`There is a file ${vscode.workspace.asRelativePath(uri)} already. Choose another name.`);
    return;
  }
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
}

async function askWhere(): Promise<vscode.Uri> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const uri = await vscode.window.showSaveDialog({
    title: 'New site: where shall the file be?',
    saveLabel: 'Go on',
    filters: { 'Gate installations': ['gate'] },
    ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, 'new-site.gate') }),
  });
  if (uri === undefined) throw new Left();
  return uri;
}

async function askAll(uri: vscode.Uri): Promise<SiteAnswers> {
  const title = await askText(
    'New site: what is the place called?',
    'A name that a colleague will know, such as “Mill Lane, yard gate”.',
    (text) => (text.trim() === '' ? 'It needs a name.' : undefined),
  );
  const rules = await askOne(
    'By which rules is it judged?',
    meanings(choices.rules, { europe: 'Europe', 'north-america': 'North America' }),
  );
  const users = await askOne(
    'Who can be near the gate while it moves?',
    meanings(choices.users, { public: 'Anybody', limited: 'A limited group', trained: 'Only people trained on it' }),
  );
  const sight = await askOne(
    'Does whoever operates it see all of it from there?',
    meanings(choices.sight, { none: 'No, or not always', full: 'Yes, always' }),
  );
  const moves = await askOne('How does it move?', [
    ['swings', 'It swings', 'on hinges'],
    ['slides', 'It slides', 'along the fence'],
  ]);
  const opens =
    moves === 'slides'
      ? 'inward'
      : await askOne('Which way does it open?', meanings(choices.opens, { inward: 'Inward', outward: 'Outward' }));
  const count =
    moves === 'slides'
      ? 'one'
      : await askOne('How many leaves?', [
          ['one', 'One', ''],
          ['two', 'Two that meet', ''],
        ]);
  const leaves: LeafAnswers[] = [];
  for (const name of count === 'one' ? ['gate'] : ['left', 'right']) {
    const of = count === 'one' ? 'the leaf' : `the ${name} leaf`;
    const ask = async (what: string, units: readonly string[], example: string): Promise<string | undefined> => {
      const text = await askText(
        `New site: ${what} of ${of}`,
        `With its unit: ${example}. Leave it empty if it is still to be measured.`,
        (given) => quantityFault(given, units, example),
      );
      return text.trim() === '' ? undefined : text;
    };
    const [length, weight] =
      rules === 'europe'
        ? [['m', 'mm', 'cm'], ['kg']]
        : [
            ['ft', 'in', 'm', 'mm'],
            ['lb', 'kg'],
          ];
    leaves.push({
      name,
      width: await ask('width', length, rules === 'europe' ? '2.10 m' : '7 ft'),
      height: await ask('height', length, rules === 'europe' ? '1.80 m' : '6 ft'),
      mass: await ask('mass', weight, rules === 'europe' ? '165 kg' : '360 lb'),
    });
  }
  return { title, rules, users, sight, moves, leaves, opens, libraries: await askLibraries(uri) };
}

/** Files of the workspace that hold models. */
async function askLibraries(uri: vscode.Uri): Promise<string[]> {
  const found = await vscode.workspace.findFiles('**/*.gate', '**/node_modules/**', 500);
  const libraries: vscode.Uri[] = [];
  for (const file of found) {
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    if (/^[ \t]*[a-z]+-model\s/m.test(text) && file.scheme === uri.scheme) libraries.push(file);
  }
  if (libraries.length === 0) return [];
  const items = libraries
    .map((file) => ({ label: vscode.workspace.asRelativePath(file), file }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));
  const picked = await vscode.window.showQuickPick(items, {
    title: 'New site: which libraries name its products?',
    canPickMany: true,
    placeHolder: 'None is all right too; each is one “use” line',
  });
  if (picked === undefined) throw new Left();
  return picked.map(({ file }) => relativePath(uri.path, file.path));
}

async function askText(title: string, prompt: string, fault: (text: string) => string | undefined): Promise<string> {
  const text = await vscode.window.showInputBox({ title, prompt, ignoreFocusOut: true, validateInput: fault });
  if (text === undefined) throw new Left();
  return text;
}

/** Choices of the vocabulary in the order of their labels, each with what it means there. */
const meanings = <Option extends string>(
  of: Readonly<Record<Option, string>>,
  labels: Readonly<Record<Option, string>>,
): (readonly [option: Option, label: string, detail: string])[] =>
  (Object.keys(labels) as Option[]).map((option) => [option, labels[option], of[option]] as const);

async function askOne<Option extends string>(
  question: string,
  options: readonly (readonly [option: Option, label: string, detail: string])[],
): Promise<Option> {
  const items = options.map(([option, label, description]) => ({ option, label, description }));
  const picked = await vscode.window.showQuickPick(items, { title: `New site: ${question}`, ignoreFocusOut: true });
  if (picked === undefined) throw new Left();
  return picked.option;
}
