// Two double gates in one file: one lag serves both, and has to be long enough for each.
import { describe, expect, test } from 'vitest';
import { decidingOverlap, overlapsOf } from '../../server/figures/least-lag/working.ts';
import { inOneGo } from '../../server/model/index.ts';
import { drawingsOf } from '../../server/papers/index.ts';
import { marginsOf } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

const model = [6, 9, 14]
  .map((speed) => `drive-model shaft-${speed} {\n  kind direct\n  rotation 110 deg\n  shaft-speed ${speed} deg/s\n}\n`)
  .join('');
const leaf = (name: string, speed: number, more = ''): string =>
  `leaf ${name} {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n${more}}\ndrive ${name}-drive : shaft-${speed} {\n  moves ${name}\n}\n`;
/** The first covers the second, which runs at that many degrees a second to its 6: the quicker it is, the later it must start. */
const pair = (a: string, b: string, speed: number, covering = 6): string =>
  leaf(a, covering, `  closes onto ${b} overlap 40 mm gap 5 mm\n`) + leaf(b, speed);
const site = 'language 1\nsite "Two gates" {\n  rules europe\n  users trained\n}\n' + model;
const file = (lag: string, ...pairs: string[]): string =>
  site + pairs.join('') + `motion {\n  lag opening ${lag}\n  lag closing ${lag}\n}\n`;

const narrow = pair('west', 'east', 9);
const wide = pair('north', 'south', 14);
const of = (text: string) => judge(text).installation;
const said = (text: string): string[] =>
  judge(text)
    .findings.filter(({ rule }) => rule === 'lag-too-small')
    .map(({ what }) => what);

describe('one lag for two pairs', () => {
  const [first, second] = overlapsOf(of(file('5 s', narrow, wide)));
  test('each pair needs what it needs alone', () => {
    expect(first).toMatchObject({ opening: { lag: overlapsOf(of(file('5 s', narrow)))[0]?.opening.lag } });
    expect(second).toMatchObject({ opening: { lag: overlapsOf(of(file('5 s', wide)))[0]?.opening.lag } });
    expect(second?.opening.lag).toBeGreaterThan((first?.opening.lag ?? 0) + 0.2);
  });
  test.each([
    [narrow, wide],
    [wide, narrow],
  ])('the greater one decides, in whatever order they stand', (...pairs) => {
    expect(decidingOverlap(of(file('5 s', ...pairs)), 'opening')?.covering.name).toBe('north');
    const figure = judge(file('5 s', ...pairs)).figures.find(({ id }) => id === 'motion.least-lag');
    expect(figure?.value).toBe(second?.opening.lag);
  });
  test('the greater one decides when closing, where the covering leaf is the quicker one', () => {
    const slow = pair('west', 'east', 6, 9);
    const quick = pair('north', 'south', 6, 14);
    for (const pairs of [
      [slow, quick],
      [quick, slow],
    ])
      expect(decidingOverlap(of(file('5 s', ...pairs)), 'closing')?.covering.name).toBe('north');
  });
  test('one that is enough for the first and not for the second is flagged', () => {
    const between = `${((first?.opening.lag ?? 0) + 0.1).toFixed(2)} s`;
    expect(said(file(between, narrow, wide))).toEqual([
      expect.stringMatching(
        /^The lag of .* for opening is just enough while both drives run as stated: “south” must start at least .* after “north” to have something in hand for wind, wear and cold\.$/,
      ),
    ]);
    expect(said(file(between, narrow))).toEqual([]);
    expect(
      marginsOf(of(file(between, narrow, wide)))
        .filter(({ rule, held }) => rule.name === 'lag-too-small' && held.name === 'lag when opening')
        .map(({ kept }) => kept),
    ).toEqual([true, false]);
  });
  test('a pair of which too little is stated hides no other', () => {
    const unknown = narrow.replace('  opens inward 90 deg\n', '');
    expect(said(file('0.01 s', unknown, wide)).some((what) => what.includes('“south”'))).toBe(true);
  });
  test('the drawing of the timing tells the greater one', () => {
    const told = (...pairs: string[]): string | undefined => {
      const timing = inOneGo(drawingsOf(of(file('5 s', ...pairs)), [])).find(({ id }) => id === 'timing');
      return /at least ([\d.]+ s) later when opening/.exec(timing?.description ?? '')?.[1];
    };
    expect(told(wide)).toBeDefined();
    expect(told(wide)).not.toBe(told(narrow));
    expect(told(narrow, wide)).toBe(told(wide));
    expect(told(wide, narrow)).toBe(told(wide));
  });
});
