import { factPlace, perSubject, regimeOf, type Cable } from '../../model/index.ts';
import { inCelsius, inKelvin, insulationOf } from '../cables.ts';
import { hasCables } from '../common.ts';
import { onlyWhere, type Input, type Standing } from '../figure.ts';
import { ambientFactor, conductorTemperature, gaugeCurrent, groundFactor, groupingFactor, tableLimit, tabulatedCurrent } from './maths.ts';

export interface Rating {
  /** Iz, amperes. */
  readonly current: number;
  /** It, amperes. */
  readonly tabulated: number;
  readonly table: string;
  /** Of the value in the table: one from memory decides no error. */
  readonly standing: Standing;
  /** True where the cable may carry more: its insulation bears more than the table is for. */
  readonly atLeast: boolean;
  readonly ca: number;
  readonly cg: number;
  readonly circuits: number;
  /** °C. */
  readonly ambient: number;
  /** °C at which the table holds. */
  readonly reference: number;
  readonly isAmbientStated: boolean;
}

/** The current that a cable may carry as it is laid; undefined where the way it is laid is not stated or no table has it. */
export const ratingOf = perSubject((cable: Cable): Rating | undefined => {
  const { method, ambient, grouped } = cable.facts;
  const area = cable.model?.facts.area?.value;
  const insulation = insulationOf(cable);
  if (area === undefined || insulation === 'rubber') return undefined;
  const american = regimeOf(cable.installation).gauges ? gaugeCurrent(area) : undefined;
  const found = american ?? (method === undefined ? undefined : tabulatedCurrent(area, cable.model?.facts.kind?.value ?? 'multicore', method.value));
  if (found === undefined) return undefined;
  const buried = american === undefined && method?.value === 'D';
  const reference = buried ? 20 : 30;
  const around = ambient === undefined ? reference : inCelsius(ambient.value);
  const ca = buried ? groundFactor(around) : ambientFactor(around);
  const circuits = grouped?.value ?? 1;
  const cg = groupingFactor(circuits, buried);
  if (cg === undefined) return undefined;
  return { current: found.current * ca * cg, tabulated: found.current, table: found.table, standing: found.standing, atLeast: insulation === 'xlpe', ca, cg, circuits, ambient: around, reference, isAmbientStated: ambient !== undefined };
});

/** How warm the conductors get at the greatest current. */
export interface Warmth {
  readonly celsius: number;
  /** A. */
  readonly current: number;
  readonly rating: Rating;
}

/** Undefined where it is not stated how the cable is laid and how warm it gets there. */
export const warmthOf = perSubject((cable: Cable): Warmth | undefined => {
  const { carries } = cable.facts;
  const rating = ratingOf(cable);
  if (carries === undefined || rating === undefined || !rating.isAmbientStated || cable.facts.method === undefined) return undefined;
  const celsius = conductorTemperature({ current: carries.current, tabulated: rating.tabulated, cg: rating.cg, ambient: rating.ambient, reference: rating.reference, limit: tableLimit(insulationOf(cable)) });
  return { celsius, current: carries.current, rating };
});

const tableInWords = (rating: Rating): string => `${rating.table}${rating.standing === 'from memory' ? ' (from memory)' : ''}${rating.atLeast ? ', of pvc: at least' : ''}`;

function inputsOf(cable: Cable, rating: Rating): Input[] {
  return [
    { name: 'It, tabulated current', value: rating.tabulated, unit: 'A', from: tableInWords(rating) },
    { name: 'Ca, ambient factor', value: rating.ca, unit: '1', from: 'BS 7671, Table 4C1' },
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
            { name: 'tp, warmest that the table allows', value: tableLimit(insulationOf(cable)), unit: '°C', from: 'BS 7671, Appendix 4' },
            { name: 'tr, ambient temperature of the table', value: rating.reference, unit: '°C', from: 'BS 7671, Appendix 4' },
            ...inputsOf(cable, rating).filter((input) => !input.name.startsWith('Ca')),
          ],
          () => `${Math.round(celsius * 10) / 10} °C`,
        );
      }
    },
  },
]);
