import { FileOperationPatternKind, type RenameFilesParams, type WorkspaceEdit } from 'vscode-languageserver';
import { hasNoUses, type Move, usesAfter } from '../../editor/index.ts';
import type { Edit } from '../../engine/index.ts';
import { Lines } from '../documents.ts';
import { isInside, pathOf } from '../uris.ts';
import { type Feature, workspaceEdit } from './feature.ts';

const filters = [
  { scheme: 'file', pattern: { glob: '**/*.gate', matches: FileOperationPatternKind.file } },
  { scheme: 'file', pattern: { glob: '**', matches: FileOperationPatternKind.folder } },
];

/** Files that are about to be renamed or moved: their `use` lines, and those that lead to them, are changed with them. */
export const feature: Feature = {
  capabilities: ({ takes }) => (takes.moves.willRename ? { workspace: { fileOperations: { willRename: { filters } } } } : {}),
  answer: ({ connection, session, pace, client, answers }) => {
    const { documents } = session;
    connection.workspace.onWillRenameFiles(
      answers.answering<RenameFilesParams, WorkspaceEdit | null>('moving files', null, async ({ files }, token) => {
        const moves: Move[] = files.map(({ oldUri, newUri }) => ({ from: folderless(pathOf(oldUri)), to: folderless(pathOf(newUri)) }));
        const [first] = moves;
        if (first === undefined) return null;
        await session.knowsAllAround(first.from);
        const rest = pace.rester();
        const { rootOf } = session;
        const roots = new Set(moves.map((move) => rootOf(move.from)));
        const open = documents.byUse();
        const lookedAt = open.flatMap((document) => session.workspaceOf(document.path).lookedAt());
        const changes: { uri: string; version: number | null; edits: readonly Edit[]; lines: Lines }[] = [];
        for (const path of new Set([...open.map((document) => document.path), ...session.files(), ...lookedAt])) {
          if (![...roots].some((root) => isInside(path, root))) continue;
          await rest();
          if (token.isCancellationRequested) return null;
          const document = documents.at(path);
          const found = document ?? session.read(path);
          if (typeof found === 'string' || hasNoUses(found.text)) continue;
          const edits = pace.timed('moving files', () => usesAfter(path, found.text, moves, rootOf(path), rootOf));
          if (edits.length > 0)
            changes.push({ uri: session.uriOf(path), version: document?.version ?? null, edits, lines: new Lines(found.text) });
        }
        return changes.length === 0 ? null : workspaceEdit(client, changes);
      }),
    );
  },
};

const folderless = (path: string): string => path.replace(/\/+$/, '');
