// How far a leaf may run on after its edge has tripped: who is judged, at the limit, and what is said to do.
// Full speed 0.4 m/s, stopped in 0.5 s: 100 mm of braking; each 50 ms of reaction make 20 mm more.
import { describe, expect, test } from 'vitest';
import { type Finding, marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { accountOf } from '../../server/safeguards/index.ts';
import { heard } from '../kit/heard.ts';
import { judge, saidOf } from '../kit/pages.ts';

const rule = 'edge-overtravel-too-long';
const drive = 'drive-model quick-rack {\n  kind rack\n  speed 0.4 m/s\n  stops-in 500 ms\n}\n';
const model = (name: string, reaction: number | undefined, deformation: number | undefined): string =>
  `sensor-model ${name} {\n  kind edge\n  output resistive\n  terminator 8.2 kohm\n  measure C\n${reaction === undefined ? '' : `  reaction ${reaction} ms\n`}${deformation === undefined ? '' : `  deformation ${deformation} mm\n`}}\n`;
const site = 'site "Example" {\n  rules europe\n  users limited\n}\n';
const leaf = 'leaf slide {\n  width 6 m\n  mass 500 kg\n  slides left 5.6 m\n}\ndrive rack : quick-rack {\n  moves slide\n}\n';
const edge = (name: string, of: string, way: 'closing' | 'opening'): string =>
  `sensor ${name} : ${of} {\n  watches ${way}\n  on slide ${way}-edge\n}\n`;
const text = (...blocks: string[]): string =>
  'language 1\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n' + drive + site + leaf + blocks.join('');
/** The same with a panel that hears every edge. */
const heardText = (...blocks: string[]): string => heard(text(...blocks));
const findingsOf = (file: string): Finding[] => judge(file).findings.filter((finding) => finding.rule === rule);
const saysOf = (file: string): string[] => findingsOf(file).map(({ severity, what }) => `${severity}: ${what}`);
const marginsIn = (file: string) =>
  marginsOf(judge(file).installation).flatMap(({ rule: { name }, held, value, limit, kept, at }) =>
    name === rule
      ? [
          `${held.name} ${Math.round(value * 1000)} of ${Math.round(limit * 1000)} mm${kept ? '' : ', not kept'}: ${file.slice(at.start, at.end)}`,
        ]
      : [],
  );

describe('an edge', () => {
  test.each(['closing', 'opening'] as const)('that leads while %s gives as much as the leaf runs on, and no less', (way) => {
    const just = heardText(model('thin-edge', 0, 100), edge('front', 'thin-edge', way));
    const short = heardText(model('thin-edge', 0, 99), edge('front', 'thin-edge', way));
    expect(saysOf(just).filter((said) => said.startsWith('error'))).toEqual([]);
    expect(saysOf(short).filter((said) => said.startsWith('error'))).toEqual([
      `error: While ${way}, “slide” runs on 100 mm after “front” has tripped with 40 J in it, and that edge gives 99 mm.`,
    ]);
    expect(marginsIn(just)).toContain(`run-on when ${way} 100 of 100 mm: on slide ${way}-edge`);
    expect(marginsIn(short)).toContain(`run-on when ${way} 100 of 99 mm, not kept: on slide ${way}-edge`);
  });
  test('on either side is judged by itself', () => {
    const both = heardText(model('thin-edge', 50, 110), edge('front', 'thin-edge', 'closing'), edge('back', 'thin-edge', 'opening'));
    expect(saysOf(both).map((said) => said.slice(0, 20))).toEqual(['error: While closing', 'error: While opening']);
    const thick = heardText(
      model('thin-edge', 50, 110),
      model('thick-edge', 50, 120),
      edge('front', 'thick-edge', 'closing'),
      edge('back', 'thin-edge', 'opening'),
    );
    expect(saysOf(thick).map((said) => said.slice(0, 20))).toEqual(['error: While opening']);
  });
  test('that leads while opening is judged where of the one for closing too little is stated', () => {
    const file = heardText(
      model('dumb-edge', undefined, 110),
      model('thin-edge', 50, 110),
      edge('front', 'dumb-edge', 'closing'),
      edge('back', 'thin-edge', 'opening'),
    );
    expect(saysOf(file)).toEqual([
      'error: While opening, “slide” runs on 120 mm after “back” has tripped with 40 J in it, and that edge gives 110 mm.',
    ]);
  });
  test('of which too little is stated is not judged', () => {
    expect(saysOf(heardText(model('dumb-edge', 50, undefined), edge('front', 'dumb-edge', 'closing')))).toEqual([]);
    expect(marginsIn(heardText(model('dumb-edge', 50, undefined), edge('front', 'dumb-edge', 'closing')))).toEqual([]);
  });
  test('is not judged under the rules of North America, and shows no margin there', () => {
    const file = heardText(model('thin-edge', 50, 60), edge('front', 'thin-edge', 'closing')).replace(
      'rules europe',
      'rules north-america',
    );
    expect(saysOf(file)).toEqual([]);
    expect(marginsIn(file)).toEqual([]);
  });
  test('is judged where the site states no rules', () => {
    expect(
      saysOf(heardText(model('thin-edge', 50, 60), edge('front', 'thin-edge', 'closing')).replace('  rules europe\n', '')),
    ).toHaveLength(1);
  });
});

describe('what to do', () => {
  const remedyOf = (reaction: number, deformation: number): string | undefined =>
    findingsOf(heardText(model('thin-edge', reaction, deformation), edge('front', 'thin-edge', 'closing')))[0]?.remedy;
  test('names the share of the speed at which the edge gives enough, in whole per cent', () => {
    // 100·x² = 64, 81: the share is whole, and stays so.
    expect(remedyOf(0, 64)).toBe('At most 80 % of the speed, a drive that stops faster, or an edge that gives 100 mm are each enough.');
    expect(remedyOf(0, 81)).toBe('At most 90 % of the speed, a drive that stops faster, or an edge that gives 100 mm are each enough.');
    // 100·x² + 20·x = 60: x = 0.681; rounded down.
    expect(remedyOf(50, 60)).toBe('At most 68 % of the speed, a drive that stops faster, or an edge that gives 120 mm are each enough.');
  });
  test('names no faster stop where the leaf has squashed the edge before the drive brakes', () => {
    // 0.4 m/s for 0.2 s are 80 mm. 100·x² + 80·x = 70: x = 0.528.
    expect(remedyOf(200, 70)).toBe('At most 52 % of the speed or an edge that gives 180 mm is enough.');
    expect(remedyOf(200, 81)).toContain('a drive that stops faster');
  });
});

/** A panel that tells the drive to stop 25 ms after a control is let go: 10 mm. */
const answering = 'panel-model answers {\n  reaction 25 ms\n}\npanel main : answers {\n  isolator "beside it"\n}\n';

describe('a leaf without an edge for closing', () => {
  const curtain = (wire: string): string =>
    `sensor front : finch-curtain {\n  watches closing\n}\npanel main : rowan-pair {\n  ${wire}\n  registered front\n}\n`;
  test('may run on 50 mm', () => {
    const stopsIn = (ms: number): string => text(answering).replace('stops-in 500 ms', `stops-in ${ms} ms`);
    expect(saysOf(stopsIn(200))).toEqual([]);
    expect(marginsIn(stopsIn(200))).toEqual(['run-on when closing 50 of 50 mm: leaf slide']);
    expect(saysOf(stopsIn(205))).toEqual([
      'warning: “slide” has no edge that stops it, and runs on 51 mm after it is told to stop with 40 J in it; 50 mm are the most where that is dangerous.',
    ]);
  });
  test('is not judged where the panel does not say how soon it answers', () => {
    const mute = answering.replace('  reaction 25 ms\n', '');
    expect(saysOf(text(mute))).toEqual([]);
    expect(marginsIn(text(mute))).toEqual([]);
    const key = 'control key {\n  by key-switch\n  acts hold-to-run\n  sight full\n}\n';
    const open = accountOf(judge(text(mute, key)).installation).open.filter(({ subject }) => subject === 'run-on');
    expect(open.flatMap(({ lacks }) => lacks.map(({ block, word }) => `${block}.${word}`))).toEqual(['panel-model.reaction']);
    expect(accountOf(judge(text(answering, key)).installation).open.filter(({ subject }) => subject === 'run-on')).toEqual([]);
  });
  test('may run on where a sensor that the panel heeds lets it touch nobody', () => {
    expect(saysOf(text(curtain('wire front to T1 T0')))).toEqual([]);
    expect(marginsIn(text(curtain('wire front to T1 T0')))).toEqual([]);
    expect(saysOf(text(curtain('link H1 H0')))).toHaveLength(1);
  });
  test('whose sensor is heeded, though nothing tests it, has more to be told than this', () => {
    const untested =
      'sensor-model relay-curtain {\n  kind curtain\n  output relay\n  contact normally-closed\n  measure E\n}\nsensor front : relay-curtain {\n  watches closing\n}\npanel main : rowan-pair {\n  wire front to G1 G0\n}\n';
    expect(saysOf(text(untested))).toEqual([]);
  });
  test('that is only ever held is judged by how far it runs on when let go, and not twice', () => {
    const key = 'control key {\n  by key-switch\n  acts hold-to-run\n  sight full\n}\n';
    const fobs = 'control fobs {\n  by transmitter\n  acts impulse\n}\n';
    const rulesOf = (file: string): string[] =>
      judge(file)
        .findings.filter(({ what }) => /runs on/.test(what))
        .map((finding) => finding.rule);
    expect(rulesOf(text(answering, key))).toEqual(['hold-to-run-overtravels']);
    expect(marginsIn(text(answering, key))).toEqual([]);
    // Who sends an impulse does not stay to let go.
    expect(rulesOf(text(answering, key, fobs)).sort()).toEqual([rule, 'hold-to-run-overtravels']);
    // Without European rules nobody else judges it.
    expect(rulesOf(text(answering, key).replace('  rules europe\n', ''))).toEqual([rule]);
  });
  test('does not hide an edge for opening that gives too little', () => {
    const file = heardText(model('thin-edge', 50, 110), edge('back', 'thin-edge', 'opening'), curtain('wire front to T1 T0'));
    expect(saysOf(file)).toEqual([
      'error: While opening, “slide” runs on 120 mm after “back” has tripped with 40 J in it, and that edge gives 110 mm.',
    ]);
    expect(marginsIn(file)).toEqual(['run-on when opening 120 of 110 mm, not kept: on slide opening-edge']);
  });
  test('whose mass is not known says nothing of its energy', () => {
    expect(saidOf(judge(text(answering).replace('  mass 500 kg\n', '')), ruleNamed(rule) as Rule)).toContain(
      'runs on 110 mm after it is told to stop; 50 mm are the most',
    );
  });
});
