// What cannot be is no number. Each function that says so in words is given, in place of one good value, each that makes no
// sense: nothing, less than nothing, what is no number, what has no end. What may be nothing is given that too.
import { describe, expect, test } from 'vitest';
import { type AdjusterScale, positionFor, valueAt } from '../../server/figures/adjuster/maths.ts';
import { dischargeTime, exponentFrom } from '../../server/figures/battery/maths.ts';
import { statesOf } from '../../server/figures/edge-loop/maths.ts';
import { elasticPeak, gravityAt } from '../../server/figures/force-window/maths.ts';
import { directLinkage, rackLinkage, ramLinkage } from '../../server/figures/linkage/maths.ts';
import { cycleRate, dutyFactor, queueOf, queueShares } from '../../server/figures/traffic/maths.ts';
import { clearance } from '../../server/figures/underside/maths.ts';
import { dynamicPressure, evenHingeMoment, gripOf, latticeForce, wallZones } from '../../server/figures/wind/maths.ts';

/** `above`: more than nothing; `amount`: nothing or more. */
const unfit = { above: [0, -1, NaN, Infinity], amount: [-1, NaN, Infinity] } as const;
type Kind = keyof typeof unfit;

/** Each good value in turn replaced by those that make no sense; the kinds say which these are. */
function holds<T extends Readonly<Record<string, number>>>(
  good: T,
  kinds: Readonly<Record<keyof T, Kind>>,
  of: (values: T) => unknown,
): void {
  expect(of(good), 'the good values').toBeDefined();
  for (const key of Object.keys(good) as (keyof T & string)[]) {
    for (const bad of unfit[kinds[key]]) expect(of({ ...good, [key]: bad }), `${key} ${bad}`).toBeUndefined();
    if (kinds[key] === 'amount') expect(of({ ...good, [key]: 0 }), `${key} 0`).toBeDefined();
  }
}

describe('wind', () => {
  test('pressure', () => holds({ speed: 10 }, { speed: 'amount' }, ({ speed }) => dynamicPressure(speed)));
  test('force on a lattice', () =>
    holds(
      { pressure: 500, area: 2, coefficient: 1.6, end: 0.9 },
      { pressure: 'amount', area: 'above', coefficient: 'above', end: 'above' },
      (v) => latticeForce(v.pressure, v.area, v.coefficient, v.end),
    ));
  test('moment of an even pressure', () =>
    holds({ c: 1.2, pressure: 500, width: 2, height: 1.5 }, { c: 'above', pressure: 'amount', width: 'above', height: 'above' }, (v) =>
      evenHingeMoment(v.c, v.pressure, v.width, v.height),
    ));
  test('grip on a leaf', () => {
    const good = { width: 2, height: 1.5, infill: 0.9, wall: 4, beyond: 2, corner: 0 };
    holds(good, { width: 'above', height: 'above', infill: 'above', wall: 'above', beyond: 'amount', corner: 'amount' }, gripOf);
    expect(gripOf({ ...good, infill: 1.01 })).toBeUndefined();
    expect(gripOf({ ...good, infill: 0.5, width: 0 })).toBeUndefined();
    // A wall is at least as long as the leaf in it.
    expect(gripOf({ ...good, wall: 1.9, beyond: 0 })).toBeUndefined();
    expect(gripOf({ ...good, wall: 2, beyond: 0 })).toBeDefined();
  });
  test('a wall of less than four fifths is a lattice', () => {
    expect(wallZones(0.79, 5, 0)).toBeUndefined();
    expect(wallZones(0.8, 5, 0)).toEqual([1.2, 1.2, 1.2, 1.2]);
    expect(wallZones(1.01, 5, 0)).toBeUndefined();
    expect(wallZones(1, 0, 0)).toBeUndefined();
    expect(wallZones(1, 5, -0.1)).toBeUndefined();
  });
  // EN 1991-1-4, Table 7.9, solid walls: no return up to a length of 3 h, of 5 h, from 10 h; with a return of one height.
  test.each([
    [3, 0, [2.3, 1.4, 1.2, 1.2]],
    [5, 0, [2.9, 1.8, 1.4, 1.2]],
    [10, 0, [3.4, 2.1, 1.7, 1.2]],
    [30, 0, [3.4, 2.1, 1.7, 1.2]],
    [5, 1, [2.1, 1.8, 1.4, 1.2]],
    [30, 4, [2.1, 1.8, 1.4, 1.2]],
    // Half way between the columns.
    [4, 0, [2.6, 1.6, 1.3, 1.2]],
    [7.5, 0, [3.15, 1.95, 1.55, 1.2]],
    [5, 0.5, [2.5, 1.8, 1.4, 1.2]],
  ] as const)('zones of a solid wall of %d heights with a return of %d', (length, corner, zones) => {
    wallZones(1, length, corner)?.forEach((zone, i) => expect(zone).toBeCloseTo(zones[i] as number, 10));
    expect(wallZones(1, length, corner)).toHaveLength(4);
  });
});

describe('battery', () => {
  const capacity = { charge: 25_200, time: 72_000 };
  test('time to discharge', () => {
    for (const charge of [0, -1, NaN]) expect(dischargeTime({ ...capacity, charge }, 1, 1.2)).toBeUndefined();
    for (const time of [0, -1, NaN]) expect(dischargeTime({ ...capacity, time }, 1, 1.2)).toBeUndefined();
    for (const current of [-0.1, NaN]) expect(dischargeTime(capacity, current, 1.2)).toBeUndefined();
    for (const exponent of [0.99, NaN]) expect(dischargeTime(capacity, 1, exponent)).toBeUndefined();
    expect(dischargeTime(capacity, 0, 1.2)).toBe(Infinity);
    expect(dischargeTime(capacity, 0.35, 1)).toBeCloseTo(72_000, 6);
  });
  test('an exponent from two ratings', () => {
    // 7 Ah over 20 h and 4.2 Ah over 1 h: ln 20 / ln (4.2 / 0.35).
    expect(exponentFrom({ charge: 7 * 3600, time: 20 * 3600 }, { charge: 4.2 * 3600, time: 3600 })).toBeCloseTo(
      Math.log(20) / Math.log(12),
      10,
    );
    expect(exponentFrom(capacity, capacity)).toBeUndefined();
    // More charge in less time is no battery.
    expect(exponentFrom({ charge: 100, time: 100 }, { charge: 1, time: 200 })).toBe(1);
    expect(exponentFrom({ charge: 100, time: 100 }, { charge: 300, time: 200 })).toBeUndefined();
  });
});

describe('traffic', () => {
  test('cycles follow the vehicles, up to one after another', () => {
    expect(cycleRate(0.01, undefined)).toBe(0.01);
    expect(cycleRate(0.01, 0)).toBe(0.01);
    expect(cycleRate(0.01, 50)).toBe(0.01);
    expect(cycleRate(0.05, 50)).toBe(0.02);
  });
  test('duty', () => {
    expect(dutyFactor(15, 45)).toBe(0.25);
    expect(dutyFactor(0, 1)).toBe(0);
    expect(dutyFactor(1, 0)).toBe(1);
    for (const [running, resting] of [
      [0, 0],
      [-1, 4],
      [4, -1],
      [NaN, 1],
      [1, NaN],
    ] as const)
      expect(dutyFactor(running, resting)).toBeUndefined();
  });
  test('a queue that grows without end is none', () => {
    expect(queueOf(0, 30)).toEqual({ load: 0, waiting: 0, wait: 0, present: 0, through: 30 });
    for (const arrivals of [-0.01, NaN, 1 / 30, 1]) expect(queueOf(arrivals, 30)).toBeUndefined();
    for (const load of [-0.01, NaN, 1, 2]) expect(queueShares(load)).toEqual([]);
    expect(queueShares(0)[0]).toBe(1);
  });
});

test('adjusters', () => {
  const linear: AdjusterScale = { low: 2, high: 120, curve: 'linear' };
  const logarithmic: AdjusterScale = { low: 2, high: 128, curve: 'logarithmic' };
  for (const scale of [linear, logarithmic]) {
    for (const bad of [NaN, Infinity]) {
      expect(positionFor({ ...scale, low: bad }, 10)).toBeUndefined();
      expect(positionFor({ ...scale, high: bad }, 10)).toBeUndefined();
      expect(positionFor(scale, bad)).toBeUndefined();
      expect(valueAt(scale, bad)).toBeUndefined();
    }
    expect(positionFor({ ...scale, high: 2 }, 2)).toBeUndefined();
    expect(valueAt(scale, 0)).toBe(2);
    expect(valueAt(scale, 1)).toBe(scale.high);
    expect(valueAt(scale, -0.1)).toBeUndefined();
    expect(valueAt(scale, 1.1)).toBeUndefined();
  }
  // A logarithmic scale has no zero, and does not pass it.
  for (const [low, high] of [
    [0, 10],
    [10, 0],
    [-10, 10],
    [-2, -128],
  ] as const)
    expect(positionFor({ low, high, curve: 'logarithmic' }, 5)).toBeUndefined();
  for (const value of [0, -5]) expect(positionFor(logarithmic, value)).toBeUndefined();
  expect(positionFor({ low: -10, high: 10, curve: 'linear' }, 0)).toBe(0.5);
});

test('loops of resistive edges', () => {
  const good = { terminator: { resistance: 8200, tolerance: 0.05 }, cable: 2, pressed: 100, leakage: 1e6, panel: 0.01 };
  expect(statesOf(good)).toBeDefined();
  for (const key of ['cable', 'pressed', 'leakage', 'panel'] as const) {
    for (const bad of [-0.001, NaN]) expect(statesOf({ ...good, [key]: bad }), `${key} ${bad}`).toBeUndefined();
    expect(statesOf({ ...good, [key]: 0 }), key).toBeDefined();
  }
  expect(statesOf({ ...good, panel: 1 })).toBeUndefined();
});

test('force of a spring, and weight', () => {
  holds({ energy: 5, stiffness: 1000 }, { energy: 'amount', stiffness: 'above' }, ({ energy, stiffness }) =>
    elasticPeak(energy, stiffness),
  );
  // √(2 · 1000 N/m · 5 J) = 100 N.
  expect(elasticPeak(5, 1000)).toBe(100);
  // A hinge that leans by 2°: half of 150 kg · 9.80665 · 2 m · sin 2°, at 90° from where the leaf hangs lowest.
  const leaf = { tilt: (2 * Math.PI) / 180, mass: 150, width: 2, lowest: 0, climb: 3 };
  expect(gravityAt(leaf, Math.PI / 2)).toBeCloseTo(3 + 150 * 9.80665 * Math.sin(leaf.tilt), 9);
  expect(gravityAt(leaf, 0)).toBe(3);
  expect(gravityAt({ ...leaf, lowest: Math.PI / 2 }, 0)).toBeCloseTo(3 - 150 * 9.80665 * Math.sin(leaf.tilt), 9);
  expect(gravityAt({ ...leaf, tilt: 0 }, 1)).toBe(3);
});

test('linkages of no travel', () => {
  for (const travel of [0, -1, NaN, Infinity]) {
    expect(directLinkage(travel)).toBeUndefined();
    expect(rackLinkage(travel)).toBeUndefined();
    expect(ramLinkage({ along: 0.14, out: 0.12, leafBracket: 0.78 }, travel)).toBeUndefined();
  }
  expect(ramLinkage({ along: NaN, out: 0.12, leafBracket: 0.78 }, 1)).toBeUndefined();
});

describe('the gap under a leaf', () => {
  const good = { gap: 0.1, width: 2, slope: 0.02, rises: 0.05, tilt: 0.02, lowest: 'closed' } as const;
  test('of what cannot be', () => {
    for (const change of [
      { gap: -0.01 },
      { gap: NaN },
      { gap: Infinity },
      { width: 0 },
      { width: -1 },
      { width: NaN },
      { width: Infinity },
      { rises: -0.01 },
      { rises: NaN },
      { rises: Infinity },
      { slope: NaN },
      { slope: Infinity },
      { tilt: -0.01 },
      { tilt: Math.PI / 2 },
      { tilt: NaN },
    ])
      expect(clearance({ ...good, ...change }, 1.5), JSON.stringify(change)).toBeUndefined();
    for (const travel of [0, -1, NaN, Math.PI * 1.001]) expect(clearance(good, travel)).toBeUndefined();
    for (const change of [{ gap: 0 }, { rises: 0 }, { tilt: 0 }, { slope: 0 }])
      expect(clearance({ ...good, ...change }, Math.PI)).toBeDefined();
  });
  test('of plain cases', () => {
    const even = { ...good, slope: 0, rises: 0, tilt: 0 };
    expect(clearance(even, 1.5)).toEqual({ least: 0.1, at: 0, greatest: 0.1 });
    // Hinges that lift it by 50 mm: nothing less than when closed.
    expect(clearance({ ...even, rises: 0.05 }, 1.5)).toMatchObject({ least: 0.1, at: 0 });
    expect(clearance({ ...even, rises: 0.05 }, 1.5)?.greatest).toBeCloseTo(0.15, 12);
    // Ground that rises by 2 %: 40 mm less under an edge 2 m out, at 90°.
    const up = clearance({ ...even, slope: 0.02 }, Math.PI / 2);
    expect(up?.least).toBeCloseTo(0.06, 12);
    expect(up?.at).toBeCloseTo(Math.PI / 2, 12);
    expect(up?.greatest).toBe(0.1);
    // The same, opening on to 135°: it is still least at 90°.
    expect(clearance({ ...even, slope: 0.02 }, (3 * Math.PI) / 4)?.at).toBeCloseTo(Math.PI / 2, 9);
    // Ground that falls: 40 mm more.
    expect(clearance({ ...even, slope: -0.02 }, Math.PI / 2)?.greatest).toBeCloseTo(0.14, 12);
  });
});
