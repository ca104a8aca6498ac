// How the work grows with a file: texts that grow in one respect each, every request of the protocol, the real server. What is told
// is the exponent, that of n in the time: 1 is in step with the file, 2 is four times the work for twice the file.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Client, Document, within } from './client.mjs';
import { kinds } from './growing.mjs';
import { bigText } from './sites.mjs';

/** Below this many milliseconds a time at the largest size is taken for nothing: an exponent of it says nothing. */
const least = 100;

/** Asked of every text: of the whole of it, and of a place in its middle. `at` gives the parameters of the place. */
function asked(document, place) {
  const textDocument = { uri: document.uri };
  const position = document.position(place.start + 1);
  const range = { start: { line: 0, character: 0 }, end: document.position(document.text.length) };
  const options = { tabSize: 2, insertSpaces: true };
  const at = { textDocument, position };
  return [
    ['semantic tokens', 'textDocument/semanticTokens/full', { textDocument }],
    ['inlay values', 'textDocument/inlayHint', { textDocument, range }],
    ['code lenses', 'textDocument/codeLens', { textDocument }],
    ['folding', 'textDocument/foldingRange', { textDocument }],
    ['symbols', 'textDocument/documentSymbol', { textDocument }],
    ['links', 'textDocument/documentLink', { textDocument }],
    ['formatting', 'textDocument/formatting', { textDocument, options }],
    ['quick fixes', 'textDocument/codeAction', { textDocument, range, context: { diagnostics: [] } }],
    ['fix all', 'textDocument/codeAction', { textDocument, range, context: { diagnostics: [], only: ['source.fixAll.pintle'] } }],
    ['hover', 'textDocument/hover', at],
    ['definition', 'textDocument/definition', at],
    ['references', 'textDocument/references', { ...at, context: { includeDeclaration: true } }],
    ['highlights', 'textDocument/documentHighlight', at],
    ['signature', 'textDocument/signatureHelp', at],
    ['selection', 'textDocument/selectionRange', { textDocument, positions: [position] }],
    ['rename', 'textDocument/rename', { ...at, newName: 'another-name' }],
    ['completion', 'textDocument/completion', at],
    ['completion of a value', 'textDocument/completion', { textDocument, position: document.position(place.end) }],
    ['workspace symbols', 'workspace/symbol', { query: 'east' }],
    ['figures', 'pintle/figures', { uri: document.uri }],
    ['overview', 'pintle/overview', { uri: document.uri }],
    ['promises', 'pintle/promises', { uris: [document.uri] }],
    ['preview', 'pintle/preview', { uri: document.uri }],
    ['drawing', 'pintle/drawing', { uri: document.uri, id: 'plan', theme: 'print' }],
    ['call hierarchy', 'textDocument/prepareCallHierarchy', at],
  ];
}

/** The last word of a line in the middle of the text: a name, where the line has one. */
function middle(text) {
  const from = Math.floor(text.length * 0.6);
  const lineStart = text.lastIndexOf('\n', from) + 1;
  const long = from - lineStart > 200;
  const pattern = long ? /[a-z][\w-]*/gi : /[a-z][\w-]*(?=[^\w\n]*(?: \{)?\n)/gi;
  pattern.lastIndex = long ? from : lineStart;
  const found = pattern.exec(text) ?? /language/.exec(text);
  return { start: found.index, end: found.index + found[0].length };
}

/** Milliseconds of each request of one text, opened anew in a server that has just been started or has closed the last one. */
async function timesOf(client, path, text, patience, skip) {
  const document = new Document(client, pathToFileURL(path).href, text);
  const times = new Map();
  const { connection } = client;
  const time = async (title, work) => {
    const began = performance.now();
    client.longest = 0;
    const answer = await within(work(), title, patience);
    times.set(title, { took: performance.now() - began, stretch: client.longest });
    return answer;
  };
  await time('check', () => document.open());
  for (const [title, method, params] of asked(document, middle(text))) {
    if (skip.has(title)) continue;
    let answer;
    try {
      answer = await time(title, () => connection.sendRequest(method, params));
    } catch (error) {
      // A refusal is an answer: nothing can be renamed there.
      if (typeof error?.code !== 'number') return { times, late: title };
      times.set(title, { took: 0, stretch: 0 });
    }
    if (title === 'call hierarchy' && Array.isArray(answer) && answer.length > 0)
      for (const [way, method] of [
        ['callers', 'callHierarchy/incomingCalls'],
        ['callees', 'callHierarchy/outgoingCalls'],
      ]) {
        if (skip.has(way)) continue;
        try {
          await time(way, () => connection.sendRequest(method, { item: answer[0] }));
        } catch (error) {
          if (typeof error?.code !== 'number') return { times, late: way };
        }
      }
  }
  await connection.sendNotification('textDocument/didClose', { textDocument: { uri: document.uri } });
  return { times };
}

const exponent = (small, large, ratio) => Math.log(Math.max(large, 1) / Math.max(small, 1)) / Math.log(ratio);

/**
 * `folder` holds the library; `only` are words of the kinds that are wanted, `without` requests that are not made. `patience` is in seconds.
 * Rows of kind and request: milliseconds at each size (the least of the rounds), the longest stretch that the server told of itself, and
 * the exponent: the greater of that over all sizes and of that over the last two doublings, as what is small hides behind what is fixed.
 */
export async function measureGrowth(
  folder,
  table,
  { largest = 20_000, rounds = 2, patience = 20, only, without = [], say = () => {} } = {},
) {
  const sizes = [8, 4, 2, 1].map((part) => Math.round(largest / part));
  const place = join(folder, 'growth');
  mkdirSync(place, { recursive: true });
  const rows = [];
  const sites = (lines) => bigText(lines, table).replaceAll('../../library/', '../library/');
  const chosen = Object.entries({ 'whole sites': sites, ...kinds }).filter(([kind]) => only?.some((word) => kind.includes(word)) ?? true);
  for (const [kind, textOf] of chosen) {
    const found = new Map();
    let client = await start(folder);
    const late = new Set(without);
    try {
      for (const [index, size] of [sizes[0], ...sizes].entries()) {
        const text = textOf(size);
        const path = join(place, `growing-${index}.gate`);
        writeFileSync(path, text);
        for (let round = 0; round < (size === largest ? Math.min(rounds, 2) : rounds); round++) {
          const given = await timesOf(client, path, text, patience, late);
          // The first is for the compiler of the machine to warm up.
          if (index > 0)
            for (const [title, { took, stretch }] of given.times) {
              if (!found.has(title)) found.set(title, { times: [], stretch: 0 });
              const row = found.get(title);
              row.times[index - 1] = Math.min(row.times[index - 1] ?? Infinity, took);
              row.stretch = Math.max(row.stretch, stretch);
            }
          if (given.late === undefined) continue;
          if (!found.has(given.late)) found.set(given.late, { times: [], stretch: 0 });
          found.get(given.late).late = size;
          late.add(given.late);
          client.process.kill('SIGKILL');
          client = await start(folder);
          round--;
        }
        if (late.has('check')) break;
      }
    } catch (error) {
      const row = found.get('check') ?? { times: [], stretch: 0 };
      found.set('check', { ...row, late: row.late ?? `${error.message}` });
    } finally {
      client.process.kill('SIGKILL');
    }
    for (const [title, { times, stretch, late: tooLate }] of found) {
      const [first = 0, second = 0, , last = 0] = times;
      const steep = times.length === 4 && last >= least ? Math.max(exponent(first, last, 8), exponent(second, last, 4)) : undefined;
      rows.push({ kind, request: title, times, stretch, exponent: steep, late: tooLate });
    }
    say(kind, { rows: rows.filter((row) => row.kind === kind) });
  }
  return { kinds: chosen.length, sizes, rows, least };
}

async function start(folder) {
  const client = await Client.start(folder);
  client.longest = 0;
  client.connection.onNotification('window/logMessage', ({ message }) => {
    const took = /took (\d+) ms without a rest/.exec(message);
    if (took !== null) client.longest = Math.max(client.longest, Number(took[1]));
  });
  return client;
}

/** Those that grow faster than that, the steepest first; what did not come to an end before all. */
export function steep({ rows }, limit = 1.25) {
  return rows
    .filter((row) => row.late !== undefined || (row.exponent ?? 0) > limit)
    .sort((a, b) => Number(b.late !== undefined) - Number(a.late !== undefined) || (b.times[3] ?? 0) - (a.times[3] ?? 0));
}
