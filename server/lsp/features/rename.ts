import {
  LSPErrorCodes,
  type PrepareRenameParams,
  type PrepareRenameResult,
  type RenameParams,
  ResponseError,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { mayMention, nameFault, prepareRename, type Renaming, renaming } from '../../editor/index.ts';
import type { Analysis } from '../../engine/index.ts';
import { type Document, Lines } from '../documents.ts';
import { isInside } from '../uris.ts';
import { type Feature, workspaceEdit } from './feature.ts';

/** A reason for people, in place of an answer: editors show it where the name stands. */
const refuse = (reason: string): ResponseError<void> => new ResponseError(LSPErrorCodes.RequestFailed, reason);

export const feature: Feature = {
  capabilities: ({ takes }) => ({
    renameProvider: takes.prepareRename ? { prepareProvider: true } : true,
  }),
  answer: ({ connection, session, pace, client, answers, linesFor }) => {
    const { documents } = session;
    const { about } = answers;

    connection.onPrepareRename(
      about(
        'rename',
        null as PrepareRenameResult | ResponseError<void> | null,
        ({ analysis, lines }, { position }: PrepareRenameParams) => {
          const found = prepareRename(analysis, lines.offset(position));
          return 'refused' in found ? refuse(found.refused) : { range: lines.range(found), placeholder: found.name };
        },
      ) as Parameters<typeof connection.onPrepareRename>[0],
    );

    connection.onRenameRequest(
      about(
        'rename',
        null as WorkspaceEdit | ResponseError<void> | null,
        async ({ document, analysis, lines, version }, { position, newName }: RenameParams, token) => {
          const target = prepareRename(analysis, lines.offset(position));
          if ('refused' in target) return refuse(target.refused);
          const fault = nameFault(target.meaning, newName);
          if (fault !== undefined) return refuse(fault);
          const rest = pace.rester();
          const workspace = session.workspaceOf(document.path);
          const files: Analysis[] = [analysis];
          const versions = new Map<string, { readonly document: Document; readonly version: number }>([
            [document.path, { document, version }],
          ]);
          if (target.shared) {
            if (!(await session.knowsAllAround(document.path)))
              return refuse(
                `Other files may speak of “${target.name}”, and they cannot be listed here. Open the folder that holds them all, on the desktop, and rename it there.`,
              );
            const speaks = (text: string): boolean => mayMention(text, target.name) || mayMention(text, newName);
            for (const other of documents.byUse()) {
              if (other === document || session.workspaceOf(other.path) !== workspace || !speaks(other.text)) continue;
              await rest();
              const at = other.version;
              const there = await session.analyse(other);
              if (there === undefined) continue;
              versions.set(other.path, { document: other, version: at });
              files.push(there);
            }
            for (const path of new Set([...session.files(), ...workspace.lookedAt()])) {
              if (documents.at(path) !== undefined || !isInside(path, workspace.root)) continue;
              await rest();
              if (token.isCancellationRequested) return null;
              const found = session.read(path);
              if (found === 'missing' || found === 'outside') continue;
              if (typeof found === 'string')
                return refuse(
                  `“${path.slice(workspace.root.length + 1)}” cannot be read, so it cannot be told whether it speaks of “${target.name}”. Nothing is renamed.`,
                );
              if (!speaks(found.text)) continue;
              files.push(pace.timed('rename', () => workspace.named(path, found.text)));
            }
          }
          const work = renaming({ target, newName, files, read: session.read, root: workspace.root });
          let outcome: Renaming | undefined;
          while (outcome === undefined) {
            await rest();
            if (token.isCancellationRequested) return null;
            const step = pace.timed('rename', () => work.next());
            if (step.done === true) outcome = step.value;
          }
          if ('refused' in outcome) return refuse(outcome.refused);
          for (const { document: open, version: at } of versions.values())
            if (open.version !== at) return new ResponseError<void>(LSPErrorCodes.ContentModified, 'the text has changed');
          const analyses = new Map(files.map((file) => [file.path, file]));
          return workspaceEdit(
            client,
            outcome.files.map(({ path, edits }) => {
              const file = analyses.get(path);
              return {
                uri: session.uriOf(path),
                version: versions.get(path)?.version ?? null,
                edits,
                lines: file === undefined ? new Lines('') : linesFor(file),
              };
            }),
          );
        },
      ) as Parameters<typeof connection.onRenameRequest>[0],
    );
  },
};
