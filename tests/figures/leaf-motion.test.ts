// What the figures of moving leaves read from a file: run times, the times of the whole gate, lags, how far the edge runs on.
import { describe, expect, it } from 'vitest';
import { hingeSideOf } from '../../server/figures/hinge-gap/working.ts';
import { openingStopOf } from '../../server/figures/overtravel/working.ts';
import { reachOf } from '../../server/figures/reachable-angle/working.ts';
import { heard } from '../kit/heard.ts';
import { judge } from '../kit/pages.ts';
import { told, values } from './told.ts';

const models = `language 1
drive-model ram {
  kind linear-ram
  stroke 400 mm
  speed 16 mm/s
}
drive-model arm {
  kind articulated-arm
  arms 320 mm by 280 mm
  shaft-speed 9 deg/s
}
drive-model shaft {
  kind direct
  rotation 120 deg
  shaft-speed 9 deg/s
  stops-in 300 ms
}
drive-model slow-shaft {
  kind direct
  rotation 120 deg
  shaft-speed 6 deg/s
}
drive-model rack {
  kind rack
  speed 0.2 m/s
  stops-in 200 ms
}
`;
const block = (head: string, lines: string): string => `${head} {\n  ${lines.replaceAll('\n', '\n  ')}\n}\n`;
const swing = 'width 2 m\nmass 150 kg\nopens inward 90 deg';
const slide = 'width 6 m\nmass 500 kg\nslides left 5.6 m';

describe('the motion of a leaf', () => {
  const mounted = 'moves west\npost-bracket 150 mm by 150 mm\nleaf-bracket 800 mm';
  const armed = 'moves west\nshaft 100 mm by 150 mm\nleaf-bracket 450 mm';
  const file = (leaf: string, model: string, drive: string, motion = ''): string =>
    models + block('leaf west', leaf) + block(`drive d : ${model}`, drive) + motion;

  it('is that of a drive which can move such a leaf', () => {
    for (const [leaf, model, drive] of [
      [swing, 'ram', mounted],
      [swing, 'arm', armed],
      [swing, 'shaft', 'moves west'],
      [slide, 'rack', 'moves west'],
    ] as const)
      expect(values(file(leaf, model, drive), 'leaf.west.')['run-time'], model).toBeGreaterThan(0);
    for (const [leaf, model, drive] of [
      [slide, 'ram', mounted],
      [slide, 'arm', armed],
      [slide, 'shaft', 'moves west'],
      [swing, 'rack', 'moves west'],
    ] as const)
      expect(values(file(leaf, model, drive, 'motion {\n  seat 1 s\n}\n'), 'leaf.west.'), model).not.toHaveProperty('run-time');
  });
  it('has neither a run time nor a drive time where a fact is missing', () => {
    const seat = 'motion {\n  seat 1 s\n}\n';
    expect(told(file(swing, 'shaft', 'moves west', seat), 'leaf.west.drive-time')).toBe(
      'leaf.west.drive-time 11 s at “seat 1 s”\n  run time: 10 s (leaf.west.run-time)\n  seat: 1 s\n',
    );
    expect(told(file(swing, 'shaft', 'moves west'), 'leaf.west.drive-time')).toBe('leaf.west.drive-time none\n');
    const whole = file(swing, 'shaft', 'moves west', seat);
    const sliding = file(slide, 'rack', 'moves west', seat);
    for (const text of [
      whole.replace('  opens inward 90 deg\n', ''),
      whole.replaceAll('  shaft-speed 9 deg/s\n', ''),
      whole.replaceAll('  kind direct\n', ''),
      whole.replace('drive d : shaft', 'drive d'),
      whole.replace('  moves west\n', ''),
      sliding.replace('  speed 0.2 m/s\n', ''),
      sliding.replace('  slides left 5.6 m\n', ''),
    ])
      expect(told(text, 'leaf.west.run-time', 'leaf.west.drive-time')).toBe('leaf.west.run-time none\nleaf.west.drive-time none\n');
  });
  it('goes by what the motion sets, as a share of what the drive can', () => {
    // 5.6 m at 0.1 m/s but for the last quarter, 1.4 m, at 0.06 m/s: 42 s and 23.33 s.
    expect(
      told(file(slide, 'rack', 'moves west', 'motion {\n  speed 50 %\n  slow-zone last 25 % at 30 %\n}\n'), 'leaf.west.run-time'),
    ).toBe(`leaf.west.run-time 65.3333 s at “slides left 5.6 m”
  drive travel: 5.6 m
  full speed: 0.1 m/s (50 % of that of drive-model rack)
  travel in the slow zone: 1.4 m
  slow speed: 0.06 m/s (30 % of that of drive-model rack)
  time to full speed: 0 s (default: none)
`);
    // The slow zone is not run faster than the rest: 5.6 m at 0.1 m/s.
    expect(
      told(file(slide, 'rack', 'moves west', 'motion {\n  speed 50 %\n  slow-zone last 25 % at 80 %\n}\n'), 'leaf.west.run-time'),
    ).toContain('run-time 56 s');
    // As the model says where the zone does not: 42 s, and 1.4 m at 0.05 m/s.
    expect(
      told(
        file(slide, 'rack', 'moves west', 'motion {\n  speed 50 %\n  slow-zone last 25 %\n}\n').replace(
          '  kind rack\n',
          '  kind rack\n  slow-speed 25 %\n',
        ),
        'leaf.west.run-time',
      ),
    ).toMatch(/run-time 70 s[^]*slow speed: 0.05 m\/s \(drive-model rack\)/);
  });
});

describe('the times of the whole gate', () => {
  // West takes 15 s, east 10 s; the one that starts second is later by 8 s when opening, by 7 s when closing.
  const file = (motion: string, west = '', more = ''): string =>
    models +
    block('leaf west', swing + west) +
    block('leaf east', swing) +
    block('drive d : slow-shaft', 'moves west') +
    block('drive e : shaft', 'moves east') +
    more +
    (motion === '' ? '' : block('motion', motion));
  const lags = 'lag opening 8 s\nlag closing 7 s';
  const covers = '\ncloses onto east';
  const opening = (text: string): number | undefined => values(text, 'motion.')['opening-time'];
  const closing = (text: string): number | undefined => values(text, 'motion.')['closing-time'];

  it('without an order the covered leaf opens second, the covering one closes second', () => {
    expect([opening(file(lags, covers)), closing(file(lags, covers))]).toEqual([18, 22]);
    expect([opening(file(lags)), closing(file(lags))]).toEqual([15, 15]);
  });
  it('a stated order counts before that, for its own movement', () => {
    const by = (order: string): unknown => [opening(file(`${lags}\n${order}`, covers)), closing(file(`${lags}\n${order}`, covers))];
    expect(by('order opening west east')).toEqual([18, 22]);
    expect(by('order opening east west')).toEqual([23, 22]);
    expect(by('order closing west east')).toEqual([18, 17]);
    expect(by('order closing east west\norder opening east west')).toEqual([23, 22]);
    // One leaf alone has no second: the gate is open once the slower leaf is.
    expect(by('order opening east')).toEqual([15, 22]);
    expect(by('order closing east')).toEqual([18, 15]);
  });
  it('each lag counts for its own movement, and none is none', () => {
    expect([opening(file('lag closing 7 s', covers)), closing(file('lag closing 7 s', covers))]).toEqual([15, 22]);
    expect([opening(file('lag opening 8 s', covers)), closing(file('lag opening 8 s', covers))]).toEqual([18, 15]);
    expect(
      told(file('lag closing 7 s\ndwell 20 s', covers), 'motion.opening-time', 'motion.closing-time', 'motion.cycle-time'),
    ).toBe(`motion.opening-time 15 s at “motion”
  run time of west: 15 s (leaf.west.run-time)
  run time of east: 10 s (leaf.east.run-time)
  lag opening: 0 s
motion.closing-time 22 s at “motion”
  run time of west: 15 s (leaf.west.run-time)
  run time of east: 10 s (leaf.east.run-time)
  lag closing: 7 s
motion.cycle-time 57 s at “dwell 20 s”
  pre-warning: 0 s
  opening: 15 s (motion.opening-time)
  dwell: 20 s
  closing: 22 s (motion.closing-time)
`);
  });
  it('are told at the first leaf where there is no motion block, and leave out a leaf that nothing drives', () => {
    const third = block('leaf wicket', swing);
    for (const id of ['opening', 'closing'])
      expect(told(file('', '', third), `motion.${id}-time`)).toBe(
        `motion.${id}-time 15 s at “leaf west”\n  run time of west: 15 s (leaf.west.run-time)\n  run time of east: 10 s (leaf.east.run-time)\n  lag ${id}: 0 s\n`,
      );
  });
  it('are none where the motion of a driven leaf is not known, or none is driven', () => {
    const none = 'motion.opening-time none\nmotion.closing-time none\nmotion.cycle-time none\n';
    const ids = ['motion.opening-time', 'motion.closing-time', 'motion.cycle-time'];
    for (const text of [
      file('dwell 20 s').replace('drive e : shaft', 'drive e'),
      models + block('leaf west', swing) + block('motion', 'dwell 20 s'),
      models + block('motion', 'dwell 20 s'),
    ])
      expect(told(text, ...ids)).toBe(none);
  });
});

describe('the least lag', () => {
  const pair = (a: string, b: string, east = swing): string =>
    block(`leaf ${a}`, `${swing}\ncloses onto ${b}`) +
    block(`leaf ${b}`, east) +
    block(`drive d${a} : shaft`, `moves ${a}`) +
    block(`drive d${b} : slow-shaft`, `moves ${b}`);
  const both = ['motion.least-lag', 'motion.least-lag-closing'] as const;
  const none = 'motion.least-lag none\nmotion.least-lag-closing none\n';
  const whole = models + pair('west', 'east');

  it('is that of two leaves that swing to the same side', () => {
    expect(told(whole, ...both)).not.toContain('none');
    expect(told(models + pair('west', 'east', swing.replace('inward', 'outward')), ...both)).toBe(none);
    expect(told(whole.replace('opens inward', 'opens outward'), ...both)).toBe(none);
    const sliding = (text: string, drive: string): string =>
      text.replace(`${drive} : shaft`, `${drive} : rack`).replace(`${drive} : slow-shaft`, `${drive} : rack`);
    expect(told(sliding(models + pair('west', 'east', slide), 'deast'), ...both)).toBe(none);
    expect(told(sliding(whole.replace('opens inward 90 deg', 'slides left 5.6 m'), 'dwest'), ...both)).toBe(none);
    expect(
      told(
        sliding(sliding(models + pair('west', 'east', slide).replace('opens inward 90 deg', 'slides left 5.6 m'), 'dwest'), 'deast'),
        ...both,
      ),
    ).toBe(none);
  });
  it('is none where the motion or the width of one of them is not known', () => {
    for (const text of [
      whole.replace('drive dwest : shaft', 'drive dwest'),
      whole.replace('drive deast : slow-shaft', 'drive deast'),
      whole.replace('  width 2 m\n', ''),
      models + pair('west', 'east', 'mass 150 kg\nopens inward 90 deg'),
      whole.replace('  closes onto east\n', ''),
    ])
      expect(told(text, ...both)).toBe(none);
  });
  it('of two pairs that are alike, the first is told, and at the lag of that movement where it is stated', () => {
    const four = models + pair('west', 'east') + pair('north', 'south');
    for (const id of both)
      expect(told(four, id)).toContain(
        'width of west, which covers: 2 m\n  width of east, which is covered: 2 m\n  overlap: 0.04 m\n  gap: 0.02 m\n  run time of west: 10 s (leaf.west.run-time)\n  run time of east: 15 s (leaf.east.run-time)\n',
      );
    const lag = four + block('motion', 'lag closing 5 s');
    expect(told(lag, both[0])).toContain(' at “closes onto east”\n');
    expect(told(lag, both[1])).toContain(' at “lag closing 5 s”\n');
  });
});

describe('how far the edge runs on', () => {
  const edge = (name: string, reaction: string, deformation: string): string =>
    block(`sensor-model ${name}`, `kind edge\noutput resistive\nreaction ${reaction}\ndeformation ${deformation}`);
  const kinds =
    edge('hard', '100 ms', '50 mm') +
    edge('soft', '200 ms', '100 mm') +
    block('sensor-model eye', 'kind beam\noutput two-wire\nreaction 50 ms') +
    block('sensor-model blind-eye', 'kind beam\noutput two-wire') +
    block('sensor-model slow-eye', 'kind beam\noutput two-wire\nreaction 300 ms');
  const file = (...sensors: readonly string[]): string =>
    heard(models + kinds + block('leaf west', swing) + block('drive d : shaft', 'moves west') + sensors.join(''));
  const sensor = (name: string, model: string, watches: string, on?: string): string =>
    block(`sensor ${name} : ${model}`, `watches ${watches}${on === undefined ? '' : `\non west ${on}`}`);
  /** The same with a panel that does not say how soon it answers. */
  const mute = (text: string): string => text.replace('  reaction 0.1 s\n', '');
  const closing = 'leaf.west.overtravel';
  const opening = 'leaf.west.overtravel-when-opening';

  // 9 deg/s stopped in 0.3 s is 30 deg/s²: 9·0.1 + 81/60 = 2.25 deg, on 2 m 78.5398 mm. The leaf has 150·2²/3 = 200 kg·m², so
  // 200·(9 deg/s)²/2 = 2.4674 J.
  it('of a swing leaf: the angle that the shaft runs on, on the width', () => {
    expect(
      told(file(sensor('front', 'hard', 'closing', 'closing-edge')), closing, opening),
    ).toBe(`leaf.west.overtravel 0.0785398 m at “on west closing-edge”: The edge gives 50 mm, with 2.47 J in the leaf
  v, speed of the edge when it is told to stop: 0.314159 m/s
  at an opening of: 90 deg
  t, reaction: 0.1 s (sensor-model hard)
  a, deceleration of the drive: 30 deg/s² (drive-model shaft)
  what the edge still gives: 0.05 m (sensor-model hard)
  energy of the leaf when it trips: 2.4674 J
leaf.west.overtravel-when-opening none
`);
    expect(told(file(sensor('back', 'hard', 'opening', 'opening-edge')), opening)).toContain(
      'overtravel-when-opening 0.0785398 m at “on west opening-edge”: The edge gives 50 mm, with 2.47 J in the leaf\n  v, speed of the edge when it is told to stop: 0.314159 m/s\n  at an opening of: 0 deg\n',
    );
  });
  it('says nothing of energy where the mass is not known', () => {
    expect(
      told(file(sensor('front', 'hard', 'closing', 'closing-edge')).replace('  mass 150 kg\n', ''), closing),
    ).toBe(`leaf.west.overtravel 0.0785398 m at “on west closing-edge”: The edge gives 50 mm
  v, speed of the edge when it is told to stop: 0.314159 m/s
  at an opening of: 90 deg
  t, reaction: 0.1 s (sensor-model hard)
  a, deceleration of the drive: 30 deg/s² (drive-model shaft)
  what the edge still gives: 0.05 m (sensor-model hard)
`);
  });
  it('without an edge that leads, by the slowest of what else is to stop the leaf', () => {
    // 9·0.3 + 81/60 = 4.05 deg, on 2 m 141.372 mm.
    const slowest = `leaf.west.overtravel 0.141372 m at “opens inward 90 deg”: No edge on that side, with 2.47 J in the leaf
  v, speed of the edge when it is told to stop: 0.314159 m/s
  at an opening of: 90 deg
  t, reaction: 0.3 s (no edge; the slowest of what else is to stop it, or its panel)
  a, deceleration of the drive: 30 deg/s² (drive-model shaft)
  energy of the leaf when it trips: 2.4674 J
leaf.west.overtravel-when-opening none
`;
    const quick = sensor('a', 'eye', 'closing', 'closing-edge');
    const free = sensor('b', 'slow-eye', 'closing');
    const held = sensor('b', 'slow-eye', 'closing', 'closing-edge');
    const quickFree = sensor('a', 'eye', 'closing');
    for (const sensors of [
      [quick, held],
      [held, quick],
      [quick, free],
      [held, quickFree],
      [free, quickFree],
      [quickFree, free],
    ])
      expect(told(file(...sensors), closing, opening)).toBe(slowest);
    // What watches the other movement stops nothing here; then the panel has to, and nobody says how soon it does.
    for (const sensors of [[], [sensor('b', 'slow-eye', 'opening')], [sensor('b', 'slow-eye', 'opening', 'closing-edge')]]) {
      expect(told(mute(file(...sensors)), closing)).toBe('leaf.west.overtravel none\n');
      // 9·0.1 + 81/60 deg.
      expect(told(file(...sensors), closing)).toContain('leaf.west.overtravel 0.0785398 m');
    }
    // A sensor that does not say how soon it reports.
    expect(told(file(quick, sensor('b', 'blind-eye', 'closing')), closing)).toBe('leaf.west.overtravel none\n');
  });
  it('while opening is of interest only with an edge: what else there is has let nobody in', () => {
    const stop = (...sensors: readonly string[]): unknown =>
      judge(file(...sensors)).installation.leaves.map((leaf) => openingStopOf(leaf)?.edge?.name);
    expect(stop(sensor('back', 'hard', 'opening', 'opening-edge'))).toEqual(['back']);
    expect(judge(file(sensor('eye', 'slow-eye', 'opening'))).installation.leaves.map((leaf) => openingStopOf(leaf))).toEqual([undefined]);
  });
  it('an edge leads only on its side of the leaf, where it watches that movement', () => {
    for (const [watches, on] of [
      ['opening', 'closing-edge'],
      ['closing', 'opening-edge'],
      ['closing', 'bottom-edge'],
    ] as const) {
      expect(told(file(sensor('front', 'hard', watches, on)), closing)).toContain('No edge on that side');
      expect(told(file(sensor('front', 'hard', watches, on)), opening)).toContain('none');
    }
    expect(told(file(sensor('front', 'eye', 'closing', 'closing-edge')), closing)).toContain('No edge on that side');
    expect(told(file(sensor('back', 'eye', 'opening', 'opening-edge')), opening)).toContain('none');
  });
  it('of several edges, the one that it runs on furthest beyond counts', () => {
    // 78.5 mm on 50 mm of rubber are worse than 3.15 deg, 110 mm, on 100 mm.
    const hard = sensor('front', 'hard', 'closing', 'closing-edge');
    const soft = sensor('rear', 'soft', 'closing', 'closing-edge');
    for (const sensors of [
      [hard, soft],
      [soft, hard],
    ])
      expect(told(file(...sensors), closing)).toContain(
        'leaf.west.overtravel 0.0785398 m at “on west closing-edge”: The edge gives 50 mm,',
      );
    // Of two alike the first one.
    const two = judge(file(sensor('one', 'hard', 'closing', 'closing-edge'), sensor('two', 'hard', 'closing', 'closing-edge')));
    expect(two.figures.find(({ id }) => id === closing)?.at.start).toBe(two.text.indexOf('on west closing-edge'));
  });
  it('is not given where an edge does not say how quick it is or how far it gives, or the drive how soon it stops', () => {
    const text = file(sensor('front', 'hard', 'closing', 'closing-edge'), sensor('rear', 'soft', 'closing', 'closing-edge'));
    for (const lacking of [
      text.replace('  reaction 100 ms\n', ''),
      text.replace('  deformation 100 mm\n', ''),
      text.replace('  stops-in 300 ms\n', ''),
      text.replace('  width 2 m\n', ''),
      text.replace('drive d : shaft', 'drive d'),
      text.replace('  shaft-speed 9 deg/s\n  stops-in', '  stops-in'),
    ])
      expect(told(lacking, closing)).toBe('leaf.west.overtravel none\n');
  });
});

describe('how far a drive can open its leaf', () => {
  const angle = (text: string): string => told(text, 'drive.d.reachable-angle');
  const file = (leaf: string, model: string, drive: string): string =>
    models + block('leaf west', leaf) + block(`drive d : ${model}`, drive);
  const ram = 'moves west\npost-bracket 150 mm by 150 mm\nleaf-bracket 800 mm';

  it('a shaft as far as it turns', () => {
    expect(angle(file(swing, 'shaft', 'moves west'))).toBe(
      'drive.d.reachable-angle 120 deg at “drive d”\n  rotation of the shaft: 120 deg (drive-model shaft)\n',
    );
  });
  it('a ram to its dead point, however long its stroke', () => {
    // The post bracket stands at 45° behind the hinge, so ram and leaf lie in one line at 135°.
    const long = file(swing, 'ram', ram).replace('stroke 400 mm', 'stroke 900 mm');
    expect(angle(long)).toBe('drive.d.reachable-angle 135 deg at “drive d”\n  stroke that the ram has: 0.9 m (drive-model ram)\n');
  });
  it('an arm as far as is asked', () => {
    expect(angle(file(swing, 'arm', 'moves west\nshaft 100 mm by 150 mm\nleaf-bracket 450 mm'))).toBe(
      'drive.d.reachable-angle 90 deg at “drive d”\n',
    );
  });
  it('says what of the drive ends it: its rotation or its arms, but not a dead point, nor the stroke', () => {
    const ends = (text: string): unknown => judge(text).installation.drives.map((drive) => reachOf(drive)?.endedBy);
    const armed = (shaft: string): string => file(swing, 'arm', `moves west\nshaft ${shaft}\nleaf-bracket 450 mm`);
    expect(ends(file(swing, 'shaft', 'moves west'))).toEqual(['rotation']);
    expect(ends(file(swing, 'ram', ram))).toEqual([undefined]);
    expect(ends(armed('100 mm by 150 mm'))).toEqual(['arms']);
    // Both arms in one line on the way: another rule speaks of that.
    expect(
      ends(
        armed('150 mm by -200 mm').replace('320 mm by 280 mm', '380 mm by 420 mm').replace('leaf-bracket 450 mm', 'leaf-bracket 600 mm'),
      ),
    ).toEqual([undefined]);
  });
  it('is not given for a drive that cannot move such a leaf, or where a fact is missing', () => {
    for (const text of [
      file(swing, 'rack', 'moves west'),
      file(slide, 'rack', 'moves west'),
      file(slide, 'shaft', 'moves west'),
      file(slide, 'ram', ram),
      file(swing, 'shaft', 'moves west').replaceAll('  rotation 120 deg\n', ''),
      file(swing, 'shaft', 'moves west').replace('  moves west\n', ''),
      file(swing, 'ram', ram).replace('  stroke 400 mm\n', ''),
      file(swing, 'ram', ram).replace('  leaf-bracket 800 mm\n', ''),
      file(swing, 'arm', 'moves west'),
      file(swing, 'arm', 'moves west').replace(' : arm', ''),
    ])
      expect(angle(text)).toBe('drive.d.reachable-angle none\n');
  });
});

describe('the gap at the hinge', () => {
  const file = (gap: string, more = ''): string => 'language 1\n' + block('leaf west', `${swing}\n${gap}${more}`);
  const both = ['leaf.west.hinge-gap-least', 'leaf.west.hinge-gap-greatest'] as const;
  const shape = '\nthickness 40 mm\nhinge-offset 0 mm by 0 mm';

  it('is as measured, where the least and the greatest were', () => {
    const inputs =
      ' at “hinge-gap 30 mm least 12 mm greatest 60 mm”\n  g, gap when closed: 0.03 m\n  least, as measured: 0.012 m\n  greatest, as measured: 0.06 m\n';
    for (const more of ['', shape])
      expect(told(file('hinge-gap 30 mm least 12 mm greatest 60 mm', more), ...both)).toBe(
        `leaf.west.hinge-gap-least 0.012 m${inputs}leaf.west.hinge-gap-greatest 0.06 m${inputs}`,
      );
  });
  it('is at least what it is when closed', () => {
    expect(values(file('hinge-gap 30 mm least 35 mm greatest 60 mm'), 'leaf.west.hinge-gap-')).toEqual({ least: 0.03, greatest: 0.06 });
    expect(values(file('hinge-gap 30 mm least 12 mm greatest 20 mm'), 'leaf.west.hinge-gap-')).toEqual({ least: 0.012, greatest: 0.03 });
  });
  it('closes on a finger whichever way the leaf moves, where the least was measured on the way', () => {
    const at = (gap: string): unknown => judge(file(gap)).installation.leaves.map((leaf) => hingeSideOf(leaf)?.opening.at);
    expect(at('hinge-gap 30 mm least 12 mm greatest 60 mm')).toEqual([Math.PI / 4]);
    expect(at('hinge-gap 30 mm least 30 mm greatest 60 mm')).toEqual([0]);
  });
  // The axis lies 300 mm behind the face, in line with the end of the leaf, and the post reaches to 100 mm before the axis. The
  // leaf swings over it: its other face, 200 mm before the axis, ends at 45° in a corner 200/√2 mm before it, 41.4214 mm off the
  // post. On the side that it opens to nothing comes nearer than 200 − √(50² + 100²) mm. The way in is widest when closed, from
  // the post’s far corner, level with the axis and 50 mm aside: √(50² + 200²) mm.
  it('is the lesser one of both sides', () => {
    const inputs =
      '  g, gap when closed: 0.05 m\n  t, thickness: 0.1 m\n  a, axis beyond the end of the leaf: 0 m\n  b, axis out from the face: -0.3 m\n  s, post beyond that face: -0.2 m\n  Θ, opening angle: 45 deg\n';
    expect(
      told(
        file('hinge-gap 50 mm', '\nthickness 100 mm\nhinge-offset 0 mm by -300 mm\npost-proud -200 mm').replace('90 deg', '45 deg'),
        ...both,
      ),
    ).toBe(
      `leaf.west.hinge-gap-least 0.0414214 m at “hinge-gap 50 mm”\n${inputs}  there at an opening of: 45 deg\nleaf.west.hinge-gap-greatest 0.206155 m at “hinge-gap 50 mm”\n${inputs}`,
    );
  });
  it('is worked out where only one of the two was measured, and not given where its shape is unknown', () => {
    const none = 'leaf.west.hinge-gap-least none\nleaf.west.hinge-gap-greatest none\n';
    for (const measured of ['least 4 mm', 'greatest 90 mm', '']) {
      // As without: the gap only widens on the side of the frame, to √(40² + 10²) mm.
      expect(values(file(`hinge-gap 10 mm ${measured}`, shape), 'leaf.west.hinge-gap-')).toEqual({ least: 0.01, greatest: 0.0412311 });
      expect(told(file(`hinge-gap 10 mm ${measured}`), ...both)).toBe(none);
    }
    const whole = file('hinge-gap 10 mm', shape);
    for (const line of [
      '  width 2 m\n',
      '  opens inward 90 deg\n',
      '  hinge-gap 10 mm\n',
      '  thickness 40 mm\n',
      '  hinge-offset 0 mm by 0 mm\n',
    ])
      expect(told(whole.replace(line, ''), ...both), line).toBe(none);
    // A leaf that would end at its own hinge axis cannot be.
    expect(told(whole.replace('0 mm by 0 mm', '2 m by 0 mm'), ...both)).toBe(none);
  });
});
