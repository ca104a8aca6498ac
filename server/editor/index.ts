// The editor room: what an editor or a command can ask about a file. Plain data in and out, offsets and no protocol.
export { type FindingAction, findingActions } from './actions.ts';
export {
  type Completion,
  type CompletionContext,
  type CompletionKind,
  type Completions,
  completion,
  monthsAfter,
  usePath,
} from './completion.ts';
export { declarationOf, definition, type Target } from './definition.ts';
export { type Dependence, dependenceAt, dependenceOf, dependencesAt, dependents, type Judge, sources } from './dependence.ts';
export { derivation, withNumbers } from './derivation.ts';
export { type Diagnostic, diagnostics, messageOf, visible } from './diagnostics.ts';
export { type Folding, foldings } from './folding.ts';
export { type Formatting, formatting, rangeFormatting, typedFormatting } from './formatting.ts';
export { type Hover, hover, ruleDoc, type TextOf } from './hover.ts';
export { type InlayValue, inlayTooltip, inlayValues } from './inlay.ts';
export { acceptance, additions, type Insertion, missingLines } from './insertions.ts';
export { type Lens, lenses } from './lenses.ts';
export { links, type TextLink } from './links.ts';
export { plain } from './markdown.ts';
export { holdsModels } from './models.ts';
export { hasNoUses, type Move, movedTo, usesAfter } from './moves.ts';
export { type Meaning, type Mention, mentionAt, mentionsOf } from './names.ts';
export { type OverviewKind, type OverviewNode, overview } from './overview.ts';
export { type DrawingShown, type Preview, preview, previewing } from './preview.ts';
export { mayPromise, type Promised, promises } from './promises.ts';
export { highlight, type Reference, referencesTo, referent } from './references.ts';
export {
  type FileEdits,
  mayMention,
  nameFault,
  prepareRename,
  type Refusal,
  type Renamed,
  type RenameWork,
  type Renaming,
  renaming,
} from './rename.ts';
export { selectionAt } from './selection.ts';
export { type Parameter, type Signature, signature } from './signature.ts';
export { type Indexed, indexOf, likenessTo, type Symbol, symbols } from './symbols.ts';
export { type Token, type TokenKind, tokenModifiers, tokens, tokenTypes } from './tokens.ts';
