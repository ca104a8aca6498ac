// From a typed character to its diagnostics, through the protocol, on the real server in a process of its own.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Client, Document, places } from './client.mjs';
import { quantile } from './measure.mjs';
import { bigText } from './sites.mjs';

/** p50 and p95 of one keystroke, by the file's length in lines. */
export async function measureKeystrokes(folder, table, quick) {
  const client = await Client.start(folder);
  const results = [];
  try {
    for (const [lines, count] of quick
      ? [
          [200, 12],
          [2000, 8],
          [20000, 4],
        ]
      : [
          [200, 80],
          [2000, 40],
          [20000, 16],
        ]) {
      const text = bigText(lines, table);
      const path = join(folder, 'fleet', '000', `big-${lines}.gate`);
      writeFileSync(path, text);
      const document = new Document(client, pathToFileURL(path).href, text);
      const first = await document.open();
      // A wrong word must be told of at once, and be forgotten when it is gone: else nothing real was measured.
      const at = text.indexOf('  width') + 2;
      const wrong = await document.edit(at, at, 'q');
      if (JSON.stringify(wrong.found) === JSON.stringify(first)) throw new Error('a misspelt word changed nothing in the diagnostics');
      const mended = await document.edit(at, at + 1, '');
      if (mended.found.length !== first.length) throw new Error('a mended word left its diagnostics behind');
      const times = [];
      for (const place of places(text, count, lines)) {
        let offset = place.at;
        for (const letter of place.typed) {
          times.push((await document.edit(offset, offset, letter)).milliseconds);
          offset++;
        }
        for (; offset > place.at; offset--) times.push((await document.edit(offset - 1, offset, '')).milliseconds);
      }
      await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri: document.uri } });
      results.push({ lines: text.split('\n').length - 1, keystrokes: times.length, p50: quantile(times, 0.5), p95: quantile(times, 0.95) });
    }
  } finally {
    await client.stop();
  }
  return { way: client.pulls ? 'pulled by the client' : 'pushed by the server', incremental: client.incremental, results };
}
