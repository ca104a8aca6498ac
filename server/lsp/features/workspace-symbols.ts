import type { WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver';
import { type Indexed, indexOf, likenessTo } from '../../editor/index.ts';
import { symbolKindOf } from '../convert.ts';
import { Lines } from '../documents.ts';
import type { Feature } from './feature.ts';

/** Told at most: nobody looks through more. */
const most = 256;

export const feature: Feature = {
  capabilities: ({ takes }) => ({ workspaceSymbolProvider: takes.workspaceSymbols.lazy ? { resolveProvider: true } : true }),
  answer: ({ connection, session, pace, client, answers }) => {
    const { documents } = session;
    const { answering, filling } = answers;
    /** What is in each file, for as long as its text is the same. `of` is the open text, or the mark of the file on the disk. */
    const known = new Map<string, { readonly of: string; readonly symbols: readonly Indexed[] }>();

    const symbolsIn = (path: string): readonly Indexed[] => {
      const open = documents.at(path)?.text;
      const of = open ?? session.stamp(path);
      const kept = known.get(path);
      if (of !== undefined && kept?.of === of) return kept.symbols;
      const text = open ?? textOf(path);
      const symbols = text === undefined ? [] : indexOf(text);
      if (of === undefined) known.delete(path);
      else known.set(path, { of, symbols });
      return symbols;
    };
    const textOf = (path: string): string | undefined => {
      const result = session.read(path);
      return typeof result === 'string' ? undefined : result.text;
    };
    const linesOf = (path: string): Lines => new Lines(textOf(path) ?? '');

    connection.onWorkspaceSymbol(
      answering('workspace symbols', [] as WorkspaceSymbol[], async ({ query }: WorkspaceSymbolParams, token) => {
        const { lazy, kinds } = client.takes.workspaceSymbols;
        const rest = pace.rester();
        const found: { readonly path: string; readonly symbol: Indexed; readonly likeness: number }[] = [];
        const paths = new Set([...documents.byUse().map((document) => document.path), ...session.files()]);
        for (const path of paths) {
          await rest();
          if (token.isCancellationRequested) return [];
          for (const symbol of pace.timed('workspace symbols', () => symbolsIn(path))) {
            const likeness = likenessTo(query, symbol.name);
            if (likeness !== undefined) found.push({ path, symbol, likeness });
          }
        }
        for (const path of known.keys()) if (!paths.has(path)) known.delete(path);
        // The file that is looked at comes first among equals: sorting keeps their order.
        found.sort((a, b) => a.likeness - b.likeness || a.symbol.name.length - b.symbol.name.length);
        const lines = new Map<string, Lines>();
        const linesIn = (path: string): Lines => {
          const made = lines.get(path) ?? linesOf(path);
          lines.set(path, made);
          return made;
        };
        return found.slice(0, most).map(({ path, symbol }): WorkspaceSymbol => {
          const uri = session.uriOf(path);
          const file = path.slice(path.lastIndexOf('/') + 1);
          return {
            name: symbol.name,
            kind: symbolKindOf(symbol.word, kinds),
            containerName: [file, symbol.container, symbol.detail].filter((part) => part !== '').join(' › '),
            location: lazy ? { uri } : { uri, range: linesIn(path).range(symbol.head) },
            ...(lazy ? { data: [path, symbol.head.start, symbol.head.end] } : {}),
          };
        });
      }) as Parameters<typeof connection.onWorkspaceSymbol>[0],
    );
    connection.onWorkspaceSymbolResolve(
      filling<WorkspaceSymbol>('workspace symbols', (symbol) => {
        const [path, start, end] = Array.isArray(symbol.data) ? (symbol.data as unknown[]) : [];
        if (typeof path !== 'string' || typeof start !== 'number' || typeof end !== 'number') return symbol;
        return { ...symbol, location: { uri: symbol.location.uri, range: linesOf(path).range({ start, end }) } };
      }) as Parameters<typeof connection.onWorkspaceSymbolResolve>[0],
    );
  },
};
