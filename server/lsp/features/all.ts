// Generated from the files of this folder by `npm run generate`. Do not edit.
import { feature as codeActions } from './code-actions.ts';
import { feature as completion } from './completion.ts';
import { feature as definition } from './definition.ts';
import { feature as figures } from './figures.ts';
import { feature as formatting } from './formatting.ts';
import { feature as highlight } from './highlight.ts';
import { feature as hover } from './hover.ts';
import { feature as inlayValues } from './inlay-values.ts';
import { feature as moves } from './moves.ts';
import { feature as overview } from './overview.ts';
import { feature as promises } from './promises.ts';
import { feature as references } from './references.ts';
import { feature as rename } from './rename.ts';
import { feature as rules } from './rules.ts';
import { feature as symbols } from './symbols.ts';
import type { Feature } from './feature.ts';

export const allFeatures: readonly Feature[] = [
  codeActions,
  completion,
  definition,
  figures,
  formatting,
  highlight,
  hover,
  inlayValues,
  moves,
  overview,
  promises,
  references,
  rename,
  rules,
  symbols,
];
