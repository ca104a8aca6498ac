// Work in a large file of a folder of some hundred: how long each answer takes, through the protocol, on the real server.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Client, Document, places, within } from './client.mjs';
import { quantile } from './measure.mjs';
import { bigText } from './sites.mjs';

const probe = new URL('probe.cjs', import.meta.url).pathname;

/** What the server tells of itself; undefined where signals are not to be had. */
async function probed(client) {
  if (process.platform === 'win32') return undefined;
  const told = new Promise((done) => {
    let text = '';
    const hear = (part) => {
      text += part;
      const found = /probe (\{.*\})\n/.exec(text);
      if (found === null) return;
      client.process.stderr.off('data', hear);
      done(JSON.parse(found[1]));
    };
    client.process.stderr.on('data', hear);
  });
  client.process.kill('SIGUSR2');
  return await within(told, 'word from the probe');
}

/** `fleet` is a folder of files as writeFleet gives it. Milliseconds; bytes. */
export async function measureFolder(fleet, table, quick, lines = 2000) {
  const text = bigText(lines, table);
  const path = join(fleet.folder, 'fleet', '000', 'large.gate');
  writeFileSync(path, text);
  const uri = pathToFileURL(path).href;
  const results = [];
  const add = (title, times, aim) =>
    results.push({ title, count: times.length, p50: quantile(times, 0.5), p95: quantile(times, 0.95), aim });

  // From nothing: the program starts, is told of the folder and of the file, and answers.
  const first = [];
  for (let round = 0; round < (quick ? 3 : 7); round++) {
    const began = performance.now();
    const client = await Client.start(fleet.folder, [], 'pipe');
    await new Document(client, uri, text).open();
    first.push(performance.now() - began);
    await client.stop();
  }
  add('first diagnostics after the folder is opened', first, 500);

  const client = await Client.start(fleet.folder, ['--expose-gc', '--require', probe], 'pipe');
  try {
    const { connection } = client;
    const ask = async (method, params) => {
      const began = performance.now();
      const answer = await within(connection.sendRequest(method, params), `answer to ${method}`);
      return { took: performance.now() - began, answer };
    };
    const document = new Document(client, uri, text);
    await document.open();
    const all = await ask('workspace/diagnostic', { previousResultIds: [] });
    add('diagnostics of the whole folder', [all.took], undefined);
    const textDocument = { uri };
    const times = new Map();
    const time = async (title, method, params, aim, empty) => {
      const { took, answer } = await ask(method, params);
      if (!times.has(title)) times.set(title, { list: [], aim, full: 0 });
      const kept = times.get(title);
      kept.list.push(took);
      if (!empty(answer)) kept.full++;
    };
    const none = (answer) =>
      answer === null || answer === undefined || (Array.isArray(answer) ? answer : (answer.items ?? answer.data ?? [1])).length === 0;
    const { capabilities } = client;
    const keys = [];
    const warm = 12;
    for (const [index, place] of places(text, quick ? 24 : 80, 11).entries()) {
      if (index === warm) {
        keys.length = 0;
        times.clear();
        await probed(client);
        client.logged.length = 0;
      }
      keys.push((await document.edit(place.at, place.at, place.typed[0])).milliseconds);
      const position = document.position(place.at + 1);
      await time('completion', 'textDocument/completion', { textDocument, position }, 10, () => false);
      keys.push((await document.edit(place.at, place.at + 1, '')).milliseconds);
      const line = document.position(place.at).line;
      const shown = { start: { line: Math.max(0, line - 30), character: 0 }, end: { line: line + 30, character: 0 } };
      const whole = { start: { line: 0, character: 0 }, end: document.position(document.text.length) };
      await time('hover', 'textDocument/hover', { textDocument, position: document.position(place.at - 1) }, 10, none);
      await time('inlay values of a screen', 'textDocument/inlayHint', { textDocument, range: shown }, 10, none);
      await time('inlay values of the file', 'textDocument/inlayHint', { textDocument, range: whole }, 10, none);
      if (capabilities.semanticTokensProvider)
        await time('semantic tokens of the file', 'textDocument/semanticTokens/full', { textDocument }, 10, none);
      if (capabilities.codeLensProvider) await time('code lenses', 'textDocument/codeLens', { textDocument }, 10, none);
      if (capabilities.foldingRangeProvider) await time('folding', 'textDocument/foldingRange', { textDocument }, 10, none);
      if (capabilities.signatureHelpProvider)
        await time('signature help', 'textDocument/signatureHelp', { textDocument, position }, 10, () => false);
      await time('symbols of the file', 'textDocument/documentSymbol', { textDocument }, 10, none);
      await time('code actions', 'textDocument/codeAction', { textDocument, range: shown, context: { diagnostics: [] } }, 10, () => false);
    }
    add('a key to its diagnostics', keys, 16);
    for (const [title, { list, aim, full }] of times) {
      if (full === 0) throw new Error(`${title}: every answer was empty, so nothing was measured`);
      add(title, list, aim);
    }
    const told = await probed(client);
    const stretches = client.logged.filter((line) => line.includes('without a rest')).length;
    if (capabilities.workspaceSymbolProvider)
      add('symbols of the folder', [(await ask('workspace/symbol', { query: 'west' })).took], undefined);
    if (capabilities.renameProvider) {
      // The model that most files speak of, renamed where its library declares it.
      const library = join(fleet.folder, 'library', 'drives.gate');
      const source = readFileSync(library, 'utf8');
      const declares = new Document(client, pathToFileURL(library).href, source);
      await declares.open();
      const names = [...source.matchAll(/^drive-model (\S+)/gm)].map((match) => ({
        name: match[1],
        at: match.index + 'drive-model '.length,
      }));
      const renames = [];
      let most = 0;
      for (let round = 0; round < (quick ? 2 : 5); round++)
        for (const { name, at } of names) {
          const { took, answer } = await ask('textDocument/rename', {
            textDocument: { uri: declares.uri },
            position: declares.position(at),
            newName: `${name}-new`,
          });
          renames.push(took);
          most = Math.max(most, (answer.documentChanges ?? []).length);
        }
      add(`rename of a model in up to ${most} files`, renames, 300);
    }
    return { files: fleet.gate.length, lines: text.split('\n').length - 1, results, memory: await probed(client), delay: told, stretches };
  } finally {
    await client.stop();
  }
}
