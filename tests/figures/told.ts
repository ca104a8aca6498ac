// What a file's figures say, to be held against what was worked out by hand.
import { type FigureKind, idOf } from '../../server/figures/index.ts';
import { installationOf, judge, workingOf } from '../kit/pages.ts';

/** Each figure in turn: its value to six digits, where it points, its words and what goes into it; one that is not given says “none”. */
export function told(text: string, ...ids: readonly string[]): string {
  const analysis = judge(text);
  return ids
    .map((id) => {
      const figure = analysis.figures.find((one) => one.id === id);
      if (figure === undefined) return `${id} none\n`;
      const value = `${Number(figure.value.toPrecision(6))}${figure.kind.unit === '1' ? '' : ` ${figure.kind.unit}`}`;
      return workingOf(analysis, [id]).replace(id, () => `${id} ${value}`);
    })
    .join('');
}

/** Only the values, by the end of their ids behind `before`. */
export function values(text: string, before: string): Record<string, number> {
  const given = judge(text).figures.flatMap((figure) =>
    figure.id.startsWith(before) ? [[figure.id.slice(before.length), Number(figure.value.toPrecision(6))] as const] : [],
  );
  return Object.fromEntries(given);
}

/** Every value that these kinds give, by id, to six digits: also what is no number, which nobody would be shown. */
export function valuesIn(kinds: readonly FigureKind[], text: string): Record<string, number> {
  const installation = installationOf(`language 1\n${text}\n`);
  const given: Record<string, number> = {};
  for (const kind of kinds)
    kind.work(installation, (subject, value) => void (given[idOf(kind.id, subject)] = Number(value.toPrecision(6))));
  return given;
}

/** What goes into figures, and where each of them stands, as on the pages. */
export const goesInto = (text: string, ...ids: readonly string[]): string[] =>
  workingOf(judge(`language 1\n${text}\n`), ids)
    .split('\n')
    .filter((line) => line !== '');
