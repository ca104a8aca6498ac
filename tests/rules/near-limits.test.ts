// Strokes, tails, solar panels, supplies, slow zones and what the rules of North America ask: on both sides of each limit.
import { describe, expect, test } from 'vitest';
import { type Finding, marginsOf } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

const found = (rule: string, text: string): readonly Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);
const whats = (rule: string, text: string): string[] => found(rule, text).map((finding) => finding.what);
/** Where a finding and what belongs to it stand, as written; a place in another file by its name. */
const placesOf = (text: string, rule: string): string[] =>
  found(rule, text).flatMap(({ start, end, related }) => [
    text.slice(start, end),
    ...related.map((one) => `${one.message}: ${one.path?.split('/').at(-1) ?? text.slice(one.start, one.end)}`),
  ]);
const marginsIn = (rule: string, text: string) => marginsOf(judge(text).installation).filter((margin) => margin.rule.name === rule);

describe('stroke-too-short', () => {
  /**
   * By default with L² = (b·cos θ + A)² + (b·sin θ − B)², A = B = 0.15 m and b = 0.75 m: from 0.91241 m at 0° to 0.61847 m at 90°, 293.95
   * mm.
   */
  const gate = ({
    stroke = 'stroke 300 mm',
    brackets = '150 mm by 150 mm',
    leafBracket = '750 mm',
    opens = 'opens inward 90 deg',
  }): string =>
    `language 1\nleaf west {\n  width 2 m\n  mass 150 kg\n  ${opens}\n}\ndrive ram : heron {\n  moves west\n  post-bracket ${brackets}\n  leaf-bracket ${leafBracket}\n}\ndrive-model heron "Ram" {\n  kind linear-ram\n  ${stroke}\n}\n`;
  const said = (options: Parameters<typeof gate>[0]): string[] => whats('stroke-too-short', gate(options));

  test('a tenth of a millimetre is forgiven, two are not', () => {
    expect(said({ stroke: 'stroke 294 mm' })).toEqual([]);
    expect(said({ stroke: 'stroke 293.9 mm' })).toEqual([]);
    expect(said({ stroke: 'stroke 293.8 mm' })).toHaveLength(1);
    // 0.91241 m − 0.2 m = 0.71241 m is the length at √2·cos(θ + 45°) = (0.71241² − 0.6075)/0.225 = −0.4443.
    expect(said({ stroke: 'stroke 200 mm' })).toEqual([
      '“ram” needs 294 mm of stroke to open 90°, but has 200 mm, which is enough for 63.3°.',
    ]);
    expect(placesOf(gate({ stroke: 'stroke 200 mm' }), 'stroke-too-short')).toEqual([
      'leaf-bracket 750 mm',
      'the opening asked for: opens inward 90 deg',
    ]);
  });

  test('the margin is the stroke that is left', () => {
    const [margin] = marginsIn('stroke-too-short', gate({}));
    expect([margin?.subject, margin?.limit, margin?.kept]).toEqual(['ram', 0.3, true]);
    expect(margin?.left).toBeCloseTo(0.3 - 0.293946, 5);
  });

  test('where a dead point lies in the travel, that is told, and no stroke', () => {
    // tan θ = 0.1/0.3: at 18.4° hinge and brackets are in one line. The lengths are 1.2162 m there and 1.0440 m at 90°.
    const text = gate({ stroke: 'stroke 100 mm', brackets: '300 mm by -100 mm', leafBracket: '900 mm' });
    expect(whats('dead-point-in-travel', text)).toHaveLength(1);
    expect(whats('stroke-too-short', text)).toEqual([]);
    expect(marginsIn('stroke-too-short', text)).toEqual([]);
  });

  test('without a stroke, or a leaf that swings, there is nothing to hold', () => {
    expect(marginsIn('stroke-too-short', gate({ stroke: 'speed 16 mm/s' }))).toEqual([]);
    expect(marginsIn('stroke-too-short', gate({ opens: 'slides left 3 m' }))).toEqual([]);
    expect(marginsIn('stroke-too-short', gate({ opens: '' }))).toEqual([]);
  });
});

describe('tail-outside-practice', () => {
  const gate = (tail: string): string => `language 1\nleaf slide {\n  width 5 m\n  mass 400 kg\n  slides left 4.8 m\n  ${tail}\n}\n`;
  const said = (tail: string): string[] => whats('tail-outside-practice', gate(tail));

  test('30 % and 50 % are usual, less and more is not', () => {
    for (const tail of ['tail 1.5 m', 'tail 2 m', 'tail 2.5 m', '']) expect(said(tail), tail).toEqual([]);
    expect(said('tail 1.49 m')).toEqual(['The tail of “slide” is 29.8 % of the leaf; 30 to 50 % is usual.']);
    expect(said('tail 2.51 m')).toEqual(['The tail of “slide” is 50.2 % of the leaf; 30 to 50 % is usual.']);
    expect(placesOf(gate('tail 2.51 m'), 'tail-outside-practice')).toEqual(['tail 2.51 m']);
  });

  test('both ends are shown as margins, as shares in words', () => {
    const margins = marginsIn('tail-outside-practice', gate('tail 2 m'));
    expect(margins.map(({ held, value, limit, kept }) => [held.way, held.says?.(value), held.says?.(limit), kept])).toEqual([
      ['most', '0.75 times its weight', '2.5 times its weight', true],
      ['least', '40 %', '30 %', true],
      ['most', '40 %', '50 %', true],
    ]);
  });
});

describe('a tail that cannot stand', () => {
  const gate = (...lines: string[]): string =>
    `language 1\nleaf slide {\n  width 6 m\n  mass 400 kg\n  slides left 6 m\n  ${lines.join('\n  ')}\n}\n`;
  const severities = (...lines: string[]): string[] =>
    judge(gate(...lines)).findings.flatMap(({ rule, severity }) => (rule === 'tail-outside-practice' ? [severity] : []));
  // (6 − c)/(2c) = 2.5 where c = 1: rollers as far apart as the tail is long.
  test('its rear rollers hold more than 2.5 times the weight, even at its end', () => {
    expect(severities('tail 1.01 m')).toEqual(['warning']);
    expect(severities('tail 0.99 m')).toEqual(['error']);
  });
  // (6 − 2)/(2s) = 2.5 where s = 0.8.
  test('or they do where the rollers are', () => {
    expect(severities('tail 2 m', 'roller-spacing 0.81 m')).toEqual([]);
    expect(severities('tail 2 m', 'roller-spacing 0.79 m')).toEqual(['error']);
  });
});

describe('solar-too-small', () => {
  /** Draws 60 mA × 24 h × 24 V = 34.56 Wh a day; in 1.2 h of sun at 75 % that takes 38.4 W. */
  const gate = (...solar: readonly string[]): string =>
    `language 1\npanel-model sedge "Panel on a battery" {\n  standby 60 mA\n}\npanel box : sedge {\n  battery {\n    voltage 24 V\n    capacity 7 Ah over 20 h\n  }\n${solar.length === 0 ? '' : `  solar {\n${solar.map((line) => `    ${line}\n`).join('')}  }\n`}}\n`;
  const said = (...solar: readonly string[]): string[] => whats('solar-too-small', gate(...solar));

  test('what is drawn is held against what the worst month gives', () => {
    expect(said('peak 38.4 W', 'sun 1.2 h')).toEqual([]);
    expect(said('peak 38.3 W', 'sun 1.2 h')).toEqual(['“box” draws 34.6 Wh a day; 38.3 W of solar panel give 34.5 Wh. It needs 38.4 W.']);
    expect(placesOf(gate('peak 20 W', 'sun 1.2 h'), 'solar-too-small')).toEqual(['peak 20 W', 'the sun of the worst month: sun 1.2 h']);
    const [margin] = marginsIn('solar-too-small', gate('peak 76.8 W', 'sun 1.2 h'));
    expect([margin?.subject, margin?.kept, margin?.used]).toEqual(['box', true, expect.closeTo(0.5, 9)]);
  });

  test('a panel without sun, without rated power, without solar panel or without battery holds nothing', () => {
    for (const lines of [['peak 20 W'], ['sun 1.2 h'], ['efficiency 75 %'], []])
      expect(marginsIn('solar-too-small', gate(...lines)), lines.join()).toEqual([]);
    const text = gate('peak 20 W', 'sun 1.2 h');
    expect(marginsIn('solar-too-small', text)).toHaveLength(1);
    expect(marginsIn('solar-too-small', text.replace(/ {2}battery \{[^}]*\}\n/, ''))).toEqual([]);
  });
});

describe('supply-mismatch', () => {
  const gate = (panel: string, supply = '  supply 120 V 60 Hz\n'): string =>
    `language 1\nuse "../library/panels.gate"\nsite "Example" {\n  users limited\n${supply}}\npanel-model heron "Panel" {\n  supply 24 V\n}\npanel-model teal "Panel" {\n  leaves 1\n}\n${panel} {\n}\n`;

  test('it points to the supply, to the panel and to what its model is made for', () => {
    expect(placesOf(gate('panel main : marram-one'), 'supply-mismatch')).toEqual([
      'supply 120 V 60 Hz',
      'the panel: main : marram-one',
      'what its model is made for: panels.gate',
    ]);
    expect(placesOf(gate('panel main : heron'), 'supply-mismatch')).toEqual([
      'supply 120 V 60 Hz',
      'the panel: main : heron',
      'what its model is made for: supply 24 V',
    ]);
    expect(placesOf(gate('panel : heron'), 'supply-mismatch')).toEqual([
      'supply 120 V 60 Hz',
      'the panel: panel : heron',
      'what its model is made for: supply 24 V',
    ]);
  });

  test('nothing is said where either of the two is not known', () => {
    for (const panel of ['panel main : teal', 'panel main', 'panel main : nobody'])
      expect(whats('supply-mismatch', gate(panel)), panel).toEqual([]);
    expect(whats('supply-mismatch', gate('panel main : heron', ''))).toEqual([]);
    expect(whats('supply-mismatch', gate('panel main : heron', '  supply 24 V\n'))).toEqual([]);
  });

  test('each panel is held against it by itself', () => {
    expect(whats('supply-mismatch', `${gate('panel main : heron')}panel gatehouse : marram-one {\n}\n`)).toEqual([
      'The site has 120 V; “main” (heron) is made for 24 V, that is 21.6 V to 26.4 V.',
      'The site has 120 V; “gatehouse” (marram-one) is made for 230 V, that is 207 V to 253 V.',
    ]);
  });
});

describe('slow-zone-missing', () => {
  const leaf = (name: string): string => `leaf ${name} {\n  width 1.6 m\n  mass 120 kg\n  opens inward 90 deg\n}\n`;
  const drive = (name: string): string => `drive ${name}-floor : birch-floor {\n  moves ${name}\n}\n`;
  const head = 'language 1\nuse "../library/drives.gate"\n';
  const gate = (motion: string, driven: readonly string[] = ['west']): string =>
    `${head}${leaf('west')}${leaf('east')}${driven.map(drive).join('')}motion {\n  ${motion}\n}\n`;
  const said = (motion: string, driven?: readonly string[]): string[] => whats('slow-zone-missing', gate(motion, driven));

  test('leaves are counted where a drive moves them', () => {
    expect(said('seat 1 s', [])).toEqual([]);
    expect(said('seat 1 s', ['west'])).toEqual(['The leaf arrives at full speed: no slow zone is set.']);
    expect(said('seat 1 s', ['west', 'east'])).toEqual(['The leaves meet at full speed: no slow zone is set.']);
  });

  test('a zone of no length is none, and it is pointed to', () => {
    expect(said('slow-zone last 0 %')).toEqual(['The leaf arrives at full speed: no slow zone is set.']);
    expect(placesOf(gate('slow-zone last 0 %'), 'slow-zone-missing')).toEqual(['slow-zone last 0 %']);
    expect(placesOf(gate('seat 1 s'), 'slow-zone-missing')).toEqual(['motion']);
    expect(said('slow-zone last 1 %')).toEqual([]);
  });

  test('a zone must be run slower than the rest', () => {
    const noSlower = ['The leaf arrives at full speed: the slow zone is run no slower than the rest.'];
    expect(said('slow-zone last 10 % at 99 %')).toEqual([]);
    expect(said('slow-zone last 10 % at 100 %')).toEqual(noSlower);
    expect(said('speed 60 %\n  slow-zone last 10 % at 59 %')).toEqual([]);
    expect(said('speed 60 %\n  slow-zone last 10 % at 60 %')).toEqual(noSlower);
    expect(said('speed 60 %\n  slow-zone last 10 % at 70 %', ['west', 'east'])).toEqual([
      'The leaves meet at full speed: the slow zone is run no slower than the rest.',
    ]);
    // Not stated means what the drive's model says, which is slower.
    expect(said('speed 60 %\n  slow-zone last 10 %')).toEqual([]);
  });

  test('a zone that cannot be read may be one', () => {
    expect(said('slow-zone last much')).toEqual([]);
    expect(whats('slow-zone-missing', `${head}${leaf('west')}${drive('west')}`)).toEqual([]);
  });
});

describe('rules of North America', () => {
  const gate = (site: readonly string[], leaf = 'slides left 4 m', drive = 'birch-rack', rules = 'north-america'): string =>
    `language 1\nuse "../library/drives.gate"\nsite "Example" {\n  rules ${rules}\n${site.map((line) => `  ${line}\n`).join('')}}\nleaf west {\n  width 3 m\n  mass 150 kg\n  ${leaf}\n}\ndrive one : ${drive} {\n  moves west\n}\n`;

  test('1 ft/s binds leaves that slide, in the classes where families and the public pass', () => {
    // 11 m/min are 0.1833 m/s; this one runs twice as fast.
    const fast = (site: readonly string[], rules?: string): string =>
      `${gate(site, 'slides left 4 m', 'heron', rules)}drive-model heron "Rack" {\n  kind rack\n  speed 22 m/min\n}\n`;
    const text = fast(['usage-class II']);
    expect(whats('sliding-leaf-too-fast', text)).toEqual([
      '“west” slides at 0.367 m/s; in usage class II 0.3048 m/s (1 ft/s) is the most.',
    ]);
    expect(placesOf(text, 'sliding-leaf-too-fast')).toEqual(['slides left 4 m', 'this usage class: usage-class II']);
    expect(marginsIn('sliding-leaf-too-fast', gate(['usage-class I'])).map((margin) => [margin.subject, margin.kept])).toEqual([
      ['west', true],
    ]);
    for (const site of [['usage-class III'], ['usage-class IV'], []])
      expect(marginsIn('sliding-leaf-too-fast', fast(site)), site.join()).toEqual([]);
    expect(marginsIn('sliding-leaf-too-fast', fast(['usage-class I'], 'europe'))).toEqual([]);
    // 7 deg/s at 3 m are 0.3665 m/s, but this leaf swings.
    expect(marginsIn('sliding-leaf-too-fast', gate(['usage-class I'], 'opens inward 90 deg', 'birch-floor'))).toEqual([]);
  });

  test('classes III and IV leave the public out, and nobody else', () => {
    const said = (usage: string, users: string, rules?: string): string[] =>
      whats('usage-class-against-users', gate([`users ${users}`, `usage-class ${usage}`], undefined, undefined, rules));
    for (const usage of ['III', 'IV']) {
      expect(said(usage, 'public')).toEqual([
        `Usage class ${usage} is for premises that the public does not come to, but the users are the public.`,
      ]);
      expect(said(usage, 'limited')).toEqual([]);
      expect(said(usage, 'public', 'europe')).toEqual([]);
    }
    for (const usage of ['I', 'II']) expect(said(usage, 'public')).toEqual([]);
    expect(placesOf(gate(['users public', 'usage-class IV']), 'usage-class-against-users')).toEqual([
      'usage-class IV',
      'these users: users public',
    ]);
  });

  test('a sign warns on both sides, on one, or on none', () => {
    const said = (signs: string, rules?: string): string[] => whats('warning-sign-missing', gate([signs], undefined, undefined, rules));
    expect(said('signs none')).toEqual(['No sign warns of the moving gate.']);
    expect(said('signs one-side')).toEqual(['A sign warns of the moving gate on one of its sides only.']);
    expect(said('signs both-sides')).toEqual([]);
    expect(said('users public')).toEqual([]);
    expect(said('signs none', 'europe')).toEqual([]);
  });
});
