// The safeguards room: who is protected at this gate, by what, in which movement, and how the gate is commanded.
export { type Account, type Ask, accountOf, type Entry, entryInWords, isDraft, type Lack } from './account/index.ts';
export {
  type Command,
  type ControlKind,
  commandsOf,
  hasAPlace,
  heldInView,
  isFixed,
  judgedHeldControlOf,
  opensUnwatched,
  seesTheGate,
  statedSightOf,
} from './commands.ts';
export { type Cover, type JudgedHazard, judgedHazardsOf, judgedPlacesOf, liesOn } from './cover.ts';
export { forcesProven, openingForcesProven } from './forces.ts';
export { type Measures, measuresFor, needsForceTest, owesForceTest } from './guarding.ts';
export {
  type Asked,
  askedOf,
  inWords,
  matrixSource,
  meets,
  present,
  type Requirement,
  requirementFor,
  strictest,
  type Users,
} from './matrix.ts';
export { type Position, positionsOf } from './positions.ts';
export { missed } from './unseeing.ts';
