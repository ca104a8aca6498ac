// Generated from the folders of this room by `npm run generate`. Do not edit.
import { rule as seatOutsidePractice } from './seat-outside-practice/rule.ts';
import { rule as unitMissing } from './unit-missing/rule.ts';
import type { Rule } from './rule.ts';

export const allRules: readonly Rule[] = [
  seatOutsidePractice,
  unitMissing,
];
