// Generated from the files of this folder by `npm run generate`. Do not edit.
import { feature as account } from './account.ts';
import { feature as callHierarchy } from './call-hierarchy.ts';
import { feature as codeActions } from './code-actions.ts';
import { feature as codeLenses } from './code-lenses.ts';
import { feature as completion } from './completion.ts';
import { feature as definition } from './definition.ts';
import { feature as documentLinks } from './document-links.ts';
import { feature as figures } from './figures.ts';
import { feature as foldingRanges } from './folding-ranges.ts';
import { feature as formatting } from './formatting.ts';
import { feature as highlight } from './highlight.ts';
import { feature as hover } from './hover.ts';
import { feature as inlayValues } from './inlay-values.ts';
import { feature as moves } from './moves.ts';
import { feature as overview } from './overview.ts';
import { feature as preview } from './preview.ts';
import { feature as promises } from './promises.ts';
import { feature as references } from './references.ts';
import { feature as rename } from './rename.ts';
import { feature as rules } from './rules.ts';
import { feature as selectionRanges } from './selection-ranges.ts';
import { feature as semanticTokens } from './semantic-tokens.ts';
import { feature as signature } from './signature.ts';
import { feature as symbols } from './symbols.ts';
import { feature as workspaceSymbols } from './workspace-symbols.ts';
import type { Feature } from './feature.ts';

export const allFeatures: readonly Feature[] = [
  account,
  callHierarchy,
  codeActions,
  codeLenses,
  completion,
  definition,
  documentLinks,
  figures,
  foldingRanges,
  formatting,
  highlight,
  hover,
  inlayValues,
  moves,
  overview,
  preview,
  promises,
  references,
  rename,
  rules,
  selectionRanges,
  semanticTokens,
  signature,
  symbols,
  workspaceSymbols,
];
