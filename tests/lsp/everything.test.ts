// Random edits in several texts at once, and after each of them questions at random places: all that the server says it can
// answer, and all of its own. No question may fail, nothing may be logged as an error, every place in an answer must lie in
// its text, edits must be such that they can be made; and in the end a fresh server must answer the same.
// PINTLE_EDITS says how many edits; without it a thousand are made.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { CancellationTokenSource, MessageType } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import * as requests from '../../server/lsp/requests.ts';
import { site } from '../editor/bench.ts';
import { randomOf } from '../grammar/arbitrary.ts';
import { seed, usualSeed } from '../kit/chance.ts';
import { type Ask, askers, fileAskers, notAsked, ownAskers, placeFaults, type Where, wholeOf } from './asking.ts';
import { type Client, connect } from './client.ts';
import { type Folder, folder } from './folder.ts';

const editCount = Number(process.env['PINTLE_EDITS'] ?? 1000);
const example = (name: string): string => readFileSync(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)), 'utf8');

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

/** All that a client of today says it can take. */
const takesAll = {
  textDocument: {
    diagnostic: { dynamicRegistration: true, relatedInformation: true, codeDescriptionSupport: true, tagSupport: { valueSet: [1, 2] } },
    publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true, tagSupport: { valueSet: [1, 2] }, versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: {
      completionItem: {
        snippetSupport: true,
        documentationFormat: ['markdown'],
        resolveSupport: { properties: ['documentation', 'detail'] },
      },
      contextSupport: true,
    },
    signatureHelp: {
      signatureInformation: {
        documentationFormat: ['markdown'],
        parameterInformation: { labelOffsetSupport: true },
        activeParameterSupport: true,
      },
      contextSupport: true,
    },
    definition: { linkSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: {
      codeActionLiteralSupport: {
        codeActionKind: { valueSet: ['quickfix', 'refactor', 'refactor.extract', 'refactor.rewrite', 'source', 'source.fixAll'] },
      },
      isPreferredSupport: true,
      disabledSupport: true,
      dataSupport: true,
      resolveSupport: { properties: ['edit'] },
    },
    rename: { prepareSupport: true, honorsChangeAnnotations: false },
    inlayHint: { resolveSupport: { properties: ['tooltip', 'label.location'] } },
    semanticTokens: {
      requests: { range: true, full: { delta: true } },
      tokenTypes: ['keyword', 'property', 'number', 'string', 'comment', 'type', 'variable', 'class', 'enumMember', 'operator'],
      tokenModifiers: ['declaration', 'definition', 'readonly', 'deprecated'],
      formats: ['relative'],
    },
    foldingRange: { lineFoldingOnly: true, rangeLimit: 5000 },
    selectionRange: {},
    callHierarchy: {},
    codeLens: { resolveSupport: { properties: ['command'] } },
    documentLink: { tooltipSupport: true },
    linkedEditingRange: {},
    onTypeFormatting: {},
    rangeFormatting: {},
  },
  workspace: {
    workspaceFolders: true,
    didChangeWatchedFiles: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
    semanticTokens: { refreshSupport: true },
    foldingRange: { refreshSupport: true },
    symbol: { resolveSupport: { properties: ['location.range'] } },
    workspaceEdit: { documentChanges: true, resourceOperations: ['create', 'rename', 'delete'] },
    fileOperations: { willRename: true, didRename: true, willDelete: true, didDelete: true },
  },
};

/** Answers that a client must expect when it cancels or goes on typing. */
const overtaken = [-32800, -32801, -32802];
const refused = -32803;
const notThere = -32601;

interface Server {
  readonly client: Client;
  readonly errors: string[];
  /** Names of questions, and how to ask them. */
  readonly asks: ReadonlyMap<string, (where: Where) => readonly Ask[]>;
  /** What the server says that it can do, and nobody knows how to ask for. */
  readonly unknown: readonly string[];
}

async function start(place: Folder): Promise<Server> {
  const client = await connect({ folders: [place.uri], capabilities: takesAll });
  ends.push(() => client.end());
  const errors: string[] = [];
  client.connection.onNotification(
    'window/logMessage',
    ({ type, message }: { type: number; message: string }) => void (type === MessageType.Error && errors.push(message)),
  );
  for (const what of ['codeLens', 'semanticTokens', 'foldingRange', 'inlineValue'])
    client.connection.onRequest(`workspace/${what}/refresh`, () => null);

  const asks = new Map<string, (where: Where) => readonly Ask[]>();
  const unknown: string[] = [];
  for (const [name, ability] of Object.entries(client.capabilities)) {
    if (notAsked.includes(name) || ability === false || ability === undefined || ability === null) continue;
    const asker = askers[name];
    if (asker === undefined) unknown.push(name);
    else asks.set(name, (where) => asker(where, (typeof ability === 'object' ? ability : {}) as Readonly<Record<string, unknown>>));
  }
  const { fileOperations = {} } = client.capabilities['workspace'] as { fileOperations?: Record<string, unknown> };
  for (const name of Object.keys(fileOperations)) {
    const asker = fileAskers[name];
    if (asker !== undefined) asks.set(name, (where) => asker(where, {}));
    else if (!name.startsWith('did')) unknown.push(name);
  }
  for (const [name, method] of Object.entries(requests)) {
    if (typeof method !== 'string' || !name.endsWith('Request') || method === requests.readRequest) continue;
    const served = await client.request(method, null).then(
      () => true,
      (error: { code: number }) => error.code !== notThere,
    );
    if (!served) continue;
    const asker = ownAskers[method];
    if (asker === undefined) unknown.push(method);
    else asks.set(method, (where) => asker(where, {}));
  }
  // Asking with nothing, to see whether there is an answer, was nonsense, and may be logged as such.
  errors.length = 0;
  return { client, errors, asks, unknown };
}

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

class Player {
  readonly server: Server;
  readonly place: Folder;
  readonly random: () => number;
  readonly originals: ReadonlyMap<string, string>;
  readonly closed: Map<string, string>;
  readonly faults: string[] = [];
  /** How often each method was asked, and how often there was something in the answer. */
  readonly asked = new Map<string, { times: number; answered: number }>();
  readonly #undo = new Map<string, Edit[]>();
  readonly #diagnostics = new Map<string, unknown[]>();
  readonly #memory = new Map<string, unknown>();

  constructor(server: Server, place: Folder, seed: number, originals: ReadonlyMap<string, string>, closed: Map<string, string>) {
    this.server = server;
    this.place = place;
    this.random = randomOf(seed);
    this.originals = originals;
    this.closed = closed;
  }

  get #client(): Client {
    return this.server.client;
  }
  below(limit: number): number {
    return Math.floor(this.random() * limit);
  }
  pick<T>(from: readonly T[]): T {
    return from[this.below(from.length)] as T;
  }
  readonly textOf = (uri: string): string | undefined => (this.originals.has(uri) ? this.#client.text(uri) : this.closed.get(uri));

  /** The edit that someone might make next. */
  next(uri: string): Edit[] {
    const text = this.#client.text(uri);
    const at = this.below(text.length + 1);
    const chance = this.random();
    const whole = (now: string): Edit[] => [{ start: 0, end: text.length, text: now }];
    const original = this.originals.get(uri) as string;
    if (text.length > 3 * original.length + 2000 || chance < 0.04) return whole(original);
    if (chance < 0.3) return [{ start: at, end: at, text: this.pick(pieces) }];
    if (chance < 0.42) return [{ start: at, end: Math.min(text.length, at + this.below(this.random() < 0.8 ? 5 : 120)), text: '' }];
    if (chance < 0.5) {
      const from = this.#client.text(this.pick([...this.originals.keys()]));
      const start = this.below(from.length + 1);
      return [{ start: at, end: Math.min(text.length, at + this.below(40)), text: from.slice(start, start + this.below(200)) }];
    }
    if (chance < 0.65) {
      // A word or a number in the place of another.
      const words = [...text.matchAll(/[^\s{}":,#]+/g)];
      const word = words[this.below(words.length)];
      if (word === undefined) return [];
      return [
        {
          start: word.index,
          end: word.index + word[0].length,
          text:
            this.random() < 0.6
              ? (words[this.below(words.length)]?.[0] ?? 'x')
              : this.pick(['west', 'x', '0', '-5', '1e9', '99999', 'leaf', 'closing', 'birch-ram', '2.10']),
        },
      ];
    }
    if (chance < 0.75)
      return [...this.pick(['  wire x to ', 'sensor s : ', '\n  seat 1', 'use "../lib', 'accept '])].map((key, i) => ({
        start: at + i,
        end: at + i,
        text: key,
      }));
    const back: Edit[] = [];
    for (let i = 0; i < 1 + this.below(4); i++) {
      const last = this.#undo.get(uri)?.pop();
      if (last !== undefined) back.push(last);
    }
    return back;
  }

  async edit(uri: string): Promise<void> {
    await this.make(uri, this.next(uri));
  }

  async make(uri: string, edits: readonly Edit[]): Promise<void> {
    const undo = this.#undo.get(uri) ?? [];
    this.#undo.set(uri, undo);
    for (const edit of edits) {
      const text = this.#client.text(uri);
      const [start, end] = [Math.min(edit.start, text.length), Math.min(edit.end, text.length)];
      // Positions behind a carriage return of a pair are no places of the protocol.
      const split = (offset: number): number =>
        text[offset - 1] === '\r' && text[offset] === '\n'
          ? offset - 1
          : /^[\ud800-\udbff][\udc00-\udfff]$/.test(text.slice(offset - 1, offset + 1))
            ? offset - 1
            : offset;
      const made = { start: split(start), end: split(end), text: edit.text };
      undo.push({ start: made.start, end: made.start + made.text.length, text: text.slice(made.start, made.end) });
      await this.#client.edit(uri, made);
    }
    if (undo.length > 200) undo.splice(0, 100);
  }

  where(uri: string, offset?: number): Where {
    const text = this.#client.text(uri);
    const document = TextDocument.create(uri, '', 0, text);
    const one = offset ?? this.below(text.length + 1);
    const other = this.below(text.length + 1);
    const wide = this.random();
    return {
      uri,
      text,
      position: document.positionAt(one),
      range:
        wide < 0.2
          ? wholeOf(text)
          : wide < 0.5
            ? { start: document.positionAt(one), end: document.positionAt(one) }
            : { start: document.positionAt(Math.min(one, other)), end: document.positionAt(Math.max(one, other)) },
      random: this.random,
      textOf: this.textOf,
      diagnostics: this.#diagnostics.get(uri) ?? [],
      memory: this.#memory,
    };
  }

  /** Asks, looks at the answer, and asks what comes out of it. */
  async ask(ask: Ask, tag: string): Promise<void> {
    const count = this.asked.get(ask.method) ?? { times: 0, answered: 0 };
    this.asked.set(ask.method, count);
    count.times++;
    let answer: unknown;
    const fault = (what: string): void =>
      void (this.faults.length < 20 && this.faults.push(`${ask.method} ${tag} ${JSON.stringify(ask.params).slice(0, 200)}: ${what}`));
    try {
      answer = await this.#client.request(ask.method, ask.params);
    } catch (error) {
      const { code, message } = error as { code: number; message: string };
      if (ask.mayRefuse === true && code === refused && message.length > 10) count.answered++;
      else fault(`answered with ${code} ${message}`);
      return;
    }
    if (isSomething(answer)) count.answered++;
    for (const what of placeFaults(answer, ask.uri, this.textOf, ask.uri)) fault(what);
    for (const what of ask.check?.(answer) ?? []) fault(what);
    if (ask.method === 'textDocument/diagnostic' && Array.isArray((answer as { items?: unknown }).items))
      this.#diagnostics.set(ask.uri, (answer as { items: unknown[] }).items);
    for (const more of ask.then?.(answer) ?? []) await this.ask(more, tag);
  }

  /** Asks and goes on at once: what is overtaken may be dropped, and nothing else. */
  async overtake(uri: string, tag: string): Promise<void> {
    const where = this.where(uri);
    const waiting: Promise<void>[] = [];
    for (let i = 0; i < 4; i++) {
      for (const ask of this.pick([...this.server.asks.values()])(where)) {
        const source = new CancellationTokenSource();
        waiting.push(
          this.#client.connection.sendRequest(ask.method, ask.params, source.token).then(
            () => undefined,
            ({ code, message }: { code: number; message: string }) => {
              if (!overtaken.includes(code) && !(ask.mayRefuse === true && code === refused))
                this.faults.push(`${ask.method} ${tag}, overtaken: answered with ${code} ${message}`);
            },
          ),
        );
        if (this.random() < 0.3) source.cancel();
      }
      if (this.random() < 0.5) await this.edit(this.random() < 0.7 ? uri : this.pick([...this.originals.keys()]));
    }
    await Promise.all(waiting);
  }

  /** Something else that happens to files. */
  async happen(uri: string): Promise<void> {
    const client = this.#client;
    const chance = this.random();
    if (chance < 0.3) {
      const text = client.text(uri);
      await client.close(uri);
      if (!uri.startsWith('untitled:')) await this.server.client.request('textDocument/diagnostic', { textDocument: { uri } });
      await client.open(uri, text);
      this.#undo.delete(uri);
      this.#memory.clear();
    } else if (chance < 0.5) await client.connection.sendNotification('textDocument/didSave', { textDocument: { uri } });
    else await this.rewrite(this.pick([site(), site().replace('2.10 m', '2.10'), site().replaceAll('west', 'left'), 'leaf {\n']));
  }

  /** The one file that nobody has opened is another, and the server is told. */
  async rewrite(text: string): Promise<void> {
    const uri = this.place.write('gates/south.gate', text);
    this.closed.set(uri, text);
    await this.#client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
  }
}

const isSomething = (answer: unknown): boolean => {
  if (answer === null || answer === undefined) return false;
  if (Array.isArray(answer)) return answer.length > 0;
  const { items, data, edits } = answer as { items?: unknown; data?: unknown; edits?: unknown };
  const list = [items, data, edits].find((one) => Array.isArray(one)) as unknown[] | undefined;
  return list === undefined || list.length > 0;
};

const pieces = [
  '\n',
  '\r\n',
  '\r',
  '{',
  '}',
  '"',
  '#',
  ' ',
  '  ',
  '\t',
  '𝄞',
  '\u200b',
  '\ud800',
  'width 2 m\n',
  '  seat 4 s\r\n',
  'leaf west {\n',
  '..',
  '±',
  ' ± 5 %',
  ': birch-ram',
  'use "../library/none.gate"\n',
  '8.2 kohm',
  'accept seat-outside-practice because "x" by "K" until 2027-01-01\n',
  'closes onto west',
  'drive west-ram : birch-ram {\n  moves west\n}\n',
  '5',
  '-',
  ',',
  'mm',
  '# remark\n',
  'e',
];

/** An answer without the names that a server gives to things of its own. */
function comparable(method: string, answer: unknown): unknown {
  const plain = JSON.parse(
    JSON.stringify(answer ?? null, (key, value: unknown) =>
      key === 'data' && method !== 'textDocument/semanticTokens/full' && method !== 'textDocument/semanticTokens/range'
        ? undefined
        : key === 'resultId'
          ? undefined
          : value,
    ),
  ) as unknown;
  const sorted = (list: unknown[]): unknown[] => [...list].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  // Answers about many files come in the order in which these were used.
  if (
    method.startsWith('workspace') ||
    method === 'textDocument/references' ||
    method === 'textDocument/rename' ||
    method.startsWith('callHierarchy')
  )
    return JSON.parse(JSON.stringify(plain), (key, value: unknown) =>
      key === 'version' ? undefined : Array.isArray(value) ? sorted(value) : value,
    ) as unknown;
  return JSON.parse(JSON.stringify(plain), (key, value: unknown) => (key === 'version' ? undefined : value)) as unknown;
}

async function answersOf(server: Server, ask: Ask): Promise<unknown> {
  try {
    return comparable(ask.method, await server.client.request(ask.method, ask.params));
  } catch (error) {
    const { code, message } = error as { code: number; message: string };
    return { code, message };
  }
}

test(
  `${editCount} random edits, everything asked at random places`,
  async () => {
    const south = site();
    const place = folder({ 'gates/south.gate': south });
    ends.push(() => place.end());
    // One with line ends of two characters, and not as the formatter has it.
    const originals = new Map([
      [place.uriOf('gates/north.gate'), site()],
      [place.uriOf('gates/mill-race.gate'), example('sound/mill-race.gate')],
      [
        place.uriOf('gates/leaves-collide.gate'),
        example('unsafe/leaves-collide.gate').replaceAll('\n  ', '\n     ').replaceAll('\n', '\r\n'),
      ],
      [place.uriOf('library/drives.gate'), example('library/drives.gate')],
      ['untitled:Untitled-1', site()],
    ]);
    const closed = new Map(
      ['panels', 'sensors', 'cables'].map((name) => [place.uriOf(`library/${name}.gate`), example(`library/${name}.gate`)]),
    );
    closed.set(place.uriOf('gates/south.gate'), south);

    const server = await start(place);
    expect(server.unknown, 'the server says that it can do this, and nothing here asks for it: add it to asking.ts').toEqual([]);
    const drawn = seed();
    const player = new Player(server, place, drawn, originals, closed);
    const uris = [...originals.keys()];
    for (const [uri, text] of originals) await server.client.open(uri, text);
    const asks = [...server.asks];
    // At first, as it is: everything about every text, so that each has something to say.
    for (const uri of uris)
      for (const [name, make] of asks)
        for (let i = 0; i < 6; i++) for (const ask of make(player.where(uri))) await player.ask(ask, `(${name}, at the start)`);

    for (let step = 0; step < editCount && player.faults.length === 0; step++) {
      const uri = player.random() < 0.5 ? (uris[Math.floor(step / 40) % uris.length] as string) : player.pick(uris);
      const tag = `after edit ${step}`;
      await player.edit(uri);
      const chance = player.random();
      if (chance < 0.08) await player.overtake(uri, tag);
      else if (chance < 0.1) await player.happen(uri);
      const questions = 1 + player.below(3);
      for (let i = 0; i < questions; i++) {
        const about = player.random() < 0.8 ? uri : player.pick(uris);
        const [, make] = asks[(step * 3 + i) % asks.length] as (typeof asks)[number];
        for (const ask of make(player.where(about))) await player.ask(ask, tag);
      }
    }
    expect(player.faults).toEqual([]);
    expect(server.errors).toEqual([]);
    // Nothing was asked in vain: each question has had an answer with something in it. With another seed a rare one can miss.
    if (drawn === usualSeed) expect([...player.asked].filter(([, { answered }]) => answered === 0)).toEqual([]);

    // With the texts as the edits have left them, with nothing in them, and with what they began with; each time beside a
    // server that has seen none of it. What is kept of files that are not open must not outlive the texts that it was of.
    await player.rewrite(south);
    for (const round of ['left', 'empty', 'begun']) {
      if (round !== 'left')
        for (const uri of uris)
          await player.make(uri, [
            { start: 0, end: server.client.text(uri).length, text: round === 'empty' ? '' : (originals.get(uri) as string) },
          ]);
      const fresh = await start(place);
      for (const uri of uris) await fresh.client.open(uri, server.client.text(uri));
      const settled = async (ask: Ask): Promise<void> => {
        let [one, other]: unknown[] = [];
        for (let again = 0; again < 6000; again++) {
          [one, other] = [await answersOf(server, ask), await answersOf(fresh, ask)];
          if (JSON.stringify(one) === JSON.stringify(other)) return;
          await new Promise((resolve) => setTimeout(resolve, 10));
        }
        expect(one, `${ask.method} ${JSON.stringify(ask.params)}`).toEqual(other);
      };
      for (const uri of uris)
        for (let i = 0; i < 4; i++) {
          const where = { ...player.where(uri), memory: new Map<string, unknown>() };
          for (const [, make] of asks) for (const ask of make(where)) await settled(ask);
        }
      expect(fresh.errors).toEqual([]);
    }
    expect(player.faults).toEqual([]);
    expect(server.errors).toEqual([]);
    console.log([...player.asked].map(([method, { times, answered }]) => `${method} ${answered}/${times}`).join('\n'));
  },
  600_000 + editCount * 600,
);
