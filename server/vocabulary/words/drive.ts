import { type BlockOfFile, choice, quantity, ref } from '../spec.ts';
import { fitted } from './shared.ts';

const pointFromHinge = {
  along: quantity('length', -2, 2, { doc: 'Distance behind the hinge axis, along the line of the closed leaf; negative in front of it.' }),
  out: quantity('length', -2, 2, {
    doc: 'Distance from that line, towards the side the leaf opens to; negative on the other side.',
    after: 'by',
  }),
};

export const block = {
  doc: 'A drive: which leaf it moves and where it is fixed.',
  place: 30,
  belongs: 'site',
  device: true,
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
        value: choice(
          { key: 'with a key', handle: 'by a handle or lever that needs no key', tool: 'with a tool', none: 'it cannot be released' },
          { doc: 'By what means.' },
        ),
      },
    },
  },
  blocks: {},
} as const satisfies BlockOfFile;
