// The vocabulary room: what words mean, units, and reading a tree by them.
export { dayNumber, daysBetween } from './dates.ts';
export { editDistance, nearest } from './likeness.ts';
export { inOtherUnits, readerOf, showLimit, showShare, showSi, threeDigits, type Reader } from './quantities.ts';
export { shapeOf } from './forms.ts';
export { likelyUnit } from './guesses.ts';
export { readFile, type Acceptance, type Expectation, type Reading } from './read.ts';
export { headerShape, lineShape, slotInWords } from './shapes.ts';
export { fits } from './values.ts';
export type { ProblemOf, ReadingProblem, ReadingProblems } from './problems.ts';
export type { BlockSpec, ChoiceSlot, Entity, Facts, Line, LineSpec, QuantitySlot, Range, RefSlot, Slot, Target } from './spec.ts';
export {
  isModelKind, languageVersion, modelKindOf, modelKinds, nameSpaceInWords, nameSpaceOf, siteWords, type Blocks, type BlockWord,
  type DeviceWord, type ModelKind, type NameSpace, type SiteWord,
} from './kinds.ts';
export { changesSafety } from './safety.ts';
export { siUnit, unitNamed, units, unitsOf, type Dimension, type Unit } from './units.ts';
export { blocks } from './words/all.ts';
export { anywhereLines, topLines } from './words/outside.ts';
