import { type BlockOfFile, choice, quantity, range } from '../spec.ts';
import { deg, doubleInsulated, safetyLines } from './shared.ts';

export const block = {
  doc: 'What a drive can do.',
  place: 120,
  belongs: 'model',
  named: true,
  title: true,
  example: 'drive-model MODEL "What it is" {\n  kind linear-ram\n  stroke 350 mm\n  speed 16 mm/s\n}',
  lines: {
    kind: {
      doc: 'How it moves the leaf.',
      required: true,
      example: 'kind linear-ram',
      slots: {
        value: choice(
          {
            'linear-ram': 'a ram between the post and the leaf',
            'articulated-arm': 'a shaft with two arms to the leaf',
            direct: 'a shaft that is the hinge itself, above or under the ground',
            rack: 'a pinion that drives a rack on a sliding leaf',
          },
          { doc: 'The kind of drive.' },
        ),
      },
    },
    stroke: {
      doc: 'Usable stroke of a linear ram.',
      example: 'stroke 350 mm',
      slots: { value: quantity('length', 0.05, 2, { doc: 'Stroke.' }) },
    },
    speed: {
      safety: true,
      doc: 'Full speed of a ram’s rod or of a rack.',
      example: 'speed 16 mm/s',
      slots: { value: quantity('speed', 0.001, 2, { doc: 'Speed.' }) },
    },
    'shaft-speed': {
      safety: true,
      doc: 'Full speed of the shaft of an articulated-arm or direct drive.',
      example: 'shaft-speed 9 deg/s',
      slots: { value: quantity('angular speed', 0.5 * deg, 90 * deg, { doc: 'Speed.' }) },
    },
    arms: {
      doc: 'Lengths of the two arms of an articulated-arm drive, pin to pin: the one on the shaft, then the one on the leaf.',
      example: 'arms 320 mm by 280 mm',
      slots: {
        drive: quantity('length', 0.05, 2, { doc: 'The arm on the shaft.' }),
        link: quantity('length', 0.05, 2, { doc: 'The arm on the leaf.', after: 'by' }),
      },
    },
    rotation: {
      doc: 'The greatest angle that the shaft of a direct drive turns.',
      example: 'rotation 110 deg',
      slots: { value: quantity('angle', 10 * deg, 360 * deg, { doc: 'Angle.' }) },
    },
    'senses-obstacles': {
      safety: true,
      doc: 'It has entrapment sensing of its own, built in and proven by its maker (type A in North America).',
      example: 'senses-obstacles',
      source: 'UL 325',
      slots: {},
    },
    'limits-force': {
      safety: true,
      doc: 'It limits its own force by an adjustable clutch or a pressure relief (type C in North America, for swing leaves).',
      example: 'limits-force',
      source: 'UL 325 (from memory)',
      slots: {},
    },
    ramp: {
      doc: 'Time from standstill to full speed, and from full speed to standstill. Not stated means none.',
      example: 'ramp 0.8 s',
      slots: { value: quantity('time', 0, 10, { doc: 'Time.', fallback: 0 }) },
    },
    'slow-speed': {
      safety: true,
      doc: 'Speed in a slow zone as a share of the full speed. Not stated means 40 % for times; what protects people is not judged by it.',
      example: 'slow-speed 40 %',
      slots: { value: quantity('ratio', 0.05, 1, { doc: 'Share of the full speed.', fallback: 0.4 }) },
    },
    thrust: {
      safety: true,
      doc: 'What a ram or a rack pushes with: the greatest that it can be set to, and the least.',
      example: 'thrust 2000 N least 300 N',
      slots: {
        greatest: quantity('force', 10, 100_000, { doc: 'The greatest.' }),
        least: quantity('force', 0, 100_000, {
          doc: 'The least that it can be set to. Not stated means that it can be set down to nothing.',
          after: 'least',
          optional: true,
          fallback: 0,
        }),
      },
    },
    torque: {
      safety: true,
      doc: 'What the shaft of an articulated-arm or direct drive turns with: the greatest that it can be set to, and the least.',
      example: 'torque 300 N·m least 60 N·m',
      slots: {
        greatest: quantity('torque', 1, 50_000, { doc: 'The greatest.' }),
        least: quantity('torque', 0, 50_000, {
          doc: 'The least that it can be set to. Not stated means that it can be set down to nothing.',
          after: 'least',
          optional: true,
          fallback: 0,
        }),
      },
    },
    'stops-in': {
      safety: true,
      doc: 'Time from full speed to standstill when it is told to stop at once; from a lower speed it takes as much less.',
      example: 'stops-in 200 ms',
      slots: { value: quantity('time', 0.001, 10, { doc: 'Time.' }) },
    },
    seat: {
      doc: 'How long its maker lets it go on pushing when the leaf has reached its stop: the least and the greatest time.',
      example: 'seat 0.5 s .. 1.5 s',
      slots: { value: range(['time'], { doc: 'From the least to the greatest.' }) },
    },
    'widest-leaf': {
      safety: true,
      doc: 'The widest leaf that its maker allows.',
      example: 'widest-leaf 3.5 m',
      slots: { value: quantity('length', 0.3, 20, { doc: 'Width.' }) },
    },
    'heaviest-leaf': {
      safety: true,
      doc: 'The heaviest leaf that its maker allows.',
      example: 'heaviest-leaf 350 kg',
      slots: { value: quantity('mass', 5, 5000, { doc: 'Mass.' }) },
    },
    consumes: {
      doc: 'The current that it draws while it moves the leaf.',
      example: 'consumes 5 A',
      slots: { value: quantity('current', 0.01, 200, { doc: 'Current.' }) },
    },
    motor: {
      doc: 'What the plate of a motor on the mains says: its rated output, its efficiency and its power factor.',
      example: 'motor 370 W efficiency 70 % power-factor 80 %',
      slots: {
        output: quantity('power', 1, 100_000, { doc: 'Rated output.' }),
        efficiency: quantity('ratio', 0.05, 1, { doc: 'Efficiency.', after: 'efficiency' }),
        factor: quantity('ratio', 0.05, 1, { doc: 'Power factor.', after: 'power-factor' }),
      },
    },
    'least-voltage': {
      doc: 'The least voltage at which it works.',
      example: 'least-voltage 21 V',
      slots: { value: quantity('voltage', 1, 690, { doc: 'Voltage.' }) },
    },
    'double-insulated': doubleInsulated,
    duty: {
      doc: 'Intermittent duty that its motor is rated for: the share of each ten minutes that it may run (S3).',
      example: 'duty 30 %',
      source: 'IEC 60034-1, duty type S3',
      slots: { value: quantity('ratio', 0.01, 1, { doc: 'Share of the time.' }) },
    },
    ...safetyLines,
  },
  blocks: {},
} as const satisfies BlockOfFile;
