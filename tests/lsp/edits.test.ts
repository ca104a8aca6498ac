// Whatever is typed, in whatever order, the server ends where a fresh start on the same text would.
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import type { DocumentSymbol } from 'vscode-languageserver/node';
import { site } from '../editor/bench.ts';
import { type Client, connect, itemsOf } from './client.ts';
import { folder } from './folder.ts';

const place = folder();
afterAll(() => place.end());

const pieces = [
  '\n',
  '\r\n',
  '\r',
  '{',
  '}',
  '"',
  '#',
  ' ',
  '𝄞',
  '\ud800',
  'width 2 m\n',
  '  seat 4 s\r\n',
  'leaf west {\n',
  '..',
  '±',
  ': birch-ram',
  'use "../library/none.gate"\n',
  '8.2 kohm',
  'accept seat-outside-practice because "x" by "K" until 2027-01-01\n',
  'closes onto west',
];

const edits = fc.array(
  fc.record({ at: fc.nat(5000), remove: fc.oneof(fc.nat(3), fc.nat(60)), put: fc.oneof(fc.constant(''), fc.constantFrom(...pieces)) }),
  { minLength: 1, maxLength: 12 },
);

async function seen(client: Client, uri: string): Promise<unknown> {
  const report = await client.pullOf(uri);
  const inlays = await client.inlays(uri);
  const symbols = await client.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri } });
  return { items: itemsOf(report), inlays, symbols };
}

test.each([{ pull: true }, { pull: false }])('edits one by one or in a burst end like a fresh open (pull: $pull)', async ({ pull }) => {
  const uri = place.uriOf('gates/north.gate');
  await fc.assert(
    fc.asyncProperty(edits, fc.boolean(), fc.constantFrom('\n', '\r\n'), async (given, oneByOne, lineEnd) => {
      const client = await connect({ pull, folders: [place.uri] });
      const fresh = await connect({ pull, folders: [place.uri] });
      try {
        await client.open(uri, site().replaceAll('\n', lineEnd));
        for (const { at, remove, put } of given) {
          const length = client.text(uri).length;
          const start = at % (length + 1);
          await client.edit(uri, { start, end: Math.min(length, start + remove), text: put });
          if (oneByOne) await client.inlays(uri);
        }
        const text = client.text(uri);
        await fresh.open(uri, text);
        if (pull) {
          expect(await seen(client, uri)).toEqual(await seen(fresh, uri));
          return;
        }
        const version = given.length + 1;
        await client.until(() => client.pushed.get(uri)?.version === version);
        await fresh.until(() => fresh.pushed.has(uri));
        expect(client.pushed.get(uri)?.diagnostics).toEqual(fresh.pushed.get(uri)?.diagnostics);
        expect(await client.inlays(uri)).toEqual(await fresh.inlays(uri));
      } finally {
        await client.end();
        await fresh.end();
      }
    }),
    { numRuns: pull ? 60 : 25 },
  );
});
