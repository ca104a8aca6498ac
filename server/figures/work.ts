// All figures of an installation.
import { type Installation, perSubject, type Steps } from '../model/index.ts';
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

/** What was worked out of an installation, and how far that has come. */
class Working {
  readonly installation: Installation;
  readonly figures: Figure[] = [];
  #group = 0;
  #next = 0;
  #kind: FigureKind | undefined;

  constructor(installation: Installation) {
    this.installation = installation;
  }

  /** Works the next kind; false where there is none left. */
  goOn(): boolean {
    const group = groups[this.#group];
    if (group === undefined) return false;
    const { where, kinds } = group;
    const kind = this.#next === 0 && where !== undefined && !where(this.installation) ? undefined : kinds[this.#next++];
    if (kind === undefined) {
      this.#group++;
      this.#next = 0;
      return true;
    }
    this.#kind = kind;
    kind.work(this.installation, this.#give);
    return true;
  }

  readonly #give = (subject: string, value: number, at: Figure['at'], inputs: () => readonly Input[], words?: () => string): void => {
    if (Number.isFinite(value)) this.figures.push(new Found(this.#kind as FigureKind, subject, value, at, inputs, words));
  };
}

const workingOf = perSubject((installation: Installation) => new Working(installation));

/** Every figure that can be worked out, in the order of the kinds; what lacks a fact is left out. */
export function figuresOf(installation: Installation): readonly Figure[] {
  const working = workingOf(installation);
  while (working.goOn());
  return working.figures;
}

/** The same in small steps: it rests between the kinds. Whoever cannot wait meanwhile goes on where it has come to. */
export function* workingFigures(installation: Installation): Steps<readonly Figure[]> {
  const working = workingOf(installation);
  while (working.goOn()) yield;
  return working.figures;
}

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

/** `leaf.NAME.inertia` of `west`, or `panel.PANEL.adjuster.NAME` of `main/dwell-dial`. */
export function idOf(pattern: string, subject: string): string {
  const slash = pattern.includes('PANEL') ? subject.indexOf('/') : -1;
  return slash < 0
    ? pattern.replace('NAME', () => subject)
    : pattern.replace('PANEL', () => subject.slice(0, slash)).replace('NAME', () => subject.slice(slash + 1));
}
