import { type BlockOfFile, choice, quantity, ref, text, tolerance } from '../spec.ts';
import { directionOptions, fitted } from './shared.ts';

export const block = {
  doc: 'A protective or detecting device: a beam, an edge, a curtain, a loop.',
  place: 40,
  belongs: 'site',
  device: true,
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
        movements: choice(
          { ...directionOptions, pedestrian: 'while the pedestrian opening closes again' },
          { doc: 'One movement or more.', many: true },
        ),
      },
    },
    height: {
      safety: true,
      doc: 'Height above the ground of a beam, or of the lowest ray of a curtain.',
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
            'receiving-edge': 'not the leaf itself: what its closing edge meets, as the receiving post',
            'opening-edge': 'the edge that leads while opening',
            'hinge-edge': 'the edge at the hinge',
            'bottom-edge': 'the edge above the ground',
            'post-edge': 'not the leaf itself: the fixed part that a sliding leaf runs past',
          },
          { doc: 'Which edge of it.' },
        ),
      },
    },
    guards: {
      safety: true,
      doc:
        'Places of a leaf, other than its closing edge, that the field of a curtain lies on, so that nobody can reach them unseen. ' +
        'Not stated means none: a field across the opening sees nobody at the hinge or behind the open leaf.',
      many: true,
      example: 'guards west opening-side',
      slots: {
        leaf: ref('leaf', { doc: 'The leaf.' }),
        places: choice(
          {
            hinge: 'the gap at the hinge',
            underside: 'the gap above the ground',
            'opening-side': 'what the open leaf stands before',
            'reach-through': 'the side at which the openings of the leaf run past something fixed',
            'running-past': 'the gap to the wall that the leaf runs past',
          },
          { doc: 'One place or more.', many: true },
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
    'own-supply': {
      safety: true,
      doc: 'What feeds it, where that is not this panel: a supply of its own, another panel, a battery in it.',
      example: 'own-supply "24 V power supply in the lodge"',
      slots: { place: text({ doc: 'What it is and where.' }) },
    },
    fitted,
  },
  blocks: {},
} as const satisfies BlockOfFile;
