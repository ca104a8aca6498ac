import { headPlace } from '../../model/index.ts';
import type { FigureKind } from '../kind.ts';
import { type Hazard, hazardsOf } from './working.ts';

/** “hinge, 12 mm”. */
const inWords = ({ kind, least }: Hazard): string =>
  kind === 'closing-edge' ? 'closing edge' : `${kind.replaceAll('-', ' ')}, ${Number((least * 1000).toPrecision(3))} mm`;

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.hazards',
    title: 'Places at which the moving leaf can hurt somebody, found from what is stated of its shape',
    unit: '1',
    topic: 'safety',
    formula:
      'the closing edge; the hinge side, the underside, the room behind it and what it runs past, where their gaps crush, shear or draw in',
    source: { text: 'EN ISO 13854 and EN ISO 13857; ASR A1.7, section 6', standing: 'derived' },
    changedBy: 'gaps, covers that make a gap constant or closed, and openings',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const hazards = hazardsOf(leaf);
        if (hazards === undefined) continue;
        give(
          leaf.name,
          hazards.found.length,
          headPlace(leaf),
          () =>
            hazards.found.flatMap((hazard) => [
              { name: `${hazard.kind.replaceAll('-', ' ')}, least gap`, value: hazard.least, unit: 'm' },
              { name: `${hazard.kind.replaceAll('-', ' ')}, greatest gap`, value: hazard.greatest, unit: 'm' },
            ]),
          () => hazards.found.map(inWords).join('; '),
        );
      }
    },
  },
];
