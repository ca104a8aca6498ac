// What a client must have said that it takes, for each thing in a message of the server; written from the protocol's text
// (LSP 3.18, the documentation of the structures), and knowing nothing of how the server reads its clients.

type Fields = Readonly<Record<string, unknown>>;

/** Something in a message that a client takes only if what it said at `path` fits. */
export interface Need {
  readonly path: string;
  readonly what: string;
  readonly fits: (said: unknown) => boolean;
}

export interface Told {
  readonly capabilities: unknown;
  readonly options: Fields;
  readonly abilities: Fields;
}

export function said(capabilities: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((value, name) => (typeof value === 'object' && value !== null ? (value as Fields)[name] : undefined), capabilities);
}

const fields = (value: unknown): Fields => (typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {});
const list = (value: unknown): readonly Fields[] => (Array.isArray(value) ? value.map(fields) : []);
const has = (value: unknown, name: string): boolean => fields(value)[name] !== undefined;

const yes = (said: unknown): boolean => said === true;
const given = (said: unknown): boolean => typeof said === 'object' && said !== null;
const holds = (one: unknown) => (said: unknown) => Array.isArray(said) && said.includes(one);
/** In the client's set; in that of the protocol's first version where it has none. */
const inSet = (one: unknown) => (said: unknown) =>
  Array.isArray(said) ? said.includes(one) : typeof one === 'number' && one >= 1 && one <= 18;
const ofKinds = (kind: unknown) => (said: unknown) =>
  typeof kind === 'string' && Array.isArray(said) && said.some((one) => one === '' || kind === one || kind.startsWith(`${String(one)}.`));
const never = (): boolean => false;

const need = (path: string, what: string, fits: Need['fits'] = yes): Need => ({ path, what, fits });
const needIf = (holds: boolean, ...one: Parameters<typeof need>): Need[] => (holds ? [need(...one)] : []);
const present = (value: unknown, paths: Readonly<Record<string, string>>): Need[] =>
  Object.entries(paths).flatMap(([name, path]) => needIf(has(value, name), path, name));

function markupNeeds(markup: unknown, path: string): Need[] {
  const { kind } = fields(markup);
  return kind === undefined ? [] : [need(path, `${String(kind)}`, holds(kind))];
}

function diagnosticNeeds(diagnostic: unknown, told: Told): Need[] {
  const base = `textDocument.${said(told.capabilities, 'textDocument.diagnostic') === undefined ? 'publishDiagnostics' : 'diagnostic'}`;
  const tags = fields(diagnostic)['tags'];
  return [
    ...present(diagnostic, {
      relatedInformation: `${base}.relatedInformation`,
      codeDescription: `${base}.codeDescriptionSupport`,
      data: `${base}.dataSupport`,
    }),
    ...(Array.isArray(tags) ? tags.map((tag) => need(`${base}.tagSupport.valueSet`, `tag ${tag}`, holds(tag))) : []),
  ];
}

function editNeeds(edit: unknown): Need[] {
  const { documentChanges, changeAnnotations } = fields(edit);
  const base = 'workspace.workspaceEdit';
  return [
    ...needIf(documentChanges !== undefined, `${base}.documentChanges`, 'documentChanges'),
    ...needIf(changeAnnotations !== undefined, `${base}.changeAnnotationSupport`, 'changeAnnotations', given),
    ...list(documentChanges).flatMap((change) => [
      ...needIf(has(change, 'kind'), `${base}.resourceOperations`, String(change['kind']), holds(change['kind'])),
      ...list(change['edits']).flatMap((one) => [
        ...needIf(has(one, 'snippet'), `${base}.snippetEditSupport`, 'an edit with places to fill'),
        ...needIf(has(one, 'annotationId'), `${base}.changeAnnotationSupport`, 'annotationId', given),
      ]),
    ]),
  ];
}

function completionNeeds(item: Fields, { options }: Told): Need[] {
  const base = 'textDocument.completion.completionItem';
  const isSnippet = item['insertTextFormat'] === 2;
  const { newText, insert } = fields(item['textEdit']);
  const command = fields(item['command'])['command'];
  return [
    ...needIf(isSnippet, `${base}.snippetSupport`, 'a snippet'),
    ...needIf(!isSnippet && /\$\{?\d/.test(String(newText)), '', 'places to fill in a text that is no snippet', never),
    ...needIf(insert !== undefined, `${base}.insertReplaceSupport`, 'insert and replace'),
    ...needIf(
      has(item, 'kind'),
      'textDocument.completion.completionItemKind.valueSet',
      `kind ${String(item['kind'])}`,
      inSet(item['kind']),
    ),
    ...present(item, {
      preselect: `${base}.preselectSupport`,
      deprecated: `${base}.deprecatedSupport`,
      commitCharacters: `${base}.commitCharactersSupport`,
      labelDetails: `${base}.labelDetailsSupport`,
    }),
    ...needIf(has(item, 'tags'), `${base}.tagSupport`, 'tags', given),
    ...needIf(has(item, 'insertTextMode'), `${base}.insertTextModeSupport`, 'insertTextMode', given),
    ...markupNeeds(item['documentation'], `${base}.documentationFormat`),
    ...needIf(command !== undefined && command !== options['suggestCommand'], '', `the command ${String(command)}`, never),
  ];
}

function actionNeeds(action: Fields, told: Told): Need[] {
  const base = 'textDocument.codeAction';
  if (typeof action['command'] === 'string') {
    const { commands } = fields(told.abilities['executeCommandProvider']);
    return [
      need('workspace.applyEdit', 'a command that makes an edit'),
      ...needIf(!holds(action['command'])(commands), '', `the command ${action['command']}`, never),
    ];
  }
  return [
    need(`${base}.codeActionLiteralSupport`, 'an action that is no command', given),
    ...needIf(
      has(action, 'kind'),
      `${base}.codeActionLiteralSupport.codeActionKind.valueSet`,
      String(action['kind']),
      ofKinds(action['kind']),
    ),
    ...present(action, { isPreferred: `${base}.isPreferredSupport`, disabled: `${base}.disabledSupport`, data: `${base}.dataSupport` }),
    ...needIf(has(action, 'tags'), `${base}.tagSupport`, 'tags', given),
    ...needIf(!has(action, 'edit') && !has(action, 'command'), `${base}.resolveSupport.properties`, 'an edit on demand', holds('edit')),
    ...needIf(has(action, 'command'), '', 'a command of nobody', never),
    ...editNeeds(action['edit']),
    ...list(action['diagnostics']).flatMap((one) => diagnosticNeeds(one, told)),
  ];
}

function symbolNeeds(symbol: Fields, base: string): Need[] {
  const location = fields(symbol['location']);
  return [
    need(`${base}.symbolKind.valueSet`, `kind ${String(symbol['kind'])}`, inSet(symbol['kind'])),
    ...needIf(has(symbol, 'tags'), `${base}.tagSupport`, 'tags', given),
    ...needIf(has(symbol, 'selectionRange'), `${base}.hierarchicalDocumentSymbolSupport`, 'symbols in symbols'),
    ...needIf(
      has(symbol, 'location') && !has(location, 'range'),
      `${base}.resolveSupport.properties`,
      'a place on demand',
      holds('location.range'),
    ),
    ...needIf(has(symbol, 'data'), `${base}.resolveSupport`, 'data', given),
    ...list(symbol['children']).flatMap((child) => symbolNeeds(child, base)),
  ];
}

const linkNeeds = (answer: unknown): Need[] =>
  list(answer).flatMap((one) => needIf(has(one, 'targetUri'), 'textDocument.definition.linkSupport', 'links'));
const hierarchyNeeds = (item: Fields): Need[] =>
  needIf(has(item, 'kind'), 'textDocument.documentSymbol.symbolKind.valueSet', `kind ${String(item['kind'])}`, inSet(item['kind']));
const lensNeeds = (lens: Fields, { options }: Told): Need[] => {
  const { command } = fields(lens['command']);
  const isDeclared = [options['lensCommand'], options['previewCommand']].includes(command);
  return [
    ...needIf(command !== undefined && !isDeclared, '', `the command “${String(command)}”`, never),
    ...needIf(command === undefined, 'textDocument.codeLens.resolveSupport.properties', 'a command on demand', holds('command')),
  ];
};
const hintNeeds = (hint: Fields): Need[] => [
  ...needIf(has(hint, 'data'), 'textDocument.inlayHint.resolveSupport', 'data', given),
  ...markupNeeds(hint['tooltip'], 'textDocument.hover.contentFormat'),
];
const tokenNeeds = (what: string): Need[] => [
  need(`textDocument.semanticTokens.requests.${what}`, what, (said) => said === true || given(said)),
  need('textDocument.semanticTokens.formats', 'relative', holds('relative')),
];

function abilityNeeds({ capabilities }: Fields): Need[] {
  const able = fields(capabilities);
  const literal = 'textDocument.codeAction.codeActionLiteralSupport';
  const { codeActionKinds } = fields(able['codeActionProvider']);
  const { legend, full, range } = fields(able['semanticTokensProvider']);
  const workspace = fields(able['workspace']);
  const resolves = (name: string): boolean => fields(able[name])['resolveProvider'] === true;
  const encoding = able['positionEncoding'];
  return [
    ...needIf(typeof able['renameProvider'] === 'object', 'textDocument.rename.prepareSupport', 'options of renaming'),
    ...needIf(typeof able['codeActionProvider'] === 'object', literal, 'options of actions', given),
    ...(Array.isArray(codeActionKinds)
      ? codeActionKinds.map((kind) => need(`${literal}.codeActionKind.valueSet`, String(kind), ofKinds(kind)))
      : []),
    ...needIf(resolves('codeActionProvider'), 'textDocument.codeAction.resolveSupport', 'actions on demand', given),
    ...needIf(resolves('inlayHintProvider'), 'textDocument.inlayHint.resolveSupport', 'hints on demand', given),
    ...needIf(resolves('codeLensProvider'), 'textDocument.codeLens.resolveSupport', 'lenses on demand', given),
    ...needIf(resolves('workspaceSymbolProvider'), 'workspace.symbol.resolveSupport', 'symbols on demand', given),
    ...needIf(has(able, 'diagnosticProvider'), 'textDocument.diagnostic', 'diagnostics on demand', given),
    ...needIf(has(able, 'executeCommandProvider'), 'workspace.applyEdit', 'commands'),
    ...needIf(has(workspace, 'workspaceFolders'), 'workspace.workspaceFolders', 'folders'),
    ...Object.keys(fields(workspace['fileOperations'])).map((name) => need(`workspace.fileOperations.${name}`, name)),
    ...needIf(encoding !== 'utf-16', 'general.positionEncodings', String(encoding), holds(encoding)),
    ...['tokenTypes', 'tokenModifiers'].flatMap((name) => {
      const names = fields(legend)[name];
      return Array.isArray(names) ? names.map((one) => need(`textDocument.semanticTokens.${name}`, String(one), holds(one))) : [];
    }),
    ...(full === undefined || full === false ? [] : tokenNeeds('full')),
    ...(fields(full)['delta'] === true ? [need('textDocument.semanticTokens.requests.full.delta', 'changes of tokens')] : []),
    ...(range === undefined || range === false ? [] : tokenNeeds('range')),
  ];
}

const each =
  (of: (one: Fields, told: Told) => Need[]) =>
  (answer: unknown, told: Told): Need[] =>
    list(answer).flatMap((one) => of(one, told));
const one =
  (of: (one: Fields, told: Told) => Need[]) =>
  (answer: unknown, told: Told): Need[] =>
    of(fields(answer), told);

/** By the method of the request that is answered. */
const ofAnswers: Readonly<Record<string, (answer: unknown, told: Told) => Need[]>> = {
  initialize: one(abilityNeeds),
  'textDocument/hover': (answer) => {
    const { contents } = fields(answer);
    // Plain text is what every client has to show.
    return fields(contents)['kind'] === 'plaintext' ? [] : markupNeeds(contents, 'textDocument.hover.contentFormat');
  },
  'textDocument/completion': (answer, told) => [
    ...needIf(has(answer, 'itemDefaults'), 'textDocument.completion.completionList.itemDefaults', 'defaults', given),
    ...each(completionNeeds)(Array.isArray(answer) ? answer : fields(answer)['items'], told),
  ],
  'completionItem/resolve': one(completionNeeds),
  'textDocument/signatureHelp': (answer) => {
    const base = 'textDocument.signatureHelp.signatureInformation';
    return list(fields(answer)['signatures']).flatMap((signature) => [
      ...needIf(has(signature, 'activeParameter'), `${base}.activeParameterSupport`, 'activeParameter'),
      ...markupNeeds(signature['documentation'], `${base}.documentationFormat`),
      ...list(signature['parameters']).flatMap((parameter) => [
        ...needIf(Array.isArray(parameter['label']), `${base}.parameterInformation.labelOffsetSupport`, 'stretches of the label'),
        ...markupNeeds(parameter['documentation'], `${base}.documentationFormat`),
      ]),
    ]);
  },
  'textDocument/definition': linkNeeds,
  'textDocument/documentSymbol': each((symbol) => symbolNeeds(symbol, 'textDocument.documentSymbol')),
  'workspace/symbol': each((symbol) => symbolNeeds(symbol, 'workspace.symbol')),
  'textDocument/codeAction': each(actionNeeds),
  'codeAction/resolve': one(actionNeeds),
  'textDocument/codeLens': each(lensNeeds),
  'codeLens/resolve': one(lensNeeds),
  'textDocument/documentLink': each((link) => present(link, { tooltip: 'textDocument.documentLink.tooltipSupport' })),
  'documentLink/resolve': one((link) => present(link, { tooltip: 'textDocument.documentLink.tooltipSupport' })),
  'textDocument/foldingRange': (answer) => [
    need('textDocument.foldingRange.rangeLimit', 'many', (most) => typeof most !== 'number' || list(answer).length <= most),
    ...list(answer).flatMap((range) => [
      ...needIf(has(range, 'collapsedText'), 'textDocument.foldingRange.foldingRange.collapsedText', 'collapsedText'),
      ...needIf(
        has(range, 'startCharacter') || has(range, 'endCharacter'),
        'textDocument.foldingRange.lineFoldingOnly',
        'columns',
        (only) => only !== true,
      ),
      ...needIf(
        has(range, 'kind'),
        'textDocument.foldingRange.foldingRangeKind.valueSet',
        String(range['kind']),
        (known) => known === undefined || holds(range['kind'])(known),
      ),
    ]),
  ],
  'textDocument/inlayHint': each(hintNeeds),
  'inlayHint/resolve': one(hintNeeds),
  'textDocument/prepareCallHierarchy': each(hierarchyNeeds),
  'callHierarchy/incomingCalls': each((call) => hierarchyNeeds(fields(call['from']))),
  'callHierarchy/outgoingCalls': each((call) => hierarchyNeeds(fields(call['to']))),
  'textDocument/rename': (answer) => editNeeds(answer),
  'workspace/willRenameFiles': (answer) => editNeeds(answer),
  'textDocument/diagnostic': (answer, told) => [
    ...list(fields(answer)['items']).flatMap((item) => diagnosticNeeds(item, told)),
    ...needIf(has(answer, 'relatedDocuments'), 'textDocument.diagnostic.relatedDocumentSupport', 'relatedDocuments'),
  ],
  'workspace/diagnostic': (answer, told) =>
    list(fields(answer)['items']).flatMap((report) => list(report['items']).flatMap((item) => diagnosticNeeds(item, told))),
};

/** By the method of what the server sends of itself. */
const ofOthers: Readonly<Record<string, (params: Fields, told: Told) => Need[]>> = {
  'workspace/configuration': () => [need('workspace.configuration', 'settings')],
  'workspace/applyEdit': ({ edit }) => [need('workspace.applyEdit', 'an edit'), ...editNeeds(edit)],
  'workspace/diagnostic/refresh': () => [need('workspace.diagnostics.refreshSupport', 'refresh')],
  'workspace/inlayHint/refresh': () => [need('workspace.inlayHint.refreshSupport', 'refresh')],
  'workspace/codeLens/refresh': () => [need('workspace.codeLens.refreshSupport', 'refresh')],
  'workspace/semanticTokens/refresh': () => [need('workspace.semanticTokens.refreshSupport', 'refresh')],
  'client/registerCapability': ({ registrations }) =>
    list(registrations).map(({ method }) => {
      const [room, what] = String(method).split('/');
      return need(`${room}.${what}.dynamicRegistration`, `registering for ${String(method)}`);
    }),
  'window/logMessage': () => [],
  'window/showMessage': () => [],
  'window/showDocument': () => [need('window.showDocument.support', 'showing a document')],
  'window/workDoneProgress/create': () => [need('window.workDoneProgress', 'progress')],
  'textDocument/publishDiagnostics': ({ diagnostics, ...rest }, told) => [
    need('textDocument.diagnostic', 'pushed though it asks', (said) => said === undefined),
    ...present(rest, { version: 'textDocument.publishDiagnostics.versionSupport' }),
    ...list(diagnostics).flatMap((one) => diagnosticNeeds(one, told)),
  ],
  'pintle/read': (_, { options }) => needIf(options['readsFiles'] !== true, '', 'pintle/read', never),
};

export const needsOfAnswer = (method: string, answer: unknown, told: Told): Need[] => ofAnswers[method]?.(answer, told) ?? [];
export const needsOfMessage = (method: string, params: unknown, told: Told): Need[] =>
  ofOthers[method]?.(fields(params), told) ?? [need('', method, never)];
