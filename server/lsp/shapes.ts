// What the parameters of each message that is answered or heard must be, as far as they are read here.

/** What is wrong with a value, as the end of a sentence; undefined where nothing is. */
export type Shape = (value: unknown, path: string) => string | undefined;

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const simple =
  (holds: (value: unknown) => boolean, what: string): Shape =>
  (value, path) =>
    holds(value) ? undefined : `${path} is ${value === undefined ? 'missing' : `not ${what}`}`;

const text = simple((value) => typeof value === 'string', 'a text');
const flag = simple((value) => typeof value === 'boolean', 'true or false');
const count = simple((value) => Number.isInteger(value) && (value as number) >= 0, 'a whole number from 0');
const whole = simple((value) => Number.isInteger(value), 'a whole number');
const thing = simple(isRecord, 'an object');
const anything: Shape = () => undefined;

/** A value that may be missing; what is null is missing to some clients. */
const maybe =
  (shape: Shape): Shape =>
  (value, path) =>
    value === undefined || value === null ? undefined : shape(value, path);
const listOf =
  (shape: Shape): Shape =>
  (value, path) => {
    if (!Array.isArray(value)) return simple(() => false, 'a list')(value, path);
    for (let i = 0; i < value.length; i++) {
      const wrong = shape(value[i], `${path}[${i}]`);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };
const either =
  (...given: readonly Shape[]): Shape =>
  (value, path) => {
    let wrong: string | undefined;
    for (const shape of given) {
      wrong = shape(value, path);
      if (wrong === undefined) return undefined;
    }
    return wrong;
  };
const fields =
  (given: Readonly<Record<string, Shape>>): Shape =>
  (value, path) => {
    const wrong = thing(value, path);
    if (wrong !== undefined) return wrong;
    for (const [name, shape] of Object.entries(given)) {
      const inner = shape((value as Readonly<Record<string, unknown>>)[name], `${path}.${name}`);
      if (inner !== undefined) return inner;
    }
    return undefined;
  };

const position = fields({ line: count, character: count });
const range = fields({ start: position, end: position });
const named = { textDocument: fields({ uri: text }) };
const ofText = fields(named);
const atPosition = fields({ ...named, position });
const inRange = fields({ ...named, range });
const ofUri = fields({ uri: text });
const renamedFiles = fields({ files: listOf(fields({ oldUri: text, newUri: text })) });
const folders = listOf(fields({ uri: text }));
const hierarchyItem = fields({ item: fields({ name: text, uri: text, range, selectionRange: range }) });

/** The changes of a text: a range or the whole, and what takes its place. */
export const changesOfText = listOf(fields({ text, range: maybe(range) }));

/** By method. What is not here takes no parameters, or is told by its features what to make of them. */
export const shapes: {
  readonly requests: Readonly<Record<string, Shape>>;
  readonly notifications: Readonly<Record<string, Shape>>;
} = {
  requests: {
    initialize: fields({}),
    'textDocument/hover': atPosition,
    'textDocument/definition': atPosition,
    'textDocument/references': fields({ ...named, position, context: fields({ includeDeclaration: flag }) }),
    'textDocument/documentHighlight': atPosition,
    'textDocument/signatureHelp': fields({ ...named, position, context: maybe(fields({ triggerKind: whole, isRetrigger: flag })) }),
    'textDocument/completion': atPosition,
    'completionItem/resolve': fields({ label: text }),
    'textDocument/documentSymbol': ofText,
    'textDocument/formatting': ofText,
    'textDocument/rangeFormatting': inRange,
    'textDocument/onTypeFormatting': fields({ ...named, position, ch: text }),
    'textDocument/codeAction': fields({ ...named, range, context: fields({ diagnostics: listOf(thing), only: maybe(listOf(text)) }) }),
    'codeAction/resolve': fields({ title: text }),
    'textDocument/codeLens': ofText,
    'codeLens/resolve': fields({ range }),
    'textDocument/documentLink': ofText,
    'documentLink/resolve': fields({ range }),
    'textDocument/inlayHint': inRange,
    'inlayHint/resolve': fields({ position, label: either(text, listOf(thing)) }),
    'textDocument/prepareRename': atPosition,
    'textDocument/rename': fields({ ...named, position, newName: text }),
    'textDocument/foldingRange': ofText,
    'textDocument/selectionRange': fields({ ...named, positions: listOf(position) }),
    'textDocument/prepareCallHierarchy': atPosition,
    'callHierarchy/incomingCalls': hierarchyItem,
    'callHierarchy/outgoingCalls': hierarchyItem,
    'textDocument/semanticTokens/full': ofText,
    'textDocument/semanticTokens/full/delta': fields({ ...named, previousResultId: text }),
    'textDocument/semanticTokens/range': inRange,
    'textDocument/diagnostic': fields({ ...named, previousResultId: maybe(text) }),
    'workspace/diagnostic': fields({ previousResultIds: listOf(fields({ uri: text, value: text })) }),
    'workspace/executeCommand': fields({ command: text, arguments: maybe(listOf(anything)) }),
    'workspace/symbol': fields({ query: text }),
    'workspaceSymbol/resolve': fields({ name: text, location: ofUri }),
    'workspace/willRenameFiles': renamedFiles,
    'pintle/figures': ofUri,
    'pintle/account': ofUri,
    'pintle/overview': ofUri,
    'pintle/preview': ofUri,
    'pintle/drawing': fields({ uri: text, id: text }),
    'pintle/promises': maybe(fields({ uris: maybe(listOf(text)) })),
  },
  notifications: {
    initialized: anything,
    'textDocument/didOpen': fields({ textDocument: fields({ uri: text, text, version: maybe(whole) }) }),
    // What the changes are is looked at where they are made: a text that cannot be followed any more is given up.
    'textDocument/didChange': fields({ textDocument: fields({ uri: text, version: maybe(whole) }) }),
    'textDocument/didSave': ofText,
    'textDocument/didClose': ofText,
    'workspace/didChangeConfiguration': thing,
    'workspace/didChangeWatchedFiles': fields({ changes: listOf(fields({ uri: text, type: whole })) }),
    'workspace/didChangeWorkspaceFolders': fields({ event: fields({ added: folders, removed: folders }) }),
    'workspace/didDeleteFiles': fields({ files: folders }),
    'workspace/didRenameFiles': renamedFiles,
    '$/cancelRequest': fields({ id: either(text, whole) }),
    '$/setTrace': fields({ value: text }),
  },
};
