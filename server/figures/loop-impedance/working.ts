import { isMains, upstreamOf } from '../../circuits/index.ts';
import { type Cable, perSubject, regimeOf } from '../../model/index.ts';
import { atTemperature, classOf, insulationOf, resistancePerMetre, warmest } from '../cables/working.ts';
import type { Standing } from '../kind.ts';
import {
  copperInPvc,
  fuseImpedanceLimit,
  impedanceLimit,
  loopImpedance,
  loopImpedanceLimit,
  protectiveConductorLeast,
  toEarth,
  tripTime,
} from './maths.ts';

export { fusingCurrent, tripsAt } from './maths.ts';

/** A device that cuts a fault to earth off, at the beginning of a cable or of the one that feeds its panel. */
export interface Cutoff {
  readonly cable: Cable;
  readonly by: 'breaker' | 'fuse' | 'residual-current';
  /** Ohm: the most that the loop may have. */
  readonly limit: number;
  readonly standing: Standing;
}

export interface LoopWorkings {
  /** To earth, V. */
  readonly voltage: number;
  /** Ohm. */
  readonly external: number;
  /** Line and protective conductors with the conductors at their warmest, ohm, of this cable and of the one that feeds its panel. */
  readonly line: number;
  readonly protective: number;
  readonly impedance: number;
  /** The device that cuts off over the greatest impedance; undefined where none is stated. */
  readonly cutoff: Cutoff | undefined;
  /** Amperes that flow in a fault at the far end. */
  readonly faultCurrent: number;
  /** m²; undefined where the breaker does not trip at once. */
  readonly conductorLeast: number | undefined;
}

/** Cross-section of a cable's protective conductor in m²; undefined where it has none, or where its size would be a guess. */
export function protectiveAreaOf(cable: Cable): number | undefined {
  const facts = cable.model?.facts;
  if (facts === undefined) return undefined;
  const stated = facts['protective-conductor']?.value;
  if (stated !== undefined) return stated;
  // In a flat cable it is thinner, by how much depends on the cable.
  if (facts.kind?.value === 'flat' || facts.cores === undefined || facts.cores.value < 3) return undefined;
  return facts.area?.value;
}

/** The cables on which a device can stand that sees a fault in this one: itself, and the one that feeds its panel. */
export function protectedBy(cable: Cable): readonly Cable[] {
  const upstream = upstreamOf(cable);
  return upstream === undefined ? [cable] : [cable, upstream];
}

/** What the devices of a cable need at `voltage` V to earth; one that asks for nothing is left out. */
function cutoffsOf(cable: Cable, voltage: number): readonly Cutoff[] {
  const { breaker, fuse, 'residual-current': residual } = cable.facts;
  const cutoffs: Cutoff[] = [];
  const add = (by: Cutoff['by'], limit: number | undefined, standing: Standing = 'published'): void => {
    if (limit !== undefined) cutoffs.push({ cable, by, limit, standing });
  };
  if (breaker !== undefined) add('breaker', loopImpedanceLimit(voltage, breaker.curve, breaker.rating));
  const melts = fuse === undefined ? undefined : fuseImpedanceLimit(voltage, fuse.rating);
  add('fuse', melts?.limit, melts?.standing);
  if (residual !== undefined) add('residual-current', impedanceLimit(voltage, residual.value));
  return cutoffs;
}

/** The earth fault loop of a mains cable on a TN supply. */
export const loopOf = perSubject((cable: Cable): LoopWorkings | undefined => {
  const site = cable.installation.site?.facts;
  const { carries } = cable.facts;
  const external = site?.['external-impedance']?.value;
  if (site?.earthing?.value !== 'TN' || !regimeOf(cable.installation).judgesMainsByIec || external === undefined) return undefined;
  if (carries === undefined || isMains(cable) !== true) return undefined;
  const cables = protectedBy(cable);
  let line = 0;
  let protective = 0;
  for (const one of cables) {
    const conductors = conductorsOf(one);
    if (conductors === undefined) return undefined;
    line += conductors.line;
    protective += conductors.protective;
  }
  const voltage = toEarth(carries.voltage);
  const impedance = loopImpedance(external, line, protective);
  const faultCurrent = voltage / impedance;
  const cutoffs = cables.flatMap((one) => cutoffsOf(one, voltage));
  const cutoff = cutoffs.reduce<Cutoff | undefined>((best, one) => (best === undefined || one.limit > best.limit ? one : best), undefined);
  const tripsAtOnce = cutoffs.some(({ by, limit }) => by === 'breaker' && impedance <= limit);
  const conductorLeast = tripsAtOnce ? protectiveConductorLeast(faultCurrent, tripTime, copperInPvc) : undefined;
  return { voltage, external, line, protective, impedance, cutoff, faultCurrent, conductorLeast };
});

function conductorsOf(cable: Cable): { readonly line: number; readonly protective: number } | undefined {
  const { length } = cable.facts;
  const area = cable.model?.facts.area?.value;
  const protectiveArea = protectiveAreaOf(cable);
  if (length === undefined || area === undefined || protectiveArea === undefined) return undefined;
  const line = resistancePerMetre(area, classOf(cable));
  const protective = resistancePerMetre(protectiveArea, classOf(cable));
  const limit = warmest[insulationOf(cable)];
  return line === undefined || protective === undefined
    ? undefined
    : { line: atTemperature(line.value, limit) * length.value, protective: atTemperature(protective.value, limit) * length.value };
}
