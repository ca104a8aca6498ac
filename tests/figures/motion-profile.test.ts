import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { profileOf, runTime, speedAt, timeAt, travelAt, wholeTravel } from '../../server/figures/motion-profile/maths.ts';
import type { Profile, ProfileSpec } from '../../server/figures/motion-profile/maths.ts';

const made = (spec: ProfileSpec): Profile => {
  const p = profileOf(spec);
  if (p === undefined) throw new Error(`no profile for ${JSON.stringify(spec)}`);
  return p;
};
const plain = (travel: number, speed: number, acceleration: number): Profile => made({ travel, speed, acceleration, slowTravel: 0, slowSpeed: 0 });

describe('trapezoid and triangle', () => {
  test('10 m, 0.3 m/s², 0.5 m/s: 21.667 s', () => {
    // Published exercise (reference 4.4): data found, 21.667 s by t = v/a + s/v.
    expect(runTime(plain(10, 0.5, 0.3))).toBeCloseTo(21.6666667, 6);
  });
  test('10 m, 0.3 m/s², no speed limit: 11.547 s', () => {
    // Published exercise (reference 4.4): 11.547 s found; 2·√(s/a).
    expect(runTime(plain(10, Infinity, 0.3))).toBeCloseTo(11.5470054, 6);
  });
  test('90°, 10 °/s, 5 °/s²: 11.0 s', () => {
    // Derived (reference 4.4): 2 s + 7 s + 2 s. Scale-free, so degrees serve as well as radians.
    expect(runTime(plain(90, 10, 5))).toBeCloseTo(11, 12);
    expect(runTime(plain(Math.PI / 2, Math.PI / 18, Math.PI / 36))).toBeCloseTo(11, 9);
  });
  test('6 m, 0.2 m/s, speeding up 0.1 m/s², braking 0.4 m/s²: 31.25 s', () => {
    // Derived (reference 4.4). Put together from the first half of one even stroke and the last half of another.
    const speedingUp = timeAt(plain(6, 0.2, 0.1), 3);
    const braking = timeAt(plain(6, 0.2, 0.4), 3);
    expect(speedingUp + braking).toBeCloseTo(31.25, 9);
  });
  test('the exact boundary 1 m, 0.5 m/s, 0.25 m/s²: 4.0 s from both sides', () => {
    // Derived (reference 4.4): v²/a = s, so the triangle and the trapezoid are the same stroke.
    const p = plain(1, 0.5, 0.25);
    expect(runTime(p)).toBe(4);
    expect(p.startTime.length).toBe(3);
    expect(runTime(plain(1 + 1e-12, 0.5, 0.25))).toBeCloseTo(4, 10);
    expect(runTime(plain(1 - 1e-12, 0.5, 0.25))).toBeCloseTo(4, 10);
    expect(speedAt(p, 2)).toBe(0.5);
    expect(travelAt(p, 2)).toBe(0.5);
  });
});

describe('slow zone', () => {
  test('worked by hand: 1 m, 0.2 m/s, 0.1 m/s², last 0.2 m at 0.1 m/s', () => {
    // 0.2 m up in 2 s; brake 0.2 → 0.1 takes 1 s over 0.15 m; full speed over 0.45 m in 2.25 s;
    // slow 0.2 − 0.05 m in 1.5 s; stop in 1 s over 0.05 m.
    const p = made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel: 0.2, slowSpeed: 0.1 });
    expect(runTime(p)).toBeCloseTo(7.75, 12);
    expect(timeAt(p, 0.8)).toBeCloseTo(5.25, 12);
    expect(speedAt(p, 5.25)).toBeCloseTo(0.1, 12);
    expect(travelAt(p, 4.25)).toBeCloseTo(0.65, 12);
  });
  test('no limit on acceleration: the speeds jump', () => {
    const p = made({ travel: 1, speed: 0.2, acceleration: Infinity, slowTravel: 0.2, slowSpeed: 0.1 });
    expect(runTime(p)).toBeCloseTo(6, 12);
    expect(speedAt(p, 0)).toBe(0.2);
    expect(speedAt(p, 3.999999)).toBe(0.2);
    expect(speedAt(p, timeAt(p, 0.8))).toBe(0.1);
    expect(speedAt(p, 6)).toBe(0);
    expect(travelAt(p, 5)).toBeCloseTo(0.9, 12);
    expect(wholeTravel(p)).toBe(1);
  });
  test('a zone as long as the stroke, or longer, runs at the slow speed', () => {
    for (const slowTravel of [1, 5]) {
      const jumps = made({ travel: 1, speed: 0.2, acceleration: Infinity, slowTravel, slowSpeed: 0.1 });
      expect(runTime(jumps)).toBeCloseTo(10, 12);
      const ramps = made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel, slowSpeed: 0.1 });
      expect(runTime(ramps)).toBeCloseTo(runTime(plain(1, 0.1, 0.1)), 12);
    }
  });
  test('a slow speed not below full speed is no slow zone', () => {
    expect(made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel: 0.3, slowSpeed: 0.3 })).toEqual(plain(1, 0.2, 0.1));
  });
  test('a zone too short to stop in is entered slower', () => {
    const p = made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel: 0.02, slowSpeed: 0.1 });
    expect(speedAt(p, timeAt(p, 0.98))).toBeCloseTo(Math.sqrt(2 * 0.1 * 0.02), 9);
    expect(runTime(p)).toBeCloseTo(7, 12); // 2 s up and 2 s down over 0.2 m each, 0.6 m in 3 s
  });
});

test('what cannot be is undefined', () => {
  const good: ProfileSpec = { travel: 1, speed: 0.2, acceleration: 0.1, slowTravel: 0.2, slowSpeed: 0.1 };
  expect(profileOf(good)).toBeDefined();
  const bad: Partial<ProfileSpec>[] = [
    { travel: 0 }, { travel: -1 }, { travel: Infinity }, { travel: NaN }, { speed: 0 }, { speed: -1 }, { speed: NaN },
    { acceleration: 0 }, { acceleration: -1 }, { acceleration: NaN }, { slowTravel: -0.1 }, { slowTravel: NaN }, { slowTravel: Infinity },
    { slowSpeed: 0 }, { slowSpeed: -1 }, { slowSpeed: NaN }, { speed: Infinity, acceleration: Infinity },
  ];
  for (const change of bad) expect(profileOf({ ...good, ...change }), JSON.stringify(change)).toBeUndefined();
  expect(profileOf({ ...good, speed: Infinity })).toBeDefined();
  expect(profileOf({ ...good, slowTravel: 0, slowSpeed: NaN })).toBeDefined();
});

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const specs: fc.Arbitrary<ProfileSpec> = fc.record({
  travel: between(0.05, 10),
  speed: between(0.005, 1),
  acceleration: fc.oneof(between(0.005, 3), fc.constant(Infinity)),
  slowTravel: fc.oneof(fc.constant(0), between(0, 3)),
  slowSpeed: between(0.004, 1.2),
});

describe('any stroke', () => {
  test('the speed adds up to the travel', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const p = made(spec);
        let sum = 0;
        for (let i = 0; i + 1 < p.startTime.length; i += 1) {
          const from = p.startTime[i]!;
          const to = p.startTime[i + 1]!;
          // Simpson's rule is exact for a straight line; the ends from inside the piece, as the speed may jump there.
          const inside = (share: number): number => speedAt(p, from + (to - from) * share);
          const middle = inside(0.5);
          const slope = (inside(0.75) - inside(0.25)) * 2;
          sum += ((to - from) * (middle - slope / 2 + 4 * middle + middle + slope / 2)) / 6;
        }
        expect(sum).toBeCloseTo(spec.travel, 9);
        expect(wholeTravel(p)).toBe(spec.travel);
      }),
    );
  });

  test('the time at a travel and the travel at a time are each other’s opposite', () => {
    fc.assert(
      fc.property(specs, between(0, 1), (spec, share) => {
        const p = made(spec);
        const travel = share * spec.travel;
        expect(Math.abs(travelAt(p, timeAt(p, travel)) - travel)).toBeLessThan(1e-12 * (1 + spec.travel));
        const time = share * runTime(p);
        // Next to standstill a rounding of the travel is the square root of it in time.
        expect(Math.abs(timeAt(p, travelAt(p, time)) - time)).toBeLessThan(1e-6);
      }),
    );
  });

  test('pieces follow one another in time and travel', () => {
    fc.assert(
      fc.property(specs, fc.boolean(), (spec, isTiny) => {
        const p = made(isTiny ? { ...spec, slowTravel: spec.slowTravel / 100 } : spec);
        for (let i = 0; i + 1 < p.startTime.length; i += 1) {
          expect(p.startTime[i + 1]).toBeGreaterThan(p.startTime[i]!);
          expect(p.startTravel[i + 1]).toBeGreaterThan(p.startTravel[i]!);
        }
      }),
    );
  });

  test('both ends are exact, and hold beyond', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const p = made(spec);
        for (const t of [-1, 0]) expect(travelAt(p, t)).toBe(0);
        for (const t of [runTime(p), runTime(p) + 1, Infinity]) {
          expect(travelAt(p, t)).toBe(spec.travel);
          expect(speedAt(p, t)).toBe(0);
        }
        expect(timeAt(p, 0)).toBe(0);
        expect(timeAt(p, spec.travel)).toBe(runTime(p));
        expect(timeAt(p, spec.travel + 1)).toBe(runTime(p));
      }),
    );
  });

  test('every limit is kept, and at every travel one of them is reached', () => {
    fc.assert(
      fc.property(specs, fc.array(between(0.001, 0.999), { minLength: 20, maxLength: 20 }), (spec, shares) => {
        const p = made(spec);
        const slow = Math.min(spec.slowSpeed, spec.speed);
        const zone = spec.travel - spec.slowTravel;
        for (const share of shares) {
          const s = share * spec.travel;
          if (Math.abs(s - zone) < 1e-9) continue;
          const inZone = spec.slowTravel > 0 && s > zone;
          const limits = [inZone ? slow * slow : spec.speed * spec.speed, 2 * spec.acceleration * s, 2 * spec.acceleration * (spec.travel - s)];
          if (spec.slowTravel > 0 && !inZone) limits.push(slow * slow + 2 * spec.acceleration * (zone - s));
          const speed = speedAt(p, timeAt(p, s));
          expect(Math.abs(speed - Math.sqrt(Math.min(...limits)))).toBeLessThan(1e-6);
        }
      }),
    );
  });

  test('not a number in, not a number out', () => {
    const p = plain(1, 0.2, 0.1);
    for (const f of [travelAt, timeAt, speedAt]) expect(f(p, NaN)).toBeNaN();
  });
});
