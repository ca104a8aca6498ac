// The editor room: what an editor or a command can ask about a file. Plain data in and out, offsets and no protocol.
export { completion, usePath, type Completion, type CompletionContext, type CompletionKind, type Completions } from './completion.ts';
export { declarationOf, definition, type Target } from './definition.ts';
export { derivation, figuresShown, nameOfFigure, shownValue, withNumbers, type FigureShown } from './derivation.ts';
export { diagnostics, messageOf, visible, type Diagnostic } from './diagnostics.ts';
export { fixAll, fixes, withEdits, type QuickFix } from './fixes.ts';
export { formatting, lineEdits, type Formatting } from './formatting.ts';
export { hover, ruleDoc, type Hover, type TextOf } from './hover.ts';
export { inlayValues, type InlayValue } from './inlay.ts';
export { plain } from './markdown.ts';
export { mentionAt, mentionsOf, type Meaning, type Mention } from './names.ts';
export { inOtherUnits, readerOf, showShare, showSi, threeDigits, type Reader } from './quantities.ts';
export { highlight, referencesTo, referent, type Reference } from './references.ts';
export { holdsModels, rulesShown, type RuleShown } from './rules.ts';
export { symbols, type Symbol } from './symbols.ts';
export { Workspace, type Analysis, type ReadResult, type WorkspaceOptions } from './workspace.ts';
export { lineStarts, longestText, positionAt, type Position, type Span } from '../../grammar/index.ts';
export type { Edit, Severity } from '../rules/index.ts';
