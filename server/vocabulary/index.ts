// The vocabulary room: what words mean, units, and reading a tree by them.
export { dayNumber, daysBetween } from './dates.ts';
export { editDistance, nearest } from './likeness.ts';
export { inOtherUnits, readerOf, showLimit, showShare, showSi, threeDigits, type Reader } from './quantities.ts';
export { fits, headerShape, likelyUnit, lineShape, readFile, shapeOf, slotInWords, type Acceptance, type Expectation, type Reading } from './read.ts';
export type { BlockSpec, ChoiceSlot, Entity, Facts, Line, LineSpec, ModelKind, Problem, QuantitySlot, Range, RefSlot, Slot, Target } from './spec.ts';
export { anywhereLines, blocks, languageVersion, topLines, type Blocks, type BlockWord } from './table.ts';
export { changesSafety } from './safety.ts';
export { siUnit, unitNamed, units, unitsOf, type Dimension, type Unit } from './units.ts';
