// What of the protocol a client understands: read once, from whatever it sent as its capabilities. What it does not say, or
// says in another shape than the protocol gives it, it does not understand; nothing that is sent makes this fail.
import type { MarkupKind } from 'vscode-languageserver';

/** Of diagnostics, by the way they reach the client. */
export interface DiagnosticTakes {
  readonly related: boolean;
  readonly unnecessary: boolean;
  readonly codeDescription: boolean;
}

/** Plain values, each with what it stands for where its name does not say it. */
export interface ClientTakes {
  /** The client's first choice; undefined where it names none. */
  readonly hover: MarkupKind | undefined;
  readonly completion: {
    readonly documentation: MarkupKind | undefined;
    readonly snippets: boolean;
    readonly insertReplace: boolean;
    readonly preselect: boolean;
    readonly kinds: ReadonlySet<number>;
  };
  readonly signature: {
    readonly documentation: MarkupKind | undefined;
    /** Parameters as stretches of the label. */
    readonly offsets: boolean;
    /** The active parameter of each signature. */
    readonly active: boolean;
  };
  readonly locationLinks: boolean;
  readonly symbols: { readonly nested: boolean; readonly kinds: ReadonlySet<number> };
  readonly workspaceSymbols: { readonly lazy: boolean; readonly kinds: ReadonlySet<number> };
  readonly codeActions: {
    /** Kinds of actions that it knows; undefined where it takes commands only. */
    readonly kinds: readonly string[] | undefined;
    /** It makes edits that it is told of: without that, commands lead to nothing. */
    readonly applies: boolean;
    readonly preferred: boolean;
    /** The edit is asked for when an action is chosen. */
    readonly lazy: boolean;
    readonly data: boolean;
  };
  /** The command of a lens is asked for when it is shown. */
  readonly lazyLenses: boolean;
  readonly linkTooltips: boolean;
  readonly prepareRename: boolean;
  readonly folding: {
    readonly most: number | undefined /** Undefined: those of the protocol. */;
    readonly kinds: readonly string[] | undefined;
  };
  readonly tokens: {
    readonly whole: boolean;
    readonly delta: boolean;
    readonly range: boolean;
    readonly types: readonly string[];
    readonly modifiers: readonly string[];
  };
  readonly lazyTooltips: boolean;
  /** It asks for diagnostics. */
  readonly pull: boolean;
  readonly pulled: DiagnosticTakes;
  readonly pushed: DiagnosticTakes & { readonly version: boolean };
  readonly edits: { readonly versions: boolean; readonly snippets: boolean };
  readonly moves: { readonly willRename: boolean; readonly didRename: boolean; readonly didDelete: boolean };
  readonly folders: boolean;
  /** It answers what its settings are. */
  readonly configuration: boolean;
  readonly registers: { readonly settings: boolean; readonly files: boolean };
  /** What it can be told to ask for again. */
  readonly refreshes: { readonly diagnostics: boolean; readonly inlays: boolean; readonly lenses: boolean; readonly tokens: boolean };
}

/** Kinds that every client knows: what the protocol had in its first version. */
const firstKinds: ReadonlySet<number> = new Set(Array.from({ length: 18 }, (_, index) => index + 1));

const isIn = (value: unknown): boolean => value !== undefined && value !== null && value !== false;

export function takesOf(capabilities: unknown): ClientTakes {
  /** What stands at a path of names with dots between them. */
  const at = (path: string): unknown => {
    let value = capabilities;
    for (const name of path.split('.')) {
      if (typeof value !== 'object' || value === null || Array.isArray(value) || !Object.hasOwn(value, name)) return undefined;
      value = (value as Readonly<Record<string, unknown>>)[name];
    }
    return value;
  };
  const says = (path: string): boolean => at(path) === true;
  const has = (path: string): boolean => typeof at(path) === 'object' && at(path) !== null && !Array.isArray(at(path));
  const list = (path: string): readonly unknown[] => {
    const value = at(path);
    return Array.isArray(value) ? value : [];
  };
  const texts = (path: string): string[] => list(path).filter((one) => typeof one === 'string');
  const kinds = (path: string): ReadonlySet<number> => {
    const given = list(path).filter((one) => typeof one === 'number');
    return given.length === 0 ? firstKinds : new Set(given);
  };
  const markup = (path: string): MarkupKind | undefined => {
    const first = texts(path).find((one) => one === 'markdown' || one === 'plaintext');
    return first as MarkupKind | undefined;
  };
  const diagnostics = (path: string): DiagnosticTakes => ({
    related: says(`${path}.relatedInformation`),
    unnecessary: list(`${path}.tagSupport.valueSet`).includes(1),
    codeDescription: says(`${path}.codeDescriptionSupport`),
  });

  const item = 'textDocument.completion.completionItem';
  const signature = 'textDocument.signatureHelp.signatureInformation';
  const action = 'textDocument.codeAction';
  const folding = 'textDocument.foldingRange';
  const tokens = 'textDocument.semanticTokens';
  const most = at(`${folding}.rangeLimit`);
  // Another format than this one there is none.
  const isRelative = texts(`${tokens}.formats`).includes('relative');
  const full = `${tokens}.requests.full`;
  return {
    hover: markup('textDocument.hover.contentFormat'),
    completion: {
      documentation: markup(`${item}.documentationFormat`),
      snippets: says(`${item}.snippetSupport`),
      insertReplace: says(`${item}.insertReplaceSupport`),
      preselect: says(`${item}.preselectSupport`),
      kinds: kinds('textDocument.completion.completionItemKind.valueSet'),
    },
    signature: {
      documentation: markup(`${signature}.documentationFormat`),
      offsets: says(`${signature}.parameterInformation.labelOffsetSupport`),
      active: says(`${signature}.activeParameterSupport`),
    },
    locationLinks: says('textDocument.definition.linkSupport'),
    symbols: {
      nested: says('textDocument.documentSymbol.hierarchicalDocumentSymbolSupport'),
      kinds: kinds('textDocument.documentSymbol.symbolKind.valueSet'),
    },
    workspaceSymbols: {
      lazy: texts('workspace.symbol.resolveSupport.properties').includes('location.range'),
      kinds: kinds('workspace.symbol.symbolKind.valueSet'),
    },
    codeActions: {
      kinds: isIn(at(`${action}.codeActionLiteralSupport`))
        ? texts(`${action}.codeActionLiteralSupport.codeActionKind.valueSet`)
        : undefined,
      applies: says('workspace.applyEdit'),
      preferred: says(`${action}.isPreferredSupport`),
      lazy: texts(`${action}.resolveSupport.properties`).includes('edit') && says(`${action}.dataSupport`),
      data: says(`${action}.dataSupport`),
    },
    lazyLenses: texts('textDocument.codeLens.resolveSupport.properties').includes('command'),
    linkTooltips: says('textDocument.documentLink.tooltipSupport'),
    prepareRename: says('textDocument.rename.prepareSupport'),
    folding: {
      most: typeof most === 'number' && most >= 0 ? most : undefined,
      kinds: has(`${folding}.foldingRangeKind`) ? texts(`${folding}.foldingRangeKind.valueSet`) : undefined,
    },
    tokens: {
      whole: isRelative && (says(full) || has(full)),
      delta: isRelative && says(`${full}.delta`),
      range: isRelative && (says(`${tokens}.requests.range`) || has(`${tokens}.requests.range`)),
      types: texts(`${tokens}.tokenTypes`),
      modifiers: texts(`${tokens}.tokenModifiers`),
    },
    lazyTooltips: texts('textDocument.inlayHint.resolveSupport.properties').includes('tooltip'),
    pull: has('textDocument.diagnostic'),
    pulled: diagnostics('textDocument.diagnostic'),
    pushed: {
      ...diagnostics('textDocument.publishDiagnostics'),
      version: says('textDocument.publishDiagnostics.versionSupport'),
    },
    edits: {
      versions: says('workspace.workspaceEdit.documentChanges'),
      snippets: says('workspace.workspaceEdit.documentChanges') && says('workspace.workspaceEdit.snippetEditSupport'),
    },
    moves: {
      willRename: says('workspace.fileOperations.willRename'),
      didRename: says('workspace.fileOperations.didRename'),
      didDelete: says('workspace.fileOperations.didDelete'),
    },
    folders: says('workspace.workspaceFolders'),
    configuration: says('workspace.configuration'),
    registers: {
      settings: says('workspace.didChangeConfiguration.dynamicRegistration'),
      files: says('workspace.didChangeWatchedFiles.dynamicRegistration'),
    },
    refreshes: {
      diagnostics: says('workspace.diagnostics.refreshSupport'),
      inlays: says('workspace.inlayHint.refreshSupport'),
      lenses: says('workspace.codeLens.refreshSupport'),
      tokens: says('workspace.semanticTokens.refreshSupport'),
    },
  };
}
