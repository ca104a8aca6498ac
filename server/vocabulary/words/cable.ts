import { type BlockOfFile, choice, count, quantity, ref } from '../spec.ts';

export const block = {
  doc: 'A cable run: what it feeds, how long it is and what it carries.',
  place: 80,
  belongs: 'site',
  named: true,
  model: 'cable-model',
  example: 'cable beam-feed : MODEL {\n  feeds lower-beam\n  length 40 m\n  carries 0.3 A at 24 V\n}',
  lines: {
    feeds: {
      doc: 'What is at its far end: a device, or the panel that it brings the supply to.',
      example: 'feeds lower-beam',
      slots: { device: ref('load', { doc: 'A sensor, drive, control or panel.' }) },
    },
    length: {
      doc: 'Length of the run, one way.',
      required: true,
      example: 'length 40 m',
      slots: { value: quantity('length', 0.1, 2000, { doc: 'Length.' }) },
    },
    carries: {
      doc: 'The greatest current in it, and the voltage at its beginning.',
      required: true,
      example: 'carries 0.3 A at 24 V',
      slots: {
        current: quantity('current', 0.001, 100, { doc: 'Current.' }),
        voltage: quantity('voltage', 5, 690, { doc: 'Voltage.', after: 'at' }),
      },
    },
    lighting: {
      doc: 'It feeds lighting: less voltage may be lost.',
      example: 'lighting',
      source: 'BS 7671, Appendix 4, Table 4Ab',
      slots: {},
    },
    breaker: {
      safety: true,
      doc: 'The circuit breaker at its beginning.',
      example: 'breaker B 16 A',
      source: 'EN 60898-1',
      slots: {
        curve: choice(
          {
            B: 'trips at once from 5 times its rated current at the latest',
            C: 'trips at once from 10 times its rated current at the latest',
            D: 'trips at once from 20 times its rated current at the latest',
          },
          { doc: 'Its characteristic.' },
        ),
        rating: quantity('current', 0.5, 125, { doc: 'Its rated current.' }),
      },
    },
    fuse: {
      safety: true,
      doc: 'The fuse at its beginning, one for general use (gG).',
      example: 'fuse 10 A',
      source: 'IEC 60269-1',
      slots: { rating: quantity('current', 0.05, 125, { doc: 'Its rated current.' }) },
    },
    'residual-current': {
      safety: true,
      doc: 'The residual-current device at its beginning, or nearer to the supply.',
      example: 'residual-current 30 mA',
      source: 'EN 61008-1 and EN 61009-1',
      slots: { value: quantity('current', 0.005, 3, { doc: 'Its rated residual current.' }) },
    },
    ambient: {
      doc: 'The warmest that it gets around this cable. Not stated means 30 °C, or 20 °C in the ground.',
      example: 'ambient 35 °C',
      source: 'BS 7671, Table 4C1',
      slots: { value: quantity('temperature', 233.15, 353.15, { doc: 'Temperature.' }) },
    },
    method: {
      doc: 'How it is laid: the reference method of installation.',
      example: 'method C',
      source: 'BS 7671, Table 4A2',
      slots: {
        value: choice(
          {
            A: 'in conduit in an insulating wall',
            B: 'in conduit or trunking on a wall',
            C: 'clipped to a wall',
            D: 'in the ground, in a duct or by itself',
            E: 'in free air, or on a perforated tray',
            'over-ceiling': 'flat cable on a ceiling under insulation of up to 100 mm (method 100)',
            'under-insulation': 'flat cable on a ceiling under insulation of more than 100 mm (method 101)',
            'stud-wall-touching': 'flat cable in an insulated stud wall, touching the wall (method 102)',
            'stud-wall': 'flat cable in an insulated stud wall, not touching the wall (method 103)',
          },
          { doc: 'The method.' },
        ),
      },
    },
    grouped: {
      doc: 'How many loaded circuits run close together, this one with them.',
      example: 'grouped 3',
      source: 'BS 7671, Table 4C1',
      slots: { value: count(1, 9, { doc: 'Number of circuits.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
