// The vocabulary room: what words mean, units, and reading a tree by them.
export {
  areConfusable,
  characterInWords,
  firstDifference,
  hasUnusual,
  looksTheSame,
  type Mixture,
  mixtureIn,
  scriptInWords,
  skeleton,
} from './confusables.ts';
export { dayNumber, daysBetween } from './dates.ts';
export { shapeOf } from './forms.ts';
export { likelyUnit } from './guesses.ts';
export {
  type Blocks,
  type BlockWord,
  type DeviceWord,
  isModelKind,
  languageVersion,
  type ModelKind,
  modelKindOf,
  modelKinds,
  type NameSpace,
  nameSpaceInWords,
  nameSpaceOf,
  type SiteWord,
  siteWords,
} from './kinds.ts';
export { editDistance, nearest } from './likeness.ts';

export { asWritten, isAsPrinted, isPrintable, nameIn } from './printed.ts';
export { mostTold, type ProblemOf, type ReadingProblem, type ReadingProblems } from './problems.ts';
export {
  type FigureUnit,
  figureUnits,
  inOtherUnits,
  inSi,
  type Reader,
  readerOf,
  type SiUnit,
  showLimit,
  showShare,
  showSi,
  threeDigits,
} from './quantities.ts';
export { characterCode, quoted } from './quotes.ts';

export { type Acceptance, type Expectation, type Reading, readFile } from './read.ts';
export { changesSafety } from './safety.ts';
export { headerShape, lineShape, slotInWords } from './shapes.ts';
export type { BlockSpec, ChoiceSlot, Entity, Facts, Line, LineSpec, QuantitySlot, Range, RefSlot, Slot, Target } from './spec.ts';
export { type Dimension, siUnit, type Unit, unitNamed, units, unitsOf } from './units.ts';
export { fits } from './values.ts';
export { blocks } from './words/all.ts';
export { anywhereLines, topLines } from './words/outside.ts';
