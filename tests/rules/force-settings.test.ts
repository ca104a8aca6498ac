// The window of settings and the one that is set: what is from memory, where no limit holds, and what is not told twice.
import { describe, expect, it } from 'vitest';
import { marginsOf } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

interface Rack {
  readonly rules?: string;
  readonly thrust: string;
  readonly friction?: string;
  readonly set?: string;
}
/** A sliding leaf of 600 kg, driven by a rack that lets go where it meets something: at most 400 N. Its start takes no force. */
const rack = ({ rules = 'europe', thrust, friction = '', set }: Rack): string => `language 1

drive-model rack {
  kind rack
  speed 0.15 m/s
  thrust ${thrust}
  senses-obstacles
}

site "Example" {
  rules ${rules}
  users limited
}

leaf slide {
  width 5 m
  mass 600 kg
  ${friction}
  slides left 4.8 m
}

drive push : rack {
  moves slide
}
${set === undefined ? '' : `\nmotion {\n  force ${set}\n}\n`}`;
const said = (rule: string, text: string): string[] =>
  judge(text)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ severity, what, remedy }) => `${severity}: ${what} ${remedy}`);
const margins = (rule: string, text: string): string[] =>
  marginsOf(judge(text).installation)
    .filter((margin) => margin.rule.name === rule)
    .map(({ value, limit, held }) => `${Math.round(value)} ${held.unit}, at the ${held.way} ${Math.round(limit)}`);

describe('the force that is set', () => {
  const rule = 'force-setting-outside-window';
  it('may be just what the limits leave, and just what the leaf needs', () => {
    expect(said(rule, rack({ thrust: '800 N', friction: 'friction 100 N', set: '50 %' }))).toEqual([]);
    expect(margins(rule, rack({ thrust: '800 N', friction: 'friction 100 N', set: '50 %' }))).toEqual([
      '400 N, at the most 400',
      '400 N, at the least 100',
    ]);
    expect(said(rule, rack({ thrust: '1000 N', friction: 'friction 100 N', set: '10 %' }))).toEqual([]);
    expect(said(rule, rack({ thrust: '800 N', friction: 'friction 100 N', set: '51 %' }))).toEqual([
      'error: The 408 N that are set for “slide” are more than the 400 N with which it presses nobody harder than 400 N. Set between 12.5 % and 50 % of what the drive can, and measure the forces.',
    ]);
    expect(said(rule, rack({ thrust: '1000 N', friction: 'friction 100 N', set: '9 %' }))).toEqual([
      'warning: The 90 N that are set for “slide” are less than the 100 N that it needs to move from every place. Set between 10 % and 40 % of what the drive can, and measure the forces; or make the leaf easier to move.',
    ]);
  });
  it('is too little by memory only where that number is from memory', () => {
    // 600 kg · 9.81 m/s² · 3 %
    expect(said(rule, rack({ thrust: '1000 N', set: '10 %' }))[0]).toContain(
      'less than the 177 N that it needs to move from every place (from memory).',
    );
    const swing = `language 1
drive-model shaft {
  kind direct
  rotation 110 deg
  shaft-speed 10 deg/s
  torque 4 N*m
}
site "Example" {
  rules europe
  users limited
}
leaf west {
  width 2 m
  height 1.6 m
  mass 150 kg
  friction 1 N
  opens inward 90 deg
}
drive floor : shaft {
  moves west
}
motion {
  force 40 %
}
`;
    // Where the guard is not stated the most is from memory, and the 2 N·m that the hinges take are not.
    expect(said(rule, swing)[0]).toContain(
      'The 1.6 N·m that are set for “west” are less than the 2 N·m that it needs to move from every place. ',
    );
  });
  it('is held to no least where no setting works, and to no most where nothing limits the force', () => {
    const shut = rack({ thrust: '800 N', friction: 'friction 450 N', set: '40 %' });
    expect(said(rule, shut)).toEqual([]);
    expect(margins(rule, shut)).toEqual(['320 N, at the most 400']);
    // One setting is left.
    expect(margins(rule, rack({ thrust: '800 N', friction: 'friction 400 N', set: '40 %' }))).toEqual([
      '320 N, at the most 400',
      '320 N, at the least 400',
    ]);
    const america = rack({ rules: 'north-america', thrust: '800 N', friction: 'friction 450 N', set: '90 %' });
    expect(margins(rule, america)).toEqual(['720 N, at the least 450']);
  });
  it('is not held to anything where none is set, or nobody knows how hard the drive pushes', () => {
    expect(margins(rule, rack({ thrust: '800 N' }))).toEqual([]);
    expect(margins(rule, rack({ thrust: '800 N', set: '50 %' }).replace('thrust 800 N', ''))).toEqual([]);
  });
});

describe('the window of settings', () => {
  const empty = 'force-window-empty';
  const narrow = 'force-window-narrow';
  it('rests on memory only where a number from memory is the one that decides', () => {
    const [low] = said(empty, rack({ thrust: '800 N least 500 N' }));
    expect(low).toContain('error: “slide” cannot be driven with less than 500 N, but 400 N are the most');
    const [heavy] = said(empty, rack({ thrust: '800 N', friction: '' }).replace('mass 600 kg', 'mass 2000 kg'));
    expect(heavy).toContain('warning: “slide” needs 588 N to move from 0 mm of opening, but 400 N are the most');
  });
  it('is shut at once where the leaf needs more than is left, and narrow up to a quarter more', () => {
    expect(said(empty, rack({ thrust: '800 N', friction: 'friction 401 N' }))).toHaveLength(1);
    expect(said(empty, rack({ thrust: '800 N', friction: 'friction 400 N' }))).toEqual([]);
    expect(said(narrow, rack({ thrust: '800 N', friction: 'friction 400 N' }))).toHaveLength(1);
    expect(said(narrow, rack({ thrust: '800 N', friction: 'friction 321 N' }))).toEqual([
      'note: “slide” can be driven with 321 to 400 N and nothing else: less does not move it, more is too much. This opens it: hinges or rollers that go lighter (friction 312 N).',
    ]);
    expect(said(narrow, rack({ thrust: '800 N', friction: 'friction 320 N' }))).toEqual([]);
    expect(margins(narrow, rack({ thrust: '800 N', friction: 'friction 320 N' }))).toEqual(['320 N, at the most 320']);
    expect(margins(narrow, rack({ thrust: '800 N', friction: 'friction 401 N' })), 'a window that is shut is no narrow one').toEqual([]);
  });
  it('is no matter of force limits under the rules of North America, but of a drive that is too weak', () => {
    const american = (friction: string): string => rack({ rules: 'north-america', thrust: '300 N', friction });
    for (const friction of ['friction 450 N', 'friction 290 N']) {
      expect(said(narrow, american(friction))).toEqual([]);
      expect(margins(narrow, american(friction))).toEqual([]);
    }
    expect(said(empty, american('friction 290 N'))).toEqual([]);
    const weak = judge(american('friction 450 N')).findings.filter(({ rule }) => rule === empty);
    expect(weak.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^“slide” needs \d+ N to move from 0 mm of opening, and the drive gives at most 300 N\.$/),
    ]);
    expect(weak[0]?.why).toContain('stops where the drive cannot move it');
    expect(weak[0]?.source).not.toContain('EN 12453');
    // Where a limit of force decides, that is what is told.
    const limited = judge(rack({ thrust: '800 N', friction: 'friction 450 N' })).findings.find(({ rule }) => rule === empty);
    expect(limited?.why).toContain('somebody is hurt');
    expect(limited?.source).toContain('EN 12453');
  });
  it('points to the thrust of a rack and to the torque of a shaft', () => {
    const both = rack({ thrust: '800 N\n  torque 90 N*m', friction: 'friction 450 N' });
    const cited = (text: string): string[] =>
      judge(text)
        .findings.filter(({ rule }) => rule === empty)
        .flatMap(({ related }) => related.map(({ start, end }) => text.slice(start, end)));
    expect(cited(both)).toEqual(['thrust 800 N']);
    const shaft = both
      .replace('kind rack', 'kind direct\n  rotation 110 deg\n  shaft-speed 10 deg/s')
      .replace('slides left 4.8 m', 'opens inward 90 deg');
    expect(cited(shaft)).toEqual(['torque 90 N*m']);
  });
  it('is told with the changes that open it, each by itself, as many as can be read', () => {
    /** A gate that seven changes would open, of which the last is a longer lever. */
    const seven = (guard: string, infill: string, wind: string, ramp: string): string => `language 1

drive-model stout-ram {
  kind linear-ram
  stroke 400 mm
  speed 16 mm/s
  thrust 1250 N
  ${ramp}
}

site "Example" {
  rules europe
  users limited
  working-wind ${wind}
}

leaf west {
  width 2.5 m
  height 300 mm
  mass 33.4 kg
  opens inward 90 deg
  infill ${infill}
  friction 8.35 N
  hinge-guard ${guard}
}

drive ram : stout-ram {
  moves west
  post-bracket 140 mm by 140 mm
  leaf-bracket 1 m
}
`;
    const remedies = (text: string): string[] =>
      judge(text)
        .findings.filter(({ rule }) => rule === empty)
        .map(({ remedy }) => remedy);
    const [all] = remedies(seven('430 mm', '35 %', '7.11 m/s', 'ramp 1.2 s'));
    expect(all).toMatch(
      /^Any one of these opens it: a guard .*; a drive that notices an obstacle and lets go \(senses-obstacles\); a longer lever, by a post bracket 175 mm out instead of 140 mm\.$/,
    );
    expect(all?.length).toBe(381);
  });
});
