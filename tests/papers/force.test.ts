// The force window against the figures of the same leaf.
import { describe, expect, test } from 'vitest';
import { preview } from '../../server/editor/index.ts';
import { forceWindowOf } from '../../server/figures/force-window/working.ts';
import { figuresOf } from '../../server/figures/index.ts';
import { showSi } from '../../server/vocabulary/index.ts';
import { uses } from '../editor/bench.ts';
import { all, drawingOf, example, judged, of, parsed, pointsOf, previewOf, sites, withClass } from './kit.ts';

const pushing = sites.filter((path) => example(path).installation.leaves.some((leaf) => forceWindowOf(leaf) !== undefined));

test('drawn for every leaf whose drive says how hard it pushes, and for no other', () => {
  expect(pushing.map((path) => path.split('/').pop())).toEqual(expect.arrayContaining(['salt-quay.gate', 'storm-boards.gate']));
  for (const path of sites) {
    const { lacks, svg } = drawingOf(previewOf(path), 'force');
    expect(svg !== '', path).toBe(pushing.includes(path));
    if (svg === '') expect(lacks, path).toMatch(/thrust|motion of/);
  }
});

describe.each(pushing)('%s', (path) => {
  const { installation } = example(path);
  const shown = drawingOf(previewOf(path), 'force');
  const document = parsed(shown.svg);

  test('the curves reach the least and the most that the figures give, at the scale of the axis', () => {
    const windows = installation.leaves.flatMap((leaf) => forceWindowOf(leaf) ?? []);
    const needs = withClass(document, 'needs').filter((each) => each.tagName === 'path');
    expect(needs.length).toBe(windows.length);
    for (const [i, window] of windows.entries()) {
      const ids = new Map(figuresOf(installation).map((figure) => [figure.id, figure.value]));
      const least = ids.get(`leaf.${window.of.subject.name}.force-least`) as number;
      const most = ids.get(`leaf.${window.of.subject.name}.force-most`) as number;
      // The axis of this chart: numbers at its left, at the height of their lines.
      const top = Math.min(...pointsOf(needs[i] as ReturnType<typeof all>[number]).map(([, y]) => y));
      const marks = all(document)
        .filter((each) => each.tagName === 'text' && each.getAttribute('text-anchor') === 'end' && /^\d+$/.test(each.textContent ?? ''))
        .map((each) => ({ value: Number(each.textContent), y: of(each, 'y') - 4 }));
      const per = marks.length / windows.length;
      const own = marks.slice(i * per, (i + 1) * per);
      const zero = own.find(({ value }) => value === 0)?.y as number;
      const high = own[own.length - 1] as (typeof own)[number];
      const newton = (y: number): number => ((zero - y) / (zero - high.y)) * high.value;
      expect(newton(top) / least).toBeCloseTo(1, 2);
      const allowed = [...withClass(document, 'allows'), ...withClass(document, 'allows-other')]
        .filter((each) => each.tagName === 'path')
        .flatMap(pointsOf)
        .filter(([, y]) => y <= zero + 1 && y >= zero - 320)
        .map(([, y]) => newton(y));
      expect(Math.min(...allowed) / most).toBeGreaterThan(0.995);
      expect(Math.min(...allowed) / most).toBeLessThan(1.01);
      expect(shown.table.rows).toContainEqual(expect.arrayContaining([window.of.subject.name, 'needed at least', showSi(least, 'N')]));
      expect(shown.description).toContain(showSi(most, 'N'));
    }
  });
});

test('an empty window is marked and explained, and a setting in no window is not called right', () => {
  const { svg, description } = drawingOf(previewOf('storm-boards'), 'force');
  const document = parsed(svg);
  expect(withClass(document, 'nothing').length).toBe(1);
  expect(description).toContain('No setting works everywhere');
  expect(description).not.toContain('within the window');
  const { svg: sound, description: told } = drawingOf(previewOf('salt-quay'), 'force');
  expect(withClass(parsed(sound), 'nothing').length).toBe(0);
  expect(told).toContain('within the window');
});

test('the strokes begin at the greater need and end at the lesser allowance', () => {
  // Hinges that rise make opening harder than closing.
  const { svg } = drawingOf(
    preview(judged(example('salt-quay').text.replace('  hinge-guard 500 mm\n', '  hinge-guard 500 mm\n  rises 60 mm\n'))),
    'force',
  );
  const document = parsed(svg);
  const path = (name: string): [number, number][] =>
    pointsOf(withClass(document, name).find((each) => each.tagName === 'path') as ReturnType<typeof all>[number]);
  const at = (points: readonly [number, number][], x: number): number =>
    points.reduce((best, point) => (Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best))[1];
  const [opening, closing, allowed] = [path('needs'), path('needs-other'), path('allows-other')];
  expect(opening.some(([x, y]) => at(closing, x) - y > 2)).toBe(true);
  const strokes = path('between');
  for (let i = 0; i < strokes.length; i += 2) {
    const [x, low] = strokes[i] as [number, number];
    const [, high] = strokes[i + 1] as [number, number];
    expect(low).toBeLessThanOrEqual(Math.min(at(opening, x), at(closing, x)) + 2);
    if (x >= (allowed[0] as [number, number])[0] && x <= (allowed.at(-1) as [number, number])[0] - 6)
      expect(high).toBeGreaterThanOrEqual(at(allowed, x) - 2);
  }
});

test('a sliding leaf and a shaft have their windows too', () => {
  const shown = preview(
    judged(`${uses}
site "x" {
  rules north-america
}
drive-model push "p" {
  kind rack
  speed 0.2 m/s
  thrust 900 N least 100 N
}
drive-model shaft "s" {
  kind direct
  rotation 110 deg
  shaft-speed 8 deg/s
  torque 400 N·m least 30 N·m
}
leaf one {
  width 4 m
  height 1.8 m
  mass 300 kg
  slides left 3.9 m
}
drive a : push {
  moves one
}
leaf two {
  width 2 m
  height 1.8 m
  mass 150 kg
  opens inward 90 deg
}
drive b : shaft {
  moves two
}
motion {
  force 40 %
}
`),
  );
  const { svg, table } = drawingOf(shown, 'force');
  const document = parsed(svg);
  const words = all(document)
    .filter((each) => each.tagName === 'text')
    .map((each) => each.textContent);
  expect(words).toEqual(expect.arrayContaining(['push, lbf', 'torque, lbf·ft', 'how far the leaf is open, ft']));
  expect(table.rows.filter(([, what]) => what === 'allowed at most').map(([, , value]) => value)).toEqual(['no limit', 'no limit']);
  expect(withClass(document, 'setting').length).toBeGreaterThan(1);
});
