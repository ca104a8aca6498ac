// What an installed extension must do, on a desktop and in a browser alike.
import * as vscode from 'vscode';
import {
  at,
  changed,
  equal,
  found,
  hoverAt,
  includes,
  labelOf,
  offered,
  ok,
  open,
  pause,
  rangeOf,
  read,
  remove,
  replace,
  ruleOf,
  rulesIn,
  scratch,
  setText,
  type Test,
  tabs,
  until,
  untilNoRule,
  untilRule,
  uri,
  whole,
  withSetting,
  write,
} from './kit.ts';

export const soundSite = 'sound/withy-lane.gate';
export const unsafeSite = 'unsafe/leaves-collide.gate';
export const site = (): Promise<string> => read(soundSite);
/** The sound site with a closing lag that lets the leaves meet: the leaf that covers the other is then hit by it. */
export const colliding = async (): Promise<string> => changed(await site(), 'lag closing 8 s', 'lag closing 0.2 s');

const extension = (): vscode.Extension<unknown> | undefined => vscode.extensions.getExtension('pintle.pintle');

export const activation: Test[] = [
  {
    name: 'the extension is installed, and starts where there are .gate files',
    body: async () => {
      ok(extension(), 'the extension is not in this extension host');
      const document = await open(unsafeSite);
      equal(document.languageId, 'pintle', 'the language of a .gate file');
      await until(
        'the extension is active',
        () => extension()?.isActive,
        (active) => active === true,
      );
    },
  },
];

export const diagnostics: Test[] = [
  {
    name: 'a finding has a place, a severity, its rule, a page that is there, and what it goes with',
    body: async () => {
      const document = await open(unsafeSite);
      await untilRule(document.uri, 'lag-too-small');
      const lag = found(document.uri).find(
        (diagnostic) => ruleOf(diagnostic) === 'lag-too-small' && document.getText(diagnostic.range).includes('closing'),
      );
      ok(lag, 'no lag-too-small on the closing lag');
      equal(document.getText(lag.range), 'lag closing 0.2 s', 'what is underlined');
      equal(lag.severity, vscode.DiagnosticSeverity.Error, 'severity');
      ok(typeof lag.code === 'object', 'the rule is no link');
      const page = new TextDecoder().decode(await vscode.workspace.fs.readFile(lag.code.target));
      includes(page, '# lag-too-small', 'the page of the rule');
      const related = found(document.uri).flatMap(({ relatedInformation }) => relatedInformation ?? []);
      ok(related.length > 0, 'no finding leads anywhere else');
      ok(
        related.every(({ location, message }) => message !== '' && location.uri.path.endsWith('.gate')),
        'a related place has no words or no file',
      );
    },
  },
  {
    name: 'a sound text has no findings; a mistake brings one, mending takes it away',
    body: async () => {
      const document = await scratch('mend.gate', await site());
      await replace(document, 'width 2.40 m\n', 'width 2.40\n');
      await untilRule(document.uri, 'unit-missing');
      await replace(document, 'width 2.40\n', 'width 2.40 m\n');
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      await replace(document, 'lag closing 8 s', 'lag closing 0.2 s');
      await untilRule(document.uri, 'lag-too-small');
      await vscode.window.showTextDocument(document);
      await vscode.commands.executeCommand('undo');
      await untilNoRule(document.uri, 'lag-too-small');
    },
  },
  {
    name: 'nothing is left of a text that was never saved once it is closed',
    body: async () => {
      const document = await vscode.workspace.openTextDocument({
        language: 'pintle',
        content: 'language 1\nleaf west {\n  widht 2 m\n}\n',
      });
      await vscode.window.showTextDocument(document);
      await untilRule(document.uri, 'word-unknown');
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
      await until(
        'no findings of a closed text',
        () => found(document.uri),
        (all) => all.length === 0,
      );
    },
  },
  {
    name: 'an open site follows its library as it is typed, unsaved',
    body: async () => {
      await write('scratch/library/panels.gate', await read('library/panels.gate'));
      const document = await scratch('site.gate', (await site()).replace('../library/panels.gate', 'library/panels.gate'));
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      const panels = await open('scratch/library/panels.gate');
      await replace(panels, 'panel-model rowan-pair', 'panel-model renamed-pair');
      await untilRule(document.uri, 'model-unknown');
      await replace(panels, 'panel-model renamed-pair', 'panel-model rowan-pair');
      await until(
        'no findings again',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
    },
  },
];

/** Needs somebody who watches the files: a desktop. */
export const files: Test[] = [
  {
    name: 'nothing is left of a file that is gone',
    body: async () => {
      const document = await scratch('gone.gate', await colliding());
      await untilRule(document.uri, 'lag-too-small');
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
      await remove('scratch/gone.gate');
      await until(
        'no findings of a file that is gone',
        () => found(document.uri),
        (all) => all.length === 0,
      );
    },
  },
  {
    name: 'many files replaced at once, as by another branch: each is judged by what is there now',
    body: async () => {
      const [sound, unsafe] = [await site(), await colliding()];
      const names = Array.from({ length: 40 }, (_, index) => `scratch/branch/site-${index}.gate`);
      const up = (text: string): string => text.replaceAll('../library/', '../../library/');
      await Promise.all(names.map((name, index) => write(name, up(index % 2 === 0 ? sound : unsafe))));
      const [first, second, third] = [await open(names[0] as string), await open(names[1] as string), await open(names[3] as string)];
      await untilRule(second.uri, 'lag-too-small');
      equal(rulesIn(first.uri), [], 'findings of the sound one');
      // The editor needs a moment before it watches what is in a new folder.
      await pause(1500);
      // The other branch: what was sound is unsafe, and the other way round; a quarter of the files is not in it.
      const kept = (index: number): boolean => index % 4 !== 3;
      await Promise.all(names.map((name, index) => (kept(index) ? write(name, up(index % 2 === 0 ? unsafe : sound)) : remove(name))));
      await untilRule(first.uri, 'lag-too-small');
      await until(
        'no findings where the file is sound now',
        () => rulesIn(second.uri),
        (rules) => rules.length === 0,
      );
      ok(!first.isDirty && !second.isDirty, 'a text was changed that nobody typed in');
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
      await until(
        'no findings of a file that the branch does not have',
        () => found(third.uri),
        (all) => all.length === 0,
      );
      const stale = (): string[] => names.filter((name, index) => found(uri(name)).length > 0 && (!kept(index) || index % 2 === 1));
      await until('nothing stale in any of the files', stale, (left) => left.length === 0);
    },
  },
  {
    name: 'a library that changes on the disk is read anew',
    body: async () => {
      const library = await read('library/panels.gate');
      await write('scratch/library/panels.gate', library);
      const document = await scratch('site.gate', (await site()).replace('../library/panels.gate', 'library/panels.gate'));
      await until(
        'values of what has been judged',
        async () =>
          (await vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole(document)))
            ?.length ?? 0,
        (many) => many > 0,
      );
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      // An editor that has just been told of a new folder needs a moment before it watches what is in it.
      await pause(5000);
      await write('scratch/library/panels.gate', changed(library, 'panel-model rowan-pair', 'panel-model renamed-pair'));
      await untilRule(document.uri, 'model-unknown');
      await remove('scratch/library/panels.gate');
      await untilRule(document.uri, 'use-missing-file');
      await write('scratch/library/panels.gate', library);
      await until(
        'no findings once it is back',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      // With its folder: whoever watches files tells of the folder only.
      await remove('scratch/library');
      await untilRule(document.uri, 'use-missing-file');
      // Again: a folder first, and a moment for whoever watches it.
      await write('scratch/library/empty.gate', 'language 1\n');
      await pause(5000);
      await write('scratch/library/panels.gate', library);
      await until(
        'no findings once it is back',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
    },
  },
];

export const reading: Test[] = [
  {
    name: 'hover tells what a word means, what a model is, and how a value was worked out',
    body: async () => {
      const document = await open(soundSite);
      includes(await hoverAt(document, at(document, 'overlap 40 mm', 2)), 'overlap', 'hover over a word');
      includes(await hoverAt(document, at(document, 'birch-ram', 2)), 'Linear ram, 24 V', 'hover over a model of a library');
    },
  },
  {
    name: 'completion offers what fits the place, with its meaning',
    body: async () => {
      const document = await scratch('words.gate', changed(await site(), 'panel main : rowan-pair {', 'panel main :  {'));
      const models = await offered(document, at(document, 'panel main :  {', 'panel main : '.length));
      const rowan = models.find(({ label }) => labelOf(label) === 'rowan-pair');
      ok(rowan, `no rowan-pair among ${models.map(({ label }) => labelOf(label)).join(' ')}`);
      ok(!models.some(({ label }) => labelOf(label) === 'birch-ram'), 'a drive is offered where a panel stands');
      const documentation = typeof rowan.documentation === 'string' ? rowan.documentation : (rowan.documentation?.value ?? '');
      includes(
        documentation + (rowan.detail ?? '') + labelOf(rowan.label),
        'Control panel for one or two swing leaves',
        'what is said of rowan-pair',
      );
      const words = (await offered(document, at(document, 'height 1.80 m'))).map(({ label }) => labelOf(label));
      ok(words.includes('friction'), `no word of a leaf is offered in a leaf: ${words.join(' ')}`);
    },
  },
  {
    name: 'definition leads into the library',
    body: async () => {
      const document = await open(soundSite);
      const places = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
        'vscode.executeDefinitionProvider',
        document.uri,
        at(document, 'rowan-pair', 3),
      );
      equal(places.length, 1, 'places');
      const [place] = places;
      ok(place, 'no place');
      const target = 'targetUri' in place ? { uri: place.targetUri, range: place.targetSelectionRange ?? place.targetRange } : place;
      equal(target.uri.toString(), uri('library/panels.gate').toString(), 'the file');
      equal((await vscode.workspace.openTextDocument(target.uri)).getText(target.range), 'rowan-pair', 'the name there');
    },
  },
  {
    name: 'values stand behind the lines that cause them',
    body: async () => {
      const document = await open(soundSite);
      const hints = async (): Promise<vscode.InlayHint[]> =>
        vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole(document));
      const shown = await until('values', hints, (all) => all.length > 5);
      const text = (hint: vscode.InlayHint): string =>
        typeof hint.label === 'string' ? hint.label : hint.label.map(({ value }) => value).join('');
      const run = shown.find((hint) => /run time [\d.]+ s/.test(text(hint)));
      ok(run, `no run time among ${shown.map(text).join(', ')}`);
      const line = document.lineAt(run.position.line);
      equal(run.position.character, line.text.trimEnd().length, `a value stands at the end of “${line.text}”`);
    },
  },
];

export const moving: Test[] = [
  {
    name: 'references are found in every file of the folder',
    body: async () => {
      const library = await open('library/panels.gate');
      const places = await vscode.commands.executeCommand<vscode.Location[]>(
        'vscode.executeReferenceProvider',
        library.uri,
        at(library, 'rowan-pair', 2),
      );
      const names = new Set(places.map((place) => place.uri.path.split('/').slice(-2).join('/')));
      for (const name of ['library/panels.gate', soundSite, unsafeSite])
        ok(names.has(name), `no reference from ${name}: ${[...names].join(' ')}`);
      for (const place of places)
        equal((await vscode.workspace.openTextDocument(place.uri)).getText(place.range), 'rowan-pair', 'what stands at a reference');
    },
  },
  {
    name: 'the outline has every block, and its lines within it',
    body: async () => {
      const document = await open(soundSite);
      const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri);
      const names = symbols.map(({ name }) => name);
      for (const name of ['west', 'east', 'low-beam', 'main'])
        ok(
          names.some((each) => each.includes(name)),
          `no ${name} in the outline: ${names.join(', ')}`,
        );
      for (const symbol of symbols) ok(symbol.range.contains(symbol.selectionRange), `the name of ${symbol.name} is outside it`);
    },
  },
  {
    name: 'all places of a name in a file are marked',
    body: async () => {
      const document = await open(soundSite);
      const marks = await vscode.commands.executeCommand<vscode.DocumentHighlight[]>(
        'vscode.executeDocumentHighlights',
        document.uri,
        at(document, 'west-edge', 2),
      );
      equal(
        marks.map(({ range }) => document.getText(range)),
        ['west-edge', 'west-edge'],
        'marked',
      );
      // An editor left to itself marks the same letters, and knows nothing of where a name is given.
      equal(
        marks.map(({ kind }) => kind),
        [vscode.DocumentHighlightKind.Write, vscode.DocumentHighlightKind.Read],
        'how they are marked',
      );
    },
  },
];

const applyAll = async (document: vscode.TextDocument, edits: readonly vscode.TextEdit[]): Promise<void> => {
  const edit = new vscode.WorkspaceEdit();
  edit.set(document.uri, [...edits]);
  ok(await vscode.workspace.applyEdit(edit), 'the edits cannot be made');
};

const withSettings = (values: Readonly<Record<string, unknown>>, body: () => Promise<void>): Promise<void> =>
  Object.entries(values).reduceRight<() => Promise<void>>(
    (inner, [name, value]) =>
      () =>
        withSetting(name, value, inner),
    body,
  )();

/** What each line begins with, empty ones aside. */
const indentsOf = (text: string): string[] =>
  text.split('\n').flatMap((line) => (line.trim() === '' ? [] : [/^\s*/.exec(line)?.[0] ?? '']));

/** Forms of quick fixes, snippets, blocks that are completed and lines that are typed: formatting moves none of their lines. */
async function putIn(): Promise<void> {
  // The last lines of a block, and lines of a block within a block.
  const text = changed(await site(), 'seat 1.5 s', 'seat 4 s').replace(/wire west-edge to [^\n]*\n/, '');
  const document = await scratch('forms.gate', text);
  await untilRule(document.uri, 'seat-outside-practice');
  await untilRule(document.uri, 'sensor-not-wired');
  const straight = async (what: string): Promise<void> => {
    const edits =
      (await vscode.commands.executeCommand<vscode.TextEdit[] | undefined>('vscode.executeFormatDocumentProvider', document.uri, {
        tabSize: 2,
        insertSpaces: true,
      })) ?? [];
    const before = document.getText();
    let after = before;
    for (const { range, newText } of [...edits].sort((a, b) => b.range.start.compareTo(a.range.start)))
      after = after.slice(0, document.offsetAt(range.start)) + newText + after.slice(document.offsetAt(range.end));
    equal(indentsOf(before), indentsOf(after), `how lines are indented after ${what}`);
  };
  for (const [rule, part, title] of [
    ['seat-outside-practice', 'seat 4 s', 'Accept “seat-outside-practice”'],
    ['sensor-not-wired', 'sensor west-edge', 'Wire “west-edge” to “main”'],
  ] as const) {
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      new vscode.Range(at(document, part), at(document, part, part.length)),
      vscode.CodeActionKind.QuickFix.value,
      20,
    );
    const action = actions.find((one) => one.title.startsWith(title));
    ok(action?.edit, `${rule}: no “${title}” among ${actions.map((one) => one.title).join('; ')}`);
    const lines = document.lineCount;
    ok(await vscode.workspace.applyEdit(action.edit), `${title} cannot be applied`);
    equal(document.lineCount, lines + 1, `lines after “${title}”`);
    await straight(`“${title}”`);
  }
  const editor = await vscode.window.showTextDocument(document);
  const atEnd = async (): Promise<void> => {
    const end = document.positionAt(document.getText().length);
    editor.selection = new vscode.Selection(end, end);
    await editor.edit((edit) => edit.insert(end, '\n'));
    const after = document.positionAt(document.getText().length);
    editor.selection = new vscode.Selection(after, after);
  };
  for (const name of ['Edge with wiring', 'Panel library']) {
    await atEnd();
    const before = document.lineCount;
    await vscode.commands.executeCommand('editor.action.insertSnippet', { langId: 'pintle', name });
    ok(document.lineCount > before + 4, `the snippet “${name}” was not put in`);
    await vscode.commands.executeCommand('leaveSnippet');
    await straight(`the snippet “${name}”`);
  }
  await atEnd();
  const block = (await offered(document, editor.selection.active)).find(({ label }) => labelOf(label) === 'leaf');
  ok(block?.insertText instanceof vscode.SnippetString, 'no block is offered');
  await editor.insertSnippet(block.insertText);
  await vscode.commands.executeCommand('leaveSnippet');
  await straight('a block that was completed');
  // A line that is typed, and one more level of it by the key.
  const brace = at(document, 'motion {', 'motion {'.length);
  editor.selection = new vscode.Selection(brace, brace);
  await vscode.commands.executeCommand('type', { text: '\n' });
  await vscode.commands.executeCommand('type', { text: 'dwell 25 s' });
  await straight('a line that was typed');
}

export const changing: Test[] = [
  {
    name: 'formatting puts a crooked text straight, and leaves a straight one alone',
    body: async () => {
      const straight = await site();
      const crooked = changed(changed(straight, '  width 2.40 m', '       width    2.40 m'), 'leaf west {', 'leaf   west   {');
      const document = await scratch('crooked.gate', crooked);
      const options = { tabSize: 2, insertSpaces: true };
      const format = (): Thenable<vscode.TextEdit[] | undefined> =>
        vscode.commands.executeCommand<vscode.TextEdit[]>('vscode.executeFormatDocumentProvider', document.uri, options);
      await applyAll(document, (await format()) ?? []);
      equal(document.getText(), straight, 'the text');
      equal(((await format()) ?? []).length, 0, 'edits of a straight text');
    },
  },
  {
    name: 'a quick fix mends what it says it mends',
    body: async () => {
      const document = await scratch('fix.gate', changed(await site(), 'mass 180 kg', 'mas 180 kg'));
      await untilRule(document.uri, 'word-unknown');
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        rangeOf(document, 'mas 180'),
        vscode.CodeActionKind.QuickFix.value,
        20,
      );
      const action = actions.find(({ title }) => title.includes('mass'));
      ok(action?.edit, `no fix that writes “mass”: ${actions.map(({ title }) => title).join('; ')}`);
      ok(await vscode.workspace.applyEdit(action.edit), 'the fix cannot be applied');
      await untilNoRule(document.uri, 'word-unknown');
      equal(document.getText(), await site(), 'the text');
    },
  },
  {
    name: 'of an error that cannot be accepted the first thing offered is what to do, and its page opens',
    isSlow: true,
    body: async () => {
      // An edge on the terminals of a beam: there is nothing that could be written without asking.
      const document = await scratch('unfit.gate', changed(await site(), 'wire west-edge to E1 E0', 'wire west-edge to T1 T0'));
      await untilRule(document.uri, 'terminal-unfit');
      const place = found(document.uri).find((one) => ruleOf(one) === 'terminal-unfit')?.range as vscode.Range;
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        place,
        vscode.CodeActionKind.QuickFix.value,
        20,
      );
      const isAcceptance = ({ kind }: vscode.CodeAction): boolean => kind?.value === 'quickfix.accept.pintle';
      const titles = actions.map(({ title }) => title).join('; ');
      ok(actions[0] !== undefined && !isAcceptance(actions[0]), `first is to accept it: ${titles}`);
      ok(!actions.some((action) => isAcceptance(action) && action.isPreferred === true), `to accept it is preferred: ${titles}`);
      // What cannot work is not accepted.
      ok(!actions.some(({ title }) => title.startsWith('Accept “terminal-unfit”')), `it can be accepted: ${titles}`);
      const explain = actions.find(({ title }) => title === 'Explain “terminal-unfit”');
      ok(explain?.command, `nothing explains it: ${titles}`);
      await vscode.commands.executeCommand(explain.command.command, ...(explain.command.arguments ?? []));
      await until(
        'the page of the rule',
        () => tabs().map(({ label }) => label),
        (labels) => labels.some((label) => label.includes('terminal-unfit')),
      );
    },
  },
  ...(
    [
      ['four spaces for all languages', { 'editor.tabSize': 4, 'editor.detectIndentation': true }],
      ['tabs of eight for all languages', { 'editor.tabSize': 8, 'editor.insertSpaces': false, 'editor.detectIndentation': true }],
      ['four spaces for this language', { '[pintle]': { 'editor.tabSize': 4 } }],
      ['tabs of eight for this language', { '[pintle]': { 'editor.tabSize': 8, 'editor.insertSpaces': false } }],
    ] as const
  ).map(
    ([settings, values]): Test => ({
      name: `what is put in stands as the formatter writes it, with ${settings}`,
      isSlow: true,
      body: () => withSettings(values, putIn),
    }),
  ),
  {
    name: 'fix-all applies every safe fix and no other',
    body: async () => {
      // A missing language line is safe to mend; a misspelt word is not: it may mean another.
      const document = await scratch('all.gate', changed(changed(await site(), 'language 1\n', ''), 'mass 180 kg', 'mas 180 kg'));
      await untilRule(document.uri, 'language-missing');
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        whole(document),
        vscode.CodeActionKind.SourceFixAll.value,
        20,
      );
      const all = actions.find(({ kind }) => kind?.value === 'source.fixAll.pintle');
      ok(all?.edit, `no fix-all: ${actions.map(({ title }) => title).join('; ')}`);
      ok(await vscode.workspace.applyEdit(all.edit), 'it cannot be applied');
      ok(document.getText().startsWith('language 1'), 'the language line is not there');
      includes(document.getText(), 'mas 180 kg', 'what is not safe to change');
      await untilNoRule(document.uri, 'language-missing');
    },
  },
  {
    name: 'fix-all runs at saving where it is asked for',
    body: () =>
      withSetting('editor.codeActionsOnSave', { 'source.fixAll.pintle': 'explicit' }, async () => {
        const document = await scratch('save.gate', (await site()).replace('language 1\n', ''));
        await untilRule(document.uri, 'language-missing');
        await replace(document, 'dwell 25 s', 'dwell 26 s');
        await vscode.window.showTextDocument(document);
        await vscode.commands.executeCommand('workbench.action.files.save');
        await until(
          'the language line',
          () => document.getText(),
          (text) => text.startsWith('language 1'),
        );
      }),
  },
  {
    name: 'values can be switched off, and on again, without a new start',
    body: async () => {
      const document = await open(soundSite);
      const count = async (): Promise<number> =>
        (await vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole(document))).length;
      await until('values', count, (many) => many > 5);
      await withSetting('pintle.values.show', false, async () => {
        await until('no values', count, (many) => many === 0);
      });
      await until('values again', count, (many) => many > 5);
    },
  },
];

export const commands: Test[] = [
  {
    name: 'every command of the manifest is there',
    body: async () => {
      const declared = (
        (extension()?.packageJSON as { contributes: { commands: { command: string }[] } } | undefined)?.contributes.commands ?? []
      ).map(({ command }) => command);
      ok(declared.length >= 5, 'no commands are declared');
      const known = await vscode.commands.getCommands(true);
      equal(
        declared.filter((command) => !known.includes(command)),
        [],
        'declared and not there',
      );
    },
  },
  {
    name: 'new site: a file from a few answers, without mistakes of spelling',
    body: async () => {
      const folder = vscode.workspace.workspaceFolders?.[0]?.uri as vscode.Uri;
      const uri = vscode.Uri.joinPath(folder, 'from-answers.gate').toString();
      const answers = {
        title: 'Elder Row',
        rules: 'europe',
        users: 'public',
        sight: 'none',
        moves: 'swings',
        opens: 'inward',
        leaves: [{ name: 'gate', width: '2.10m' }],
        libraries: ['library/sensors.gate'],
      };
      await vscode.commands.executeCommand('pintle.newSite', { uri, answers });
      const document = vscode.window.activeTextEditor?.document;
      equal([document?.languageId, document?.uri.toString()], ['pintle', uri], 'what is open');
      ok(document, 'nothing is open');
      // What the server says of it shows that it has been read.
      await until(
        'values or findings',
        async () =>
          found(document.uri).length +
          (await vscode.commands.executeCommand<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri))?.length,
        (many) => many > 0,
      );
      equal(
        found(document.uri)
          .filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error)
          .map(ruleOf)
          .filter((rule) => /unknown|unit|brace|text|word/.test(rule)),
        [],
        'mistakes of spelling in what we wrote',
      );
    },
  },
  {
    name: 'the figures stand beside the file and follow it',
    body: async () => {
      const document = await scratch('figures.gate', await site());
      await vscode.commands.executeCommand('pintle.showFigures');
      const shown: vscode.TextDocument | undefined = await until('figures', () =>
        vscode.workspace.textDocuments.find((text) => text.uri.scheme === 'pintle-figures' && text.getText().includes('leaf.west.inertia')),
      );
      ok(shown, 'no figures');
      const inertia = (): string | undefined => /leaf\.west\.inertia = (.+)/.exec(shown.getText())?.[1];
      const before = inertia();
      ok(before, 'no inertia');
      await replace(document, 'mass 180 kg', 'mass 190 kg');
      await until('another inertia', inertia, (now) => now !== undefined && now !== before);
    },
  },
  {
    name: 'the manual opens',
    body: async () => {
      await vscode.commands.executeCommand('pintle.openManual');
      await until(
        'a tab with the manual',
        () => tabs().map(({ label }) => label),
        (labels) => labels.some((label) => /manual/i.test(label)),
      );
    },
  },
  {
    name: 'after a restart the server judges as before',
    body: async () => {
      const document = await scratch('restart.gate', await colliding());
      await untilRule(document.uri, 'lag-too-small');
      await vscode.commands.executeCommand('pintle.restartServer');
      await pause(300);
      await setText(document, await site());
      await until(
        'no findings',
        () => rulesIn(document.uri),
        (rules) => rules.length === 0,
      );
      await setText(document, await colliding());
      await untilRule(document.uri, 'lag-too-small');
    },
  },
];
