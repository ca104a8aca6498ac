import { type BlockOfFile, choice, quantity, ref } from '../spec.ts';
import { deg } from './shared.ts';

export const block = {
  doc: 'A moving leaf: one that swings on hinges or one that slides.',
  place: 20,
  belongs: 'site',
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
      doc:
        'A wall at right angles that ends the line of the closed gate beside this leaf: its length. It breaks the wind at that end; the ' +
        'table makes the pressure behind the end of a short wall greater for it.',
      example: 'return-corner 1.5 m',
      source: 'EN 1991-1-4:2005+A1, 7.4.1, Table 7.9',
      slots: { value: quantity('length', 0.05, 50, { doc: 'Length of the return.' }) },
    },
    friction: {
      doc:
        'The pull, at the free edge and square to a swing leaf or along a sliding one, that just keeps it moving by hand with the ' +
        'drive released, and with a brake that is on then: the mean of opening and closing. Not stated means none for hinges, and 3 % ' +
        'of the weight for rollers.',
      example: 'friction 25 N',
      slots: { value: quantity('force', 0, 5000, { doc: 'Force.' }) },
    },
    slope: {
      safety: true,
      doc:
        'How much the ground rises towards the side that a swing leaf opens to, or the track towards where a sliding leaf stands open; ' +
        'negative where it falls.',
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
      doc:
        'From the hinge axis out to where nobody can be caught by the leaf: a cover, a fence, or its shape keeps people out. Not ' +
        'stated means that people can reach all of it.',
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
      doc:
        'Gap between the hinge end of a swing leaf and its post when closed; and, where it was measured, the least and the greatest ' +
        'gap there over the whole travel, on either side. Without them they are worked out from `hinge-offset`, `thickness` and ' +
        '`post-proud`.',
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
        out: quantity('length', -1, 1, {
          doc: 'How far out from the face on the side that it opens to; negative within its thickness.',
          after: 'by',
        }),
      },
    },
    'post-proud': {
      doc:
        'How far the post or pillar stands out beyond the face of the closed leaf, on the side that it opens to; negative where the ' +
        'leaf stands out beyond the post. Not stated means flush.',
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
      doc:
        'The openings in the face of the leaf that a hand can reach through: their shape, and the smaller side of a slot, the side of ' +
        'a square or the diameter of a round one.',
      example: 'infill-opening slot 40 mm',
      source: 'EN ISO 13857, as reprinted in DGUV Information 208-022, Table 2',
      slots: {
        shape: choice(
          { slot: 'longer than wide, as between bars', square: 'as wide as high', round: 'a round hole', closed: 'there is none' },
          { doc: 'Shape.' },
        ),
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
        overlap: quantity('length', 0, 0.5, {
          doc: 'How far it reaches past the end of the other. Not stated means 40 mm.',
          after: 'overlap',
          optional: true,
          fallback: 0.04,
        }),
        gap: quantity('length', 0, 0.5, {
          doc: 'Gap between the two ends when closed. Not stated means 20 mm.',
          after: 'gap',
          optional: true,
          fallback: 0.02,
        }),
      },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
