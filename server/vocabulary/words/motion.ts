import { type BlockOfFile, choice, quantity, ref } from '../spec.ts';
import { directionOptions } from './shared.ts';

export const block = {
  doc: 'How the gate is to move. One in a file.',
  place: 70,
  belongs: 'site',
  named: false,
  single: true,
  example: 'motion {\n  slow-zone last 10 %\n  seat 1.5 s\n  lag opening 3 s\n  lag closing 4 s\n  dwell 25 s\n}',
  lines: {
    speed: {
      safety: true,
      doc: 'Speed outside the slow zones, as a share of what the drives can do. Not stated means all of it.',
      example: 'speed 80 %',
      slots: { value: quantity('ratio', 0.1, 1, { doc: 'Share of the full speed.', fallback: 1 }) },
    },
    force: {
      safety: true,
      doc: 'How hard the drives push, as a share of the most that they can.',
      example: 'force 60 %',
      slots: { value: quantity('ratio', 0.02, 1, { doc: 'Share of the greatest thrust or torque.' }) },
    },
    'slow-zone': {
      safety: true,
      doc: 'The last part of each movement, run slowly.',
      example: 'slow-zone last 10 % at 40 %',
      slots: {
        last: quantity('ratio', 0, 1, { doc: 'Share of the drive’s travel.', after: 'last' }),
        speed: quantity('ratio', 0.05, 1, {
          doc: 'Speed in it, as a share of the drive’s full speed. Not stated means what the drive’s model says.',
          after: 'at',
          optional: true,
        }),
      },
    },
    seat: {
      doc: 'How long the drives go on pushing when the leaves have reached their stops.',
      example: 'seat 1.5 s',
      slots: { value: quantity('time', 0, 30, { doc: 'Time.' }) },
    },
    lag: {
      safety: true,
      doc: 'How much later the second leaf starts. Opening: after the covering leaf; closing: after the covered one.',
      many: true,
      example: 'lag opening 3 s',
      slots: {
        movement: choice(directionOptions, { doc: 'Which movement.' }),
        time: quantity('time', 0, 120, { doc: 'Time between the two starts.' }),
      },
    },
    order: {
      safety: true,
      doc: 'Which leaf starts first, and which second. Not stated means as the overlap asks.',
      many: true,
      example: 'order opening west east',
      slots: {
        movement: choice(directionOptions, { doc: 'Which movement.' }),
        leaves: ref('leaf', { doc: 'The leaves in the order they start.', many: true }),
      },
    },
    dwell: {
      safety: true,
      doc: 'How long the gate stands open before it closes by itself. Leave it out where it must not.',
      example: 'dwell 25 s',
      slots: { value: quantity('time', 0, 3600, { doc: 'Time from fully open to the start of closing.' }) },
    },
    'pre-warning': {
      doc: 'How long the lamp flashes before a leaf moves.',
      example: 'pre-warning 2 s',
      slots: { value: quantity('time', 0, 30, { doc: 'Time.', fallback: 0 }) },
    },
    pedestrian: {
      safety: true,
      doc: 'A part opening for people on foot: which leaf, how far, and how long it stays open.',
      example: 'pedestrian west to 60 % dwell 10 s',
      slots: {
        leaf: ref('leaf', { doc: 'The leaf that opens.' }),
        share: quantity('ratio', 0.05, 1, { doc: 'Share of its whole travel.', after: 'to', optional: true, fallback: 1 }),
        dwell: quantity('time', 0, 3600, {
          doc: 'How long it stands open before it closes by itself. Leave it out where it must not.',
          after: 'dwell',
          optional: true,
        }),
      },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
