// Every question that the protocol knows and this server may come to answer: how it is asked, what must hold of any answer,
// and what is asked next with it. Which of them are asked is what the server says that it can do.
import { TextDocument } from 'vscode-languageserver-textdocument';

export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** Where something is asked about. */
export interface Where {
  readonly uri: string;
  readonly text: string;
  readonly position: Position;
  readonly range: Range;
  /** 0 to 1, anew at each call. */
  readonly random: () => number;
  readonly textOf: (uri: string) => string | undefined;
  readonly diagnostics: readonly unknown[];
  /** What was answered before, by what and where, for questions that build on it. */
  readonly memory: Map<string, unknown>;
}

export interface Ask {
  readonly method: string;
  readonly params: unknown;
  readonly uri: string;
  /** It may be refused with a reason for people. */
  readonly mayRefuse?: boolean;
  /** What is wrong with an answer, besides ranges outside the text. */
  readonly check?: (answer: unknown) => readonly string[];
  /** Questions that come out of an answer. */
  readonly then?: (answer: unknown) => readonly Ask[];
}

type Asker = (where: Where, ability: Fields) => readonly Ask[];
type Fields = Readonly<Record<string, unknown>>;

const fields = (value: unknown): Fields => (typeof value === 'object' && value !== null ? (value as Fields) : {});
const list = (value: unknown): readonly Fields[] => (Array.isArray(value) ? (value as Fields[]) : []);
const options = { tabSize: 2, insertSpaces: true };
const pick = <T>(from: readonly T[], random: () => number): T | undefined => from[Math.floor(random() * from.length)];

const atPosition =
  (method: string, more: object = {}, rest: Partial<Ask> = {}): Asker =>
  ({ uri, position }) => [{ method, uri, params: { textDocument: { uri }, position, ...more }, ...rest }];
const ofText =
  (method: string, rest: Partial<Ask> = {}): Asker =>
  ({ uri }) => [{ method, uri, params: { textDocument: { uri } }, ...rest }];
/** What is null is nothing to some clients, and does not come back. */
const withoutNulls = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_, inner: unknown) => (inner === null ? undefined : inner)) as unknown;
/** Asks about one of the things in an answer. */
const resolving = (
  method: string,
  ability: Fields,
  { uri, random }: Where,
  itemsOf: (answer: unknown) => readonly Fields[] = list,
): Partial<Ask> =>
  ability['resolveProvider'] === true
    ? {
        then: (answer) => {
          const item = pick(itemsOf(answer), random);
          if (item === undefined) return [];
          const check = (resolved: unknown): readonly string[] =>
            ['label', 'title', 'name', 'range'].some(
              (key) => item[key] !== undefined && JSON.stringify(fields(resolved)[key]) === JSON.stringify(item[key]),
            )
              ? []
              : ['another thing came back, or nothing'];
          return [{ method, uri, params: random() < 0.5 ? item : withoutNulls(item), check }];
        },
      }
    : {};

/** By the name of the ability, as the server says it when it is greeted. */
export const askers: Readonly<Record<string, Asker>> = {
  hoverProvider: atPosition('textDocument/hover'),
  definitionProvider: atPosition('textDocument/definition'),
  declarationProvider: atPosition('textDocument/declaration'),
  typeDefinitionProvider: atPosition('textDocument/typeDefinition'),
  implementationProvider: atPosition('textDocument/implementation'),
  referencesProvider: (where) => [
    ...atPosition('textDocument/references', { context: { includeDeclaration: true } })(where, {}),
    ...(where.random() < 0.3 ? atPosition('textDocument/references', { context: { includeDeclaration: false } })(where, {}) : []),
  ],
  documentHighlightProvider: atPosition('textDocument/documentHighlight'),
  signatureHelpProvider: atPosition('textDocument/signatureHelp', { context: { triggerKind: 1, isRetrigger: false } }),
  linkedEditingRangeProvider: atPosition('textDocument/linkedEditingRange'),
  documentSymbolProvider: ofText('textDocument/documentSymbol', { check: (answer) => list(answer).flatMap(symbolFaults) }),
  documentFormattingProvider: ({ uri, text }) => [
    { method: 'textDocument/formatting', uri, params: { textDocument: { uri }, options }, check: (answer) => editFaults(text, answer) },
  ],
  documentRangeFormattingProvider: ({ uri, text, range }) => [
    {
      method: 'textDocument/rangeFormatting',
      uri,
      params: { textDocument: { uri }, range, options },
      check: (answer) => editFaults(text, answer),
    },
  ],
  documentOnTypeFormattingProvider: ({ uri, text, position, random }, ability) => {
    const keys = [ability['firstTriggerCharacter'], ...((ability['moreTriggerCharacter'] as unknown[] | undefined) ?? [])].map(String);
    const ask = (at: Position, ch: string): Ask => ({
      method: 'textDocument/onTypeFormatting',
      uri,
      params: { textDocument: { uri }, position: at, ch, options },
      check: (answer) => editFaults(text, answer),
    });
    // Behind such a key, as an editor asks; and where none was typed.
    const document = TextDocument.create(uri, '', 0, text);
    const behind = keys.flatMap((ch) => {
      const places = text.split(ch).slice(0, -1);
      const at = Math.floor(random() * places.length);
      return places.length === 0 ? [] : [ask(document.positionAt(places.slice(0, at + 1).join(ch).length + ch.length), ch)];
    });
    return [...behind, ask(position, pick(keys, random) ?? '}')];
  },
  codeActionProvider: (where, ability) => {
    const { uri, range, diagnostics } = where;
    const ask = (context: object): Ask => ({
      method: 'textDocument/codeAction',
      uri,
      params: { textDocument: { uri }, range, context },
      check: (answer) => list(answer).flatMap((action) => workspaceEditFaults(where, action['edit'])),
      ...resolving('codeAction/resolve', ability, where),
    });
    return [
      ask({ diagnostics }),
      ...((ability['codeActionKinds'] as string[] | undefined) ?? []).map((kind) => ask({ diagnostics: [], only: [kind] })),
    ];
  },
  codeLensProvider: (where, ability) => ofText('textDocument/codeLens', resolving('codeLens/resolve', ability, where))(where, ability),
  documentLinkProvider: (where, ability) =>
    ofText('textDocument/documentLink', resolving('documentLink/resolve', ability, where))(where, ability),
  completionProvider: (where, ability) => {
    const { uri, position, text } = where;
    const triggers = (ability['triggerCharacters'] as string[] | undefined) ?? [];
    const before = lineOf(text, position).slice(0, position.character).slice(-1);
    const context = triggers.includes(before) ? { triggerKind: 2, triggerCharacter: before } : { triggerKind: 1 };
    const items = (answer: unknown): readonly Fields[] => (Array.isArray(answer) ? list(answer) : list(fields(answer)['items']));
    return [
      {
        method: 'textDocument/completion',
        uri,
        params: { textDocument: { uri }, position, context },
        check: (answer) => items(answer).flatMap((item) => completionFaults(item, position)),
        ...resolving('completionItem/resolve', ability, where, items),
      },
    ];
  },
  inlayHintProvider: (where, ability) => [
    {
      method: 'textDocument/inlayHint',
      uri: where.uri,
      params: { textDocument: { uri: where.uri }, range: where.range },
      ...resolving('inlayHint/resolve', ability, where),
    },
    { method: 'textDocument/inlayHint', uri: where.uri, params: { textDocument: { uri: where.uri }, range: wholeOf(where.text) } },
  ],
  inlineValueProvider: ({ uri, range }) => [
    { method: 'textDocument/inlineValue', uri, params: { textDocument: { uri }, range, context: { frameId: 0, stoppedLocation: range } } },
  ],
  renameProvider: (where, ability) => {
    const { uri, position, random } = where;
    const rename = (newName: string): Ask => ({
      method: 'textDocument/rename',
      uri,
      params: { textDocument: { uri }, position, newName },
      mayRefuse: true,
      check: (answer) => workspaceEditFaults(where, answer),
    });
    const name = pick(['fresh-name', 'west', 'x', '', '5', 'a b', 'leaf', 'ж'], random) ?? 'x';
    if (ability['prepareProvider'] !== true) return [rename(name)];
    return [
      {
        method: 'textDocument/prepareRename',
        uri,
        params: { textDocument: { uri }, position },
        mayRefuse: true,
        then: (answer) => (answer === null ? [] : [rename(name)]),
      },
    ];
  },
  foldingRangeProvider: ofText('textDocument/foldingRange'),
  selectionRangeProvider: ({ uri, position }) => [
    {
      method: 'textDocument/selectionRange',
      uri,
      params: { textDocument: { uri }, positions: [position] },
      check: (answer) =>
        list(answer).length === 1 ? list(answer).flatMap((one) => selectionFaults(one, position)) : ['not one answer for one position'],
    },
  ],
  callHierarchyProvider: ({ uri, position, random }) => [
    {
      method: 'textDocument/prepareCallHierarchy',
      uri,
      params: { textDocument: { uri }, position },
      then: (answer) => {
        const item = pick(list(answer), random);
        return item === undefined
          ? []
          : ['callHierarchy/incomingCalls', 'callHierarchy/outgoingCalls'].map((method) => ({
              method,
              uri: String(item['uri']),
              params: { item },
            }));
      },
    },
  ],
  typeHierarchyProvider: ({ uri, position, random }) => [
    {
      method: 'textDocument/prepareTypeHierarchy',
      uri,
      params: { textDocument: { uri }, position },
      then: (answer) => {
        const item = pick(list(answer), random);
        return item === undefined
          ? []
          : ['typeHierarchy/supertypes', 'typeHierarchy/subtypes'].map((method) => ({
              method,
              uri: String(item['uri']),
              params: { item },
            }));
      },
    },
  ],
  semanticTokensProvider: ({ uri, text, range, memory }, ability) => {
    const check = (answer: unknown): string[] => tokenFaults(text, fields(answer)['data'], fields(ability['legend']));
    const full = fields(ability['full']);
    const before = fields(memory.get(`tokens ${uri}`));
    const remember = (answer: unknown): readonly Ask[] => {
      memory.set(`tokens ${uri}`, answer);
      return [];
    };
    const whole: Ask = { method: 'textDocument/semanticTokens/full', uri, params: { textDocument: { uri } }, check, then: remember };
    return [
      ...(full['delta'] === true && typeof before['resultId'] === 'string'
        ? [
            {
              method: 'textDocument/semanticTokens/full/delta',
              uri,
              params: { textDocument: { uri }, previousResultId: before['resultId'] },
              check: (delta: unknown) => check({ data: withDelta(before['data'] as number[], delta) }),
              // What has changed since, put to what was, is what there is.
              then: (delta: unknown): readonly Ask[] => {
                const now = JSON.stringify(withDelta(before['data'] as number[], delta));
                return [
                  {
                    ...whole,
                    check: (answer) =>
                      JSON.stringify(fields(answer)['data']) === now ? [] : ['the changes of the tokens do not lead to the tokens'],
                  },
                ];
              },
            },
          ]
        : []),
      ...(ability['full'] !== undefined && ability['full'] !== false ? [whole] : []),
      ...(ability['range'] !== undefined && ability['range'] !== false
        ? [{ method: 'textDocument/semanticTokens/range', uri, params: { textDocument: { uri }, range }, check }]
        : []),
    ];
  },
  workspaceSymbolProvider: (where, ability) => [
    {
      method: 'workspace/symbol',
      uri: where.uri,
      params: { query: pick(['', 'west', 'ram', 'e', 'panel', 'zzz'], where.random) },
      ...resolving('workspaceSymbol/resolve', ability, where),
    },
  ],
  diagnosticProvider: ({ uri }, ability) => [
    {
      method: 'textDocument/diagnostic',
      uri,
      params: { textDocument: { uri } },
      then: (answer) => [
        {
          method: 'textDocument/diagnostic',
          uri,
          params: { textDocument: { uri }, previousResultId: fields(answer)['resultId'] },
          check: (again) =>
            fields(again)['resultId'] === fields(answer)['resultId'] && fields(again)['kind'] !== 'unchanged'
              ? ['the same diagnostics under the same name were sent again']
              : [],
        },
      ],
    },
    ...(ability['workspaceDiagnostics'] === true ? [{ method: 'workspace/diagnostic', uri, params: { previousResultIds: [] } }] : []),
  ],
};

/** What is asked before files are renamed, made or deleted: below `workspace.fileOperations`. */
export const fileAskers: Readonly<Record<string, Asker>> = {
  willRename: (where) => {
    const { uri, random } = where;
    const to = uri.replace(
      /[^/]+$/,
      pick(['moved.gate', 'deeper/moved.gate', '../moved.gate', 'with space ü.gate'], random) ?? 'moved.gate',
    );
    const folder = uri.replace(/\/[^/]+$/, '');
    const files = random() < 0.5 ? [{ oldUri: uri, newUri: to }] : [{ oldUri: folder, newUri: `${folder}-moved` }];
    return uri.startsWith('file:')
      ? [{ method: 'workspace/willRenameFiles', uri, params: { files }, check: (answer) => workspaceEditFaults(where, answer) }]
      : [];
  },
  willCreate: (where) => [
    {
      method: 'workspace/willCreateFiles',
      uri: where.uri,
      params: { files: [{ uri: where.uri.replace(/[^/]+$/, 'made.gate') }] },
      check: (answer) => workspaceEditFaults(where, answer),
    },
  ],
  willDelete: (where) => [
    {
      method: 'workspace/willDeleteFiles',
      uri: where.uri,
      params: { files: [{ uri: where.uri }] },
      check: (answer) => workspaceEditFaults(where, answer),
    },
  ],
};

/** What a server may say of itself that is no question, or that other tests ask. */
export const notAsked: readonly string[] = ['positionEncoding', 'textDocumentSync', 'workspace', 'experimental'];

/** Requests of our own, by their names. */
export const ownAskers: Readonly<Record<string, Asker>> = {
  'pintle/figures': ({ uri }) => [{ method: 'pintle/figures', uri, params: { uri } }],
  'pintle/rules': ({ uri }) => [{ method: 'pintle/rules', uri, params: null }],
  'pintle/account': ({ uri }) => [{ method: 'pintle/account', uri, params: { uri } }],
  'pintle/overview': ({ uri }) => [{ method: 'pintle/overview', uri, params: { uri } }],
  'pintle/promises': ({ uri, random }) => [{ method: 'pintle/promises', uri, params: random() < 0.3 ? {} : { uris: [uri] } }],
  'pintle/preview': ({ uri, random }) => [
    {
      method: 'pintle/preview',
      uri,
      params: { uri },
      check: (answer) => list(fields(answer)['drawings']).flatMap(drawingFaults),
      then: (answer) => {
        const drawing = pick(list(fields(answer)['drawings']), random);
        return drawing === undefined
          ? []
          : [{ method: 'pintle/drawing', uri, params: { uri, id: drawing['id'], theme: pick(['light', 'dark', 'print'], random) } }];
      },
    },
  ],
  'pintle/drawing': ({ uri, random }) => [
    { method: 'pintle/drawing', uri, params: { uri, id: pick(['plan', 'timing', 'force', 'wiring', 'none'], random), theme: 'print' } },
  ],
};

// --- What must hold of answers.

const linesOf = (text: string): string[] => text.split(/\r\n|\r|\n/);
const lineOf = (text: string, position: Position): string => linesOf(text)[position.line] ?? '';

/** From the first character to the last. */
export function wholeOf(text: string): Range {
  const lines = linesOf(text);
  return { start: { line: 0, character: 0 }, end: { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 } };
}

const compare = (a: Position, b: Position): number => a.line - b.line || a.character - b.character;
const isPosition = (value: unknown): value is Position =>
  typeof fields(value)['line'] === 'number' && typeof fields(value)['character'] === 'number';
const isRange = (value: unknown): value is Range => isPosition(fields(value)['start']) && isPosition(fields(value)['end']);
const inside = (outer: Range, inner: Range): boolean => compare(outer.start, inner.start) <= 0 && compare(inner.end, outer.end) <= 0;

/** Every place in an answer that does not lie in the text that it is of. */
export function placeFaults(answer: unknown, uri: string, textOf: (uri: string) => string | undefined, callsOf?: string): string[] {
  const found: string[] = [];
  const lines = new Map<string, string[] | undefined>();
  const linesAt = (at: string): string[] | undefined => {
    if (!lines.has(at)) {
      const text = textOf(at);
      lines.set(at, text === undefined ? undefined : linesOf(text));
    }
    return lines.get(at);
  };
  const positioned = (value: Position, at: string, path: string): void => {
    const known = linesAt(at);
    if (known === undefined) {
      // A file that is not there can be led to, though not to any place in it.
      if (value.line !== 0 || value.character !== 0) found.push(`${path}: a place in ${at}, which nobody has`);
      return;
    }
    const line = known[value.line];
    const fits =
      Number.isInteger(value.line) &&
      Number.isInteger(value.character) &&
      line !== undefined &&
      value.character >= 0 &&
      value.character <= line.length;
    if (!fits)
      found.push(
        `${path}: ${value.line}:${value.character} is outside the text (${known.length} lines; that one has ${line?.length ?? 'no'} characters)`,
      );
    else if (/^[\ud800-\udbff][\udc00-\udfff]/.test(line.slice(value.character - 1, value.character + 1)))
      found.push(`${path}: ${value.line}:${value.character} is inside a character`);
  };
  const walk = (value: unknown, at: string, path: string): void => {
    if (typeof value !== 'object' || value === null) return;
    if (Array.isArray(value)) {
      value.forEach((one, i) => walk(one, at, `${path}[${i}]`));
      return;
    }
    if (isRange(value)) {
      positioned(value.start, at, path);
      positioned(value.end, at, path);
      if (compare(value.start, value.end) > 0) found.push(`${path}: ends before it starts`);
      return;
    }
    if (isPosition(value)) {
      positioned(value, at, path);
      return;
    }
    const own = value as Fields;
    const nested =
      typeof own['uri'] === 'string'
        ? own['uri']
        : typeof fields(own['textDocument'])['uri'] === 'string'
          ? String(fields(own['textDocument'])['uri'])
          : at;
    for (const [key, inner] of Object.entries(own)) {
      if (key === 'data') continue;
      if (key === 'changes') for (const [of, edits] of Object.entries(fields(inner))) walk(edits, of, `${path}.changes`);
      else if (key === 'originSelectionRange') walk(inner, at, `${path}.${key}`);
      else if (typeof own['targetUri'] === 'string' && key.startsWith('target')) walk(inner, own['targetUri'], `${path}.${key}`);
      // Where a caller calls stands in the caller; where something calls others, in itself.
      else if (key === 'fromRanges') walk(inner, String(fields(own['from'])['uri'] ?? callsOf ?? at), `${path}.${key}`);
      else walk(inner, nested, `${path}.${key}`);
    }
    if (typeof own['startLine'] === 'number' && typeof own['endLine'] === 'number') {
      const count = linesAt(at)?.length ?? 0;
      if (own['startLine'] < 0 || own['endLine'] < own['startLine'] || own['endLine'] >= count)
        found.push(`${path}: folds lines ${own['startLine']} to ${own['endLine']} of ${count}`);
    }
  };
  walk(answer, uri, '');
  return found;
}

interface TextEdit {
  readonly range: Range;
  readonly newText: string;
}

function editFaults(text: string, edits: unknown): string[] {
  if (edits === null || edits === undefined) return [];
  try {
    // A text with places to fill goes where any other would.
    const plain = list(edits).map((edit) =>
      'snippet' in edit ? { range: edit['range'], newText: String(fields(edit['snippet'])['value']) } : edit,
    );
    TextDocument.applyEdits(TextDocument.create('file:///x', '', 0, text), plain as unknown as TextEdit[]);
    return [];
  } catch (error) {
    return [`its edits cannot be made: ${String(error)}`];
  }
}

function workspaceEditFaults({ textOf }: Where, edit: unknown): string[] {
  const { changes, documentChanges } = fields(edit);
  const all = [
    ...Object.entries(fields(changes)).map(([uri, edits]) => ({ uri, edits })),
    ...list(documentChanges).map((one) => ({ uri: String(fields(one['textDocument'])['uri']), edits: one['edits'] })),
  ];
  return all.flatMap(({ uri, edits }) => editFaults(textOf(uri) ?? '', edits));
}

function symbolFaults(symbol: Fields): string[] {
  const { range, selectionRange } = symbol;
  const own =
    isRange(range) && isRange(selectionRange) && !inside(range, selectionRange)
      ? [`the name of ${String(symbol['name'])} stands outside of it`]
      : [];
  const outside = list(symbol['children']).filter((child) => isRange(range) && isRange(child['range']) && !inside(range, child['range']));
  return [
    ...own,
    ...outside.map((child) => `${String(child['name'])} stands outside of ${String(symbol['name'])}`),
    ...list(symbol['children']).flatMap(symbolFaults),
  ];
}

function selectionFaults(selection: Fields, position: Position): string[] {
  const { range } = selection;
  if (!isRange(range)) return ['a selection without a range'];
  if (!inside(range, { start: position, end: position })) return ['a selection that does not hold the caret'];
  const parent = selection['parent'];
  if (parent === undefined) return [];
  const outer = fields(parent)['range'];
  return isRange(outer) && !inside(outer, range)
    ? ['a wider selection that does not hold the narrower']
    : selectionFaults(fields(parent), position);
}

function completionFaults(item: Fields, position: Position): string[] {
  const { range } = fields(item['textEdit']);
  if (!isRange(range)) return [];
  if (range.start.line !== position.line || range.end.line !== position.line)
    return [`${String(item['label'])}: takes the place of more than its line`];
  return inside(range, { start: position, end: position }) ? [] : [`${String(item['label'])}: does not stand at the caret`];
}

function drawingFaults(drawing: Fields): string[] {
  const svg = String(drawing['svg']);
  if (/<script|javascript:|NaN|undefined|Infinity/.test(svg))
    return [`${String(drawing['id'])}: ${/<script|javascript:|NaN|undefined|Infinity/.exec(svg)?.[0]} in the drawing`];
  return (svg === '') === (typeof drawing['lacks'] === 'string')
    ? []
    : [`${String(drawing['id'])}: neither drawn nor said why not, or both`];
}

function tokenFaults(text: string, data: unknown, legend: Fields): string[] {
  const numbers = Array.isArray(data) ? (data as number[]) : [];
  if (numbers.length % 5 !== 0) return ['tokens that are not in fives'];
  const lines = linesOf(text);
  const found: string[] = [];
  let line = 0;
  let character = 0;
  let end = 0;
  for (let i = 0; i < numbers.length; i += 5) {
    const [down = 0, right = 0, length = 0, type = 0, modifiers = 0] = numbers.slice(i, i + 5);
    if (down > 0) end = 0;
    character = down > 0 ? right : character + right;
    line += down;
    if (down < 0 || right < 0 || length <= 0 || character < end) found.push(`token ${i / 5} overlaps the one before it, or is empty`);
    end = character + length;
    if (end > (lines[line]?.length ?? -1)) found.push(`token ${i / 5} is outside the text`);
    if (type >= (legend['tokenTypes'] as unknown[]).length || modifiers >= 2 ** (legend['tokenModifiers'] as unknown[]).length)
      found.push(`token ${i / 5} is of a kind that was not announced`);
  }
  return found.slice(0, 3);
}

/** The tokens after a delta, as a client works them out. */
function withDelta(before: readonly number[], delta: unknown): unknown {
  const { edits, data } = fields(delta);
  if (edits === undefined) return data;
  const after = [...before];
  for (const edit of [...list(edits)].sort((a, b) => Number(b['start']) - Number(a['start'])))
    after.splice(Number(edit['start']), Number(edit['deleteCount']), ...((edit['data'] as number[] | undefined) ?? []));
  return after;
}
