import { type BlockOfFile, choice, count, date, quantity } from '../spec.ts';
import { hour, requiredLevel } from './shared.ts';

export const block = {
  doc: 'The place: which rules hold there, who uses the gate, what supplies it. One in a file.',
  place: 10,
  belongs: 'site',
  named: false,
  title: true,
  single: true,
  example: 'site "Name of the place" {\n  stage draft\n  rules europe\n  users limited\n  sight none\n  supply 230 V 50 Hz\n}',
  lines: {
    stage: {
      safety: true,
      doc:
        'How far the file has come. In a draft what is not judged is never an error, and every output says that it is one. ' +
        'Not stated means built.',
      example: 'stage draft',
      slots: {
        value: choice(
          { draft: 'a survey or a plan; facts are still to come', built: 'the gate is there, and the file says how it is' },
          { doc: 'Which stage.', fallback: 'built' },
        ),
      },
    },
    rules: {
      safety: true,
      doc: 'The body of rules that the site is judged by.',
      required: true,
      example: 'rules europe',
      slots: {
        value: choice(
          {
            europe: 'EN 12453: minimum level of safeguarding by kind of control and of user',
            'north-america': 'UL 325 and ASTM F2200: usage classes, two means of entrapment protection',
          },
          { doc: 'Which rules.' },
        ),
      },
    },
    users: {
      safety: true,
      doc: 'Who can be near the gate while it moves. The type of use in the safeguarding matrix.',
      required: true,
      example: 'users public',
      source: 'EN 12453:2000, 5.5.1, Table 1',
      slots: {
        value: choice(
          {
            trained: 'only people trained on this gate; no access for anybody else (type 1)',
            limited: 'a limited group, told how it works; the gate borders a public area (type 2)',
            public: 'anybody (type 3)',
          },
          { doc: 'Which people.' },
        ),
      },
    },
    sight: {
      safety: true,
      doc: 'Whether whoever operates the gate sees all of it from there. Not stated means not seen.',
      example: 'sight none',
      source: 'EN 12453:2000, 5.5.1, Table 1',
      slots: {
        value: choice(
          { full: 'the whole gate is in view', none: 'the gate, or a part of it, is out of view' },
          { doc: 'How much is in view.', fallback: 'none' },
        ),
      },
    },
    'usage-class': {
      safety: true,
      doc: 'Under the rules of North America: what the gate serves.',
      example: 'usage-class II',
      source: 'ASTM F2200 (usage classes)',
      slots: {
        value: choice(
          {
            I: 'the home of one to four families',
            II: 'commercial or multi-family premises, a hotel, a garage, a shop: open to the public',
            III: 'industrial premises, not open to the public',
            IV: 'guarded or restricted premises, watched by security staff',
          },
          { doc: 'The class.' },
        ),
      },
    },
    'pedestrian-entrance': {
      safety: true,
      doc: 'Where people on foot pass.',
      example: 'pedestrian-entrance separate',
      source: 'CPSC, Operation Safe Gate, 2018',
      slots: {
        value: choice(
          {
            separate: 'through an entrance of their own, so that nobody walks through the powered gate',
            shared: 'through the powered gate, with the vehicles',
            none: 'nobody comes here on foot',
          },
          { doc: 'Which way.' },
        ),
      },
    },
    signs: {
      doc: 'Signs that warn of the moving gate: on how many of its two sides they can be seen.',
      example: 'signs both-sides',
      source: 'UL 325',
      slots: {
        value: choice({ 'both-sides': 'on both sides', 'one-side': 'on one side only', none: 'there are none' }, { doc: 'Where.' }),
      },
    },
    supply: {
      doc: 'What feeds the installation.',
      example: 'supply 230 V 50 Hz',
      slots: {
        voltage: quantity('voltage', 6, 690, { doc: 'Nominal voltage.' }),
        frequency: quantity('frequency', 16, 60, { doc: 'Frequency; leave it out for direct current.', optional: true }),
      },
    },
    'private-supply': {
      doc: 'The supply is its own: a transformer or generator of the premises. More voltage may then be lost on the way.',
      example: 'private-supply',
      source: 'BS 7671, Appendix 4, Table 4Ab (6 % and 8 % from memory)',
      slots: {},
    },
    earthing: {
      safety: true,
      doc: 'How the supply is earthed.',
      example: 'earthing TN',
      source: 'IEC 60364-1',
      slots: {
        value: choice(
          {
            TN: 'the supplier provides the earth, by a conductor of its own (TN-S) or together with the neutral (TN-C-S)',
            TT: 'the earth is an electrode of this installation',
          },
          { doc: 'The earthing system.' },
        ),
      },
    },
    'external-impedance': {
      safety: true,
      doc: 'Impedance of the earth fault loop outside the installation (Ze), as measured or as the supplier states it.',
      example: 'external-impedance 0.35 ohm',
      source: 'BS 7671, 411.4',
      slots: { value: quantity('resistance', 0.001, 10_000, { doc: 'Impedance.' }) },
    },
    'earth-electrode': {
      safety: true,
      doc: 'Resistance of the earth electrode with the conductor to it (RA), as measured.',
      example: 'earth-electrode 45 ohm',
      source: 'BS 7671, 411.5',
      slots: { value: quantity('resistance', 0.1, 100_000, { doc: 'Resistance.' }) },
    },
    wind: {
      doc:
        'The basic wind speed of the place: the ten-minute mean, 10 m above open country, that is passed once in 50 years. National ' +
        'maps give it.',
      example: 'wind 22 m/s terrain II',
      source: 'EN 1991-1-4:2005+A1, 4.2',
      slots: {
        speed: quantity('speed', 5, 70, { doc: 'Basic wind speed.' }),
        terrain: choice(
          {
            zero: 'category 0: the sea, or a coast open to it',
            I: 'category I: lakes, or flat land without obstacles',
            II: 'category II: grass, with single trees or buildings at least 20 heights apart',
            III: 'category III: villages, suburbs, woods',
            IV: 'category IV: a town, with at least 15 % of the ground built over and buildings above 15 m',
          },
          { doc: 'What the wind blows over before it comes here.', after: 'terrain' },
        ),
        period: count(2, 500, {
          doc: 'How seldom the wind that is reckoned with is passed: once in so many years. Not stated means 50.',
          after: 'return',
          optional: true,
          fallback: 50,
        }),
        base: quantity('length', 0, 300, {
          doc: 'How high the ground at the gate stands above the country around: an embankment, a roof. Not stated means level with it.',
          after: 'base',
          optional: true,
          fallback: 0,
        }),
      },
    },
    'working-wind': {
      doc:
        'The strongest gust, at the gate itself, in which the gate is still to open and close. Not stated means that it is used in ' +
        'calm weather only.',
      example: 'working-wind 12 m/s',
      slots: { value: quantity('speed', 0, 50, { doc: 'Speed of the gust.' }) },
    },
    vehicle: {
      doc: 'The longest vehicle that is expected to pass, and how fast it passes.',
      example: 'vehicle 12 m at 8 km/h',
      slots: {
        length: quantity('length', 1, 40, { doc: 'Length of the vehicle.' }),
        speed: quantity('speed', 0.3, 15, { doc: 'Speed through the gate.', after: 'at' }),
      },
    },
    traffic: {
      doc: 'How many vehicles come to the gate from the road in its busiest hour.',
      example: 'traffic 40 /h taking 25 s room 6 m',
      slots: {
        rate: quantity('rate', 0.1 / hour, 2000 / hour, { doc: 'Vehicles an hour.' }),
        taking: quantity('time', 1, 900, {
          doc:
            'How long each vehicle keeps the gate busy. Not stated means the pre-warning, the opening, and the time to be clear of the ' +
            'gate.',
          after: 'taking',
          optional: true,
        }),
        room: quantity('length', 2, 40, {
          doc:
            'Length of road that a waiting vehicle takes up, with the gap to the next. Not stated means the length of the longest ' +
            'vehicle.',
          after: 'room',
          optional: true,
        }),
      },
    },
    'waiting-room': {
      doc: 'Length of the way before the gate on which vehicles can wait clear of the public road.',
      example: 'waiting-room 12 m',
      slots: { value: quantity('length', 0, 1000, { doc: 'Length.' }) },
    },
    cycles: {
      doc: 'How many times the gate opens and closes on a day of use. Parts that wear by switching are reckoned by it.',
      example: 'cycles 120 /day',
      source: 'EN ISO 13849-1, Annex C',
      slots: { value: quantity('rate', 0.01 / 86_400, 100_000 / 86_400, { doc: 'Cycles a day.' }) },
    },
    'days-in-use': {
      doc: 'On how many days of the year the gate is in use. Not stated means 365.',
      example: 'days-in-use 250',
      slots: { value: count(1, 366, { doc: 'Days a year.', fallback: 365 }) },
    },
    installed: {
      doc: 'The day on which the gate was installed, ready to be measured and then used.',
      example: 'installed 2019-06-01',
      slots: { value: date({ doc: 'The day.' }) },
    },
    'required-level': requiredLevel,
    clearance: {
      doc: 'How far the tail of a vehicle must be past the gate line before a leaf may move. Not stated means 2 m.',
      example: 'clearance 2 m',
      slots: { value: quantity('length', 0, 20, { doc: 'Depth of that zone.', fallback: 2 }) },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
