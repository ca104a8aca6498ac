// What is said of what cannot be read, and of files that use each other: the sentence, the guess, and the change that is offered.
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type ReadResult, Workspace } from '../../server/engine/index.ts';
import type { Finding } from '../../server/rules/index.ts';
import { applyEdits, judge, pagePath } from '../kit/pages.ts';

const of = (rule: string, text: string): Finding => {
  const found = judge(text).findings.filter((finding) => finding.rule === rule);
  expect(found.map((finding) => finding.what)).toHaveLength(1);
  return found[0] as Finding;
};
/** What is offered, each as the text that it makes. */
const made = (text: string, { fixes }: Finding): string[] => fixes.map((fix) => applyEdits(text, fix.edits));

const leaf = (line: string): string => `language 1\nleaf west {\n  ${line}\n}\n`;

describe('text-not-closed', () => {
  const offered = (text: string): string[] => made(text, of('text-not-closed', text));

  test.each([
    ['behind the last word', 'language 1\nsite "Kestrel Yard', 'language 1\nsite "Kestrel Yard"'],
    ['before blanks at the end', 'language 1\nsite "Kestrel Yard  \n{\n}\n', 'language 1\nsite "Kestrel Yard"  \n{\n}\n'],
    ['before a brace and the blanks around it', 'language 1\nsite "Kestrel Yard { \n}\n', 'language 1\nsite "Kestrel Yard" { \n}\n'],
    ['before a brace that stands right behind it', 'language 1\nsite "Kestrel Yard{\n}\n', 'language 1\nsite "Kestrel Yard"{\n}\n'],
    ['before a brace, of a text with nothing in it', 'language 1\nsite "{\n}\n', 'language 1\nsite ""{\n}\n'],
    ['of a text that starts with a backslash', 'language 1\nsite "\\"Kestrel {\n}\n', 'language 1\nsite "\\"Kestrel" {\n}\n'],
  ])('the mark is offered %s', (_, text, mended) => expect(offered(text)).toEqual([mended]));

  test('behind a backslash no mark would end the text, and none is offered', () => {
    expect(offered('language 1\nsite "Kestrel\\\n')).toEqual([]);
    expect(offered('language 1\nsite "Kestrel\\ {\n}\n')).toEqual([]);
  });

  test('a long row of blanks is read as fast as any other line', () => {
    const text = `language 1\nsite "${' '.repeat(200_000)}x\n`;
    expect(offered(text)).toEqual([`${text.trimEnd()}"\n`]);
  });
});

describe('unit-missing', () => {
  test('where no unit makes sense, none is guessed', () => {
    const finding = of('unit-missing', leaf('width 99999999'));
    expect(finding.what).toBe('“99999999” in “width” has no unit; length is expected.');
    expect(finding.remedy).toBe('Write one of m, mm, cm, in, ft behind it.');
    expect(finding.fixes).toEqual([]);
  });

  test('the guess is the first unit with which the number makes sense', () => {
    expect(of('unit-missing', leaf('width 2.1')).remedy).toBe('Write one of m, mm, cm, in, ft behind it; “2.1 m” is likely.');
    expect(made(leaf('width 2.1'), of('unit-missing', leaf('width 2.1')))).toEqual([leaf('width 2.1 m')]);
  });
});

test('unit-unknown: a unit written out is surely the one meant, any other guess is not', () => {
  const guess = (line: string): [string | undefined, boolean] | undefined => {
    const text = `language 1\nmotion {\n  ${line}\n}\n`;
    // `seat` decides nothing about safety, so nothing but the rule itself decides whether the guess is sure.
    const fix = of('unit-unknown', text).fixes[0];
    return fix && [fix.edits[0]?.text, fix.safe];
  };
  for (const spelt of ['seconds', 'second', 'Seconds']) expect(guess(`seat 2 ${spelt}`), spelt).toEqual(['s', true]);
  for (const [spelt, meant] of [
    ['secs', 's'],
    ['mins', 'min'],
    ['hr', 'h'],
    ['S', 's'],
  ])
    expect(guess(`seat 2 ${spelt}`), spelt).toEqual([meant, false]);
  const length = (spelt: string) =>
    of('unit-unknown', `language 1\ncable run {\n  length 20 ${spelt}\n}\n`).fixes.map((fix) => [fix.edits[0]?.text, fix.safe]);
  for (const spelt of ['metres', 'metre', 'meters', 'meter', 'Meters']) expect(length(spelt), spelt).toEqual([['m', true]]);
  for (const [spelt, meant, safe] of [
    ['inches', 'in', true],
    ['millimetres', 'mm', true],
    ['foot', 'ft', false],
    ['MM', 'mm', false],
  ] as const)
    expect(length(spelt), spelt).toEqual([[meant, safe]]);
  expect(length('yd')).toEqual([]);
});

describe('value-out-of-range', () => {
  const meant = (text: string): string[] => of('value-out-of-range', text).fixes.map((fix) => fix.edits[0]?.text ?? '');

  test.each([
    // The limits of a width are 0.3 m and 20 m, and both may be.
    ['width 300 m', ['300 mm', '300 cm', '300 in']],
    ['width 20000 m', ['20000 mm']],
    ['width 299 m', ['299 cm', '299 in']],
    ['width 20001 m', []],
    ['width 2.5in', ['2.5 m', '2.5 ft']],
    ['width +2500 m', ['+2500 mm']],
    ['width -3 m', []],
    ['mass 99999999 kg', []],
    // 20 m are 787.401575 in; the limit is shown as 787.402 in, and the unit as written is no guess.
    ['width 787.4018 in', ['787.4018 mm', '787.4018 cm']],
  ])('%s', (line, expected) => expect(meant(leaf(line))).toEqual(expected));

  test('a sign is taken with its number, of either shape', () => {
    const bracket = (amount: string): string => `language 1\ndrive arm {\n  post-bracket ${amount} by 100 mm\n}\n`;
    expect(meant(bracket('-150 m'))[0]).toBe('-150 mm');
    expect(meant(bracket('−150 m'))[0]).toBe('−150 mm');
  });

  test('no more than three guesses are offered, and the first is named', () => {
    const finding = of('value-out-of-range', 'language 1\ndrive-model heron "Ram" {\n  kind linear-ram\n  speed 3 m/s\n}\n');
    // 3 ft/s, 3 ft/min and 3 mph would lie inside the limits too.
    expect(finding.fixes.map((fix) => fix.title)).toEqual(['Write “3 mm/s”', 'Write “3 km/h”', 'Write “3 m/min”']);
    expect(finding.remedy).toBe('Correct the number or its unit. Perhaps “3 mm/s” is meant.');
  });

  test('limits are shown in the unit as written, in four digits', () => {
    expect(of('value-out-of-range', leaf('width 900 in')).what).toBe(
      '“900 in” in “width” can hardly be meant; it takes from 11.81 in to 787.4 in.',
    );
    expect(of('value-out-of-range', 'language 1\ncable-model heron "Signal cable" {\n  area 5 m2\n}\n').what).toBe(
      '“5 m2” in “area” can hardly be meant; it takes from 5e-8 m2 to 0.00005 m2.',
    );
    expect(meant('language 1\ncable-model heron "Signal cable" {\n  area 5 m2\n}\n')).toEqual(['5 mm2', '5 AWG']);
    expect(meant('language 1\nsensor-model heron "Beam" {\n  pfhd 5 /h\n}\n')).toEqual(['5 FIT']);
  });

  test('a number with a tolerance gets no guess: the tolerance belongs to it', () => {
    const finding = of('value-out-of-range', 'language 1\nsensor-model heron "Edge" {\n  terminator 900 Mohm ± 5 %\n}\n');
    expect(finding.what).toBe('“900 Mohm ± 5 %” in “terminator” can hardly be meant; it takes from 0.0001 Mohm to 1 Mohm.');
    expect(finding.remedy).toBe('Correct the number or its unit.');
    expect(finding.fixes).toEqual([]);
  });
});

describe('word-unknown', () => {
  test.each([
    ['leaf west {\n  signs none\n}\n', '“signs” may not stand in a leaf; its place is in a site.'],
    ['leaf west {\n  standby 60 mA\n}\n', '“standby” may not stand in a leaf; its place is in a panel-model.'],
    [
      'leaf west {\n  consumes 60 mA\n}\n',
      '“consumes” may not stand in a leaf; its place is in a control, in a drive-model or in a sensor-model.',
    ],
    ['leaf west {\n  peak 60 W\n}\n', '“peak” may not stand in a leaf; its place is in a solar.'],
    ['leaf west {\n  sweep 270 deg\n}\n', '“sweep” may not stand in a leaf; its place is in an adjuster.'],
    ['leaf west {\n  site "Kestrel Yard" {\n  }\n}\n', '“site” may not stand in a leaf; its place is outside all blocks.'],
    ['leaf west {\n  use "../library/drives.gate"\n}\n', '“use” may not stand in a leaf; its place is outside all blocks.'],
    ['panel main {\n  solar {\n    width 2 m\n  }\n}\n', '“width” may not stand in a solar; its place is in a leaf.'],
    ['width 2 m\n', '“width” may not stand outside all blocks; its place is in a leaf.'],
    [
      'panel-model heron "Panel" {\n  adjuster trim "Trim" {\n    colour green\n  }\n}\n',
      '“colour” is not a word that may stand in an adjuster.',
    ],
  ])('%j', (text, what) => expect(of('word-unknown', `language 1\n${text}`).what).toBe(what));

  test('the same word but for its capitals is surely meant, the nearest one is not', () => {
    const offered = (line: string) =>
      of('word-unknown', `language 1\nmotion {\n  ${line}\n}\n`).fixes.map((fix) => [fix.edits[0]?.text, fix.safe]);
    expect(offered('Seat 2 s')).toEqual([['seat', true]]);
    expect(offered('SEAT 2 s')).toEqual([['seat', true]]);
    expect(offered('saet 2 s')).toEqual([['seat', false]]);
  });
});

describe('files that use each other', () => {
  const drives = 'use "../library/drives.gate"\n';
  const at = (name: string): string => posix.join(posix.dirname(pagePath), name);
  const judged = (files: Readonly<Record<string, string>>, answers: Readonly<Record<string, ReadResult>> = {}): readonly Finding[] => {
    const root = posix.dirname(posix.dirname(pagePath));
    const workspace = new Workspace({
      root,
      read: (path) => answers[path] ?? (files[path] === undefined ? 'missing' : { text: files[path] }),
    });
    return workspace.judge(pagePath, files[pagePath] ?? '', '2026-11-25').findings;
  };
  const saysOf = (rule: string, files: Readonly<Record<string, string>>, answers?: Readonly<Record<string, ReadResult>>): string[] =>
    judged(files, answers).flatMap((finding) => (finding.rule === rule ? [`${finding.what} ${finding.remedy}`] : []));
  /** Files of which each uses the next, and the last the page. */
  const ring = (names: readonly string[]): Record<string, string> =>
    Object.fromEntries(
      [pagePath, ...names.map(at)].map((path, i) => [path, `language 1\nuse "${names[i] ?? posix.basename(pagePath)}"\n`]),
    );
  const end = ' Move what they share into a file that uses none of them.';

  test('a circle is told from file to file, a long one by its ends', () => {
    expect(saysOf('use-cycle', ring(['a.gate', 'b.gate', 'c.gate', 'd.gate']))).toEqual([
      `Files use each other in a circle: “sound/page.gate” uses “sound/a.gate”, which uses “sound/b.gate”, which uses “sound/c.gate”, which uses “sound/d.gate”, which uses “sound/page.gate”.${end}`,
    ]);
    expect(saysOf('use-cycle', ring(['a.gate', 'b.gate', 'c.gate', 'd.gate', 'e.gate', 'f.gate']))).toEqual([
      `Files use each other in a circle: “sound/page.gate” uses “sound/a.gate”, which uses “sound/b.gate”, which uses “sound/c.gate”, which uses “…”, which uses “sound/page.gate”.${end}`,
    ]);
  });

  test('a library that uses itself is named for that, and not the file that uses it', () => {
    const self = { [pagePath]: 'language 1\nuse "a.gate"\n', [at('a.gate')]: 'language 1\nuse "a.gate"\n' };
    expect(saysOf('use-cycle', self)).toEqual([`The file “sound/a.gate” uses itself.${end}`]);
  });

  test('two files of one name in folders of one name are two files', () => {
    const twins = {
      [pagePath]: 'language 1\nuse "x/a.gate"\n',
      [at('x/a.gate')]: 'language 1\nuse "x/a.gate"\n',
      [at('x/x/a.gate')]: 'language 1\nuse "../a.gate"\n',
    };
    expect(saysOf('use-cycle', twins)).toEqual([
      `Files use each other in a circle: “x/a.gate” uses “x/a.gate”, which uses “x/a.gate”.${end}`,
    ]);
  });

  test('a file that is not there, one that cannot be read, and a link that leads out are told apart', () => {
    const page = { [pagePath]: 'language 1\nuse "a.gate"\n' };
    expect(saysOf('use-missing-file', page)).toEqual([
      'There is no file “a.gate”. Correct the path, which starts at the folder of this file, or put the file there.',
    ]);
    expect(saysOf('use-missing-file', page, { [at('a.gate')]: 'unreadable' })).toEqual([
      'The file “a.gate” is there but can’t be read. See that it is a text file in UTF-8 and that you may read it.',
    ]);
    expect(saysOf('use-outside-root', page, { [at('a.gate')]: 'outside' })).toEqual([
      '“a.gate” is a link to a place outside the folder of this workspace. Put the library into the workspace and write its path from this file.',
    ]);
  });

  test('backslashes are turned into slashes, but not where they keep a quotation mark in the text', () => {
    const offered = (path: string): string[] => {
      const text = `language 1\nsite "Kestrel \\"North\\" Yard" {\n  rules europe\n  users limited\n}\nuse "${path}"\n`;
      return of('use-path-unfit', text).fixes.map((fix) => applyEdits(text, fix.edits).split('\n').at(-2) ?? '');
    };
    expect(offered('..\\\\library\\\\panels.gate')).toEqual(['use "../library/panels.gate"']);
    expect(offered('..\\\\library\\\\the \\"old\\".gate')).toEqual([]);
  });

  describe('a second use of one file is taken out, and nothing else', () => {
    const offered = (line: string): [string, boolean][] => {
      const text = `language 1\n${drives}${line}\ndrive west-ram : birch-ram {\n  moves west\n}\n`;
      return of('use-repeated', text).fixes.map((fix) => [applyEdits(text, fix.edits).split('\n').slice(2, -4).join('\n'), fix.safe]);
    };
    test.each([
      ['a line of its own', 'use "../library/drives.gate"', [['', true]]],
      ['further in', '  use \t"../library/drives.gate"', [['', true]]],
      ['a comment behind it', 'use "../library/drives.gate" # why', [['# why', true]]],
      ['a block before it', 'leaf west { width 2 m } use "../library/drives.gate"', [['leaf west { width 2 m }', true]]],
      [
        'the end of a block before it',
        'leaf west {\n  width 2 m\n} use "../library/drives.gate" # why',
        [['leaf west {\n  width 2 m\n} # why', true]],
      ],
      ['more behind it, which has no place there', 'use "../library/drives.gate" extra', []],
    ])('%s', (_, line, expected) => expect(offered(line)).toEqual(expected));
  });
});
