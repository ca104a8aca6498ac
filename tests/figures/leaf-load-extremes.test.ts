// The greatest pull of gravity on a released leaf, and its rise, stand wherever they stand, not on a grid of angles.
import { expect, test } from 'vitest';
import { releasedOf } from '../../server/figures/leaf-load/working.ts';
import { judge } from '../kit/pages.ts';

const released = (lines: string) =>
  releasedOf(judge(`language 1\nleaf west {\n  width 3 m\n  mass 200 kg\n${lines}}\n`).installation.leaves[0] as never);

// m·g·(w/2)·sin β = 200·9.80665·1.5·sin 2° = 102.677 N·m; reference: statics, derived.
const most = 200 * 9.80665 * 1.5 * Math.sin((2 * Math.PI) / 180);

test('the pull is greatest at 90°, between the ends of a wider travel', () => {
  expect(released('  opens inward 97 deg\n  hinge-tilt 2 deg lowest closed\n')?.towardsClosed).toBeCloseTo(most, 9);
  expect(released('  opens inward 97 deg\n  hinge-tilt 2 deg lowest open\n')?.towardsOpen).toBeCloseTo(most, 9);
  expect(released('  opens inward 180 deg\n  hinge-tilt 2 deg lowest closed\n')?.closedAt).toBeCloseTo(Math.PI / 2, 12);
});
test('hinges that lean one way and rise the other lift the leaf most where neither pulls', () => {
  // Falls open by the lean, shut by the rise: level where m·g·h/Θ = m·g·(w/2)·sin β·sin(Θ − θ).
  const found = released('  opens inward 100 deg\n  rises 60 mm\n  hinge-tilt 2 deg lowest open\n');
  const climb = (200 * 9.80665 * 0.06) / ((100 * Math.PI) / 180);
  const height = (at: number): number =>
    (climb * at) / (200 * 9.80665) + 1.5 * Math.sin((2 * Math.PI) / 180) * (1 - Math.cos(at - (100 * Math.PI) / 180));
  let highest = -Infinity;
  let deepest = Infinity;
  for (let i = 0; i <= 1e5; i++) {
    const here = height((((100 * Math.PI) / 180) * i) / 1e5);
    highest = Math.max(highest, here);
    deepest = Math.min(deepest, here);
  }
  expect(found?.rise).toBeCloseTo(highest - deepest, 9);
});
