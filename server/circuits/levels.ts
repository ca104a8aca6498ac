// How surely a product does what it is for, by what its maker declares.
import type { PanelModel, SensorModel } from '../model/index.ts';

type Declaring = Pick<(PanelModel | SensorModel)['facts'], 'performance-level' | 'category' | 'pfhd'>;

/** `too low`: below what EN 12453 asks for; `unstated`: the maker declares nothing of the kind. */
export type Declared = 'enough' | 'too low' | 'unstated';

const lettersBelow = new Set(['a', 'b']);
/** Dangerous failures a second at which a level is no longer c: 3e-6 an hour. EN ISO 13849-1, as the glossary of silsafe.net has it. */
const mostFailures = 3e-6 / 3600;

/**
 * Whether what a maker declares is enough for what protects people at a gate: PL c, or category 2 where only a category is declared.
 * EN 12453:2017, 5.1.2; for the category DHF, Powered Gate Myth Buster #4. The lowest of what is declared counts.
 */
export function declaredAs(facts: Declaring | undefined): Declared {
  const { 'performance-level': level, category, pfhd } = facts ?? {};
  if (level === undefined && category === undefined && pfhd === undefined) return 'unstated';
  if (level !== undefined && lettersBelow.has(level.value)) return 'too low';
  if (pfhd !== undefined && pfhd.value >= mostFailures) return 'too low';
  // Category 1 with a declared level of c is one of the ways to that level.
  return category !== undefined && category.value < 2 && level === undefined ? 'too low' : 'enough';
}
