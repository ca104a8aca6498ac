// The engine: from the text of a file to all that is known of it. This index is the library's public face, for programs outside
// as for the command and the editor; what is marked internal is for them alone and left out of the published types.

/** @internal What the command and the server ask of the rooms below. */
export { lineStarts, lineText, longestText, type Position, positionAt, type Span } from '../../grammar/index.ts';
/** @internal */
export { allFigures, type FigureKind, type Topic, topics } from '../figures/index.ts';
export type { Plain, PlainBlock, PlainSite } from '../model/index.ts';
export type { Theme } from '../papers/index.ts';
export type { Edit, Finding, Fix, Related, Severity } from '../rules/index.ts';
/** @internal */
export { allRules, type ProblemKind, ruleNamed, ruleOfProblem } from '../rules/index.ts';
/** @internal */
export { nearest } from '../vocabulary/index.ts';
export type { Analysis, Phase, Steps } from './analysis.ts';
/** @internal */
export { finished } from './analysis.ts';
/** @internal */
export { type DrawingFile, drawingFile, drawingNames, drawn } from './drawings.ts';
export { classOf, type FixClass, fixAll, fixes, type Mended, type QuickFix, safeFixes, withEdits } from './fixes.ts';
export { formatted, type Unformatted } from './format.ts';
export { type RuleShown, rulesShown } from './rules.ts';
/** @internal */
export { type FigureShown, figuresShown, inputsOf, nameOfFigure, shownHeld, shownValue, spareInWords, subjectOf } from './shown.ts';
export { type ReadResult, Workspace, type WorkspaceOptions } from './workspace.ts';
