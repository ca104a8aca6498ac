// What the rules about safeguarding say, and what they point at: which device, which way of control, which people. Whether
// they find what they must is checked over installations made by chance, in tests/soundness.
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
const leaf = 'leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\ndrive west-drive : birch-floor {\n  moves west\n}\n';
const site = (lines: string): string => `site "Example" {\n  ${lines}\n}\n`;
const sensor = (name: string, model: string, lines: string): string => `sensor ${name} : ${model} {\n  ${lines}\n}\n`;
const edge = sensor('west-edge', 'finch-edge', 'watches closing\n  on west closing-edge\n  terminator 8.2 kohm');
const relay = sensor('low-beam', 'finch-relay', 'watches closing\n  height 200 mm');
const fobs = 'control fobs {\n  acts impulse\n}\n';
const panel = (lines: string, model = 'rowan-pair', name = 'main'): string => `panel ${name} : ${model} {\n  ${lines}\n}\n`;
const dwell = 'motion {\n  dwell 20 s\n}\n';

function found(rule: string, ...parts: string[]): { readonly text: string; readonly all: readonly Finding[]; readonly one: Finding } {
  const text = head + parts.join('');
  const all = judge(text).findings.filter(
    (finding) => finding.rule === rule && (rule !== 'protection-untested' || finding.severity === 'error'),
  );
  return { text, all, one: all[0] as Finding };
}
/** The stretches of text that a finding points at besides its own place, each with what it says of it. */
const pointsAt = (text: string, { related }: Finding): string[] =>
  related.map(({ start, end, message }) => `${text.slice(start, end)}: ${message}`);

describe('protection-untested', () => {
  const rule = 'protection-untested';
  const bare = 'sensor-model tern-beam "Beam that nobody can test" {\n  kind beam\n  output relay\n  measure D\n}\n';
  const opening = sensor('other-beam', 'finch-relay', 'watches opening\n  height 200 mm');
  const cases: Record<string, readonly [parts: readonly string[], says: string]> = {
    'a panel that cannot test': [
      [relay, edge, panel('wire low-beam to S1 S0\n  wire west-edge to R1 R0', 'marram-one')],
      '“low-beam”: marram-one cannot test a relay output.',
    ],
    'a test input that is not wired': [
      [relay, opening, edge, panel('wire low-beam to G1 G0\n  wire other-beam to G2 G0\n  wire west-edge to E1 E0')],
      '“low-beam”: its test input is not wired to a test output.',
    ],
    'a beam without a test input': [
      [
        bare,
        sensor('low-beam', 'tern-beam', 'watches closing\n  height 200 mm'),
        edge,
        panel('wire low-beam to G1 G0\n  wire west-edge to E1 E0'),
      ],
      '“low-beam”: it has no test input.',
    ],
    'a loop without a terminator': [
      [
        relay,
        sensor('west-edge', 'finch-edge', 'watches closing\n  on west closing-edge'),
        panel('wire low-beam to G1 G0\n  wire low-beam test to X1 V0\n  wire west-edge to E1 E0'),
      ],
      '“west-edge”: its loop has no terminator, so a cut cable goes unseen.',
    ],
  };
  for (const [name, [parts, says]] of Object.entries(cases))
    test(`${name}: it is named, with why, and nothing else is`, () => {
      const { text, all, one } = found(rule, site('rules europe\n  users public'), leaf, fobs, ...parts, dwell);
      expect(all.filter(({ severity }) => severity === 'error').length).toBe(1);
      expect(one.what).toBe(`What protects “west” is not tested before each movement, and the gate moves by itself: ${says}`);
      expect(text.slice(one.start, one.end)).toBe(`sensor ${/“(.+?)”/.exec(says)?.[1] ?? ''}`);
      expect(pointsAt(text, one)).toEqual(['dwell 20 s: it moves by itself', 'leaf west: the leaf that relies on it']);
      // An impulse sets a leaf moving that nobody may look at any more.
      const commanded = found(rule, site('rules europe\n  users public'), leaf, fobs, ...parts);
      expect(commanded.one.what).toBe(`What protects “west” is not tested before each movement: ${says}`);
      expect(pointsAt(commanded.text, commanded.one)).toEqual(['acts impulse: this commands it', 'leaf west: the leaf that relies on it']);
    });
  test('one that tells nobody anything is not named', () => {
    const { one } = found(
      rule,
      site('rules europe\n  users public'),
      leaf,
      fobs,
      relay,
      sensor('exit-loop', 'finch-loop', 'watches closing'),
      edge,
      panel('wire low-beam to G1 G0\n  wire exit-loop to K1 K0\n  wire west-edge to E1 E0'),
      dwell,
    );
    expect(one.what).not.toContain('exit-loop');
  });
  test('where nobody says who is near, it may be anybody', () => {
    expect(
      found(rule, site('rules europe'), leaf, fobs, relay, edge, panel('wire low-beam to G1 G0\n  wire west-edge to E1 E0'), dwell).all
        .length,
    ).toBe(1);
  });
});

describe('safeguarding-below-minimum', () => {
  const rule = 'safeguarding-below-minimum';
  const wired = [edge, panel('wire west-edge to E1 E0')];
  test('points at the way of control that asks for most, and at the people', () => {
    const seen = 'control button {\n  by push-button\n  acts impulse\n  sight full\n}\n';
    const { text, all, one } = found(rule, site('rules europe\n  users limited'), leaf, seen, fobs, ...wired);
    expect(all.length).toBe(1);
    expect(one.what).toBe(
      'The closing edge of “west” has measure C, but “fobs” (impulse, gate not in view) with a limited group of people near needs (C and D) or E.',
    );
    expect(pointsAt(text, one)).toEqual(['acts impulse: this way of control asks for it', 'users limited: and these users']);
    expect(one.related[0]?.start).toBe(text.lastIndexOf('acts impulse'));
  });
  test('of several that ask for as much, the first is named', () => {
    const beam = [relay, panel('wire low-beam to G1 G0')];
    for (const users of ['trained', 'public'])
      expect(
        found(rule, site(`rules europe\n  users ${users}`), leaf, 'control pad {\n  acts impulse\n}\n', fobs, ...beam).one.what,
      ).toContain('but “pad” (');
  });
});

describe('closing-edge-unguarded', () => {
  const rule = 'closing-edge-unguarded';
  const people = site('rules europe\n  users public');
  test('says what is there and is not heeded', () => {
    const { text, one } = found(
      rule,
      people,
      leaf,
      fobs,
      edge,
      relay,
      sensor('back-beam', 'finch-relay', 'watches opening\n  height 200 mm'),
      panel('link H1 H0'),
    );
    expect(pointsAt(text, one)).toEqual([
      'sensor west-edge: “west-edge” is meant to, but the panel does not heed it',
      'sensor low-beam: “low-beam” is meant to, but the panel does not heed it',
    ]);
    expect(one.remedy).toBe('Wire the sensor that is there to an input that can read it, and register it where the panel asks for that.');
  });
  test('says what another panel hears', () => {
    const { text, one } = found(
      rule,
      people,
      leaf,
      fobs,
      relay,
      panel('wire low-beam to G1 G0'),
      panel('wire west-drive to D1 D2', 'marram-one', 'second'),
    );
    expect(pointsAt(text, one)).toEqual(['sensor low-beam: “low-beam” is meant to, but it reports to a panel that does not drive “west”']);
  });
  test('where nothing is there, it says what to fit', () => {
    const { one } = found(rule, people, leaf, fobs, panel('link H1 H0'));
    expect(one.related).toEqual([]);
    expect(one.remedy).toContain('Fit a pressure-sensitive edge');
  });
});

describe('pedestrian-opening-unguarded', () => {
  const rule = 'pedestrian-opening-unguarded';
  const part = (dwells: string): string => `motion {\n  pedestrian west to 60 %${dwells}\n}\n`;
  test('closing by itself, it asks for tested devices and says so', () => {
    const { text, one } = found(
      rule,
      site('rules europe\n  users trained\n  sight full'),
      leaf,
      fobs,
      edge,
      panel('wire west-edge to E1 E0'),
      part(' dwell 10 s'),
    );
    expect(one.what).toBe('The pedestrian opening of “west” needs (C and D) or E; the sensors that watch it give measure none.');
    expect(one.remedy).toContain('each of them tested before the leaf closes');
    expect(pointsAt(text, one)).toEqual(['leaf west: the leaf']);
  });
  test('commanded in view of the gate, it asks for less, and for tested devices all the same', () => {
    const { one } = found(
      rule,
      site('rules europe\n  users limited\n  sight full'),
      leaf,
      fobs.replace('acts', 'by push-button\n  acts'),
      edge,
      panel('wire west-edge to E1 E0'),
      part(''),
    );
    expect(one.what).toContain('needs C or E;');
    expect(one.remedy).toContain('each of them tested before the leaf closes');
  });
  test('where no control is stated, it is taken to be one out of view', () => {
    expect(found(rule, site('rules europe\n  users limited\n  sight full'), leaf, panel('link H1 H0'), part('')).one.what).toContain(
      'needs (C and D) or E;',
    );
  });
});

describe('hold-to-run-misuse', () => {
  test('points at the people, and says what to use', () => {
    const held = 'control button {\n  by push-button\n  acts hold-to-run\n  sight full\n}\n';
    for (const [users, says] of [
      ['public', 'where the public is near'],
      ['limited', 'for a limited group'],
    ] as const) {
      const { text, all, one } = found('hold-to-run-misuse', site(`rules europe\n  users ${users}`), leaf, held);
      expect(all.length).toBe(1);
      expect(one.severity).toBe('error');
      expect(one.what).toContain(says);
      expect(pointsAt(text, one)).toEqual([`users ${users}: these are the users`]);
    }
  });
  test('out of view it is an error, by whoever it is held and under any rules', () => {
    for (const rules of ['europe', 'north-america'])
      for (const [sight, by] of [
        ['none', 'by push-button'],
        ['full', 'by transmitter'],
        ['full', 'by intercom'],
        ['full', 'by clock'],
        ['full', '# by nobody knows what'],
      ]) {
        const { all } = found(
          'hold-to-run-misuse',
          site(`rules ${rules}\n  users trained\n  sight ${sight}`),
          leaf,
          `control button {\n  ${by}\n  acts hold-to-run\n}\n`,
        );
        expect(
          all.map(({ severity }) => severity),
          `${rules}, ${by}`,
        ).toEqual(['error']);
      }
  });
  test('beside protection that needs nobody’s eyes, nothing is said; beside one that is not tested it is', () => {
    const people = site('rules europe\n  users limited\n  sight none');
    const held = 'control key {\n  by key-switch\n  acts hold-to-run\n}\n';
    const beside = (test: string): number =>
      found('hold-to-run-misuse', people, leaf, edge, relay, held, panel(`wire low-beam to G1 G0\n  ${test}\n  wire west-edge to E1 E0`))
        .all.length;
    expect(beside('wire low-beam test to X1 V0')).toBe(0);
    expect(beside('# not tested')).toBe(1);
  });
  test('who may be near is a matter of the rules of Europe', () => {
    const held = 'control button {\n  by push-button\n  acts hold-to-run\n  sight full\n}\n';
    expect(found('hold-to-run-misuse', site('rules north-america\n  users public'), leaf, held).all).toEqual([]);
  });
});

describe('what is missing is said elsewhere', () => {
  const six = [
    'closing-edge-unguarded',
    'safeguarding-below-minimum',
    'protection-untested',
    'pedestrian-opening-unguarded',
    'hold-to-run-misuse',
    'entrapment-protection-below-minimum',
  ];
  const held = 'control button {\n  by push-button\n  acts hold-to-run\n  sight full\n}\n';
  const motion = 'motion {\n  pedestrian west to 60 %\n}\n';
  const flagged = (...parts: string[]): string[] =>
    judge(head + parts.join('')).findings.flatMap(({ rule, severity }) => (six.includes(rule) ? [`${rule} ${severity}`] : []));
  const wired = edge + panel('wire west-edge to E1 E0');

  test('without a site, without rules, without users, the table decides nothing', () => {
    for (const where of ['', site('sight none'), site('users public\n  sight full'), site('rules europe\n  sight full')]) {
      expect(
        flagged(where, leaf, wired, held, motion).filter((one) => !one.includes('warning')),
        where,
      ).toEqual([]);
      expect(flagged(where, leaf, wired, fobs, motion), where).toEqual([]);
    }
  });
  test('a bare leaf is flagged by one of them, whatever else is stated', () => {
    for (const where of ['', site('sight none'), site('rules europe\n  users public')])
      expect(flagged(where, leaf, fobs), where).toEqual(['closing-edge-unguarded error']);
    expect(flagged(site('rules north-america\n  users public'), leaf, fobs)).toEqual([
      'entrapment-protection-below-minimum error',
      'entrapment-protection-below-minimum warning',
    ]);
  });
  test('a control that does not say how it acts, and a part opening of a leaf that is not there', () => {
    const people = site('rules europe\n  users public');
    expect(flagged(people, leaf, wired, 'control button {\n  by push-button\n}\n')).toEqual([]);
    expect(flagged(people, wired.replace('on west closing-edge', ''), 'motion {\n  pedestrian west to 60 %\n}\n')).toEqual([]);
  });
  test('a part opening needs tested devices, however it is commanded', () => {
    const strip = 'sensor-model tern-strip "Edge with a contact" {\n  kind edge\n  output relay\n  measure C\n}\n';
    const one = sensor('west-edge', 'tern-strip', 'watches closing, pedestrian\n  on west closing-edge') + panel('wire west-edge to G1 G0');
    const people = site('rules europe\n  users trained\n  sight full');
    expect(flagged(people, strip, leaf, one, fobs, motion)).toEqual(['protection-untested error', 'pedestrian-opening-unguarded error']);
    const tested =
      sensor('west-edge', 'finch-edge', 'watches closing, pedestrian\n  on west closing-edge\n  terminator 8.2 kohm') +
      panel('wire west-edge to E1 E0');
    expect(flagged(people, leaf, tested, fobs, motion)).toEqual([]);
    // Closing by itself, the edge alone is not enough.
    expect(flagged(people, leaf, tested, fobs, motion.replace('60 %', '60 % dwell 9 s'))).toEqual([
      'safeguarding-below-minimum error',
      'pedestrian-opening-unguarded error',
    ]);
  });
});
