// The papers room: what is handed over of an installation, as pure functions. `scene/` works out where and when things are, as
// plain data in metres and seconds; `drawing/` makes pictures of that, with the same in words, as a table, and by place in the
// file; `words.ts` has what all papers say alike. Written papers get a room of their own beside these two, one file a paper.
import type { Installation, Steps } from '../model/index.ts';
import type { Finding } from '../rules/index.ts';
import type { Drawing, Thing } from './drawing/drawing.ts';
import { forceOf } from './drawing/force/draw.ts';
import { planOf } from './drawing/plan/draw.ts';
import { timingOf } from './drawing/timing/draw.ts';
import { wiringOf } from './drawing/wiring/draw.ts';

export { type Drawing, fileOf, svgOf, type Table, type Thing } from './drawing/drawing.ts';
export { type Cycle, cycleMotion, type Moving } from './drawing/plan/motion.ts';
export { styleSheet, type Theme } from './drawing/style.ts';
export { caution, siteTitle } from './words.ts';

/**
 * All drawings of an installation; `findings` are those of the rules, accepted ones too, as a reason makes no hazard safe; they
 * decide what is shown as covered.
 */
export function* drawingsOf(installation: Installation, findings: readonly Finding[]): Steps<readonly Drawing[]> {
  const plan = yield* planOf(installation, findings);
  const timing = yield* timingOf(installation);
  const force = yield* forceOf(installation);
  const wiring = yield* wiringOf(installation);
  return [plan, timing, force, wiring];
}

/** Everything that the drawings show and the file states, each once. */
export function thingsOf(drawings: readonly Drawing[]): Thing[] {
  const found = new Map<string, Thing>();
  for (const { things } of drawings) for (const thing of things) if (!found.has(thing.id)) found.set(thing.id, thing);
  return [...found.values()];
}
