// What several figures and rules ask of a cable.
import type { Cable, Drive } from '../model/index.ts';
import { designCurrent } from './design-current/maths.ts';

const zero = 273.15;
export const inCelsius = (kelvin: number): number => kelvin - zero;
export const inKelvin = (celsius: number): number => celsius + zero;

export const insulationOf = (cable: Cable): 'pvc' | 'xlpe' | 'rubber' => cable.model?.facts.insulation?.value ?? 'pvc';
export const classOf = (cable: Cable): number => cable.model?.facts.class?.value ?? 5;

/** Amperes that a drive draws: as its model says, else from the plate of its motor and the site's supply. */
export function drawOf(drive: Drive): number | undefined {
  const facts = drive.model?.facts;
  const voltage = drive.installation.site?.facts.supply?.voltage;
  if (facts?.consumes !== undefined) return facts.consumes.value;
  return facts?.motor === undefined || voltage === undefined ? undefined : designCurrent(facts.motor.output, facts.motor.efficiency, facts.motor.factor, voltage);
}
