import { type Cable, factPlace } from '../../model/index.ts';
import { hasCables, inKelvin, warmest } from '../cables/working.ts';
import { type Input, onlyWhere } from '../kind.ts';
import { type Rating, ratingOf, warmthOf } from './working.ts';

const tableInWords = (rating: Rating): string =>
  `${rating.table}${rating.standing === 'from memory' ? ' (from memory)' : ''}${rating.atLeast ? ', of pvc: at least' : ''}`;

const isByGauge = ({ limit }: Rating): boolean => limit === warmest.rubber;

function inputsOf(cable: Cable, rating: Rating): Input[] {
  return [
    { name: 'It, tabulated current', value: rating.tabulated, unit: 'A', from: tableInWords(rating) },
    {
      name: 'Ca, ambient factor',
      value: rating.ca,
      unit: '1',
      from: isByGauge(rating) ? '60 °C insulation, √((60 − t)/30)' : 'BS 7671, Table 4C1',
    },
    { name: 'ambient temperature', value: rating.ambient, unit: '°C', ...(cable.facts.ambient === undefined ? { from: 'default' } : {}) },
    { name: 'Cg, grouping factor', value: rating.cg, unit: '1', from: 'BS 7671, Table 4C1' },
    { name: 'circuits together', value: rating.circuits, unit: '1', ...(cable.facts.grouped === undefined ? { from: 'default' } : {}) },
  ];
}

const place = (cable: Cable): { start: number; end: number } => factPlace(cable, cable.facts.method);

export const figures = onlyWhere(hasCables, [
  {
    id: 'cable.NAME.current-rating',
    title: 'Current that the cable may carry as it is laid',
    unit: 'A',
    topic: 'electrical',
    formula: 'Iz = It·Ca·Cg',
    source: { text: 'BS 7671, Appendix 4, Tables 4D1A, 4D2A and 4C1', standing: 'published' },
    changedBy: 'a thicker conductor, another way of laying it, fewer circuits together',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const rating = ratingOf(cable);
        if (rating !== undefined) give(cable.name, rating.current, place(cable), () => inputsOf(cable, rating));
      }
    },
  },
  {
    id: 'cable.NAME.conductor-temperature',
    title: 'Temperature of the conductors at the greatest current',
    unit: 'K',
    topic: 'electrical',
    formula: 't = tp − Cg²·(tp − ta) + (tp − tr)·(Ib/It)²',
    source: { text: 'heat made goes with the square of the current, heat lost with the difference in temperature', standing: 'derived' },
    changedBy: 'a thicker conductor, less current, fewer circuits together',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const warmth = warmthOf(cable);
        if (warmth === undefined) continue;
        const { celsius, current, rating } = warmth;
        give(
          cable.name,
          inKelvin(celsius),
          factPlace(cable, cable.facts.ambient),
          () => [
            { name: 'Ib, current', value: current, unit: 'A' },
            {
              name: 'tp, warmest that the table allows',
              value: rating.limit,
              unit: '°C',
              from: isByGauge(rating) ? 'NEC, 60 °C insulation' : 'BS 7671, Appendix 4',
            },
            { name: 'tr, ambient temperature of the table', value: rating.reference, unit: '°C', from: 'BS 7671, Appendix 4' },
            ...inputsOf(cable, rating).filter((input) => !input.name.startsWith('Ca')),
          ],
          () => `${Math.round(celsius * 10) / 10} °C`,
        );
      }
    },
  },
]);
