// What is said of links, of inputs that stand open, and of panels with too little for what hangs on them.
import { describe, expect, test } from 'vitest';
import { type Finding, marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, saidOf } from '../kit/pages.ts';

const says = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const found = (rule: string, text: string): Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);

/** A panel of a model with these lines in it, and these lines of its own. */
const panel = (model: string, own: string): string => `language 1\npanel-model sedge {\n${model}}\npanel box : sedge {\n${own}}\n`;

describe('links', () => {
  const model = `  terminal P1 supply-in
  terminal M1 motor
  terminal PE earth
  terminal V1 supply-out
  terminal S0 common
  terminal A0 common
  terminal B0 common
  terminal A1 safety-input normally-closed common A0
  terminal A2 safety-input normally-open common A0
  terminal A3 safety-input normally-closed
  terminal B1 edge-input common B0
  terminal B2 stop-input normally-open common B0
`;
  const link = (ends: string): string => says('link-wrong', panel(model, `  link ${ends}\n`));

  test('that close an unused input, or join what is no input, are sound', () => {
    for (const ends of ['A1 A0', 'A0 A1', 'A3 A0', 'A3 B0', 'A0 B0', 'S0 PE']) expect(link(ends), ends).toBe('');
  });

  test('that hold an input in a report that never ends are reported with why', () => {
    const endless = (
      name: string,
      is: string,
    ) => `error on line 17, “link ${name}”: “${name.slice(0, 2)}” is for ${is}, with a contact that closes to report; a link reports on it all the time.
  Why: The panel sees a report that never ends.
  What to do: Take the link out; see in the panel’s manual how this input is left unused.
  See line ${name.startsWith('A') ? 11 : 14}, “terminal ${name.startsWith('A') ? 'A2 safety-input normally-open common A0' : 'B2 stop-input normally-open common B0'}”: “${name.slice(0, 2)}” in the model\n`;
    expect(link('A2 A0')).toBe(endless('A2 A0', 'a relay contact of a protective device'));
    expect(link('B2 B0')).toBe(endless('B2 B0', 'an emergency or safety stop'));
  });

  test('to another common are mended only where a link belongs', () => {
    expect(link('A1 B0')).toContain('What to do: Link it to “A0”.');
    expect(link('A1 B0')).toContain('Offered: Write “A0”: line 17, “B0” becomes “A0”');
    for (const ends of ['B1 A0', 'A2 B0', 'A0 B1']) {
      expect(link(ends), ends).toContain('What to do: Take the link out.');
      expect(link(ends), ends).not.toContain('Offered');
    }
  });

  test('on the feed or on a motor are wrong whatever the other end is, and named by that end', () => {
    expect(link('S0 P1')).toContain('This link ends on “P1”, which is for the feed of the panel.');
    expect(link('M1 S0')).toContain('This link ends on “M1”, which is for a drive.');
    expect(link('A3 P1')).toContain('This link ends on “P1”');
    expect(link('P1 P1')).toContain('joins “P1” to itself');
    // The input has a common of its own: that says more.
    expect(link('A1 P1')).toContain('“A1” is linked to “P1”, but it returns to “A0”.');
  });

  test('are not judged without a model, nor where a terminal is not known', () => {
    expect(says('link-wrong', 'language 1\npanel box {\n  link A B C\n}\n')).toBe('');
    for (const ends of ['A1 Q9', 'Q9 A1', 'P1 Q9', 'Q9 P1', 'Q8 Q9']) expect(link(ends), ends).toBe('');
  });
});

describe('an input that expects a closed contact', () => {
  const open = (model: string, own: string): string => says('normally-closed-input-open', panel(model, own));

  test('is told of with what closes it, for every kind of input', () => {
    for (const role of ['safety-input', 'stop-input', 'command-input'])
      expect(
        open(`  terminal A0 common\n  terminal A1 ${role} normally-closed common A0\n`, ''),
        role,
      ).toBe(`error on line 6, “box”: Input “A1” of “box” stands open: no wire ends on it, and no link closes it.
  What to do: Wire a device to it, or write “link A1 A0” and fit that link.
  See line 4, “terminal A1 ${role} normally-closed common A0”: “A1” expects a contact that is closed while all is well
  Offered: Write “link A1 A0”: line 6, nothing becomes “ ⏎ link A1 A0”\n`);
  });

  test('is linked as the manual says where the model gives it no return', () => {
    expect(
      open('  terminal A1 safety-input normally-closed\n', ''),
    ).toBe(`error on line 5, “box”: Input “A1” of “box” stands open: no wire ends on it, and no link closes it.
  What to do: Wire a device to it, or link it as the panel’s manual says.
  See line 3, “terminal A1 safety-input normally-closed”: “A1” expects a contact that is closed while all is well\n`);
  });

  test('is no output, no common and no edge input, and counts once', () => {
    expect(
      open(
        '  terminal A1 edge-input normally-closed\n  terminal A2 two-wire-input normally-closed\n  terminal A3 supply-out normally-closed\n  terminal A4 safety-input normally-open\n',
        '',
      ),
    ).toBe('');
    expect(
      open(
        '  terminal A0 common\n  terminal A1 safety-input normally-open common A0\n  terminal A1 safety-input normally-closed common A0\n',
        '',
      ),
    ).toBe('');
  });

  test('is linked beside the other links, before what else stands in the panel', () => {
    const text = panel(
      '  terminal A0 common\n  terminal A1 safety-input normally-closed common A0\n  terminal A2 safety-input normally-closed common A0\n',
      '  link A2 A0\n  isolator "in the post"\n',
    );
    expect(says('normally-closed-input-open', text)).toContain('Offered: Write “link A1 A0”: line 8, nothing becomes “ ⏎ link A1 A0”');
  });
});

describe('outputs', () => {
  const model = '  terminal V1 supply-out\n  terminal V0 common\n  output V1 gives 1.2 A at 24 V\n';
  const load = (own: string): string => says('output-overloaded', panel(model, own));
  const margins = (own: string): unknown[] =>
    marginsOf(judge(panel(model, own)).installation)
      .filter(({ rule }) => rule.name === 'output-overloaded')
      .map(({ held, subject, value, kept }) => [held.name, subject, value, kept]);

  test('give all that they can, and a note where less than a fifth is in reserve', () => {
    expect(load('  accessory "lamp" draws 1 A from V1\n')).toBe('');
    expect(load('  accessory "lamp" draws 1.01 A from V1\n')).toContain(
      'note on line 8, “accessory "lamp" draws 1.01 A from V1”: “lamp” draws 1.01 A from “V1” of “box”, which can give 1.2 A: less than 20 % is in reserve (from memory).',
    );
    expect(load('  accessory "lamp" draws 1.2 A from V1\n')).toMatch(/^note /);
    expect(load('  accessory "lamp" draws 1.21 A from V1\n')).toMatch(/^error /);
  });

  test('are held once where they are overloaded, twice where they are not', () => {
    expect(margins('  accessory "lamp" draws 0.6 A from V1\n')).toEqual([
      ['load', 'box/V1', 0.6, true],
      ['load within the reserve', 'box/V1', 0.6, true],
    ]);
    expect(margins('  accessory "lamp" draws 2 A from V1\n')).toEqual([['load', 'box/V1', 2, false]]);
  });

  test('are not held to what nobody states', () => {
    expect(margins('')).toEqual([]);
    const sensor = 'sensor-model plain {\n  kind beam\n  output relay\n}\nsensor beam : plain {\n}\n';
    expect(
      marginsOf(judge(panel(model, '  wire beam supply to V1 V0\n') + sensor).installation).filter(
        ({ rule }) => rule.name === 'output-overloaded',
      ),
    ).toEqual([]);
  });

  test('name only what is known to draw from them, and point to all that hangs on them', () => {
    const sensor = 'sensor-model plain {\n  kind beam\n  output relay\n}\nsensor beam : plain {\n}\n';
    expect(
      says('output-overloaded', panel(model, '  wire beam supply to V1 V0\n  accessory "lamp" draws 2 A from V1\n') + sensor),
    ).toBe(`error on line 8, “wire beam supply to V1 V0”: “lamp” draws 2 A from “V1” of “box”, which can give 1.2 A.
  See line 9, “accessory "lamp" draws 2 A from V1”: “lamp” hangs on it too
  See line 5, “output V1 gives 1.2 A at 24 V”: what it can give\n`);
  });
});

describe('panels and drives', () => {
  const leaf = (name: string): string =>
    `leaf ${name} {\n  width 1 m\n  mass 50 kg\n  opens inward 90 deg\n}\ndrive ${name}-arm : arm {\n  moves ${name}\n}\n`;

  test('a panel that is too small shows six of the leaves that it drives', () => {
    const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];
    const [finding, ...more] = found('panel-too-small', `${panel('  leaves 4\n', '')}${names.map(leaf).join('')}`);
    expect(more).toEqual([]);
    expect(finding?.what).toBe('“box” (sedge) drives 4 leaves; 8 have drives: “a”, “b”, “c”, “d”, “e”, “f” and 2 more.');
    expect(finding?.related.map(({ message }) => message)).toEqual([
      'what its model can drive',
      ...Array.from({ length: 6 }, () => 'a driven leaf'),
    ]);
  });

  test('a panel whose model does not say how many leaves it drives is not too small', () => {
    expect(found('panel-too-small', `${panel('', '')}${leaf('a')}${leaf('b')}`)).toEqual([]);
    expect(found('panel-too-small', `language 1\npanel box {\n}\n${leaf('a')}${leaf('b')}`)).toEqual([]);
  });

  test('a panel is missing where drives have no name, too', () => {
    const nameless = 'drive {\n  moves a\n}\n';
    expect(found('panel-missing', `language 1\n${nameless}`).map(({ what }) => what)).toEqual(['A drive is there, but no panel.']);
    expect(found('panel-missing', `language 1\n${nameless}drive b {\n}\n`).map(({ what }) => what)).toEqual([
      '“b” is there, but no panel.',
    ]);
  });
});
