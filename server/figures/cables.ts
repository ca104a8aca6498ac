// What several figures and rules ask of a cable.
import { type Cable, type Drive, perSubject } from '../model/index.ts';
import { designCurrent } from './design-current/maths.ts';

/** Up to here a voltage is extra-low, V. Source: IEC 60364-4-41 (50 V a.c.; for direct current the limit is 120 V, so this is the safe side). */
export const extraLow = 50;
const zero = 273.15;
export const inCelsius = (kelvin: number): number => kelvin - zero;
export const inKelvin = (celsius: number): number => celsius + zero;

/** True for a cable at more than extra-low voltage; undefined where that is not stated. */
export function isMains(cable: Cable): boolean | undefined {
  const { carries } = cable.facts;
  return carries === undefined ? undefined : carries.voltage > extraLow;
}

export const insulationOf = (cable: Cable): 'pvc' | 'xlpe' | 'rubber' => cable.model?.facts.insulation?.value ?? 'pvc';
export const classOf = (cable: Cable): number => cable.model?.facts.class?.value ?? 5;

/**
 * The cable that brings the same kind of supply to the panel to which this cable's device is wired: what is lost in it is
 * lost here too. Undefined for the feed of a panel.
 */
export const upstreamOf = perSubject((cable: Cable): Cable | undefined => {
  const { load, installation } = cable;
  const mains = isMains(cable);
  if (load === undefined || load.kind === 'panel' || mains === undefined) return undefined;
  for (const feed of installation.cables) {
    if (feed.load?.kind !== 'panel' || isMains(feed) !== mains) continue;
    for (const wire of feed.load.it.wires) if (wire.device?.it === load.it) return feed;
  }
  return undefined;
});

/** Amperes that a drive draws: as its model says, else from the plate of its motor and the site's supply. */
export function drawOf(drive: Drive): number | undefined {
  const facts = drive.model?.facts;
  const voltage = drive.installation.site?.facts.supply?.voltage;
  if (facts?.consumes !== undefined) return facts.consumes.value;
  return facts?.motor === undefined || voltage === undefined ? undefined : designCurrent(facts.motor.output, facts.motor.efficiency, facts.motor.factor, voltage);
}
