// Hazards found from geometry and what covers them; the numbers of North America, each at its boundary.
// Gaps: EN ISO 13854 (AUVA glossary “Safety Distances”); 8 mm: ASR A1.7, section 6; reaching through: DGUV Information
// 208-022, Table 2; past a surface: BGR 232, section 4.5. 1 ft/s in classes I and II, two means in each direction: UL 325 as
// quoted in DASMA TDS 353. 2.25 in, a separate entrance: CPSC, Operation Safe Gate, 2018. 6 ft, 4 in, types C and D: from
// memory, and so never an error. Hold-to-run 0.5 m/s: EN 12453.
import { describe, expect, it } from 'vitest';
import { caught } from '../../server/figures/hazards/gaps.ts';
import { hazardsOf } from '../../server/figures/hazards/working.ts';
import { judgedHazardsOf } from '../../server/safeguards/index.ts';
import { judge } from '../kit/pages.ts';

interface Shape {
  readonly rules?: string;
  readonly users?: string;
  readonly site?: readonly string[];
  readonly leaf?: readonly string[];
  readonly slides?: boolean;
  readonly model?: readonly string[];
  readonly more?: readonly string[];
}

/** A gate of one leaf, driven by a shaft or a rack. */
function gate({ rules = 'europe', users = 'limited', site = [], leaf = [], slides = false, model = [], more = [] }: Shape): string {
  const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
  return [
    'language 1\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n',
    block(
      'drive-model push',
      slides
        ? ['kind rack', 'speed 0.2 m/s', ...model]
        : ['kind direct', 'rotation 180 deg', 'shaft-speed 6 deg/s', ...model].filter(
            (line, i, all) => !all.some((other, j) => j > i && other.split(' ')[0] === line.split(' ')[0]),
          ),
    ),
    block('site "Example"', [`rules ${rules}`, `users ${users}`, ...site]),
    block('leaf west', ['width 2 m', 'mass 150 kg', slides ? 'slides left 2 m' : 'opens inward 90 deg', ...leaf]),
    block('drive push-west : push', ['moves west']),
    ...more,
  ].join('\n');
}

const findings = (shape: Shape, rule: string): string[] =>
  judge(gate(shape)).findings.flatMap((finding) => (finding.rule === rule ? [finding.severity] : []));
const hazards = (shape: Shape): string[] =>
  hazardsOf(judge(gate(shape)).installation.leaves[0] as never)?.found.map(({ kind }) => kind) ?? [];

describe('a gap', () => {
  it.each([
    // Least and greatest in mm, and who is caught.
    [25, 25, ['hand', 'arm']],
    [24, 60, ['finger']],
    [0, 8, []],
    [0, 8.1, ['finger']],
    [100, 119, ['foot', 'arm', 'leg']],
    [120, 120.1, ['leg', 'body', 'head']],
    [300, 400, ['body']],
    [500, 900, []],
  ])('from %d to %d mm catches %j', (least, greatest, parts) => {
    const found = caught(least / 1000, greatest / 1000);
    for (const part of parts) expect(found).toContain(part);
    if (parts.length === 0) expect(found).toEqual([]);
    if (greatest <= 20) for (const part of found) expect(part).toBe('finger');
    if (greatest <= 120) expect(found.includes('body') || found.includes('head')).toBe(false);
  });
});

describe('hazards from the shape', () => {
  it('are none but the closing edge where nothing else is stated', () => expect(hazards({})).toEqual(['closing-edge']));
  it.each([
    ['hinge-gap 8 mm least 7 mm greatest 8 mm', false],
    ['hinge-gap 8 mm least 7 mm greatest 8.2 mm', true],
    ['hinge-gap 24 mm least 24 mm greatest 60 mm', true],
    // Alike at every angle: nothing is crushed.
    ['hinge-gap 24 mm least 24 mm greatest 24 mm', false],
    ['hinge-gap 500 mm least 500 mm greatest 600 mm', false],
    ['hinge-gap 499 mm least 499 mm greatest 600 mm', true],
  ])('at the hinge: %s', (line, expected) => {
    expect(hazards({ leaf: [line] }).includes('hinge')).toBe(expected);
    expect(findings({ leaf: [line] }, 'hazard-uncovered')).toEqual(expected ? ['error'] : []);
  });
  it.each([
    [['ground-gap 120 mm'], []],
    [['ground-gap 119 mm'], ['note']],
    [['ground-gap 8 mm'], ['note']],
    [['ground-gap 7.9 mm'], []],
    // What shrinks on the way is more than a note, and no more than a warning, being from memory.
    [['ground-gap 119 mm', 'slope 1 %'], ['warning']],
  ])('under a swing leaf: %s', (lines, expected) => expect(findings({ leaf: lines }, 'hazard-uncovered')).toEqual(expected));
  it.each([
    ['public', 'ground-gap 49 mm', ['error']],
    ['public', 'ground-gap 50 mm', ['note']],
    ['public', 'ground-gap 119 mm', ['note']],
    ['public', 'ground-gap 120 mm', []],
    ['public', 'ground-gap 9 mm', ['error']],
    ['public', 'ground-gap 8 mm', []],
    ['limited', 'ground-gap 30 mm', ['note']],
    ['trained', 'ground-gap 30 mm', ['note']],
  ])('under a sliding leaf, %s: %s', (users, line, expected) =>
    expect(findings({ slides: true, users, leaf: [line] }, 'hazard-uncovered')).toEqual(expected),
  );
  it.each([
    ['europe', 'public', 'passes post 40 mm', ['error']],
    ['europe', 'limited', 'passes post 40 mm', ['note']],
    ['europe', 'public', 'passes fence 199 mm', ['error']],
    ['europe', 'public', 'passes fence 200 mm', []],
    ['europe', 'public', 'passes post 8 mm', []],
    ['europe', 'public', 'passes post 8.1 mm', ['error']],
    // 2¼ in are 57.15 mm.
    ['north-america', 'public', 'passes post 57.1 mm', []],
    ['north-america', 'public', 'passes post 57.2 mm', ['error']],
  ])('past which a closed leaf runs, %s, %s: %s', (rules, users, line, expected) =>
    expect(findings({ slides: true, rules, users, leaf: ['infill-opening closed', line] }, 'hazard-uncovered')).toEqual(expected),
  );
  it.each([
    ['infill-opening slot 12 mm', 'passes post 100 mm', ['note']],
    ['infill-opening slot 12 mm', 'passes post 99 mm', ['error']],
    ['infill-opening slot 12.1 mm', 'passes fence 119 mm', ['error']],
    ['infill-opening slot 20.1 mm', 'passes fence 849 mm', ['error']],
    // Enough for a grown person, not for a child: from memory.
    ['infill-opening slot 20.1 mm', 'passes fence 850 mm', ['warning']],
    ['infill-opening slot 20.1 mm', 'passes fence 900 mm', []],
    ['infill-opening closed', 'passes fence 10 mm', ['note']],
    ['infill-opening closed', 'passes fence 8 mm', []],
    ['infill-opening slot 40 mm', 'passes wall 200 mm', []],
    ['infill-opening slot 40 mm', 'passes wall 199 mm', ['error']],
    ['infill-opening slot 40 mm', 'passes wall 8 mm', []],
  ])('beside a sliding leaf: %s, %s', (infill, passes, expected) =>
    expect(findings({ slides: true, leaf: [infill, passes] }, 'hazard-uncovered')).toEqual(expected),
  );
  it('asks for the reach of children only where there may be some', () => {
    const shape: Shape = { slides: true, leaf: ['infill-opening slot 20.1 mm', 'passes fence 850 mm'] };
    expect(findings({ ...shape, users: 'trained' }, 'hazard-uncovered')).toEqual([]);
    expect(findings({ ...shape, users: 'public' }, 'hazard-uncovered')).toEqual(['warning']);
  });
});

const strip = (watches: string, wired = true): string[] => [
  `sensor strip : finch-edge {\n  watches ${watches}\n  on west hinge-edge\n  terminator 8.2 kohm\n}\n`,
  `panel main : rowan-pair {\n${wired ? '  wire strip to E1 E0\n' : ''}}\n`,
];
const trap = ['thickness 40 mm', 'hinge-gap 10 mm', 'hinge-offset 0 mm by 0 mm'];

describe('what covers a hazard', () => {
  const atHinge = (more: readonly string[], leaf: readonly string[] = trap) =>
    judgedHazardsOf(judge(gate({ leaf, more })).installation.leaves[0] as never)?.find(({ hazard }) => hazard.kind === 'hinge');
  it('is nothing where there is nothing', () => expect(atHinge([])?.covered).toBe(false));
  it('is an edge there that the panel heeds while the gap shrinks', () => {
    expect(atHinge(strip('closing, opening'))?.covered).toBe(true);
    expect(atHinge(strip('closing'))?.covered).toBe(true);
    expect(atHinge(strip('opening'))?.covered).toBe(false);
    expect(atHinge(strip('closing, opening', false))?.covered).toBe(false);
    expect(atHinge(strip('closing, opening', false))?.notBy.map(({ name }) => name)).toEqual(['strip']);
    expect(atHinge(strip('closing, opening').map((text) => text.replace('hinge-edge', 'closing-edge')))?.covered).toBe(false);
  });
  it('must be there in both movements where the gap hurts in both', () => {
    const under = (watches: string) =>
      judgedHazardsOf(
        judge(gate({ leaf: ['ground-gap 60 mm'], more: strip(watches).map((text) => text.replace('hinge-edge', 'bottom-edge')) }))
          .installation.leaves[0] as never,
      )?.find(({ hazard }) => hazard.kind === 'underside');
    expect(under('closing, opening')?.covered).toBe(true);
    expect(under('closing')?.covered).toBe(false);
    expect(under('closing')?.notBy.map(({ says }) => says)).toEqual(['does not watch opening']);
  });
  it('is a guard, a leaf that touches nobody, a control that is held in view; not a beam, nor a control held out of view', () => {
    const device = (model: string, wire: string, lies = '  guards west hinge\n'): string[] => [
      `sensor eye : ${model} {\n  watches closing, opening\n  height 200 mm\n${lies}}\n`,
      `panel main : rowan-pair {\n  wire eye to ${wire}\n  registered eye\n}\n`,
    ];
    expect(atHinge([], [...trap, 'hinge-guard 300 mm'])?.covered).toBe(true);
    expect(atHinge(device('finch-curtain', 'T1 T0'))?.covered).toBe(true);
    expect(atHinge(device('finch-curtain', 'T1 T0', ''))?.covered, 'across the opening').toBe(false);
    expect(atHinge(device('finch-beam', 'T1 T0'))?.covered).toBe(false);
    const control = (acts: string, sight: string): string => `control key {\n  by key-switch\n  acts ${acts}\n${sight}}\n`;
    expect(atHinge([control('hold-to-run', '  sight full\n')])?.covered).toBe(true);
    for (const sight of ['', '  sight none\n']) expect(atHinge([control('hold-to-run', sight)])?.covered, sight).toBe(false);
    expect(atHinge([control('impulse', '  sight full\n')])?.covered).toBe(false);
  });
});

describe('rules of North America', () => {
  const usa = (shape: Shape): Shape => ({ rules: 'north-america', ...shape });
  it.each([
    ['I', '0.3048 m/s', []],
    ['I', '0.306 m/s', ['error']],
    ['II', '1.01 ft/s', ['error']],
    ['III', '0.4 m/s', []],
  ])('class %s, sliding at %s', (usage, speed, expected) => {
    const text = gate(usa({ slides: true, site: [`usage-class ${usage}`] })).replace('speed 0.2 m/s', `speed ${speed}`);
    expect(judge(text).findings.flatMap((finding) => (finding.rule === 'sliding-leaf-too-fast' ? [finding.severity] : []))).toEqual(
      expected,
    );
  });
  it.each([
    ['2.25 in', []],
    ['57.2 mm', ['error']],
  ])('openings of %s', (size, expected) =>
    expect(findings(usa({ slides: true, leaf: [`infill-opening slot ${size}`] }), 'infill-opening-too-wide')).toEqual(expected),
  );
  it('judges none of it in Europe', () => {
    const shape: Shape = {
      slides: true,
      users: 'public',
      site: ['usage-class III', 'pedestrian-entrance shared', 'signs none'],
      leaf: ['infill-opening slot 90 mm'],
    };
    for (const rule of ['infill-opening-too-wide', 'pedestrian-entrance-shared', 'warning-sign-missing', 'usage-class-against-users']) {
      expect(findings(shape, rule), rule).toEqual([]);
      expect(findings(usa(shape), rule), rule).toHaveLength(1);
    }
  });
  it.each([
    ['6 ft', []],
    ['5.99 ft', ['warning']],
  ])('a keypad %s from the gate', (reach, expected) =>
    expect(findings(usa({ more: [`control pad {\n  by keypad\n  acts impulse\n  reach ${reach}\n}\n`] }), 'control-within-reach')).toEqual(
      expected,
    ),
  );
  it.each([
    ['hinge-gap 4 in', []],
    ['hinge-gap 4.01 in', ['warning']],
  ])('an axis at the end of the leaf, %s', (gap, expected) =>
    expect(findings(usa({ leaf: [gap, 'thickness 2 in', 'hinge-offset 0 in by 0 in'] }), 'pivot-gap-too-wide')).toEqual(expected),
  );
  it('asks for two kinds of means in each movement with a risk', () => {
    const rule = 'entrapment-protection-below-minimum';
    expect(findings(usa({}), rule)).toEqual(['error', 'warning']);
    expect(findings(usa({ slides: true }), rule)).toEqual(['error', 'error']);
    const safe = ['room-when-open 600 mm', 'hinge-guard 300 mm'];
    expect(findings(usa({ leaf: safe }), rule)).toEqual(['error']);
    expect(findings(usa({ leaf: ['room-when-open 16 in', 'hinge-guard 300 mm'] }), rule)).toEqual(['error', 'error']);
    expect(findings(usa({ leaf: ['room-when-open 17 in', 'hinge-guard 300 mm'] }), rule)).toEqual(['error', 'warning']);
    // Types A and C are two kinds on a swing leaf; C is none on a sliding one.
    expect(findings(usa({ leaf: safe, model: ['senses-obstacles'] }), rule)).toEqual(['error']);
    expect(findings(usa({ leaf: safe, model: ['senses-obstacles', 'limits-force'] }), rule)).toEqual([]);
    expect(findings(usa({ slides: true, model: ['senses-obstacles', 'limits-force'] }), rule)).toEqual(['error', 'error']);
    // A control that is held is one more, from memory.
    const held = 'control key {\n  by key-switch\n  acts hold-to-run\n  sight full\n}\n';
    expect(findings(usa({ leaf: safe, more: [held.replace('full', 'none')] }), rule)).toEqual(['error']);
    expect(findings(usa({ leaf: safe, more: [held] }), rule)).toEqual(['warning']);
    expect(findings(usa({ leaf: safe, model: ['senses-obstacles'], more: [held] }), rule)).toEqual([]);
  });
});

describe('hold-to-run', () => {
  const held = 'control key {\n  by key-switch\n  acts hold-to-run\n  sight full\n}\n';
  it.each([
    // 2 m at so many degrees a second.
    ['14.32 deg/s', []],
    ['14.34 deg/s', ['error']],
  ])('allows 0.5 m/s at the edge: %s', (speed, expected) => {
    expect(findings({ model: [`shaft-speed ${speed}`], more: [held] }, 'hold-to-run-too-fast')).toEqual(expected);
    expect(findings({ model: [`shaft-speed ${speed}`] }, 'hold-to-run-too-fast')).toEqual([]);
  });
});

describe('a released leaf', () => {
  it.each([
    // 150 kg and 2 m leaning by 2°: 51.3 N·m at 90°, so 25.7 N at the edge.
    ['hinge-tilt 2 deg lowest closed', 'friction 25 N', ['error']],
    ['hinge-tilt 2 deg lowest closed', 'friction 26 N', []],
    ['hinge-tilt 2 deg lowest open', 'friction 25 N', ['error']],
    // 150 kg rising by 80 mm over 90°: 74.9 N·m.
    ['rises 80 mm', 'friction 37 N', ['error']],
    ['rises 80 mm', 'friction 38 N', []],
    // 150·9.80665·1·sin β = 300 N·m, 150 N at the edge of 2 m, where sin β = 0.20394: 11.767°. What nobody measured may hold as much.
    ['hinge-tilt 11.76 deg lowest closed', '', ['warning']],
    ['hinge-tilt 11.78 deg lowest closed', '', ['error']],
  ])('%s with %s', (hinge, friction, expected) =>
    expect(findings({ leaf: [hinge, friction] }, 'leaf-moves-when-released')).toEqual(expected),
  );
  it('runs down a track that slopes by more than it holds', () => {
    expect(findings({ slides: true, leaf: ['slope 2.9 %'] }, 'leaf-moves-when-released')).toEqual([]);
    expect(findings({ slides: true, leaf: ['slope -3.1 %'] }, 'leaf-moves-when-released')).toEqual(['warning']);
    expect(findings({ slides: true, leaf: ['slope -3.1 %', 'friction 1 N'] }, 'leaf-moves-when-released')).toEqual(['error']);
  });
});
