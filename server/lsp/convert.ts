// Plain data of the editor room to the shapes of the protocol, and nothing else.
import {
  type CompletionItem,
  CompletionItemKind,
  DiagnosticSeverity,
  DiagnosticTag,
  type DocumentSymbol,
  InsertTextFormat,
  type MarkupContent,
  type MarkupKind,
  type Diagnostic as ProtocolDiagnostic,
  type SymbolInformation,
  SymbolKind,
  type TextEdit,
} from 'vscode-languageserver';
import { type Completion, type CompletionKind, type Completions, type Diagnostic, plain, type Symbol } from '../editor/index.ts';
import type { Edit, Severity } from '../engine/index.ts';
import type { Lines } from './documents.ts';
import type { ClientTakes, DiagnosticTakes } from './takes.ts';

/** Markdown as the client takes it; where it has never said what it takes, as text that is nothing else. */
export const documentation = (markdown: string, kind: MarkupKind | undefined): MarkupContent | string =>
  kind === undefined ? plain(markdown) : markup(markdown, kind);

export const markup = (markdown: string, kind: MarkupKind | undefined): MarkupContent =>
  kind === 'markdown' ? { kind, value: markdown } : { kind: 'plaintext', value: plain(markdown) };

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};

/** Where the pages of the rules are, the lines of other files, and their URIs. */
export interface Around {
  readonly pages: string | undefined;
  readonly lines: (path: string) => Lines | undefined;
  readonly uri: (path: string) => string;
}

/** Where the page of a rule is. */
export const rulePage = (pages: string, rule: string): string => `${pages.replace(/\/$/, '')}/rules/${rule}.md`;

export function toDiagnostic(diagnostic: Diagnostic, lines: Lines, around: Around, takes: DiagnosticTakes): ProtocolDiagnostic {
  const related = takes.related
    ? diagnostic.related.flatMap(({ path, start, end, message }) => {
        const other = around.lines(path);
        return other === undefined ? [] : [{ location: { uri: around.uri(path), range: other.range({ start, end }) }, message }];
      })
    : [];
  return {
    range: lines.range(diagnostic),
    severity: severities[diagnostic.severity],
    code: diagnostic.rule,
    ...(around.pages !== undefined && takes.codeDescription ? { codeDescription: { href: rulePage(around.pages, diagnostic.rule) } } : {}),
    source: 'pintle',
    message: diagnostic.message,
    ...(diagnostic.unnecessary && takes.unnecessary ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(related.length > 0 ? { relatedInformation: related } : {}),
  };
}

export const toEdits = (edits: readonly Edit[], lines: Lines): TextEdit[] =>
  edits.map((edit) => ({ range: lines.range(edit), newText: edit.text }));

/** The first that the client knows is taken; the last of each is of the protocol's first version. */
const completionKinds: Readonly<Record<CompletionKind, readonly CompletionItemKind[]>> = {
  block: [CompletionItemKind.Module],
  line: [CompletionItemKind.Property],
  keyword: [CompletionItemKind.Keyword],
  choice: [CompletionItemKind.EnumMember, CompletionItemKind.Enum],
  name: [CompletionItemKind.Variable],
  model: [CompletionItemKind.Class],
  terminal: [CompletionItemKind.Interface],
  unit: [CompletionItemKind.Unit],
  rule: [CompletionItemKind.Event, CompletionItemKind.Reference],
  file: [CompletionItemKind.File],
  value: [CompletionItemKind.Value],
  template: [CompletionItemKind.Snippet],
};

/**
 * The items without their documentation, which is asked for one by one. `data` finds an item again. There are no commit
 * characters: each sign that could end a word here is also one that a writer types to go on with a word of their own.
 */
export function toCompletionItems(
  completions: Completions,
  lines: Lines,
  takes: ClientTakes['completion'],
  suggestCommand: string | undefined,
  data: (item: Completion, index: number) => unknown,
): CompletionItem[] {
  const replace = lines.range(completions.replace);
  const insert = lines.range(completions.insert);
  return completions.items.map((item, index) => ({
    label: item.label,
    ...kindOf(completionKinds[item.kind], takes.kinds),
    ...(item.detail === '' ? {} : { detail: item.detail }),
    sortText: `${item.rank.toFixed(3).padStart(8, '0')} ${item.label}`,
    ...(item.preselect && takes.preselect ? { preselect: true } : {}),
    textEdit: {
      ...(takes.insertReplace ? { insert, replace } : { range: replace }),
      newText: item.snippet && !takes.snippets ? item.plain : item.insert,
    },
    ...(item.snippet && takes.snippets ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    ...(item.goesOn && suggestCommand !== undefined ? { command: { title: 'Suggest', command: suggestCommand } } : {}),
    data: data(item, index),
  }));
}

/** The first of some kinds that a client knows. */
const kindOf = <Kind extends number>(wanted: readonly Kind[], known: ReadonlySet<number>): { kind?: Kind } => {
  const kind = wanted.find((one) => known.has(one));
  return kind === undefined ? {} : { kind };
};

const symbolKinds: Readonly<Record<string, readonly SymbolKind[]>> = {
  site: [SymbolKind.Namespace],
  leaf: [SymbolKind.Object, SymbolKind.Class],
  drive: [SymbolKind.Method],
  sensor: [SymbolKind.Event, SymbolKind.Interface],
  control: [SymbolKind.Key, SymbolKind.Constant],
  panel: [SymbolKind.Module],
  motion: [SymbolKind.Function],
  cable: [SymbolKind.Variable],
  terminal: [SymbolKind.Field],
  option: [SymbolKind.EnumMember, SymbolKind.Constant],
  selector: [SymbolKind.Enum],
};

/** A symbol has to have a kind: where the client knows none of ours, it is the first that it knows. */
export const symbolKindIn = (wanted: readonly SymbolKind[], known: ReadonlySet<number>): SymbolKind =>
  kindOf(wanted, known).kind ?? ((known.values().next().value ?? SymbolKind.Variable) as SymbolKind);
export const symbolKindOf = (word: string, known: ReadonlySet<number>): SymbolKind =>
  symbolKindIn(symbolKinds[word] ?? [word.endsWith('-model') ? SymbolKind.Class : SymbolKind.Property], known);

export function toDocumentSymbols(symbols: readonly Symbol[], lines: Lines, kinds: ReadonlySet<number>): DocumentSymbol[] {
  return symbols.map((symbol) => ({
    name: symbol.name,
    ...(symbol.detail === '' ? {} : { detail: symbol.detail }),
    kind: symbolKindOf(symbol.word, kinds),
    range: lines.range(symbol.whole),
    selectionRange: lines.range(symbol.head),
    ...(symbol.children.length > 0 ? { children: toDocumentSymbols(symbol.children, lines, kinds) } : {}),
  }));
}

/** The outline for clients that know no nesting. */
export function toSymbolInformation(
  symbols: readonly Symbol[],
  lines: Lines,
  uri: string,
  kinds: ReadonlySet<number>,
  container?: string,
): SymbolInformation[] {
  return symbols.flatMap((symbol) => [
    {
      name: symbol.name,
      kind: symbolKindOf(symbol.word, kinds),
      location: { uri, range: lines.range(symbol.whole) },
      ...(container === undefined ? {} : { containerName: container }),
    },
    ...toSymbolInformation(symbol.children, lines, uri, kinds, symbol.name),
  ]);
}

/** A short name for a content: equal contents have equal names, on every run and machine. */
export function contentName(content: string): string {
  let a = 0x811c9dc5;
  let b = 0x9e3779b9;
  for (let i = 0; i < content.length; i++) {
    const code = content.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code, 0x85ebca6b);
    b ^= b >>> 13;
  }
  return (a >>> 0).toString(16).padStart(8, '0') + (b >>> 0).toString(16).padStart(8, '0') + content.length.toString(16);
}
