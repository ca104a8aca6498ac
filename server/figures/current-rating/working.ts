import { type Cable, perSubject, regimeOf } from '../../model/index.ts';
import { inCelsius, insulationOf, warmest } from '../cables/working.ts';
import type { Standing } from '../kind.ts';
import {
  ambientFactor,
  ambientFactorAt60,
  conductorTemperature,
  gaugeCurrent,
  groundFactor,
  groupingFactor,
  leastCurrent,
  type Most,
  mostCurrent,
  tableLimit,
  tabulatedCurrent,
} from './maths.ts';

export type { Most } from './maths.ts';

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
  /** The warmest that the conductors get at the rating, °C. */
  readonly limit: number;
}

/** The current that a cable may carry as it is laid; undefined where the way it is laid is not stated or no table has it. */
export const ratingOf = perSubject((cable: Cable): Rating | undefined => {
  const { method, ambient, grouped } = cable.facts;
  const area = cable.model?.facts.area?.value;
  const insulation = insulationOf(cable);
  if (area === undefined || insulation === 'rubber') return undefined;
  const american = regimeOf(cable.installation).gauges ? gaugeCurrent(area) : undefined;
  const found =
    american ?? (method === undefined ? undefined : tabulatedCurrent(area, cable.model?.facts.kind?.value ?? 'multicore', method.value));
  if (found === undefined) return undefined;
  const buried = american === undefined && method?.value === 'D';
  const reference = buried ? 20 : 30;
  const around = ambient === undefined ? reference : inCelsius(ambient.value);
  const ca = buried ? groundFactor(around) : american === undefined ? ambientFactor(around) : ambientFactorAt60(around);
  const circuits = grouped?.value ?? 1;
  const cg = groupingFactor(circuits, buried);
  if (cg === undefined) return undefined;
  return {
    current: found.current * ca * cg,
    tabulated: found.current,
    table: found.table,
    standing: found.standing,
    atLeast: insulation === 'xlpe',
    ca,
    cg,
    circuits,
    ambient: around,
    reference,
    isAmbientStated: ambient !== undefined,
    limit: american === undefined ? tableLimit(insulation) : warmest.rubber,
  };
});

/**
 * Where it is not stated how a cable is laid, or no table has it: more than this, A, it cannot carry in any way of laying it, alone and in
 * the cold. Undefined where its rating is known.
 */
export const mostOf = perSubject((cable: Cable): Most | undefined => {
  const { method, ambient } = cable.facts;
  const area = cable.model?.facts.area?.value;
  if (area === undefined || ratingOf(cable) !== undefined) return undefined;
  const around = ambient === undefined ? coldest : inCelsius(ambient.value);
  const most = mostCurrent(area, method?.value, ambientFactor(around), groundFactor(around));
  // The tables are of 70 °C insulation; what bears 90 °C loses half as much heat again.
  const better = insulationOf(cable) === 'xlpe' ? Math.sqrt((warmest.xlpe - 30) / (warmest.pvc - 30)) : 1;
  return most === undefined ? undefined : { current: most.current * better, derived: most.derived };
});

/** Colder than any cable lies, °C. */
const coldest = -273;

/** How warm the conductors get at the greatest current. */
export interface Warmth {
  readonly celsius: number;
  /** A. */
  readonly current: number;
  readonly rating: Rating;
}

/** What a conductor thinner than any in the tables bears at the least: good enough to say how warm it gets at the most. */
function thinRatingOf(cable: Cable): Rating | undefined {
  const { method, ambient, grouped } = cable.facts;
  const { area, kind } = cable.model?.facts ?? {};
  if (area === undefined || method === undefined) return undefined;
  const found = leastCurrent(area.value, kind?.value ?? 'multicore', method.value);
  const buried = method.value === 'D';
  const circuits = grouped?.value ?? 1;
  const cg = groupingFactor(circuits, buried);
  if (found === undefined || cg === undefined) return undefined;
  const reference = buried ? 20 : 30;
  const around = ambient === undefined ? reference : inCelsius(ambient.value);
  const ca = buried ? groundFactor(around) : ambientFactor(around);
  return {
    current: found.current * ca * cg,
    tabulated: found.current,
    table: found.table,
    standing: found.standing,
    atLeast: true,
    ca,
    cg,
    circuits,
    ambient: around,
    reference,
    isAmbientStated: ambient !== undefined,
    limit: warmest.pvc,
  };
}

/** Undefined where it is not stated how the cable is laid and how warm it gets there. */
export const warmthOf = perSubject((cable: Cable): Warmth | undefined => {
  const { carries } = cable.facts;
  const rating = ratingOf(cable) ?? thinRatingOf(cable);
  if (carries === undefined || rating === undefined || !rating.isAmbientStated || cable.facts.method === undefined) return undefined;
  const celsius = conductorTemperature({
    current: carries.current,
    tabulated: rating.tabulated,
    cg: rating.cg,
    ambient: rating.ambient,
    reference: rating.reference,
    limit: rating.limit,
  });
  return { celsius, current: carries.current, rating };
});
