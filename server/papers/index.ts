// The papers room: drawings of an installation as pure functions, with what they show in words, as a table, and by place.
import type { Installation } from '../model/index.ts';
import type { Finding } from '../rules/index.ts';
import type { Drawing, Thing } from './drawing.ts';
import { forceOf } from './force.ts';
import { planOf } from './plan.ts';
import { timingOf } from './timing.ts';
import { wiringOf } from './wiring.ts';

export { cycleMotion, type Cycle, type Moving } from './cycle.ts';
export { fileOf, svgOf, type Drawing, type Table, type Thing } from './drawing.ts';
export { styleSheet, type Theme } from './style.ts';
export { siteTitle } from './plan.ts';

/** All drawings of an installation; `findings` are those of the rules, accepted ones too, as a reason makes no hazard safe; they decide what is shown as covered. */
export const drawingsOf = (installation: Installation, findings: readonly Finding[]): readonly Drawing[] => [planOf(installation, findings), timingOf(installation), forceOf(installation), wiringOf(installation)];

/** Everything that the drawings show and the file states, each once. */
export function thingsOf(drawings: readonly Drawing[]): Thing[] {
  const found = new Map<string, Thing>();
  for (const { things } of drawings) for (const thing of things) if (!found.has(thing.id)) found.set(thing.id, thing);
  return [...found.values()];
}
