import type { Drive } from '../../model/index.ts';
import { designCurrent } from './maths.ts';

/** Amperes that a drive draws: as its model says, else from the plate of its motor and the site's supply. */
export function drawOf(drive: Drive): number | undefined {
  const facts = drive.model?.facts;
  const voltage = drive.installation.site?.facts.supply?.voltage;
  if (facts?.consumes !== undefined) return facts.consumes.value;
  return facts?.motor === undefined || voltage === undefined
    ? undefined
    : designCurrent(facts.motor.output, facts.motor.efficiency, facts.motor.factor, voltage);
}
