// "What depends on this value", as the call hierarchy of editors: its callers (incoming) are what makes use of a line or a
// figure, which editors show first; what it calls (outgoing) is what a figure is worked out from.
import {
  type CallHierarchyIncomingCall,
  type CallHierarchyItem,
  type CallHierarchyOutgoingCall,
  type CancellationToken,
  SymbolKind,
  type TextDocumentPositionParams,
} from 'vscode-languageserver';
import { type Dependence, dependenceAt, dependenceOf, dependents, type Judge, sources } from '../../editor/index.ts';
import type { Analysis } from '../../engine/index.ts';
import { symbolKindIn } from '../convert.ts';
import type { Lines } from '../documents.ts';
import type { Feature } from './feature.ts';

const kinds = {
  fact: [SymbolKind.Property],
  figure: [SymbolKind.Variable],
  rule: [SymbolKind.Event, SymbolKind.Interface],
} as const;

const itemOf = (
  { kind, key, label, detail, at }: Dependence,
  lines: Lines,
  uri: string,
  known: ReadonlySet<number>,
): CallHierarchyItem => ({
  name: label,
  kind: symbolKindIn(kinds[kind], known),
  ...(detail === '' ? {} : { detail }),
  uri,
  range: lines.range(at),
  selectionRange: lines.range(at),
  data: [kind, key, label],
});

export const feature: Feature = {
  capabilities: () => ({ callHierarchyProvider: true }),
  answer: ({ connection, session, pace, client, linesFor, answers }) => {
    const toItem = (of: Dependence, lines: Lines, uri: string): CallHierarchyItem => itemOf(of, lines, uri, client.takes.symbols.kinds);
    const { documents } = session;
    const { answering, about } = answers;
    connection.languages.callHierarchy.onPrepare(
      about('dependence', null as CallHierarchyItem[] | null, ({ document, analysis, lines }, { position }: TextDocumentPositionParams) => {
        const found = dependenceAt(analysis, lines.offset(position));
        // One only: VS Code asks nothing more of the items of an answer that has several.
        return found === undefined ? null : [toItem(found, lines, document.uri)];
      }),
    );

    /** Works through the steps with rests in between; nothing of it where the text has changed since the item was made. */
    const follow = async (
      item: CallHierarchyItem,
      token: CancellationToken,
      steps: (analysis: Analysis, of: Dependence, judge: Judge) => Generator<unknown, Dependence[]>,
    ): Promise<readonly (readonly [item: CallHierarchyItem, range: CallHierarchyItem['range']])[]> => {
      const [kind, key, label] = Array.isArray(item.data) ? (item.data as unknown[]) : [];
      const document = documents.get(item.uri);
      const analysis = document === undefined ? undefined : await session.analyse(document, 'whole');
      if (document === undefined || analysis === undefined || typeof key !== 'string' || (kind !== 'fact' && kind !== 'figure')) return [];
      const { version } = document;
      const of = dependenceOf(analysis, kind, key);
      if (of === undefined || of.label !== label) return [];
      const workspace = session.workspaceOf(document.path);
      const judge: Judge = (text) => workspace.judging(document.path, text, session.today());
      const rest = pace.rester();
      const working = steps(analysis, of, judge);
      for (;;) {
        const step = pace.timed('dependence', () => working.next());
        if (step.done === true) {
          const lines = linesFor(analysis);
          return step.value.map((node) => [toItem(node, lines, document.uri), lines.range(node.at)] as const);
        }
        await rest();
        if (token.isCancellationRequested || document.version !== version) return [];
      }
    };

    connection.languages.callHierarchy.onIncomingCalls(
      answering('dependence', [] as CallHierarchyIncomingCall[], async ({ item }, token) => {
        const found = await follow(item, token, dependents);
        return found.map(([from, range]) => ({ from, fromRanges: [range] }));
      }),
    );
    connection.languages.callHierarchy.onOutgoingCalls(
      answering('dependence', [] as CallHierarchyOutgoingCall[], async ({ item }, token) => {
        const found = await follow(item, token, sources);
        return found.map(([to]) => ({ to, fromRanges: [item.selectionRange] }));
      }),
    );
  },
};
