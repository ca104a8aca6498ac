// The account of what was judged: which fact taken away leaves which judgement open, how grave that is, and what is asked. The pairs of
// fact and judgement are from the tables and rules that the judgements rest on, as the pages name them; put together by hand.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { type Analysis, accountShown, fullAccount, Workspace } from '../../server/engine/index.ts';

const folder = fileURLToPath(new URL('.', import.meta.url))
  .replaceAll('\\', '/')
  .replace(/\/$/, '');
const textOf = (path: string): string => readFileSync(join(folder, path), 'utf8');

/** Judges a text in place of a base, with libraries changed as given: what is to be replaced, and by what. */
function judge(text: string, changes: Readonly<Record<string, readonly [string, string]>> = {}): Analysis {
  const workspace = new Workspace({
    root: folder,
    read: (path) => {
      const name = path.slice(path.lastIndexOf('/') + 1);
      const change = changes[name];
      const library = readFileSync(path, 'utf8');
      if (change === undefined) return { text: library };
      expect(library, name).toContain(change[0]);
      return { text: library.replaceAll(change[0], change[1]) };
    },
  });
  return workspace.judge(`${folder}/base/site.gate`, text, '2026-11-30');
}

function without(path: string, ...lines: readonly string[]): string {
  return lines.reduce((text, line) => {
    expect(text, line).toContain(`  ${line}\n`);
    return text.replaceAll(`  ${line}\n`, '');
  }, textOf(path));
}

const openOf = (analysis: Analysis): readonly string[] =>
  accountShown(analysis).open.map(({ what, lacks }) => `${what}: ${lacks.join(', ')}`);
const notJudged = (analysis: Analysis): readonly string[] =>
  analysis.findings.filter(({ rule }) => rule === 'not-judged').map(({ severity }) => severity);

describe('a fact that is taken away leaves open what hangs on it', () => {
  // EN 12453:2000, 5.5.1, Table 1, has a column for who is there; everything hangs on the body of rules.
  test.each<[string, string, readonly string[], readonly string[], readonly string[]]>([
    ['who is there', 'base/swing.gate', ['users limited'], ['who is to be protected, and by which rules: users'], ['error']],
    ['how low a beam is', 'base/swing.gate', ['height 200 mm'], ['the closing edge of “gate”: height'], ['error']],
    [
      'the room behind the leaf',
      'base/swing.gate',
      ['room-when-open 900 mm'],
      ['the room behind the open leaf “gate”: room-when-open'],
      ['warning'],
    ],
    [
      'the hinge and the ground',
      'base/swing.gate',
      ['hinge-gap 6 mm least 5 mm greatest 7 mm', 'ground-gap 150 mm'],
      ['the hinge of “gate”: hinge-gap', 'the gap under “gate”: ground-gap'],
      ['warning'],
    ],
    ['what a sliding leaf runs past', 'base/slide.gate', ['passes post 40 mm'], ['what runs past “slide”: passes'], ['warning']],
    ['the supply', 'base/swing.gate', ['supply 230 V 50 Hz'], ['the supply of “box”: supply'], ['note']],
    [
      'what the gate serves',
      'base/na.gate',
      ['usage-class II'],
      ['what the rules of North America ask of the site: usage-class'],
      ['warning'],
    ],
    ['the position of a selector', 'base/pair.gate', ['select reply closes-alone'], ['what is set at “reply”: select'], ['note']],
  ])('%s', (_, path, lines, open, severities) => {
    const analysis = judge(without(path, ...lines));
    expect(openOf(analysis)).toEqual(open);
    expect(notJudged(analysis)).toEqual(severities);
    const { judged, of } = accountShown(analysis);
    expect(of - judged).toBe(open.length);
  });

  test('in a library as well, told at the library', () => {
    const text = textOf('base/pair.gate');
    const analysis = judge(text, { 'panels.gate': [' acts automatic', ''] });
    expect(openOf(analysis)).toEqual(['what is set at “reply”: acts']);
    const [ask] = accountShown(analysis).asks;
    expect(ask?.path).toBe(`${folder}/library/panels.gate`);
    expect(ask?.question).toBe('How is the gate commanded while “reply” of “rowan-pair” is at “closes-alone”?');
    const library = textOf('library/panels.gate');
    expect(library.slice(ask?.start, ask?.end)).toBe('selector reply');
  });

  test('what a panel declares of itself is missed by a note, whatever hangs on it', () => {
    const analysis = judge(textOf('base/swing.gate'), {
      'panels.gate': ['  category 2\n  performance-level c\n  reaction 70 ms\n  pfhd 900 FIT\n', '  reaction 70 ms\n'],
    });
    expect(openOf(analysis)).toEqual(['how surely the gate is stopped by “box”: performance-level']);
    expect(notJudged(analysis)).toEqual(['note']);
  });

  test('how soon a drive stands still decides how far a leaf runs on', () => {
    const analysis = judge(textOf('base/pair.gate'), { 'drives.gate': ['  stops-in 150 ms\n', ''] });
    expect(openOf(analysis)).toEqual(['the run-on of “north”: stops-in', 'the run-on of “south”: stops-in']);
    const [ask, ...more] = accountShown(analysis).asks;
    expect([ask?.fact, ask?.settles, more]).toEqual(['stops-in', 2, []]);
    expect(notJudged(analysis)).toEqual(['error']);
  });

  test('nothing, where the gate moves only while somebody holds it in full view', () => {
    expect(openOf(judge(without('base/held.gate', 'room-when-open 600 mm', 'hinge-guard 350 mm', 'ground-gap 125 mm')))).toEqual([]);
  });
});

describe('a draft', () => {
  const draft = (text: string): Analysis => judge(text.replace('  rules europe\n', '  stage draft\n  rules europe\n'));
  const lacking = without('base/swing.gate', 'room-when-open 900 mm', 'ground-gap 150 mm', 'height 200 mm');

  test('has one note for all that is not judged, with what settles most', () => {
    const analysis = draft(lacking);
    expect(accountShown(analysis).draft).toBe(true);
    const found = analysis.findings.filter(({ rule }) => rule === 'not-judged');
    expect(found.map(({ severity, what, lacks }) => [severity, what, lacks])).toEqual([
      ['note', expect.stringMatching(/^A draft: judged \d+ of \d+\. 3 facts would settle the rest\.$/), ['height']],
    ]);
  });

  test('is judged by the same rules otherwise', () => {
    const rules = (analysis: Analysis): readonly string[] =>
      analysis.findings.filter(({ rule }) => rule !== 'not-judged').map(({ rule }) => rule);
    expect(rules(draft(lacking))).toEqual(rules(judge(lacking)));
  });

  test('needs no forces yet', () => {
    const text = textOf('base/swing.gate').replace(/measured \{[^}]*\}\n?/, '');
    expect(judge(text).findings.map(({ rule }) => rule)).toContain('force-not-measured');
    expect(draft(text).findings.map(({ rule }) => rule)).not.toContain('force-not-measured');
    expect(openOf(draft(text))).toEqual(['the forces of “gate”: force']);
  });
});

describe('the full account', () => {
  test('says of each hazard what came of it', () => {
    const told = fullAccount(judge(textOf('unsafe/s07-hinge-guard-9m.gate').replace('  hinge-guard 9 m\n', '')));
    const of = (what: string): string | undefined => told.find((one) => one.what === what)?.verdict;
    expect(of('the hinge of “gate”')).toBe('not covered');
    expect(of('the closing edge of “gate”')).toBe('covered');
    expect(of('the room behind the open leaf “gate”')).toBe('judged');
  });

  test('has as many lines as are judged or should be', () => {
    const analysis = judge(without('base/swing.gate', 'ground-gap 150 mm'));
    expect(fullAccount(analysis)).toHaveLength(accountShown(analysis).of);
    expect(fullAccount(analysis).filter(({ verdict }) => verdict === 'not judged')).toHaveLength(1);
  });

  test('of a library there is none', () => {
    const { judged, of, open, asks } = accountShown(judge(textOf('library/sensors.gate')));
    expect([judged, of, open, asks]).toEqual([0, 0, [], []]);
  });
});
