// A control that is held: how fast the leaf may be, and how far it may run on when the control is let go.
import { describe, expect, it } from 'vitest';
import { type Margin, marginsOf } from '../../server/rules/index.ts';
import { accountOf } from '../../server/safeguards/index.ts';
import { judge } from '../kit/pages.ts';

const said = (rule: string, text: string): string[] =>
  judge(text)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ severity, what }) => `${severity}: ${what}`);
const margins = (rule: string, text: string): Margin[] => marginsOf(judge(text).installation).filter((margin) => margin.rule.name === rule);

interface Site {
  readonly rules?: string;
  readonly speed?: string;
  readonly stops?: string;
  readonly controls?: string;
  readonly motion?: string;
  readonly reaction?: string;
}
const fobs = 'control fobs {\n  by transmitter\n  acts impulse\n}\n';
const key = 'control key {\n  by key-switch\n  acts hold-to-run\n  sight full\n}\n';
const slides = ({
  rules = 'europe',
  speed = '0.4 m/s',
  stops = 'stops-in 300 ms',
  controls = key,
  motion = '',
  reaction = 'reaction 25 ms',
}: Site): string => `language 1

drive-model rack {
  kind rack
  speed ${speed}
  ${stops}
}

site "Example" {
  rules ${rules}
  users trained
}

leaf slide {
  width 5 m
  mass 400 kg
  slides left 5 m
}

leaf by-hand {
  width 1 m
  mass 60 kg
  opens inward 90 deg
}

drive push : rack {
  moves slide
}

panel-model answers {
  ${reaction}
}

panel main : answers {
  isolator "beside it"
}

${controls}
motion {
  ${motion}
}
`;

describe('how fast a leaf is', () => {
  const rule = 'hold-to-run-too-fast';
  it('may be 0.5 m/s and no more', () => {
    expect(said(rule, slides({ speed: '0.5 m/s' }))).toEqual([]);
    expect(said(rule, slides({ speed: '0.51 m/s' }))).toEqual([
      'error: The edge of “slide” reaches 0.51 m/s, but “key” is hold-to-run, which allows 0.5 m/s at most.',
    ]);
  });
  it('is held to it by the control that is held, wherever it stands among others', () => {
    const [finding] = judge(slides({ speed: '0.6 m/s', controls: fobs + key })).findings.filter((one) => one.rule === rule);
    expect(finding?.what).toContain('“key” is hold-to-run');
    expect(finding?.related).toHaveLength(1);
    expect(margins(rule, slides({ controls: fobs + key })).map(({ subject, value, kept }) => [subject, value, kept])).toEqual([
      ['slide', 0.4, true],
    ]);
  });
  it.each([
    ['nothing is held', { controls: fobs }],
    ['nobody says how a control acts', { controls: 'control fobs {\n  by transmitter\n}\n' }],
    ['other rules hold', { rules: 'north-america' }],
  ] as const)('is not held to it where %s', (_, site) => {
    expect(said(rule, slides({ speed: '0.6 m/s', ...site }))).toEqual([]);
    expect(margins(rule, slides({ speed: '0.6 m/s', ...site }))).toEqual([]);
  });
});

describe('how far a leaf runs on', () => {
  const rule = 'hold-to-run-overtravels';
  const values = (site: Site): (readonly [number, boolean])[] =>
    margins(rule, slides(site)).map(({ value, kept }) => [Math.round(value * 1e6) / 1000, kept]);
  it('is its speed for the time in which the panel answers, and half of it for that in which it stops: 50 mm near closed, 100 mm elsewhere, and no more', () => {
    // 0.4 m/s · 0.025 s + 0.4 m/s · 0.2 s / 2
    expect(values({ stops: 'stops-in 200 ms' })).toEqual([
      [50, true],
      [50, true],
    ]);
    expect(said(rule, slides({ stops: 'stops-in 205 ms' }))).toEqual([
      'warning: The edge of “slide” runs on by 51 mm near its closed position when “key” is let go; 50 mm are allowed (from memory).',
    ]);
    // 10 mm + 0.4 m/s · 0.45 s / 2, and at 65 % of the speed 65 % of the first and 42.25 % of the second.
    const slow = 'slow-zone last 20 % at 65 %';
    expect(values({ stops: 'stops-in 450 ms', motion: slow })).toEqual([
      [44.525, true],
      [100, true],
    ]);
    expect(said(rule, slides({ stops: 'stops-in 455 ms', motion: slow }))).toEqual([
      'warning: The edge of “slide” runs on by 101 mm in full movement when “key” is let go; 100 mm are allowed (from memory).',
    ]);
  });
  it('counts a slow zone from where 500 mm are left, not from later', () => {
    // The last 10 % of 5 m; 10 mm + 0.4 m/s · 0.3 s / 2 are 70 mm, and at half the speed 5 mm + 15 mm.
    expect(values({ motion: 'slow-zone last 10 % at 50 %' })).toEqual([
      [20, true],
      [70, true],
    ]);
    expect(said(rule, slides({ motion: 'slow-zone last 9 % at 50 %' }))).toHaveLength(1);
  });
  it('is less at a lower speed, as the way and the time shrink both', () => {
    // 0.2 m/s · 0.025 s + 0.2 m/s · 0.3 s / 2
    expect(values({ stops: 'stops-in 600 ms', motion: 'speed 50 %' })).toEqual([
      [35, true],
      [35, true],
    ]);
  });
  it('is said once, near closed, where both ways are too long', () => {
    expect(said(rule, slides({ stops: 'stops-in 600 ms' }))).toEqual([
      'warning: The edge of “slide” runs on by 130 mm near its closed position when “key” is let go; 50 mm are allowed (from memory).',
    ]);
  });
  it('is that of the drive that stops last', () => {
    const two = (first: string, second: string): string =>
      slides({ stops: first })
        .replace('site "', `drive-model other {\n  kind rack\n  speed 0.4 m/s\n  ${second}\n}\n\nsite "`)
        .replace('drive push', 'drive pull : other {\n  moves slide\n}\ndrive push');
    expect(said(rule, two('stops-in 100 ms', 'stops-in 300 ms'))).toEqual(said(rule, two('stops-in 300 ms', 'stops-in 100 ms')));
    expect(said(rule, two('stops-in 100 ms', 'stops-in 300 ms'))).toHaveLength(1);
    expect(said(rule, two('stops-in 300 ms', ''))).toEqual([]);
  });
  it('is not judged near closed where nobody says how slow the slow zone is, and that is told', () => {
    const unsaid = { motion: 'slow-zone last 20 %' };
    expect(values(unsaid)).toEqual([[70, true]]);
    const lacks = (site: Site): string[] =>
      accountOf(judge(slides(site)).installation).open.flatMap((entry) =>
        entry.subject === 'slow-zone' ? entry.lacks.map(({ block, word }) => `${block}.${word}`) : [],
      );
    expect(lacks(unsaid)).toEqual(['drive-model.slow-speed']);
    expect(lacks({ motion: 'slow-zone last 20 % at 50 %' })).toEqual([]);
    expect(lacks({ motion: 'slow-zone last 0 %' })).toEqual([]);
    expect(lacks({ ...unsaid, controls: fobs })).toEqual([]);
  });
  it('names the control that is held', () =>
    expect(said(rule, slides({ controls: fobs + key, stops: 'stops-in 600 ms' }))[0]).toContain('when “key” is let go'));
  it.each([
    ['nothing is held', { controls: fobs }],
    ['other rules hold', { rules: 'north-america' }],
    ['the drive does not say in what time it stops', { stops: '' }],
    ['the panel does not say how soon it answers', { reaction: '' }],
  ] as const)('is not judged where %s', (_, site) => {
    expect(said(rule, slides({ stops: 'stops-in 600 ms', ...site }))).toEqual([]);
    expect(margins(rule, slides({ stops: 'stops-in 600 ms', ...site }))).toEqual([]);
  });
});

it('out of view is told without pointing to users that nobody states', () => {
  const [finding, ...more] = judge(
    `language 1\nsite "Example" {\n  rules europe\n}\n${key.replace('sight full', 'sight none')}`,
  ).findings.filter((one) => one.rule === 'hold-to-run-misuse');
  expect(finding?.source).toContain('Table 1');
  expect(finding?.related.map(({ message }) => message)).toEqual(['this control is held']);
  expect(more).toEqual([]);
});
