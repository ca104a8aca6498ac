import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hasNoUses, type Mention, mayMention, mentionsOf, prepareRename, type Renaming, renaming } from '../../server/editor/index.ts';
import { type Analysis, Workspace, withEdits } from '../../server/engine/index.ts';
import { within } from '../kit/marker.ts';
import { faultsOf } from '../kit/messages.ts';
import { asOf, library, site } from './bench.ts';

type Files = ReadonlyMap<string, string>;

const examples: Files = new Map(
  ['sound', 'unsafe'].flatMap((folder) => {
    const at = new URL(`../../examples/${folder}/`, import.meta.url);
    return readdirSync(at)
      .filter((name) => name.endsWith('.gate'))
      .map((name) => [`/site/${folder}/${name}`, readFileSync(new URL(name, at), 'utf8')] as const);
  }),
);
const everything: Files = new Map([...library, ...examples]);

const workspaceOf = (files: Files): Workspace =>
  new Workspace({ root: '/site', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
const judgedOnce = new WeakMap<Files, ReadonlyMap<string, Analysis>>();
/** All files with their verdicts, worked out once for each set of files. */
function judged(files: Files): ReadonlyMap<string, Analysis> {
  let all = judgedOnce.get(files);
  if (all === undefined) {
    const workspace = workspaceOf(files);
    judgedOnce.set(files, (all = new Map([...files].map(([path, text]) => [path, workspace.judge(path, text, asOf)]))));
  }
  return all;
}

/** Renames what stands at an offset, in memory. */
function rename(files: Files, path: string, offset: number, newName: string): Renaming {
  const workspace = workspaceOf(files);
  const analysis = workspace.judge(path, files.get(path) as string, asOf);
  const target = prepareRename(analysis, offset);
  if ('refused' in target) return target;
  const others = [...files].filter(
    ([other, text]) => target.shared && other !== path && (mayMention(text, target.name) || mayMention(text, newName)),
  );
  const work = renaming({
    target,
    newName,
    root: '/site',
    files: [analysis, ...others.map(([other, text]) => workspace.named(other, text))],
    read: (at) => (files.has(at) ? { text: files.get(at) as string } : 'missing'),
  });
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
function applied(files: Files, renamed: Renaming): Files {
  if ('refused' in renamed) throw new Error(renamed.refused);
  return new Map([...files, ...renamed.files.map(({ path, edits }) => [path, withEdits(files.get(path) as string, edits)] as const)]);
}
const refusalOf = (renamed: Renaming): string => ('refused' in renamed ? renamed.refused : 'it was not refused');
const at = (files: Files, path: string, marked: string): number => within(files.get(path) as string, marked).offset;
const north = '/site/gates/north.gate';
const withNorth = (text: string, more: Readonly<Record<string, string>> = {}): Files =>
  new Map([...library, ...Object.entries(more), [north, text]]);

describe('what a new name changes', () => {
  test.each<[what: string, marked: string, edits: number]>([
    ['a leaf, at what it closes onto', 'onto |east', 2],
    ['a leaf, where it is declared', 'leaf |west', 3],
    ['a drive', 'drive |west-ram', 1],
    ['a sensor and its wire', 'wire |west-edge', 2],
    ['a control', 'control |fobs', 1],
    ['a panel', 'panel |main', 1],
  ])('%s', (_what, marked, edits) => {
    const files = withNorth(site());
    const found = rename(files, north, at(files, north, marked), 'fresh');
    expect('files' in found && found.files.map(({ path, edits: made }) => [path, made.length])).toEqual([[north, edits]]);
  });

  test('a model and a terminal, in its library and in every file that speaks of it', () => {
    const files = withNorth(site(), {
      '/site/gates/south.gate': site(),
      '/site/gates/east.gate': site().replace('rowan-pair', 'marram-one'),
    });
    const model = rename(files, north, at(files, north, ': ro|wan-pair'), 'rowan-two');
    expect('files' in model && model.files.map(({ path }) => path).sort()).toEqual([
      north,
      '/site/gates/south.gate',
      '/site/library/panels.gate',
    ]);
    const terminal = rename(files, north, at(files, north, 'T0 |T1'), 'T9');
    expect('files' in terminal && terminal.files.map(({ path }) => path).sort()).toEqual([
      north,
      '/site/gates/south.gate',
      '/site/library/panels.gate',
    ]);
    expect(applied(files, terminal).get(north)).toContain('wire lower-beam to T0 T9');
    // The other panel's terminals keep their names, also where they are the same.
    const earth = rename(files, '/site/library/panels.gate', at(files, '/site/library/panels.gate', 'terminal |PE'), 'PX');
    expect(
      applied(files, earth)
        .get('/site/library/panels.gate')
        ?.match(/\bPE\b/g),
    ).toHaveLength(1);
  });

  test('a selector and its positions', () => {
    const files = withNorth(site());
    expect(applied(files, rename(files, north, at(files, north, 'select |reply'), 'mode')).get(north)).toContain('select mode steps');
    expect(applied(files, rename(files, north, at(files, north, 'reply |steps'), 'turn')).get('/site/library/panels.gate')).toContain(
      'option turn "',
    );
  });

  test('a name that another kind of thing has as well stays there', () => {
    const files = withNorth(
      site(
        'cable west : heron-supply {\n  feeds west-ram\n  length 5 m\n  carries 1 A at 24 V\n}\nfunction west "x west" {\n  parts west-edge\n}\n# west\n',
      ),
    );
    const text = applied(files, rename(files, north, at(files, north, 'leaf |west'), 'fresh')).get(north) ?? '';
    for (const kept of ['cable west ', 'function west "x west"', '# west', 'drive west-ram', 'on fresh closing-edge'])
      expect(text).toContain(kept);
  });

  test('the same name again changes nothing', () => {
    const files = withNorth(site());
    expect(rename(files, north, at(files, north, 'leaf |west'), 'west')).toEqual({ files: [] });
  });
});

describe('what is refused, and why', () => {
  const text = site(
    'leaf north {\n  width 1 m\n  mass 50 kg\n}\nsensor lost : finch-edge {\n  watches closing\n  on wset closing-edge\n}\ncable c : heron-supply {\n  feeds main\n  length 5 m\n  carries 1 A at 24 V\n}\n',
  );
  const files = withNorth(text);
  test.each<[what: string, marked: string, newName: string, reason: RegExp]>([
    ['a word of the language', 'w|idth', 'breadth', /“width” is a word of the language/],
    ['a choice', 'i|nward', 'inside', /“inward” is no name/],
    ['a path', '../|library/drives', 'x', /renaming or moving the file itself/],
    ['a number', '1|65 kg', 'x', /none stands here/],
    ['a name that leads nowhere', 'w|set', 'x', /“wset” is no name/],
    ['no name at all', 'leaf |west', '', /is not a name/],
    ['two words', 'leaf |west', 'far west', /is not a name/],
    ['a number in front', 'leaf |west', '2west', /is not a name/],
    ['a sign', 'leaf |west', 'we{st', /is not a name/],
    ['a quotation mark', 'leaf |west', '"west"', /is not a name/],
    ['a remark', 'leaf |west', 'west#', /is not a name/],
    ['a character that cannot be seen', 'leaf |west', 'we\u200bst', /is not a name/],
    ['a name that is taken', 'leaf |west', 'east', /“east” is already the name of a leaf \(gates\/north.gate, line \d+\)/],
    ['a name that is taken by another device', 'sensor l|ower-beam', 'fobs', /“fobs” is already the name of a sensor, drive or control/],
    ['a model of that name in another library', ': ro|wan-pair', 'marram-one', /already the name of a panel model \(library\/panels.gate/],
    ['a terminal of that name', 'to |T0', 'T1', /already the name of a terminal/],
    ['a name that somebody speaks of already', 'leaf |west', 'wset', /speaks of it already/],
    ['a device that would hide a panel', 'control |fobs', 'main', /would then mean something else/],
    ['a keyword of the line', 'to |T0', 'to', /“to” cannot be the new name/],
  ])('%s', (_what, marked, newName, reason) => {
    const refused = refusalOf(rename(files, north, at(files, north, marked), newName));
    expect(refused).toMatch(reason);
    expect(faultsOf(refused, text)).toEqual([]);
  });

  test('a rule', () => {
    const accepting = withNorth(site('accept use-unused because "x" by "K" until 2027-01-01\n'));
    expect(refusalOf(rename(accepting, north, at(accepting, north, 'us|e-unused'), 'x'))).toMatch(/name of a rule/);
  });
  test('a name that is declared twice', () => {
    const twice = withNorth(site('leaf west {\n  width 1 m\n  mass 50 kg\n}\n'));
    expect(refusalOf(rename(twice, north, at(twice, north, 'moves w|est'), 'x'))).toMatch(/declared 2 times/);
  });
  test('a file that must change and cannot be read', () => {
    const workspace = workspaceOf(files);
    const analysis = workspace.judge(north, text, asOf);
    const target = prepareRename(analysis, at(files, north, ': ro|wan-pair'));
    if ('refused' in target) throw new Error(target.refused);
    const outcome = renaming({ target, newName: 'x', root: '/site', files: [analysis], read: () => 'unreadable' }).next();
    let last = outcome;
    while (last.done !== true) last = renaming({ target, newName: 'x', root: '/site', files: [], read: () => 'unreadable' }).next();
    expect(refusalOf(last.value)).toMatch(/declares “rowan-pair” cannot be read/);
  });
});

// --- For every name of the examples.

const places: { readonly path: string; readonly mention: Mention }[] = [...judged(everything)].flatMap(([path, analysis]) =>
  mentionsOf(analysis)
    .filter(({ meaning }) => meaning.kind !== 'rule' && meaning.kind !== 'file')
    .map((mention) => ({ path, mention })),
);
const shapeOf =
  (name: string) =>
  (text: string): string =>
    text.replaceAll('fresh-name', name);
/** What is found and worked out, without places and with the new name put back. */
const verdictOf = (files: Files, back: (text: string) => string): string[] =>
  [...judged(files)]
    .flatMap(([path, { findings, figures }]) => [
      ...findings.map((finding) => back(`${path} ${finding.rule} ${finding.severity} ${finding.what} ${finding.remedy}`)),
      ...figures.map((figure) => back(`${path} ${figure.id} ${JSON.stringify('value' in figure ? figure.value : null)}`)),
    ])
    .sort();

test('to a fresh name and back: the same text, the same findings and figures, and no other name has moved', () => {
  expect(new Set(places.map(({ mention }) => mention.meaning.kind))).toEqual(
    new Set([
      'leaf',
      'device',
      'panel',
      'cable',
      'function',
      'panel-model',
      'drive-model',
      'sensor-model',
      'cable-model',
      'terminal',
      'selector',
      'adjuster',
      'indicator',
      'option',
    ]),
  );
  const before = verdictOf(everything, (text) => text);
  fc.assert(
    fc.property(fc.constantFrom(...places), ({ path, mention }) => {
      const meaning = mention.meaning as typeof mention.meaning & { readonly name: string };
      const there = applied(everything, rename(everything, path, mention.start, 'fresh-name'));
      expect([...there].filter(([at, text]) => text !== everything.get(at)).length).toBeGreaterThan(0);
      expect(verdictOf(there, shapeOf(meaning.name))).toEqual(before.map(shapeOf(meaning.name)));
      const files = judged(there);
      const moved = [...judged(everything)].map(([at, analysis]) => [at, mentionsOf(analysis).map((one) => one.meaning.kind)] as const);
      for (const [at, kinds] of moved) expect(mentionsOf(files.get(at) as Analysis).map((one) => one.meaning.kind)).toEqual(kinds);
      // What was renamed stands at the same place among the names of its file.
      const index = mentionsOf(judged(everything).get(path) as Analysis).findIndex((one) => one.start === mention.start);
      const now = mentionsOf(files.get(path) as Analysis)[index] as Mention;
      expect((now.meaning as typeof meaning).name).toBe('fresh-name');
      expect(applied(there, rename(there, path, now.start, meaning.name))).toEqual(everything);
    }),
    { numRuns: 60 },
  );
});

test('any place and any new name in any text: edits that keep every other name, or a reason', () => {
  const names = fc.oneof(
    fc.constantFrom('to', 'closing', 'west', 'main', 'T1', 'steps', 'overlap', 'at', '..', '__proto__', 'constructor', 'é', '𝄞'),
    fc.string({ maxLength: 6 }),
  );
  const pieces = ['{', '}', '"', '\n', 'leaf west {', 'wire ', 'to ', '±', ':', 'closes onto '];
  const broken = fc
    .array(fc.tuple(fc.nat(), fc.nat(40), fc.constantFrom(...pieces, '')), { maxLength: 4 })
    .map((cuts) =>
      cuts.reduce(
        (now, [where, length, put]) => now.slice(0, where % (now.length + 1)) + put + now.slice((where % (now.length + 1)) + length),
        site(),
      ),
    );
  fc.assert(
    fc.property(broken, fc.nat(), names, (text, place, newName) => {
      const files = withNorth(text);
      const found = rename(files, north, place % (text.length + 1), newName);
      if ('refused' in found) {
        expect(found.refused).toMatch(/^[“A-Z].*\.$/s);
        return;
      }
      const there = applied(files, found);
      for (const [path, analysis] of judged(files)) {
        const after = mentionsOf(judged(there).get(path) as Analysis);
        expect(after.map((one) => one.meaning.kind)).toEqual(mentionsOf(analysis).map((one) => one.meaning.kind));
      }
    }),
    { numRuns: 200 },
  );
});

test('a name with a character in it that shows nothing is the same name, and is renamed with the others', () => {
  const own = 'language 1\nuse "l.gate"\nleaf ea\u00adst {\n  width 2 m\n}\nleaf west {\n  closes onto east by 40 mm\n}\n';
  const done = rename(new Map([['/site/a.gate', own]]), '/site/a.gate', own.indexOf('east by'), 'north');
  if (!('files' in done)) throw new Error(done.refused);
  const [file] = done.files;
  expect(withEdits(own, file?.edits ?? [])).toBe(own.replace('ea\u00adst', 'north').replace('east by', 'north by'));
  // Whether another file can speak of it is asked of its text alone.
  expect(mayMention('drive a : bi\u200brch {\n}\n', 'birch')).toBe(true);
  expect(mayMention('drive a : b\u00efrch {\n}\n', 'birch')).toBe(false);
  expect(hasNoUses('u\u200bse "l.gate"\n')).toBe(false);
});
