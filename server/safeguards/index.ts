// The safeguards room: who is protected at this gate, by what, in which movement, and how the gate is commanded.
export { type Command, type ControlKind, commandsOf, heldInView, judgedHeldControlOf, onlyHeld } from './commands.ts';
export { type Cover, type JudgedHazard, judgedHazardsOf, judgedPlacesOf } from './cover.ts';
export { forcesProven, openingForcesProven } from './forces.ts';
export { type Measures, measuresFor, needsForceTest } from './guarding.ts';
