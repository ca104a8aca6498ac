// The rules room. `all.ts` is generated from the folders.
export { allRules } from './all.ts';
export { evaluate, judging, ruleNamed, type Verdict } from './evaluate.ts';
export type { Edit, Finding, Fix, Related, Rule, Severity } from './rule.ts';
