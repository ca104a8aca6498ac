import { type BlockOfFile, choice, date, quantity, ref, text } from '../spec.ts';
import { directionOptions } from './shared.ts';

export const block = {
  doc: 'Forces measured on a day. A file may hold several: of a point those of the last day count on which it was measured in full, and all after it.',
  place: 90,
  belongs: 'site',
  named: false,
  example:
    'measured {\n  on 2026-05-14\n  by "KL"\n  instrument "force gauge 3" calibrated 2026-02-01\n' +
    '  force west closing gap 300 mm height 900 mm peak 310 N 305 N 312 N after-750-ms 96 N 90 N 94 N after-5-s 12 N 10 N 11 N\n}',
  lines: {
    on: {
      safety: true,
      doc: 'The day.',
      required: true,
      example: 'on 2026-05-14',
      slots: { value: date({ doc: 'The day.' }) },
    },
    by: {
      doc: 'Who measured, as initials.',
      required: true,
      example: 'by "KL"',
      slots: { value: text({ doc: 'Initials.' }) },
    },
    instrument: {
      doc: 'What was measured with, and when it was last calibrated.',
      example: 'instrument "force gauge 3" calibrated 2026-02-01',
      slots: {
        what: text({ doc: 'The instrument, so that it can be told from others.' }),
        calibrated: date({ doc: 'The day of its last calibration.', after: 'calibrated', optional: true }),
      },
    },
    force: {
      safety: true,
      doc:
        'Readings at one point of a leaf. Where several readings stand behind one another they are repeats, in the same order ' +
        'everywhere on the line.',
      many: true,
      example: 'force west closing gap 300 mm height 900 mm peak 310 N 305 N 312 N after-750-ms 96 N 90 N 94 N after-5-s 12 N 10 N 11 N',
      source: 'EN 12453:2017, Annexes A and C',
      slots: {
        leaf: ref('leaf', { doc: 'The leaf.' }),
        movement: choice(directionOptions, { doc: 'Which movement.' }),
        gap: quantity('length', 0.005, 10, {
          doc: 'Distance, when the leaf strikes, between its closing edge and what it closes against.',
          after: 'gap',
        }),
        height: quantity('length', 0, 10, { doc: 'Height above the bottom of the leaf.', after: 'height' }),
        peak: quantity('force', 0, 20_000, { doc: 'Greatest force.', after: 'peak', many: true }),
        static: quantity('force', 0, 20_000, {
          doc: 'Greatest force later than 0.75 s after the impact.',
          after: 'after-750-ms',
          many: true,
        }),
        end: quantity('force', 0, 20_000, { doc: 'Greatest force later than 5 s after the impact.', after: 'after-5-s', many: true }),
      },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
