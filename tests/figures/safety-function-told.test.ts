// What the figures of the safety functions read of a file. 100 cycles a day are 36 500 operations a year, at which a B10D of 400 000
// is a mean time of 109.589 years and 10.9589 years until a tenth have failed. All by hand.
import { describe, expect, it } from 'vitest';
import { figures } from '../../server/figures/safety-function/figure.ts';
import { type Chain, chainOf, operationsOf } from '../../server/figures/safety-function/working.ts';
import { installationOf } from '../kit/pages.ts';
import { goesInto, valuesIn } from './told.ts';

const used = 'site {\n  cycles 100 /day\n}\n';
const panel = (...facts: readonly string[]): string =>
  `panel-model m {\n${facts.map((fact) => `  ${fact}\n`).join('')}}\npanel main : m {\n}\n`;
const ofParts = (...parts: readonly string[]): string => `function f {\n  parts ${parts.join(' ')}\n}\n`;
const ofMain = (...facts: readonly string[]): string => panel(...facts) + ofParts('main');
const subsystem = (...facts: readonly string[]): string =>
  `function f {\n  subsystem s {\n${facts.map((fact) => `    ${fact}\n`).join('')}  }\n}\n`;

/** The values of the function alone, by the last word of their ids. */
const valuesOf = (text: string): Record<string, number> =>
  Object.fromEntries(
    Object.entries(valuesIn(figures, text)).flatMap(([id, value]) =>
      id.startsWith('function.f.') ? [[id.slice('function.f.'.length), value]] : [],
    ),
  );
const toldOf = (text: string, ...names: readonly string[]): string[] => goesInto(text, ...names.map((name) => `function.f.${name}`));
function chainIn(text: string): Chain {
  const [of] = installationOf(`language 1\n${text}`).functions;
  if (of === undefined) throw new Error('no function');
  return chainOf(of);
}
const lacksIn = (text: string): string[] => chainIn(text).lacks.map(({ what, says }) => `${what}: ${says}`);

describe('the cycles of a year', () => {
  const operations = (site: string): number | undefined => operationsOf(installationOf(`language 1\n${site}`).site);
  it('are those of a day on the days of use, or on every day', () => {
    for (const [site, expected] of [
      [used, 36_500],
      ['site {\n  cycles 100 /day\n  days-in-use 220\n}\n', 22_000],
    ] as const) {
      expect(operations(site)).toBeCloseTo(expected, 9);
      expect(valuesIn(figures, site)).toEqual({ 'site.operations': expected });
    }
    expect(goesInto(used, 'site.operations')).toEqual([
      'site.operations at “cycles 100 /day”',
      '  cycles a day: 100 1/day',
      '  days in use: 365 (not stated)',
    ]);
  });
  it('are not known without cycles, or a site', () => {
    for (const site of ['site {\n  days-in-use 220\n}\n', '']) {
      expect(operations(site)).toBeUndefined();
      expect(valuesIn(figures, site)).toEqual({});
    }
  });
});

describe('a part that is declared as a whole', () => {
  const pfhd = { pfhd: 3e-7, 'performance-level': 4 };
  it('has the mean time and the coverage that stand beside it', () => {
    expect(valuesOf(ofMain('pfhd 300 FIT'))).toEqual(pfhd);
    expect(valuesOf(ofMain('pfhd 300 FIT', 'coverage 80 %'))).toEqual(pfhd);
    expect(valuesOf(ofMain('pfhd 300 FIT', 'mttfd 50 years'))).toEqual({ ...pfhd, mttfd: 50 });
    const text = ofMain('pfhd 300 FIT', 'mttfd 50 years', 'coverage 80 %');
    expect(valuesOf(text)).toEqual({ ...pfhd, mttfd: 50, dcavg: 0.8 });
    expect(toldOf(text, 'pfhd', 'performance-level', 'mttfd', 'dcavg')).toEqual([
      'function.f.pfhd at “function f”',
      '  failures an hour of main: 3e-7 1/h (declared by its maker)',
      'function.f.performance-level at “function f”: PL d',
      '  failures an hour: 3e-7 1/h (function.f.pfhd)',
      '  level of main: 4',
      'function.f.mttfd at “function f”',
      '  mean time of a channel of main: 50 years',
      'function.f.dcavg at “function f”: 80 %',
      '  mean time of main: 50 years',
      '  diagnostic coverage of main: 0.8',
    ]);
  });
  it('has neither as a link where it is not stated, with or without the other', () => {
    const link = (...facts: readonly string[]): unknown => chainIn(used + ofMain('pfhd 300 FIT', ...facts)).links[0];
    for (const facts of [[], ['coverage 80 %'], ['coverage 80 %', 'b10d 400000']])
      expect(link(...facts)).toMatchObject({ mttfd: undefined, components: [] });
    expect(link('mttfd 50 years')).toMatchObject({ mttfd: 50, components: [] });
    expect(link('mttfd 50 years', 'coverage 0 %')).toMatchObject({ mttfd: 50, components: [{ what: 'main', mttfd: 50, coverage: 0 }] });
  });
  it('counts no more than 100 years of it, and 2500 in category 4', () => {
    expect(valuesOf(ofMain('pfhd 300 FIT', 'mttfd 5000 years'))['mttfd']).toBe(100);
    expect(valuesOf(ofMain('pfhd 300 FIT', 'mttfd 5000 years', 'category 4'))['mttfd']).toBe(2500);
  });
  it('with the part in it that wears; where nobody knows how fast it wears, neither is known', () => {
    // 1/50 + 1/109.589 is 1/34.3348.
    const facts = ['pfhd 300 FIT', 'mttfd 50 years', 'coverage 80 %'];
    for (const wears of ['b10d 400000', 'output-relay relay-full-load']) {
      expect(valuesOf(used + ofMain(...facts, wears))).toEqual({ ...pfhd, mttfd: 34.3348, dcavg: 0.8, 'replace-after': 10.9589 });
      expect(toldOf(used + ofMain(...facts, wears), 'dcavg').slice(1)).toEqual([
        '  mean time of main: 34.3348 years',
        '  diagnostic coverage of main: 0.8',
      ]);
      expect(valuesOf(ofMain(...facts, wears))).toEqual(pfhd);
      // What wears says nothing of the rest.
      expect(valuesOf(used + ofMain('pfhd 300 FIT', 'coverage 80 %', wears))).toEqual({ ...pfhd, 'replace-after': 10.9589 });
    }
  });
  it('by its level alone has the worst of it', () => {
    const text = ofMain('performance-level c');
    expect(valuesOf(text)).toEqual({ pfhd: 3e-6, 'performance-level': 3 });
    expect(toldOf(text, 'pfhd')[1]).toBe(
      '  failures an hour of main: 0.000003 1/h (only its level is declared, so the worst of it counts)',
    );
    expect(chainIn(text)).toMatchObject({ declared: 3, pfhdAtLeast: 1e-6, atBest: 3 });
  });
});

describe('a part that is reckoned', () => {
  it('by its category, where all is shown that it asks for: Table K.1 at 47 years', () => {
    const text = (category: number, coverage: string): string =>
      ofMain(`category ${category}`, 'mttfd 50 years', `coverage ${coverage}`, 'common-cause 70');
    expect(valuesOf(text(3, '90 %'))).toEqual({ pfhd: 1.34e-7, 'performance-level': 4, mttfd: 50, dcavg: 0.9 });
    expect(valuesOf(text(4, '99 %'))).toEqual({ pfhd: 5.76e-8, 'performance-level': 5, mttfd: 50, dcavg: 0.99 });
    expect(valuesOf(text(2, '60 %'))).toEqual({ pfhd: 1.24e-6, 'performance-level': 3, mttfd: 50, dcavg: 0.6 });
    expect(toldOf(text(3, '90 %'), 'pfhd', 'performance-level', 'dcavg')).toEqual([
      'function.f.pfhd at “function f”',
      '  failures an hour of main: 1.34e-7 1/h (category 3)',
      '  mean time of a channel of main, as it counts: 50 years',
      '  diagnostic coverage of main: 0.9',
      'function.f.performance-level at “function f”: PL d',
      '  failures an hour: 1.34e-7 1/h (function.f.pfhd)',
      '  level of main: 4',
      '  level of main by the simplified table: 4 (a band, for comparison)',
      'function.f.dcavg at “function f”: 90 %',
      '  mean time of main: 50 years',
      '  diagnostic coverage of main: 0.9',
    ]);
    // The table is from memory: nothing of it is sure.
    expect(chainIn(text(3, '90 %')).pfhdAtLeast).toBe(0);
  });
  it('or else as one channel of category B, of 27 years at the most, and says why', () => {
    const text = ofMain('category 3', 'mttfd 50 years', 'coverage 90 %');
    expect(valuesOf(text)).toEqual({ pfhd: 4.22797e-6, 'performance-level': 2, mttfd: 27, dcavg: 0.9 });
    expect(toldOf(text, 'pfhd')[1]).toBe(
      '  failures an hour of main: 0.00000422797 1/h (category B, because nothing is said against failures by a common cause)',
    );
  });
  it('by what wears alone, or by what does not', () => {
    // One channel of category 1, 109.589 years of which 100 count; of category B, 50 of which 27 count.
    expect(valuesOf(used + ofMain('category 1', 'b10d 400000'))).toEqual({
      pfhd: 1.14155e-6,
      'performance-level': 3,
      mttfd: 100,
      dcavg: 0,
      'replace-after': 10.9589,
    });
    expect(valuesOf(used + ofMain('mttfd 50 years'))).toEqual({ pfhd: 4.22797e-6, 'performance-level': 2, mttfd: 27, dcavg: 0 });
    expect(toldOf(used + ofMain('category 1', 'b10d 400000'), 'dcavg')[1]).toBe('  mean time of main: 109.589 years');
  });
  it('with no level at all below 3 years', () => {
    const text = ofMain('mttfd 2 years');
    expect(valuesOf(text)).toEqual({ pfhd: 5.70776e-5, 'performance-level': 0, mttfd: 2, dcavg: 0 });
    expect(toldOf(text, 'performance-level')).toEqual([
      'function.f.performance-level at “function f”: no PL',
      '  failures an hour: 0.0000570776 1/h (function.f.pfhd)',
      '  level of main: 0',
    ]);
  });
  it('by its kind where nothing else is declared: from memory, and then nothing is sure', () => {
    const memory = used + ofMain('category 1', 'mttfd 50 years', 'output-relay relay-full-load');
    expect(valuesOf(memory)).toMatchObject({ mttfd: 34.3348, 'replace-after': 10.9589 });
    expect(toldOf(memory, 'replace-after')).toEqual([
      'function.f.replace-after at “function f”',
      '  B10D of main: 400000 (by its kind, from memory)',
      '  operations a year: 36500 1/year (site.operations)',
    ]);
    expect(chainIn(memory).pfhdAtLeast).toBe(0);
    const own = used + ofMain('category 1', 'mttfd 50 years', 'output-relay relay-full-load', 'b10d 800000');
    expect(toldOf(own, 'replace-after')[1]).toBe('  B10D of main: 800000');
    expect(valuesOf(own)['replace-after']).toBe(21.9178);
    expect(chainIn(own).pfhdAtLeast).toBeCloseTo((1 / 50 + 1 / (2 * 109.58904)) / 8760, 12);
    expect(chainIn(ofMain('mttfd 50 years')).pfhdAtLeast).toBeCloseTo(1 / (50 * 8760), 15);
  });
});

describe('what lacks', () => {
  it('is told of each part, once, and nothing of what was reported elsewhere', () => {
    const devices =
      'control fob {\n  by transmitter\n}\nsensor plain {\n  watches closing\n}\nsensor lost : nowhere {\n  watches closing\n}\n' +
      panel('leaves 1');
    expect(lacksIn(devices + ofParts('nobody', 'fob', 'plain', 'lost', 'main'))).toEqual([
      'nobody: ',
      'fob: is a control, and has to stand as an component of a subsystem, with what its maker declares',
      'plain: has no model',
      'lost: ',
      'main: has a model that declares none of “pfhd”, “performance-level”, “mttfd” and “b10d”',
    ]);
    expect(lacksIn('function f {\n}\n')).toEqual([': it names no parts']);
    const noCycles = 'wears by switching, and the site does not say how many “cycles” a day the gate makes';
    expect(lacksIn(ofMain('b10d 400000'))).toEqual([`main: ${noCycles}`]);
    expect(lacksIn(ofMain('mttfd 50 years', 'b10d 400000'))).toEqual([`main: ${noCycles}`]);
    expect(lacksIn(subsystem('component "x" b10d 400000', 'component "y"', 'component "z" mttfd 50 years'))).toEqual([
      `x: ${noCycles}`,
      'y: has none of “b10d”, “mttfd” and “kind”',
    ]);
    expect(lacksIn(subsystem('component "x" b10d 400000 mttfd 50 years'))).toEqual([`x: ${noCycles}`]);
    expect(lacksIn(subsystem('component "y" channel second mttfd 50 years'))).toEqual(['s: has no component in its first channel']);
    expect(lacksIn(subsystem('component "y" channel second'))).toEqual(['y: has none of “b10d”, “mttfd” and “kind”']);
  });
  it('leaves nothing to tell of the function but when the first part is to be replaced', () => {
    const both = used + panel('pfhd 300 FIT', 'b10d 400000') + 'sensor plain {\n  watches closing\n}\n' + ofParts('main', 'plain');
    expect(valuesOf(both)).toEqual({ 'replace-after': 10.9589 });
    expect(chainIn(both)).toMatchObject({ atBest: 4, pfhd: undefined, level: undefined, mttfd: undefined, coverage: undefined });
    // A subsystem of which one component is not known has no link, whatever the others are.
    expect(chainIn(subsystem('component "x" mttfd 50 years', 'component "y"')).links).toEqual([]);
    expect(valuesOf(subsystem('component "x" mttfd 50 years', 'component "y"'))).toEqual({});
  });
  it('a function without a name has no figures', () =>
    expect(valuesIn(figures, 'function {\n  subsystem s {\n    component "x" mttfd 50 years\n  }\n}\n')).toEqual({}));
  it('of two parts the mean time and the coverage are told where both are known', () => {
    const two = (more: string): string =>
      panel('pfhd 300 FIT', 'mttfd 50 years', 'coverage 80 %') +
      `panel-model n {\n  pfhd 100 FIT\n${more}}\npanel other : n {\n}\n` +
      ofParts('main', 'other');
    expect(valuesOf(two(''))).toEqual({ pfhd: 4e-7, 'performance-level': 4 });
    expect(valuesOf(two('  mttfd 50 years\n'))).toEqual({ pfhd: 4e-7, 'performance-level': 4, mttfd: 25 });
    expect(valuesOf(two('  mttfd 50 years\n  coverage 60 %\n'))).toEqual({ pfhd: 4e-7, 'performance-level': 4, mttfd: 25, dcavg: 0.7 });
  });
});

describe('the components of a subsystem', () => {
  const wearingIn = (text: string): (string | number | boolean | undefined)[][] =>
    chainIn(text).wearing.map(({ what, b10d, years, isFromMemory, since }) => [
      what,
      b10d,
      Number(years.toPrecision(6)),
      isFromMemory,
      since,
    ]);
  it('that operate twice in a cycle wear twice as fast', () => {
    const text = used + subsystem('category 1', 'component "x" b10d 4000000 times 2');
    expect(valuesOf(text)).toMatchObject({ 'replace-after': 54.7945, mttfd: 100 });
    expect(toldOf(text, 'replace-after').slice(1)).toEqual(['  B10D of x: 4000000', '  operations a year: 73000 1/year (site.operations)']);
    expect(toldOf(text, 'dcavg')[1]).toBe('  mean time of x: 547.945 years');
  });
  it('count by what is declared of them, and by their kind only where nothing is', () => {
    const means = (component: string): [string | undefined, unknown[][]] => {
      const text = used + subsystem('category 1', `component "x" ${component}`);
      return [toldOf(text, 'dcavg')[1], wearingIn(text)];
    };
    const wears = (b10d: number, years: number, memory: boolean): unknown[][] => [['x', b10d, years, memory, undefined]];
    expect(means('b10d 400000')).toEqual(['  mean time of x: 109.589 years', wears(400_000, 10.9589, false)]);
    expect(means('b10d 400000 mttfd 50 years')).toEqual(['  mean time of x: 34.3348 years', wears(400_000, 10.9589, false)]);
    expect(means('kind contactor-full-load')).toEqual(['  mean time of x: 356.164 years', wears(1_300_000, 35.6164, true)]);
    expect(means('mttfd 50 years kind contactor-full-load')).toEqual(['  mean time of x: 50 years', []]);
    expect(means('b10d 400000 kind contactor-full-load')).toEqual(['  mean time of x: 109.589 years', wears(400_000, 10.9589, false)]);
    expect(means('kind mechanical')).toEqual(['  mean time of x: 150 years', []]);
    expect(means('b10d 400000 kind mechanical')).toEqual(['  mean time of x: 109.589 years', wears(400_000, 10.9589, false)]);
    expect(means('mttfd 50 years kind mechanical')).toEqual(['  mean time of x: 50 years', []]);
  });
  it('are sure by what is declared, in one channel', () => {
    const sure = (...components: readonly string[]): number => chainIn(used + subsystem(...components)).pfhdAtLeast;
    expect(sure('component "x" mttfd 50 years')).toBeCloseTo(1 / (50 * 8760), 15);
    expect(sure('component "x" mttfd 50 years', 'component "y" kind mechanical')).toBe(0);
    expect(sure('component "x" mttfd 50 years', 'component "y" channel second mttfd 50 years')).toBe(0);
    expect(sure('category 2', 'component "x" mttfd 50 years')).toBe(0);
  });
  it('wear since they were fitted, or since the gate went into use', () => {
    const text =
      'site {\n  cycles 100 /day\n  installed 2019-06-01\n}\n' +
      subsystem('component "x" b10d 400000 fitted 2024-05-02', 'component "y" b10d 800000');
    expect(wearingIn(text)).toEqual([
      ['x', 400_000, 10.9589, false, '2024-05-02'],
      ['y', 800_000, 21.9178, false, '2019-06-01'],
    ]);
    expect(valuesOf(text)['replace-after']).toBe(10.9589);
  });
  it('that test count for the test alone: often enough, or at each demand', () => {
    // Table K.1 at 47 years: 1.24e-6; 1.1 times that from 25 tests on.
    const text = (...more: readonly string[]): string =>
      subsystem(
        'category 2',
        'common-cause 70',
        ...more,
        'component "x" mttfd 50 years coverage 60 %',
        'component "t" channel test mttfd 30 years',
      );
    expect(valuesOf(text('tests 100'))).toEqual({ pfhd: 1.24e-6, 'performance-level': 3, mttfd: 50, dcavg: 0.6 });
    expect(valuesOf(text('tests 30'))['pfhd']).toBe(1.364e-6);
    expect(valuesOf(text('tested-on-demand'))['pfhd']).toBe(1.24e-6);
    expect(valuesOf(text('tests 30', 'tested-on-demand'))['pfhd']).toBe(1.24e-6);
    expect(toldOf(text(), 'pfhd')[1]).toBe(
      '  failures an hour of s: 0.00000422797 1/h (category B, because how often it is tested is not said)',
    );
    expect(toldOf(text('tests 100'), 'dcavg').slice(1)).toEqual(['  mean time of x: 50 years', '  diagnostic coverage of x: 0.6']);
    expect(toldOf(text('tests 100').replace(/.*channel test.*\n/, ''), 'pfhd')[1]).toContain('because what tests it is not said');
  });
});
