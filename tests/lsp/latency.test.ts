// How long a key takes to its diagnostics in a file of two thousand lines. Told, not judged: a machine may be slow.
import { afterAll, expect, test } from 'vitest';
import { connect, itemsOf } from './client.ts';
import { folder } from './folder.ts';
import { long } from './long.ts';

const place = folder();
afterAll(() => place.end());

test.each([{ pull: true }, { pull: false }])('a key to its diagnostics, 2000 lines (pull: $pull)', async ({ pull }) => {
  const client = await connect({ pull, folders: [place.uri] });
  const uri = place.uriOf('gates/long.gate');
  const text = long(2000);
  await client.open(uri, text);
  if (pull) await client.pullOf(uri);
  else await client.until(() => client.pushed.has(uri));
  const times: number[] = [];
  const inlays: number[] = [];
  const at = text.indexOf('2.10 m', text.length / 2) + 4;
  for (let key = 0; key < 60; key++) {
    const start = performance.now();
    const isEven = key % 2 === 0;
    await client.edit(uri, { start: at, end: at + (isEven ? 0 : 1), text: isEven ? '5' : '' });
    if (pull) expect(itemsOf(await client.pullOf(uri)).length).toBeGreaterThan(0);
    else
      await new Promise<void>((resolve) => {
        const look = (): void => (client.pushed.get(uri)?.version === key + 2 ? resolve() : void setImmediate(look));
        look();
      });
    times.push(performance.now() - start);
    const again = performance.now();
    expect((await client.inlays(uri)).length).toBeGreaterThan(0);
    inlays.push(performance.now() - again);
  }
  const of = (list: number[], share: number): string => (list.sort((a, b) => a - b)[Math.floor(list.length * share)] as number).toFixed(1);
  console.log(
    `${text.split('\n').length} lines, ${pull ? 'pull' : 'push'}: key to diagnostics p50 ${of(times, 0.5)} ms, p95 ${of(times, 0.95)} ms; then inlay values p50 ${of(inlays, 0.5)} ms, p95 ${of(inlays, 0.95)} ms; stretches over 10 ms told: ${client.logged.filter((line) => line.includes('without a rest')).length}`,
  );
  await client.end();
});
