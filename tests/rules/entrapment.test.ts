// Entrapment under the rules of North America: which means count in which movement, and where a swing leaf needs none to open.
import { describe, expect, it } from 'vitest';
import { type Finding, marginsOf } from '../../server/rules/index.ts';
import { judge, lineOf } from '../kit/pages.ts';

const minimum = 'entrapment-protection-below-minimum';
const found = (rule: string, text: string): readonly Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);
const said = (rule: string, text: string): string[] => found(rule, text).map(({ severity, what }) => `${severity}: ${what}`);

const america = 'site "Example" {\n  rules north-america\n  users public\n}\n';
const head = `language 1\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n`;
const shaft = (name: string, more = ''): string =>
  `drive-model ${name} {\n  kind direct\n  rotation 110 deg\n  shaft-speed 6 deg/s\n  ${more}\n}\n`;
const beam = 'sensor low-beam : finch-beam {\n  watches closing opening\n}\n';
const swing = (leaf: string): string => `leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n  ${leaf}\n}\n`;
/** A swing leaf whose drive senses obstacles, with a beam on closing: two means while closing, one while opening. */
const opening = (leaf: string): string[] =>
  said(
    minimum,
    `${head}${america}${shaft('sensing', 'senses-obstacles')}${swing(leaf)}
drive floor : sensing {
  moves west
}
sensor low-beam : finch-beam {
  watches closing
}
panel main : rowan-pair {
  wire low-beam to T1 T0
  registered low-beam
}
`,
  );
const oneMeans = 'west” has only type A against entrapment while opening; two independent ones are needed wherever there is a risk.';

describe('a swing leaf that opens', () => {
  it.each([
    ['comes within 16 in of what stands behind it', 'room-when-open 16 in', 'error'],
    ['leaves more than that, but less than a body needs', 'room-when-open 17 in\n  hinge-guard 300 mm', 'warning'],
    ['has room, and nothing is said of its hinge', 'room-when-open 1 m', 'warning'],
    ['has a hinge that is covered, and nothing is said of the room', 'hinge-guard 300 mm', 'warning'],
    ['closes the gap at its hinge on the way', 'room-when-open 1 m\n  hinge-gap 60 mm least 12 mm greatest 60 mm', 'warning'],
  ])('needs two means where it %s', (_, leaf, severity) => {
    expect(opening(leaf)).toEqual([`${severity}: “${oneMeans}`]);
  });

  it.each([
    ['the gap at its hinge is covered', 'room-when-open 500 mm\n  hinge-gap 60 mm least 12 mm greatest 60 mm\n  hinge-guard 300 mm'],
    [
      'the gap at its hinge stays closed, though not the one under it',
      'room-when-open 500 mm\n  hinge-gap 6 mm least 6 mm greatest 8 mm\n  ground-gap 60 mm',
    ],
    ['only the gap under it is left', 'room-when-open 500 mm\n  hinge-guard 300 mm\n  ground-gap 60 mm'],
    ['the gap at its hinge is least when it is closed', 'room-when-open 1 m\n  hinge-gap 12 mm least 12 mm greatest 60 mm'],
  ])('needs none where there is room and %s', (_, leaf) => {
    expect(opening(leaf)).toEqual([]);
  });
});

describe('what counts as a means', () => {
  const twoDrives = (first: string, second: string, leaf = swing('')): string[] =>
    said(
      minimum,
      `${head}${america}${shaft('one', first)}${shaft('other', second)}${leaf}
drive upper : one {
  moves west
}
drive lower : other {
  moves west
}
${beam}
panel main : rowan-pair {
  wire low-beam to T1 T0
  registered low-beam
}
`,
    );
  const onlyBeam = [
    'error: “west” has only type B1 against entrapment while closing; two independent ones are needed wherever there is a risk.',
    'warning: “west” has only type B1 against entrapment while opening; two independent ones are needed wherever there is a risk.',
  ];

  it('is the force that every drive of a swing leaf limits, not only one of them', () => {
    expect(twoDrives('limits-force', 'limits-force')).toEqual([]);
    expect(twoDrives('limits-force', '')).toEqual(onlyBeam);
  });

  it('is for a sliding leaf no force that its drive limits, and that is said only where one does', () => {
    const slides = (first: string, second: string): string[] =>
      twoDrives(first, second, swing('').replace('opens inward 90 deg', 'slides left 4 m')).map((one) =>
        one.replace(/^.*needed wherever there is a risk\./, ''),
      );
    expect(slides('', '')).toEqual(['', '']);
    const clutch = ' That its drive limits its force (type C) counts for swing leaves only, from memory.';
    expect(slides('limits-force', '')).toEqual([clutch, clutch]);
  });

  it('is the force that one drive limits by itself, and nothing is said of sliding leaves', () => {
    expect(
      said(
        minimum,
        `${head}${america}${shaft('soft', 'limits-force')}${swing('room-when-open 1 m\n  hinge-guard 300 mm')}drive floor : soft {\n  moves west\n}\n`,
      ),
    ).toEqual([
      'error: “west” has only type C against entrapment while closing; two independent ones are needed wherever there is a risk.',
    ]);
  });

  const withSensor = (model: string): readonly Finding[] =>
    found(
      minimum,
      `${head}${america}${shaft('sensing', 'senses-obstacles')}sensor-model other {\n  ${model}\n}\n${swing('room-when-open 1 m\n  hinge-guard 300 mm')}
drive floor : sensing {
  moves west
}
sensor eye : other {
  watches closing
}
panel main : rowan-pair {
  wire eye to G1 G0
  wire eye test to X1 V0
}
`,
    );
  it('is a beam that the panel tests', () =>
    expect(withSensor('kind beam\n  output relay\n  contact normally-closed\n  testable')).toEqual([]));
  it('is no loop in the ground, tested or not, and no device of which nobody says what it is', () => {
    for (const model of [
      'kind loop\n  output relay\n  contact normally-closed\n  testable',
      'output relay\n  contact normally-closed\n  testable',
    ]) {
      const [finding, ...more] = withSensor(model);
      expect(finding?.what).toBe(
        '“west” has only type A against entrapment while closing; two independent ones are needed wherever there is a risk.',
      );
      expect(finding?.related).toEqual([]);
      expect(more).toEqual([]);
    }
  });
  it('points to a sensor that is meant to be one and is not tested, or not heeded; never to one of an unknown kind', () => {
    const related = (model: string): string[] => withSensor(model).flatMap((finding) => finding.related.map(({ message }) => message));
    expect(related('kind beam\n  output relay\n  contact normally-closed')).toEqual(['“eye” is not monitored: it has no test input']);
    expect(related('kind beam\n  output two-wire')).toEqual(['“eye” is meant to be one, but the panel does not heed it']);
    expect(related('output two-wire')).toEqual([]);
  });
});

it('asks nothing of a leaf that nothing drives, sliding or not', () => {
  expect(
    said(minimum, `${head}${america}leaf slide {\n  width 5 m\n  mass 400 kg\n  slides left 4.8 m\n  infill-opening slot 4 in\n}\n`),
  ).toEqual([]);
});

describe('what the site does not say', () => {
  const rule = 'not-judged';
  const stated = america.replace('users public', 'users public\n  usage-class II\n  pedestrian-entrance separate');
  it('is told with the controls that are fixed and do not say how far from the gate they are', () => {
    const text = `${head}${stated}control keypad {\n  by keypad\n  acts impulse\n}\ncontrol fob {\n  by transmitter\n  acts impulse\n}\n`;
    expect(said(rule, text)).toEqual([
      'warning: Not judged: what the rules of North America ask of the site. The block “site” does not state “signs”.',
      'warning: Not judged: what the rules of North America ask of the site. “keypad” does not state “reach”.',
    ]);
    expect(found(rule, text).map(({ lacks }) => lacks)).toEqual([['signs'], ['reach']]);
  });
  it('is not what stands there and cannot be read', () => {
    expect(said(rule, head + stated.replace('users public', 'users public\n  signs somewhere'))).toEqual([]);
  });
});

describe('openings of a leaf', () => {
  const rule = 'infill-opening-too-wide';
  const rack = 'drive-model rack {\n  kind rack\n  speed 0.2 m/s\n}\n';
  const leaf = (infill: string): string => `leaf slide {\n  width 5 m\n  mass 400 kg\n  slides left 4.8 m\n  infill-opening ${infill}\n}\n`;
  const drive = 'drive push : rack {\n  moves slide\n}\n';
  it('are held to 2.25 in, and no wider', () => {
    expect(said(rule, head + america + rack + leaf('slot 57.15 mm') + drive)).toEqual([]);
    const text = head + america + rack + leaf('slot 57.2 mm') + drive;
    expect(said(rule, text)).toEqual(['error: The openings of “slide” are 57.2 mm wide; no opening may be wider than 57.15 mm (2.25 in).']);
    const analysis = judge(text);
    expect(analysis.text.split('\n')[lineOf(analysis, found(rule, text)[0]?.start ?? 0) - 1]).toContain('slot 57.2 mm');
  });
  it.each([
    ['a leaf that nothing drives', head + america + leaf('slot 100 mm')],
    ['a leaf whose face is closed', head + america + rack + leaf('closed 100 mm') + drive],
    ['a leaf of which no size is stated', head + america + rack + leaf('slot') + drive],
    ['a leaf under European rules', head + america.replace('north-america', 'europe') + rack + leaf('slot 100 mm') + drive],
  ])('are not held to it for %s', (_, text) => {
    expect(said(rule, text)).toEqual([]);
    expect(marginsOf(judge(text).installation).filter((margin) => margin.rule.name === rule)).toEqual([]);
  });
});
