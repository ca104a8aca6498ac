// The vocabulary: every word of the language, once. Limits are those outside which a number is surely a slip of the
// pen (a leaf of 21 m), not those of good practice: these are rules.
import { choice, count, date, name, quantity, range, ref, text, tolerance, type BlockSpec, type LineSpec } from './spec.ts';

const deg = Math.PI / 180;
const contactOptions = {
  'normally-closed': 'closed while all is well; opens to report',
  'normally-open': 'open while all is well; closes to report',
} as const;
const directionOptions = { closing: 'while the gate closes', opening: 'while the gate opens' } as const;

const site = {
  doc: 'The place: which rules hold there, who uses the gate, what supplies it. One in a file.',
  named: false,
  title: true,
  single: true,
  example: 'site "Name of the place" {\n  rules europe\n  users limited\n  sight none\n  supply 230 V 50 Hz\n}',
  lines: {
    rules: {
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
      doc: 'Whether whoever operates the gate sees all of it from there. Not stated means not seen.',
      example: 'sight none',
      source: 'EN 12453:2000, 5.5.1, Table 1',
      slots: {
        value: choice({ full: 'the whole gate is in view', none: 'the gate, or a part of it, is out of view' }, { doc: 'How much is in view.', fallback: 'none' }),
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
    vehicle: {
      doc: 'The longest vehicle that is expected to pass, and how fast it passes.',
      example: 'vehicle 12 m at 8 km/h',
      slots: {
        length: quantity('length', 1, 40, { doc: 'Length of the vehicle.' }),
        speed: quantity('speed', 0.3, 15, { doc: 'Speed through the gate.', after: 'at' }),
      },
    },
    clearance: {
      doc: 'How far the tail of a vehicle must be past the gate line before a leaf may move. Not stated means 2 m.',
      example: 'clearance 2 m',
      slots: { value: quantity('length', 0, 20, { doc: 'Depth of that zone.', fallback: 2 }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const leaf = {
  doc: 'A moving leaf: one that swings on hinges or one that slides.',
  named: true,
  example: 'leaf west {\n  width 2.10 m\n  height 1.80 m\n  mass 165 kg\n  opens inward 95 deg\n}',
  lines: {
    width: {
      doc: 'Width of the leaf, from its hinge axis to its free end; for a sliding leaf, its length without a tail.',
      required: true,
      example: 'width 2.10 m',
      slots: { value: quantity('length', 0.3, 20, { doc: 'Width.' }) },
    },
    height: {
      doc: 'Height of the leaf.',
      example: 'height 1.80 m',
      slots: { value: quantity('length', 0.3, 6, { doc: 'Height.' }) },
    },
    mass: {
      doc: 'Mass of the leaf with all that hangs on it. It is taken as spread evenly over the width.',
      required: true,
      example: 'mass 165 kg',
      slots: { value: quantity('mass', 5, 5000, { doc: 'Mass.' }) },
    },
    opens: {
      doc: 'A swing leaf: the side it opens to, and how far.',
      example: 'opens inward 95 deg',
      slots: {
        way: choice({ inward: 'into the premises', outward: 'towards the road' }, { doc: 'The side it opens to.' }),
        angle: quantity('angle', 10 * deg, 180 * deg, { doc: 'Angle between closed and open.' }),
      },
    },
    slides: {
      doc: 'A sliding leaf: the way it opens, seen from inside, and how far.',
      example: 'slides left 4.20 m',
      slots: {
        way: choice({ left: 'to the left, seen from inside', right: 'to the right, seen from inside' }, { doc: 'The way it opens.' }),
        distance: quantity('length', 0.3, 20, { doc: 'Travel between closed and open.' }),
      },
    },
    'room-when-open': {
      doc: 'The least distance between the open leaf and anything fixed: a wall, a post, a bank. For a sliding leaf, behind its rear end.',
      example: 'room-when-open 600 mm',
      source: 'EN ISO 13854',
      slots: { value: quantity('length', 0, 50, { doc: 'Distance.' }) },
    },
    closes: {
      doc: 'This leaf covers the end of another one, so it opens first and closes last.',
      example: 'closes onto east overlap 40 mm',
      slots: {
        onto: ref('leaf', { doc: 'The leaf that it covers.', after: 'onto' }),
        overlap: quantity('length', 0, 0.5, { doc: 'How far it reaches past the end of the other. Not stated means 40 mm.', after: 'overlap', optional: true, fallback: 0.04 }),
        gap: quantity('length', 0, 0.5, { doc: 'Gap between the two ends when closed. Not stated means 20 mm.', after: 'gap', optional: true, fallback: 0.02 }),
      },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const pointFromHinge = {
  along: quantity('length', -2, 2, { doc: 'Distance behind the hinge axis, along the line of the closed leaf; negative in front of it.' }),
  out: quantity('length', -2, 2, { doc: 'Distance from that line, towards the side the leaf opens to; negative on the other side.', after: 'by' }),
};

const drive = {
  doc: 'A drive: which leaf it moves and where it is fixed.',
  named: true,
  model: 'drive-model',
  example: 'drive west-ram : MODEL {\n  moves west\n  post-bracket 140 mm by 120 mm\n  leaf-bracket 780 mm\n}',
  lines: {
    moves: {
      doc: 'The leaf that this drive moves.',
      required: true,
      example: 'moves west',
      slots: { leaf: ref('leaf', { doc: 'The leaf.' }) },
    },
    'post-bracket': {
      doc: 'Where a linear ram is pinned to the post, measured from the hinge axis.',
      example: 'post-bracket 140 mm by 120 mm',
      slots: pointFromHinge,
    },
    shaft: {
      doc: 'Where the shaft of an articulated-arm drive stands, measured from the hinge axis.',
      example: 'shaft 200 mm by 150 mm',
      slots: pointFromHinge,
    },
    'leaf-bracket': {
      doc: 'Distance from the hinge axis to the bracket on the leaf, along the leaf.',
      example: 'leaf-bracket 780 mm',
      slots: { value: quantity('length', 0.05, 5, { doc: 'Distance.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const sensor = {
  doc: 'A protective or detecting device: a beam, an edge, a curtain, a loop.',
  named: true,
  model: 'sensor-model',
  example: 'sensor lower-beam : MODEL {\n  watches closing\n  height 200 mm\n}',
  lines: {
    watches: {
      doc: 'The movements during which the panel heeds this sensor.',
      required: true,
      example: 'watches closing',
      slots: {
        movements: choice({ ...directionOptions, pedestrian: 'while the pedestrian opening closes again' }, { doc: 'One movement or more.', many: true }),
      },
    },
    height: {
      doc: 'Height of a beam or curtain above the ground.',
      example: 'height 200 mm',
      slots: { value: quantity('length', 0, 3, { doc: 'Height.' }) },
    },
    on: {
      doc: 'The leaf and the part of it that this sensor sits on.',
      example: 'on west closing-edge',
      slots: {
        leaf: ref('leaf', { doc: 'The leaf.' }),
        edge: choice(
          {
            'closing-edge': 'the edge that closes the opening',
            'opening-edge': 'the edge that leads while opening',
            'hinge-edge': 'the edge at the hinge',
            'bottom-edge': 'the edge above the ground',
          },
          { doc: 'Which edge of it.' },
        ),
      },
    },
    terminator: {
      doc: 'The resistor that is fitted at the far end of this edge.',
      example: 'terminator 8.2 kohm',
      slots: {
        value: quantity('resistance', 100, 1e6, { doc: 'Its resistance.' }),
        tolerance: tolerance({ doc: 'Its tolerance. Not stated means ± 5 %.', fallback: 0.05 }),
      },
    },
    'chains-into': {
      doc: 'The next edge of the chain: the far end of this edge is wired to it and not to a terminator.',
      example: 'chains-into east-edge',
      slots: { next: ref('sensor', { doc: 'The next edge.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const control = {
  doc: 'A way to operate the gate: a button, a key switch, transmitters, a loop, a clock.',
  named: true,
  example: 'control fobs {\n  by transmitter\n  acts impulse\n  sight none\n}',
  lines: {
    by: {
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
          },
          { doc: 'The kind of control.' },
        ),
      },
    },
    sight: {
      doc: 'Whether the whole gate is in view from this control. Not stated means as the site says.',
      example: 'sight full',
      source: 'EN 12453:2000, 5.5.1, Table 1',
      slots: { value: choice({ full: 'the whole gate is in view', none: 'the gate, or a part of it, is out of view' }, { doc: 'How much is in view.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const panel = {
  doc: 'The control panel: what is wired to its terminals and how it is set.',
  named: true,
  model: 'panel-model',
  example: 'panel main : MODEL {\n  wire lower-beam to B1 B2\n  link S1 S2\n}',
  lines: {
    wire: {
      doc: 'A device and the terminals that it is wired to.',
      many: true,
      example: 'wire lower-beam to B1 B2',
      slots: {
        device: ref('device', { doc: 'A sensor, drive or control.' }),
        part: choice(
          {
            signal: 'its output or contact; meant where nothing is said',
            supply: 'its supply',
            test: 'its test input',
          },
          { doc: 'Which of its connections.', optional: true },
        ),
        to: ref('terminal', { doc: 'Terminals of this panel.', after: 'to', many: true }),
      },
    },
    link: {
      doc: 'A wire link between two terminals, as an unused normally-closed input needs one to its common.',
      many: true,
      example: 'link S1 S2',
      slots: { terminals: ref('terminal', { doc: 'The two terminals.', many: true }) },
    },
    select: {
      doc: 'The position of a selector.',
      many: true,
      example: 'select logic closes-alone',
      slots: { selector: ref('selector', { doc: 'The selector.' }), option: ref('option', { doc: 'Its position.' }) },
    },
    registered: {
      doc: 'Sensors that the panel has learnt; a panel that learns its sensors does not heed one that it has not.',
      many: true,
      example: 'registered lower-beam west-edge',
      slots: { sensors: ref('sensor', { doc: 'The sensors.', many: true }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const motion = {
  doc: 'How the gate is to move. One in a file.',
  named: false,
  single: true,
  example: 'motion {\n  slow-zone last 10 %\n  seat 1.5 s\n  lag opening 3 s\n  lag closing 4 s\n  dwell 25 s\n}',
  lines: {
    speed: {
      doc: 'Speed outside the slow zones, as a share of what the drives can do. Not stated means all of it.',
      example: 'speed 80 %',
      slots: { value: quantity('ratio', 0.1, 1, { doc: 'Share of the full speed.', fallback: 1 }) },
    },
    'slow-zone': {
      doc: 'The last part of each movement, run slowly.',
      example: 'slow-zone last 10 % at 40 %',
      slots: {
        last: quantity('ratio', 0, 1, { doc: 'Share of the drive’s travel.', after: 'last' }),
        speed: quantity('ratio', 0.05, 1, { doc: 'Speed in it, as a share of the drive’s full speed. Not stated means what the drive’s model says.', after: 'at', optional: true }),
      },
    },
    seat: {
      doc: 'How long the drives go on pushing when the leaves have reached their stops.',
      example: 'seat 1.5 s',
      slots: { value: quantity('time', 0, 30, { doc: 'Time.' }) },
    },
    lag: {
      doc: 'How much later the second leaf starts. Opening: after the covering leaf; closing: after the covered one.',
      many: true,
      example: 'lag opening 3 s',
      slots: {
        movement: choice(directionOptions, { doc: 'Which movement.' }),
        time: quantity('time', 0, 120, { doc: 'Time between the two starts.' }),
      },
    },
    order: {
      doc: 'Which leaf starts first, and which second. Not stated means as the overlap asks.',
      many: true,
      example: 'order opening west east',
      slots: { movement: choice(directionOptions, { doc: 'Which movement.' }), leaves: ref('leaf', { doc: 'The leaves in the order they start.', many: true }) },
    },
    dwell: {
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
      doc: 'A part opening for people on foot: which leaf, how far, and how long it stays open.',
      example: 'pedestrian west to 60 % dwell 10 s',
      slots: {
        leaf: ref('leaf', { doc: 'The leaf that opens.' }),
        share: quantity('ratio', 0.05, 1, { doc: 'Share of its whole travel.', after: 'to', optional: true, fallback: 1 }),
        dwell: quantity('time', 0, 3600, { doc: 'How long it stands open before it closes by itself. Leave it out where it must not.', after: 'dwell', optional: true }),
      },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const cable = {
  doc: 'A cable run: what it feeds, how long it is and what it carries.',
  named: true,
  model: 'cable-model',
  example: 'cable beam-feed : MODEL {\n  feeds lower-beam\n  length 40 m\n  carries 0.3 A at 24 V\n}',
  lines: {
    feeds: {
      doc: 'The device at its far end.',
      example: 'feeds lower-beam',
      slots: { device: ref('device', { doc: 'A sensor, drive or control.' }) },
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
  },
  blocks: {},
} as const satisfies BlockSpec;

const panelModel = {
  doc: 'What a control panel can do: its terminals, selectors, adjusters, indicators and capabilities.',
  named: true,
  title: true,
  example: 'panel-model MODEL "What it is" {\n  supply 230 V\n  leaves 2\n  terminal E0 common\n  terminal E1 edge-input common E0 terminator 8.2 kohm\n}',
  lines: {
    supply: {
      doc: 'The supply that the panel is made for.',
      example: 'supply 230 V',
      slots: { voltage: quantity('voltage', 6, 690, { doc: 'Nominal voltage.' }) },
    },
    leaves: {
      doc: 'How many leaves it can drive.',
      example: 'leaves 2',
      slots: { value: count(1, 4, { doc: 'Number of leaves.' }) },
    },
    terminal: {
      doc: 'A terminal: its name, what it is for, and how it wants to be wired.',
      many: true,
      example: 'terminal S1 safety-input normally-closed common S0',
      slots: {
        name: name({ doc: 'Its name, as printed on the panel.' }),
        role: choice(
          {
            'supply-in': 'the feed of the panel',
            earth: 'protective earth',
            motor: 'a drive',
            common: 'the return of the inputs that name it',
            'command-input': 'a control that starts or stops a movement',
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
        terminator: quantity('resistance', 100, 1e6, { doc: 'The resistance that a resistive input expects when all is well.', after: 'terminator', optional: true }),
      },
    },
    'tests-relay-outputs': {
      doc: 'Before each movement it tests the protective devices that report through a relay contact.',
      example: 'tests-relay-outputs',
      slots: {},
    },
    'registers-sensors': {
      doc: 'It learns its sensors once, and from then on heeds those that it has learnt.',
      example: 'registers-sensors',
      slots: {},
    },
  },
  blocks: {
    selector: {
      doc: 'A switch or a menu entry with a few positions.',
      named: true,
      title: true,
      example: 'selector logic "What a command does" {\n  option steps "open, stop, close, stop"\n  option closes-alone "closes by itself after the dwell"\n}',
      lines: {
        option: {
          doc: 'One position of the selector.',
          many: true,
          example: 'option steps "open, stop, close, stop"',
          slots: { name: name({ doc: 'Its name.' }), meaning: text({ doc: 'What the panel does in it.', optional: true }) },
        },
      },
      blocks: {},
    },
    adjuster: {
      doc: 'A rotary adjuster, and what its positions mean.',
      named: true,
      title: true,
      example: 'adjuster dwell-trim "Time open" {\n  sets dwell\n  range 2 s .. 120 s\n  sweep 270 deg\n  curve linear\n}',
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
} as const satisfies BlockSpec;

const driveModel = {
  doc: 'What a drive can do.',
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
      doc: 'Full speed of a ram’s rod or of a rack.',
      example: 'speed 16 mm/s',
      slots: { value: quantity('speed', 0.001, 2, { doc: 'Speed.' }) },
    },
    'shaft-speed': {
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
      doc: 'It has entrapment sensing of its own, built in and proven by its maker (type A in North America).',
      example: 'senses-obstacles',
      source: 'UL 325',
      slots: {},
    },
    ramp: {
      doc: 'Time from standstill to full speed, and from full speed to standstill. Not stated means none.',
      example: 'ramp 0.8 s',
      slots: { value: quantity('time', 0, 10, { doc: 'Time.', fallback: 0 }) },
    },
    'slow-speed': {
      doc: 'Speed in a slow zone as a share of the full speed. Not stated means 40 %.',
      example: 'slow-speed 40 %',
      slots: { value: quantity('ratio', 0.05, 1, { doc: 'Share of the full speed.', fallback: 0.4 }) },
    },
    'widest-leaf': {
      doc: 'The widest leaf that its maker allows.',
      example: 'widest-leaf 3.5 m',
      slots: { value: quantity('length', 0.3, 20, { doc: 'Width.' }) },
    },
    'heaviest-leaf': {
      doc: 'The heaviest leaf that its maker allows.',
      example: 'heaviest-leaf 350 kg',
      slots: { value: quantity('mass', 5, 5000, { doc: 'Mass.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const sensorModel = {
  doc: 'What a sensor is, and how it reports.',
  named: true,
  title: true,
  example: 'sensor-model MODEL "What it is" {\n  kind beam\n  output relay\n  contact normally-closed\n  testable\n  measure D\n}',
  lines: {
    kind: {
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
      doc: 'The relay contact that it offers.',
      example: 'contact normally-closed',
      slots: { value: choice(contactOptions, { doc: 'The contact.', fallback: 'normally-closed' }) },
    },
    testable: {
      doc: 'It has a test input, or is tested by switching its supply, so that a panel can prove it before each movement.',
      example: 'testable',
      slots: {},
    },
    measure: {
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
      doc: 'The terminator that a resistive sensor is made for.',
      example: 'terminator 8.2 kohm',
      slots: { value: quantity('resistance', 100, 1e6, { doc: 'Resistance.' }) },
    },
    reach: {
      doc: 'The greatest distance that a beam spans.',
      example: 'reach 12 m',
      slots: { value: quantity('length', 0.1, 100, { doc: 'Distance.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const cableModel = {
  doc: 'What a cable is made of.',
  named: true,
  title: true,
  example: 'cable-model MODEL "What it is" {\n  area 0.75 mm2\n  class 5\n}',
  lines: {
    area: {
      doc: 'Cross-section of one copper conductor.',
      required: true,
      example: 'area 0.75 mm2',
      slots: { value: quantity('area', 0.05e-6, 50e-6, { doc: 'Cross-section, or the wire gauge.' }) },
    },
    class: {
      doc: 'Class of the conductor: 1 solid, 2 stranded, 5 flexible. Not stated means 5.',
      example: 'class 5',
      source: 'IEC 60228',
      slots: { value: count(1, 6, { doc: 'Class.' }) },
    },
    cores: {
      doc: 'Number of conductors.',
      example: 'cores 4',
      slots: { value: count(1, 61, { doc: 'Number.' }) },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

/** All blocks that may stand in a file, by their word, in the order the manual shows them. */
export const blocks = {
  site,
  leaf,
  drive,
  sensor,
  control,
  panel,
  motion,
  cable,
  'panel-model': panelModel,
  'drive-model': driveModel,
  'sensor-model': sensorModel,
  'cable-model': cableModel,
} as const satisfies Readonly<Record<string, BlockSpec>>;

/** Lines that stand outside all blocks. */
export const topLines = {
  language: {
    doc: 'The version of the language that the file is written in. It stands first.',
    required: true,
    example: 'language 1',
    slots: { version: count(1, 1_000_000, { doc: 'The version; this Pintle reads 1.' }) },
  },
  use: {
    doc: 'A library file whose models this file speaks of, by a path relative to this file and inside the workspace.',
    many: true,
    example: 'use "../library/panels.gate"',
    slots: { path: text({ doc: 'The path, with forward slashes.' }) },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;

/** Lines that may stand outside all blocks or in any block of a site: they hold for what they stand in. */
export const anywhereLines = {
  accept: {
    doc: 'Accepts what a rule finds here, with a reason, the initials of who answers for it, and an end.',
    many: true,
    example: 'accept seat-outside-practice because "worn stops, new ones are on order" by "KL" until 2027-03-31',
    slots: {
      rule: ref('rule', { doc: 'The rule.' }),
      reason: text({ doc: 'Why it is acceptable here.', after: 'because' }),
      initials: text({ doc: 'Who answers for it.', after: 'by', optional: true }),
      until: date({ doc: 'The last day on which it holds.', after: 'until' }),
    },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;

export type Blocks = typeof blocks;
export type BlockWord = keyof Blocks;
/** The version of the language that this table describes. */
export const languageVersion = 1;
