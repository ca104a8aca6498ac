import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Profile,
  type ProfileSpec,
  pieceAtTime,
  profileOf,
  runTime,
  speedAt,
  timeAt,
  timeInPiece,
  travelAt,
  wholeTravel,
} from '../../server/figures/motion-profile/maths.ts';

const made = (spec: ProfileSpec): Profile => {
  const p = profileOf(spec);
  if (p === undefined) throw new Error(`no profile for ${JSON.stringify(spec)}`);
  return p;
};
const plain = (travel: number, speed: number, acceleration: number): Profile =>
  made({ travel, speed, acceleration, slowTravel: 0, slowSpeed: 0 });

describe('trapezoid and triangle', () => {
  test('10 m, 0.3 m/s², 0.5 m/s: 21.667 s', () => {
    // By hand: t = v/a + s/v = 0.5/0.3 + 10/0.5.
    expect(runTime(plain(10, 0.5, 0.3))).toBeCloseTo(21.6666667, 6);
  });
  test('10 m, 0.3 m/s², no speed limit: 11.547 s', () => {
    // By hand: 2·√(s/a) = 2·√(10/0.3).
    expect(runTime(plain(10, Infinity, 0.3))).toBeCloseTo(11.5470054, 6);
  });
  test('90°, 10 °/s, 5 °/s²: 11.0 s', () => {
    // By hand: 2 s + 7 s + 2 s. Scale-free, so degrees serve as well as radians.
    expect(runTime(plain(90, 10, 5))).toBeCloseTo(11, 12);
    expect(runTime(plain(Math.PI / 2, Math.PI / 18, Math.PI / 36))).toBeCloseTo(11, 9);
  });
  test('6 m, 0.2 m/s, speeding up 0.1 m/s², braking 0.4 m/s²: 31.25 s', () => {
    // By hand: 6/0.2 + 0.2/(2·0.1) + 0.2/(2·0.4) = 31.25 s. Put together from the first half of one even stroke and the last half of another.
    const speedingUp = timeAt(plain(6, 0.2, 0.1), 3);
    const braking = timeAt(plain(6, 0.2, 0.4), 3);
    expect(speedingUp + braking).toBeCloseTo(31.25, 9);
  });
  test('the exact boundary 1 m, 0.5 m/s, 0.25 m/s²: 4.0 s from both sides', () => {
    // By hand: v²/a = s, so the triangle and the trapezoid are the same stroke.
    const p = plain(1, 0.5, 0.25);
    expect(runTime(p)).toBe(4);
    expect(p.startTime.length).toBe(3);
    expect(runTime(plain(1 + 1e-12, 0.5, 0.25))).toBeCloseTo(4, 10);
    expect(runTime(plain(1 - 1e-12, 0.5, 0.25))).toBeCloseTo(4, 10);
    expect(speedAt(p, 2)).toBe(0.5);
    expect(travelAt(p, 2)).toBe(0.5);
  });
});

test('each entry of a triangle and of a trapezoid, worked by hand', () => {
  // 9 m at 1 m/s²: 3 s up to 3 m/s, 3 s down.
  expect(plain(9, Infinity, 1)).toEqual({
    startTime: [0, 3, 6],
    startTravel: [0, 4.5, 9],
    startSpeed: [0, 3, 0],
    acceleration: [1, -1, 0],
  });
  expect(plain(9, 3, 1)).toEqual(plain(9, Infinity, 1));
  // 9 m at 4 m/s²: 1.5 s up to 6 m/s.
  expect(plain(9, 6.5, 4)).toEqual({ startTime: [0, 1.5, 3], startTravel: [0, 4.5, 9], startSpeed: [0, 6, 0], acceleration: [4, -4, 0] });
  expect(plain(9, 2, 1)).toEqual({
    startTime: [0, 2, 4.5, 6.5],
    startTravel: [0, 2, 7, 9],
    startSpeed: [0, 2, 2, 0],
    acceleration: [1, 0, -1, 0],
  });
});

describe('slow zone', () => {
  test('each entry worked by hand, with room for full speed and without', () => {
    // 1 m/s², slow 1 m/s over the last 2 m. Full speed 2 m/s: up 2 m in 2 s, braking 1.5 m in 1 s, slow over 1.5 m, stop 0.5 m in 1 s.
    expect(made({ travel: 8, speed: 2, acceleration: 1, slowTravel: 2, slowSpeed: 1 })).toEqual({
      startTime: [0, 2, 3.25, 4.25, 5.75, 6.75],
      startTravel: [0, 2, 4.5, 6, 7.5, 8],
      startSpeed: [0, 2, 2, 1, 1, 0],
      acceleration: [1, 0, -1, 0, -1, 0],
    });
    // 3.5 m before the zone: it just reaches 2 m/s (2 m up, 1.5 m down), so a higher full speed changes nothing.
    const peak = {
      startTime: [0, 2, 3, 4.5, 5.5],
      startTravel: [0, 2, 3.5, 5, 5.5],
      startSpeed: [0, 2, 1, 1, 0],
      acceleration: [1, -1, 0, -1, 0],
    };
    for (const speed of [2, 3, Infinity]) expect(made({ travel: 5.5, speed, acceleration: 1, slowTravel: 2, slowSpeed: 1 })).toEqual(peak);
  });
  test('a zone that begins just where the slow speed is reached, and one in which it just stops', () => {
    // 0.5 m/s at 0.25 m/s² takes 0.5 m, exactly.
    expect(made({ travel: 2, speed: 1, acceleration: 0.25, slowTravel: 1.5, slowSpeed: 0.5 })).toEqual(plain(2, 0.5, 0.25));
    expect(made({ travel: 9, speed: 1, acceleration: 0.25, slowTravel: 0.5, slowSpeed: 0.5 })).toEqual(plain(9, 1, 0.25));
  });

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
      expect(jumps).toEqual(plain(1, 0.1, Infinity));
      const ramps = made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel, slowSpeed: 0.1 });
      expect(runTime(ramps)).toBeCloseTo(runTime(plain(1, 0.1, 0.1)), 12);
    }
  });
  test('a slow speed not below full speed is no slow zone', () => {
    for (const slowSpeed of [0.2, 0.3, 1, Infinity])
      expect(made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel: 0.3, slowSpeed })).toEqual(plain(1, 0.2, 0.1));
    expect(made({ travel: 1, speed: 0.2, acceleration: Infinity, slowTravel: 0.3, slowSpeed: 0.3 })).toEqual(plain(1, 0.2, Infinity));
  });
  test('where there is no zone its speed is not looked at', () => {
    for (const slowSpeed of [-1, 0, 0.05, 0.19, NaN]) {
      expect(made({ travel: 1, speed: 0.2, acceleration: 0.1, slowTravel: 0, slowSpeed })).toEqual(plain(1, 0.2, 0.1));
      expect(made({ travel: 1, speed: 0.2, acceleration: Infinity, slowTravel: 0, slowSpeed })).toEqual(plain(1, 0.2, Infinity));
    }
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
    { travel: 0 },
    { travel: -1 },
    { travel: Infinity },
    { travel: NaN },
    { speed: 0 },
    { speed: -1 },
    { speed: NaN },
    { acceleration: 0 },
    { acceleration: -1 },
    { acceleration: NaN },
    { slowTravel: -0.1 },
    { slowTravel: NaN },
    { slowTravel: Infinity },
    { slowSpeed: 0 },
    { slowSpeed: -1 },
    { slowSpeed: NaN },
    { speed: Infinity, acceleration: Infinity },
  ];
  for (const change of bad)
    for (const acceleration of [0.1, Infinity])
      expect(profileOf({ ...good, acceleration, ...change }), JSON.stringify(change)).toBeUndefined();
  for (const travel of [0, -1, Infinity, NaN])
    for (const acceleration of [0.1, Infinity]) expect(profileOf({ ...good, acceleration, travel, slowTravel: 0 })).toBeUndefined();
  // Braking where it should speed up would leave a stroke of a kind.
  expect(profileOf({ travel: 1, speed: 1, acceleration: -0.5, slowTravel: 0.99, slowSpeed: 0.2 })).toBeUndefined();
  // Times beyond the range of numbers, above and below.
  expect(profileOf({ travel: 1e300, speed: 1e-300, acceleration: Infinity, slowTravel: 0, slowSpeed: 1 })).toBeUndefined();
  expect(profileOf({ travel: 1e-300, speed: 1e300, acceleration: Infinity, slowTravel: 0, slowSpeed: 1 })).toBeUndefined();
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
        expect(speedAt(p, -1)).toBe(0);
        expect(timeAt(p, -1)).toBe(0);
        for (const t of [runTime(p), runTime(p) + 1, Infinity]) {
          expect(travelAt(p, t)).toBe(spec.travel);
          expect(speedAt(p, t)).toBe(0);
        }
        expect(timeAt(p, 0)).toBe(0);
        expect(timeAt(p, spec.travel)).toBe(runTime(p));
        expect(timeAt(p, spec.travel + 1)).toBe(runTime(p));
        expect(timeAt(p, Infinity)).toBe(runTime(p));
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
          const limits = [
            inZone ? slow * slow : spec.speed * spec.speed,
            2 * spec.acceleration * s,
            2 * spec.acceleration * (spec.travel - s),
          ];
          if (spec.slowTravel > 0 && !inZone) limits.push(slow * slow + 2 * spec.acceleration * (zone - s));
          const speed = speedAt(p, timeAt(p, s));
          expect(Math.abs(speed - Math.sqrt(Math.min(...limits)))).toBeLessThan(1e-6);
        }
      }),
    );
  });

  test('not a number in, not a number out', () => {
    for (const p of [plain(1, 0.2, 0.1), plain(1, 0.2, Infinity)]) for (const f of [travelAt, timeAt, speedAt]) expect(f(p, NaN)).toBeNaN();
  });
});

describe('next to the end, where the numbers nearly cancel', () => {
  // Braking from 0.3 m/s at 0.07 m/s²: a last 2⁻³⁰ s before standstill has a·t left of the speed and a·t²/2 of the travel, and
  // of a last 2⁻⁴⁰ m it is √(2·s/a) to the end. Taken from the start of the braking these would be lost in rounding.
  const p = plain(1.1, 0.3, 0.07);
  const end = runTime(p);
  test('the speed keeps its digits', () => {
    const left = end - (end - 2 ** -30);
    expect(speedAt(p, end - left) / (0.07 * left)).toBeCloseTo(1, 12);
  });
  test('the time keeps its digits', () => {
    const left = 1.1 - (1.1 - 2 ** -40);
    expect(end - timeAt(p, 1.1 - left)).toBeCloseTo(Math.sqrt((2 * left) / 0.07), 13);
  });
  test('the travel never goes beyond the whole, nor back', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const stroke = made(spec);
        let before = 0;
        for (let i = 60; i > 0; i -= 1) {
          const travel = travelAt(stroke, runTime(stroke) * (1 - i * 2 ** -52));
          expect(travel).toBeGreaterThanOrEqual(before);
          before = travel;
        }
        expect(before).toBeLessThanOrEqual(spec.travel);
      }),
    );
  });
});

describe('within a piece', () => {
  test('a distance of nothing, or less by rounding, takes no time', () => {
    for (const p of [plain(1, 0.2, 0.1), plain(1, 0.2, Infinity)])
      for (const travel of [0, -1e-18, -1e-3]) expect(timeInPiece(p, 0, travel)).toBe(0);
    const p = plain(1, 0.2, 0.1);
    expect(timeInPiece(p, 2, 1 + 1e-16)).toBe(runTime(p));
    expect(timeInPiece(p, 2, 1.001)).toBe(runTime(p));
  });
  test('a junction belongs to the piece that it begins', () => {
    const p = made({ travel: 8, speed: 2, acceleration: 1, slowTravel: 2, slowSpeed: 1 });
    expect([-1, 0, 1.999, 2, 3.25, 4.25, 5.75, 6.749, 6.75, 9].map((t) => pieceAtTime(p, t))).toEqual([0, 0, 0, 1, 2, 3, 4, 4, 5, 5]);
    expect(pieceAtTime(p, NaN)).toBe(0);
    expect([2, 4.5, 6, 7.5, 8].map((travel) => timeAt(p, travel))).toEqual([2, 3.25, 4.25, 5.75, 6.75]);
  });
  test('speeding up need not begin at the start', () => {
    // 1 m/s for 2 s, then 0.5 m/s² for 2 s.
    const p: Profile = { startTime: [0, 2, 4], startTravel: [0, 2, 5], startSpeed: [1, 1, 0], acceleration: [0, 0.5, 0] };
    expect([1, 3, 3.5].map((t) => speedAt(p, t))).toEqual([1, 1.5, 1.75]);
    expect([1, 3, 4].map((t) => travelAt(p, t))).toEqual([1, 3.25, 5]);
    expect([1, 3.25].map((travel) => timeAt(p, travel))).toEqual([1, 3]);
  });
});
