import { expect, test } from 'vitest';
import { Workspace } from '../../server/engine/index.ts';
import { asOf, bench, library, site } from './bench.ts';

const rules = (workspace: Workspace, path: string, text: string): string[] =>
  workspace.open(path, text, asOf).findings.map((finding) => finding.rule);

test('the same text is judged once; a library that changes is seen, one that does not matter is not', () => {
  const files = new Map(library);
  const workspace = new Workspace({ root: '/site', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
  const path = '/site/gates/a.gate';
  const first = workspace.open(path, site(), asOf);
  expect(workspace.open(path, site(), asOf)).toBe(first);
  workspace.changed('/site/elsewhere.gate');
  expect(workspace.open(path, site(), asOf)).toBe(first);
  files.set('/site/library/drives.gate', 'language 1\n');
  workspace.changed('/site/library/drives.gate');
  expect(rules(workspace, path, site())).toContain('model-unknown');
  files.delete('/site/library/drives.gate');
  workspace.changed('/site/library/drives.gate');
  expect(rules(workspace, path, site())).toContain('use-missing-file');
});

test('a file with models of its own is judged once too', () => {
  const { workspace } = bench(site());
  const text = `${site()}drive-model own "Own" {\n  kind rack\n}\n`;
  expect(workspace.open('/site/gates/b.gate', text, asOf)).toBe(workspace.open('/site/gates/b.gate', text, asOf));
});

test('a file that a library leads back to does not stain its neighbours', () => {
  const files = new Map([
    ['/site/lib/l.gate', 'language 1\nuse "../gates/a.gate"\ndrive-model d "D" {\n  kind rack\n}\n'],
    ['/site/gates/a.gate', 'language 1\nuse "../lib/l.gate"\n'],
  ]);
  const make = () => new Workspace({ root: '/site', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
  const text = 'language 1\nuse "../lib/l.gate"\n';
  const said = (workspace: Workspace): unknown => workspace.open('/site/gates/b.gate', text, asOf).findings;
  const one = make();
  one.open('/site/gates/a.gate', text, asOf);
  expect(said(one)).toEqual(said(make()));
});

test('what is still to come is named, and counts once it is there', () => {
  let ready = false;
  const workspace = new Workspace({ root: '/site', read: (path) => (ready ? { text: library.get(path) ?? '' } : 'waiting') });
  const path = '/site/gates/a.gate';
  expect(workspace.waitingFor(workspace.open(path, site(), asOf))).toHaveLength(4);
  ready = true;
  for (const file of library.keys()) workspace.changed(file);
  const analysis = workspace.open(path, site(), asOf);
  expect(workspace.waitingFor(analysis)).toEqual([]);
  expect(analysis.findings.map((finding) => finding.rule)).not.toContain('model-unknown');
});
