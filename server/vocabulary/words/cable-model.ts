import { type BlockOfFile, choice, count, quantity } from '../spec.ts';

export const block = {
  doc: 'What a cable is made of.',
  place: 140,
  belongs: 'model',
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
} as const satisfies BlockOfFile;
