import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loopsOf } from '../../server/circuits/index.ts';
import {
  bandOf,
  decades,
  dividerVoltage,
  isStandard,
  nearestStandard,
  overlap,
  parallel,
  parallelBand,
  type Resistor,
  type Series,
  series,
  statesOf,
  toleranceOf,
} from '../../server/figures/edge-loop/maths.ts';
import { judge } from '../kit/pages.ts';

const ohms = fc.double({ min: 1, max: 1e6, noNaN: true });
const resistor = fc.record({ resistance: ohms, tolerance: fc.double({ min: 0, max: 0.2, noNaN: true }) });
const whole = (value: number | undefined): number => Math.round(value ?? Number.NaN);

describe('resistors side by side and one behind the other', () => {
  it('agrees with the worked values for terminators of 8.2 kohm', () => {
    // Computed by two methods: two side by side 4100, three 2733.3, two in series 16400.
    expect(parallel([8200])).toBeCloseTo(8200, 9);
    expect(parallel([8200, 8200])).toBeCloseTo(4100, 9);
    expect(parallel([8200, 8200, 8200])).toBeCloseTo(2733.333, 3);
    expect(series([8200, 8200])).toBe(16400);
    // Leakage of 100, 50 and 20 kohm across the line.
    expect([100e3, 50e3, 20e3].map((leakage) => whole(parallel([8200, leakage])))).toEqual([7579, 7045, 5816]);
    // The cable of the loop, 2 × 50 m of 0.22 mm², adds 7.8 ohm: a thousandth.
    expect(((series([8200, 7.8]) ?? 0) / 8200 - 1) * 100).toBeCloseTo(0.1, 2);
  });

  it('agrees with worked examples of a textbook', () => {
    // From memory, checked by hand: Serway and Jewett, Physics for Scientists and Engineers, direct-current circuits. 8 and 4 ohm in
    // series with 6 and
    // 3 ohm side by side are 14 ohm; 3, 6 and 9 ohm side by side are 1.64 ohm.
    expect(series([8, 4, parallel([6, 3]) ?? Number.NaN])).toBeCloseTo(14, 9);
    expect(parallel([3, 6, 9])).toBeCloseTo(1.64, 2);
  });

  it('takes a cut wire and a pressed edge as they are', () => {
    expect(parallel([])).toBe(Number.POSITIVE_INFINITY);
    expect(parallel([Number.POSITIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
    expect(parallel([8200, 0])).toBe(0);
    expect(series([])).toBe(0);
    for (const bad of [-1, Number.NaN]) {
      expect(parallel([8200, bad])).toBeUndefined();
      expect(series([8200, bad])).toBeUndefined();
    }
  });

  it('keeps to what must hold for any resistors', () => {
    fc.assert(
      fc.property(fc.array(ohms, { minLength: 2, maxLength: 6 }), (parts) => {
        const side = parallel(parts) ?? Number.NaN;
        const row = series(parts) ?? Number.NaN;
        expect(side).toBeLessThan(Math.min(...parts));
        expect(row).toBeGreaterThan(Math.max(...parts));
        // Both ends: n equal parts lie between R/n and R·n, and the order does not matter.
        expect(side * parts.length).toBeGreaterThanOrEqual(Math.min(...parts) * (1 - 1e-9));
        expect((parallel([...parts].reverse()) ?? 0) / side).toBeCloseTo(1, 12);
        // In two steps as in one.
        expect((parallel([parts[0] as number, parallel(parts.slice(1)) as number]) ?? 0) / side).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('tolerances', () => {
  it('agrees with the worked bands of 8.2 kohm', () => {
    const one = bandOf({ resistance: 8200, tolerance: 0.01 });
    const five = bandOf({ resistance: 8200, tolerance: 0.05 });
    expect([one?.low, one?.high].map(whole)).toEqual([8118, 8282]);
    expect([five?.low, five?.high].map(whole)).toEqual([7790, 8610]);
  });

  it('gives the worst case of several, and nothing for what cannot be', () => {
    expect(
      whole(
        parallelBand([
          { resistance: 8200, tolerance: 0.05 },
          { resistance: 8200, tolerance: 0.05 },
        ])?.low,
      ),
    ).toBe(3895);
    expect(
      whole(
        parallelBand([
          { resistance: 8200, tolerance: 0.05 },
          { resistance: 8200, tolerance: 0.05 },
        ])?.high,
      ),
    ).toBe(4305);
    for (const tolerance of [-0.01, 1, Number.NaN]) {
      expect(bandOf({ resistance: 8200, tolerance })).toBeUndefined();
      expect(parallelBand([{ resistance: 8200, tolerance }])).toBeUndefined();
    }
    expect(bandOf({ resistance: -1, tolerance: 0.05 })).toBeUndefined();
  });

  it('holds every set of resistors that the tolerances allow', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(resistor, fc.double({ min: -1, max: 1, noNaN: true })), { minLength: 1, maxLength: 5 }), (parts) => {
        const band = parallelBand(parts.map(([part]) => part));
        const real =
          parallel(parts.map(([{ resistance, tolerance }, share]: [Resistor, number]) => resistance * (1 + tolerance * share))) ??
          Number.NaN;
        expect(real).toBeGreaterThanOrEqual((band?.low ?? Number.NaN) * (1 - 1e-9));
        expect(real).toBeLessThanOrEqual((band?.high ?? Number.NaN) * (1 + 1e-9));
      }),
    );
  });
});

describe('bands that share a value', () => {
  it('do so where they touch, and either way round', () => {
    const share = (a: readonly [number, number], b: readonly [number, number]): boolean[] => [
      overlap({ low: a[0], high: a[1] }, { low: b[0], high: b[1] }),
      overlap({ low: b[0], high: b[1] }, { low: a[0], high: a[1] }),
    ];
    expect(share([1, 2], [2, 3])).toEqual([true, true]);
    expect(share([1, 2], [2.001, 3])).toEqual([false, false]);
    expect(share([1, 4], [2, 3])).toEqual([true, true]);
    expect(share([5, Infinity], [1, 5])).toEqual([true, true]);
  });
});

describe('standard values', () => {
  it('has the values of IEC 60063', () => {
    expect(decades.E12.map((digits) => digits / 10)).toEqual([1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2]);
    // Every other value of E24 is E12; the others are these.
    expect(decades.E24.filter((_, i) => i % 2 === 0)).toEqual([...decades.E12]);
    expect(decades.E24.filter((_, i) => i % 2 === 1).map((digits) => digits / 10)).toEqual([
      1.1, 1.3, 1.6, 2.0, 2.4, 3.0, 3.6, 4.3, 5.1, 6.2, 7.5, 9.1,
    ]);
    // E24 is not the rounded geometric series at i = 10 to 16 and 22.
    const rounded = decades.E24.map((_, i) => Math.round(10 * 10 ** (i / 24)));
    expect(decades.E24.flatMap((digits, i) => (digits === rounded[i] ? [] : [i]))).toEqual([10, 11, 12, 13, 14, 15, 16, 22]);
    // E96: every second value is one of E48. IEC 60063, its values from memory; and the ends.
    expect(decades.E96).toHaveLength(96);
    for (const digits of [100, 121, 147, 178, 215, 261, 316, 383, 464, 562, 681, 825, 102, 806, 976]) expect(decades.E96).toContain(digits);
    expect(toleranceOf).toEqual({ E12: 0.1, E24: 0.05, E96: 0.01 });
  });

  it('finds the nearest, across decades too', () => {
    expect(nearestStandard(8200, 'E12')).toBe(8200);
    expect(nearestStandard(8200, 'E96')).toBe(8250);
    expect(nearestStandard(8100, 'E96')).toBe(8060);
    expect(nearestStandard(9900, 'E24')).toBe(10000);
    expect(nearestStandard(0.98, 'E12')).toBe(1);
    expect(isStandard(8200, 'E24')).toBe(true);
    expect(isStandard(8200, 'E96')).toBe(false);
    expect(isStandard(8250, 'E96')).toBe(true);
    expect(isStandard(6000, 'E24')).toBe(false);
    for (const bad of [0, -1, Number.NaN, Infinity]) expect(nearestStandard(bad, 'E24')).toBeUndefined();
  });

  it('is the value as it is written, to the last digit, in every decade', () => {
    for (const of of ['E12', 'E24', 'E96'] as const)
      for (const digits of decades[of])
        for (let power = -6; power <= 6; power++) {
          const written = Number(`${digits}e${power}`);
          expect(nearestStandard(written, of)).toBe(written);
        }
    for (const bad of [0, -1, Number.NaN, Infinity]) expect(isStandard(bad, 'E24')).toBe(false);
  });

  it('is never further away than half a step, and finds each value again', () => {
    fc.assert(
      fc.property(ohms, fc.constantFrom<Series>('E12', 'E24', 'E96'), (resistance, of) => {
        const value = nearestStandard(resistance, of) ?? Number.NaN;
        const all = [0.01, 0.1, 1, 10, 100, 1e3, 1e4, 1e5, 1e6].flatMap((power) => decades[of].map((digits) => digits * power));
        const least = Math.min(...all.map((one) => Math.abs(Math.log(one / resistance))));
        expect(Math.abs(Math.log(value / resistance))).toBeLessThanOrEqual(least + 1e-9);
        expect(isStandard(value, of)).toBe(true);
      }),
    );
  });
});

const edge = (name: string, lines: string): string => `sensor ${name} : finch-edge {\n  watches closing\n${lines}\n}\n`;
const site = (edges: string, wires: string): string =>
  `language 1\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n${edges}panel main : rowan-pair {\n${wires}\n}\n`;
const resistances = (text: string): Record<string, number> =>
  Object.fromEntries(
    judge(text).figures.flatMap((figure) => (/\.loop\..*\.resistance$/.test(figure.id) ? [[figure.id, figure.value] as const] : [])),
  );

describe('loops of a panel', () => {
  it('counts the terminators of a chain and of edges side by side', () => {
    const chain = edge('a', 'chains-into b') + edge('b', 'chains-into c') + edge('c', 'terminator 8.2 kohm');
    expect(resistances(site(chain, 'wire a to E1 E0'))).toEqual({ 'panel.main.loop.E1.resistance': 8200 });
    const both = edge('a', 'terminator 8.2 kohm\nchains-into b') + edge('b', 'terminator 8.2 kohm');
    expect(resistances(site(both, 'wire a to E1 E0'))['panel.main.loop.E1.resistance']).toBeCloseTo(4100, 9);
    const side = edge('a', 'terminator 8.2 kohm') + edge('b', 'terminator 8.2 kohm') + edge('c', 'terminator 8.2 kohm');
    expect(resistances(site(side, 'wire a to E1 E0\nwire b to E1 E0\nwire c to E1 E0'))['panel.main.loop.E1.resistance']).toBeCloseTo(
      2733.333,
      3,
    );
    expect(resistances(site(side, 'wire a to E1 E0\nwire b to E2 E0'))).toEqual({
      'panel.main.loop.E1.resistance': 8200,
      'panel.main.loop.E2.resistance': 8200,
    });
  });

  it('counts an edge once, however often it is wired', () => {
    const one = edge('a', 'terminator 8.2 kohm');
    expect(resistances(site(one, 'wire a to E1 E0\nwire a to E1 E0'))).toEqual({ 'panel.main.loop.E1.resistance': 8200 });
  });

  it('says nothing where a chain cannot be followed to its end', () => {
    const terminated = edge('b', 'terminator 8.2 kohm');
    for (const first of ['chains-into nobody', 'chains-into a', 'chains-into beam', 'terminator 8.2', ''])
      expect(
        resistances(site(edge('a', first) + terminated + 'sensor beam : finch-beam {\n  watches closing\n}\n', 'wire a to E1 E0')),
        first,
      ).toEqual({});
  });

  it('ends on chains that go round, in whatever shape', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(5), { minLength: 6, maxLength: 6 }), fc.array(fc.nat(5), { maxLength: 4 }), (next, wired) => {
        const edges = next
          .map((to, i) => edge(`e${i}`, i % 2 === 0 ? `chains-into e${to}` : `chains-into e${to}\nterminator 8.2 kohm`))
          .join('');
        const analysis = judge(site(edges, wired.map((i) => `wire e${i} to E${(i % 2) + 1} E0`).join('\n')));
        for (const panel of analysis.installation.panels)
          for (const { edges, branches } of loopsOf(panel) ?? []) {
            expect(new Set(edges).size).toBe(edges.length);
            expect(branches.flatMap((branch) => branch.edges)).toEqual(edges);
          }
        // Each edge leads on, so every chain goes round: none has a resistance, and some edge is told of.
        expect(analysis.figures.filter((figure) => figure.id.includes('.loop.'))).toEqual([]);
        expect(analysis.findings.some((finding) => finding.rule === 'edge-chain-broken')).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what a panel sees of a loop', () => {
  // Worked twice by hand: 5 V over 8200 ohm. A pressed loop, two terminators side by side, rest, 100 ohm of cable, two in
  // series, a cut loop: 0, 1.6667, 2.5, 2.5152, 3.3333 and 5 V.
  it.each([
    [0, 0],
    [4100, 1.6667],
    [8200, 2.5],
    [8300, 2.5152],
    [16400, 3.3333],
    [Infinity, 5],
  ])('%f ohm: %f V', (ohms, volts) => expect(dividerVoltage(5, 8200, ohms)).toBeCloseTo(volts, 4));

  const parts = { terminator: { resistance: 8200, tolerance: 0.05 }, cable: 0, pressed: 0, leakage: Infinity, panel: 0 };
  const volts = (given: Partial<typeof parts>): [number, number] => {
    const { rest } = statesOf({ ...parts, ...given }) ?? { rest: { low: Number.NaN, high: Number.NaN } };
    return [dividerVoltage(5, 8200, rest.low), dividerVoltage(5, 8200, rest.high)];
  };
  // Worked twice by hand: both ± 5 %: 2.375 to 2.625 V; the terminator alone: 2.4359 to 2.5610 V.
  it('in the worst case of the tolerances', () => {
    expect(volts({ panel: 0.05 })[0]).toBeCloseTo(2.375, 4);
    expect(volts({ panel: 0.05 })[1]).toBeCloseTo(2.625, 4);
    expect(volts({})[0]).toBeCloseTo(2.4359, 4);
    expect(volts({})[1]).toBeCloseTo(2.561, 4);
  });
  it('holds whatever the parts happen to be', () => {
    const share = fc.double({ min: 0, max: 0.2, noNaN: true });
    const unit = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.double({ min: 2000, max: 1e7, noNaN: true }),
        unit,
        unit,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 50, noNaN: true }),
        (tolerance, panel, cable, leakage, a, b, c, d) => {
          const states = statesOf({ terminator: { resistance: 8200, tolerance }, cable, pressed: 300, leakage, panel });
          const real = parallel([8200 * (1 + a * tolerance) + c * cable, leakage * d]) as number;
          const seen = (ohms: number): number => ohms / (1 + b * panel);
          expect(seen(real)).toBeGreaterThanOrEqual((states?.rest.low ?? Infinity) * (1 - 1e-12));
          expect(seen(real)).toBeLessThanOrEqual((states?.rest.high ?? 0) * (1 + 1e-12));
          expect(seen((parallel([300, leakage * d]) as number) + c * cable)).toBeLessThanOrEqual((states?.pressed.high ?? 0) * (1 + 1e-12));
          expect(seen(leakage * d)).toBeGreaterThanOrEqual((states?.open.low ?? Infinity) * (1 - 1e-12));
        },
      ),
    );
  });
  it('in each state, by hand: 8.2 kohm ± 5 %, 10 ohm of cable, 500 ohm pressed, 100 kohm of damp, 1 % of the panel', () => {
    const found = statesOf({ terminator: { resistance: 8200, tolerance: 0.05 }, cable: 10, pressed: 500, leakage: 100e3, panel: 0.01 });
    const damp = (ohm: number): number => (ohm * 100e3) / (ohm + 100e3);
    const close = (band: { low: number; high: number } | undefined, low: number, high: number): void => {
      expect((band?.low ?? Number.NaN) * 1.01).toBeCloseTo(low, 6);
      expect((band?.high ?? Number.NaN) * 0.99).toBeCloseTo(high, 6);
    };
    close(found?.rest, damp(7790), 8620);
    close(found?.pressed, 0, 510);
    close(found?.doubled, damp(3895), 4315);
    close(found?.open, 100e3, Infinity);
  });
  it('is not known for parts that cannot be', () => {
    for (const terminator of [
      { resistance: -1, tolerance: 0.05 },
      { resistance: 8200, tolerance: 1 },
      { resistance: Number.NaN, tolerance: 0 },
    ])
      expect(statesOf({ ...parts, terminator })).toBeUndefined();
    expect(statesOf({ ...parts, panel: 1 })).toBeUndefined();
    expect(statesOf({ ...parts, cable: -1 })).toBeUndefined();
    expect(statesOf({ ...parts, leakage: Number.NaN })).toBeUndefined();
  });
});

describe('loops that can be mistaken', () => {
  const file = (model: string, sensor: string, more = ''): string =>
    `language 1\nuse "../library/cables.gate"\npanel-model p {\n  terminal E0 common\n  terminal E1 edge-input common E0 terminator 8.2 kohm\n${model}\n}\nsensor-model e {\n  kind edge\n  output resistive\n  terminator 8.2 kohm\n  pressed-resistance 500 ohm\n}\nsensor front : e {\n  watches closing\n  terminator 8.2 kohm\n${sensor}\n}\n${more}panel main : p {\n  wire front to E1 E0\n}\n`;
  const said = (text: string): string[] =>
    judge(text).findings.flatMap(({ rule, severity, what }) =>
      rule === 'edge-loop-ambiguous' ? [`${severity} ${/pressed edge|cut wire|at rest may|second/.exec(what)?.[0]}`] : [],
    );
  it('never, when they are dry and the panel’s window is wide enough and no wider', () => {
    expect(said(file('', ''))).toEqual([]);
    expect(said(file('window E1 6 kohm .. 11 kohm', ''))).toEqual([]);
  });
  it('for a pressed edge or a cut wire: an error', () => {
    expect(said(file('window E1 500 ohm .. 11 kohm', ''))).toEqual(['error pressed edge', 'warning second']);
    expect(said(file('window E1 501 ohm .. 11 kohm', ''))).toEqual(['warning second']);
    // The cable of a pressed edge: 100 m of 39 ohm/km there and back, at 70 °C, are 9.33 ohm.
    expect(
      said(
        file('window E1 505 ohm .. 11 kohm', '', 'cable far : heron-signal {\n  feeds front\n  length 100 m\n  carries 1 mA at 5 V\n}\n'),
      ),
    ).toEqual(['error pressed edge', 'warning second']);
    expect(said(file('window E1 5 kohm .. 25 kohm', 'leakage 25 kohm'))).toEqual(['error cut wire']);
    expect(said(file('window E1 5 kohm .. 24.9 kohm', 'leakage 25 kohm'))).toEqual([]);
  });
  it('for rest that may look like a fault: a warning', () => {
    expect(said(file('window E1 7.8 kohm .. 11 kohm', ''))).toEqual(['warning at rest may']);
    expect(said(file('window E1 7.7 kohm .. 11 kohm', 'leakage 200 kohm'))).toEqual(['warning at rest may']);
    expect(said(file('window E1 7.7 kohm .. 11 kohm\nmeasures E1 over 8.2 kohm ± 2 % at 5 V', ''))).toEqual(['warning at rest may']);
  });
  it('with the cable behind which they lie', () => {
    // 8610 ohm and the 9.33 ohm of the cable.
    const far = 'cable far : heron-signal {\n  feeds front\n  length 100 m\n  carries 1 mA at 5 V\n}\n';
    expect(said(file('window E1 7 kohm .. 8615 ohm', ''))).toEqual([]);
    expect(said(file('window E1 7 kohm .. 8615 ohm', '', far))).toEqual(['warning at rest may']);
  });
  it('not where other rules speak: no terminator, two of them, a broken chain', () => {
    expect(said(file('window E1 8.2 kohm .. 8.3 kohm', 'chains-into nobody'))).toEqual([]);
    expect(
      said(
        file('window E1 8.2 kohm .. 8.3 kohm', '').replace(
          'sensor front : e {\n  watches closing\n  terminator 8.2 kohm',
          'sensor front : e {\n  watches closing',
        ),
      ),
    ).toEqual([]);
  });
});
