// The safeguards room: who is protected at this gate, by what, in which movement, and how the gate is commanded.
export { commandsOf, heldInView, judgedHeldControlOf, onlyHeld, type Command, type ControlKind } from './commands.ts';
export { judgedHazardsOf, judgedPlacesOf, type Cover, type JudgedHazard } from './cover.ts';
export { forcesProven, openingForcesProven } from './forces.ts';
export { measuresFor, needsForceTest, type Measures } from './guarding.ts';
