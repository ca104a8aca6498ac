// The force window, against a gate that is turned in small steps with plane coordinates: no lever arm, no closed form.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesThatOpen, isWide } from '../../server/figures/force-changes/working.ts';
import {
  allowed,
  allowedAt,
  elasticPeak,
  type Guarded,
  gaugeStiffness,
  gravityAt,
  type Load,
  limits,
  needed,
  sweptRadius,
  windowOf,
} from '../../server/figures/force-window/maths.ts';
import { forceWindowOf, settingWindow } from '../../server/figures/force-window/working.ts';
import { directLinkage, type Linkage, rackLinkage, ramLinkage } from '../../server/figures/linkage/maths.ts';
import { heard } from '../kit/heard.ts';
import { judge } from '../kit/pages.ts';

const none: Guarded = { edge: false, bottom: false, untouched: false };
const quarter = Math.PI / 2;
const shaft = directLinkage(quarter) as Linkage;
const plain: Load = {
  swing: true,
  linkage: shaft,
  width: 3,
  mass: 150,
  inertia: 450,
  acceleration: 0,
  friction: 0,
  tilt: 0,
  lowest: 0,
  climb: 0,
  wind: 0,
  guard: undefined,
  room: undefined,
  relieved: true,
  closing: none,
  opening: none,
};

describe('the lever rule', () => {
  it('300 N·m are 300 N at 1 m and 1000 N at 0.3 m', () => {
    // By hand, T / r. So 300 N·m are allowed where 300 N would be the limit at 1 m; with 400 N at 1 m it is 400 N·m, and so on.
    const most = (guard: number): number => windowOf({ ...plain, guard }, true).most.push;
    for (const guard of [0.3, 1, 2]) expect(most(guard) / guard).toBeCloseTo(limits.crush, 9);
    expect(300 / 0.3).toBe(1000);
    expect(most(0.3)).toBeLessThan(300);
    expect(most(0.75)).toBeCloseTo(300, 9);
  });
  it('150 N at the edge of 3 m are 450 N at 1 m', () => {
    // The torque that presses with 150 N at the edge is over the limit of 400 N at 1 m.
    const torque = 150 * 3;
    expect(torque / 1).toBe(450);
    expect(windowOf({ ...plain, guard: 1 }, true).most.push).toBeLessThan(torque);
    expect(windowOf({ ...plain, guard: 1.2 }, true).most.push).toBeGreaterThan(torque);
  });
  it('the blow on a hard spring: 300 kg and 500 kg at 0.2 m/s', () => {
    // v·√(k·m) with k = 500 N/mm, by hand: 2449 N and 3162 N.
    for (const [mass, peak] of [
      [300, 2449],
      [500, 3162],
    ] as const) {
      expect(elasticPeak((mass * 0.2 * 0.2) / 2, gaugeStiffness)).toBeCloseTo(peak, 0);
      expect(elasticPeak((mass * 0.2 * 0.2) / 2, gaugeStiffness)).toBeCloseTo(0.2 * Math.sqrt(5e5 * mass), 6);
    }
    for (const bad of [-1, NaN, Infinity]) expect(elasticPeak(bad, 1)).toBeUndefined();
  });
  it('where the limits of EN 12453 do not hold all is allowed, and what nothing hinders needs no push', () => {
    expect(windowOf({ ...plain, guard: 1 }, false)).toEqual({
      least: { push: 0, at: 0, sample: 0, way: 'opening' },
      most: { push: Infinity, radius: 0, limit: Infinity, gap: undefined, fromMemory: false, at: 0, lever: 0, way: 'closing' },
    });
  });
  it('a drive that does not let go has 150 N, at any gap', () => {
    expect(windowOf({ ...plain, guard: 1, relieved: false }, true).most).toMatchObject({ push: 150, limit: 150, radius: 1 });
  });
});

describe('one place of a swing leaf, by hand', () => {
  // At 60° a point sweeps just its distance from the hinge, so the gap there is the distance.
  const third = Math.PI / 3;
  const closingAt = (change: Partial<Load>, lever = 1) => allowedAt({ ...plain, ...change }, third, lever, 'closing');
  const nothing = { push: Infinity, radius: 0, limit: Infinity, gap: undefined, fromMemory: false };
  const close = (
    found: ReturnType<typeof allowedAt>,
    push: number,
    radius: number,
    limit: number,
    gap: number | undefined,
    fromMemory: boolean,
  ): void => {
    expect(found.push).toBeCloseTo(push, 9);
    expect(found.radius).toBeCloseTo(radius, 12);
    expect(found.limit).toBe(limit);
    if (gap === undefined) expect(found.gap).toBeUndefined();
    else expect(found.gap).toBeCloseTo(gap, 12);
    expect(found.fromMemory).toBe(fromMemory);
  };

  it('closing: from the guard outwards, or from where 50 mm begin', () => {
    close(closingAt({}), 400 * 0.05, 0.05, 400, 0.05, true);
    close(closingAt({ guard: 0.3 }), 400 * 0.3, 0.3, 400, 0.3, false);
    close(closingAt({ guard: 0.8 }), 1400 * 0.8, 0.8, 1400, 0.8, false);
    close(closingAt({ guard: 0.3 }, 2), 60, 0.3, 400, 0.3, false);
    expect(closingAt({ guard: 3 })).toEqual(nothing);
    expect(closingAt({ guard: 3, relieved: false })).toEqual(nothing);
  });
  it('the bottom edge leaves the free edge, and both leave nothing', () => {
    const bottom = { ...none, bottom: true };
    close(closingAt({ closing: bottom }), 1400 * 3, 3, 1400, 3, false);
    close(closingAt({ closing: bottom, width: 0.4 }, 2), 80, 0.4, 400, 0.4, false);
    close(closingAt({ closing: bottom, relieved: false }), 450, 3, 150, undefined, false);
    for (const change of [
      { closing: { ...bottom, edge: true } },
      { closing: bottom, guard: 3 },
      { closing: bottom, width: 0.04 },
      { closing: { ...none, untouched: true } },
    ])
      expect(closingAt(change)).toEqual(nothing);
    close(closingAt({ closing: bottom, width: 0.05 }), 20, 0.05, 400, 0.05, false);
    // The device at the free edge leaves all that lies inside it.
    close(closingAt({ closing: { ...none, edge: true }, guard: 0.3 }), 120, 0.3, 400, 0.3, false);
  });
  it('nobody is in a gap of less than 50 mm', () => {
    // 10 mrad of 3 m are 30 mm at the free edge.
    expect(allowedAt(plain, 0.01, 1, 'closing')).toEqual(nothing);
    expect(allowedAt(plain, 0, 1, 'closing')).toEqual(nothing);
    expect(allowedAt({ ...plain, closing: { ...none, bottom: true } }, 0.01, 1, 'closing')).toEqual(nothing);
    // At 20 mrad, 60 mm: only the outermost half metre.
    expect(allowedAt(plain, 0.02, 1, 'closing').radius).toBeCloseTo(0.05 / 0.02, 3);
  });
  it('the gap of just 50 mm at the free edge is one, unless a device is there', () => {
    const there = 2 * Math.asin(0.05 / 6);
    close(allowedAt(plain, there, 1, 'closing'), 1200, 3, 400, 0.05, false);
    expect(allowedAt({ ...plain, closing: { ...none, edge: true } }, there, 1, 'closing')).toEqual(nothing);
  });
  it('opening: the room behind the leaf is part of the gap', () => {
    const openingAt = (change: Partial<Load>) => allowedAt({ ...plain, ...change }, quarter - third, 1, 'opening');
    close(openingAt({ room: 0.3, guard: 0.1 }), 40, 0.1, 400, 0.4, false);
    close(openingAt({ room: 0.3, guard: 0.3 }), 420, 0.3, 1400, 0.6, false);
    close(openingAt({ guard: 0.3 }), 420, 0.3, 1400, undefined, false);
    close(openingAt({ room: 0.5, guard: 0.3 }), 420, 0.3, 1400, undefined, false);
    // Without a guard, from where a leaf that opens by 90° sweeps 50 mm: 50 mm / √2.
    close(openingAt({}), (1400 * 0.05) / Math.SQRT2, 0.05 / Math.SQRT2, 1400, undefined, true);
    close(openingAt({ room: 0.1 }), (400 * 0.05) / Math.SQRT2, 0.05 / Math.SQRT2, 400, 0.1 + 0.05 / Math.SQRT2, true);
    close(openingAt({ room: 0.05 }), (400 * 0.05) / Math.SQRT2, 0.05 / Math.SQRT2, 400, 0.05 + 0.05 / Math.SQRT2, true);
    close(allowedAt({ ...plain, room: 0.05 }, quarter, 1, 'opening'), (400 * 0.05) / Math.SQRT2, 0.05 / Math.SQRT2, 400, 0.05, true);
    close(openingAt({ guard: sweptRadius(quarter) }), (1400 * 0.05) / Math.SQRT2, 0.05 / Math.SQRT2, 1400, undefined, false);
    close(openingAt({ room: 0 }), 20, 0.05, 400, 0.05, true);
  });
  it('with less than 50 mm of room, only from where the room and the way left make 50 mm', () => {
    // 10 mm a metre are left: with 30 mm of room 50 mm begin 2 m from the hinge.
    const left = 2 * Math.asin(0.005);
    close(allowedAt({ ...plain, room: 0.03 }, quarter - left, 1, 'opening'), 800, 2, 400, 0.05, true);
    close(allowedAt({ ...plain, room: 0.03, guard: 2.5 }, quarter - left, 1, 'opening'), 1000, 2.5, 400, 0.055, false);
    expect(allowedAt({ ...plain, room: 0.01 }, quarter - left, 1, 'opening')).toEqual(nothing);
    expect(allowedAt({ ...plain, room: 0.03 }, quarter, 1, 'opening')).toEqual(nothing);
  });
  it('a drive that does not let go has 150 N wherever the leaf sweeps 50 mm somewhere', () => {
    for (const at of [0, 0.01, third])
      close(allowedAt({ ...plain, relieved: false }, at, 1, 'closing'), (150 * 0.05) / Math.SQRT2, 0.05 / Math.SQRT2, 150, undefined, true);
    close(closingAt({ relieved: false, guard: 0.3 }, 2), 22.5, 0.3, 150, undefined, false);
  });
  it('the swept radius: 50 mm over the chord of the whole travel', () => {
    for (const [travel, radius] of [
      [Math.PI / 3, 0.05],
      [quarter, 0.05 / Math.SQRT2],
      [Math.PI, 0.025],
      [1.5 * Math.PI, 0.025],
    ] as const)
      expect(sweptRadius(travel)).toBeCloseTo(radius, 12);
  });
});

describe('a sliding leaf', () => {
  const slide: Load = { ...plain, swing: false, linkage: rackLinkage(4.8) as Linkage, inertia: 500, mass: 500 };
  it('one place, by hand', () => {
    const nothing = { push: Infinity, radius: 0, limit: Infinity, gap: undefined, fromMemory: false };
    expect(allowedAt(slide, 0.3, 2, 'closing')).toEqual({ push: 200, radius: 0, limit: 400, gap: 0.3, fromMemory: false });
    expect(allowedAt(slide, 0.02, 1, 'closing')).toEqual(nothing);
    expect(allowedAt(slide, 4.6, 1, 'opening')).toEqual({ push: 1400, radius: 0, limit: 1400, gap: undefined, fromMemory: false });
    expect(allowedAt({ ...slide, room: 0.1 }, 4.6, 1, 'opening')).toMatchObject({ push: 400, limit: 400 });
    expect(allowedAt({ ...slide, relieved: false }, 0.02, 1, 'closing')).toEqual({
      push: 150,
      radius: 0,
      limit: 150,
      gap: undefined,
      fromMemory: false,
    });
    for (const guarded of [
      { ...none, edge: true },
      { ...none, untouched: true },
    ])
      expect(allowedAt({ ...slide, closing: guarded }, 0.3, 1, 'closing')).toEqual(nothing);
  });
  it('so long that the last half metre lies between two samples has its 400 N all the same', () => {
    // 48 steps of 0.9 m.
    const long: Load = { ...slide, linkage: rackLinkage(43.2) as Linkage };
    expect(windowOf(long, true).most).toMatchObject({ push: 400, limit: 400, way: 'closing' });
    expect(windowOf(long, true).most.at).toBeCloseTo(0.05, 9);
    const room = windowOf({ ...long, closing: { ...none, edge: true }, room: 0.01 }, true).most;
    expect(room).toMatchObject({ push: 400, limit: 400, way: 'opening' });
    expect(room.at).toBeCloseTo(43.2 - 0.04, 9);
    expect(windowOf({ ...long, closing: { ...none, edge: true }, room: 0.6 }, true).most.push).toBe(1400);
  });
  it.each([
    // m·g·(c·cos α + sin α) for 500 kg, by hand: c, slope, N.
    [0.015, 0, 73.55],
    [0.02, 0, 98.07],
    [0.02, 0.02, 196.09],
    [0.02, 0.05, 342.8],
  ])('c %d, slope %d', (c, slope, force) => {
    const angle = Math.atan(slope);
    const load = { ...slide, friction: 500 * 9.80665 * c * Math.cos(angle), climb: 500 * 9.80665 * Math.sin(angle) };
    expect(windowOf(load, true).least.push).toBeCloseTo(force, 2);
    expect(needed(load, 10, 'closing')).toBeCloseTo(Math.max(0, 500 * 9.80665 * (c * Math.cos(angle) - Math.sin(angle))), 6);
  });
  it('400 N from 50 to 500 mm before it closes, 1400 N beyond', () => {
    const at = (x: number): number =>
      allowed(
        {
          ...slide,
          linkage: {
            ...slide.linkage,
            leaf: Float64Array.of(0, x, 4.8),
            drive: Float64Array.of(0, x, 4.8),
            rate: Float64Array.of(1, 1, 1),
          },
        },
        1,
        'closing',
      ).push;
    expect([at(0.02), at(0.05), at(0.3), at(0.5), at(0.51), at(4)]).toEqual([Infinity, 400, 400, 400, 1400, 1400]);
  });
  it('and the room behind it counts while it opens', () => {
    expect(windowOf({ ...slide, closing: { ...none, edge: true } }, true).most.push).toBe(1400);
    expect(windowOf({ ...slide, closing: { ...none, edge: true }, room: 0.3 }, true).most).toMatchObject({ push: 400, way: 'opening' });
    expect(windowOf({ ...slide, closing: { ...none, edge: true }, room: 0.5 }, true).most.push).toBe(1400);
  });
});

const mountings = fc.record({
  along: fc.double({ min: 0.1, max: 0.22, noNaN: true }),
  out: fc.double({ min: 0.08, max: 0.2, noNaN: true }),
  leafBracket: fc.double({ min: 0.5, max: 1, noNaN: true }),
});
type Mounting = { along: number; out: number; leafBracket: number };

/** Moment of a ram force of 1 N on the leaf about the hinge, from the cross product of force and place. */
function momentOf(m: Mounting, angle: number): number {
  const [x, y] = [m.leafBracket * Math.cos(angle), m.leafBracket * Math.sin(angle)];
  const [dx, dy] = [x + m.along, y - m.out];
  const length = Math.hypot(dx, dy);
  return Math.abs(x * (dy / length) - y * (dx / length));
}

describe('against small steps', () => {
  it('with the most that is allowed nobody is pressed too hard anywhere, with a little more somebody is', () => {
    fc.assert(
      fc.property(
        mountings,
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.option(fc.double({ min: 0, max: 0.7, noNaN: true }), { nil: undefined }),
        fc.boolean(),
        fc.boolean(),
        (mounting, width, guardShare, room, relieved, edge) => {
          const guard = guardShare * width;
          const load: Load = {
            ...plain,
            linkage: ramLinkage(mounting, quarter) as Linkage,
            width,
            guard,
            room,
            relieved,
            closing: { ...none, edge },
          };
          const { most } = windowOf(load, true);
          let tightest = Infinity;
          for (let step = 0; step <= 240; step++) {
            const angle = (step * quarter) / 240;
            const unit = momentOf(mounting, angle);
            for (let piece = 0; piece <= 120; piece++) {
              const radius = guard + ((width - guard) * piece) / 120;
              const point = [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
              const pressed = unit / radius;
              const closed = Math.hypot(point[0] - radius, point[1]);
              const open = room === undefined || room >= 0.5 ? Infinity : room + Math.hypot(point[0], point[1] - radius);
              for (const [gap, isClosing] of [
                [closed, true],
                [open, false],
              ] as const) {
                if (isClosing && edge && piece === 120) continue;
                if (!relieved) tightest = Math.min(tightest, 150 / pressed);
                if (gap < 0.05 - 1e-12) continue;
                tightest = Math.min(tightest, (gap <= 0.5 ? 400 : 1400) / pressed);
              }
            }
          }
          expect(most.push).toBeLessThan(tightest * 1.02);
          expect(most.push).toBeGreaterThan(tightest * 0.97);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('also where the limit ends between two samples, as the lever grows', () => {
    // Wide gaps begin soon at a guard far out: the 400 N hold for a few degrees only.
    for (const [guard, width] of [
      [1.7, 1.9],
      [2.3, 2.4],
      [1.1, 3],
    ] as const) {
      const mounting = { along: 0.1, out: 0.08, leafBracket: 0.5 };
      const { most } = windowOf({ ...plain, linkage: ramLinkage(mounting, quarter) as Linkage, width, guard }, true);
      let tightest = Infinity;
      for (let step = 0; step <= 40_000; step++) {
        const angle = (step * quarter) / 40_000;
        const gap = 2 * guard * Math.sin(angle / 2);
        if (gap >= 0.05) tightest = Math.min(tightest, ((gap <= 0.5 ? 400 : 1400) * guard) / momentOf(mounting, angle));
      }
      expect(most.push / tightest).toBeCloseTo(1, 3);
    }
  });

  it('and so while it opens towards something, where the lever shrinks', () => {
    // The lever is longest where the 400 N begin, 500 mm before the end.
    for (const [guard, width, room] of [
      [1.7, 1.9, 0],
      [2.3, 2.4, 0.2],
      [1.1, 3, 0.02],
    ] as const) {
      const mounting = { along: 0.05, out: -0.3, leafBracket: 0.9 };
      const rows = ramLinkage(mounting, 0.9) as Linkage;
      const { most } = windowOf({ ...plain, linkage: rows, width, guard, room, closing: { ...none, untouched: true } }, true);
      let tightest = Infinity;
      for (let step = 0; step <= 40_000; step++) {
        const angle = (step * 0.9) / 40_000;
        for (const radius of [guard, width]) {
          const gap = room + 2 * radius * Math.sin((0.9 - angle) / 2);
          if (gap >= 0.05) tightest = Math.min(tightest, ((gap <= 0.5 ? 400 : 1400) * radius) / momentOf(mounting, angle));
        }
      }
      expect(most.push / tightest).toBeCloseTo(1, 3);
      expect(most.way).toBe('opening');
    }
  });

  it('the least push is what Newton asks for', () => {
    fc.assert(
      fc.property(
        mountings,
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: 50, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 0.08, noNaN: true }),
        fc.double({ min: 0, max: 0.15, noNaN: true }),
        fc.boolean(),
        (mounting, width, mass, acceleration, friction, tilt, rises, fallsOpen) => {
          const climb = (mass * 9.80665 * rises) / quarter;
          const lowest = fallsOpen ? quarter : 0;
          const load: Load = {
            ...plain,
            linkage: ramLinkage(mounting, quarter) as Linkage,
            width,
            mass,
            inertia: (mass * width * width) / 3,
            acceleration,
            friction,
            tilt,
            lowest,
            climb,
          };
          // Height of the centre, so that gravity comes from the work done and not from a moment.
          const height = (angle: number): number =>
            (rises * angle) / quarter + (width / 2) * Math.sin(tilt) * (1 - Math.cos(angle - lowest));
          const length = (angle: number): number =>
            Math.hypot(mounting.leafBracket * Math.cos(angle) + mounting.along, mounting.leafBracket * Math.sin(angle) - mounting.out);
          let greatest = 0;
          for (let i = 0; i <= 48; i++) {
            const angle = load.linkage.leaf[i] as number;
            const small = 1e-5;
            const lever = Math.abs(length(angle + small) - length(angle - small)) / (2 * small);
            const weight = (mass * 9.80665 * (height(angle + small) - height(angle - small))) / (2 * small);
            expect(gravityAt(load, angle)).toBeCloseTo(weight, 3);
            // From rest, the ram's acceleration over its lever is the leaf's.
            const moment = ((mass * width * width) / 3) * (acceleration / lever) + friction + Math.abs(weight);
            greatest = Math.max(greatest, moment / lever);
          }
          expect(windowOf(load, true).least.push / greatest).toBeCloseTo(1, 5);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('what protects never narrows the window: a guard, an edge, a bottom edge, a drive that lets go, presence detection, room', () => {
    fc.assert(
      fc.property(
        mountings,
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.option(fc.double({ min: 0.05, max: 3, noNaN: true }), { nil: undefined }),
        fc.option(fc.double({ min: 0, max: 0.7, noNaN: true }), { nil: undefined }),
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        (mounting, width, guard, room, relieved, edge, bottom) => {
          const load: Load = {
            ...plain,
            linkage: ramLinkage(mounting, quarter) as Linkage,
            width,
            guard,
            room,
            relieved,
            closing: { ...none, edge, bottom },
            opening: { ...none, bottom },
          };
          const before = windowOf(load, true).most.push;
          const better: Load[] = [
            { ...load, guard: (guard ?? 0) + 0.2 },
            { ...load, relieved: true },
            { ...load, closing: { ...load.closing, edge: true } },
            { ...load, closing: { ...load.closing, bottom: true }, opening: { ...load.opening, bottom: true } },
            { ...load, closing: { ...load.closing, untouched: true } },
            { ...load, room: undefined },
          ];
          for (const change of better) expect(windowOf(change, true).most.push).toBeGreaterThanOrEqual(before * (1 - 1e-12));
        },
      ),
    );
  });
});

const site = (lines: {
  width?: string;
  infill?: string;
  guard?: string;
  wind?: string;
  friction?: string;
  edge?: string;
  speed?: string;
  kind?: 'swing' | 'slide';
}): string => `language 1
drive-model ram {
  kind linear-ram
  stroke 400 mm
  speed 16 mm/s
  ramp 1 s
  thrust 3000 N least 200 N
  senses-obstacles
}
drive-model rack {
  kind rack
  speed 0.3 m/s
  ramp 1 s
  thrust 900 N least 100 N
  senses-obstacles
  stops-in 300 ms
}
sensor-model strip {
  kind edge
  output resistive
  terminator 8.2 kohm
  measure C
  reaction 100 ms
  deformation ${lines.edge ?? '60 mm'}
}
site "x" {
  rules europe
  users limited
  working-wind ${lines.wind ?? '8 m/s'}
}
leaf west {
  width ${lines.width ?? '1.5 m'}
  height 1.6 m
  mass ${lines.kind === 'slide' ? '700 kg' : '90 kg'}
  infill ${lines.infill ?? '90 %'}
  friction ${lines.friction ?? '15 N'}
  ${lines.kind === 'slide' ? 'slides left 1.4 m' : 'opens inward 90 deg'}
  ${lines.guard === undefined ? '' : `hinge-guard ${lines.guard}`}
}
drive push : ${lines.kind === 'slide' ? 'rack' : 'ram'} {
  moves west
  ${lines.kind === 'slide' ? '' : 'post-bracket 150 mm by 150 mm\n  leaf-bracket 800 mm'}
}
sensor strip-a : strip {
  watches closing
  on west closing-edge
}
sensor strip-b : strip {
  watches opening
  on west opening-edge
}
motion {
  speed ${lines.speed ?? '100 %'}
}
`;
const windowIn = (text: string) => {
  const leaf = judge(heard(text)).installation.leaves[0];
  const window = leaf === undefined ? undefined : forceWindowOf(leaf);
  if (window === undefined) throw new Error('no window');
  return window;
};

describe('what opens the window', () => {
  it('is told with the value that the file would need, and that value does open it, and a little less does not', () => {
    const shut = windowIn(site({ guard: '380 mm', wind: '6 m/s' }));
    expect(isWide(shut.of, 1)).toBe(false);
    const { alone, changes } = changesThatOpen(shut.of, 1);
    expect(alone).toBe(true);
    const found = (pattern: RegExp): number => Number(pattern.exec(changes.join('\n'))?.[1]);
    const guard = found(/out to (\d+) mm/);
    expect(isWide(windowIn(site({ guard: `${guard} mm`, wind: '6 m/s' })).of, 1)).toBe(true);
    expect(isWide(windowIn(site({ guard: `${guard - 17} mm`, wind: '6 m/s' })).of, 1)).toBe(false);
    const gust = found(/gusts above ([\d.]+) m\/s/);
    expect(isWide(windowIn(site({ guard: '380 mm', wind: `${gust} m/s` })).of, 1)).toBe(true);
    expect(isWide(windowIn(site({ guard: '380 mm', wind: `${gust + 0.5} m/s` })).of, 1)).toBe(false);
  });
  it('an infill, where it is the wind', () => {
    const shut = windowIn(site({ guard: '420 mm' }));
    const infill = Number(/at most (\d+) %/.exec(changesThatOpen(shut.of, 1).changes.join('\n'))?.[1]);
    expect(infill).toBeGreaterThan(20);
    expect(isWide(windowIn(site({ guard: '420 mm', infill: `${infill} %` })).of, 1)).toBe(true);
    expect(isWide(windowIn(site({ guard: '420 mm', infill: `${infill + 6} %` })).of, 1)).toBe(false);
  });
  it('an edge that gives more, or less speed, where the leading edge decides', () => {
    const shut = windowIn(site({ kind: 'slide', friction: '420 N' }));
    expect(isWide(shut.of, 1)).toBe(false);
    const { changes } = changesThatOpen(shut.of, 1);
    const edge = Number(/an edge with (\d+) mm/.exec(changes.join('\n'))?.[1]);
    expect(edge).toBe(75);
    expect(isWide(windowIn(site({ kind: 'slide', friction: '420 N', edge: `${edge} mm` })).of, 1)).toBe(true);
    const speed = Number(/(\d+) % of the speed/.exec(changes.join('\n'))?.[1]);
    expect(speed).toBeGreaterThan(60);
    expect(isWide(windowIn(site({ kind: 'slide', friction: '420 N', speed: `${speed} %` })).of, 1)).toBe(true);
  });
  it('a pair, where no change is enough by itself', () => {
    const shut = windowIn(site({ width: '2.5 m', guard: '100 mm', wind: '6 m/s', friction: '30 N' }));
    const { alone, changes } = changesThatOpen(shut.of, 1);
    expect(alone).toBe(false);
    expect(changes.length).toBeGreaterThan(0);
    for (const change of changes) expect(change).toContain('together with');
  });
  it('the window of settings ends where the drive does', () => {
    const { of } = windowIn(site({ infill: '50 %', guard: '500 mm' }));
    expect(settingWindow({ ...of, greatest: 800 }).high).toBe(800);
    expect(settingWindow({ ...of, lowestSetting: 800 }).low).toBe(800);
    expect(settingWindow({ ...of, greatest: 300 }).high).toBeLessThan(settingWindow(of).low);
  });
});
