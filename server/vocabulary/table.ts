// The vocabulary: every word of the language, once. Limits are those outside which a number is surely a slip of the
// pen (a leaf of 21 m), not those of good practice: these are rules.
import { choice, count, date, name, quantity, range, ref, text, tolerance, type BlockSpec, type LineSpec } from './spec.ts';

const deg = Math.PI / 180;
const contactOptions = {
  'normally-closed': 'closed while all is well; opens to report',
  'normally-open': 'open while all is well; closes to report',
} as const;
const directionOptions = { closing: 'while the gate closes', opening: 'while the gate opens' } as const;

const hour = 3600;
const year = 8760 * hour;
const levelOptions = {
  a: 'less than one dangerous failure in 10 000 hours',
  b: 'less than one in 100 000 hours',
  c: 'less than three in 1 000 000 hours',
  d: 'less than one in 1 000 000 hours',
  e: 'less than one in 10 000 000 hours',
} as const;
const requiredLevel = {
  safety: true,
  doc: 'The performance level that safety functions must reach here, as the risk assessment says.',
  example: 'required-level c',
  source: 'EN ISO 13849-1',
  slots: { value: choice(levelOptions, { doc: 'The level.' }) },
} as const satisfies LineSpec;
const fitted = {
  doc: 'The day on which this one was fitted, where it took the place of an earlier one. Not stated means when the gate was installed.',
  example: 'fitted 2024-05-02',
  slots: { value: date({ doc: 'The day.' }) },
} as const satisfies LineSpec;
const switchingOptions = {
  'relay-small-load': 'a relay that switches far less than its rating',
  'relay-full-load': 'a relay that switches about its rating',
  'contactor-small-load': 'a contactor that switches far less than its rating',
  'contactor-full-load': 'a contactor that switches about its rating',
} as const;
/** What a product declares for functional safety: of itself as a whole, or so that it can be reckoned. */
const safetyLines = {
  pfhd: {
    safety: true,
    doc: 'Probability of a dangerous failure an hour, as its maker declares it for the whole of it. 45 FIT are 4.5 in 100 million hours.',
    example: 'pfhd 45 FIT',
    source: 'EN ISO 13849-1',
    slots: { value: quantity('rate', 1e-12 / hour, 1e-3 / hour, { doc: 'Failures an hour.' }) },
  },
  'performance-level': {
    safety: true,
    doc: 'The performance level that its maker declares for it.',
    example: 'performance-level d',
    source: 'EN ISO 13849-1',
    slots: { value: choice(levelOptions, { doc: 'The level.' }) },
  },
  category: {
    safety: true,
    doc: 'The category that its maker declares, 1 to 4. Not stated means B: nothing is claimed of how it is built.',
    example: 'category 2',
    source: 'EN ISO 13849-1',
    slots: { value: count(1, 4, { doc: 'The category.' }) },
  },
  mttfd: {
    safety: true,
    doc: 'Mean time to a dangerous failure of each of its channels, without the parts that wear by switching.',
    example: 'mttfd 60 years',
    source: 'EN ISO 13849-1',
    slots: { value: quantity('time', 0.1 * year, 100_000 * year, { doc: 'Mean time.' }) },
  },
  b10d: {
    safety: true,
    doc: 'Number of operations until a tenth of such parts have failed dangerously, for what wears by switching.',
    example: 'b10d 2000000',
    source: 'EN ISO 13849-1, Annex C',
    slots: { value: count(100, 1e10, { doc: 'Number of operations.' }) },
  },
  coverage: {
    safety: true,
    doc: 'Average diagnostic coverage: the share of its dangerous failures that it finds by itself. Not stated means none.',
    example: 'coverage 90 %',
    source: 'EN ISO 13849-1, Annex E',
    slots: { value: quantity('ratio', 0, 1, { doc: 'Share.', fallback: 0 }) },
  },
  'common-cause': {
    safety: true,
    doc: 'Points for measures against failures of both channels by one cause, out of 100.',
    example: 'common-cause 75',
    source: 'EN ISO 13849-1, Annex F',
    slots: { value: count(0, 100, { doc: 'Points.' }) },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;

const site = {
  doc: 'The place: which rules hold there, who uses the gate, what supplies it. One in a file.',
  named: false,
  title: true,
  single: true,
  example: 'site "Name of the place" {\n  rules europe\n  users limited\n  sight none\n  supply 230 V 50 Hz\n}',
  lines: {
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
        value: choice({ full: 'the whole gate is in view', none: 'the gate, or a part of it, is out of view' }, { doc: 'How much is in view.', fallback: 'none' }),
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
      slots: { value: choice({ 'both-sides': 'on both sides', 'one-side': 'on one side only', none: 'there are none' }, { doc: 'Where.' }) },
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
      doc: 'The basic wind speed of the place: the ten-minute mean, 10 m above open country, that is passed once in 50 years. National maps give it.',
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
        period: count(2, 500, { doc: 'How seldom the wind that is reckoned with is passed: once in so many years. Not stated means 50.', after: 'return', optional: true, fallback: 50 }),
        base: quantity('length', 0, 300, { doc: 'How high the ground at the gate stands above the country around: an embankment, a roof. Not stated means level with it.', after: 'base', optional: true, fallback: 0 }),
      },
    },
    'working-wind': {
      doc: 'The strongest gust, at the gate itself, in which the gate is still to open and close. Not stated means that it is used in calm weather only.',
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
        taking: quantity('time', 1, 900, { doc: 'How long each vehicle keeps the gate busy. Not stated means the pre-warning, the opening, and the time to be clear of the gate.', after: 'taking', optional: true }),
        room: quantity('length', 2, 40, { doc: 'Length of road that a waiting vehicle takes up, with the gap to the next. Not stated means the length of the longest vehicle.', after: 'room', optional: true }),
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
      doc: 'The day on which the gate went into use.',
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
} as const satisfies BlockSpec;

const leaf = {
  doc: 'A moving leaf: one that swings on hinges or one that slides.',
  named: true,
  example: 'leaf west {\n  width 2.10 m\n  height 1.80 m\n  mass 165 kg\n  opens inward 95 deg\n}',
  lines: {
    width: {
      safety: true,
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
      safety: true,
      doc: 'Mass of the leaf with all that hangs on it. It is taken as spread evenly over the width.',
      required: true,
      example: 'mass 165 kg',
      slots: { value: quantity('mass', 5, 5000, { doc: 'Mass.' }) },
    },
    opens: {
      safety: true,
      doc: 'A swing leaf: the side it opens to, and how far.',
      example: 'opens inward 95 deg',
      slots: {
        way: choice({ inward: 'into the premises', outward: 'towards the road' }, { doc: 'The side it opens to.' }),
        angle: quantity('angle', 10 * deg, 180 * deg, { doc: 'Angle between closed and open.' }),
      },
    },
    slides: {
      safety: true,
      doc: 'A sliding leaf: the way it opens, seen from inside, and how far.',
      example: 'slides left 4.20 m',
      slots: {
        way: choice({ left: 'to the left, seen from inside', right: 'to the right, seen from inside' }, { doc: 'The way it opens.' }),
        distance: quantity('length', 0.3, 20, { doc: 'Travel between closed and open.' }),
      },
    },
    infill: {
      doc: 'Share of the leaf’s face that stops the wind: 100 % for boards without gaps. Not stated means 100 %.',
      example: 'infill 90 %',
      source: 'EN 1991-1-4:2005+A1, 7.4.1 (solidity ratio)',
      slots: { value: quantity('ratio', 0.02, 1, { doc: 'Share.', fallback: 1 }) },
    },
    'return-corner': {
      doc: 'A wall at right angles that ends the line of the closed gate beside this leaf: its length. It breaks the wind at that end.',
      example: 'return-corner 1.5 m',
      source: 'EN 1991-1-4:2005+A1, 7.4.1, Table 7.9',
      slots: { value: quantity('length', 0.05, 50, { doc: 'Length of the return.' }) },
    },
    friction: {
      doc: 'The pull, at the free edge and square to a swing leaf or along a sliding one, that just keeps it moving by hand with the drive released: the mean of opening and closing. Not stated means none for hinges, and 3 % of the weight for rollers.',
      example: 'friction 25 N',
      slots: { value: quantity('force', 0, 5000, { doc: 'Force.' }) },
    },
    slope: {
      safety: true,
      doc: 'How much the ground rises towards the side that a swing leaf opens to, or the track towards where a sliding leaf stands open; negative where it falls.',
      example: 'slope 2 %',
      slots: { value: quantity('ratio', -0.3, 0.3, { doc: 'Rise over length.' }) },
    },
    'hinge-tilt': {
      safety: true,
      doc: 'The hinge axis leans: by how much, and the position in which the leaf then hangs lowest, towards which it falls.',
      example: 'hinge-tilt 2 deg lowest closed',
      slots: {
        value: quantity('angle', 0, 20 * deg, { doc: 'Angle between the hinge axis and the vertical.' }),
        lowest: choice({ closed: 'it falls shut', open: 'it falls open' }, { doc: 'Where it hangs lowest.', after: 'lowest' }),
      },
    },
    rises: {
      doc: 'Rising hinges: how much higher the leaf stands open than closed; it climbs evenly over the travel.',
      example: 'rises 80 mm',
      slots: { value: quantity('length', 0, 0.5, { doc: 'Rise.' }) },
    },
    'hinge-guard': {
      safety: true,
      doc: 'From the hinge axis out to where nobody can be caught by the leaf: a cover, a fence, or its shape keeps people out. Not stated means that people can reach all of it.',
      example: 'hinge-guard 350 mm',
      source: 'EN 12453:2017, Annex B (mechanical protection)',
      slots: { value: quantity('length', 0.01, 10, { doc: 'Distance from the hinge axis.' }) },
    },
    thickness: {
      safety: true,
      doc: 'Thickness of a swing leaf at its hinge end.',
      example: 'thickness 40 mm',
      slots: { value: quantity('length', 0.002, 0.5, { doc: 'Thickness.' }) },
    },
    'hinge-gap': {
      safety: true,
      doc: 'Gap between the hinge end of a swing leaf and its post when closed; and, where it was measured, the least and the greatest gap there over the whole travel, on either side. Without them they are worked out from `hinge-offset`, `thickness` and `post-proud`.',
      example: 'hinge-gap 30 mm least 12 mm greatest 60 mm',
      source: 'EN ISO 13854',
      slots: {
        value: quantity('length', 0, 1, { doc: 'Gap when closed.' }),
        least: quantity('length', 0, 1, { doc: 'The least over the travel, as measured.', after: 'least', optional: true }),
        greatest: quantity('length', 0, 3, { doc: 'The greatest over the travel, as measured.', after: 'greatest', optional: true }),
      },
    },
    'hinge-offset': {
      safety: true,
      doc: 'Where the hinge axis stands, measured from the corner of the closed leaf at its hinge end, on the side that it opens to.',
      example: 'hinge-offset 15 mm by 25 mm',
      slots: {
        along: quantity('length', -2, 1, { doc: 'How far beyond the end of the leaf, towards the post; negative within the leaf.' }),
        out: quantity('length', -1, 1, { doc: 'How far out from the face on the side that it opens to; negative within its thickness.', after: 'by' }),
      },
    },
    'post-proud': {
      doc: 'How far the post or pillar stands out beyond the face of the closed leaf, on the side that it opens to; negative where the leaf stands out beyond the post. Not stated means flush.',
      example: 'post-proud 120 mm',
      slots: { value: quantity('length', -1, 2, { doc: 'Distance.', fallback: 0 }) },
    },
    'ground-gap': {
      safety: true,
      doc: 'Gap between the underside of the closed leaf and the ground.',
      example: 'ground-gap 130 mm',
      source: 'EN ISO 13854',
      slots: { value: quantity('length', 0, 1, { doc: 'Gap.' }) },
    },
    'infill-opening': {
      safety: true,
      doc: 'The openings in the face of the leaf that a hand can reach through: their shape, and the smaller side of a slot, the side of a square or the diameter of a round one.',
      example: 'infill-opening slot 40 mm',
      source: 'EN ISO 13857, as reprinted in DGUV Information 208-022, Table 2',
      slots: {
        shape: choice({ slot: 'longer than wide, as between bars', square: 'as wide as high', round: 'a round hole', closed: 'there is none' }, { doc: 'Shape.' }),
        size: quantity('length', 0.0005, 2, { doc: 'Smaller side or diameter.', optional: true }),
        length: quantity('length', 0.001, 10, { doc: 'Length of a slot.', after: 'length', optional: true }),
      },
    },
    passes: {
      safety: true,
      doc: 'Something fixed that a sliding leaf runs past, and the distance between them.',
      many: true,
      example: 'passes post 60 mm',
      source: 'EN ISO 13857; BGR 232, section 4.5',
      slots: {
        what: choice(
          {
            post: 'a post or portal',
            fence: 'a fence with bars or mesh',
            wall: 'a surface that is smooth all the way',
            nothing: 'there is nothing within reach of it',
          },
          { doc: 'What it is.' },
        ),
        distance: quantity('length', 0, 5, { doc: 'Distance between the leaf and it.', optional: true }),
      },
    },
    tail: {
      safety: true,
      doc: 'A sliding leaf without a track under it: the length of its tail, which stays on the rollers and balances the leaf.',
      example: 'tail 2.4 m',
      slots: { value: quantity('length', 0.1, 15, { doc: 'Length.' }) },
    },
    'roller-spacing': {
      safety: true,
      doc: 'Distance between the front and the rear rollers that carry a leaf with a tail.',
      example: 'roller-spacing 2.1 m',
      slots: { value: quantity('length', 0.1, 15, { doc: 'Distance.' }) },
    },
    'room-when-open': {
      safety: true,
      doc: 'The least distance between the open leaf and anything fixed: a wall, a post, a bank. For a sliding leaf, behind its rear end.',
      example: 'room-when-open 600 mm',
      source: 'EN ISO 13854',
      slots: { value: quantity('length', 0, 50, { doc: 'Distance.' }) },
    },
    closes: {
      safety: true,
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
      safety: true,
      doc: 'The leaf that this drive moves.',
      required: true,
      example: 'moves west',
      slots: { leaf: ref('leaf', { doc: 'The leaf.' }) },
    },
    'post-bracket': {
      safety: true,
      doc: 'Where a linear ram is pinned to the post, measured from the hinge axis.',
      example: 'post-bracket 140 mm by 120 mm',
      slots: pointFromHinge,
    },
    shaft: {
      safety: true,
      doc: 'Where the shaft of an articulated-arm drive stands, measured from the hinge axis.',
      example: 'shaft 200 mm by 150 mm',
      slots: pointFromHinge,
    },
    'leaf-bracket': {
      safety: true,
      doc: 'Distance from the hinge axis to the bracket on the leaf, along the leaf.',
      example: 'leaf-bracket 780 mm',
      slots: { value: quantity('length', 0.05, 5, { doc: 'Distance.' }) },
    },
    fitted,
    release: {
      doc: 'How the drive is released, so that the leaf can be moved by hand.',
      example: 'release key',
      slots: {
        value: choice({ key: 'with a key', handle: 'by a handle or lever that needs no key', tool: 'with a tool', none: 'it cannot be released' }, { doc: 'By what means.' }),
      },
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
      safety: true,
      doc: 'The movements during which the panel heeds this sensor.',
      required: true,
      example: 'watches closing',
      slots: {
        movements: choice({ ...directionOptions, pedestrian: 'while the pedestrian opening closes again' }, { doc: 'One movement or more.', many: true }),
      },
    },
    height: {
      safety: true,
      doc: 'Height of a beam or curtain above the ground.',
      example: 'height 200 mm',
      slots: { value: quantity('length', 0, 3, { doc: 'Height.' }) },
    },
    on: {
      safety: true,
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
            'post-edge': 'not the leaf itself: the fixed part that a sliding leaf runs past',
          },
          { doc: 'Which edge of it.' },
        ),
      },
    },
    terminator: {
      safety: true,
      doc: 'The resistor that is fitted at the far end of this edge.',
      example: 'terminator 8.2 kohm',
      slots: {
        value: quantity('resistance', 100, 1e6, { doc: 'Its resistance.' }),
        tolerance: tolerance({ doc: 'Its tolerance. Not stated means ± 5 %.', fallback: 0.05 }),
      },
    },
    leakage: {
      safety: true,
      doc: 'Least resistance across the two wires of this edge that damp may make before it is mended. Not stated means dry.',
      example: 'leakage 200 kohm',
      slots: { value: quantity('resistance', 100, 1e9, { doc: 'Resistance.' }) },
    },
    'chains-into': {
      safety: true,
      doc: 'The next edge of the chain: the far end of this edge is wired to it and not to a terminator.',
      example: 'chains-into east-edge',
      slots: { next: ref('sensor', { doc: 'The next edge.' }) },
    },
    fitted,
  },
  blocks: {},
} as const satisfies BlockSpec;

const control = {
  doc: 'A way to operate the gate: a button, a key switch, transmitters, a loop, a clock.',
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
      slots: { value: choice({ full: 'the whole gate is in view', none: 'the gate, or a part of it, is out of view' }, { doc: 'How much is in view.' }) },
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
} as const satisfies BlockSpec;

const panel = {
  doc: 'The control panel: what is wired to its terminals and how it is set.',
  named: true,
  model: 'panel-model',
  example: 'panel main : MODEL {\n  wire lower-beam to B1 B2\n  link S1 S2\n}',
  lines: {
    wire: {
      safety: true,
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
      safety: true,
      doc: 'A wire link between two terminals, as an unused normally-closed input needs one to its common.',
      many: true,
      example: 'link S1 S2',
      slots: { terminals: ref('terminal', { doc: 'The two terminals.', many: true }) },
    },
    select: {
      safety: true,
      doc: 'The position of a selector.',
      many: true,
      example: 'select logic closes-alone',
      slots: { selector: ref('selector', { doc: 'The selector.' }), option: ref('option', { doc: 'Its position.' }) },
    },
    registered: {
      safety: true,
      doc: 'Sensors that the panel has learnt; a panel that learns its sensors does not heed one that it has not.',
      many: true,
      example: 'registered lower-beam west-edge',
      slots: { sensors: ref('sensor', { doc: 'The sensors.', many: true }) },
    },
    isolator: {
      doc: 'Where the mains of this panel is cut off, on all live conductors and so that nobody else can switch it on again.',
      example: 'isolator "beside the panel, two poles, takes a padlock"',
      slots: { place: text({ doc: 'Where it is and what it is.' }) },
    },
    accessory: {
      doc: 'Something else that the panel feeds, such as a receiver or a lamp.',
      many: true,
      example: 'accessory "radio receiver" draws 30 mA from V1',
      slots: {
        what: text({ doc: 'What it is.' }),
        current: quantity('current', 0, 50, { doc: 'The current that it draws.', after: 'draws' }),
        from: ref('terminal', { doc: 'The output that feeds it.', after: 'from' }),
      },
    },
    fitted,
  },
  blocks: {
    battery: {
      doc: 'The battery that keeps this panel going when there is no mains, or that a solar panel charges.',
      named: false,
      single: true,
      example: 'battery {\n  voltage 24 V\n  capacity 7 Ah over 20 h\n  discharge 50 %\n  lasts 24 h\n}',
      lines: {
        voltage: {
          doc: 'Nominal voltage of the whole battery.',
          required: true,
          example: 'voltage 24 V',
          slots: { value: quantity('voltage', 5, 120, { doc: 'Voltage.' }) },
        },
        capacity: {
          doc: 'What it gives when it is emptied over so many hours, as its data sheet says. A second line with another time tells how much less it gives when it is emptied faster.',
          many: true,
          required: true,
          example: 'capacity 7 Ah over 20 h',
          source: 'Peukert’s law',
          slots: {
            charge: quantity('charge', 0.1 * 3600, 5000 * 3600, { doc: 'Capacity.' }),
            time: quantity('time', 0.1 * 3600, 200 * 3600, { doc: 'Time in which it is emptied.', after: 'over' }),
          },
        },
        discharge: {
          doc: 'Share of the capacity that may be used. Not stated means 50 %.',
          example: 'discharge 50 %',
          slots: { value: quantity('ratio', 0.05, 1, { doc: 'Share.', fallback: 0.5 }) },
        },
        lasts: {
          doc: 'How long it is to keep the gate going.',
          example: 'lasts 24 h',
          slots: { value: quantity('time', 60, 60 * 24 * 3600, { doc: 'Time.' }) },
        },
        cycles: {
          doc: 'How many times a day the gate opens and closes while it runs from the battery. Not stated means as the site says; where that does not say either, only what is drawn at rest is reckoned.',
          example: 'cycles 30 /day',
          slots: { value: quantity('rate', 0, 100_000 / 86_400, { doc: 'Cycles a day.' }) },
        },
        coldest: {
          doc: 'The coldest that the battery gets; in the cold it gives less. Not stated means 27 °C and above, at which it gives what its data sheet says.',
          example: 'coldest -5 °C',
          slots: { value: quantity('temperature', 223.15, 333.15, { doc: 'Temperature.' }) },
        },
      },
      blocks: {},
    },
    solar: {
      doc: 'The solar panel that charges the battery.',
      named: false,
      single: true,
      example: 'solar {\n  peak 60 W\n  sun 1.2 h\n  efficiency 75 %\n}',
      lines: {
        peak: {
          doc: 'Rated power of the solar panel.',
          required: true,
          example: 'peak 60 W',
          slots: { value: quantity('power', 0.5, 100_000, { doc: 'Power in full sun.' }) },
        },
        sun: {
          doc: 'Peak sun hours a day in the worst month, for the way the panel faces; the same number as kWh a square metre and day. From a table for the place.',
          required: true,
          example: 'sun 1.2 h',
          slots: { value: quantity('time', 0.05 * 3600, 12 * 3600, { doc: 'Hours a day of full sun.' }) },
        },
        efficiency: {
          doc: 'What is left after the regulator, the wiring and the battery. Not stated means 75 %.',
          example: 'efficiency 75 %',
          slots: { value: quantity('ratio', 0.1, 1, { doc: 'Share.', fallback: 0.75 }) },
        },
      },
      blocks: {},
    },
  },
} as const satisfies BlockSpec;

const motion = {
  doc: 'How the gate is to move. One in a file.',
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
        speed: quantity('ratio', 0.05, 1, { doc: 'Speed in it, as a share of the drive’s full speed. Not stated means what the drive’s model says.', after: 'at', optional: true }),
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
      slots: { movement: choice(directionOptions, { doc: 'Which movement.' }), leaves: ref('leaf', { doc: 'The leaves in the order they start.', many: true }) },
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
      doc: 'The fuse at its beginning.',
      example: 'fuse 10 A',
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
} as const satisfies BlockSpec;

const measured = {
  doc: 'Forces measured on a day. A file may hold several: of the readings at a point those of the last day count.',
  named: false,
  example:
    'measured {\n  on 2026-05-14\n  by "KL"\n  instrument "force gauge 3" calibrated 2026-02-01\n  force west closing gap 300 mm height 900 mm peak 310 N 305 N 312 N after-750-ms 96 N 90 N 94 N after-5-s 12 N 10 N 11 N\n}',
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
      slots: { what: text({ doc: 'The instrument, so that it can be told from others.' }), calibrated: date({ doc: 'The day of its last calibration.', after: 'calibrated', optional: true }) },
    },
    force: {
      safety: true,
      doc: 'Readings at one point of a leaf. Where several readings stand behind one another they are repeats, in the same order everywhere on the line.',
      many: true,
      example: 'force west closing gap 300 mm height 900 mm peak 310 N 305 N 312 N after-750-ms 96 N 90 N 94 N after-5-s 12 N 10 N 11 N',
      source: 'EN 12453:2017, Annexes A and C',
      slots: {
        leaf: ref('leaf', { doc: 'The leaf.' }),
        movement: choice(directionOptions, { doc: 'Which movement.' }),
        gap: quantity('length', 0.005, 10, { doc: 'Distance, when the leaf strikes, between its closing edge and what it closes against.', after: 'gap' }),
        height: quantity('length', 0, 10, { doc: 'Height above the bottom of the leaf.', after: 'height' }),
        peak: quantity('force', 0, 20_000, { doc: 'Greatest force.', after: 'peak', many: true }),
        static: quantity('force', 0, 20_000, { doc: 'Greatest force later than 0.75 s after the impact.', after: 'after-750-ms', many: true }),
        end: quantity('force', 0, 20_000, { doc: 'Greatest force later than 5 s after the impact.', after: 'after-5-s', many: true }),
      },
    },
  },
  blocks: {},
} as const satisfies BlockSpec;

const safetyFunction = {
  doc: 'A safety function: what must happen, by which parts, and how surely. Its parts are a chain: when one of them fails, the function fails.',
  named: true,
  title: true,
  example: 'function closing-stop "Stops the closing when west-edge is pressed" {\n  required-level c\n  parts west-edge main\n}',
  lines: {
    'required-level': { ...requiredLevel, doc: 'The performance level that this function must reach, as the risk assessment says. Not stated means as the site says.' },
    risk: {
      safety: true,
      doc: 'The risk as the graph of the standard asks for it; the level that follows is from memory. A required level that is stated goes before it.',
      example: 'risk serious seldom avoidable',
      source: 'EN ISO 13849-1, Annex A (from memory)',
      slots: {
        severity: choice({ slight: 'a slight injury, which heals (S1)', serious: 'a serious injury, or death (S2)' }, { doc: 'How badly somebody can be hurt.' }),
        exposure: choice({ seldom: 'seldom, or for a short time (F1)', often: 'often, or for a long time (F2)' }, { doc: 'How often somebody is there.' }),
        avoidance: choice({ avoidable: 'it can be avoided under some conditions (P1)', unavoidable: 'it can hardly be avoided (P2)' }, { doc: 'Whether whoever is there can get out of the way.' }),
      },
    },
    parts: {
      safety: true,
      doc: 'The devices that the function runs through, from the one that senses to the one that stops; each is reckoned by what its model declares.',
      example: 'parts west-edge main',
      slots: { parts: ref('load', { doc: 'Sensors, drives and panels.', many: true }) },
    },
  },
  blocks: {
    subsystem: {
      doc: 'A part of the function that is put together here from single parts, in one channel or two.',
      named: true,
      example: 'subsystem cut-off {\n  category 3\n  common-cause 75\n  element "contactor K1" b10d 1300000 coverage 90 %\n  element "contactor K2" channel second b10d 1300000 coverage 90 %\n}',
      lines: {
        category: {
          safety: true,
          doc: 'The category that it is built to, 1 to 4. Not stated means B: nothing is claimed.',
          example: 'category 3',
          source: 'EN ISO 13849-1',
          slots: { value: count(1, 4, { doc: 'The category.' }) },
        },
        'common-cause': safetyLines['common-cause'],
        tests: {
          safety: true,
          doc: 'How many tests come on each demand of the function, at the least. Category 2 asks for 100, or for a test at each demand; where nothing is stated the test does not count.',
          example: 'tests 100',
          source: 'EN ISO 13849-1 (the numbers from memory)',
          slots: { value: count(1, 1_000_000, { doc: 'Tests for each demand.' }) },
        },
        'tested-on-demand': {
          safety: true,
          doc: 'The test is made at each demand, and the gate is brought to rest before anybody is hurt.',
          example: 'tested-on-demand',
          source: 'EN ISO 13849-1',
          slots: {},
        },
        element: {
          safety: true,
          doc: 'One part: its channel, and what its maker declares of it.',
          many: true,
          required: true,
          example: 'element "contactor K1" b10d 1300000 coverage 90 % times 2',
          source: 'EN ISO 13849-1, Annexes C and D',
          slots: {
            what: text({ doc: 'What it is.' }),
            channel: choice(
              { first: 'the first channel', second: 'the second channel, which does the same', test: 'what tests the first channel (category 2)' },
              { doc: 'Its channel. Not stated means the first.', after: 'channel', optional: true, fallback: 'first' },
            ),
            b10d: count(100, 1e10, { doc: 'Number of operations until a tenth of such parts have failed dangerously.', after: 'b10d', optional: true }),
            mttfd: quantity('time', 0.1 * year, 100_000 * year, { doc: 'Mean time to a dangerous failure.', after: 'mttfd', optional: true }),
            kind: choice(
              {
                ...switchingOptions,
                'position-switch': 'a position switch whose contact is opened by force',
                'interlock-switch': 'a position switch with a separate actuator',
                'emergency-stop': 'an emergency stop button',
                'push-button': 'a push button',
                mechanical: 'a mechanical part',
              },
              { doc: 'What kind of part it is, where its maker declares no number: one known from memory is then reckoned with.', after: 'kind', optional: true },
            ),
            coverage: quantity('ratio', 0, 1, { doc: 'Share of its dangerous failures that are found. Not stated means none.', after: 'coverage', optional: true, fallback: 0 }),
            times: count(1, 100, { doc: 'How many times it operates in each cycle of the gate. Not stated means once.', after: 'times', optional: true, fallback: 1 }),
            fitted: date({ doc: 'The day on which it was fitted, where it took the place of an earlier one.', after: 'fitted', optional: true }),
          },
        },
      },
      blocks: {},
    },
  },
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
      safety: true,
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
      doc: 'Speed in a slow zone as a share of the full speed. Not stated means 40 %.',
      example: 'slow-speed 40 %',
      slots: { value: quantity('ratio', 0.05, 1, { doc: 'Share of the full speed.', fallback: 0.4 }) },
    },
    thrust: {
      safety: true,
      doc: 'What a ram or a rack pushes with: the greatest that it can be set to, and the least.',
      example: 'thrust 2000 N least 300 N',
      slots: {
        greatest: quantity('force', 10, 100_000, { doc: 'The greatest.' }),
        least: quantity('force', 0, 100_000, { doc: 'The least that it can be set to. Not stated means that it can be set down to nothing.', after: 'least', optional: true, fallback: 0 }),
      },
    },
    torque: {
      safety: true,
      doc: 'What the shaft of an articulated-arm or direct drive turns with: the greatest that it can be set to, and the least.',
      example: 'torque 300 N·m least 60 N·m',
      slots: {
        greatest: quantity('torque', 1, 50_000, { doc: 'The greatest.' }),
        least: quantity('torque', 0, 50_000, { doc: 'The least that it can be set to. Not stated means that it can be set down to nothing.', after: 'least', optional: true, fallback: 0 }),
      },
    },
    'stops-in': {
      safety: true,
      doc: 'Time from full speed to standstill when it is told to stop at once; from a lower speed it takes as much less.',
      example: 'stops-in 200 ms',
      slots: { value: quantity('time', 0.001, 10, { doc: 'Time.' }) },
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
    duty: {
      doc: 'Intermittent duty that its motor is rated for: the share of each ten minutes that it may run (S3).',
      example: 'duty 30 %',
      source: 'IEC 60034-1, duty type S3',
      slots: { value: quantity('ratio', 0.01, 1, { doc: 'Share of the time.' }) },
    },
    ...safetyLines,
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
    'pressed-resistance': {
      safety: true,
      doc: 'The greatest resistance of a resistive edge while it is pressed. Not stated means none.',
      example: 'pressed-resistance 500 ohm',
      slots: { value: quantity('resistance', 0, 1e6, { doc: 'Resistance.', fallback: 0 }) },
    },
    ...safetyLines,
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
    kind: {
      doc: 'How its conductors are put together. Not stated means multicore.',
      example: 'kind multicore',
      slots: {
        value: choice(
          {
            multicore: 'several cores in one sheath',
            singles: 'single cores',
            flat: 'flat twin with a protective conductor',
          },
          { doc: 'The kind of cable.', fallback: 'multicore' },
        ),
      },
    },
    insulation: {
      doc: 'What the conductors are insulated with. Not stated means pvc.',
      example: 'insulation pvc',
      source: 'BS 7671, Appendix 4',
      slots: {
        value: choice(
          {
            pvc: 'thermoplastic, for conductors of up to 70 °C',
            xlpe: 'thermosetting, for conductors of up to 90 °C',
            rubber: 'rubber, for conductors of up to 60 °C',
          },
          { doc: 'The insulation.', fallback: 'pvc' },
        ),
      },
    },
    'protective-conductor': {
      safety: true,
      doc: 'Cross-section of its protective conductor, where that differs from the others.',
      example: 'protective-conductor 1.5 mm2',
      slots: { value: quantity('area', 0.05e-6, 50e-6, { doc: 'Cross-section.' }) },
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
  measured,
  function: safetyFunction,
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
  'expects-no': {
    doc: 'Promises that nothing so grave is found in this file, but for what an “expects” line names: for files that teach or test. A promise that is not kept is a finding.',
    example: 'expects-no error',
    slots: {
      gravest: choice({ error: 'no errors', warning: 'no errors and no warnings', note: 'nothing at all' }, { doc: 'From which severity on nothing may be found.' }),
    },
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
  expects: {
    doc: 'Promises that a rule finds something here: for files that teach or test. What it finds is shown as ever; a promise that is not kept is a finding of its own.',
    many: true,
    example: 'expects auto-close-without-tested-sensors',
    slots: { rule: ref('rule', { doc: 'The rule.' }) },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;

export type Blocks = typeof blocks;
export type BlockWord = keyof Blocks;
/** The version of the language that this table describes. */
export const languageVersion = 1;
