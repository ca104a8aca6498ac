import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Command,
  ErrorCodes,
  type ExecuteCommandParams,
  LSPErrorCodes,
  ResponseError,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { type FindingAction, findingActions, type Insertion, missingLines } from '../../editor/index.ts';
import { type Analysis, type Edit, type FixClass, safeFixes } from '../../engine/index.ts';
import type { Document, Lines } from '../documents.ts';
import { type Feature, textEdit } from './feature.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.pintle`;
export const addMissingKind = `${CodeActionKind.Source}.addMissing.pintle`;
/** Each can be asked for by itself, and all of them as quick fixes. */
const kinds: Readonly<Record<FindingAction['about'], string>> = {
  fix: CodeActionKind.QuickFix,
  addition: `${CodeActionKind.QuickFix}.add.pintle`,
  explanation: `${CodeActionKind.QuickFix}.explain.pintle`,
  acceptance: `${CodeActionKind.QuickFix}.accept.pintle`,
};

/** What an action does, found anew when it is chosen: nothing is worked out for those that are only shown. */
type Work = { readonly edits: readonly Edit[] } | { readonly form: Insertion } | { readonly rule: string };

interface Action {
  readonly title: string;
  readonly kind: string;
  /** The finding that it is about, by its number. */
  readonly finding?: number;
  readonly class: FixClass;
  readonly work: Work;
}

/** Whom an action belongs to, so that it can be found again: the text, its version, what was asked, and its place in the list. */
interface ActionData {
  readonly uri: string;
  readonly version: number;
  readonly start: number;
  readonly end: number;
  /** What is null is nothing to some clients, and does not come back. */
  readonly only?: readonly string[] | null;
  readonly index: number;
  readonly class: FixClass;
}

/** Makes the edit of an action, for clients that take actions as commands only. */
export const applyCommand = 'pintle.apply';

/** Whether a kind is one of those that a client knows, or of one of them. */
const isOf = (kind: string, known: readonly string[]): boolean =>
  known.some((one) => one === '' || kind === one || kind.startsWith(`${one}.`));

export const feature: Feature = {
  capabilities: ({ takes: { codeActions } }) => {
    const { kinds, lazy, applies } = codeActions;
    if (kinds === undefined) return applies ? { codeActionProvider: true, executeCommandProvider: { commands: [applyCommand] } } : {};
    const codeActionKinds = [CodeActionKind.QuickFix, fixAllKind, addMissingKind].filter((kind) => isOf(kind, kinds));
    return { codeActionProvider: { codeActionKinds, ...(lazy ? { resolveProvider: true } : {}) } };
  },
  answer: ({ connection, session, client, reports, answers, linesFor }) => {
    const { about, answering, filling } = answers;

    function actionsIn(analysis: Analysis, start: number, end: number, only: readonly string[] | null): Action[] {
      const wants = (kind: string): boolean => only === null || only.some((one) => kind === one || kind.startsWith(one + '.'));
      const actions: Action[] = [];
      if (Object.values(kinds).some(wants))
        for (const { about, ...action } of findingActions(
          analysis,
          { start, end },
          session.today(),
          client.options.explainCommand !== undefined,
        ))
          if (wants(kinds[about])) actions.push({ ...action, kind: kinds[about] });
      if (wants(addMissingKind)) {
        const form = missingLines(analysis, start);
        if (form !== undefined) actions.push({ title: form.title, kind: addMissingKind, class: 'review', work: { form } });
      }
      // Offered in a list only where it is asked for by name: else it would stand beside every single fix.
      if (only !== null && wants(fixAllKind)) {
        const all = safeFixes(analysis);
        if (all !== undefined)
          actions.push({
            title: `Apply ${all.mended.length === 1 ? 'the safe fix' : `all ${all.mended.length} safe fixes`}`,
            kind: fixAllKind,
            class: 'safe',
            work: { edits: all.edits },
          });
      }
      return actions;
    }

    /** What the client does itself. */
    function commandOf({ title, work }: Action): Command | undefined {
      const { explainCommand } = client.options;
      return 'rule' in work && explainCommand !== undefined ? { title, command: explainCommand, arguments: [work.rule] } : undefined;
    }

    function doing(action: Action, document: Document, version: number, lines: Lines): Pick<CodeAction, 'edit' | 'command'> {
      const command = commandOf(action);
      if (command !== undefined) return { command };
      return 'rule' in action.work ? {} : { edit: editOf(action.work, document, version, lines) };
    }

    function editOf(work: Exclude<Work, { readonly rule: string }>, document: Document, version: number, lines: Lines): WorkspaceEdit {
      if ('edits' in work) return textEdit(client, document, version, work.edits, lines);
      const { edit, form } = work.form;
      if (!client.takes.edits.snippets) return textEdit(client, document, version, [edit], lines);
      return {
        documentChanges: [
          {
            textDocument: { uri: document.uri, version },
            edits: [{ range: lines.range(form), snippet: { kind: 'snippet', value: form.text } }],
          },
        ],
      };
    }

    connection.onCodeAction(
      about(
        'code actions',
        [] as (CodeAction | Command)[],
        ({ document, analysis, lines, version }, { range, context }: CodeActionParams): (CodeAction | Command)[] => {
          const [start, end] = [lines.offset(range.start), lines.offset(range.end)];
          const only = context.only ?? null;
          const { kinds, applies, lazy, preferred, data: keepsData } = client.takes.codeActions;
          if (kinds === undefined && !applies) return [];
          const shown = reports.reportOf(analysis).items;
          return actionsIn(analysis, start, end, only).map((action, index): CodeAction | Command => {
            const data: ActionData = { uri: document.uri, version, start, end, only, index, class: action.class };
            if (kinds === undefined)
              return commandOf(action) ?? { title: action.title, command: applyCommand, arguments: [action.title, data] };
            const diagnostic = action.finding === undefined ? undefined : shown[action.finding];
            return {
              title: action.title,
              ...(isOf(action.kind, kinds) ? { kind: action.kind } : {}),
              ...(diagnostic === undefined ? {} : { diagnostics: [diagnostic] }),
              ...(preferred && action.class === 'safe' && action.finding !== undefined ? { isPreferred: true } : {}),
              ...(keepsData ? { data } : {}),
              ...(lazy && !('rule' in action.work) ? {} : doing(action, document, version, lines)),
            };
          });
        },
      ),
    );

    const stale = (): ResponseError<void> => new ResponseError(LSPErrorCodes.ContentModified, 'the text has changed');
    /** What an action does that was offered before; an error where the text has changed since. */
    const offered = async (title: unknown, data: ActionData): Promise<Pick<CodeAction, 'edit' | 'command'> | ResponseError<void>> => {
      const document = session.documents.get(data.uri);
      const analysis = document === undefined ? undefined : await session.analyse(document);
      if (document === undefined || analysis === undefined || document.version !== data.version) return stale();
      const action = actionsIn(analysis, data.start, data.end, data.only ?? null)[data.index];
      // A library that has changed meanwhile can have changed what is found.
      return action !== undefined && action.title === title ? doing(action, document, data.version, linesFor(analysis)) : stale();
    };

    connection.onCodeActionResolve(
      filling<CodeAction>('code actions', async (given: CodeAction) => {
        const data = readData(given.data);
        if (data === undefined || given.edit !== undefined) return given;
        const done = await offered(given.title, data);
        return done instanceof ResponseError ? done : { ...given, ...done };
      }) as Parameters<typeof connection.onCodeActionResolve>[0],
    );

    connection.onExecuteCommand(
      answering('code actions', null as ResponseError<void> | null, async ({ command, arguments: given }: ExecuteCommandParams) => {
        const [title, about] = given ?? [];
        const data = readData(about);
        if (command !== applyCommand || data === undefined || !client.takes.codeActions.applies)
          return new ResponseError<void>(ErrorCodes.InvalidParams, `“${command}” is no command that this server carries out so.`);
        const done = await offered(title, data);
        if (done instanceof ResponseError) return done;
        if (done.edit !== undefined) await connection.workspace.applyEdit(done.edit);
        return null;
      }) as Parameters<typeof connection.onExecuteCommand>[0],
    );
  },
};

function readData(data: unknown): ActionData | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { uri, version, start, end, only, index } = data as Partial<ActionData>;
  return typeof uri === 'string' && [version, start, end, index].every((number) => Number.isInteger(number)) && isKinds(only)
    ? (data as ActionData)
    : undefined;
}

const isKinds = (only: unknown): boolean =>
  only === undefined || only === null || (Array.isArray(only) && only.every((one) => typeof one === 'string'));
