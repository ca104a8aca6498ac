// What is said of a device on the wrong terminal, of a terminal with two wires on it, and of one that is not there.
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/engine/index.ts';
import type { Finding } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
const devices = `
sensor relay-beam : finch-relay {
  watches closing
}
sensor back-beam : finch-relay {
  watches opening
}
sensor self-beam : finch-beam {
  watches closing
}
sensor west-edge : finch-edge {
  watches closing
}
sensor road-loop : finch-loop {
  watches closing
}
sensor old-beam : no-output {
  watches closing
}
sensor bare-beam {
  watches closing
}
drive west-arm : birch-arm {
  moves west
}
drive east-arm : birch-arm {
  moves east
}
control button {
  by push-button
  acts impulse
}
control key {
  by key-switch
  acts impulse
}
sensor-model no-output "Beam of which nobody knows how it reports" {
  kind beam
}
`;
const siteWith = (panel: string): string => `${head}${devices}\n${panel}`;
const pair = (...lines: readonly string[]): string =>
  siteWith(`panel main : rowan-pair {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`);
/** A panel of these terminals. */
const panelOf = (terminals: readonly string[], ...lines: readonly string[]): string =>
  siteWith(
    `panel-model heron "Panel" {\n${terminals.map((line) => `  terminal ${line}\n`).join('')}}\npanel main : heron {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`,
  );

const found = (rule: string, text: string): readonly Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);
const whats = (rule: string, text: string): string[] => found(rule, text).map((finding) => finding.what);
const only = (rule: string, text: string): Finding => {
  const all = found(rule, text);
  expect(all.map((finding) => finding.what)).toHaveLength(1);
  return all[0] as Finding;
};
/** Where a finding and what belongs to it stand, as written; a place in another file by its name. */
const placesOf = (text: string, { start, end, related }: Pick<Finding, 'start' | 'end' | 'related'>): string[] => [
  text.slice(start, end),
  ...related.map((one) => one.path?.split('/').at(-1) ?? text.slice(one.start, one.end)),
];

describe('terminal-unfit', () => {
  const unfit = (text: string): Finding => only('terminal-unfit', text);
  const reads =
    'A panel reads a relay contact, a resistance and a two-wire sensor in different ways; on the wrong input a device reports nothing, or nonsense.';
  const readsNothing = 'That terminal reads nothing: the panel would never hear of this device, and one of the two may be destroyed.';

  test.each([
    [
      'wire relay-beam to E1 E0',
      'E1',
      '“E1” is for a resistive edge, or a chain of them; “relay-beam”, a sensor with a relay contact, is wired to it.',
      reads,
      '“H1”, “G1” and “G2”',
    ],
    [
      'wire west-edge to G1 G0',
      'G1',
      '“G1” is for a relay contact of a protective device; “west-edge”, a resistive edge, is wired to it.',
      reads,
      '“E1” and “E2”',
    ],
    [
      'wire road-loop to T1 T0',
      'T1',
      '“T1” is for self-checking sensors on two wires; “road-loop”, a sensor with a relay contact, is wired to it.',
      reads,
      '“K1”, “K2”, “H1”, “G1” and “G2”',
    ],
    [
      'wire relay-beam to W1',
      'W1',
      '“W1” is for a warning lamp; “relay-beam”, a sensor with a relay contact, is wired to it.',
      readsNothing,
      '“H1”, “G1” and “G2”',
    ],
    ['wire button to LA1', 'LA1', '“LA1” is for a drive; “button”, a control, is wired to it.', readsNothing, '“K1” and “K2”'],
    [
      'wire button to G1 G0',
      'G1',
      '“G1” is for a relay contact of a protective device; “button”, a control, is wired to it.',
      'The panel takes its command for a report of something else.',
      '“K1” and “K2”',
    ],
    [
      'wire west-arm to G1',
      'G1',
      '“G1” is for a relay contact of a protective device; “west-arm”, a drive, is wired to it.',
      'The drive does not run there, or destroys what it is wired to.',
      '“LA1”, “LA2”, “LB1” and “LB2”',
    ],
    [
      'wire old-beam supply to LA1 V0',
      'LA1',
      '“LA1” is for a drive; the supply of “old-beam” is wired to it.',
      'There is no supply on that terminal: the device does not work, or is destroyed.',
      '“V1” and “X1”',
    ],
    [
      'wire button test to V1 V0',
      'V1',
      '“V1” is for a supply for sensors and accessories; the test input of “button” is wired to it.',
      'That terminal tests nothing: a device that has failed is not found before the next movement.',
      '“X1”',
    ],
  ])('%s', (line, at, what, why, where) => {
    const text = pair(line);
    const finding = unfit(text);
    expect(text.slice(finding.start, finding.end)).toBe(at);
    expect([finding.what, finding.why, finding.remedy]).toEqual([what, why, `Wire it where “rowan-pair” takes it: ${where}.`]);
  });

  test('a return alone carries nothing, and what that means depends on what hangs on it', () => {
    const said = (line: string): string[] => {
      const text = pair(line);
      const { what, why, start, end } = unfit(text);
      return [text.slice(start, end), what, why];
    };
    const noReport = 'A return by itself carries no report: the panel would never hear of this device.';
    expect(said('wire relay-beam to G0')).toEqual(['G0', '“relay-beam” is wired only to “G0”, which is a return.', noReport]);
    expect(said('wire button to K0 G0')).toEqual(['K0 G0', '“button” is wired only to “K0” and “G0”, which are returns.', noReport]);
    expect(said('wire west-arm to PE')).toEqual([
      'PE',
      '“west-arm” is wired only to “PE”, which is an earth.',
      'Nothing feeds it there: the drive does not run.',
    ]);
    expect(said('wire self-beam to T0 G0 PE')).toEqual([
      'T0 G0 PE',
      '“self-beam” is wired only to “T0”, “G0” and “PE”, which are return and earth.',
      noReport,
    ]);
    expect(said('wire relay-beam supply to V0')).toEqual([
      'V0',
      '“relay-beam” is wired only to “V0”, which is a return.',
      'Nothing feeds it there: the device does not work.',
    ]);
    expect(said('wire relay-beam test to V0')).toEqual([
      'V0',
      '“relay-beam” is wired only to “V0”, which is a return.',
      'That terminal tests nothing: a device that has failed is not found before the next movement.',
    ]);
    expect(unfit(panelOf(['Q1 earth', 'Q2 earth', 'M1 motor'], 'wire west-arm to Q1 Q2')).what).toBe(
      '“west-arm” is wired only to “Q1” and “Q2”, which are earths.',
    );
  });

  test('it points to how a sensor reports and to what the terminal is for, each where it stands', () => {
    const places = (text: string): string[] => placesOf(text, unfit(text));
    expect(places(pair('wire relay-beam to E1 E0'))).toEqual(['E1', 'sensors.gate', 'panels.gate']);
    expect(places(pair('wire button to E1 E0'))).toEqual(['E1', 'panels.gate']);
    expect(places(pair('wire west-arm to G0'))).toEqual(['G0']);
    expect(places(pair('wire relay-beam to G0'))).toEqual(['G0', 'sensors.gate']);
    expect(places(pair('wire old-beam supply to LA1 V0'))).toEqual(['LA1', 'panels.gate']);
    expect(places(pair('wire bare-beam supply to V0'))).toEqual(['V0']);
    expect(places(panelOf(['E1 edge-input', 'G1 safety-input'], 'wire relay-beam to E1'))).toEqual([
      'E1',
      'sensors.gate',
      'terminal E1 edge-input',
    ]);
  });

  test('a panel with no terminal for a device is told as such', () => {
    expect(unfit(panelOf(['G0 common', 'G1 safety-input common G0', 'PE earth'], 'wire west-edge to G1 G0')).remedy).toBe(
      '“heron” has no terminal for it: choose another device, or another panel.',
    );
  });

  test.each([
    ['a device that is not there', pair('wire nobody to G0')],
    ['a terminal that is not there', pair('wire relay-beam to G7 G0')],
    ['a panel without a model', siteWith('panel main {\n  wire relay-beam to E1 E0\n  wire button to K0\n}\n')],
    ['a sensor of which nobody knows how it reports', pair('wire old-beam to E1 E0', 'wire bare-beam to W1')],
    ['an earth beside the terminal that a drive needs', pair('wire west-arm to PE LA1')],
    ['a return of another role', panelOf(['V1 supply-out', 'G1 safety-input common V1'], 'wire relay-beam to G1 V1')],
  ])('nothing is said of %s', (_, text) => expect(whats('terminal-unfit', text)).toEqual([]));
});

describe('terminal-used-twice', () => {
  const twice = (text: string): string[] => whats('terminal-used-twice', text);
  const taken = (terminal: string, first: string, second: string): string =>
    `Terminal “${terminal}” already takes “${first}”; “${second}” is wired to it as well.`;

  /** The same with controls that only stop the gate. */
  const stopping = (text: string): string => text.replaceAll('acts impulse', 'acts stop');

  test('what is there to be shared is shared', () => {
    expect(
      twice(
        pair(
          'wire relay-beam to G1 G0',
          'wire back-beam to G2 G0',
          'wire west-arm to LA1 LA2 PE',
          'wire east-arm to LB1 LB2 PE',
          'wire relay-beam supply to V1 V0',
          'wire back-beam supply to V1 V0',
          'wire relay-beam test to X1 V0',
          'wire back-beam test to X1 V0',
        ),
      ),
    ).toEqual([]);
    expect(twice(pair('wire button to K1 K0', 'wire key to K1 K0'))).toEqual([]);
    // A command input is closed to command, unless something else is said of it.
    expect(twice(panelOf(['K0 common', 'K1 command-input common K0'], 'wire button to K1 K0', 'wire key to K1 K0'))).toEqual([]);
    expect(twice(pair('wire west-edge to E1 E0', 'wire nobody to E1 E0'))).toEqual([]);
  });

  test('what is not is told for each further device, with the first of them', () => {
    expect(twice(stopping(pair('wire button to H1 H0', 'wire key to H1 H0', 'wire relay-beam to H1 H0')))).toEqual([
      taken('H1', 'button', 'key'),
      taken('H1', 'button', 'relay-beam'),
    ]);
    expect(
      twice(panelOf(['K0 common', 'K1 command-input normally-closed common K0'], 'wire button to K1 K0', 'wire key to K1 K0')),
    ).toEqual([taken('K1', 'button', 'key')]);
    expect(twice(pair('wire west-arm to LA1 LA2', 'wire east-arm to LA1 LA2'))).toEqual([
      taken('LA1', 'west-arm', 'east-arm'),
      taken('LA2', 'west-arm', 'east-arm'),
    ]);
  });

  test('why depends on the contact and on what the terminal is for', () => {
    const why = (text: string): string | undefined => found('terminal-used-twice', text)[0]?.why;
    expect(why(pair('wire relay-beam to G1 G0', 'wire back-beam to G1 G0'))).toBe(
      'Side by side, “relay-beam” keeps the input closed when “back-beam” opens: the panel would not see either of them.',
    );
    expect(why(pair('wire west-arm to LA1', 'wire east-arm to LA1'))).toBe(
      'Two drives on one output share its current and its limits; the panel cannot stop one of them.',
    );
    expect(why(panelOf(['G0 common', 'G1 safety-input common G0'], 'wire relay-beam to G1 G0', 'wire back-beam to G1 G0'))).toBe(
      'The panel cannot tell which of the two reports.',
    );
  });

  test('the same line twice, the same wire twice, and two conductors of one device are three things', () => {
    const text = pair('wire button to K1 K0', 'wire button to K1 K0');
    const finding = only('terminal-used-twice', text);
    expect(finding.what).toBe('“button” is wired to “K1” already.');
    expect([finding.start, finding.related[0]?.start]).toEqual([text.lastIndexOf('K1'), text.indexOf('K1')]);
    expect(finding.related[0]?.message).toBe('“button” is wired to it here');

    const wire = only('terminal-used-twice', pair('wire button to K1 K1'));
    expect([wire.what, wire.related[0]?.message]).toEqual(['This wire of “button” names “K1” twice.', 'named here first']);

    // Its supply is another conductor than its report, and does not belong there at all.
    expect(twice(pair('wire self-beam to T1 T0', 'wire self-beam supply to T1 T0'))).toEqual([]);
    // Its test input is another conductor than its supply: a terminal of both kinds is there to be shared.
    expect(twice(pair('wire relay-beam supply to X1 V0', 'wire relay-beam test to X1 V0'))).toEqual([]);
  });

  test('a device that does not belong there at all is reported for that alone', () => {
    expect(twice(pair('wire relay-beam to G1 G0', 'wire west-edge to G1 G0'))).toEqual([]);
    expect(twice(pair('wire west-edge to G1 G0', 'wire relay-beam to G1 G0'))).toEqual([]);
  });

  test('nothing is said of terminals that are not there', () => {
    expect(twice(pair('wire relay-beam to G7 G0', 'wire back-beam to G7 G0'))).toEqual([]);
    expect(twice(siteWith('panel main {\n  wire relay-beam to G1 G0\n  wire back-beam to G1 G0\n}\n'))).toEqual([]);
  });

  test('two panels of one model have terminals of their own', () => {
    expect(
      twice(
        siteWith(
          'panel main : rowan-pair {\n  wire relay-beam to G1 G0\n}\npanel gatehouse : rowan-pair {\n  wire back-beam to G1 G0\n}\n',
        ),
      ),
    ).toEqual([]);
  });
});

describe('terminal-unknown', () => {
  const unknown = (text: string): Finding => only('terminal-unknown', text);
  const meant = ({ fixes }: Finding): string[] => fixes.map((fix) => fix.edits[0]?.text ?? '');
  const listOf = (analysis: Analysis): string[] =>
    analysis.findings.flatMap((finding) => (finding.rule === 'terminal-unknown' ? [finding.remedy] : []));

  test('a model without terminals asks for them, and guesses nothing', () => {
    const finding = unknown(
      siteWith('panel-model heron "Panel" {\n  leaves 1\n}\npanel main : heron {\n  accessory "siren" draws 20 mA from G1\n}\n'),
    );
    expect(finding.what).toBe('“heron” has no terminal “G1”.');
    expect(finding.remedy).toBe('Add the terminals to the model.');
    expect(finding.fixes).toEqual([]);
  });

  test('where nothing is near, the terminals are listed and none is guessed', () => {
    expect(listOf(judge(panelOf(['G0 common', 'G1 safety-input common G0'], 'wire relay-beam to somewhere G0')))).toEqual([
      'Write one of its terminals: G0, G1.',
    ]);
  });

  test('up to three guesses are made, all of them named; of more none helps', () => {
    const inputs = (count: number): string[] => Array.from({ length: count }, (_, i) => `S${i + 2} safety-input`);
    const three = unknown(panelOf(inputs(3), 'wire relay-beam to S9'));
    expect(meant(three)).toEqual(['S2', 'S3', 'S4']);
    expect(three.remedy).toBe('Write one of its terminals: S2, S3, S4. Perhaps “S2” or “S3” or “S4” is meant.');
    const four = unknown(panelOf(inputs(4), 'wire relay-beam to S9'));
    expect(meant(four)).toEqual([]);
    expect(four.remedy).toBe('Write one of its terminals: S2, S3, S4, S5.');
  });

  test('a terminal that cannot take the device is not guessed, nor one that stands on the line already', () => {
    const terminals = ['Z0 common', 'Z1 motor', 'Z2 safety-input', 'Z3 safety-input'];
    expect(meant(unknown(panelOf(terminals, 'wire relay-beam to Z2 Z9')))).toEqual(['Z0', 'Z3']);
    expect(meant(unknown(panelOf(terminals, 'wire west-arm to Z9')))).toEqual(['Z0', 'Z1']);
    // A link joins what it likes.
    expect(meant(unknown(panelOf(['Z1 motor', 'Z2 safety-input', 'Z3 safety-input'], 'link Z3 Z9')))).toEqual(['Z1', 'Z2']);
  });

  test('it points to the name of the model and to the model itself', () => {
    const text = panelOf(['G0 common', 'G1 safety-input common G0'], 'link G1 Q');
    expect(placesOf(text, unknown(text))).toEqual(['Q', 'heron', 'panel-model heron']);
  });

  test('nothing is said where the model may have the terminal, or is not known', () => {
    expect(whats('terminal-unknown', panelOf(['G0 common', 'G1 safty-input'], 'link G1 G0'))).toEqual([]);
    expect(whats('terminal-unknown', siteWith('panel main {\n  link G1 G0\n  accessory "siren" draws 20 mA from G1\n}\n'))).toEqual([]);
  });

  test('a very long name is looked at from its beginning', () => {
    const long = 'G'.repeat(64);
    expect(meant(unknown(panelOf([`${long}1 safety-input`], `wire relay-beam to ${long}${'X'.repeat(40)}`)))).toEqual([`${long}1`]);
  });
});
