// The plan against what it is drawn from: lengths at its scale, angles, brackets, and which hazards it shows as covered.
import { describe, expect, test } from 'vitest';
import { preview } from '../../server/editor/index.ts';
import { shaftAngle } from '../../server/figures/articulated-arm/maths.ts';
import { armMountingOf } from '../../server/figures/articulated-arm/working.ts';
import { figuresOf } from '../../server/figures/index.ts';
import { ramLength } from '../../server/figures/linear-ram/maths.ts';
import { ramMountingOf } from '../../server/figures/linear-ram/working.ts';
import { planScaleOf } from '../../server/papers/drawing/plan/layout.ts';
import { uses } from '../editor/bench.ts';
import { all, drawingOf, example, judged, of, parsed, pointsOf, previewOf, sites, thingOf, withClass } from './kit.ts';

const planOf = (name: string) => parsed(drawingOf(previewOf(name), 'plan').svg);
const perMetre = (name: string): number => planScaleOf(example(name).installation)?.perMetre ?? NaN;
const near = 0.02;

const swings = [
  'withy-lane',
  'garden-court',
  'salt-quay',
  'tanners-row',
  'cedar-spur',
  'leaves-collide',
  'open-loops',
  'pillar-trap',
  'public-hold-to-run',
  'relay-beam',
  'storm-boards',
  'thin-cables',
  'wrong-side-bracket',
];
const slides = ['mill-race', 'busy-depot'];

describe.each(swings)('%s', (name) => {
  const { installation } = example(name);
  const document = planOf(name);
  const scale = perMetre(name);

  test('each swept area has the radius of its leaf and the angle that it opens by', () => {
    const arcs = withClass(document, 'swept-edge');
    expect(arcs.length).toBe(installation.leaves.length);
    for (const leaf of installation.leaves) {
      const arc = arcs.find((each) => thingOf(each) === `leaf.${leaf.name}`);
      const [, x1, y1, rx, ry, , sweep, x2, y2] = (
        /^M(\S+) (\S+?)A(\S+) (\S+) 0 (\d) (\d) (\S+) (\S+)$/.exec(arc?.getAttribute('d') ?? '') ?? []
      ).map(Number) as [number, number, number, number, number, number, number, number, number];
      expect(rx).toBeCloseTo((leaf.facts.width?.value ?? 0) * scale, 1);
      expect(ry).toBe(rx);
      // The chord of the angle, and the side that the leaf opens to: downwards is inside.
      const chord = Math.hypot(x2 - x1, y2 - y1);
      expect(Math.abs(chord - 2 * rx * Math.sin((leaf.facts.opens?.angle ?? 0) / 2))).toBeLessThan(near * 2);
      expect(y2 > y1).toBe(leaf.facts.opens?.way === 'inward');
      expect([0, 1]).toContain(sweep);
    }
  });

  test('the closed leaf is as long and as thick as stated, and hinged at its pin', () => {
    const outlines = withClass(document, 'leaf');
    for (const leaf of installation.leaves) {
      const [a, b, c] = pointsOf(outlines.find((each) => thingOf(each) === `leaf.${leaf.name}`) as (typeof outlines)[number]) as [
        [number, number],
        [number, number],
        [number, number],
      ];
      expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(
        ((leaf.facts.width?.value ?? 0) - (leaf.facts['hinge-offset']?.along ?? 0)) * scale,
        1,
      );
      if (leaf.facts.thickness !== undefined)
        expect(Math.abs(Math.hypot(c[0] - b[0], c[1] - b[1]) - leaf.facts.thickness.value * scale)).toBeLessThan(near);
    }
    expect(withClass(document, 'pin').length).toBe(installation.leaves.length);
  });

  test('leaves that meet stand as far apart as both are wide, with the gap between them', () => {
    if (installation.leaves.length !== 2) return;
    const [first, second] = withClass(document, 'pin').map((pin) => of(pin, 'cx')) as [number, number];
    const gap = installation.leaves.map((leaf) => leaf.facts.closes?.gap).find((found) => found !== undefined) ?? 0.02;
    const widths = installation.leaves.reduce((sum, leaf) => sum + (leaf.facts.width?.value ?? 0), gap);
    expect(Math.abs(second - first)).toBeCloseTo(widths * scale, 1);
  });

  test('brackets stand where they are stated, and the pins of a ram as far apart as it is long', () => {
    for (const drive of installation.drives) {
      const pins = withClass(document, 'drive-pin')
        .filter((each) => thingOf(each) === `drive.${drive.name}` && each.tagName === 'circle')
        .map((pin): [number, number] => [of(pin, 'cx'), of(pin, 'cy')]);
      const ram = ramMountingOf(drive);
      if (ram !== undefined) {
        expect(pins.length).toBe(2);
        const [one, other] = pins as [[number, number], [number, number]];
        expect(Math.abs(Math.hypot(one[0] - other[0], one[1] - other[1]) - (ramLength(ram, 0) as number) * scale)).toBeLessThan(near * 2);
      }
      const arm = armMountingOf(drive);
      if (arm === undefined) continue;
      // Elbow, shaft and bracket: both arms have their length.
      const apart = pins.flatMap((a, i) => pins.slice(i + 1).map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) / scale));
      for (const arm2 of [arm.driveArm, arm.linkArm]) expect(apart.some((each) => Math.abs(each - arm2) < 0.001)).toBe(true);
      expect(shaftAngle(arm, 0)).toBeDefined();
    }
  });

  test('a wall behind an open leaf is as far from it as there is room', () => {
    const walls = withClass(document, 'wall');
    for (const leaf of installation.leaves) {
      const room = leaf.facts['room-when-open']?.value;
      const wall = walls.find((each) => thingOf(each) === `leaf.${leaf.name}.room-when-open`);
      expect(wall !== undefined).toBe(room !== undefined && room <= 1.3);
      if (wall === undefined || room === undefined) continue;
      const dashed = pointsOf(
        withClass(document, 'leaf-open').find((each) => thingOf(each) === `leaf.${leaf.name}`) as (typeof walls)[number],
      );
      const [x, y] = [of(wall, 'x2'), of(wall, 'y2')];
      const apart = Math.min(...dashed.map(([a, b]) => Math.hypot(a - x, b - y)));
      expect(Math.abs(apart - room * scale)).toBeLessThan(0.1);
    }
  });
});

test.each(slides)('%s: the leaf is as long as stated, open is one travel away, and both sides are told', (name) => {
  const { installation } = example(name);
  const document = planOf(name);
  const [leaf] = installation.leaves;
  const scale = perMetre(name);
  const [closed] = withClass(document, 'leaf');
  const [open] = withClass(document, 'leaf-open');
  if (leaf === undefined || closed === undefined || open === undefined) throw new Error('nothing drawn');
  expect(of(closed, 'width')).toBeCloseTo((leaf.facts.width?.value ?? 0) * scale, 1);
  const moved = of(open, 'x') - of(closed, 'x');
  expect(moved).toBeCloseTo((leaf.facts.slides?.distance ?? 0) * scale * (leaf.facts.slides?.way === 'left' ? -1 : 1), 1);
  const words = all(document)
    .filter((each) => each.tagName === 'text')
    .map((each) => each.textContent);
  expect(words).toContain('OUTSIDE, road side');
  expect(words).toContain('INSIDE, premises');
});

test.each([...swings, ...slides])('%s: the bar of the scale is as long as it says', (name) => {
  const document = planOf(name);
  const bars = [...withClass(document, 'bar').filter((each) => each.tagName === 'rect'), ...withClass(document, 'bar-open')];
  const width = bars.reduce((sum, bar) => sum + of(bar, 'width'), 0);
  const said = all(document)
    .map((each) => (each.tagName === 'text' ? (/^([\d.]+) (m|mm|ft)$/.exec(each.textContent ?? '') ?? undefined) : undefined))
    .find((found) => found !== undefined);
  const metres = Number(said?.[1]) * { m: 1, mm: 0.001, ft: 0.3048 }[said?.[2] as 'm'];
  expect(Math.abs(width - metres * perMetre(name))).toBeLessThan(0.05);
});

test('what the plan says in words are the figures', () => {
  const { installation } = example('withy-lane');
  const { table, description } = drawingOf(previewOf('withy-lane'), 'plan');
  const ids = new Map(figuresOf(installation).map((figure) => [figure.id, figure.value]));
  const least = ids.get('leaf.west.hinge-gap-least') as number;
  expect(table.rows.find(([what]) => what === '2: west, hinge side')?.[2]).toContain(`${Math.round(least * 1000)} mm`);
  expect(description).toContain('west, 2.4 m wide, swings inward by 95°');
  expect(table.rows.map(([what]) => what)).toEqual(
    expect.arrayContaining(['leaf west', 'leaf east', 'drive west-ram', 'sensor low-beam', 'sensor west-edge', '3: east, closing edge']),
  );
});

describe('hazards', () => {
  const marks = (name: string): Record<string, 'covered' | 'bare'> =>
    Object.fromEntries(
      all(planOf(name))
        .filter((each) => each.getAttribute('data-thing')?.startsWith('hazard.'))
        .map((each) => [each.getAttribute('data-thing') as string, withClass(each, 'bare').length > 0 ? 'bare' : 'covered'] as const),
    );
  test('what is covered has a ring, what is not has a diamond', () => {
    expect(marks('withy-lane')).toEqual({
      'hazard.west.closing-edge': 'covered',
      'hazard.west.hinge': 'covered',
      'hazard.east.closing-edge': 'covered',
      'hazard.east.hinge': 'covered',
    });
    expect(marks('pillar-trap')).toEqual({
      'hazard.front.closing-edge': 'covered',
      'hazard.front.hinge': 'bare',
      'hazard.front.underside': 'bare',
    });
    expect(marks('relay-beam')).toEqual({ 'hazard.side.closing-edge': 'bare', 'hazard.side.opening-side': 'bare' });
    expect(marks('public-hold-to-run')).toEqual({ 'hazard.steps.closing-edge': 'bare' });
  });
  test('no site with an error about an edge or a gap shows all its hazards as covered', () => {
    const about = new Set([
      'closing-edge-unguarded',
      'safeguarding-below-minimum',
      'protection-untested',
      'entrapment-protection-below-minimum',
      'hazard-uncovered',
      'open-leaf-crushes',
      'edge-overtravel-too-long',
      'force-over-limit',
    ]);
    let seen = 0;
    for (const path of sites) {
      const { findings } = example(path);
      if (!findings.some(({ rule, severity }) => severity === 'error' && about.has(rule))) continue;
      seen++;
      expect(Object.values(marks(path)), path).toContain('bare');
    }
    expect(seen).toBeGreaterThan(3);
  });
  test('is numbered as in the list, and bears no letter, which would be taken for a measure', () => {
    for (const name of ['withy-lane', 'pillar-trap', 'relay-beam', 'thin-cables']) {
      const { svg, table } = drawingOf(previewOf(name), 'plan');
      const said = table.rows.filter(([, is = '']) => /^hazard|judged/.test(is)).map(([what = '']) => Number(/^(\d+): /.exec(what)?.[1]));
      expect(said, name).toEqual(said.map((_, i) => i + 1));
      const written = all(parsed(svg))
        .filter((each) => each.tagName === 'text' && /^(\d+\??|[A-Z]\??)$/.test(each.textContent ?? ''))
        .map((each) => each.textContent);
      // In the plan and in the list.
      for (const number of said) expect(written.filter((text) => text === `${number}` || text === `${number}?`).length, name).toBe(2);
      for (const letter of ['C', 'H', 'U', 'O', 'R', 'P']) expect(written, name).not.toContain(letter);
    }
  });
  test('a place that cannot be judged is marked as such, and said', () => {
    const shown = drawingOf(previewOf('thin-cables'), 'plan');
    expect(withClass(parsed(shown.svg), 'guessed').length).toBe(4);
    expect(shown.table.rows.filter(([, is]) => is === 'cannot be judged').map(([what]) => what)).toEqual([
      '2: paddock, hinge side',
      '3: paddock, underside',
    ]);
  });
});

test('what stands nowhere in the file is said to be put there', () => {
  const { table } = drawingOf(previewOf('garden-court'), 'plan');
  for (const name of ['low-beam', 'inner-beam'])
    expect(table.rows.find(([what]) => what === `sensor ${name}`)?.[2]).toContain('position not stated');
});

test('curtains, loops, leaves of every kind side by side, and leaves that cannot be drawn', () => {
  const shown = preview(
    judged(`${uses}
leaf a {
  width 2 m
  mass 100 kg
  opens outward 120 deg
}
leaf b {
  width 3 m
  mass 100 kg
  slides left 2.8 m
  tail 1.2 m
}
leaf c {
  width 3 m
  mass 100 kg
  slides right 2.8 m
}
leaf d {
  mass 100 kg
}
sensor curtain : finch-curtain {
  watches closing, opening
}
sensor loop : finch-loop {
  watches closing
}
sensor wing : finch-curtain {
  watches opening
  on a opening-edge
}
`),
  );
  const plan = drawingOf(shown, 'plan');
  const document = parsed(plan.svg);
  expect(withClass(document, 'presence').length).toBe(2);
  expect(withClass(document, 'loop').length).toBe(2);
  expect(withClass(document, 'leaf').length).toBe(3);
  // The pair that slides closes one gap: its edges meet.
  const [left, right] = withClass(document, 'leaf')
    .filter((each) => each.tagName === 'rect')
    .sort((a, b) => of(a, 'x') - of(b, 'x')) as [ReturnType<typeof all>[number], ReturnType<typeof all>[number]];
  expect(of(left, 'x') + of(left, 'width')).toBeCloseTo(of(right, 'x'), 1);
  // And the gap is as wide as both travel, from post to post.
  const posts = withClass(document, 'post')
    .map((each) => [of(each, 'x'), of(each, 'x') + of(each, 'width')] as const)
    .slice(-2) as [readonly [number, number], readonly [number, number]];
  const open = of(left, 'width') / 3;
  expect(posts[1][0] - posts[0][1]).toBeCloseTo(open * 5.6, 0);
  expect(of(right, 'x') - posts[0][1]).toBeCloseTo(open * 2.8, 0);
  expect(all(document).some((each) => each.tagName === 'text' && (each.textContent ?? '').includes('d.'))).toBe(true);
  expect(drawingOf(preview(judged('language 1\nsite "x" {\n}\n')), 'plan')).toMatchObject({
    svg: '',
    lacks: expect.stringContaining('no leaf') as unknown,
  });
});
