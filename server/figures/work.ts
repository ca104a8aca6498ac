// All figures of an installation.
import { type Installation, inOneGo, perSubject, type Steps } from '../model/index.ts';
import { allFigures } from './all.ts';
import type { Figure, FigureKind, Input } from './kind.ts';

interface Group {
  readonly where: FigureKind['where'];
  readonly kinds: FigureKind[];
}

/** Kinds in a row that ask the same of an installation. */
const groups: readonly Group[] = allFigures.reduce<Group[]>((made, kind) => {
  const last = made.at(-1);
  if (last !== undefined && last.where === kind.where) last.kinds.push(kind);
  else made.push({ where: kind.where, kinds: [kind] });
  return made;
}, []);

/** Every figure that can be worked out, in the order of the kinds; what lacks a fact is left out. */
export const figuresOf = (installation: Installation): readonly Figure[] => inOneGo(workingFigures(installation));

/** The same in small steps: it rests between the kinds. What was worked out is kept with the installation. */
export function* workingFigures(installation: Installation): Steps<readonly Figure[]> {
  const kept = keptOf(installation);
  if (kept.figures !== undefined) return kept.figures;
  const figures: Figure[] = [];
  let kind: FigureKind;
  const give = (subject: string, value: number, at: Figure['at'], inputs: () => readonly Input[], words?: () => string): void => {
    if (Number.isFinite(value)) figures.push(new Found(kind, subject, value, at, inputs, words));
  };
  for (const { where, kinds } of groups) {
    if (where !== undefined && !where(installation)) continue;
    for (kind of kinds) {
      kind.work(installation, give);
      yield;
    }
  }
  // Whoever asked meanwhile has the same ones.
  return (kept.figures ??= figures);
}

const keptOf = perSubject((_: Installation): { figures: readonly Figure[] | undefined } => ({ figures: undefined }));

/** A figure whose id is put together only when somebody asks for it. */
class Found implements Figure {
  readonly kind: FigureKind;
  readonly subject: string;
  readonly value: number;
  readonly at: Figure['at'];
  readonly inputs: () => readonly Input[];
  readonly words: (() => string) | undefined;

  constructor(
    kind: FigureKind,
    subject: string,
    value: number,
    at: Figure['at'],
    inputs: () => readonly Input[],
    words: (() => string) | undefined,
  ) {
    this.kind = kind;
    this.subject = subject;
    this.value = value;
    this.at = at;
    this.inputs = inputs;
    this.words = words;
  }

  get id(): string {
    return idOf(this.kind.id, this.subject);
  }
}

/** `leaf.NAME.inertia` of `west`, or `panel.PANEL.adjuster.NAME` of `main/dwell-trim`. */
export function idOf(pattern: string, subject: string): string {
  const slash = pattern.includes('PANEL') ? subject.indexOf('/') : -1;
  return slash < 0
    ? pattern.replace('NAME', () => subject)
    : pattern.replace('PANEL', () => subject.slice(0, slash)).replace('NAME', () => subject.slice(slash + 1));
}
