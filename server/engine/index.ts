// The engine: from the text of a file to all that is known of it. This index is the library's public face, for programs outside as
// for the command and the editor. What only the rooms of this house ask of the engine is in inside.ts.
export { lineStarts, type Position, positionAt, type Span } from '../../grammar/index.ts';
export type { Plain, PlainBlock, PlainSite } from '../model/index.ts';
export type { Theme } from '../papers/index.ts';
export type { Edit, Finding, Fix, Related, Severity } from '../rules/index.ts';
export { type AccountShown, type AskShown, accountShown, fullAccount, type JudgedShown } from './account.ts';
export type { Analysis, Phase, Steps } from './analysis.ts';
export { type DrawingFile, drawingFile, drawingNames } from './drawings.ts';
export { classOf, type FixClass, fixAll, fixes, fixesOf, type Mended, type QuickFix, safeFixes, withEdits } from './fixes.ts';
export { formatted, type Unformatted } from './format.ts';
export { type RuleShown, rulesShown } from './rules.ts';
export { type FigureShown, figuresShown } from './shown.ts';
export { type ReadResult, Workspace, type WorkspaceOptions } from './workspace.ts';
