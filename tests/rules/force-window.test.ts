// How grave an empty window is: an error only where every number that decides is published or follows from the file.
import { describe, expect, it } from 'vitest';
import { judge } from '../kit/pages.ts';

const swing = (leaf: string, more = ''): string => `language 1
use "../library/drives.gate"

site "x" {
  rules ${more.includes('america') ? 'north-america' : 'europe'}
  users limited
  working-wind 9 m/s
}

leaf west {
  width 1.5 m
  height 1.6 m
  mass 90 kg
  opens inward 90 deg
  ${leaf}
}

drive ram : alder-ram {
  moves west
  post-bracket 150 mm by 150 mm
  leaf-bracket 800 mm
}
`;
const slide = (leaf: string): string => `language 1

drive-model rack {
  kind rack
  speed 0.15 m/s
  ramp 1 s
  thrust 800 N
}

site "x" {
  rules europe
  users limited
}

leaf west {
  width 5 m
  mass 600 kg
  slides left 4.8 m
  ${leaf}
}

drive push : rack {
  moves west
}
`;
const found = (text: string, rule: string): { severity: string; what: string }[] =>
  judge(text)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ severity, what }) => ({ severity, what }));

describe('an empty force window', () => {
  it('is an error where all is stated or published', () => {
    const [finding] = found(swing('infill 100 %\n  hinge-guard 250 mm'), 'force-window-empty');
    expect(finding?.severity).toBe('error');
    expect(finding?.what).not.toContain('from memory');
  });
  it.each<[string, string]>([
    ['no guard is stated, so it begins at a gap of 50 mm', swing('infill 100 %')],
    ['the wind on a lattice decides', swing('infill 70 %\n  hinge-guard 250 mm')],
    ['the rolling resistance decides', slide('')],
  ])('is a warning, and says so, where %s', (_, text) => {
    const [finding] = found(text, 'force-window-empty');
    expect(finding?.severity).toBe('warning');
    expect(finding?.what).toContain('(from memory)');
  });
  it('is an error again for a sliding leaf whose friction is stated', () => {
    expect(found(slide('friction 180 N'), 'force-window-empty')[0]?.severity).toBe('error');
  });
  it('is nobody’s business under other rules, or where nothing is said of the thrust', () => {
    expect(found(swing('infill 100 %\n  hinge-guard 250 mm', 'america'), 'force-window-empty')).toEqual([]);
    expect(found(swing('infill 100 %').replace('alder-ram', 'birch-ram'), 'force-window-empty')).toEqual([]);
  });
});

describe('a force set too high', () => {
  const motion = '\nmotion {\n  force 90 %\n}\n';
  it('is an error with a guard stated, a warning without', () => {
    expect(found(swing('infill 40 %\n  hinge-guard 700 mm') + motion, 'force-setting-outside-window')[0]?.severity).toBe('error');
    expect(found(swing('infill 40 %') + motion, 'force-setting-outside-window')[0]?.severity).toBe('warning');
  });
});
