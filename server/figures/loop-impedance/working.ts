import { isMains, upstreamOf } from '../../circuits/index.ts';
import { type Cable, perSubject, regimeOf } from '../../model/index.ts';
import { atTemperature, classOf, insulationOf, resistancePerMetre, warmest } from '../cables/working.ts';
import { copperInPvc, loopImpedance, loopImpedanceLimit, protectiveConductorLeast, tripTime } from './maths.ts';

export { tripsAt } from './maths.ts';

export interface LoopWorkings {
  /** To earth, V. */
  readonly voltage: number;
  /** Ohm. */
  readonly external: number;
  /** Line and protective conductors with the conductors at their warmest, ohm, of this cable and of the one that feeds its panel. */
  readonly line: number;
  readonly protective: number;
  readonly impedance: number;
  /** Ohm; undefined without a circuit breaker. */
  readonly limit: number | undefined;
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

/** The earth fault loop of a mains cable on a TN supply. */
export const loopOf = perSubject((cable: Cable): LoopWorkings | undefined => {
  const site = cable.installation.site?.facts;
  const { carries } = cable.facts;
  const external = site?.['external-impedance']?.value;
  if (site?.earthing?.value !== 'TN' || !regimeOf(cable.installation).judgesMainsByIec || external === undefined) return undefined;
  if (carries === undefined || isMains(cable) !== true || carries.voltage > 254) return undefined;
  const own = conductorsOf(cable);
  const upstream = upstreamOf(cable);
  const before = upstream === undefined ? none : conductorsOf(upstream);
  if (own === undefined || before === undefined) return undefined;
  const line = own.line + before.line;
  const protective = own.protective + before.protective;
  const impedance = loopImpedance(external, line, protective);
  const faultCurrent = carries.voltage / impedance;
  const { breaker } = cable.facts;
  const limit = breaker === undefined ? undefined : loopImpedanceLimit(carries.voltage, breaker.curve, breaker.rating);
  const conductorLeast =
    limit === undefined || impedance > limit ? undefined : protectiveConductorLeast(faultCurrent, tripTime, copperInPvc);
  return { voltage: carries.voltage, external, line, protective, impedance, limit, faultCurrent, conductorLeast };
});

const none = { line: 0, protective: 0 };

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
