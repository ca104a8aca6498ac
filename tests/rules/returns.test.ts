// What is said of the ends of a wire: the common that an input returns to, and the contact that it expects.
import { describe, expect, test } from 'vitest';
import { applyEdits, judge, lineOf } from '../kit/pages.ts';

const model = `panel-model heron "One, two and more" {
  terminal A0 common
  terminal A1 safety-input normally-closed common A0
  terminal A2 safety-input normally-closed common A0
  terminal B0 common
  terminal B1 safety-input normally-closed common B0
  terminal C0 common
  terminal D1 safety-input normally-closed
  terminal E0 common normally-open
  terminal F1 safety-input normally-closed common V0
  terminal V0 supply-out
  terminal M1 motor normally-open
  terminal K1 command-input normally-open common A0
}
`;
const text = (wire: string, more = ''): string =>
  `language 1\nuse "../library/sensors.gate"\n\n${model}\nsensor beam : finch-relay {\n  watches closing\n}\nsensor loop : finch-loop {\n  watches closing\n}\n${more}\npanel main : heron {\n  wire ${wire}\n}\n`;
const lineOfWire = (file: string): number => file.slice(0, file.indexOf('  wire ')).split('\n').length;
const said = (rule: string, file: string) => {
  const analysis = judge(file);
  const own = analysis.findings.filter((finding) => finding.rule === rule);
  for (const { start } of own) expect(lineOf(analysis, start)).toBe(lineOfWire(file));
  return own.map(({ start, end, what, remedy, related, fixes }) => ({
    at: file.slice(start, end),
    what,
    remedy,
    related: related.map(({ message, path, start: from, end: to }) => [message, path === undefined ? file.slice(from, to) : 'elsewhere']),
    mended: fixes.map(({ edits }) => applyEdits(file, edits).split('\n')[lineOfWire(file) - 1]?.trim()),
  }));
};
const nothing: readonly never[] = [];

describe('common-wrong', () => {
  const named = (input: string, line: string) => [`“${input}” names its common here`, line];

  test.each(['beam to A1 A0', 'beam to A0 A1', 'beam to A1 A2 A0', 'beam to A1 A0 B1 B0', 'beam to D1', 'beam to D1 C0', 'beam to A0 B0'])(
    'nothing is said of “%s”',
    (wire) => {
      expect(said('common-wrong', text(wire))).toEqual(nothing);
    },
  );

  test('the return that lacks is written behind the last end, as the others are', () => {
    const a1 = 'terminal A1 safety-input normally-closed common A0';
    const lacking = {
      at: 'A1',
      what: '“beam” is wired to “A1”, but its return is not wired: “A1” returns to “A0”.',
      remedy: 'Wire its return to “A0”.',
      related: [named('A1', a1)],
    };
    expect(said('common-wrong', text('beam to A1'))).toEqual([{ ...lacking, mended: ['wire beam to A1 A0'] }]);
    expect(said('common-wrong', text('beam to A1 A2'))).toEqual([{ ...lacking, mended: ['wire beam to A1 A2 A0'] }]);
    expect(said('common-wrong', text('beam to A1, A2'))).toEqual([{ ...lacking, mended: ['wire beam to A1, A2, A0'] }]);
    expect(said('common-wrong', text('beam to A1 D1'))).toEqual([{ ...lacking, mended: ['wire beam to A1 D1 A0'] }]);
  });

  test('the first input whose return lacks is the one that is named', () => {
    expect(said('common-wrong', text('beam to A1, A0, B1'))).toEqual([
      {
        at: 'B1',
        what: '“beam” is wired to “B1”, but its return is not wired: “B1” returns to “B0”.',
        remedy: 'Wire its return to “B0”.',
        related: [named('B1', 'terminal B1 safety-input normally-closed common B0')],
        mended: ['wire beam to A1, A0, B1, B0'],
      },
    ]);
    expect(said('common-wrong', text('beam to B1 A1')).map(({ at, mended }) => [at, mended])).toEqual([['B1', ['wire beam to B1 A1 B0']]]);
  });

  test('another common stands in place of the right one', () => {
    expect(said('common-wrong', text('beam to A1 C0 B1 B0'))).toEqual([
      {
        at: 'C0',
        what: '“beam” is wired to “A1” and “C0”, but “A1” returns to “A0”.',
        remedy: 'Wire it to “A0” in place of “C0”.',
        related: [['the input', 'A1'], named('A1', 'terminal A1 safety-input normally-closed common A0')],
        mended: ['wire beam to A1 A0 B1 B0'],
      },
    ]);
  });

  test('a common more than the inputs return to', () => {
    expect(said('common-wrong', text('beam to C0 A1 A0'))).toEqual([
      {
        at: 'C0',
        what: '“beam” is wired to “C0” as well, which no input of this wire returns to.',
        remedy: 'Leave out “C0”: “A1” returns to “A0”.',
        related: [named('A1', 'terminal A1 safety-input normally-closed common A0')],
        mended: [],
      },
    ]);
    // It may be the return of the input of which the model names none.
    expect(said('common-wrong', text('beam to A1 A0 D1 C0'))).toEqual(nothing);
  });

  test('what is wrong with the wire in a graver way is reported for that alone', () => {
    for (const wire of ['nobody to A1 C0', 'beam to A1 Z0', 'beam to M1 A1 C0', 'beam to A1 A1', 'beam to A1 C0 C0'])
      expect([wire, said('common-wrong', text(wire))]).toEqual([wire, nothing]);
  });
});

describe('contact-wrong', () => {
  test('each input that expects another contact is named', () => {
    const why = (input: string, line: string) => [
      ['the contact of “loop”', 'elsewhere'],
      [`what “${input}” expects`, line],
    ];
    expect(said('contact-wrong', text('loop to A1 A0 B1 B0')).map(({ at, what, related }) => [at, what, related])).toEqual([
      [
        'A1',
        '“A1” expects a normally-closed contact; “loop” has a normally-open one.',
        why('A1', 'terminal A1 safety-input normally-closed common A0'),
      ],
      [
        'B1',
        '“B1” expects a normally-closed contact; “loop” has a normally-open one.',
        why('B1', 'terminal B1 safety-input normally-closed common B0'),
      ],
    ]);
    expect(said('contact-wrong', text('loop to K1 A0'))).toEqual(nothing);
    expect(said('contact-wrong', text('beam to A1 A0'))).toEqual(nothing);
  });

  test('a contact on what is no input, and an input that cannot take the sensor, are not held against it', () => {
    // Of a common nothing is read; a motor, and for a beam the command of somebody, cannot take it at all.
    for (const wire of ['beam to A1 A0 E0', 'beam to M1 A0', 'beam to K1 A0', 'loop supply to A1 A0', 'loop test to A1 A0'])
      expect([wire, said('contact-wrong', text(wire))]).toEqual([wire, nothing]);
  });

  test('a model with a line that cannot be read may say the right thing', () => {
    const sensor = (contact: string) =>
      `sensor-model plain {\n  kind loop\n  output relay\n${contact}}\nsensor plain-loop : plain {\n  watches closing\n}\n`;
    expect(said('contact-wrong', text('plain-loop to K1 A0', sensor(''))).map(({ what, related }) => [what, related])).toEqual([
      [
        '“K1” expects a normally-open contact; “plain-loop” has a normally-closed one, as its model says nothing else.',
        [
          ['the contact of “plain-loop”', 'output relay'],
          ['what “K1” expects', 'terminal K1 command-input normally-open common A0'],
        ],
      ],
    ]);
    expect(said('contact-wrong', text('plain-loop to K1 A0', sensor('  contact normally-opn\n')))).toEqual(nothing);
    expect(said('contact-wrong', text('plain-loop to K1 A0', sensor('  contact normally-open\n')))).toEqual(nothing);
  });

  test('a sensor whose model is not there, or has no contact, is not held against an input', () => {
    expect(said('contact-wrong', text('bare to A1 A0', 'sensor bare {\n  watches closing\n}\n'))).toEqual(nothing);
    expect(
      said(
        'contact-wrong',
        text('dumb to A1 A0', 'sensor-model dumb {\n  kind loop\n  contact normally-open\n}\nsensor dumb : dumb {\n  watches closing\n}\n'),
      ),
    ).toEqual(nothing);
    expect(said('contact-wrong', text('edge to K1 A0', 'sensor edge : finch-edge {\n  watches closing\n}\n'))).toEqual(nothing);
  });
});
