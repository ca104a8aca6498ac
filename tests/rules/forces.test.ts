// What recorded forces do to the verdict: complete and within the limits they are force limitation (C), and nothing less is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measuresFor } from '../../server/safeguards/index.ts';
import { judge } from '../kit/pages.ts';

interface Options {
  readonly senses?: boolean;
  /** The drive has no force limit of its own. */
  readonly unlimited?: boolean;
  readonly dwell?: boolean;
  readonly beam?: boolean;
  readonly edge?: boolean;
  readonly rules?: string;
  readonly measured?: string;
}

/** The nine points of a leaf 1.6 m high that closes. */
const points = [50, 300, 500].flatMap((gap) => [50, 800, 1300].map((height) => [gap, height] as const));
const line = (gap: number, height: number, peaks: readonly number[]): string =>
  `  force west closing gap ${gap} mm height ${height} mm peak ${peaks.map((peak) => `${peak} N`).join(' ')} after-750-ms ${peaks.map(() => '90 N').join(' ')} after-5-s ${peaks.map(() => '12 N').join(' ')}`;
const block = (lines: readonly string[], on = '2026-05-14', instrument = 'instrument "gauge" calibrated 2026-02-01'): string =>
  `measured {\n  on ${on}\n  by "KL"\n  ${instrument}\n${lines.join('\n')}\n}\n`;
const complete = points.map(([gap, height]) => line(gap, height, [300, 310, 305]));

const site = (options: Options): string => `language 1
use "../library/panels.gate"
use "../library/sensors.gate"

drive-model turner {
  kind direct
  rotation 110 deg
  shaft-speed 6 deg/s${options.senses === true ? '\n  senses-obstacles' : options.unlimited === true ? '' : '\n  limits-force'}
}

site "x" {
  rules ${options.rules ?? 'europe'}
  users limited
}

leaf west {
  width 2 m
  height 1.6 m
  mass 120 kg
  opens inward 90 deg
}

drive floor : turner {
  moves west
}
${options.beam === false ? '' : 'sensor low-beam : finch-beam {\n  watches closing\n  height 200 mm\n}\n'}
${options.edge === true ? 'sensor front-edge : finch-edge {\n  watches closing\n  on west closing-edge\n  terminator 8.2 kohm\n}\n' : ''}
control fobs {
  by transmitter
  acts impulse
}

panel main : rowan-pair {
  wire floor to LA1 LA2
${options.beam === false ? '' : '  wire low-beam to T1 T0\n  registered low-beam\n'}
${options.edge === true ? '  wire front-edge to E1 E0\n' : ''}
}
${options.dwell === true ? 'motion {\n  dwell 20 s\n}\n' : ''}
${options.measured ?? ''}`;

const verdict = (options: Options) => judge(site(options));
const countsAsC = (options: Options): boolean => {
  const leaf = verdict(options).installation.leaves[0];
  if (leaf === undefined) throw new Error('no leaf');
  expect(measuresFor(leaf, 'pedestrian', false).C).toBe(measuresFor(leaf, 'closing', false).C || false);
  expect(measuresFor(leaf, 'opening', false).C).toBe(false);
  return measuresFor(leaf, 'closing', false).C;
};
const errors = (options: Options): string[] =>
  verdict(options)
    .findings.filter((finding) => finding.severity === 'error')
    .map((finding) => finding.rule);

describe('force limitation by measured forces', () => {
  it('is there when every point was measured three times within the limits, with a calibrated instrument', () => {
    expect(countsAsC({ measured: block(complete) })).toBe(true);
    expect(countsAsC({})).toBe(false);
  });
  it.each<[string, string]>([
    ['a point is missing', block(complete.slice(1))],
    ['a point was measured twice only', block([...complete.slice(1), line(50, 50, [300, 310])])],
    [
      'three readings are spread over two days',
      block([...complete.slice(1), line(50, 50, [300, 310])]) + block([line(50, 50, [300])], '2026-05-15'),
    ],
    ['a mean is too great', block([...complete.slice(1), line(50, 50, [390, 400, 413])])],
    ['another place is too great', block([...complete, line(400, 800, [420, 420, 420])])],
    ['measured again, it is too great', block(complete) + block([line(300, 800, [450])], '2026-06-01')],
    ['the instrument was not calibrated', block(complete, '2026-05-14', 'instrument "gauge"')],
    ['nothing is said of the instrument', block(complete, '2026-05-14', '')],
    ['the calibration was older than a year', block(complete, '2027-02-02')],
    ['the calibration came after', block(complete, '2026-01-31')],
    ['a value too many is too great', block([...complete.slice(1), `${complete[0] ?? ''}`.replace('305 N', '305 N 1300 N')])],
    ['the force did not fall', block([...complete.slice(1), complete[0]?.replaceAll('90 N', '151 N') ?? ''])],
    ['some of it stayed', block([...complete.slice(1), complete[0]?.replaceAll('12 N', '26 N') ?? ''])],
  ])('is not there when %s', (_, measured) => {
    expect(countsAsC({ measured })).toBe(false);
  });
  it.each<[string, string]>([
    ['one line for each reading', block(points.flatMap(([gap, height]) => [300, 310, 305].map((peak) => line(gap, height, [peak]))))],
    ['two blocks of one day', block(complete.slice(0, 4)) + block(complete.slice(4))],
    ['two days, each point whole on one', block(complete.slice(0, 4)) + block(complete.slice(4), '2026-05-15')],
    [
      'measured again after a failure',
      block(
        points.map(([gap, height]) => line(gap, height, [460, 470, 465])),
        '2026-05-01',
      ) + block(complete),
    ],
    ['one reading above, the mean below', block([...complete.slice(1), line(50, 50, [390, 400, 409])])],
    ['a place that nobody asked for', block([...complete, line(900, 800, [900])])],
    ['on the last day of the calibration', block(complete, '2027-02-01')],
  ])('is there: %s', (_, measured) => {
    expect(countsAsC({ measured })).toBe(true);
  });
  it('readings of two days are not added up, and what is missing is told', () => {
    const spread = block([...complete.slice(1), line(50, 50, [300, 310])]) + block([line(50, 50, [300])], '2026-05-15');
    const missing = verdict({ measured: spread }).findings.find((finding) => finding.rule === 'force-points-missing');
    expect(missing?.what).toBe('Of the 27 force readings of “west”, 1 is missing: closing at 50 mm, 50 mm up (2 of 3).');
    expect(verdict({ measured: block(complete) }).findings.map((finding) => finding.rule)).not.toContain('force-points-missing');
  });
  it('does not count where other rules hold', () => {
    expect(countsAsC({ rules: 'north-america', measured: block(complete) })).toBe(false);
  });

  it('lets a beam and measured forces serve where both C and D are asked for', () => {
    expect(errors({})).toContain('safeguarding-below-minimum');
    expect(errors({ measured: block(complete) })).not.toContain('safeguarding-below-minimum');
    expect(errors({ beam: false })).toContain('closing-edge-unguarded');
    expect(errors({ beam: false, measured: block(complete) })).not.toContain('closing-edge-unguarded');
  });
  it('is not there for a drive without a limit of its own: what was measured then was the edge', () => {
    expect(errors({ measured: block(complete), beam: false })).not.toContain('closing-edge-unguarded');
    expect(errors({ measured: block(complete), beam: false, unlimited: true })).toContain('closing-edge-unguarded');
  });

  it('serves closing by itself only where the drive’s own sensing limits the force in every movement', () => {
    expect(errors({ dwell: true, measured: block(complete) })).toContain('protection-untested');
    const said = verdict({ dwell: true, measured: block(complete) }).findings.find((finding) => finding.rule === 'protection-untested');
    expect(said?.what).toContain('“floor”');
    expect(errors({ dwell: true, senses: true, measured: block(complete) })).not.toContain('protection-untested');
    expect(errors({ dwell: true, edge: true, measured: block(complete) })).not.toContain('protection-untested');
  });

  it('the last day of all counts for the yearly test', () => {
    const two = (first: string, second: string): string[] =>
      verdict({ measured: block(complete, first) + block([line(300, 800, [300])], second) }).findings.map((finding) => finding.rule);
    expect(two('2025-06-01', '2026-06-01')).not.toContain('force-test-overdue');
    expect(two('2026-06-01', '2025-06-01')).not.toContain('force-test-overdue');
    expect(two('2025-06-01', '2025-06-02')).toContain('force-test-overdue');
  });

  it('taking a reading within the limits away never helps', () => {
    const readings = fc.array(
      fc.tuple(fc.nat({ max: points.length - 1 }), fc.constantFrom(300, 395, 430, 600), fc.constantFrom('2026-05-14', '2026-05-20')),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(readings, fc.nat(), (some, at) => {
        const extra = some.map(([point, peak, day]) => ({ point, peak, day }));
        const base = points.flatMap((_, point) => [300, 310, 305].map((peak) => ({ point, peak, day: '2026-05-14' })));
        const all = [...base, ...extra];
        const text = (list: typeof all): string =>
          ['2026-05-14', '2026-05-20']
            .map((day) =>
              block(
                list.filter((each) => each.day === day).map(({ point, peak }) => line(...(points[point] as [number, number]), [peak])),
                day,
              ),
            )
            .join('');
        const good = all.map((each, i) => ({ each, i })).filter(({ each }) => each.peak <= 400);
        const gone = good[at % good.length]?.i ?? 0;
        const [before, after] = [{ measured: text(all) }, { measured: text(all.filter((_, i) => i !== gone)) }];
        if (countsAsC(after)) expect(countsAsC(before)).toBe(true);
        expect(errors(after).length).toBeGreaterThanOrEqual(errors(before).length);
      }),
      { numRuns: 60 },
    );
  });
  it('taking all readings, or a device beside them, away never helps', () => {
    for (const edge of [true, false])
      for (const dwell of [true, false])
        for (const senses of [true, false])
          for (const measured of [block(complete), block(complete.slice(1))]) {
            const options = { edge, dwell, senses, measured };
            expect(errors({ ...options, measured: '' }).length).toBeGreaterThanOrEqual(errors(options).length);
            expect(errors({ ...options, beam: false }).length).toBeGreaterThanOrEqual(errors(options).length);
            expect(errors({ ...options, edge: false }).length).toBeGreaterThanOrEqual(errors(options).length);
            expect(errors({ ...options, senses: false }).length).toBeGreaterThanOrEqual(errors(options).length);
          }
  });
});
