// The rules room. `all.ts` is generated from the folders.
export { allRules } from './all.ts';
export { evaluate, judging, ruleNamed, ruleOfProblem, type Verdict } from './evaluate.ts';
export { marginsAbout, marginsOf, type Margin } from './margins.ts';
export type { ProblemKind } from './problems.ts';
export type { Edit, Finding, Fix, Related, Rule, Severity } from './rule.ts';
export { quoted } from './words.ts';
export { addLine } from './fixes.ts';
export { toldHazardsOf, verdictOf } from './told-hazards.ts';
