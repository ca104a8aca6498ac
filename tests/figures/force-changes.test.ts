// What is told to open a window: each change with the numbers that a file would state, worked out by hand. The smallest change
// is looked for by halves, to a thirty-second part of the furthest one.

import { describe, expect, it } from 'vitest';
import { changesThatOpen, isWide } from '../../server/figures/force-changes/working.ts';
import { type ForceCase, forceCaseOf } from '../../server/figures/force-window/working.ts';
import { type LeafMotion, motionOf } from '../../server/figures/run-time/working.ts';
import type { Leaf } from '../../server/model/index.ts';
import { judge } from '../kit/pages.ts';

interface Gate {
  readonly leaf?: readonly string[];
  readonly model?: readonly string[];
  readonly site?: readonly string[];
}
const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
function caseOf(kind: 'shaft' | 'rack' | 'ram', { leaf = [], model = [], site = [] }: Gate): ForceCase {
  const models = {
    shaft: ['kind direct', 'rotation 120 deg', 'senses-obstacles'],
    rack: ['kind rack', 'senses-obstacles'],
    ram: ['kind linear-ram', 'speed 16 mm/s', 'senses-obstacles'],
  };
  const text = [
    'language 1\n',
    block('site "Example"', site),
    block('drive-model push', [...models[kind], ...model]),
    block('leaf west', [
      ...(kind === 'rack' ? ['slides left 4 m', 'width 4 m'] : ['opens inward 90 deg', 'width 2 m']),
      'height 1.5 m',
      ...leaf,
    ]),
    block('drive push-west : push', ['moves west', ...(kind === 'ram' ? ['post-bracket 100 mm by 200 mm', 'leaf-bracket 800 mm'] : [])]),
  ].join('');
  const west = judge(text).installation.leaves[0];
  const of = west === undefined ? undefined : forceCaseOf(west);
  if (of === undefined) throw new Error('no case');
  return of;
}
function told(of: ForceCase): readonly string[] {
  const { alone, changes } = changesThatOpen(of, 1);
  expect(isWide(of, 1)).toBe(false);
  expect(alone).toBe(true);
  return changes;
}

/** With a guard to half a metre 400 N allow 200 N·m. */
const shaft = (more: Gate): ForceCase =>
  caseOf('shaft', {
    ...more,
    leaf: ['mass 120 kg', 'hinge-guard 500 mm', ...(more.leaf ?? [])],
    model: ['torque 1000 N·m', ...(more.model ?? ['shaft-speed 6 deg/s'])],
  });

describe('each by itself', () => {
  it('an infill, gusts, friction, and no guard further out than one counts: 144 N·m of friction and 96 N·m of wind against 200 N·m', () => {
    expect(told(shaft({ site: ['working-wind 8 m/s'], leaf: ['infill 50 %', 'friction 72 N'] }))).toEqual([
      // 240 N·m are allowed at 600 mm, and a guard counts no further than the 500 mm that are there.
      // 56 N·m of wind are 29.2 %; from 50 % down by 23/32 of 30 %.
      'an infill of at most 28 % (from memory)',
      // and 6.11 m/s; a quarter off.
      'no use in gusts above 6 m/s (working-wind)',
      // 52 N; 12/32 of four fifths off.
      'hinges or rollers that go lighter (friction 50 N)',
    ]);
  });
  it('a guard at the hinge, as far as one counts and no further', () => {
    // 400 N at 300 mm are 120 N·m; 144 N·m of friction need 360 mm, and 24/32 of half a metre are the first that reach so far.
    const short = (friction: string): readonly string[] => {
      const of = shaft({ leaf: [`friction ${friction}`] });
      return told({ ...of, guard: 0.3 });
    };
    expect(short('72 N')).toContain('a guard at the hinge side out to 375 mm (hinge-guard)');
    // 200 N·m need all of it, 202 N·m more.
    expect(short('100 N')).toContain('a guard at the hinge side out to 500 mm (hinge-guard)');
    expect(short('101 N').join()).not.toContain('guard');
  });
  it('an infill by the table, from 80 % on', () => {
    // 216.6 N·m full and 144 N·m at 80 %: 200 N·m at 95.4 %; by gusts of at most 7.69 m/s.
    expect(told(shaft({ site: ['working-wind 8 m/s'] }))).toEqual([
      'an infill of at most 95 %',
      'no use in gusts above 7.5 m/s (working-wind)',
    ]);
  });
  it('and still at just 80 %', () => {
    // With 50 N·m of friction 150 N·m, at 81.7 %: 80 % is the first below, and still by the table.
    expect(told(shaft({ site: ['working-wind 8 m/s'], leaf: ['friction 25 N'] }))).toContain('an infill of at most 80 %');
  });
  it('by the closed leaf, where that is worse', () => {
    // With a corner the closed leaf decides: 232.2 N·m, so 200 N·m at 92.7 %.
    expect(told(shaft({ site: ['working-wind 8 m/s'], leaf: ['return-corner 1.5 m'] }))).toContain('an infill of at most 92 %');
  });
  it('an infill of a fifth, and no less', () => {
    // 184 N·m of friction leave 16 N·m, less than the 38.4 N·m at 20 %.
    expect(told(shaft({ site: ['working-wind 8 m/s'], leaf: ['infill 50 %', 'friction 92 N'] })).join()).not.toContain('infill');
    expect(told(shaft({ site: ['working-wind 8 m/s'], leaf: ['infill 20 %', 'friction 92 N'] })).join()).not.toContain('infill');
  });
  it('a fifth, where it takes all of it', () => {
    // 160 N·m leave 40 N·m.
    expect(told(shaft({ site: ['working-wind 8 m/s'], leaf: ['infill 50 %', 'friction 80 N'] }))).toContain(
      'an infill of at most 20 % (from memory)',
    );
  });
  it('no wind at all, where less than a tenth of a metre a second is left', () => {
    const of = shaft({ site: ['working-wind 1 m/s'], leaf: ['friction 95 N'] });
    expect(told({ ...of, wind: 1000 })).toContain('no use in wind (no working-wind)');
  });
  it('a softer start', () => {
    // 160 kg·m² that reach 30°/s in 1 s take 83.8 N·m; with 120 N·m of friction 3.8 too many, and 1/32 of five more seconds is enough.
    expect(told(shaft({ leaf: ['friction 60 N'], model: ['shaft-speed 30 deg/s', 'ramp 1 s'] }))).toEqual([
      'a softer start (a ramp of 1.2 s)',
      'hinges or rollers that go lighter (friction 57 N)',
    ]);
    // With 160 N·m of friction 40 are left for it, at 2.094 s: 7/32 of five more seconds are a hair too few, 8/32 enough.
    expect(told(shaft({ leaf: ['friction 80 N'], model: ['shaft-speed 30 deg/s', 'ramp 1 s'] }))).toContain(
      'a softer start (a ramp of 2.3 s)',
    );
  });
  it('friction that is not stated is not told to be less', () => {
    // 3 % of 700 kg are 206 N.
    const weak = caseOf('rack', { leaf: ['mass 700 kg'], model: ['speed 0.2 m/s', 'thrust 100 N'] });
    expect(isWide(weak, 1)).toBe(false);
    expect(changesThatOpen(weak, 1)).toEqual({ alone: false, changes: [] });
  });
  it('a bracket further out, or further behind the hinge', () => {
    // Leaning by 5° the leaf pulls with 102.6 N·m when open, over a lever of 0.8 · 0.1 / √(0.1² + 0.6²) m: 780 N. 700 N need
    // a lever of 146.5 mm: at 263.2 mm out, or 111.8 mm behind.
    expect(
      told(
        caseOf('ram', {
          site: ['rules north-america'],
          leaf: ['mass 120 kg', 'hinge-tilt 5 deg lowest closed'],
          model: ['stroke 800 mm', 'thrust 700 N'],
        }),
      ),
    ).toEqual([
      'a longer lever, by a post bracket 266 mm out instead of 200 mm',
      'a longer lever, by a post bracket 113 mm behind the hinge instead of 100 mm',
    ]);
  });
  it('no bracket that the stroke does not reach from, nor where it is not stated', () => {
    // From 800 mm away, 200 mm out and 100 mm behind, 313.6 mm are run: 922 mm closed and 608 mm open.
    for (const stroke of [['stroke 320 mm'], []])
      expect(
        changesThatOpen(
          caseOf('ram', {
            site: ['rules north-america'],
            leaf: ['mass 120 kg', 'hinge-tilt 5 deg lowest closed'],
            model: [...stroke, 'thrust 700 N'],
          }),
          1,
        ),
        stroke.join(),
      ).toEqual({ alone: false, changes: [] });
  });
});

describe('an edge that does not stop the leaf in time', () => {
  /** 420 N of friction where 400 N are allowed; an edge at 70 mm that gives 60 mm, 30 mm of them before it reacts. */
  const slide = (opening: { distance: number; deformation: number } | undefined, room?: number): ForceCase => {
    const of = caseOf('rack', { leaf: ['mass 500 kg', 'friction 420 N'], model: ['speed 0.3 m/s', 'thrust 900 N'] });
    const stop = {
      motion: motionOf(of.drive.leaf as Leaf) as LeafMotion,
      at: 0,
      edgeSpeed: 0.3,
      leafSpeed: 0.3,
      edge: undefined,
      reaction: 0.1,
      deceleration: 1,
      energy: undefined,
    };
    return {
      ...of,
      room,
      stops: {
        closing: { ...stop, distance: 0.07, deformation: 0.06 },
        opening: opening === undefined ? undefined : { ...stop, ...opening },
      },
    };
  };
  const lighter = 'hinges or rollers that go lighter (friction 399 N)';
  it('gives more, or the leaf is slower', () => {
    // 30 mm shrink as the speed and 40 mm as its square: 60 mm at 90.6 % of it.
    expect(told(slide(undefined))).toEqual([
      lighter,
      'an edge with 70 mm of deformation',
      '90 % of the speed, as by a slower and longer slow zone',
    ]);
  });
  it('of two the one that needs more', () => {
    // 80 mm of way and 50 mm that it gives. 30 mm shrink as the speed and 50 mm as its square: 50 mm at 74.4 %; 11/32 of four fifths off.
    expect(told(slide({ distance: 0.08, deformation: 0.05 }, 0.1))).toEqual([
      lighter,
      'an edge with 80 mm of deformation',
      '72 % of the speed, as by a slower and longer slow zone',
    ]);
  });
  it('not the one that hinders nothing', () => {
    expect(told(slide({ distance: 0.5, deformation: 0.05 }))).toEqual([
      lighter,
      'an edge with 70 mm of deformation',
      '90 % of the speed, as by a slower and longer slow zone',
    ]);
  });
  it('and none at all where no edge is there, or of one alone', () => {
    const of = slide(undefined);
    expect(told({ ...of, stops: { closing: undefined, opening: undefined } })).toEqual([lighter]);
    expect(
      told({
        ...of,
        stops: { ...of.stops, closing: { ...(of.stops.closing as NonNullable<typeof of.stops.closing>), deformation: undefined } },
      }),
    ).toEqual([lighter]);
  });
});

describe('two together, where none does by itself', () => {
  it('the first pairs, each with half or all of the first and as much of the second as it takes', () => {
    // 400 N·m of friction and 384 N·m of wind against 200 N·m; half the gust leaves 96 N·m of wind, so 104 N·m of friction, 52 N.
    // No infill and no wind at all leave enough beside 400 N·m, and no guard counts further out than the one that is there.
    const of = shaft({ site: ['working-wind 16 m/s'], leaf: ['infill 50 %', 'friction 200 N'] });
    expect(changesThatOpen(of, 1)).toEqual({
      alone: false,
      changes: ['no use in gusts above 8 m/s (working-wind) together with hinges or rollers that go lighter (friction 50 N)'],
    });
  });
  it('a single pair, told once', () => {
    // 500 kg that reach 0.2 m/s in 0.5 s take 200 N, with 400 N of friction; the drive gives 150 N. In 1.75 s it takes 57 N and leaves 93
    // N: 31/32 of four fifths off are 90 N.
    const of = caseOf('rack', {
      site: ['rules north-america'],
      leaf: ['mass 500 kg', 'friction 400 N'],
      model: ['speed 0.2 m/s', 'ramp 0.5 s', 'thrust 150 N'],
    });
    expect(changesThatOpen(of, 1)).toEqual({
      alone: false,
      changes: ['a softer start (a ramp of 1.8 s) together with hinges or rollers that go lighter (friction 90 N)'],
    });
  });
});
