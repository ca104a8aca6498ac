// The timing chart and the slider against the figures that they are drawn from.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { preview } from '../../server/editor/index.ts';
import { type Analysis, figuresShown } from '../../server/engine/index.ts';
import { cycleOf } from '../../server/figures/cycle-time/working.ts';
import { figuresOf } from '../../server/figures/index.ts';
import { ramLength } from '../../server/figures/linear-ram/maths.ts';
import { ramMountingOf } from '../../server/figures/linear-ram/working.ts';
import { leafAt } from '../../server/figures/linkage/maths.ts';
import { travelAt } from '../../server/figures/motion-profile/maths.ts';
import { motionOf } from '../../server/figures/run-time/working.ts';
import { inOneGo } from '../../server/model/index.ts';
import { planScaleOf } from '../../server/papers/drawing/plan/layout.ts';
import { cycleMotion, type Moving } from '../../server/papers/index.ts';
import { seed } from '../kit/chance.ts';
import { all, drawingOf, example, judged, of, parsed, pointsOf, previewOf, sites, thingOf, withClass } from './kit.ts';

const timed = sites
  .filter((path) => cycleOf(example(path).installation) !== undefined)
  .map((path) => path.split('/').pop()?.replace('.gate', '') ?? '');
/** Those whose whole cycle is drawn to one scale. */
const even = timed.filter((name) => example(name).installation.motion?.facts.dwell !== undefined);

test('there is a chart for every site whose leaves can be followed', () => {
  expect(timed.length).toBe(sites.length - 1);
  const lacks = drawingOf(previewOf('wrong-side-bracket'), 'timing').lacks;
  expect(lacks).toContain('lower');
});

describe.each(even)('%s', (name) => {
  const { installation } = example(name);
  const document = parsed(drawingOf(previewOf(name), 'timing').svg);
  const cycle = cycleOf(installation);
  // The scale, from the marks of the axis.
  const marks = all(document)
    .filter((each) => each.tagName === 'text' && /^\d+$/.test(each.textContent ?? '') && each.getAttribute('text-anchor') === 'middle')
    .map((each) => ({ value: Number(each.textContent), x: of(each, 'x') }));
  const first = marks[0] as (typeof marks)[number];
  const last = marks[marks.length - 1] as (typeof marks)[number];
  const perSecond = (last.x - first.x) / (last.value - first.value);
  const second = (x: number): number => (x - first.x) / perSecond + first.value;

  test('the bars are as long as the figures say', () => {
    for (const leaf of installation.leaves) {
      const motion = motionOf(leaf);
      if (motion === undefined) continue;
      const runs = withClass(document, 'run').filter((each) => thingOf(each) === `leaf.${leaf.name}`);
      expect(runs.length).toBe(2);
      const seats = withClass(document, 'seat').filter(
        (each) =>
          each.parentNode?.parentNode === document.documentElement &&
          (each.parentNode as unknown as { textContent: string }).textContent.startsWith(leaf.name),
      );
      for (const run of runs) {
        const start = second(of(run, 'x'));
        const end = start + of(run, 'width') / perSecond;
        const slow = withClass(document, 'slow').find(
          (each) => Math.abs(of(each, 'x') - of(run, 'x') - of(run, 'width')) < 0.05 && of(each, 'y') === of(run, 'y'),
        );
        const stop = slow === undefined ? end : end + of(slow, 'width') / perSecond;
        expect(stop - start).toBeCloseTo(motion.runTime, 1);
        expect(slow !== undefined).toBe(motion.slowTravel > 0);
        // Where the slow zone begins the drive has that much left to go.
        if (slow !== undefined) expect(travelAt(motion.profile, end - start)).toBeCloseTo(motion.travel - motion.slowTravel, 2);
        const seat = installation.motion?.facts.seat?.value ?? 0;
        expect(
          seats
            .filter((each) => Math.abs(second(of(each, 'x')) - stop) < 0.02)
            .map((each) => Math.round((of(each, 'width') / perSecond) * 20) / 20),
        ).toEqual(seat > 0 ? [Math.round(seat * 20) / 20] : []);
      }
    }
  });

  test('the last leaf stops when the figures say, and the cycle closes', () => {
    const ends = [...withClass(document, 'run'), ...withClass(document, 'slow')]
      .filter((each) => each.parentNode !== document.documentElement)
      .map((each) => second(of(each, 'x') + of(each, 'width')));
    const whole = figuresOf(installation).find(({ id }) => id === 'motion.cycle-time')?.value as number;
    expect(Math.max(...ends)).toBeCloseTo(whole, 1);
    expect(cycle).toBeDefined();
  });
});

test('the lag and the least lag are drawn and said as the figures have them', () => {
  const { description, svg } = drawingOf(previewOf('leaves-collide'), 'timing');
  const least = figuresOf(example('leaves-collide').installation).find(({ id }) => id === 'motion.least-lag')?.value as number;
  expect(least).toBeCloseTo(0.913, 3);
  expect(description).toContain('at least 0.913 s');
  expect(
    all(parsed(svg))
      .filter((each) => each.tagName === 'text')
      .map((each) => each.textContent),
  ).toContain('lag 0.2 s, least 0.913 s: too short');
});

test('without a dwell nothing is claimed of when it closes', () => {
  const { table, svg } = drawingOf(previewOf('tanners-row'), 'timing');
  expect(table.rows.find(([what]) => what === 'standing open')?.slice(2)).toEqual(['the command to close', 'not stated']);
  expect(table.rows.find(([what]) => what === 'gate: closing, at full speed')?.[1]).toBe('0 s after the command to close');
  expect(withClass(parsed(svg), 'break').length).toBe(3);
});

describe('every time of the slider is one of the timing chart and of the figures', () => {
  /** The moments of a table's row in seconds, told from the beginning or from the command to close. */
  const momentsOf = (rows: readonly (readonly string[])[], told: number): number[] =>
    rows.flatMap(([, from, to]) =>
      [from, to].flatMap((text) => {
        const found = /^([\d.]+) (ms|s|min)( after the command to close)?$/.exec(text ?? '');
        if (found === null) return [];
        const value = Number(found[1]) * { ms: 0.001, s: 1, min: 60 }[found[2] as 'ms' | 's' | 'min'];
        return [value + (found[3] === undefined ? 0 : told)];
      }),
    );
  const holds = (analysis: Analysis): boolean => {
    const { installation } = analysis;
    const cycle = inOneGo(cycleMotion(installation));
    if (cycle === undefined) return false;
    const { table } = drawingOf(preview(analysis), 'timing');
    const moments = momentsOf(table.rows, cycle.told ?? 0);
    // The table writes three digits.
    const isTold = (time: number): boolean =>
      moments.some((moment) => Math.abs(moment - time) <= Math.max(time, time - (cycle.told ?? 0)) * 5e-3 + 1e-9);
    for (const { from, to, label } of cycle.phases)
      for (const time of [from, to]) expect(isTold(time), `${label} at ${time} s among ${moments.join(' ')}`).toBe(true);
    const figure = figuresOf(installation).find(({ id }) => id === 'motion.cycle-time');
    if (cycle.told === undefined) {
      expect(cycle.duration).toBeCloseTo(figure?.value as number, 9);
      expect(cycle.total).toBe(figuresShown(analysis).find(({ id }) => id === 'motion.cycle-time')?.shown);
    } else expect([figure, cycle.total]).toEqual([undefined, undefined]);
    // The last leaf stands closed when the cycle ends, and not before.
    const stops = cycle.leaves
      .filter(({ thing }) => thing.startsWith('leaf.'))
      .map(({ times, values }) => times[values.findLastIndex((value) => Math.abs(value) > 1e-9) + 1] as number);
    expect(Math.max(...stops)).toBeCloseTo(cycle.duration, 3);
    return true;
  };

  test.each(timed)('%s', (name) => {
    expect(holds(example(name))).toBe(true);
  });

  test('and of any other motion', () => {
    const text = example('withy-lane').text;
    const without = text.replace(/\nmotion \{[^]*?\n\}/, '');
    expect(without.length).toBeLessThan(text.length - 80);
    let many = 0;
    const time = fc.integer({ min: 0, max: 300 }).map((tenths) => `${tenths / 10} s`);
    const line = (word: string, value: fc.Arbitrary<string>): fc.Arbitrary<string> =>
      fc.option(value, { nil: undefined }).map((given) => (given === undefined ? '' : `  ${word} ${given}\n`));
    const motion = fc.tuple(
      line(
        'slow-zone last',
        fc.integer({ min: 1, max: 40 }).map((share) => `${share} %`),
      ),
      line('seat', time),
      line('lag opening', time),
      line('lag closing', time),
      line('pre-warning', time),
      line('dwell', time),
    );
    fc.assert(
      fc.property(motion, (lines) => {
        if (holds(judged(`${without}\nmotion {\n${lines.join('')}}\n`))) many++;
      }),
      { numRuns: 80, seed: seed() },
    );
    expect(many).toBeGreaterThan(60);
  });
});

describe('the slider', () => {
  const at = ({ times, values }: Moving, time: number): number => {
    let i = 0;
    while (i < times.length - 2 && (times[i + 1] as number) < time) i++;
    const [from, to] = [times[i] as number, times[i + 1] as number];
    return (values[i] as number) + ((time - from) / (to - from)) * ((values[i + 1] as number) - (values[i] as number));
  };

  test.each(timed)('%s: begins and ends closed, rises in time, and moves what the plan draws', (name) => {
    const { installation } = example(name);
    const cycle = inOneGo(cycleMotion(installation));
    const drawn = new Set(all(parsed(drawingOf(previewOf(name), 'plan').svg)).map((each) => each.getAttribute('data-moves')));
    if (cycle === undefined) throw new Error('no cycle');
    expect(cycle.leaves.filter(({ thing }) => thing.startsWith('leaf.')).length).toBe(installation.leaves.length);
    for (const moving of cycle.leaves) {
      expect(drawn, moving.thing).toContain(moving.thing);
      expect(moving.times.length).toBe(moving.values.length);
      expect(moving.times.every((time, i) => i === 0 || time > (moving.times[i - 1] as number))).toBe(true);
      expect([moving.times[0], moving.times.at(-1)]).toEqual([0, expect.closeTo(cycle.duration, 3)]);
      expect(moving.values[0]).toBe(0);
      expect(moving.values.at(-1)).toBeCloseTo(0, 6);
    }
    expect(cycle.phases[0]?.from).toBe(0);
    expect(cycle.phases.at(-1)?.to).toBeCloseTo(cycle.duration, 9);
    for (const [i, phase] of cycle.phases.entries()) if (i > 0) expect(phase.from).toBe(cycle.phases[i - 1]?.to);
  });

  test('a leaf is where its true motion has it, to a tenth of a degree, at any time', () => {
    const { installation } = example('withy-lane');
    const cycle = inOneGo(cycleMotion(installation));
    const facts = installation.motion?.facts;
    for (const leaf of installation.leaves) {
      const motion = motionOf(leaf);
      const moving = cycle?.leaves.find(({ thing }) => thing === `leaf.${leaf.name}`);
      if (motion === undefined || moving === undefined) throw new Error(leaf.name);
      const start = (facts?.['pre-warning']?.value ?? 0) + (leaf.name === 'west' ? 4 : 0);
      for (let time = 0; time <= motion.runTime; time += 0.137) {
        const angle = (leafAt(motion.linkage, travelAt(motion.profile, time)) as number) * (180 / Math.PI);
        expect(Math.abs(Math.abs(at(moving, start + time)) - angle)).toBeLessThan(0.1);
        const back = (leafAt(motion.linkage, motion.travel - travelAt(motion.profile, time)) as number) * (180 / Math.PI);
        const closes = (cycle?.phases.find(({ label }) => label === 'closing')?.from ?? NaN) + (leaf.name === 'east' ? 8 : 0);
        expect(Math.abs(Math.abs(at(moving, closes + time)) - back)).toBeLessThan(0.1);
      }
    }
    // West hangs on the left and opens towards the inside, which is down: clockwise.
    expect(Math.max(...(cycle?.leaves.find(({ thing }) => thing === 'leaf.west')?.values ?? []))).toBeCloseTo(95, 3);
    expect(Math.min(...(cycle?.leaves.find(({ thing }) => thing === 'leaf.east')?.values ?? []))).toBeCloseTo(-95, 3);
  });

  test('tube and rod of a ram stay in one line and as long as the ram is', () => {
    const { installation } = example('withy-lane');
    const cycle = inOneGo(cycleMotion(installation));
    const scale = planScaleOf(installation)?.perMetre ?? NaN;
    const document = parsed(drawingOf(previewOf('withy-lane'), 'plan').svg);
    const turned = ([x, y]: readonly [number, number], moving: Moving, time: number): [number, number] => {
      const angle = at(moving, time) * (Math.PI / 180);
      const { x: cx, y: cy } = moving.motion;
      return [cx + (x - cx) * Math.cos(angle) - (y - cy) * Math.sin(angle), cy + (x - cx) * Math.sin(angle) + (y - cy) * Math.cos(angle)];
    };
    for (const drive of installation.drives) {
      const part = (thing: string): Moving => cycle?.leaves.find((each) => each.thing === thing) as Moving;
      const leaf = part(`leaf.${drive.leaf?.name ?? ''}`);
      const [fixed, carried] = [part(`drive.${drive.name}.fixed`), part(`drive.${drive.name}.carried`)];
      const group = (moves: string) =>
        all(document).find((each) => each.getAttribute('data-moves') === moves) as ReturnType<typeof all>[number];
      const tube = withClass(group(fixed.thing), 'drive-body')[0] as ReturnType<typeof all>[number];
      const rod = withClass(group(carried.thing), 'drive')[0] as ReturnType<typeof all>[number];
      for (const time of [0, 5, 9.3, 14, 20, 30, 60, 70, 80]) {
        const post = [of(tube, 'x1'), of(tube, 'y1')] as const;
        const tubeEnd = turned([of(tube, 'x2'), of(tube, 'y2')], fixed, time);
        const bracket = turned(turned([of(rod, 'x1'), of(rod, 'y1')], carried, time), leaf, time);
        const rodEnd = turned(turned([of(rod, 'x2'), of(rod, 'y2')], carried, time), leaf, time);
        const angle = Math.abs(at(leaf, time)) * (Math.PI / 180);
        const length = Math.hypot(bracket[0] - post[0], bracket[1] - post[1]);
        expect(
          Math.abs(length - (ramLength(ramMountingOf(drive) as NonNullable<ReturnType<typeof ramMountingOf>>, angle) as number) * scale),
        ).toBeLessThan(0.1);
        // Both ends lie on the line from pin to pin, and the rod's end within the tube.
        for (const [x, y] of [tubeEnd, rodEnd]) {
          const off = ((x - post[0]) * (bracket[1] - post[1]) - (y - post[1]) * (bracket[0] - post[0])) / length;
          expect(Math.abs(off)).toBeLessThan(0.15);
        }
        expect(Math.hypot(rodEnd[0] - post[0], rodEnd[1] - post[1])).toBeLessThan(
          Math.hypot(tubeEnd[0] - post[0], tubeEnd[1] - post[1]) + 0.5,
        );
      }
    }
  });
});

test('the curve over the bars rises from closed to open and falls again', () => {
  const document = parsed(drawingOf(previewOf('mill-race'), 'timing').svg);
  const points = pointsOf(withClass(document, 'curve')[0] as ReturnType<typeof all>[number]);
  const top = Math.min(...points.map(([, y]) => y));
  const i = points.findIndex(([, y]) => y === top);
  for (let k = 1; k < points.length; k++) {
    const [before, after] = [points[k - 1] as [number, number], points[k] as [number, number]];
    expect(after[0]).toBeGreaterThanOrEqual(before[0] - 1e-9);
    if (k <= i) expect(after[1]).toBeLessThanOrEqual(before[1] + 0.01);
  }
});
