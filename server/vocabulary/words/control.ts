import { type BlockOfFile, choice, quantity } from '../spec.ts';

export const block = {
  doc: 'A way to operate the gate: a button, a key switch, transmitters, a loop, a clock.',
  place: 50,
  belongs: 'site',
  device: true,
  named: true,
  example: 'control fobs {\n  by transmitter\n  acts impulse\n  sight none\n}',
  lines: {
    by: {
      safety: true,
      doc: 'What people operate it with.',
      example: 'by transmitter',
      slots: {
        value: choice(
          {
            'push-button': 'a fixed push button',
            'key-switch': 'a key switch, or similar, that keeps out who has no key',
            keypad: 'a keypad',
            transmitter: 'hand transmitters',
            intercom: 'an intercom or telephone',
            loop: 'a loop or detector that commands',
            clock: 'a clock or a building system',
          },
          { doc: 'The means.' },
        ),
      },
    },
    acts: {
      safety: true,
      doc: 'How the gate answers. Closing by itself after the dwell is automatic and need not be stated here.',
      required: true,
      example: 'acts impulse',
      source: 'EN 12453:2000, 5.5.1, Table 1',
      slots: {
        value: choice(
          {
            'hold-to-run': 'it moves only while the control is held',
            impulse: 'one command starts a whole movement',
            automatic: 'it moves without anybody commanding that movement',
            stop: 'it stops the gate, and moves nothing',
          },
          { doc: 'The kind of control.' },
        ),
      },
    },
    sight: {
      safety: true,
      doc: 'Whether the whole gate is in view from this control. Not stated means as the site says.',
      example: 'sight full',
      source: 'EN 12453:2000, 5.5.1, Table 1',
      slots: {
        value: choice(
          { full: 'the whole gate is in view', none: 'the gate, or a part of it, is out of view' },
          { doc: 'How much is in view.' },
        ),
      },
    },
    reach: {
      safety: true,
      doc: 'How far a fixed control is from any part of the moving gate.',
      example: 'reach 2 m',
      source: 'UL 325',
      slots: { value: quantity('length', 0, 1000, { doc: 'The least distance.' }) },
    },
    consumes: {
      doc: 'The current that it draws from the panel while nothing moves.',
      example: 'consumes 30 mA',
      slots: { value: quantity('current', 0, 20, { doc: 'Current.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
