// The rules room. `all.ts` is generated from the folders.
export { allRules } from './all.ts';
export { evaluate, judging, ruleNamed, ruleOfProblem, type Verdict } from './evaluate.ts';
export { addLine, indentAt, lineEndOf, lineStartOf } from './fixes.ts';
export { type Margin, marginsAbout, marginsOf } from './margins.ts';
export type { ProblemKind } from './problems.ts';
export { type Edit, type Finding, type Fix, graveness, type Related, type Rule, type Severity } from './rule.ts';
export { tellerOfHazards, verdictOf } from './told-hazards.ts';
export { quoted } from './words.ts';
