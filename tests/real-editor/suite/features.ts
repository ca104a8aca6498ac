// The features around the basics, as an editor asks for them.
import * as vscode from 'vscode';
import { site, soundSite } from './basics.ts';
import {
  at,
  changed,
  equal,
  includes,
  ok,
  open,
  pause,
  read,
  ruleOf,
  rulesIn,
  scratch,
  setText,
  type Test,
  until,
  untilRule,
  uri,
  whole,
  withSetting,
  write,
} from './kit.ts';

const run = async <T>(command: string, ...given: unknown[]): Promise<T> => vscode.commands.executeCommand<T>(command, ...given);

/** The kinds of the tokens of a text, by what they stand on. */
async function tokens(document: vscode.TextDocument): Promise<Map<string, Set<string>>> {
  const legend = await run<vscode.SemanticTokensLegend | undefined>('vscode.provideDocumentSemanticTokensLegend', document.uri);
  const answer = await run<vscode.SemanticTokens | undefined>('vscode.provideDocumentSemanticTokens', document.uri);
  const kinds = new Map<string, Set<string>>();
  if (legend === undefined || answer === undefined) return kinds;
  const { data } = answer;
  let [line, character] = [0, 0];
  for (let i = 0; i + 4 < data.length; i += 5) {
    const [lines = 0, characters = 0, length = 0, kind = 0] = [data[i], data[i + 1], data[i + 2], data[i + 3]];
    character = lines === 0 ? character + characters : characters;
    line += lines;
    const text = document.getText(new vscode.Range(line, character, line, character + length));
    kinds.set(text, (kinds.get(text) ?? new Set()).add(legend.tokenTypes[kind] ?? '?'));
  }
  return kinds;
}

export const features: Test[] = [
  {
    name: 'names and numbers are told apart by their meaning',
    body: async () => {
      const document = await open(soundSite);
      const kinds = await until(
        'tokens',
        () => tokens(document),
        (all) => all.size > 20,
      );
      const [name, model] = [[...(kinds.get('west-ram') ?? [])], [...(kinds.get('birch-ram') ?? [])]];
      ok(name.length > 0 && model.length > 0, `no tokens for names: ${[...kinds.keys()].slice(0, 20).join(' ')}`);
      ok(!model.some((kind) => name.includes(kind)), `a name and a model look alike: ${name.join(' ')}`);
    },
  },
  {
    name: 'above a block stands its verdict, and above the site the preview',
    body: async () => {
      const document = await open(soundSite);
      const lenses = await until(
        'lenses',
        () => run<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 100),
        (all) => all.length > 3,
      );
      const preview = lenses.find(({ command }) => command?.command === 'pintle.openPreview');
      ok(preview, `no lens opens the preview: ${lenses.map(({ command }) => command?.title).join(', ')}`);
      includes(document.lineAt(preview.range.start.line).text, 'site', 'where the preview is offered');
      ok(
        lenses.every(({ command }) => command !== undefined && command.title !== ''),
        'a lens has no words',
      );
      await withSetting('pintle.lenses.show', false, async () => {
        await until(
          'no lenses',
          () => run<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 100),
          (all) => all.length === 0,
        );
      });
    },
  },
  {
    name: 'blocks can be folded, and selected from inside out',
    body: async () => {
      const document = await open(soundSite);
      const folds = await run<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider', document.uri);
      const leaf = at(document, 'leaf west {').line;
      ok(
        folds.some(({ start, end }) => start === leaf && end > leaf + 3),
        `leaf west cannot be folded: ${JSON.stringify(folds.slice(0, 5))}`,
      );
      // An editor left to itself folds by the left edge, and there these lines are all the same.
      ok(
        folds.some(({ start, kind }) => start === at(document, 'use "').line && kind === vscode.FoldingRangeKind.Imports),
        `the libraries cannot be folded: ${JSON.stringify(folds.slice(0, 5))}`,
      );
      const [selection] = await run<vscode.SelectionRange[]>('vscode.executeSelectionRangeProvider', document.uri, [
        at(document, 'width 2.40', 7),
      ]);
      const steps: string[] = [];
      for (let step: vscode.SelectionRange | undefined = selection; step !== undefined; step = step.parent)
        steps.push(document.getText(step.range));
      ok(steps.includes('2.40 m'), `no step selects the value with its unit: ${JSON.stringify(steps.map((text) => text.slice(0, 30)))}`);
      ok(steps.includes('width 2.40 m'), `no step selects the line: ${JSON.stringify(steps.map((text) => text.slice(0, 30)))}`);
      ok(
        steps.some((text) => text.startsWith('leaf west {') && text.endsWith('}')),
        'no step selects the block',
      );
    },
  },
  {
    name: 'the paths of libraries are links',
    body: async () => {
      const document = await open(soundSite);
      const links = await run<vscode.DocumentLink[]>('vscode.executeLinkProvider', document.uri, 100);
      const panels = links.find(({ range }) => document.getText(range).includes('panels.gate'));
      equal(panels?.target?.toString(), uri('library/panels.gate').toString(), 'where the link leads');
    },
  },
  {
    name: 'names are found in the whole folder',
    body: async () => {
      const found = await until(
        'symbols',
        () => run<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'rowan'),
        (all) => all.length > 0,
      );
      ok(
        found.some(({ name, location }) => name.includes('rowan-pair') && location.uri.path.endsWith('/library/panels.gate')),
        `found: ${found.map(({ name }) => name).join(' ')}`,
      );
    },
  },
  {
    name: 'what depends on a value is told as its callers',
    body: async () => {
      const document = await open(soundSite);
      const [item] = await run<vscode.CallHierarchyItem[]>('vscode.prepareCallHierarchy', document.uri, at(document, 'mass 180 kg', 6));
      ok(item, 'nothing at the mass');
      const calls = await run<vscode.CallHierarchyIncomingCall[]>('vscode.provideIncomingCalls', item);
      ok(
        calls.some(({ from }) => /inertia/i.test(from.name)),
        `the inertia does not depend on the mass: ${calls.map(({ from }) => from.name).join(', ')}`,
      );
    },
  },
  {
    name: 'while a line is written, its shape is shown',
    body: async () => {
      const document = await scratch('shape.gate', changed(await site(), 'closes onto west overlap 40 mm gap 20 mm', 'closes onto '));
      const help = await run<vscode.SignatureHelp | undefined>(
        'vscode.executeSignatureHelpProvider',
        document.uri,
        at(document, 'closes onto ', 'closes onto '.length),
        ' ',
      );
      includes(help?.signatures[0]?.label ?? '', 'overlap', 'the shape of the line');
    },
  },
  {
    name: 'a name is renamed in every file that uses it',
    body: async () => {
      const library = await read('library/panels.gate');
      await write('scratch/library/panels.gate', library);
      const document = await scratch('site.gate', (await site()).replace('../library/panels.gate', 'library/panels.gate'));
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      const place = at(document, 'rowan-pair', 2);
      const prepared = await run<{ range: vscode.Range; placeholder: string }>('vscode.prepareRename', document.uri, place);
      equal(prepared.placeholder, 'rowan-pair', 'what is to be renamed');
      const edit = await run<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', document.uri, place, 'oak-pair');
      const names = edit
        .entries()
        .map(([file]) => file.path.split('/').slice(-2).join('/'))
        .sort();
      equal(names, ['library/panels.gate', 'scratch/site.gate'], 'files that are changed');
      ok(await vscode.workspace.applyEdit(edit), 'the edits cannot be made');
      await until(
        'no findings with the new name',
        () => [document.getText().includes('panel main : oak-pair'), rulesIn(document.uri)] as const,
        ([renamed, rules]) => renamed && rules.length === 0,
      );
      await vscode.workspace.saveAll(false);
    },
  },
  {
    name: 'a library that is moved is followed by those who use it',
    body: async () => {
      await write('scratch/library/panels.gate', await read('library/panels.gate'));
      const document = await scratch('site.gate', (await site()).replace('../library/panels.gate', 'library/panels.gate'));
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      const edit = new vscode.WorkspaceEdit();
      edit.renameFile(uri('scratch/library/panels.gate'), uri('scratch/boards.gate'));
      ok(await vscode.workspace.applyEdit(edit), 'the file cannot be moved');
      await until(
        'the new path',
        () => document.getText(),
        (text) => text.includes('use "boards.gate"'),
      );
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      await vscode.workspace.saveAll(false);
    },
  },
  {
    name: 'formatting of a stretch leaves the rest alone; a brace puts its block straight',
    body: async () => {
      const straight = await site();
      const crooked = changed(changed(straight, '  width 2.40 m', '       width   2.40 m'), '  dwell 25 s', '      dwell   25 s');
      const document = await scratch('part.gate', crooked);
      const line = document.lineAt(at(document, 'width   2.40').line);
      const options = { tabSize: 2, insertSpaces: true };
      const edit = new vscode.WorkspaceEdit();
      edit.set(document.uri, (await run<vscode.TextEdit[]>('vscode.executeFormatRangeProvider', document.uri, line.range, options)) ?? []);
      ok(await vscode.workspace.applyEdit(edit), 'the edits cannot be made');
      equal(document.getText(), changed(straight, '  dwell 25 s', '      dwell   25 s'), 'the text');
      const end = at(document, '      dwell   25 s').line;
      let brace = end;
      while (document.lineAt(brace).text !== '}') brace++;
      const typed = await run<vscode.TextEdit[] | undefined>(
        'vscode.executeFormatOnTypeProvider',
        document.uri,
        new vscode.Position(brace, 1),
        '}',
        options,
      );
      ok((typed ?? []).length > 0, 'a closing brace puts nothing straight');
    },
  },
  {
    name: 'each kind of value has a switch of its own',
    body: async () => {
      const document = await open(soundSite);
      const labels = async (): Promise<string> =>
        (await run<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole(document)))
          .map(({ label }) => (typeof label === 'string' ? label : label.map(({ value }) => value).join('')))
          .join('\n');
      await until('run times and inertia', labels, (all) => all.includes('run time') && all.includes('inertia'));
      await withSetting('pintle.values.timing', false, async () => {
        await until('inertia without run times', labels, (all) => !all.includes('run time') && all.includes('inertia'));
      });
    },
  },
];

/** What needs processes, or the disk: a desktop. */
export const onDesktop: Test[] = [
  {
    name: 'the task gives the verdict of the command; each finding stands in the list once, before, during and after it',
    isSlow: true,
    body: async () => {
      const [task] = await vscode.tasks.fetchTasks({ type: 'pintle' });
      ok(task, 'no task is offered');
      await onceAround(task, 1);
    },
  },
  // One folder of two as well: what is found in the other is still found.
  ...[
    { path: '.', code: 1 },
    { path: 'sound', code: 0 },
  ].map(
    ({ path, code }): Test => ({
      name: `a task of one’s own that reads what the command says of ${path} doubles nothing, and takes nothing away`,
      isSlow: true,
      body: async () => {
        const [given] = await vscode.tasks.fetchTasks({ type: 'pintle' });
        ok(given?.execution instanceof vscode.ProcessExecution, 'no task is offered');
        const { process, args, options } = given.execution;
        const [program = ''] = args;
        const run = new vscode.ProcessExecution(process, [program, 'check', path, '--output', 'lines'], options);
        const definition = { type: 'process', label: `own ${path}` };
        await onceAround(new vscode.Task(definition, vscode.TaskScope.Workspace, `own ${path}`, 'tests', run, '$pintle'), code);
      },
    }),
  ),
];

/** Every finding of the folder, each as a line. */
const everything = (): string[] =>
  vscode.languages
    .getDiagnostics()
    .flatMap(([file, findings]) =>
      findings.map(
        (one) => `${file.path}:${one.range.start.line}:${one.range.start.character}:${ruleOf(one)}: ${one.message.split('\n')[0]}`,
      ),
    )
    .sort();

/** Runs a task, which ends with this code, and looks at what is found before, during and after it, and after an edit. */
async function onceAround(task: vscode.Task, code: number): Promise<void> {
  const document = await open('unsafe/leaves-collide.gate');
  await untilRule(document.uri, 'lag-too-small');
  const settled = await until(
    'findings of the whole folder',
    async () => {
      const before = everything();
      await pause(2500);
      return { before, after: everything() };
    },
    ({ before, after }) => before.length > 50 && before.join() === after.join(),
  );
  equal(settled.after.length, new Set(settled.after).size, 'what is found is found once');
  let most = 0;
  const listener = vscode.languages.onDidChangeDiagnostics(() => void (most = Math.max(most, everything().length)));
  const ended = new Promise<number | undefined>((resolve) => {
    const ear = vscode.tasks.onDidEndTaskProcess(({ execution, exitCode }) => {
      if (execution.task.name !== task.name) return;
      ear.dispose();
      resolve(exitCode);
    });
  });
  await vscode.tasks.executeTask(task);
  equal(await ended, code, 'the exit code');
  await pause(2000);
  listener.dispose();
  equal(everything(), settled.after, 'after the task');
  const text = document.getText();
  await setText(document, `${text}\n`);
  await pause(2500);
  equal(everything(), settled.after, 'after an edit');
  await setText(document, text);
}

export const preview: Test[] = [
  {
    name: 'the preview opens beside the text, and follows to another file',
    body: async () => {
      const document = await open(soundSite);
      await run('pintle.openPreview');
      const label = (): string | undefined =>
        vscode.window.tabGroups.all
          .flatMap((group) => [...group.tabs])
          .find((tab) => tab.input instanceof vscode.TabInputWebview && tab.input.viewType.includes('pintle.preview'))?.label;
      await until('the preview', label, (shown) => shown?.includes('withy-lane') === true);
      await vscode.window.showTextDocument(document.uri, { viewColumn: vscode.ViewColumn.One });
      await vscode.window.showTextDocument(uri('sound/mill-race.gate'), { viewColumn: vscode.ViewColumn.One });
      await until('the other file in the preview', label, (shown) => shown?.includes('mill-race') === true);
    },
  },
];
