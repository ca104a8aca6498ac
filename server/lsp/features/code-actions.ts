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
import { acceptance, type Insertion, missingLines } from '../../editor/index.ts';
import { type Analysis, type Edit, type FixClass, fixes, safeFixes } from '../../engine/index.ts';
import type { Document, Lines } from '../documents.ts';
import { type Feature, textEdit } from './feature.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.pintle`;
export const addMissingKind = `${CodeActionKind.Source}.addMissing.pintle`;
const acceptKind = `${CodeActionKind.QuickFix}.accept.pintle`;

/** What an action does, found anew when it is chosen: nothing is worked out for those that are only shown. */
type Work = { readonly edits: readonly Edit[] } | { readonly form: Insertion };

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
      if (wants(CodeActionKind.QuickFix))
        for (const fix of fixes(analysis, { start, end }))
          actions.push({
            title: fix.title,
            kind: CodeActionKind.QuickFix,
            finding: analysis.findings.indexOf(fix.finding),
            class: fix.class,
            work: { edits: fix.edits },
          });
      if (wants(acceptKind)) {
        const told = new Set<string>();
        analysis.findings.forEach((finding, index) => {
          if (finding.start > end || finding.end < start) return;
          const form = acceptance(analysis, finding, session.today());
          // One form for each place: an acceptance holds for all that its rule finds in the block.
          if (form === undefined || told.has(`${form.edit.start} ${finding.rule}`)) return;
          told.add(`${form.edit.start} ${finding.rule}`);
          actions.push({ title: form.title, kind: acceptKind, finding: index, class: 'review', work: { form } });
        });
      }
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

    function editOf(work: Work, document: Document, version: number, lines: Lines): WorkspaceEdit {
      if ('edits' in work) return textEdit(client, document, version, work.edits, lines);
      const { edit, snippet } = work.form;
      if (!client.takes.edits.snippets) return textEdit(client, document, version, [edit], lines);
      return {
        documentChanges: [
          {
            textDocument: { uri: document.uri, version },
            edits: [{ range: lines.range(edit), snippet: { kind: 'snippet', value: snippet } }],
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
          const { kinds, lazy, preferred, data: keepsData } = client.takes.codeActions;
          const shown = reports.reportOf(analysis).items;
          return actionsIn(analysis, start, end, only).map((action, index): CodeAction | Command => {
            const data: ActionData = { uri: document.uri, version, start, end, only, index, class: action.class };
            if (kinds === undefined) return { title: action.title, command: applyCommand, arguments: [action.title, data] };
            const diagnostic = action.finding === undefined ? undefined : shown[action.finding];
            return {
              title: action.title,
              ...(isOf(action.kind, kinds) ? { kind: action.kind } : {}),
              ...(diagnostic === undefined ? {} : { diagnostics: [diagnostic] }),
              ...(preferred && action.class === 'safe' && action.finding !== undefined ? { isPreferred: true } : {}),
              ...(keepsData ? { data } : {}),
              ...(lazy ? {} : { edit: editOf(action.work, document, version, lines) }),
            };
          });
        },
      ),
    );

    const stale = (): ResponseError<void> => new ResponseError(LSPErrorCodes.ContentModified, 'the text has changed');
    /** The edit of an action that was offered before; an error where the text has changed since. */
    const editOffered = async (title: unknown, data: ActionData): Promise<WorkspaceEdit | ResponseError<void>> => {
      const document = session.documents.get(data.uri);
      const analysis = document === undefined ? undefined : await session.analyse(document);
      if (document === undefined || analysis === undefined || document.version !== data.version) return stale();
      const action = actionsIn(analysis, data.start, data.end, data.only ?? null)[data.index];
      // A library that has changed meanwhile can have changed what is found.
      return action !== undefined && action.title === title ? editOf(action.work, document, data.version, linesFor(analysis)) : stale();
    };

    connection.onCodeActionResolve(
      filling<CodeAction>('code actions', async (given: CodeAction) => {
        const data = readData(given.data);
        if (data === undefined || given.edit !== undefined) return given;
        const edit = await editOffered(given.title, data);
        return edit instanceof ResponseError ? edit : { ...given, edit };
      }) as Parameters<typeof connection.onCodeActionResolve>[0],
    );

    connection.onExecuteCommand(
      answering('code actions', null as ResponseError<void> | null, async ({ command, arguments: given }: ExecuteCommandParams) => {
        const [title, about] = given ?? [];
        const data = readData(about);
        if (command !== applyCommand || data === undefined || !client.takes.codeActions.applies)
          return new ResponseError<void>(ErrorCodes.InvalidParams, `“${command}” is no command that this server carries out so.`);
        const edit = await editOffered(title, data);
        if (edit instanceof ResponseError) return edit;
        await connection.workspace.applyEdit(edit);
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
