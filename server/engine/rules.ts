// The rules, for lists outside the engine.
import { allRules, type Severity } from '../rules/index.ts';

export interface RuleShown {
  readonly name: string;
  /** The gravest that it finds. */
  readonly severity: Severity;
  readonly title: string;
}

export const rulesShown = (): RuleShown[] => allRules.map(({ name, severity, title }) => ({ name, severity, title }));
