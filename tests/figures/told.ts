// What a folder of figures gives for a text, short enough to be stated whole in a test.
import type { FigureKind } from '../../server/figures/index.ts';
import { idOf } from '../../server/figures/index.ts';
import { installationOf, judge, workingOf } from '../kit/pages.ts';

const headed = (text: string): string => `language 1\n${text}\n`;

/** Every value that these kinds give, by id, to six digits: also what is no number, which nobody would be shown. */
export function valuesIn(kinds: readonly FigureKind[], text: string): Record<string, number> {
  const installation = installationOf(headed(text));
  const given: Record<string, number> = {};
  for (const kind of kinds) kind.work(installation, (subject, value) => void (given[idOf(kind.id, subject)] = Number(value.toPrecision(6))));
  return given;
}

/** What goes into figures, and where each of them stands, as on the pages. */
export const told = (text: string, ...ids: readonly string[]): string[] => workingOf(judge(headed(text)), ids).split('\n').filter((line) => line !== '');
