// Every message that the server sends, to many kinds of client: it is what the protocol says it is, its places lie in the
// text, and nothing in it is anything that the client did not say it takes. The clients: one that takes everything, one that
// takes nothing, and for each thing that a client can say, one without it and one with nothing else.
import { afterAll, describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { shapes } from '../../server/lsp/shapes.ts';
import { library, site } from '../editor/bench.ts';
import { randomOf } from '../grammar/arbitrary.ts';
import { seed } from '../kit/chance.ts';
import { type Ask, askers, fileAskers, ownAskers, placeFaults, type Where, wholeOf } from './asking.ts';
import { connect } from './client.ts';
import { folder } from './folder.ts';
import { faults, isThere, least, notifications, requests, wholeClient } from './metamodel.ts';
import { type Need, needsOfAnswer, needsOfMessage, said, type Told } from './needs.ts';
import { raw } from './raw.ts';

const mustRun = process.env['PINTLE_REQUIRE_ALL'] === '1';
const place = folder();
afterAll(() => place.end());

type Fields = Readonly<Record<string, unknown>>;
const fields = (value: unknown): Fields => (typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {});

/** A site with something to say for everything: a unit forgotten, an unused library, a block twice, an open acceptance. */
const text = `# a remark
# of two lines
${site('leaf west {\n  width 1 m\n  mass 50 kg\n}\naccept seat-outside-practice because "worn" by "KL" until 2027-01-01\n')
  .replace('height', 'hieght')
  .replace('seat 1.5 s', 'seat 4')}\n# the end\n\n`;
const uri = place.uriOf('gates/north.gate');
const libraries = new Map([...library].map(([path, text]) => [place.uriOf(path.slice('/site/'.length)), text]));

/** An empty line, where a block can begin. */
const behind = '\n# the end\n';
/** Where something of each kind is to be had. */
const spots = ['leaf w', 'onto ea', ': birch-r', '"../libr', 'seat-outs', 'mass 1', 'wire ', '  opens ', '2.1', 'hieght ', behind];

interface Session {
  readonly faults: string[];
  readonly used: Need[];
}

interface Kind {
  readonly name: string;
  readonly capabilities: unknown;
  /** How many places are asked about, each after an edit. */
  readonly rounds: number;
  readonly options?: Fields;
}

async function talk({ name, capabilities, rounds, options: more = {} }: Kind, drawn: number): Promise<Session> {
  const found: string[] = [];
  const used: Need[] = [];
  const options = { lensCommand: '', previewCommand: 'show', suggestCommand: 'suggest', pages: 'https://example.test', ...more };
  const told: { capabilities: unknown; options: Fields; abilities: Fields } = { capabilities, options, abilities: {} };
  const asked = new Map<unknown, { readonly method: string; readonly params: Fields }>();
  const tokens = new Map<unknown, string>();
  const hold = (method: string, needs: readonly Need[]): void => {
    used.push(...needs);
    for (const { path, what, fits } of needs)
      if (!fits(said(capabilities, path)))
        found.push(`${method}: ${what}, though the client did not say so${path === '' ? '' : ` at ${path}`}`);
  };
  const isOwn = (method: string): boolean => method.startsWith('pintle/');

  const ofServer = (message: Fields): void => {
    const { id, method, params, result, error } = message;
    const own = typeof method === 'string' ? method : asked.get(id)?.method;
    for (const key of Object.keys(message))
      if (!['jsonrpc', 'id', 'method', 'params', 'result', 'error'].includes(key)) found.push(`${own}: “${key}” in a message`);
    if (own === undefined) found.push(`an answer to nothing: ${JSON.stringify(message).slice(0, 200)}`);
    else if (typeof method === 'string') {
      const type = (id === undefined ? notifications : requests).get(method);
      if (method === '$/progress') {
        const { token, value } = fields(params);
        const partial = requests.get(tokens.get(token) ?? '')?.partialResult;
        if (partial === undefined) found.push('progress that nobody asked for');
        else found.push(...faults(partial, value, 'progress'));
      } else {
        if (type === undefined && !isOwn(method)) found.push(`${method} is no message of the protocol`);
        else if (type?.messageDirection === 'clientToServer') found.push(`${method} goes the other way`);
        else if (type?.params !== undefined) found.push(...faults(type.params, params, method));
        else if (params !== undefined && params !== null && !isOwn(method)) found.push(`${method} with parameters`);
        hold(method, needsOfMessage(method, params, told as Told));
        if (method === 'window/logMessage' && fields(params)['type'] === 1) found.push(`logged: ${String(fields(params)['message'])}`);
      }
    } else if (error !== undefined) {
      const { code, message: why } = fields(error);
      if (result !== undefined || !Number.isInteger(code) || typeof why !== 'string') found.push(`${own}: an error without code or words`);
      asked.delete(id);
    } else {
      const type = requests.get(own)?.result;
      if (own === 'initialize') told.abilities = fields(fields(result)['capabilities']);
      if (result === undefined) found.push(`${own}: an answer without a result`);
      else if (type !== undefined) found.push(...faults(type, result, own));
      hold(own, needsOfAnswer(own, result, told as Told));
      asked.delete(id);
    }
  };
  const client = await connect({
    folders: [place.uri],
    exactly: capabilities,
    options: { ...options, ownTokenTypes: false },
    settings: () => null,
    tap: (from, message) => {
      if (from === 'server') ofServer(message);
      else if (typeof message['method'] === 'string' && message['id'] !== undefined) {
        asked.set(message['id'], { method: message['method'], params: fields(message['params']) });
        const token = fields(message['params'])['partialResultToken'];
        if (token !== undefined) tokens.set(token, message['method']);
      }
    },
  });
  for (const method of ['workspace/codeLens/refresh', 'workspace/semanticTokens/refresh']) client.connection.onRequest(method, () => null);
  client.connection.onRequest('workspace/applyEdit', () => ({ applied: true }));

  const random = randomOf(drawn);
  const textOf = (one: string): string | undefined => (one === uri ? client.text(uri) : libraries.get(one));
  const memory = new Map<string, unknown>();
  let diagnostics: readonly unknown[] = [];
  const ask = async ({ method, params, uri: about, check, then, mayRefuse }: Ask): Promise<void> => {
    let answer: unknown;
    try {
      answer = await client.request(method, params);
    } catch (error) {
      const { code, message } = error as { code: number; message: string };
      if (mayRefuse !== true || code !== -32803) found.push(`${method}: answered with ${code} ${message}`);
      return;
    }
    found.push(...placeFaults(answer, about, textOf, about).map((fault) => `${method}${fault}`));
    found.push(...(check?.(answer) ?? []).map((fault) => `${method}: ${fault}`));
    if (method === 'textDocument/diagnostic' && Array.isArray(fields(answer)['items'])) diagnostics = fields(answer)['items'] as unknown[];
    // An action that is a command is carried out, and the edit of one that has none asked for.
    if (method === 'textDocument/codeAction' && Array.isArray(answer))
      for (const action of answer.slice(0, rounds > 2 ? 99 : 1).map(fields)) {
        const { command, arguments: given, edit } = action;
        if (typeof command === 'string') await ask({ method: 'workspace/executeCommand', params: { command, arguments: given }, uri });
        else if (edit === undefined) await ask({ method: 'codeAction/resolve', params: action, uri });
      }
    for (const more of then?.(answer) ?? []) await ask(more);
  };
  await client.open(uri, text);
  for (let round = 0; round < rounds; round++) {
    const now = client.text(uri);
    if (round > 0) {
      const at = Math.floor(random() * now.length);
      const pieces = ['\n', '{', ' ', '  seat 4 s\n', '"', '5', '}'];
      await client.edit(uri, { start: at, end: at, text: pieces[Math.floor(random() * pieces.length)] as string });
    }
    const document = TextDocument.create(uri, '', 0, client.text(uri));
    const spot = spots[(round + (drawn % spots.length)) % spots.length] as string;
    const found = client.text(uri).indexOf(spot);
    const position = document.positionAt(found < 0 ? Math.floor(random() * now.length) : found + spot.length);
    const where: Where = {
      uri,
      text: client.text(uri),
      position,
      range: round === 0 ? wholeOf(client.text(uri)) : { start: position, end: position },
      random,
      textOf,
      diagnostics,
      memory,
    };
    for (const [ability, said] of Object.entries(told.abilities))
      if (said !== false) for (const one of askers[ability]?.(where, fields(said)) ?? []) await ask(one);
    for (const ability of Object.keys(fields(fields(told.abilities['workspace'])['fileOperations'])))
      for (const one of fileAskers[ability]?.(where, {}) ?? []) await ask(one);
    if (rounds > 2) for (const own of Object.values(ownAskers)) for (const one of own(where, {})) await ask(one);
  }
  if (rounds > 2 && told.abilities['diagnosticProvider'] !== undefined)
    await ask({ method: 'workspace/diagnostic', params: { previousResultIds: [], partialResultToken: 'some' }, uri });
  if (told.abilities['diagnosticProvider'] === undefined) await client.until(() => client.pushed.has(uri));
  await client.end();
  return { faults: [...new Set(found)].map((fault) => `${name}: ${fault}`), used };
}

/** Copies with something at a path, or without. */
function withAt(capabilities: Fields, path: string, value: unknown): Fields {
  const [name, ...rest] = path.split('.') as [string, ...string[]];
  if (rest.length > 0) return { ...capabilities, [name]: withAt(fields(capabilities[name]), rest.join('.'), value) };
  const { [name]: _, ...others } = capabilities;
  return value === undefined ? others : { ...others, [name]: value };
}

/** Shapes of real editors, from memory and shortened. */
const editors: Readonly<Record<string, Fields>> = {
  'an editor of 2017': {
    workspace: { applyEdit: true, didChangeConfiguration: { dynamicRegistration: false } },
    textDocument: { completion: { completionItem: { snippetSupport: false } }, synchronization: { didSave: true } },
  },
  'an editor in a terminal': {
    workspace: { workspaceEdit: { documentChanges: true }, symbol: { symbolKind: { valueSet: [1, 2, 5, 12] } }, configuration: true },
    textDocument: {
      hover: { contentFormat: ['plaintext', 'markdown'] },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true, symbolKind: { valueSet: [2, 3, 5] } },
      completion: { completionItem: { documentationFormat: ['plaintext'] }, completionItemKind: { valueSet: [1, 14] } },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['refactor'] } } },
      foldingRange: { lineFoldingOnly: true, rangeLimit: 3 },
      publishDiagnostics: { tagSupport: { valueSet: [2] } },
    },
    general: { positionEncodings: ['utf-8', 'utf-16'] },
  },
  'an editor with literals and nothing asked for later': {
    workspace: { applyEdit: true, inlayHint: {}, semanticTokens: { refreshSupport: false } },
    textDocument: {
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['', 'quickfix', 'source'] } }, dataSupport: true },
      inlayHint: {},
      codeLens: {},
      semanticTokens: { formats: ['relative'], requests: { full: true }, tokenTypes: ['keyword', 'number'], tokenModifiers: [] },
      rename: {},
      diagnostic: {},
    },
  },
};

describe.skipIf(!isThere && !mustRun)('what is sent (skipped where the metaModel of LSP 3.18 is not there)', () => {
  test('the metaModel is there', () => {
    expect(isThere, 'lsp-3.18.metaModel.json, beside the project or in the folder that PINTLE_SCHEMAS names').toBe(true);
  });

  test('what a client may send is let through, and every request that is answered has its shape', async () => {
    for (const [of, known] of [
      [shapes.requests, requests],
      [shapes.notifications, notifications],
    ] as const)
      for (const [method, shape] of Object.entries(of)) {
        const type = known.get(method)?.params;
        if (type === undefined) expect(method, 'neither of the protocol nor our own').toMatch(/^pintle\//);
        else
          for (const params of least(type).slice(0, 200))
            expect(shape(params, 'params'), `${method} ${JSON.stringify(params)}`).toBeUndefined();
      }
    const client = raw();
    await client.initialize();
    for (const { method, messageDirection, params } of requests.values()) {
      if (messageDirection === 'serverToClient' || method === 'initialize' || method === 'shutdown') continue;
      const { error } = await client.ask(method, params === undefined ? undefined : 'x');
      if (Object.hasOwn(shapes.requests, method)) expect(error?.code, method).toBe(-32602);
      else expect((await client.ask(method, {})).error?.code, method).toBe(-32601);
    }
  });

  const whole = wholeClient();
  test('a client that takes everything is sent everything', async () => {
    const drawn = seed();
    const { faults, used } = await talk({ name: 'everything', capabilities: whole.capabilities, rounds: 12 }, drawn);
    expect(faults).toEqual([]);
    // Each need that is looked for is one that is met: what is never sent, nobody can find to be wrong.
    const paths = new Set(used.map(({ path }) => path));
    for (const path of [
      'textDocument.diagnostic.relatedInformation',
      'textDocument.diagnostic.tagSupport.valueSet',
      'textDocument.diagnostic.codeDescriptionSupport',
      'textDocument.hover.contentFormat',
      'textDocument.completion.completionItem.snippetSupport',
      'textDocument.completion.completionItem.insertReplaceSupport',
      'textDocument.completion.completionItem.documentationFormat',
      'textDocument.completion.completionItemKind.valueSet',
      'textDocument.signatureHelp.signatureInformation.activeParameterSupport',
      'textDocument.signatureHelp.signatureInformation.parameterInformation.labelOffsetSupport',
      'textDocument.definition.linkSupport',
      'textDocument.documentSymbol.hierarchicalDocumentSymbolSupport',
      'textDocument.codeAction.codeActionLiteralSupport.codeActionKind.valueSet',
      'textDocument.codeAction.isPreferredSupport',
      'textDocument.codeAction.dataSupport',
      'textDocument.codeAction.resolveSupport.properties',
      'textDocument.codeLens.resolveSupport.properties',
      'textDocument.documentLink.tooltipSupport',
      'textDocument.foldingRange.foldingRangeKind.valueSet',
      'textDocument.inlayHint.resolveSupport',
      'textDocument.semanticTokens.tokenTypes',
      'textDocument.semanticTokens.requests.full.delta',
      'workspace.symbol.resolveSupport.properties',
      'workspace.workspaceEdit.documentChanges',
      'workspace.workspaceEdit.snippetEditSupport',
      'workspace.configuration',
      'workspace.didChangeConfiguration.dynamicRegistration',
      'workspace.didChangeWatchedFiles.dynamicRegistration',
      'workspace.fileOperations.willRename',
    ])
      expect([...paths], path).toContain(path);
  });

  test('a client that takes nothing is sent nothing that it would have to take', async () => {
    expect((await talk({ name: 'nothing', capabilities: {}, rounds: 8 }, seed())).faults).toEqual([]);
  });

  test.each(Object.entries(editors))('%s', async (name, capabilities) => {
    expect((await talk({ name, capabilities, rounds: 8, options: { readsFiles: false } }, seed())).faults).toEqual([]);
  });

  test('clients that take everything but one thing', async () => {
    const found: string[] = [];
    const drawn = seed();
    for (const [i, path] of whole.paths.entries())
      found.push(
        ...(await talk({ name: `without ${path}`, capabilities: withAt(whole.capabilities, path, undefined), rounds: 1 }, drawn + i))
          .faults,
      );
    expect(whole.paths.length).toBeGreaterThan(200);
    expect(found).toEqual([]);
  });

  test('clients that take one thing and nothing else', async () => {
    const found: string[] = [];
    const drawn = seed();
    for (const [i, path] of whole.paths.entries())
      found.push(
        ...(await talk({ name: `only ${path}`, capabilities: withAt({}, path, said(whole.capabilities, path)), rounds: 1 }, drawn + i))
          .faults,
      );
    expect(found).toEqual([]);
  });
});
