// What the figures of the wind read of a file. The zones of every leaf are added up by hand, for 26 m/s in open country.
import { describe, expect, it } from 'vitest';
import { figures } from '../../server/figures/wind/figure.ts';
import { goesInto, valuesIn } from './told.ts';

const site = (more = ''): string => `site {\n  wind 26 m/s terrain II${more}\n}\n`;
const leaf = (name: string, width: number, height: number, ...more: readonly string[]): string =>
  `leaf ${name} {\n  width ${width} m\n  height ${height} m\n  mass 150 kg\n${(more.length > 0 ? more : ['opens inward 90 deg']).map((line) => `  ${line}\n`).join('')}}\n`;
const swings = 'opens inward 90 deg';
const ofWind = (text: string): Record<string, number> => valuesIn(figures, text);

/** The zones of a leaf for each pascal, m² and m³: force, moment on the way, moment closed; undefined where there is no moment. */
function zonesOf(text: string, name: string): (number | undefined)[] {
  const given = ofWind(text);
  const pressure = given['site.wind-pressure'] ?? Number.NaN;
  return ['force', 'moment', 'moment-closed'].map((what) => {
    const value = given[`leaf.${name}.wind-${what}`];
    return value === undefined ? undefined : Number((value / pressure).toFixed(3));
  });
}

// Height 2 m. Alone, 2.4 m have A (2.3) over 0.6 m at both ends and B (1.4) between: 2·(2.76 + 1.68), and the moment of its middle.
// With 1.6 m beyond, 4 m are as short, but A stands at the hinge only: 2·(1.38 + 2.52), 2·(2.3·0.18 + 1.4·(2.88 − 0.18)).
const alone24 = [8.88, 10.656, 10.656];
const paired24 = [7.8, 10.656, 8.388];
// 1.6 m: 2·(2.76 + 0.56), half of it for 1.6 m; with 2.4 m beyond 2·(1.38 + 1.4), 2·(0.414 + 1.4·(1.28 − 0.18)).
const alone16 = [6.64, 5.312, 5.312];
const paired16 = [5.56, 5.312, 3.908];

describe('a leaf is a part of the whole gate while that is closed', () => {
  const [west, east] = [leaf('west', 2.4, 2), leaf('east', 1.6, 2)];
  it('with no other leaf it stands alone', () => {
    expect(zonesOf(site() + west, 'west')).toEqual(alone24);
    expect(zonesOf(site() + east, 'east')).toEqual(alone16);
  });
  it('two that swing meet in the middle', () => {
    expect(zonesOf(site() + west + east, 'west')).toEqual(paired24);
    expect(zonesOf(site() + west + east, 'east')).toEqual(paired16);
  });
  it('so they do beside a leaf that slides, which stands alone', () => {
    const text = site() + leaf('gate', 2.4, 2, 'slides left 3 m') + west + east;
    expect(zonesOf(text, 'west')).toEqual(paired24);
    expect(zonesOf(text, 'east')).toEqual(paired16);
    expect(zonesOf(text, 'gate')).toEqual([8.88, undefined, undefined]);
  });
  it('one that swings beside one that slides stands alone', () => {
    const text = site() + west + leaf('gate', 1.6, 2, 'slides left 3 m');
    expect(zonesOf(text, 'west')).toEqual(alone24);
    expect(zonesOf(text, 'gate')).toEqual([6.64, undefined, undefined]);
  });
  it('of three that swing nobody knows which two meet, unless one closes onto another', () => {
    const wicket = leaf('wicket', 1.6, 2);
    for (const [name, zones] of [
      ['west', alone24],
      ['east', alone16],
      ['wicket', alone16],
    ] as const)
      expect(zonesOf(site() + wicket + west + east, name), name).toEqual(zones);
    const onto = (name: string): string =>
      site() +
      wicket +
      (name === 'west' ? leaf('west', 2.4, 2, swings, 'closes onto east') + east : west + leaf('east', 1.6, 2, swings, 'closes onto west'));
    for (const name of ['west', 'east'])
      for (const [each, zones] of [
        ['west', paired24],
        ['east', paired16],
        ['wicket', alone16],
      ] as const)
        expect(zonesOf(onto(name), each), `${each}, ${name} closes onto the other`).toEqual(zones);
  });
  it('another leaf of which the width is not known adds nothing', () => {
    const text = site() + west + east.replace('  width 1.6 m\n', '');
    expect(zonesOf(text, 'west')).toEqual(alone24);
    expect(zonesOf(text, 'east')).toEqual([undefined, undefined, undefined]);
  });
});

describe('what is told', () => {
  it('a return corner breaks the wind at the end, and presses harder between: closed it then takes the most', () => {
    // 3 m by 1.5 m with a return of 1.5 m: A 2.1 over 0.45 m at both ends, B 1.8 between, 1.5·5.67. Alone 1.5·(2.3·0.9 + 1.4·2.1).
    const text = site() + leaf('west', 3, 1.5, 'return-corner 1.5 m', swings);
    expect(zonesOf(text, 'west')).toEqual([8.505, 12.758, 12.758]);
    expect(zonesOf(text.replace('  return-corner 1.5 m\n', ''), 'west')).toEqual([7.515, 11.273, 11.273]);
    const lines = goesInto(text, 'leaf.west.wind-force', 'leaf.west.wind-moment', 'leaf.west.wind-moment-closed').filter(
      (line) => !line.includes('pressure'),
    );
    expect(lines).toEqual([
      'leaf.west.wind-force at “height 1.5 m”',
      '  w, width: 3 m',
      '  h, height: 1.5 m',
      '  φ, infill: 1 (not stated, taken as full)',
      '  sum over the zones for each pascal: 8.505 m² (Table 7.9)',
      'leaf.west.wind-moment at “height 1.5 m”',
      '  w, width: 3 m',
      '  h, height: 1.5 m',
      '  φ, infill: 1 (not stated, taken as full)',
      '  sum over the zones for each pascal: 12.7575 m³ (Table 7.9)',
      'leaf.west.wind-moment-closed at “return-corner 1.5 m”',
      '  w, width: 3 m',
      '  h, height: 1.5 m',
      '  φ, infill: 1 (not stated, taken as full)',
      '  sum over the zones for each pascal: 12.7575 m³ (Table 7.9)',
    ]);
  });
  it('at 80 % of infill it is still a wall, of 1.2 everywhere', () => {
    const text = site() + leaf('west', 3, 2, 'infill 80 %', swings);
    expect(zonesOf(text, 'west')).toEqual([7.2, 10.8, 10.8]);
    expect(goesInto(text, 'leaf.west.wind-moment').slice(-2)).toEqual([
      '  φ, infill: 0.8',
      '  sum over the zones for each pascal: 10.8 m³ (Table 7.9)',
    ]);
    expect(goesInto(text, 'leaf.west.wind-moment')[0]).toBe('leaf.west.wind-moment at “infill 80 %”');
  });
  it('the pressure is that at the top of the highest leaf, above the ground around', () => {
    const heightIn = (text: string): string | undefined =>
      goesInto(text, 'site.wind-pressure').find((line) => line.startsWith('  z, height'));
    const [low, high, none] = [leaf('low', 2, 1.5), leaf('high', 2, 2.5), leaf('none', 2, 2).replace('  height 2 m\n', '')];
    for (const leaves of [low + high + none, none + high + low]) expect(heightIn(site() + leaves)).toBe('  z, height: 2.5 m');
    expect(heightIn(site(' base 8 m') + low)).toBe('  z, height: 9.5 m');
    expect(Object.keys(ofWind(site() + low + none)).sort()).toEqual([
      'leaf.low.wind-force',
      'leaf.low.wind-moment',
      'leaf.low.wind-moment-closed',
      'site.wind-pressure',
    ]);
  });
  it('nothing without wind, or with no height at all, also on a roof', () => {
    for (const text of [
      leaf('west', 2, 2),
      `site {\n  working-wind 8 m/s\n}\n${leaf('west', 2, 2)}`,
      site(' base 8 m'),
      site(' base 8 m') + leaf('west', 2, 2).replace('  height 2 m\n', ''),
    ])
      expect(ofWind(text)).toEqual({});
  });
});
