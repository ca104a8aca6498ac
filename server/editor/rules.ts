// The rules, for lists outside the engine.
import { allRules, type Severity } from '../rules/index.ts';

export interface RuleShown {
  readonly name: string;
  readonly severity: Severity;
  readonly title: string;
}

export const rulesShown = (): RuleShown[] => allRules.map(({ name, severity, title }) => ({ name, severity, title }));

/** True for a text that declares a model, found without reading it: enough to offer a file for `use`. */
export const holdsModels = (text: string): boolean => /^[^\S\r\n]*(?:panel|drive|sensor|cable)-model\b/m.test(text);
