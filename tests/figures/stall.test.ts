// Gusts that stop a drive, worked out by hand for a leaf of 3.0 × 1.8 m: 13.9644 m³ for each pascal, as on the page.
import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

const block = (head: string, lines: string): string => `${head} {\n  ${lines.replaceAll('\n', '\n  ')}\n}\n`;
const leaf = 'width 3 m\nheight 1.8 m\nmass 150 kg\nopens inward 90 deg';
const shaft = block('drive-model strong', 'kind direct\nrotation 120 deg\nshaft-speed 6 deg/s\ntorque 400 N·m');
const ram = block('drive-model strong', 'kind linear-ram\nstroke 600 mm\nspeed 16 mm/s\nthrust 2000 N');
const bracketed = 'moves west\npost-bracket 100 mm by 200 mm\nleaf-bracket 800 mm';
const file = (lines = leaf, model = shaft, drive = 'moves west', more = ''): string =>
  `language 1\n${model}${block('leaf west', lines)}${block('drive d : strong', drive)}${more}`;
const ids = ['closed', 'moving', 'open'].map((part) => `leaf.west.stall-wind-${part}`);
const inputs = (push: string, lever: string, friction: string, left: string, at: number): string =>
  `  what the drive pushes with: ${push}\n  lever: ${lever}\n  friction: ${friction} N·m\n  left for the wind: ${left} N·m\n  moment for each pascal: 13.9644 m³ (EN 1991-1-4, Table 7.9 and 7.11)\n  at an opening of: ${at} deg\n`;

describe('the gust that stops a drive', () => {
  // Rising hinges: 150 kg · 9.80665 m/s² · 80 mm over π/2 are 74.9173 N·m; 25 N at the edge are 75 N·m. 400 less both is
  // 250.083 N·m to open, and 399.917 N·m to close, when gravity helps; v = √(2·M/(1.25·13.9644)).
  it('is less by friction, and by the climb on the way up only', () => {
    const most = '400 N·m (drive-model strong, the most that it can)';
    expect(told(file(`${leaf}\nrises 80 mm\nfriction 25 N`), ...ids)).toBe(
      `leaf.west.stall-wind-closed 5.35292 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 3, a gentle breeze\n${inputs(most, '1', '75', '250.083', 0)}` +
        `leaf.west.stall-wind-moving 5.35292 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 3, a gentle breeze\n${inputs(most, '1', '75', '250.083', 0)}` +
        `leaf.west.stall-wind-open 6.76915 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 4, a moderate breeze\n${inputs(most, '1', '75', '399.917', 90)}`,
    );
  });
  it('of a ram: by its lever there, least where the ram is weakest', () => {
    // a² = 0.1² + 0.2², ab·sin φ / L: 160/0.92195 = 173.544 mm closed, 80/0.60828 = 131.519 mm open. Of 1200 N, 60 % of 2000 N, that
    // is 208.253 and 157.823 N·m; with 74.9173 N·m of climb 133.336 to open the closed leaf, 82.9057 on the way, 232.74 to close.
    expect(told(file(`${leaf}\nrises 80 mm`, ram, bracketed, 'motion {\n  force 60 %\n}\n'), ...ids)).toBe(
      `leaf.west.stall-wind-closed 3.90861 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 2, a light breeze\n${inputs('1200 N (the force set)', '0.173544 m', '0', '133.336', 0)}` +
        `leaf.west.stall-wind-moving 3.08206 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 2, a light breeze\n${inputs('1200 N (the force set)', '0.131519 m', '0', '82.9057', 90)}` +
        `leaf.west.stall-wind-open 5.16398 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 3, a gentle breeze\n${inputs('1200 N (the force set)', '0.131519 m', '0', '232.74', 90)}`,
    );
  });
  // Tilted by 2 deg towards open: 150 kg · 9.80665 m/s² · 1.5 m · sin 2° are 77.0056 N·m, times the sine of what is left to open.
  it('against a leaf that falls open, is least on the way shut, where the leaf is heaviest', () => {
    const tilted = (angle: number): string => told(file(`${leaf.replace('90 deg', `${angle} deg`)}\nhinge-tilt 2 deg lowest open`), ...ids);
    // Of 90 deg it is heaviest closed: 400 less 77.0056 N·m on the way, 77.0056 more to open it.
    expect(tilted(90)).toContain('leaf.west.stall-wind-closed 7.39283 m/s');
    expect(tilted(90)).toContain(
      `leaf.west.stall-wind-moving 6.0834 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 3, a gentle breeze\n${inputs('400 N·m (drive-model strong, the most that it can)', '1', '0', '322.994', 0)}`,
    );
    expect(tilted(90)).toContain('leaf.west.stall-wind-open 6.76985 m/s');
    // Of 120 deg it is heaviest at 30 deg: there a quarter turn is left.
    expect(tilted(120)).toContain(
      `leaf.west.stall-wind-moving 6.0834 m/s at “opens inward 120 deg”: Such gusts come with Beaufort 3, a gentle breeze\n${inputs('400 N·m (drive-model strong, the most that it can)', '1', '0', '322.994', 30)}`,
    );
  });
  // 4 m high: 4·(2.3·0.72 + 1.4·0.9 + 2.3·2.88) = 38.16 m³. At 4 m over open country gusts are 1.342 times the mean, at 2 m and
  // below 1.193 times; 4.0953 m/s over 1.342 are 3.05 m/s, Beaufort 2 ends at 3.3.
  it('comes with a lighter wind where the leaf is higher', () => {
    expect(told(file(leaf.replace('1.8 m', '4 m')), ids[0] as string)).toContain(
      'leaf.west.stall-wind-closed 4.0953 m/s at “opens inward 90 deg”: Such gusts come with Beaufort 2, a light breeze\n',
    );
  });
  it('is nothing where the drive cannot even carry the leaf up', () => {
    const weak = told(file(`${leaf}\nrises 400 mm`, shaft.replace('400 N·m', '300 N·m')), ...ids);
    expect(weak).toContain('leaf.west.stall-wind-closed 0 m/s');
    expect(weak).toContain('leaf.west.stall-wind-moving 0 m/s');
  });
  it('is told at the infill where that is stated', () => {
    expect(told(file(`${leaf}\ninfill 100 %`), ids[0] as string)).toContain('leaf.west.stall-wind-closed 6.76985 m/s at “infill 100 %”');
  });
  it('is not given for a sliding leaf, or where a fact is missing', () => {
    const none = ids.map((id) => `${id} none\n`).join('');
    const sliding = file(
      leaf.replace('opens inward 90 deg', 'slides left 2.8 m'),
      block('drive-model strong', 'kind rack\nspeed 0.2 m/s\nthrust 800 N'),
    );
    for (const text of [
      sliding,
      file(leaf.replace('height 1.8 m\n', '')),
      file(leaf.replace('width 3 m\n', '')),
      file(leaf.replace('mass 150 kg\n', '')),
      file(leaf, shaft.replace('  torque 400 N·m\n', '')),
      file().replace('drive d : strong', 'drive d'),
    ])
      expect(told(text, ...ids)).toBe(none);
  });
});
