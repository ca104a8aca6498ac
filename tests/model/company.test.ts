// A verdict is a matter of the file and of what it uses: not of the files beside it, of their order, or of who asks.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Analysis, type ReadResult, Workspace } from '../../server/engine/index.ts';
import { inOneGo } from '../../server/engine/inside.ts';
import { seed } from '../kit/chance.ts';

const asOf = '2026-06-01';
type Files = Readonly<Record<string, string>>;

const workspaceOf = (files: Files): Workspace =>
  new Workspace({
    root: '',
    read: (path): ReadResult => {
      const text = files[path];
      return text === undefined ? 'missing' : { text };
    },
  });

const said = (analysis: Analysis): string => JSON.stringify([analysis.findings, analysis.accepted]);

/** The verdicts of files that are judged in one workspace, in this order. */
function together(files: Files, order: readonly string[], judge: (workspace: Workspace, path: string, text: string) => Analysis) {
  const workspace = workspaceOf(files);
  return new Map(order.map((path) => [path, said(judge(workspace, path, files[path] ?? ''))]));
}

const ways: Readonly<Record<string, (workspace: Workspace, path: string, text: string) => Analysis>> = {
  judged: (workspace, path, text) => workspace.judge(path, text, asOf),
  'judged in steps': (workspace, path, text) => inOneGo(workspace.judging(path, text, asOf)),
  opened: (workspace, path, text) => workspace.open(path, text, asOf),
  'opened twice': (workspace, path, text) => {
    workspace.open(path, text + '\n', asOf);
    workspace.close(path);
    return workspace.open(path, text, asOf);
  },
};

function expectNoNeighbours(files: Files, order: readonly string[]): void {
  const alone = new Map(order.map((path) => [path, said(workspaceOf(files).judge(path, files[path] ?? '', asOf))]));
  for (const [way, judge] of Object.entries(ways)) expect(together(files, order, judge), way).toEqual(alone);
}

describe('these were mixed up', () => {
  const leaf = 'leaf west {\n  width 2 m\n}\n';
  test.each([
    ['use ""\n', ''],
    ['use "\n', ''],
    ['use ""\n', 'use "\n'],
    ['use "a b"\n', 'use "a"\nuse "b"\n'],
    ['use " "\n', 'use ""\n'],
    ['use\n', ''],
  ])('%j and %j', (one, other) => {
    const files = { '/one.gate': `language 1\n${one}${leaf}`, '/other.gate': `language 1\n${other}${leaf}` };
    expectNoNeighbours(files, ['/one.gate', '/other.gate']);
    expectNoNeighbours(files, ['/other.gate', '/one.gate']);
  });
});

test('in any order and any company, by whoever asks', () => {
  const name = fc.constantFrom('ash', 'birch', 'cedar');
  const path = fc.constantFrom('/a.gate', '/b.gate', '/c.gate', '/in/d.gate', '/in/e.gate');
  const target = fc.constantFrom(
    ...['a.gate', './a.gate', 'b.gate', '../a.gate', 'in/d.gate', 'd.gate', 'in/../c.gate', '../c.gate', 'e.gate', 'gone.gate', ''],
    ...['/a.gate', ' ', 'a\\b.gate', '../../x.gate', 'in/'],
  );
  const line = fc.oneof(
    target.map((to) => `use "${to}"\n`),
    target.map((to) => `use "${to}\n`),
    target.map((to) => `use ${to}\n`),
    fc.constantFrom('use\n', '\n', '# use "a.gate"\n', 'use "a.gate" "b.gate"\n', 'language 1\n'),
  );
  const body = fc.oneof(
    name.map((of) => `drive-model ${of} {\n  kind rack\n}\n`),
    name.map((of) => `panel-model ${of} {\n  terminal B1 safety-input\n}\n`),
    name.map((of) => `drive d : ${of} {\n  moves west\n}\nleaf west {\n  width 2 m\n}\n`),
    name.map((of) => `panel p : ${of} {\n  wire d to B1 B2\n}\n`),
    fc.constantFrom('leaf west {\n', '}\n', 'leef x\n', 'accept use-unused "by them" until 2026-01-01 by AB\n'),
  );
  const text = fc
    .tuple(fc.constantFrom('language 1\n', ''), fc.array(line, { maxLength: 3 }), fc.array(body, { maxLength: 2 }))
    .map(([first, lines, bodies]) => first + lines.join('') + bodies.join(''));
  const files = fc
    .uniqueArray(fc.tuple(path, text), { minLength: 2, maxLength: 5, selector: ([of]) => of })
    .map((entries) => Object.fromEntries(entries));
  fc.assert(
    fc.property(
      files.chain((of) => fc.tuple(fc.constant(of), fc.shuffledSubarray(Object.keys(of), { minLength: 1 }))),
      ([of, order]) => expectNoNeighbours(of, order),
    ),
    { numRuns: 1500, seed: seed() },
  );
});
