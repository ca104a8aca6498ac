import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { greatestSpeeds } from '../../server/figures/edge-speed/maths.ts';
import type { Linkage } from '../../server/figures/linkage/maths.ts';
import {
  type Direction,
  type Profile,
  type ProfileSpec,
  profileOf,
  runTime,
  speedAt,
  timeAt,
  travelAt,
} from '../../server/figures/motion-profile/maths.ts';

const degree = Math.PI / 180;

function identity(end: number): Linkage {
  const leaf = Float64Array.from({ length: 49 }, (_, i) => (i * end) / 48);
  return { leaf, drive: leaf.slice(), rate: new Float64Array(49).fill(1) };
}

/** Pulling ram, bracket behind the hinge by `along` and out by `out`, on the leaf at `arm`: the law of cosines. */
interface Ram {
  readonly along: number;
  readonly out: number;
  readonly arm: number;
}
const sideA = ({ along, out }: Ram): number => Math.hypot(along, out);
const inner = ({ along, out }: Ram, angle: number): number => Math.PI - Math.atan2(out, along) - angle;
const ramLength = (r: Ram, angle: number): number =>
  Math.sqrt(sideA(r) ** 2 + r.arm ** 2 - 2 * sideA(r) * r.arm * Math.cos(inner(r, angle)));
const leverOf = (r: Ram, angle: number): number => (sideA(r) * r.arm * Math.sin(inner(r, angle))) / ramLength(r, angle);
const ramDrive = (r: Ram, angle: number): number => ramLength(r, 0) - ramLength(r, angle);
const ramAngle = (r: Ram, drive: number): number =>
  inner(r, 0) - Math.acos((sideA(r) ** 2 + r.arm ** 2 - (ramLength(r, 0) - drive) ** 2) / (2 * sideA(r) * r.arm));

function ram(r: Ram, end: number): Linkage {
  const leaf = Float64Array.from({ length: 49 }, (_, i) => (i * end) / 48);
  return { leaf, drive: leaf.map((angle) => ramDrive(r, angle)), rate: leaf.map((angle) => leverOf(r, angle)) };
}

const reference: Ram = { along: 0.15, out: 0.15, arm: 0.8 };
const made = (spec: ProfileSpec): Profile => profileOf(spec)!;
const steady = (travel: number, speed: number): Profile => made({ travel, speed, acceleration: Infinity, slowTravel: 0, slowSpeed: 0 });

describe('ram at a steady 0.016 m/s', () => {
  // Reference 4.1, derived there three ways: ω at 0° 7.3474, at 110° 7.8522 °/s; run time to 90° 18.418 s.
  test('0 → 90°: fastest at closed', () => {
    const profile = steady(ramDrive(reference, 90 * degree), 0.016);
    expect(runTime(profile)).toBeCloseTo(18.418, 3);
    const opening = greatestSpeeds(ram(reference, 90 * degree), profile, 0, 'opening')!;
    expect(opening.overall / degree).toBeCloseTo(7.3474, 3);
    expect(opening.overallAt).toBeCloseTo(0, 9);
    expect(opening.inSlowZone).toBeUndefined();
    const closing = greatestSpeeds(ram(reference, 90 * degree), profile, 0, 'closing')!;
    expect(closing.overall / degree).toBeCloseTo(7.3474, 3);
    expect(closing.overallAt).toBeCloseTo(0, 9);
  });
  test('0 → 110°: fastest at the open end', () => {
    const linkage = ram(reference, 110 * degree);
    const profile = steady(ramDrive(reference, 110 * degree), 0.016);
    for (const direction of ['opening', 'closing'] as const) {
      const speeds = greatestSpeeds(linkage, profile, 0, direction)!;
      expect(speeds.overall / degree).toBeCloseTo(7.8522, 3);
      expect(speeds.overallAt / degree).toBeCloseTo(110, 6);
    }
  });
});

describe('slow zone', () => {
  test('the last of full speed and the first of the slow zone both count', () => {
    // Rate falls, so the leaf is fastest at the end of each stretch: 0.2/rate at 0.8, and 0.1/rate at 1.
    const drive = Float64Array.from({ length: 49 }, (_, i) => i / 48);
    const rate = drive.map((d) => 2 - d);
    // d leaf = d drive / (2 − drive), so leaf = ln(2 / (2 − drive)).
    const linkage: Linkage = { leaf: drive.map((d) => Math.log(2 / (2 - d))), drive, rate };
    const profile = made({ travel: 1, speed: 0.2, acceleration: Infinity, slowTravel: 0.2, slowSpeed: 0.1 });
    const opening = greatestSpeeds(linkage, profile, 0.2, 'opening')!;
    expect(opening.overall).toBeCloseTo(0.2 / 1.2, 9);
    expect(opening.overallAt).toBeCloseTo(Math.log(2 / 1.2), 6);
    expect(opening.inSlowZone).toBeCloseTo(0.1, 9);
    const closing = greatestSpeeds(linkage, profile, 0.2, 'closing')!;
    expect(closing.overall).toBeCloseTo(0.2, 9);
    expect(closing.overallAt).toBeCloseTo(Math.log(2), 9);
    expect(closing.inSlowZone).toBeCloseTo(0.1 / 1.8, 9);
  });
  test('a zone not on a sample, even linkage: its own speed', () => {
    const profile = made({ travel: 1, speed: 0.3, acceleration: 0.5, slowTravel: 0.137, slowSpeed: 0.07 });
    const speeds = greatestSpeeds(identity(1), profile, 0.137, 'closing')!;
    expect(speeds.overall).toBeCloseTo(0.3, 12);
    expect(speeds.inSlowZone).toBeCloseTo(0.07, 9);
  });
  test('between two samples while speeding up', () => {
    // v² = 2s, rate 1 + 5s: v/rate is greatest at s = 0.2, between samples of a linkage with few of them.
    const drive = Float64Array.of(0, 0.5, 1);
    const leaf = drive.map((d) => Math.log(1 + 5 * d) / 5);
    const linkage: Linkage = { leaf, drive, rate: drive.map((d) => 1 + 5 * d) };
    const profile = made({ travel: 1, speed: Infinity, acceleration: 1, slowTravel: 0, slowSpeed: 0 });
    const speeds = greatestSpeeds(linkage, profile, 0, 'opening')!;
    expect(speeds.overall).toBeCloseTo(Math.sqrt(0.4) / 2, 12);
    expect(Math.abs(speeds.overallAt - Math.log(2) / 5)).toBeLessThan(0.03);
    // Closing on the mirror image of the linkage is the same motion.
    const back: Linkage = {
      drive,
      rate: drive.map((d) => 1 + 5 * (1 - d)),
      leaf: drive.map((d) => (Math.log(6) - Math.log(1 + 5 * (1 - d))) / 5),
    };
    const closing = greatestSpeeds(back, profile, 0, 'closing')!;
    expect(closing.overall).toBeCloseTo(Math.sqrt(0.4) / 2, 12);
    expect(Math.abs(closing.overallAt - Math.log(3) / 5)).toBeLessThan(0.03);
  });
});

describe('while braking, against the closed form', () => {
  // From half way on v² = 2u with u still to go. At a rate of 1 + 5u the leaf's v² is 2u / (1 + 5u)², greatest at u = 1/5: 1/10.
  const profile = made({ travel: 1, speed: Infinity, acceleration: 1, slowTravel: 0, slowSpeed: 0 });
  test.each([[[0, 0.5, 1]], [[0, 0.3, 0.6, 1]], [[0, 0.7, 1]], [[0, 0.25, 0.5, 0.75, 0.78, 1]]])(
    'opening and closing, samples at %j',
    (samples) => {
      const drive = Float64Array.from(samples);
      const linkage: Linkage = {
        drive,
        rate: drive.map((d) => 1 + 5 * (1 - d)),
        leaf: drive.map((d) => (Math.log(6) - Math.log(1 + 5 * (1 - d))) / 5),
      };
      const opening = greatestSpeeds(linkage, profile, 0, 'opening')!;
      expect(opening.overall).toBeCloseTo(Math.sqrt(0.1), 12);
      expect(Math.abs(opening.overallAt - (Math.log(6) - Math.log(2)) / 5)).toBeLessThan(0.03);
      const backDrive = Float64Array.from(samples.map((d) => 1 - d).reverse());
      const back: Linkage = {
        drive: backDrive,
        rate: backDrive.map((d) => 1 + 5 * d),
        leaf: backDrive.map((d) => Math.log(1 + 5 * d) / 5),
      };
      const closing = greatestSpeeds(back, profile, 0, 'closing')!;
      expect(closing.overall).toBeCloseTo(Math.sqrt(0.1), 12);
      expect(Math.abs(closing.overallAt - Math.log(2) / 5)).toBeLessThan(0.03);
    },
  );
  test('in a slow zone that begins before and after that place', () => {
    const drive = Float64Array.of(0, 0.5, 1);
    const linkage: Linkage = {
      drive,
      rate: drive.map((d) => 1 + 5 * (1 - d)),
      leaf: drive.map((d) => (Math.log(6) - Math.log(1 + 5 * (1 - d))) / 5),
    };
    // The zone is only looked at here: nothing slows it down.
    expect(greatestSpeeds(linkage, profile, 0.4, 'opening')!.inSlowZone).toBeCloseTo(Math.sqrt(0.1), 12);
    expect(greatestSpeeds(linkage, profile, 0.1, 'opening')!.inSlowZone).toBeCloseTo(Math.sqrt(0.2) / 1.5, 12);
    expect(greatestSpeeds(linkage, profile, 1, 'opening')!.inSlowZone).toBeCloseTo(Math.sqrt(0.1), 12);
    expect(greatestSpeeds(linkage, profile, 7, 'opening')!.inSlowZone).toBeCloseTo(Math.sqrt(0.1), 12);
    expect(greatestSpeeds(linkage, profile, 0, 'opening')!.inSlowZone).toBeUndefined();
  });
});

test('an even speed is greatest at the end of the stroke where the rate falls to the end', () => {
  const drive = Float64Array.of(0, 0.5, 1);
  const linkage: Linkage = { drive, rate: Float64Array.of(2, 1.5, 1), leaf: drive.map((d) => 2 * Math.log(1 / (1 - d / 2))) };
  for (const travel of [1, 1 - 1e-12, 1 + 1e-12]) {
    expect(greatestSpeeds(linkage, steady(travel, 0.1), 0, 'opening')!.overall).toBeCloseTo(0.1, 9);
    expect(greatestSpeeds(linkage, steady(travel, 0.1), 0, 'opening')!.overallAt).toBeCloseTo(linkage.leaf[2]!, 9);
    expect(greatestSpeeds(linkage, steady(travel, 0.1), 0, 'closing')!.overallAt).toBeCloseTo(linkage.leaf[2]!, 9);
  }
  // Where it stops short, it never comes there.
  expect(greatestSpeeds(linkage, steady(0.5, 0.1), 0, 'opening')!.overall).toBeCloseTo(0.1 / 1.5, 12);
  expect(greatestSpeeds(linkage, steady(0.3, 0.1), 0, 'closing')!.overall).toBeCloseTo(0.1 / 1.7, 12);
});

test('a stroke longer than the linkage, or an impossible zone, is undefined; a shorter stroke is not', () => {
  expect(greatestSpeeds(identity(1), steady(1.01, 0.1), 0, 'opening')).toBeUndefined();
  expect(greatestSpeeds(identity(1), steady(1, 0.1), -0.1, 'opening')).toBeUndefined();
  expect(greatestSpeeds(identity(1), steady(1, 0.1), NaN, 'opening')).toBeUndefined();
  expect(greatestSpeeds(identity(1), steady(0.7, 0.1), 0, 'closing')!.overallAt).toBeCloseTo(0.7, 9);
  expect(greatestSpeeds(identity(1), steady(1 + 1e-12, 0.1), 0, 'closing')!.overall).toBeCloseTo(0.1, 12);
});

test('against small steps of time on the exact ram', () => {
  const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      fc.record({ along: between(0.1, 0.25), out: between(0.08, 0.25), arm: between(0.5, 1.2) }),
      between(40, 105),
      fc.record({
        share: between(0.5, 1),
        speed: between(0.005, 0.05),
        acceleration: fc.oneof(between(0.005, 0.1), fc.constant(Infinity)),
        slowShare: between(0.02, 0.5),
        slowSpeed: between(0.003, 0.03),
      }),
      fc.constantFrom<Direction>('opening', 'closing'),
      (r, endDegrees, s, direction) => {
        const end = endDegrees * degree;
        fc.pre(inner(r, end) > 0.25);
        const travel = s.share * ramDrive(r, end);
        const slowTravel = s.slowShare * travel;
        const profile = made({ travel, speed: s.speed, acceleration: s.acceleration, slowTravel, slowSpeed: s.slowSpeed });
        const found = greatestSpeeds(ram(r, end), profile, slowTravel, direction)!;
        let overall = 0;
        let inSlowZone = 0;
        const steps = 3000;
        const times = Array.from({ length: steps }, (_, i) => (i / steps) * runTime(profile));
        for (const junction of [...profile.startTime, timeAt(profile, travel - slowTravel)])
          times.push(junction, junction - 1e-9, junction + 1e-9);
        for (const t of times) {
          if (t < 0) continue;
          const done = travelAt(profile, t);
          const angle = ramAngle(r, direction === 'opening' ? done : travel - done);
          const speed = speedAt(profile, t) / leverOf(r, angle);
          overall = Math.max(overall, speed);
          if (done > travel - slowTravel) inSlowZone = Math.max(inSlowZone, speed);
        }
        // Between its samples the figure takes the lever for shorter than it is: never too slow, and some tenths of a per cent too
        // fast at the most, where a short arm turns far.
        for (const [told, walked] of [
          [found.overall, overall],
          [found.inSlowZone!, inSlowZone],
        ] as const) {
          expect(told).toBeGreaterThan(walked * (1 - 1e-9));
          expect(told).toBeLessThan(walked * (1 + 4e-3));
        }
      },
    ),
  );
});
