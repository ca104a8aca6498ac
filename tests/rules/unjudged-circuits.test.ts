// What the account says is not judged of cables and of what feeds a device, with the facts that are lacking, and where nothing lacks.
import { describe, expect, it } from 'vitest';
import { accountOf } from '../../server/safeguards/index.ts';
import { judge } from '../kit/pages.ts';

/** “mains run: cable.method, site.earthing” for every entry that is not judged, of those subjects. */
const open = (text: string, ...subjects: readonly string[]): string[] =>
  accountOf(judge(text).installation).open.flatMap(({ subject, of, lacks }) =>
    subjects.includes(subject) ? [`${subject} ${of}: ${lacks.map(({ block, word }) => `${block}.${word}`).join(', ')}`] : [],
  );
const judged = (text: string, subject: string): string[] =>
  accountOf(judge(text).installation).entries.flatMap((entry) => (entry.subject === subject && entry.lacks.length === 0 ? [entry.of] : []));

const use =
  'language 1\nuse "../library/cables.gate"\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
const site = (more: string, rules = 'europe'): string =>
  `site "Example" {\n  rules ${rules}\n  users limited\n  supply 230 V 50 Hz\n  ${more}\n}\n`;
const tn = 'earthing TN\n  external-impedance 0.35 ohm';

describe('a mains circuit', () => {
  const model = (lines: string): string => `cable-model plover {\n  class 2\n  area 2.5 mm2\n  ${lines}\n}\n`;
  const cable = (lines: string): string => `cable run : plover {\n  carries 4 A at 230 V\n  ${lines}\n}\n`;
  const whole = 'length 20 m\n  method C\n  breaker B 10 A';
  const lacking = (siteLines: string, modelLines: string, lines: string, rules = 'europe') =>
    open(use + site(siteLines, rules) + model(modelLines) + cable(lines), 'mains');
  it('is judged where all is stated', () => {
    expect(lacking(tn, 'cores 3', whole)).toEqual([]);
    expect(judged(use + site(tn) + model('cores 3') + cable(whole), 'mains')).toEqual(['run']);
    expect(lacking('earthing TT\n  earth-electrode 80 ohm', 'cores 3', whole)).toEqual([]);
    // A cable of too few cores is a finding by itself.
    expect(lacking(tn, 'cores 2', whole)).toEqual([]);
  });
  it.each([
    ['how the supply is earthed', '', 'cores 3', whole, 'site.earthing'],
    ['the loop outside', 'earthing TN', 'cores 3', whole, 'site.external-impedance'],
    ['the electrode', 'earthing TT', 'cores 3', whole, 'site.earth-electrode'],
    ['the protective conductor', tn, '', whole, 'cable-model.cores'],
    ['the size of that of a flat cable', tn, 'cores 3\n  kind flat', whole, 'cable-model.protective-conductor'],
    ['how long it is', tn, 'cores 3', 'method C\n  breaker B 10 A', 'cable.length'],
    ['how it is laid', tn, 'cores 3', 'length 20 m\n  breaker B 10 A', 'cable.method'],
    ['how it is laid, without a breaker too', tn, 'cores 3', 'length 20 m', 'cable.method'],
  ])('lacks %s', (_, siteLines, modelLines, lines, word) => {
    expect(lacking(siteLines, modelLines, lines)).toEqual([`mains run: ${word}`]);
  });
  it('lacks nothing that a line which cannot be read may say', () => {
    expect(lacking(tn, 'cores 3', 'lenght 20 m\n  method C\n  breaker B 10 A')).toEqual([]);
    expect(lacking(tn, 'cores 3', 'length 20 m\n  method Z\n  breaker B 10 A')).toEqual([]);
    expect(lacking(tn, 'coers 3', whole)).toEqual([]);
    expect(lacking('earthing TN\n  external-impedance 0.35', 'cores 3', whole)).toEqual([]);
  });
  it('is not asked how it is earthed under the rules of North America', () => {
    expect(lacking('', '', whole, 'north-america')).toEqual([]);
  });
  it('behind a panel is protected by what stands before the panel, which has to be known', () => {
    const drive =
      'drive-model pump {\n  kind rack\n}\nleaf slide {\n  width 4 m\n  slides left 4 m\n}\ndrive rack : pump {\n  moves slide\n}\n';
    const behind = `${use}${site(tn)}${model('cores 3')}${drive}panel box : marram-one {\n  wire rack to D1 D2\n}\ncable run : plover {\n  feeds rack\n  carries 4 A at 230 V\n  length 20 m\n  method C\n}\n`;
    expect(open(behind, 'mains')).toEqual(['mains run: cable.breaker']);
    const fed = `${behind}cable feed : plover {\n  feeds box\n  carries 4 A at 230 V\n  ${whole}\n}\n`;
    expect(open(fed, 'mains')).toEqual([]);
  });
});

describe('a cable at extra-low voltage', () => {
  const cable = (lines: string, of = 'heron-signal'): string => `${use}${site('')}cable run : ${of} {\n  ${lines}\n}\n`;
  it('is judged where it carries little for its size, however it is laid', () => {
    expect(open(cable('length 20 m\n  carries 0.3 A at 24 V'), 'cable')).toEqual([]);
    // 0.5 mm² bears 22 · 1.1 · √(0.5/1.5) = 13.97 A at the most; a quarter of that is 3.49 A.
    expect(open(cable('length 20 m\n  carries 3.4 A at 24 V'), 'cable')).toEqual([]);
    expect(open(cable('length 20 m\n  carries 3.6 A at 24 V'), 'cable')).toEqual(['cable run: cable.method']);
    expect(open(cable('length 20 m\n  carries 0.3 A at 24 V\n  fuse 4 A'), 'cable')).toEqual(['cable run: cable.method']);
  });
  it('lacks what it carries, and how long it is', () => {
    expect(open(cable('length 20 m'), 'cable')).toEqual(['cable run: cable.carries']);
    expect(open(cable('carries 0.3 A at 24 V'), 'cable')).toEqual(['cable run: cable.length']);
  });
});

describe('what feeds a drive', () => {
  const gate = (model: string, { least = '', panel = '' } = {}): string =>
    `${use}${site('')}panel-model sedge {\n  terminal M1 motor\n  terminal M2 motor\n${model}}\ndrive-model pump {\n  kind rack\n${least}}\nleaf slide {\n  width 4 m\n  slides left 4 m\n}\ndrive rack : pump {\n  moves slide\n}\npanel box : sedge {\n  wire rack to M1 M2\n${panel}}\n`;
  const gives = '  output M1 M2 gives 8 A at 24 V\n';
  const third = '  terminal N1 motor\n  terminal N2 motor\n';
  const battery = '  battery {\n    voltage 24 V\n    capacity 7 Ah over 20 h\n  }\n';
  it('is judged where the output says what it gives, or there is but one', () => {
    for (const text of [gate(gives), gate(''), gate(third + gives), gate(gives, { panel: battery })]) {
      expect(open(text, 'supply'), text).toEqual([]);
      expect(judged(text, 'supply')).toEqual(['rack']);
    }
  });
  it('lacks which terminals belong together, where there are those of several motors', () => {
    expect(open(gate(third), 'supply')).toEqual(['supply rack: panel-model.output']);
    expect(open(gate(`${third}  output M1\n`), 'supply')).toEqual([]);
  });
  it('lacks its voltage where a battery is to give it, and nothing else says which', () => {
    expect(open(gate('', { panel: battery }), 'supply')).toEqual(['supply rack: panel-model.output']);
    expect(open(gate('', { panel: battery, least: '  least-voltage 20 V\n' }), 'supply')).toEqual([]);
    expect(open(gate('  battery 24 V\n', { panel: battery }), 'supply')).toEqual([]);
  });
});
