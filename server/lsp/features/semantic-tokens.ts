import type { SemanticTokens, SemanticTokensDelta, SemanticTokensDeltaParams, SemanticTokensRangeParams } from 'vscode-languageserver';
import { type TokenKind, tokenModifiers, tokens, tokenTypes } from '../../editor/index.ts';
import type { Analysis, Span } from '../../engine/index.ts';
import type { Client } from '../client.ts';
import type { Document } from '../documents.ts';
import type { Feature } from './feature.ts';

type Modifier = keyof typeof tokenModifiers;

/** What tokens are told as to one client: its own legend, and the place in it of each of our kinds that it can be told of. */
interface Legend {
  readonly types: readonly string[];
  readonly modifiers: readonly Modifier[];
  readonly numbers: ReadonlyMap<TokenKind, number>;
  readonly bits: Readonly<Record<Modifier, number>>;
}

/** The protocol's own type stands for one that the client does not know; what it knows neither of is left out. */
function legendFor({ takes, options }: Pick<Client, 'takes' | 'options'>): Legend {
  const knowsAll = options.ownTokenTypes === true;
  const types: string[] = [];
  const numbers = new Map<TokenKind, number>();
  for (const [kind, type] of Object.entries<{ readonly scopes: readonly string[]; readonly like?: string }>(tokenTypes)) {
    const told = [kind, type.like].find((name) => name !== undefined && (knowsAll || takes.tokens.types.includes(name)));
    if (told === undefined) continue;
    if (!types.includes(told)) types.push(told);
    numbers.set(kind as TokenKind, types.indexOf(told));
  }
  const modifiers = (Object.keys(tokenModifiers) as Modifier[]).filter((name) => knowsAll || takes.tokens.modifiers.includes(name));
  const bit = (name: Modifier): number => (modifiers.includes(name) ? 1 << modifiers.indexOf(name) : 0);
  return { types, modifiers, numbers, bits: { declaration: bit('declaration'), safety: bit('safety') } };
}

/** Five numbers for each token, lines and columns counted from the token before. */
function encode(analysis: Analysis, { numbers, bits }: Legend, range?: Span): number[] {
  const { lineStarts: starts } = analysis;
  const data: number[] = [];
  let line = 0;
  let lastLine = 0;
  let lastColumn = 0;
  for (const { start, end, kind, declares, safety } of tokens(analysis, range)) {
    const type = numbers.get(kind);
    if (type === undefined) continue;
    while (line + 1 < starts.length && (starts[line + 1] as number) <= start) line++;
    const column = start - (starts[line] as number);
    data.push(
      line - lastLine,
      line === lastLine ? column - lastColumn : column,
      end - start,
      type,
      (declares ? bits.declaration : 0) | (safety ? bits.safety : 0),
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
  capabilities: (client) => {
    const { types, modifiers } = legendFor(client);
    const { whole, delta, range } = client.takes.tokens;
    if (types.length === 0 || (!whole && !range)) return {};
    return {
      semanticTokensProvider: {
        legend: { tokenTypes: [...types], tokenModifiers: [...modifiers] },
        ...(whole ? { full: delta ? { delta } : true } : {}),
        ...(range ? { range } : {}),
      },
    };
  },
  answer: ({ connection, client, answers }) => {
    const { about } = answers;
    let known: Legend | undefined;
    const legend = (): Legend => (known ??= legendFor(client));
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
        const data = encode(analysis, legend());
        return { resultId: keep(document, data), data };
      }),
    );
    semanticTokens.onDelta(
      about(
        'semantic tokens',
        { data: [] } as SemanticTokens | SemanticTokensDelta,
        ({ document, analysis }, { previousResultId }: SemanticTokensDeltaParams) => {
          const before = sent.get(document);
          const data = encode(analysis, legend());
          const resultId = keep(document, data);
          return before === undefined || before.id !== previousResultId
            ? { resultId, data }
            : { resultId, edits: difference(before.data, data) };
        },
      ),
    );
    semanticTokens.onRange(
      about('semantic tokens', { data: [] } as SemanticTokens, ({ analysis, lines }, { range }: SemanticTokensRangeParams) => ({
        data: encode(analysis, legend(), { start: lines.offset(range.start), end: lines.offset(range.end) }),
      })),
    );
  },
};
