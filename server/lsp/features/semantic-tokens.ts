import type { SemanticTokens, SemanticTokensDelta, SemanticTokensDeltaParams, SemanticTokensRangeParams } from 'vscode-languageserver';
import { type TokenKind, tokenModifiers, tokens, tokenTypes } from '../../editor/index.ts';
import type { Analysis, Span } from '../../engine/index.ts';
import type { Document } from '../documents.ts';
import type { Feature } from './feature.ts';

const types = Object.keys(tokenTypes) as TokenKind[];
const numberOf = new Map(types.map((kind, index) => [kind, index]));
const modifiers = Object.keys(tokenModifiers) as (keyof typeof tokenModifiers)[];
const bit = Object.fromEntries(modifiers.map((name, index) => [name, 1 << index])) as Readonly<Record<keyof typeof tokenModifiers, number>>;

/** Five numbers for each token, lines and columns counted from the token before. */
function encode(analysis: Analysis, range?: Span): number[] {
  const { lineStarts: starts } = analysis;
  const data: number[] = [];
  let line = 0;
  let lastLine = 0;
  let lastColumn = 0;
  for (const { start, end, kind, declares, safety } of tokens(analysis, range)) {
    while (line + 1 < starts.length && (starts[line + 1] as number) <= start) line++;
    const column = start - (starts[line] as number);
    data.push(
      line - lastLine,
      line === lastLine ? column - lastColumn : column,
      end - start,
      numberOf.get(kind) as number,
      (declares ? bit.declaration : 0) | (safety ? bit.safety : 0),
    );
    lastLine = line;
    lastColumn = column;
  }
  return data;
}

/** The one stretch in which two lists of tokens differ. */
function difference(
  before: readonly number[],
  now: readonly number[],
): { readonly start: number; readonly deleteCount: number; readonly data: number[] }[] {
  let start = 0;
  const shorter = Math.min(before.length, now.length);
  while (start < shorter && before[start] === now[start]) start++;
  if (start === before.length && start === now.length) return [];
  let tail = 0;
  while (tail < shorter - start && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  return [{ start, deleteCount: before.length - tail - start, data: now.slice(start, now.length - tail) }];
}

export const feature: Feature = {
  capabilities: () => ({
    semanticTokensProvider: { legend: { tokenTypes: types, tokenModifiers: modifiers }, full: { delta: true }, range: true },
  }),
  answer: ({ connection, answers }) => {
    const { about } = answers;
    /** What was sent last of each text: a delta is told against that and nothing older. */
    const sent = new WeakMap<Document, { readonly id: string; readonly data: readonly number[] }>();
    let count = 0;
    const keep = (document: Document, data: readonly number[]): string => {
      const id = String(++count);
      sent.set(document, { id, data });
      return id;
    };
    const { semanticTokens } = connection.languages;
    semanticTokens.on(
      about('semantic tokens', { data: [] } as SemanticTokens, ({ document, analysis }) => {
        const data = encode(analysis);
        return { resultId: keep(document, data), data };
      }),
    );
    semanticTokens.onDelta(
      about(
        'semantic tokens',
        { data: [] } as SemanticTokens | SemanticTokensDelta,
        ({ document, analysis }, { previousResultId }: SemanticTokensDeltaParams) => {
          const before = sent.get(document);
          const data = encode(analysis);
          const resultId = keep(document, data);
          return before === undefined || before.id !== previousResultId
            ? { resultId, data }
            : { resultId, edits: difference(before.data, data) };
        },
      ),
    );
    semanticTokens.onRange(
      about('semantic tokens', { data: [] } as SemanticTokens, ({ analysis, lines }, { range }: SemanticTokensRangeParams) => ({
        data: encode(analysis, { start: lines.offset(range.start), end: lines.offset(range.end) }),
      })),
    );
  },
};
