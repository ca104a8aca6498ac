import { type BlockOfFile, choice, count, name, quantity, range, ref, text, tolerance } from '../spec.ts';
import { contactOptions, deg, doubleInsulated, safetyLines, switchingOptions } from './shared.ts';

export const block = {
  doc: 'What a control panel can do: its terminals, selectors, adjusters, indicators and capabilities.',
  place: 110,
  belongs: 'model',
  named: true,
  title: true,
  example:
    'panel-model MODEL "What it is" {\n  supply 230 V\n  leaves 2\n  terminal E0 common\n' +
    '  terminal E1 edge-input common E0 terminator 8.2 kohm\n}',
  lines: {
    supply: {
      doc: 'The supply that the panel is made for.',
      example: 'supply 230 V',
      slots: { voltage: quantity('voltage', 6, 690, { doc: 'Nominal voltage.' }) },
    },
    'double-insulated': doubleInsulated,
    leaves: {
      doc: 'How many leaves it can drive.',
      example: 'leaves 2',
      slots: { value: count(1, 4, { doc: 'Number of leaves.' }) },
    },
    terminal: {
      safety: true,
      doc: 'A terminal: its name, what it is for, and how it wants to be wired.',
      many: true,
      example: 'terminal S1 safety-input normally-closed common S0',
      slots: {
        name: name({
          doc: 'Its name, as printed on the panel; in quotation marks where it does not begin with a letter, as “"14"”.',
          asPrinted: true,
        }),
        role: choice(
          {
            'supply-in': 'the feed of the panel',
            earth: 'protective earth',
            motor: 'a drive',
            common: 'the return of the inputs that name it',
            'command-input': 'a control that moves the gate',
            'stop-input': 'an emergency or safety stop',
            'safety-input': 'a relay contact of a protective device',
            'edge-input': 'a resistive edge, or a chain of them',
            'two-wire-input': 'self-checking sensors on two wires',
            'supply-out': 'a supply for sensors and accessories',
            'test-output': 'a signal that tests a protective device before a movement',
            'lamp-output': 'a warning lamp',
            'lock-output': 'a lock',
          },
          { doc: 'What it is for.' },
        ),
        contact: choice(contactOptions, { doc: 'The contact that an input expects.', optional: true }),
        common: ref('terminal', { doc: 'The terminal that an input returns to.', after: 'common', optional: true }),
        terminator: quantity('resistance', 100, 1e6, {
          doc: 'The resistance that a resistive input expects when all is well.',
          after: 'terminator',
          optional: true,
        }),
      },
    },
    output: {
      doc: 'What an output can give; terminals that share one supply stand on one line.',
      many: true,
      example: 'output V1 gives 0.5 A at 24 V',
      slots: {
        terminals: ref('terminal', { doc: 'The terminal, or several of one supply.', many: true }),
        current: quantity('current', 0.001, 100, { doc: 'The greatest current.', after: 'gives' }),
        voltage: quantity('voltage', 3, 690, { doc: 'The voltage.', after: 'at' }),
      },
    },
    standby: {
      doc: 'The current that the panel itself draws from its battery while nothing moves.',
      example: 'standby 60 mA',
      slots: { value: quantity('current', 0, 10, { doc: 'Current.' }) },
    },
    battery: {
      doc: 'Nominal voltage of the battery that it is made for. Not stated means that of its motor outputs.',
      example: 'battery 24 V',
      slots: { voltage: quantity('voltage', 5, 120, { doc: 'Voltage.' }) },
    },
    window: {
      safety: true,
      doc: 'The resistances at a resistive input that the panel takes for an edge at rest.',
      many: true,
      example: 'window E1 6.5 kohm .. 10.5 kohm',
      slots: { terminal: ref('terminal', { doc: 'The input.' }), value: range(['resistance'], { doc: 'From the least to the greatest.' }) },
    },
    measures: {
      doc: 'How a resistive input measures: a resistor from a voltage to the input, the loop from the input to its common.',
      many: true,
      example: 'measures E1 over 8.2 kohm ± 1 % at 5 V',
      slots: {
        terminal: ref('terminal', { doc: 'The input.' }),
        resistor: quantity('resistance', 10, 1e6, { doc: 'The resistor in the panel.', after: 'over' }),
        tolerance: tolerance({ doc: 'Its tolerance. Not stated means ± 5 %.', fallback: 0.05 }),
        voltage: quantity('voltage', 1, 60, { doc: 'The voltage.', after: 'at' }),
      },
    },
    'tests-relay-outputs': {
      safety: true,
      doc: 'Before each movement it tests the protective devices that report through a relay contact to a safety input.',
      example: 'tests-relay-outputs',
      slots: {},
    },
    reaction: {
      safety: true,
      doc:
        'The longest time from the moment a control is let go, or a stop opens, until the panel has told the drives to stop. What it takes ' +
        'after a sensor has tripped stands with the sensor.',
      example: 'reaction 60 ms',
      slots: { value: quantity('time', 0.001, 5, { doc: 'Time.' }) },
    },
    'registers-sensors': {
      safety: true,
      doc: 'It learns its sensors once, and from then on heeds those that it has learnt.',
      example: 'registers-sensors',
      slots: {},
    },
    'output-relay': {
      safety: true,
      doc: 'What cuts off the drive, where its maker declares no number for it: a number known from memory is then reckoned with.',
      example: 'output-relay relay-full-load',
      source: 'EN ISO 13849-1, Annex C, Table C.1 (from memory)',
      slots: { value: choice(switchingOptions, { doc: 'The kind of part, and how hard it is used.' }) },
    },
    ...safetyLines,
  },
  blocks: {
    selector: {
      doc: 'A switch or a menu entry with a few positions.',
      named: true,
      title: true,
      example:
        'selector reply "What a command does" {\n  option steps "open, stop, close, stop" acts impulse\n' +
        '  option closes-alone "closes by itself after the dwell" acts automatic\n}',
      lines: {
        option: {
          doc: 'One position of the selector.',
          many: true,
          safety: true,
          example: 'option steps "open, stop, close, stop" acts impulse',
          slots: {
            name: name({ doc: 'Its name.' }),
            meaning: text({ doc: 'What the panel does in it.', optional: true }),
            acts: choice(
              {
                'hold-to-run': 'the gate moves only while a command is held',
                impulse: 'the gate moves when it is commanded, and closes only then',
                automatic: 'the gate closes by itself',
                any: 'how the gate is commanded does not depend on it',
              },
              {
                doc: 'How the gate is commanded in this position. Not stated means that nobody knows, and so it is not judged.',
                after: 'acts',
                optional: true,
              },
            ),
          },
        },
      },
      blocks: {},
    },
    adjuster: {
      doc: 'A rotary adjuster, and what its positions mean.',
      named: true,
      title: true,
      example: 'adjuster dwell-dial "Time open" {\n  sets dwell\n  range 2 s .. 120 s\n  sweep 270 deg\n  curve linear\n}',
      lines: {
        sets: {
          doc: 'What it adjusts.',
          required: true,
          example: 'sets dwell',
          slots: {
            value: choice(
              {
                dwell: 'the time open before it closes by itself',
                'lag-opening': 'the lag between the leaves when opening',
                'lag-closing': 'the lag between the leaves when closing',
                seat: 'the time the drives push on at the stops',
                'slow-zone': 'the share of the travel that is run slowly',
                force: 'how hard the drives push, as a share of the most that they can',
                speed: 'the speed outside the slow zones',
              },
              { doc: 'The fact of `motion` that it sets.' },
            ),
          },
        },
        range: {
          doc: 'The values at its two stops, low stop first.',
          required: true,
          example: 'range 2 s .. 120 s',
          slots: { value: range(['time', 'ratio'], { doc: 'From the low stop to the high stop.' }) },
        },
        sweep: {
          doc: 'How far it turns between its stops. Not stated means 270 deg.',
          example: 'sweep 270 deg',
          slots: { value: quantity('angle', 30 * deg, 20 * 360 * deg, { doc: 'Angle between the stops.', fallback: 270 * deg }) },
        },
        curve: {
          doc: 'How the value grows between the stops.',
          example: 'curve linear',
          slots: { value: choice({ linear: 'in equal steps', logarithmic: 'in equal ratios' }, { doc: 'The curve.', fallback: 'linear' }) },
        },
      },
      blocks: {},
    },
    indicator: {
      doc: 'A light on the panel, and what its states mean.',
      named: true,
      title: true,
      example: 'indicator I1 "edge" {\n  shows steady "the edge is at rest"\n  shows dark "the edge is pressed or its loop is open"\n}',
      lines: {
        shows: {
          doc: 'One state of the light and its meaning.',
          many: true,
          example: 'shows steady "the edge is at rest"',
          slots: {
            state: choice({ dark: 'not lit', steady: 'lit without a break', blinking: 'on and off' }, { doc: 'The state.' }),
            meaning: text({ doc: 'What it means.' }),
          },
        },
      },
      blocks: {},
    },
  },
} as const satisfies BlockOfFile;
