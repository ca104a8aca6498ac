// A large file: what is quick comes at once, what takes long when the keys rest, and nothing stays that is no longer so.
import { afterAll, describe, expect, test } from 'vitest';
import { allRules } from '../../server/rules/index.ts';
import { within } from '../kit/marker.ts';
import { connect, itemsOf } from './client.ts';
import { folder } from './folder.ts';
import { long } from './long.ts';

const place = folder();
afterAll(() => place.end());
const slow = new Set(allRules.flatMap((rule) => (rule.kind === 'installation' && rule.cost === 'idle' ? [rule.name] : [])));
const text = long(12_000);
const codes = (items: readonly { readonly code?: unknown }[]): string[] => items.map(({ code }) => String(code));

describe.each([{ pull: true }, { pull: false }])('pull: $pull', ({ pull }) => {
  test('the slow rules speak when the keys rest, and only of the text as it is', async () => {
    const client = await connect({ pull, folders: [place.uri] });
    const uri = place.uriOf(`gates/large-${pull}.gate`);
    await client.open(uri, text);
    const now = async (): Promise<string[]> =>
      codes(pull ? itemsOf(await client.pullOf(uri)) : (client.pushed.get(uri)?.diagnostics ?? []));
    const first = pull ? await now() : (await client.until(() => client.pushed.has(uri)), await now());
    expect(first.filter((code) => slow.has(code))).toEqual([]);
    expect(first.length).toBeGreaterThan(0);
    if (pull) await client.until(() => client.refreshes.diagnostics > 0);
    else await client.until(() => codes(client.pushed.get(uri)?.diagnostics ?? []).some((code) => slow.has(code)));
    const whole = await now();
    expect(whole.filter((code) => slow.has(code)).length).toBeGreaterThan(0);
    // What was there at once is still there.
    for (const code of new Set(first)) expect(whole).toContain(code);
    // An edit: what the slow rules said is of a text that is gone.
    await client.edit(uri, { ...within(text, '2.10| m'), text: '5' });
    const version = 2;
    const after = pull ? await now() : (await client.until(() => client.pushed.get(uri)?.version === version), await now());
    expect(after.filter((code) => slow.has(code))).toEqual([]);
    await client.end();
  });
});

test('a client that cannot be told to ask again gets everything at once', async () => {
  const client = await connect({ pull: true, refresh: false, folders: [place.uri] });
  const uri = place.uriOf('gates/large.gate');
  await client.open(uri, text);
  expect(codes(itemsOf(await client.pullOf(uri))).some((code) => slow.has(code))).toBe(true);
  await client.end();
});
