// What the figures of cables read from a file, and what they say of it: defaults, tables, the cable that feeds the panel.
import { describe, expect, it } from 'vitest';
import { wholeDropOf } from '../../server/figures/voltage-drop/working.ts';
import { judge } from '../kit/pages.ts';
import { told } from './told.ts';

const ids = (name: string, ...of: readonly string[]): string[] => of.map((id) => `cable.${name}.${id}`);
const none = (name: string, ...of: readonly string[]): string =>
  ids(name, ...of)
    .map((id) => `${id} none\n`)
    .join('');
const cable = (lines: string, model = 'area 2.5 mm2\nclass 2', site = ''): string =>
  `language 1\n${site}cable-model c {\n${model}\n}\ncable run : c {\n${lines}\n}\n`;

describe('the loop of a fault', () => {
  const site = 'site "Example" {\n  users limited\n  earthing TN\n  external-impedance 0.35 ohm\n}\n';
  const fed = `language 1
use "../library/panels.gate"
${site}cable-model thin {
  area 2.5 mm2
  class 2
  protective-conductor 1.5 mm2
}
cable-model thick {
  area 4 mm2
  class 2
  cores 3
}
drive-model d {
  kind rack
}
drive pump : d {
  moves x
}
panel main : marram-one {
  wire pump to D1 D2
}
cable mains : thick {
  feeds main
  length 10 m
  carries 6 A at 230 V
}
cable run : thin {
  feeds pump
  length 20 m
  carries 4 A at 230 V
  breaker C 10 A
}
`;
  const all = ids('run', 'loop-impedance', 'loop-impedance-limit', 'fault-current', 'protective-conductor-least');

  // At 70 °C copper has 1.1965 times its resistance. Line: 20 m of 7.41 and 10 m of 4.61 ohm/km, 0.23248 ohm; protective: 20 m of
  // 12.1 and 10 m of 4.61, 0.344712 ohm. 0.35 + 0.23248 + 0.344712 = 0.927192; 230 V over that 248.061 A; √(248.061²·0.1)/115
  // is 0.68212 mm²; 230·0.95/(10·10) = 2.185.
  it('runs through the cable that feeds the panel as well', () => {
    expect(told(fed, ...all)).toBe(`cable.run.loop-impedance 0.927192 ohm at “breaker C 10 A”
  Ze, outside the installation: 0.35 ohm
  R1, line conductor: 0.23248 ohm (IEC 60228, at 70 °C)
  R2, protective conductor: 0.344712 ohm (IEC 60228, at 70 °C)
cable.run.loop-impedance-limit 2.185 ohm at “breaker C 10 A”
  U0, voltage to earth: 230 V
  Cmin: 0.95 (BS 7671, 411.4.4)
  m, characteristic C: 10 (EN 60898-1)
  In, rated current: 10 A
cable.run.fault-current 248.061 A at “breaker C 10 A”
  U0, voltage to earth: 230 V
  Zs: 0.927192 ohm (cable.run.loop-impedance)
cable.run.protective-conductor-least 6.8212e-7 m² at “breaker C 10 A”: 0.682 mm2
  I, fault current: 248.061 A (cable.run.fault-current)
  t, time to cut off: 0.1 s (EN 60898-1 (from memory))
  k, copper in a 70 °C thermoplastic cable: 115 A·√s/mm² (BS 7671, Table 54.3)
`);
  });
  it('is not known where that cable is not', () => {
    for (const text of [fed.replace('  length 10 m\n', ''), fed.replace('  cores 3\n', ''), fed.replace('  area 4 mm2\n', '')])
      expect(told(text, ...all)).toBe(none('run', 'loop-impedance', 'loop-impedance-limit', 'fault-current', 'protective-conductor-least'));
  });
  it('is not known where the cable does not say enough', () => {
    const whole = cable('length 20 m\ncarries 4 A at 230 V\nbreaker B 16 A', 'area 2.5 mm2\nclass 2\ncores 3', site);
    expect(told(whole, ...all)).not.toContain('none');
    for (const line of [
      'length 20 m\n',
      'carries 4 A at 230 V\n',
      'area 2.5 mm2\n',
      'cores 3\n',
      '  earthing TN\n',
      '  external-impedance 0.35 ohm\n',
      ': c',
    ])
      expect(told(whole.replace(line, ''), ...all), line).toBe(
        none('run', 'loop-impedance', 'loop-impedance-limit', 'fault-current', 'protective-conductor-least'),
      );
    expect(
      told(cable('length 20 m\ncarries 4 A at 230 V\nbreaker B 16 A', 'class 2\nprotective-conductor 1.5 mm2', site), ...all),
    ).toContain('loop-impedance none');
  });
  it('is reckoned above extra-low voltage, whatever the voltage', () => {
    for (const [voltage, given] of [
      [50, false],
      [51, true],
      [254, true],
      [255, true],
      [400, true],
    ] as const)
      expect(
        told(
          cable(`length 20 m\ncarries 4 A at ${voltage} V`, 'area 2.5 mm2\ncores 3', site),
          ids('run', 'loop-impedance')[0] as string,
        ).includes('none'),
        `${voltage} V`,
      ).toBe(!given);
  });
  it('has the limit of a fuse, and no least conductor where the breaker does not trip at once', () => {
    const fuse = told(cable('length 20 m\ncarries 4 A at 230 V\nfuse 16 A', 'area 2.5 mm2\nclass 2\ncores 3', site), ...all);
    // 0.35 + 2·20·0.00741·1.1965
    expect(fuse).toContain('cable.run.loop-impedance 0.704643 ohm at “fuse 16 A”\n');
    expect(fuse).toContain('cable.run.fault-current 326.407 A at “fuse 16 A”\n');
    expect(fuse).toContain('cable.run.loop-impedance-limit 2.42 ohm at “fuse 16 A”\n');
    expect(fuse).toContain(none('run', 'protective-conductor-least'));
    // D 63 A needs 230·0.95/(20·63) = 0.1734 ohm.
    const slow = told(cable('length 20 m\ncarries 4 A at 230 V\nbreaker D 63 A', 'area 2.5 mm2\nclass 2\ncores 3', site), ...all);
    expect(slow).toContain('cable.run.loop-impedance-limit 0.173413 ohm');
    expect(slow).toContain(none('run', 'protective-conductor-least'));
  });
});

describe('the voltage lost', () => {
  const both = ids('run', 'voltage-drop', 'end-voltage');

  // 2·30 m·20 A·7.41 ohm/km·1.1965 = 10.6393 V; by the table 18 mV/A/m, 10.8 V.
  it('is the tabulated one only above 50 V', () => {
    expect(told(cable('length 30 m\ncarries 20 A at 50 V'), ...both)).toBe(`cable.run.voltage-drop 10.6393 V at “carries 20 A at 50 V”
  L, length one way: 30 m
  I, current: 20 A
  R20, one conductor at 20 °C: 0.00741 ohm/m (IEC 60228)
  t, conductor temperature: 70 °C (default: as warm as the insulation allows)
  drop reckoned at that temperature: 10.6393 V
  tabulated drop, there and back: 0.018 V/(A·m) (BS 7671, Table 4D2B)
  drop by the table: 10.8 V
  share of the voltage at the beginning: 0.212786
cable.run.end-voltage 39.3607 V at “length 30 m”
  voltage at the beginning: 50 V
  ΔU, voltage lost: 10.6393 V (cable.run.voltage-drop)
`);
    expect(told(cable('length 30 m\ncarries 20 A at 51 V'), ...both)).toContain('cable.run.voltage-drop 10.8 V');
  });
  // Copper of 1/58 ohm·mm²/m: 3 mm² have 5.74713 ohm/km, 1.1965 times that at 70 °C; 2·30·20 times that is 8.25172 V.
  it('is reckoned for plain copper where no table has the size', () => {
    expect(
      told(cable('length 30 m\ncarries 20 A at 230 V', 'area 3 mm2\nclass 2'), both[0] as string),
    ).toBe(`cable.run.voltage-drop 8.25172 V at “carries 20 A at 230 V”
  L, length one way: 30 m
  I, current: 20 A
  R20, one conductor at 20 °C: 0.00574713 ohm/m (plain copper, the size is not in IEC 60228)
  t, conductor temperature: 70 °C (default: as warm as the insulation allows)
  drop reckoned at that temperature: 8.25172 V
  share of the voltage at the beginning: 0.0358771
`);
  });
  it('is not given where a fact is missing', () => {
    const whole = cable('length 30 m\ncarries 20 A at 230 V');
    for (const line of ['length 30 m\n', 'carries 20 A at 230 V\n', 'area 2.5 mm2\n', ': c'])
      expect(told(whole.replace(line, ''), ...both), line).toBe(none('run', 'voltage-drop', 'end-voltage'));
  });

  it('adds up with that of the cable that feeds the panel, on the mains', () => {
    const text = (feed = 'length 40 m\ncarries 6 A at 230 V', run = 'length 25 m\ncarries 5 A at 230 V'): string =>
      `language 1\nuse "../library/panels.gate"\ncable-model c {\n  area 1.5 mm2\n  class 2\n}\ndrive-model d {\n  kind rack\n}\ndrive pump : d {\n  moves x\n}\npanel main : marram-one {\n  wire pump to D1 D2\n}\ncable mains : c {\n  feeds main\n${feed}\n}\ncable run : c {\n  feeds pump\n${run}\n}\n`;
    const whole = (file: string): readonly unknown[] =>
      judge(file)
        .installation.cables.map((each) => wholeDropOf(each))
        .map((found) => found && [Number(found.drop.toPrecision(6)), found.length, found.upstream?.name]);
    // 29 mV/A/m: 6 A over 40 m are 6.96 V, 5 A over 25 m 3.625 V.
    expect(whole(text())).toEqual([
      [6.96, 40, undefined],
      [10.585, 65, 'mains'],
    ]);
    expect(whole(text('carries 6 A at 230 V'))).toEqual([undefined, undefined]);
    expect(whole(text('length 40 m\ncarries 6 A at 230 V', 'carries 5 A at 230 V'))).toEqual([[6.96, 40, undefined], undefined]);
    // At extra-low voltage each cable stands alone: 2·25·5·12.1 ohm/km·1.1965.
    expect(whole(text('length 40 m\ncarries 6 A at 24 V', 'length 25 m\ncarries 5 A at 24 V'))[1]).toEqual([3.61941, 25, undefined]);
  });
});

describe('the current that a cable may carry', () => {
  const both = ids('run', 'current-rating', 'conductor-temperature');
  const american = 'site "Example" {\n  rules north-america\n  users limited\n}\n';

  it('by itself in the air that the table is for, where nothing else is stated', () => {
    expect(told(cable('length 5 m\ncarries 1 A at 230 V\nmethod C'), ...both)).toBe(`cable.run.current-rating 27 A at “method C”
  It, tabulated current: 27 A (BS 7671, Table 4D2A)
  Ca, ambient factor: 1 (BS 7671, Table 4C1)
  ambient temperature: 30 °C (default)
  Cg, grouping factor: 1 (BS 7671, Table 4C1)
  circuits together: 1 (default)
cable.run.conductor-temperature none
`);
  });
  // 27 A · 0.87 · 0.8; 70 − 0.64·(70 − 40) + 40·(9/27)² = 55.2444 °C.
  it('beside another and in warm air', () => {
    expect(
      told(cable('length 5 m\ncarries 9 A at 230 V\nmethod C\nambient 40 °C\ngrouped 2'), ...both),
    ).toBe(`cable.run.current-rating 18.792 A at “method C”
  It, tabulated current: 27 A (BS 7671, Table 4D2A)
  Ca, ambient factor: 0.87 (BS 7671, Table 4C1)
  ambient temperature: 40 °C
  Cg, grouping factor: 0.8 (BS 7671, Table 4C1)
  circuits together: 2
cable.run.conductor-temperature 328.394 K at “ambient 40 °C”: 55.2 °C
  Ib, current: 9 A
  tp, warmest that the table allows: 70 °C (BS 7671, Appendix 4)
  tr, ambient temperature of the table: 30 °C (BS 7671, Appendix 4)
  It, tabulated current: 27 A (BS 7671, Table 4D2A)
  ambient temperature: 40 °C
  Cg, grouping factor: 0.8 (BS 7671, Table 4C1)
  circuits together: 2
`);
  });
  it('in the ground from 20 °C, with a value from memory', () => {
    expect(told(cable('length 5 m\ncarries 1 A at 230 V\nmethod D'), both[0] as string)).toBe(`cable.run.current-rating 29 A at “method D”
  It, tabulated current: 29 A (IEC 60364-5-52, method D (from memory))
  Ca, ambient factor: 1 (BS 7671, Table 4C1)
  ambient temperature: 20 °C (default)
  Cg, grouping factor: 1 (BS 7671, Table 4C1)
  circuits together: 1 (default)
`);
  });
  // 70 − (70 − 40) + 40·(7.5/15)² = 50 °C.
  it('by American rules has one value however the cable is laid, and by it a warmth only where that is stated', () => {
    const gauge = (lines: string): string => cable(`length 5 m\ncarries 7.5 A at 120 V\n${lines}`, 'area 14 AWG', american);
    // 15 A · √((60 − 40)/30) = 12.247 A; 60 − 20 + 30·(7.5/15)² = 47.5 °C.
    const buried = told(gauge('method D\nambient 40 °C'), ...both);
    expect(buried).toContain('cable.run.current-rating 12.2474 A at “method D”\n  It, tabulated current: 15 A (');
    expect(buried).toContain('  Ca, ambient factor: 0.816497 (60 °C insulation, √((60 − t)/30))\n');
    expect(buried).toContain('cable.run.conductor-temperature 320.65 K at “ambient 40 °C”: 47.5 °C\n');
    expect(buried).toContain('  tr, ambient temperature of the table: 30 °C (BS 7671, Appendix 4)\n');
    const unsaid = told(gauge('ambient 40 °C'), ...both);
    expect(unsaid).toContain('cable.run.current-rating 12.2474 A at “cable run”\n');
    expect(unsaid).toContain(none('run', 'conductor-temperature'));
  });
  it('is not given where no table has it, or a fact is missing', () => {
    const whole = cable('length 5 m\ncarries 9 A at 230 V\nmethod C\nambient 40 °C');
    expect(told(whole, ...both)).not.toContain('none');
    for (const text of [
      whole.replace('area 2.5 mm2\n', ''),
      whole.replace(': c', ''),
      whole.replace('method C\n', ''),
      whole.replace('class 2', 'insulation rubber'),
      whole.replace('area 2.5', 'area 3'),
    ])
      expect(told(text, ...both)).toBe(none('run', 'current-rating', 'conductor-temperature'));
    expect(told(whole.replace('carries 9 A at 230 V\n', ''), ...both)).toContain(none('run', 'conductor-temperature'));
  });
});
