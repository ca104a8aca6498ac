// What editor, server and command ask of the engine and of the rooms below it, beyond what it is for programs outside. It may change
// with any version.
export { lineText, longestText } from '../../grammar/index.ts';
export { allFigures, type FigureKind, type Topic, topics } from '../figures/index.ts';
export { inOneGo, looseRoot, type Steps } from '../model/index.ts';
export { caution } from '../papers/index.ts';
export { allRules, graveness, type ProblemKind, ruleNamed, ruleOfProblem } from '../rules/index.ts';
export { nearest } from '../vocabulary/index.ts';
export { drawing, drawingToFile } from './drawings.ts';
export { canonicalEdits } from './format.ts';
export { lineEdits, singleEdits } from './line-edits.ts';
export { inputsOf, nameOfFigure, showingFigures, shownHeld, shownValue, spareInWords, subjectOf } from './shown.ts';
export { version } from './version.ts';
