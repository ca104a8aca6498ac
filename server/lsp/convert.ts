// Plain data of the editor room to the shapes of the protocol, and nothing else.
import {
  type CompletionItem,
  CompletionItemKind,
  DiagnosticSeverity,
  DiagnosticTag,
  type DocumentSymbol,
  InsertTextFormat,
  type MarkupContent,
  type Diagnostic as ProtocolDiagnostic,
  type SymbolInformation,
  SymbolKind,
  type TextEdit,
} from 'vscode-languageserver';
import { type Completion, type CompletionKind, type Completions, type Diagnostic, plain, type Symbol } from '../editor/index.ts';
import type { Edit, Severity } from '../engine/index.ts';
import type { Lines } from './documents.ts';

/** What the client can take. */
export interface ClientTakes {
  readonly markdown: boolean;
  readonly snippets: boolean;
  readonly insertReplace: boolean;
  readonly related: boolean;
  readonly unnecessary: boolean;
  readonly codeDescription: boolean;
  readonly documentChanges: boolean;
  readonly nestedSymbols: boolean;
  readonly locationLinks: boolean;
  readonly lazyTooltips: boolean;
  readonly pull: boolean;
}

export const markup = (markdown: string, takes: ClientTakes): MarkupContent =>
  takes.markdown ? { kind: 'markdown', value: markdown } : { kind: 'plaintext', value: plain(markdown) };

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

export function toDiagnostic(diagnostic: Diagnostic, lines: Lines, around: Around, takes: ClientTakes): ProtocolDiagnostic {
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

const completionKinds: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  block: CompletionItemKind.Module,
  line: CompletionItemKind.Property,
  keyword: CompletionItemKind.Keyword,
  choice: CompletionItemKind.EnumMember,
  name: CompletionItemKind.Variable,
  model: CompletionItemKind.Class,
  terminal: CompletionItemKind.Interface,
  unit: CompletionItemKind.Unit,
  rule: CompletionItemKind.Event,
  file: CompletionItemKind.File,
  value: CompletionItemKind.Value,
  template: CompletionItemKind.Snippet,
};

/**
 * The items without their documentation, which is asked for one by one. `data` finds an item again. There are no commit
 * characters: each sign that could end a word here is also one that a writer types to go on with a word of their own.
 */
export function toCompletionItems(
  completions: Completions,
  lines: Lines,
  takes: ClientTakes,
  suggestCommand: string | undefined,
  data: (item: Completion, index: number) => unknown,
): CompletionItem[] {
  const replace = lines.range(completions.replace);
  const insert = lines.range(completions.insert);
  return completions.items.map((item, index) => ({
    label: item.label,
    kind: completionKinds[item.kind],
    ...(item.detail === '' ? {} : { detail: item.detail }),
    sortText: `${item.rank.toFixed(3).padStart(8, '0')} ${item.label}`,
    ...(item.preselect ? { preselect: true } : {}),
    textEdit: {
      ...(takes.insertReplace ? { insert, replace } : { range: replace }),
      newText: item.snippet && !takes.snippets ? item.plain : item.insert,
    },
    insertTextFormat: item.snippet && takes.snippets ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    ...(item.goesOn && suggestCommand !== undefined ? { command: { title: 'Suggest', command: suggestCommand } } : {}),
    data: data(item, index),
  }));
}

const symbolKinds: Readonly<Record<string, SymbolKind>> = {
  site: SymbolKind.Namespace,
  leaf: SymbolKind.Object,
  drive: SymbolKind.Method,
  sensor: SymbolKind.Event,
  control: SymbolKind.Key,
  panel: SymbolKind.Module,
  motion: SymbolKind.Function,
  cable: SymbolKind.Variable,
  terminal: SymbolKind.Field,
  option: SymbolKind.EnumMember,
  selector: SymbolKind.Enum,
};
export const symbolKindOf = (word: string): SymbolKind =>
  symbolKinds[word] ?? (word.endsWith('-model') ? SymbolKind.Class : SymbolKind.Property);

export function toDocumentSymbols(symbols: readonly Symbol[], lines: Lines): DocumentSymbol[] {
  return symbols.map((symbol) => ({
    name: symbol.name,
    ...(symbol.detail === '' ? {} : { detail: symbol.detail }),
    kind: symbolKindOf(symbol.word),
    range: lines.range(symbol.whole),
    selectionRange: lines.range(symbol.head),
    ...(symbol.children.length > 0 ? { children: toDocumentSymbols(symbol.children, lines) } : {}),
  }));
}

/** The outline for clients that know no nesting. */
export function toSymbolInformation(symbols: readonly Symbol[], lines: Lines, uri: string, container?: string): SymbolInformation[] {
  return symbols.flatMap((symbol) => [
    {
      name: symbol.name,
      kind: symbolKindOf(symbol.word),
      location: { uri, range: lines.range(symbol.whole) },
      ...(container === undefined ? {} : { containerName: container }),
    },
    ...toSymbolInformation(symbol.children, lines, uri, symbol.name),
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
