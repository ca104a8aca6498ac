// The engine: from the text of a file to all that is known of it. This index is the library's public face, for programs outside
// as for the command and the editor; what is marked internal is for them alone and left out of the published types.
export type { Analysis, Phase, Steps } from './analysis.ts';
export { classOf, fixAll, fixes, safeFixes, withEdits, type FixClass, type Mended, type QuickFix } from './fixes.ts';
export { figuresShown, type FigureShown } from './shown.ts';
export { Workspace, type ReadResult, type WorkspaceOptions } from './workspace.ts';
export { lineStarts, positionAt, type Position, type Span } from '../../grammar/index.ts';
export type { Plain, PlainBlock, PlainSite } from '../model/index.ts';
export { drawingFile, drawingNames, type DrawingFile } from './drawings.ts';
export { formatted, type Unformatted } from './format.ts';
export { rulesShown, type RuleShown } from './rules.ts';
export type { Edit, Finding, Fix, Related, Severity } from '../rules/index.ts';
export type { Theme } from '../papers/index.ts';
/** @internal */
export { drawn } from './drawings.ts';
/** @internal */
export { finished } from './analysis.ts';
/** @internal */
export { inputsOf, nameOfFigure, shownHeld, shownValue, spareInWords, subjectOf } from './shown.ts';
/** @internal What the command and the server ask of the rooms below. */
export { lineText, longestText } from '../../grammar/index.ts';
/** @internal */
export { allFigures, topics, type FigureKind, type Topic } from '../figures/index.ts';
/** @internal */
export { allRules, ruleNamed, ruleOfProblem, type ProblemKind } from '../rules/index.ts';
/** @internal */
export { nearest } from '../vocabulary/index.ts';
