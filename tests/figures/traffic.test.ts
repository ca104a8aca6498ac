// Traffic against published worked examples and against two independent ways to the distribution of the queue.
import fc from 'fast-check';
import { mean } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  cycleRate,
  cyclesAllowed,
  dutyFactor,
  mostVehicles,
  queueOf,
  queueShares,
  shareAbove,
  vehiclesFor,
} from '../../server/figures/traffic/maths.ts';
import { randomOf } from '../grammar/arbitrary.ts';

describe('duty type S3 (IEC 60034-1)', () => {
  it('25 % with 10 min running is 30 min at rest (worked example of a maker’s manual)', () => expect(dutyFactor(10, 30)).toBe(0.25));
  it('30 % of an hour at 30 s a cycle are 36 cycles (by hand)', () => expect(cyclesAllowed(0.3, 30)).toBe(36));
  it('no time has no duty', () => {
    expect(dutyFactor(0, 0)).toBeUndefined();
    expect(dutyFactor(-1, 2)).toBeUndefined();
  });
  it('a cycle that takes no time, or is no number, holds nothing up', () => {
    for (const cycle of [undefined, 0, -5, Number.NaN]) expect(cycleRate(0.3, cycle)).toBe(0.3);
  });
  it('cycles are the vehicles, or as many as follow one another', () => {
    expect(cycleRate(60 / 3600, undefined) * 3600).toBeCloseTo(60, 12);
    expect(cycleRate(60 / 3600, 50) * 3600).toBeCloseTo(60, 12);
    expect(cycleRate(60 / 3600, 90) * 3600).toBeCloseTo(40, 12);
  });
});

describe('the queues M/D/1 and M/M/1', () => {
  // Arrivals and services an hour; M/D/1 Lq, Wq, W in seconds; M/M/1 the same. 180/240: Mannering, Principles of Highway
  // Engineering and Traffic Analysis (M/D/1, from memory); 120/180: a toll booth at 2 and 3 a minute; 6/10 and 300/360: textbook
  // problems, the last of NPTEL, Transportation Engineering (its own print is rounded); 60/120: by hand.
  it.each([
    [180, 240, 1.125, 22.5, 37.5, 2.25, 45, 60],
    [120, 180, 0.6667, 20, 40, 4 / 3, 40, 60],
    [6, 10, 0.45, 270, 630, 0.9, 540, 900],
    [300, 360, 2.0833, 25, 35, 4.1667, 50, 60],
    [30, 40, 1.125, 135, 225, 2.25, 270, 360],
    [60, 120, 0.25, 15, 45, 0.5, 30, 60],
  ])('%i and %i an hour', (arrivals, services, waiting, wait, through, randomWaiting, randomWait, randomThrough) => {
    const even = queueOf(arrivals / 3600, 3600 / services);
    expect(even?.load).toBeCloseTo(arrivals / services, 12);
    expect(even?.waiting).toBeCloseTo(waiting, 4);
    expect(even?.wait).toBeCloseTo(wait, 6);
    expect(even?.through).toBeCloseTo(through, 6);
    const random = queueOf(arrivals / 3600, 3600 / services, 1);
    expect(random?.waiting).toBeCloseTo(randomWaiting, 4);
    expect(random?.wait).toBeCloseTo(randomWait, 6);
    expect(random?.through).toBeCloseTo(randomThrough, 6);
  });
  it('M/M/1 at 180 and 240 an hour has more than three for 0.3164 of the time, M/D/1 for less', () => {
    expect(0.75 ** 4).toBeCloseTo(0.3164, 4);
    expect(shareAbove(queueShares(0.75), 3)).toBeLessThan(0.3164);
  });
  it('has no end at a load of 1 and more', () => {
    expect(queueOf(1, 1)).toBeUndefined();
    expect(queueOf(2, 1)).toBeUndefined();
    expect(queueShares(1)).toEqual([]);
    expect(queueShares(Number.NaN)).toEqual([]);
  });
});

describe('shares of the time with n vehicles, M/D/1', () => {
  // Computed twice apart, see the reference; P(1) = (1 − ρ)(e^ρ − 1).
  it.each([
    [0.5, [0.5, 0.324361, 0.1226, 0.037788, 0.010909]],
    [0.6, [0.4, 0.328848, 0.161891, 0.066657, 0.026084]],
    [0.75, [0.25, 0.27925, 0.194235, 0.116667, 0.067643]],
  ])('load %f', (load, shares) => {
    const found = queueShares(load);
    shares.forEach((share, n) => expect(found[n], String(n)).toBeCloseTo(share, 6));
    expect(found[1]).toBeCloseTo((1 - load) * (Math.exp(load) - 1), 12);
  });
  it('more than two and more than three at half load', () => {
    expect(shareAbove(queueShares(0.5), 2)).toBeCloseTo(0.05304, 4);
    expect(shareAbove(queueShares(0.5), 3)).toBeCloseTo(0.01525, 4);
    expect(vehiclesFor(queueShares(0.5), 0.95)).toBe(3);
    expect(vehiclesFor(queueShares(0.5), 0.9)).toBe(2);
    expect(vehiclesFor(queueShares(0), 0.95)).toBe(0);
  });
  it('ends as soon as all but the rest is told', () => {
    expect(queueShares(0)).toEqual([1]);
    for (const rest of [1e-3, 1e-6, 1e-9]) {
      const shares = queueShares(0.5, rest);
      const sum = (list: readonly number[]): number => list.reduce((all, share) => all + share, 0);
      expect(1 - sum(shares)).toBeLessThanOrEqual(rest);
      expect(1 - sum(shares.slice(0, -1))).toBeGreaterThan(rest);
    }
  });
  it('counts no more vehicles than are followed, and a share that is just reached', () => {
    expect(shareAbove([0.5, 0.25, 0.125], 1)).toBe(0.25);
    for (const vehicles of [2, 3, 100]) expect(shareAbove([0.5, 0.25, 0.125], vehicles)).toBe(0.125);
    expect([0.5, 0.51, 0.75, 0.76, 0.875].map((share) => vehiclesFor([0.5, 0.25, 0.125], share))).toEqual([0, 1, 1, 2, 2]);
    expect(vehiclesFor([0.5, 0.25, 0.125], 0.876)).toBeUndefined();
  });
  it('the closed form (Crommelin’s sum, in Gross and Harris) agrees', () => {
    const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));
    const closed = (n: number, load: number): number => {
      if (n === 0) return 1 - load;
      if (n === 1) return (1 - load) * (Math.exp(load) - 1);
      let sum = 0;
      for (let k = 1; k <= n; k++)
        sum +=
          Math.exp(k * load) *
          (-1) ** (n - k) *
          ((k * load) ** (n - k) / factorial(n - k) + (k === n ? 0 : (k * load) ** (n - k - 1) / factorial(n - k - 1)));
      return (1 - load) * sum;
    };
    for (const load of [0.1, 0.3, 0.5, 0.7, 0.9])
      queueShares(load)
        .slice(0, 8)
        .forEach((share, n) => expect(share, `${n} at ${load}`).toBeCloseTo(closed(n, load), 8));
  });
  it('the mean of the shares is that of Pollaczek and Khinchine, and all of them are the whole', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.8, noNaN: true }), (load) => {
        const shares = queueShares(load, 1e-12);
        expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
        expect(shares.reduce((sum, share, n) => sum + n * share, 0)).toBeCloseTo(queueOf(load, 1)?.present ?? -1, 7);
        for (const share of shares) expect(share).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('a simulated gate has the same mean wait (Lindley’s recursion, fixed seed, mean by simple-statistics)', () => {
    const random = randomOf(7);
    const load = 0.6;
    const waits: number[] = [];
    let wait = 0;
    for (let i = 0; i < 200_000; i++) {
      waits.push(wait);
      wait = Math.max(0, wait + 1 - -Math.log(1 - random()) / load);
    }
    expect(mean(waits) / (queueOf(load, 1)?.wait ?? 0)).toBeCloseTo(1, 1);
  });
  it('stays short of work near a load of 1', () => {
    expect(queueShares(0.999).length).toBe(mostVehicles + 1);
    expect(vehiclesFor(queueShares(0.999), 0.95)).toBeUndefined();
  });
});
