// The circuits room: what is electrically connected, what a device can do by what it is, and which panel hears it.
export { guards, heedingOf, isHeard, isLearntBy, panelsFor, reaches, sensorsFor, sensorsHeardBy, type Heeding } from './heeding.ts';
export { isEdge, isMeantFor, measureOf, movements, watches, type Measure, type Movement } from './devices.ts';
export { bridgedBy } from './links.ts';
export { eachFedFrom, extraLow, isMains, isOf, upstreamOf, type Output } from './supplies.ts';
export { isInput, isUnfit, repeatsAnEnd, unfitEnd, wireOn } from './terminals.ts';
