// The circuits room: what is electrically connected, what a device can do by what it is, and which panel hears it.

export {
  endsShort,
  isEdge,
  isMeantFor,
  type Measure,
  type Movement,
  measureOf,
  missesPeople,
  movements,
  type Opening,
  openingOf,
  passesOver,
  ridesAlong,
  watches,
} from './devices.ts';
export {
  guards,
  type Heeding,
  heedingOf,
  isHeard,
  isLearntBy,
  panelsByDrive,
  panelsFor,
  reaches,
  sensorsFor,
  sensorsHeardBy,
} from './heeding.ts';
export { type Declared, declaredAs } from './levels.ts';
export { bridgedBy } from './links.ts';
export { chainedInto, circleOf, type EdgeBranch, type EdgeLoop, endsOpen, isResistive, loopsOf } from './loops.ts';
export { type MotorEnd, type MotorWiring, motorWiringOf } from './motors.ts';
export {
  cablesTo,
  extraLow,
  type Feeding,
  feedingsOf,
  isMains,
  loadsOf,
  type Output,
  type OutputLoads,
  outputsNamed,
  upstreamOf,
} from './supplies.ts';
export { hasContact, isHiddenOn, isInput, isInSeries, isUnfit, isUsed, repeatsAnEnd, unfitEnd, wireOn } from './terminals.ts';
