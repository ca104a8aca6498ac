import type { Location, TextDocumentPositionParams } from 'vscode-languageserver';
import { referencesTo, referent } from '../../editor/index.ts';
import type { Analysis } from '../../engine/index.ts';
import { isInside } from '../uris.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ referencesProvider: true }),
  answer: ({ connection, session, pace, linesFor, answers }) => {
    const { documents } = session;
    const { about } = answers;
    connection.onReferences(
      about(
        'references',
        [] as Location[],
        async (
          { document, analysis, lines, version },
          params: TextDocumentPositionParams & { readonly context: { readonly includeDeclaration: boolean } },
          token,
        ) => {
          const found = referent(analysis, lines.offset(params.position));
          if (found === undefined) return [];
          const places: Location[] = [];
          const collect = (other: Analysis): void => {
            for (const reference of referencesTo(other, found.meaning))
              if (!reference.declares || params.context.includeDeclaration)
                places.push({ uri: session.uriOf(other.path), range: linesFor(other).range(reference) });
          };
          collect(analysis);
          if (!found.shared) return places;
          const rest = pace.rester();
          const workspace = session.workspaceOf(document.path);
          const seen = new Set([document.path]);
          for (const other of documents.byUse()) {
            if (seen.has(other.path) || session.workspaceOf(other.path) !== workspace) continue;
            await rest();
            seen.add(other.path);
            const there = await session.analyse(other);
            if (there !== undefined) collect(there);
          }
          for (const path of new Set([...session.files(), ...workspace.lookedAt()])) {
            if (seen.has(path) || !isInside(path, workspace.root)) continue;
            await rest();
            if (token.isCancellationRequested || document.version !== version) return [];
            const there = await session.judgeFile(path);
            if (typeof there !== 'string') collect(there);
          }
          return places;
        },
      ),
    );
  },
};
