import { type BlockOfFile, choice, quantity } from '../spec.ts';
import { contactOptions, doubleInsulated, safetyLines } from './shared.ts';

export const block = {
  doc: 'What a sensor is, and how it reports.',
  place: 130,
  belongs: 'model',
  named: true,
  title: true,
  example: 'sensor-model MODEL "What it is" {\n  kind beam\n  output relay\n  contact normally-closed\n  testable\n  measure D\n}',
  lines: {
    kind: {
      safety: true,
      doc: 'What it is.',
      required: true,
      example: 'kind beam',
      slots: {
        value: choice(
          {
            beam: 'a light beam from one side to the other',
            edge: 'a strip on an edge, which reports when it is pressed',
            curtain: 'a field that nobody can pass unseen',
            loop: 'a loop in the ground, which reports vehicles and not people',
          },
          { doc: 'The kind of sensor.' },
        ),
      },
    },
    output: {
      safety: true,
      doc: 'How it reports.',
      required: true,
      example: 'output relay',
      slots: {
        value: choice(
          {
            'two-wire': 'over the two wires that also feed it, checked without a break',
            relay: 'by a relay contact, which by itself is not checked',
            resistive: 'by the resistance of a loop with a terminator',
          },
          { doc: 'The kind of output.' },
        ),
      },
    },
    contact: {
      safety: true,
      doc: 'The relay contact that it offers.',
      example: 'contact normally-closed',
      slots: { value: choice(contactOptions, { doc: 'The contact.', fallback: 'normally-closed' }) },
    },
    testable: {
      safety: true,
      doc: 'It has a test input, or is tested by switching its supply, so that a panel can prove it before each movement.',
      example: 'testable',
      slots: {},
    },
    measure: {
      safety: true,
      doc: 'What it counts as in the safeguarding matrix.',
      example: 'measure D',
      source: 'EN 12453:2000, 5.5.1',
      slots: {
        value: choice(
          {
            C: 'it limits the force on a person whom the leaf touches',
            D: 'it detects a person who stands on the ground at one side of the gate; a supplement to C',
            E: 'it detects a person so that the moving leaf can touch nobody at all',
          },
          { doc: 'The letter of the measure.' },
        ),
      },
    },
    terminator: {
      safety: true,
      doc: 'The terminator that a resistive sensor is made for.',
      example: 'terminator 8.2 kohm',
      slots: { value: quantity('resistance', 100, 1e6, { doc: 'Resistance.' }) },
    },
    reaction: {
      safety: true,
      doc: 'Time from the moment it trips until the drive is told to stop, the panel’s own time with it.',
      example: 'reaction 50 ms',
      slots: { value: quantity('time', 0, 5, { doc: 'Time.' }) },
    },
    deformation: {
      safety: true,
      doc: 'How far an edge still gives after it has tripped, before it is hard.',
      example: 'deformation 60 mm',
      source: 'ASR A1.7, section 6',
      slots: { value: quantity('length', 0.001, 1, { doc: 'Distance.' }) },
    },
    reach: {
      doc: 'The greatest distance that a beam spans.',
      example: 'reach 12 m',
      slots: { value: quantity('length', 0.1, 100, { doc: 'Distance.' }) },
    },
    consumes: {
      doc: 'The current that it draws.',
      example: 'consumes 40 mA',
      slots: { value: quantity('current', 0, 20, { doc: 'Current.' }) },
    },
    'least-voltage': {
      doc: 'The least voltage at which it works.',
      example: 'least-voltage 12 V',
      slots: { value: quantity('voltage', 1, 690, { doc: 'Voltage.' }) },
    },
    'double-insulated': doubleInsulated,
    'pressed-resistance': {
      safety: true,
      doc: 'The greatest resistance of a resistive edge while it is pressed. Not stated means none.',
      example: 'pressed-resistance 500 ohm',
      slots: { value: quantity('resistance', 0, 1e6, { doc: 'Resistance.', fallback: 0 }) },
    },
    ...safetyLines,
  },
  blocks: {},
} as const satisfies BlockOfFile;
