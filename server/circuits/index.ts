// The circuits room: what is electrically connected, what a device can do by what it is, and which panel hears it.

export { isEdge, isMeantFor, type Measure, type Movement, measureOf, movements, watches } from './devices.ts';
export { guards, type Heeding, heedingOf, isHeard, isLearntBy, panelsFor, reaches, sensorsFor, sensorsHeardBy } from './heeding.ts';
export { bridgedBy } from './links.ts';
export { type EdgeBranch, type EdgeLoop, isResistive, loopsOf } from './loops.ts';
export { eachFedFrom, extraLow, isMains, isOf, type Output, upstreamOf } from './supplies.ts';
export { isInput, isUnfit, repeatsAnEnd, unfitEnd, wireOn } from './terminals.ts';
