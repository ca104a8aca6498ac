// All figures of an installation.
import type { Installation } from '../model/index.ts';
import { allFigures } from './all.ts';
import type { Figure, FigureKind } from './figure.ts';
import { perSubject } from './memo.ts';

/** Every figure that can be worked out, in the order of the kinds; what lacks a fact is left out. */
export const figuresOf = perSubject((installation: Installation): readonly Figure[] => {
  const figures: Figure[] = [];
  let kind: FigureKind;
  for (kind of allFigures) {
    const of = kind;
    of.work(installation, (subject, value, at, inputs, words) => {
      if (Number.isFinite(value)) figures.push({ kind: of, id: idOf(of.id, subject), value, at, inputs, words });
    });
  }
  return figures;
}) as (installation: Installation) => readonly Figure[];

/** `leaf.NAME.inertia` of `west`, or `panel.PANEL.adjuster.NAME` of `main/dwell-trim`. */
function idOf(pattern: string, subject: string): string {
  const slash = pattern.includes('PANEL') ? subject.indexOf('/') : -1;
  return slash < 0 ? pattern.replace('NAME', () => subject) : pattern.replace('PANEL', () => subject.slice(0, slash)).replace('NAME', () => subject.slice(slash + 1));
}
