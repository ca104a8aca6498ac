// Requests of our own for the views around the text: the tree of the installation, and what files promise.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { type OverviewNode, overview, promises } from '../../server/editor/index.ts';
import type { OverviewAnswer, PromisesAnswer } from '../../server/lsp/requests.ts';
import { judge } from '../kit/pages.ts';
import { connect } from './client.ts';
import { folder } from './folder.ts';

const place = folder();
afterAll(() => place.end());
const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const flat = (nodes: readonly OverviewNode[]): OverviewNode[] => nodes.flatMap((node) => [node, ...flat(node.children)]);

describe('the tree of an installation', () => {
  test('each thing of a site is in it once, where it belongs', () => {
    const analysis = judge(readFileSync(join(examples, 'sound/mill-race.gate'), 'utf8'));
    const nodes = flat(overview(analysis));
    const { installation } = analysis;
    for (const [kind, list] of [
      ['leaf', installation.leaves],
      ['drive', installation.drives],
      ['sensor', installation.sensors],
      ['control', installation.controls],
      ['panel', installation.panels],
      ['cable', installation.cables],
    ] as const)
      expect(
        nodes
          .filter((node) => node.kind === kind)
          .map(({ label }) => label)
          .sort(),
        kind,
      ).toEqual(list.map(({ name }) => name).sort());
    expect(new Set(nodes.map(({ id }) => id)).size).toBe(nodes.length);
    for (const leaf of overview(analysis).filter(({ kind }) => kind === 'leaf'))
      expect(leaf.children.some(({ kind }) => kind === 'drive')).toBe(true);
    for (const { start, end, label, kind } of nodes)
      if (['leaf', 'drive', 'sensor', 'panel'].includes(kind)) expect(analysis.text.slice(start, end)).toContain(label);
  });
  test('the gravest finding of a block is shown at it, and a hazard that nothing covers is an error', () => {
    const nodes = flat(overview(judge(readFileSync(join(examples, 'unsafe/pillar-trap.gate'), 'utf8'))));
    expect(nodes.find(({ id }) => id === 'leaf.front')?.severity).toBe('error');
    expect(nodes.filter(({ kind, severity }) => kind === 'hazard' && severity === 'error').map(({ detail }) => detail)).toContain(
      'not covered',
    );
    expect(
      flat(overview(judge(readFileSync(join(examples, 'sound/mill-race.gate'), 'utf8')))).filter(({ severity }) => severity !== undefined),
    ).toEqual([]);
  });
  test('a library shows its models, an empty text nothing', () => {
    expect(overview(judge('language 1\ndrive-model a "A" {\n}\n')).map(({ kind, label }) => [kind, label])).toEqual([['model', 'a']]);
    expect(overview(judge(''))).toEqual([]);
  });
  test('over the protocol, of an open text and of a file', async () => {
    const client = await connect({ pull: true, folders: [place.uri] });
    const uri = place.uriOf('gates/tree.gate');
    await client.open(uri, 'language 1\nleaf west {\n}\nleaf east {\n}\n');
    const nodes = await client.request<OverviewAnswer[]>('pintle/overview', { uri });
    expect(nodes.map(({ id, range }) => [id, range.start.line])).toEqual([
      ['leaf.west', 1],
      ['leaf.east', 3],
    ]);
    expect(await client.request('pintle/overview', { uri: place.uriOf('gates/none.gate') })).toEqual([]);
    await client.end();
  });
});

describe('what files promise', () => {
  test('kept and broken, in the order of the text', () => {
    const found = promises(
      judge(
        'language 1\nexpects-no error\nmotion {\n  seat 4 s\n  expects seat-outside-practice\n}\nexpects seat-outside-practice\nexpects lag-too-small\n',
      ),
    );
    expect(found.map(({ label, kept }) => [label, kept])).toEqual([
      ['no other error', false],
      ['seat-outside-practice in motion', true],
      ['seat-outside-practice', true],
      ['lag-too-small', false],
    ]);
    expect(found[3]?.message).toContain('finds nothing');
    expect(new Set(found.map(({ id }) => id)).size).toBe(4);
  });
  test('the unsafe examples keep what they promise, and promise every error they have', () => {
    for (const name of ['relay-beam', 'leaves-collide', 'open-loops', 'storm-boards']) {
      const analysis = judge(readFileSync(join(examples, 'unsafe', `${name}.gate`), 'utf8'));
      const list = promises(analysis);
      expect(
        list.every(({ kept }) => kept),
        name,
      ).toBe(true);
      expect(list.length - 1, name).toBe(
        new Set(analysis.findings.filter(({ severity }) => severity === 'error').map(({ rule }) => rule)).size,
      );
    }
  });
  test('over the protocol: all files, or some', async () => {
    place.write('gates/kept.gate', 'language 1\nmotion {\n  seat 4 s\n}\nexpects seat-outside-practice\n');
    place.write('gates/quiet.gate', 'language 1\n');
    const client = await connect({ pull: true, folders: [place.uri] });
    const uri = place.uriOf('gates/broken.gate');
    await client.open(uri, 'language 1\nexpects lag-too-small\n');
    const of = async (uris?: string[]): Promise<unknown> =>
      (await client.request<PromisesAnswer>('pintle/promises', uris === undefined ? {} : { uris })).map((file) => [
        file.uri,
        file.promises.map(({ label, kept }) => [label, kept]),
      ]);
    await client.until(async () => ((await of()) as unknown[]).length >= 2);
    expect(await of()).toEqual([
      [uri, [['lag-too-small', false]]],
      [place.uriOf('gates/kept.gate'), [['seat-outside-practice', true]]],
    ]);
    expect(await of([uri])).toEqual([[uri, [['lag-too-small', false]]]]);
    await client.end();
  });
});
