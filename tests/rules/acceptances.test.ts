// What a file makes of its own findings: which of them an acceptance covers, which promises are kept, how many of one kind are
// told, in which order, and what is said before the slow rules have run.
import { describe, expect, test } from 'vitest';
import { evaluate, judging, type Verdict } from '../../server/rules/index.ts';
import { installationOf, judge, lineOf } from '../kit/pages.ts';

/** What is found and what is accepted, each as “rule line”. */
function verdictOf(text: string, asOf?: string): { readonly found: readonly string[]; readonly accepted: readonly string[] } {
  const analysis = judge(text, undefined, asOf);
  const told = (list: typeof analysis.findings): string[] => list.map(({ rule, start }) => `${rule} ${lineOf(analysis, start)}`);
  return { found: told(analysis.findings), accepted: told(analysis.accepted) };
}
const whatsOf = (rule: string, text: string): string[] =>
  judge(text).findings.flatMap((finding) => (finding.rule === rule ? [finding.what] : []));
const accept = (rule: string, until = '2027-03-31', by = ' by "KL"', reason = 'looked at'): string =>
  `accept ${rule} because "${reason}"${by} until ${until}`;

/** A file with a leaf and what was measured on it. */
const measuredOn = (lines: readonly string[], top: readonly string[] = []): string =>
  [
    'language 1',
    'use "../library/drives.gate"',
    '',
    'site "x" {',
    '  rules europe',
    '  users trained',
    '}',
    'leaf west {',
    '  width 2 m',
    '  mass 150 kg',
    '  opens inward 90 deg',
    '}',
    '',
    ...lines,
    ...top,
  ].join('\n') + '\n';
const force = '  force west closing gap 300 mm height 900 mm peak 300 N after-750-ms 90 N after-5-s 12 N';
/** Lines 14 to 19 and 20 to 25: an instrument out of calibration in each. */
const days = (first = '', second = ''): string[] => [
  'measured {',
  '  instrument "one" calibrated 2020-01-01',
  '  on 2026-05-14',
  `${force} # on a dry day`,
  `  ${first}`,
  '}',
  'measured {',
  '  instrument "two" calibrated 2020-01-02',
  `  ${second}`,
  '  on 2026-05-14',
  force,
  '}',
];
const calibration = (text: string): { readonly found: readonly string[]; readonly accepted: readonly string[] } => {
  const { found, accepted } = verdictOf(text);
  return { found: found.filter((one) => /^(instrument-out-of-calibration|acceptance)/.test(one)), accepted };
};

describe('an acceptance', () => {
  test('outside all blocks covers the whole file, before and behind it', () => {
    expect(calibration(measuredOn(days()))).toEqual({
      found: ['instrument-out-of-calibration 15', 'instrument-out-of-calibration 21'],
      accepted: [],
    });
    expect(calibration(measuredOn(days(), [accept('instrument-out-of-calibration')]))).toEqual({
      found: [],
      accepted: ['instrument-out-of-calibration 15', 'instrument-out-of-calibration 21'],
    });
  });

  test('in a block covers what lies in that block, before and behind it, and nothing of another', () => {
    expect(calibration(measuredOn(days(accept('instrument-out-of-calibration'))))).toEqual({
      found: ['instrument-out-of-calibration 21'],
      accepted: ['instrument-out-of-calibration 15'],
    });
    expect(calibration(measuredOn(days('', accept('instrument-out-of-calibration'))))).toEqual({
      found: ['instrument-out-of-calibration 15'],
      accepted: ['instrument-out-of-calibration 21'],
    });
    expect(calibration(measuredOn(days(accept('instrument-out-of-calibration'), accept('instrument-out-of-calibration'))))).toEqual({
      found: [],
      accepted: ['instrument-out-of-calibration 15', 'instrument-out-of-calibration 21'],
    });
  });

  test('covers one rule, and leaves what others find', () => {
    const panel = (name: string, line: string): string => `panel ${name} : rowan-pair {\n  ${line}\n}\n`;
    const text = (line: string): string => `language 1\nuse "../library/panels.gate"\n${panel('main', line)}${panel('other', '')}`;
    const { found, accepted } = verdictOf(text(accept('mains-isolation-not-stated')));
    expect(accepted).toEqual(['mains-isolation-not-stated 3']);
    expect(found).toContain('normally-closed-input-open 3');
    expect(found.filter((one) => one.startsWith('mains-isolation'))).toEqual(['mains-isolation-not-stated 6']);
    expect(verdictOf(text('')).found).toContain('mains-isolation-not-stated 3');
  });

  test('beside another for the same finding is used all the same', () => {
    expect(calibration(measuredOn(days(accept('instrument-out-of-calibration')), [accept('instrument-out-of-calibration')]))).toEqual({
      found: [],
      accepted: ['instrument-out-of-calibration 15', 'instrument-out-of-calibration 21'],
    });
  });

  test('that matches nothing in its block is told of, though the rule speaks elsewhere', () => {
    const first = measuredOn(days(accept('instrument-out-of-calibration'))).replace('2020-01-01', '2026-01-01');
    expect(calibration(first)).toEqual({ found: ['acceptance-unused 18', 'instrument-out-of-calibration 21'], accepted: [] });
    const second = measuredOn(days('', accept('instrument-out-of-calibration'))).replace('2020-01-02', '2026-01-01');
    expect(calibration(second)).toEqual({ found: ['instrument-out-of-calibration 15', 'acceptance-unused 22'], accepted: [] });
  });

  test('covers what begins where its block does, and what ends where it does', () => {
    const drive = (name: string, line: string): string => `drive ${name} : birch-floor {\n  moves west\n  ${line}\n}\n`;
    const heads = (a: string, b: string): unknown => {
      const { found, accepted } = verdictOf(
        `language 1\nuse "../library/drives.gate"\nleaf west {\n  width 2 m\n  mass 150 kg\n}\n${drive('a', a)}${drive('b', b)}`,
      );
      return [found.filter((one) => /^(manual-release|acceptance)/.test(one)), accepted];
    };
    const rule = 'manual-release-not-stated';
    expect(heads('', '')).toEqual([[`${rule} 7`, `${rule} 11`], []]);
    expect(heads(accept(rule), '')).toEqual([[`${rule} 11`], [`${rule} 7`]]);
    expect(heads('', accept(rule))).toEqual([[`${rule} 7`], [`${rule} 11`]]);
    const touching = verdictOf(
      `language 1\nuse "../library/drives.gate"\nleaf west {\n  width 2 m\n  mass 150 kg\n}\n${drive('a', accept(rule)).trimEnd()}${drive('b', '')}`,
    );
    expect([touching.found.filter((one) => one.startsWith(rule)), touching.accepted]).toEqual([[`${rule} 10`], [`${rule} 7`]]);
    // Without its brace the block ends with its last line.
    expect(verdictOf(`language 1\nmotion {\n  ${accept('seat-outside-practice')}\n  seat 4 s`)).toEqual({
      found: ['brace-missing 2', 'site-missing 2'],
      accepted: ['seat-outside-practice 4'],
    });
  });

  test('holds until the end of its last day', () => {
    const text = measuredOn(days(accept('instrument-out-of-calibration', '2026-12-31')));
    expect(verdictOf(text, '2026-12-31').accepted).toEqual(['instrument-out-of-calibration 15']);
    const late = verdictOf(text, '2027-01-01');
    expect(late.accepted).toEqual([]);
    expect(late.found.filter((one) => /^(instrument-out-of-calibration|acceptance)/.test(one))).toEqual([
      'instrument-out-of-calibration 15',
      'acceptance-expired 18',
      'instrument-out-of-calibration 21',
    ]);
  });

  test('without a reason covers nothing, and a blank is none', () => {
    for (const reason of ['', '  '])
      expect(calibration(measuredOn(days(accept('instrument-out-of-calibration', '2027-03-31', ' by "KL"', reason))))).toEqual({
        found: ['instrument-out-of-calibration 15', 'acceptance-without-reason 18', 'instrument-out-of-calibration 21'],
        accepted: [],
      });
  });

  test('that nobody signed covers, and is told of; a blank signs nothing', () => {
    for (const by of ['', ' by ""', ' by " "'])
      expect(calibration(measuredOn(days(accept('instrument-out-of-calibration', '2027-03-31', by)))), by).toEqual({
        found: ['acceptance-unsigned 18', 'instrument-out-of-calibration 21'],
        accepted: ['instrument-out-of-calibration 15'],
      });
    expect(calibration(measuredOn(days(accept('instrument-out-of-calibration', '2027-03-31', ' by "K"')))).found).toEqual([
      'instrument-out-of-calibration 21',
    ]);
  });

  test('of a rule that allows none, or that is none, covers nothing, and the next one holds', () => {
    for (const [name, kind] of [
      ['terminal-unknown', 'acceptance-not-allowed'],
      ['instrument-out-of-calibrations', 'acceptance-of-unknown-rule'],
    ] as const)
      expect(calibration(measuredOn(days(`${accept(name)}\n  ${accept('instrument-out-of-calibration')}`)))).toEqual({
        found: [`${kind} 18`, 'instrument-out-of-calibration 22'],
        accepted: ['instrument-out-of-calibration 15'],
      });
  });

  test('of a rule whose errors nobody can accept covers its warnings', () => {
    const box = 'panel-model plain-box {\n  performance-level b\n  pfhd 4000 FIT\n}\npanel main : plain-box {\n}\n';
    const text = (first: string): string =>
      `language 1\nsite "x" {\n  rules europe\n  users trained\n}\n${box}function closing-stop {\n  ${first}\n  parts main\n}\nfunction opening-stop {\n  parts main\n}\n${accept('performance-level-too-low')}\n`;
    const of = (first: string): unknown => {
      const analysis = judge(text(first));
      const told = (list: typeof analysis.findings): string[] =>
        list
          .filter(({ rule }) => /^(performance-level-too|acceptance)/.test(rule))
          .map(({ rule, severity, start }) => `${severity} ${rule} ${lineOf(analysis, start)}`);
      return [told(analysis.findings), told(analysis.accepted)];
    };
    // What is asked for from memory is a warning, what the file itself asks for is an error.
    expect(of('')).toEqual([[], ['warning performance-level-too-low 12', 'warning performance-level-too-low 16']]);
    expect(of('required-level c')).toEqual([
      ['error performance-level-too-low 12', 'error acceptance-not-allowed 19'],
      ['warning performance-level-too-low 16'],
    ]);
  });

  test('finds its own among many', () => {
    const count = 60;
    const day = (i: number, lines: string): string =>
      `measured {\n  instrument "${i}" calibrated 2020-01-01\n${lines}  on 2026-05-14\n${force}\n}`;
    const text = (accepting: readonly number[]): string =>
      measuredOn(
        Array.from({ length: count }, (_, i) => day(i, accepting.includes(i) ? `  ${accept('instrument-out-of-calibration')}\n` : '  \n')),
      );
    const lineOfInstrument = (i: number): number => 15 + 6 * i;
    for (const accepting of [[0], [31], [59], [0, 7, 30, 58, 59]]) {
      const { found, accepted } = calibration(text(accepting));
      expect(accepted).toEqual(accepting.map((i) => `instrument-out-of-calibration ${lineOfInstrument(i)}`));
      expect(found).toEqual(
        Array.from({ length: count }, (_, i) => i)
          .filter((i) => !accepting.includes(i))
          .map((i) => `instrument-out-of-calibration ${lineOfInstrument(i)}`),
      );
    }
    const all = calibration(
      measuredOn(
        Array.from({ length: count }, (_, i) => day(i, '')),
        [accept('instrument-out-of-calibration')],
      ),
    );
    expect(all.found).toEqual([]);
    expect(all.accepted).toEqual(Array.from({ length: count }, (_, i) => `instrument-out-of-calibration ${15 + 5 * i}`));
  });
});

describe('a promise', () => {
  const rule = 'expectation-not-met';
  test('in a block is kept by what is found in that block alone', () => {
    expect(whatsOf(rule, measuredOn(days('expects instrument-out-of-calibration')))).toEqual([]);
    expect(whatsOf(rule, measuredOn(days('', 'expects instrument-out-of-calibration')))).toEqual([]);
    const broken = ['This file promises that “instrument-out-of-calibration” finds something here, and it finds nothing.'];
    expect(whatsOf(rule, measuredOn(days('expects instrument-out-of-calibration')).replace('2020-01-01', '2026-01-01'))).toEqual(broken);
    expect(whatsOf(rule, measuredOn(days('', 'expects instrument-out-of-calibration')).replace('2020-01-02', '2026-01-01'))).toEqual(
      broken,
    );
  });
  test('of the whole file is kept by what is found anywhere in it', () => {
    const text = measuredOn(days(), ['expects instrument-out-of-calibration']);
    expect(whatsOf(rule, text)).toEqual([]);
    expect(whatsOf(rule, text.replace('2020-01-01', '2026-01-01'))).toEqual([]);
    expect(whatsOf(rule, text.replaceAll('calibrated 2020', 'calibrated 2026'))).toHaveLength(1);
  });
  test('hides nothing, and is kept by what is accepted too', () => {
    const text = measuredOn(days(`expects instrument-out-of-calibration\n  ${accept('instrument-out-of-calibration')}`));
    expect(verdictOf(text).accepted).toEqual(['instrument-out-of-calibration 15']);
    expect(whatsOf(rule, text)).toEqual([]);
    expect(verdictOf(measuredOn(days('expects instrument-out-of-calibration'))).found).toContain('instrument-out-of-calibration 15');
  });
  test('is kept by what is found of acceptances', () => {
    const old = accept('instrument-out-of-calibration', '2026-11-24');
    expect(whatsOf(rule, measuredOn(days(`expects acceptance-expired\n  ${old}`)))).toEqual([]);
    expect(whatsOf(rule, measuredOn(days('expects acceptance-expired', old)))).toHaveLength(1);
  });
  test('of none counts what is as grave and not promised, in its own block or the whole file', () => {
    const motion = (lines: readonly string[], inside = ''): string => `language 1\n${lines.join('\n')}\nmotion {\n  seat 4 s\n${inside}}\n`;
    // That there is no site is an error, a seat outside practice a note.
    const none = (text: string): string[] => whatsOf(rule, text);
    expect(none(motion(['expects-no error']))).toEqual(['This file promises no error or worse; there is one, first of “site-missing”.']);
    expect(none(motion(['expects-no error', 'expects site-missing']))).toEqual([]);
    expect(none(motion(['expects-no note']))).toEqual(['This file promises no note; there are 2, first of “site-missing”.']);
    expect(none(motion(['expects-no note', 'expects site-missing']))).toEqual([
      'This file promises no note; there is one, first of “seat-outside-practice”.',
    ]);
    expect(none(motion(['expects-no note', 'expects site-missing'], '  expects seat-outside-practice\n'))).toEqual([]);
    // What begins with the block is in it.
    expect(none(motion(['expects-no note', 'expects seat-outside-practice'], '  expects site-missing\n'))).toEqual([]);
    expect(none(motion(['expects-no note', 'expects seat-outside-practice', 'site "x" {', '  expects site-missing', '}']))).toHaveLength(2);
  });
  test('that is broken stands in its place among the others', () => {
    expect(verdictOf('language 1\nexpects contact-wrong\nmotion {\n  seat 4 s\n  expects input-bridged\n}\n').found).toEqual([
      'expectation-not-met 2',
      'site-missing 3',
      'seat-outside-practice 4',
      'expectation-not-met 5',
    ]);
  });
});

describe('of many findings of one kind', () => {
  /** A file in which a number of lines lack their unit, and one before and one behind is no line at all. */
  const text = (count: number): string =>
    `language 1\nsite "x" {\n  hello 1\n${Array.from({ length: count }, () => '  supply 230\n').join('')}  world 2\n}\n`;
  const of = (count: number): { readonly units: readonly string[]; readonly words: number } => ({
    units: whatsOf('unit-missing', text(count)),
    words: whatsOf('word-unknown', text(count)).length,
  });
  const one = '“230” in “supply” has no unit; voltage is expected.';
  test.each([[1], [99], [100]])('%i are told', (count) => {
    const { units, words } = of(count);
    expect(units).toEqual(Array.from({ length: count }, () => one));
    expect(words).toBe(2);
  });
  test.each([[101], [250]])('of %i the first hundred are, and the last of them says how many there are', (count) => {
    const { units, words } = of(count);
    expect(units).toHaveLength(100);
    expect(units.slice(0, 99)).toEqual(Array.from({ length: 99 }, () => one));
    expect(units[99]).toBe(`${one} (This is the last one shown of ${count} like it in this file.)`);
    expect(words).toBe(2);
    const analysis = judge(text(count));
    expect(analysis.findings.filter((finding) => finding.rule === 'unit-missing').map(({ start }) => lineOf(analysis, start))).toEqual(
      Array.from({ length: 100 }, (_, i) => i + 4),
    );
  });
});

/** A gate of which a quick and a slow rule speak, and a line. */
const gate = (line: string): string =>
  `language 1\nuse "../library/drives.gate"\nsite "x" {\n  rules europe\n  users limited\n}\nleaf west {\n  width 2 m\n  height 1.6 m\n  mass 150 kg\n  opens inward 90 deg\n}\ndrive d : birch-floor {\n  moves west\n}\ncontrol a {\n  acts impulse\n}\n${line}\n`;

describe('findings', () => {
  test('that begin together come in the order of their ends, then of the names of their rules', () => {
    const { findings } = judge('language 1\nsite "x" {\n  password "1234"\n}\n');
    expect(
      findings.filter(({ rule }) => /^(word-unknown|secret-in-file)$/.test(rule)).map(({ rule, start, end }) => [rule, start, end]),
    ).toEqual([
      ['word-unknown', 24, 32],
      ['secret-in-file', 24, 39],
    ]);
    const { findings: ofLeaf } = judge(gate(''));
    const inOrder = ['closing-edge-unguarded', 'force-not-measured', 'not-judged'];
    expect(ofLeaf.filter(({ start }) => start === 84).map(({ rule }) => rule)).toEqual(inOrder);
    // Also where one of the rules has run behind the others.
    let last: Verdict | undefined;
    for (const steps = judging(installationOf(gate('')), '2026-11-25'); last === undefined; ) {
      const step = steps.next();
      if (step.done === true) last = step.value;
    }
    expect(last.findings.filter(({ start }) => start === 84).map(({ rule }) => rule)).toEqual(inOrder);
    const problem = (end: number) => ({ kind: 'date-impossible', start: 5, end, detail: { found: '2026-02-30' } }) as const;
    const given = evaluate(
      { ...installationOf('language 1\nsite "x" {\n}\n'), problems: [problem(20), problem(10), problem(15)] },
      '2026-11-25',
    ).findings;
    expect(given.filter(({ rule }) => rule === 'date-impossible').map(({ end }) => end)).toEqual([10, 15, 20]);
  });
});

describe('before the slow rules have run', () => {
  const asOf = '2026-11-25';
  /** What is found and accepted in each verdict, the early ones and the last. */
  const stages = (text: string): string[][] => {
    const steps = judging(installationOf(text), asOf);
    const told: string[][] = [];
    for (;;) {
      const { done, value } = steps.next();
      if (value !== undefined)
        told.push(
          [...value.findings.map(({ rule, what }) => `${rule}: ${what}`), ...value.accepted.map(({ rule }) => `accepted ${rule}`)].filter(
            (one) => /closing-edge-unguarded|force-not-measured|expect|accept/.test(one),
          ),
        );
      if (done === true) return told;
    }
  };
  const quick = 'closing-edge-unguarded: Nothing that the panel heeds watches the closing edge of “west”.';
  const found = 'force-not-measured: No force is recorded for “west”.';

  test('nothing is said of what they find, accepted or not', () => {
    expect(stages(gate(''))).toEqual([[quick], [quick, found]]);
    expect(stages(gate(accept('force-not-measured')))).toEqual([[quick], [quick, 'accepted force-not-measured']]);
  });
  test('nor that an acceptance of them is unused, or how much one that is over covered', () => {
    expect(stages(gate(accept('force-window-narrow')))).toEqual([[quick], [quick, found, expect.stringMatching(/^acceptance-unused/)]]);
    expect(stages(gate(accept('force-not-measured', '2026-11-24')))).toEqual([
      [quick],
      [quick, found, expect.stringMatching(/^acceptance-expired: .*the finding that it covered is still there/)],
    ]);
    expect(stages(gate(accept('seat-outside-practice')))).toEqual([
      [quick, expect.stringMatching(/^acceptance-unused/)],
      [quick, found, expect.stringMatching(/^acceptance-unused/)],
    ]);
  });
  test('nor that a promise is broken, of them or of anything', () => {
    expect(stages(gate('expects force-not-measured'))).toEqual([[quick], [quick, found]]);
    expect(stages(gate('expects force-window-narrow'))).toHaveLength(2);
    expect(stages(gate('expects-no note')).map((stage) => stage.filter((one) => one.startsWith('expectation')).length)).toEqual([0, 1]);
  });
  test('a library, of which only quick rules speak, has one verdict', () => {
    expect(stages('language 1\nsensor-model bare {\n  kind beam\n}\n')).toHaveLength(1);
    expect(stages('')).toHaveLength(1);
  });
});
