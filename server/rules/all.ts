// Generated from the folders of this room by `npm run generate`. Do not edit.
import { rule as autoCloseWithoutTestedSensors } from './auto-close-without-tested-sensors/rule.ts';
import { rule as beamTooHigh } from './beam-too-high/rule.ts';
import { rule as braceMissing } from './brace-missing/rule.ts';
import { rule as braceStray } from './brace-stray/rule.ts';
import { rule as characterNotAllowed } from './character-not-allowed/rule.ts';
import { rule as closingEdgeUnguarded } from './closing-edge-unguarded/rule.ts';
import { rule as entrapmentProtectionBelowMinimum } from './entrapment-protection-below-minimum/rule.ts';
import { rule as fileEmpty } from './file-empty/rule.ts';
import { rule as fileTooLarge } from './file-too-large/rule.ts';
import { rule as holdToRunMisuse } from './hold-to-run-misuse/rule.ts';
import { rule as languageMissing } from './language-missing/rule.ts';
import { rule as languageNotFirst } from './language-not-first/rule.ts';
import { rule as languageUnknown } from './language-unknown/rule.ts';
import { rule as lineWithoutWord } from './line-without-word/rule.ts';
import { rule as nestedTooDeep } from './nested-too-deep/rule.ts';
import { rule as openLeafCrushes } from './open-leaf-crushes/rule.ts';
import { rule as pedestrianOpeningUnguarded } from './pedestrian-opening-unguarded/rule.ts';
import { rule as safeguardingBelowMinimum } from './safeguarding-below-minimum/rule.ts';
import { rule as seatOutsidePractice } from './seat-outside-practice/rule.ts';
import { rule as signMisplaced } from './sign-misplaced/rule.ts';
import { rule as textNotClosed } from './text-not-closed/rule.ts';
import { rule as unitMissing } from './unit-missing/rule.ts';
import type { Rule } from './rule.ts';

export const allRules: readonly Rule[] = [
  autoCloseWithoutTestedSensors,
  beamTooHigh,
  braceMissing,
  braceStray,
  characterNotAllowed,
  closingEdgeUnguarded,
  entrapmentProtectionBelowMinimum,
  fileEmpty,
  fileTooLarge,
  holdToRunMisuse,
  languageMissing,
  languageNotFirst,
  languageUnknown,
  lineWithoutWord,
  nestedTooDeep,
  openLeafCrushes,
  pedestrianOpeningUnguarded,
  safeguardingBelowMinimum,
  seatOutsidePractice,
  signMisplaced,
  textNotClosed,
  unitMissing,
];
