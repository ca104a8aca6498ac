// What a figure is: a number worked out from the file, with all that a person needs to check it by hand.
import type { Installation } from '../model/index.ts';
import type { FigureUnit } from '../vocabulary/index.ts';

/** How far a source can be trusted. A value from memory never decides an error on its own. */
export type Standing = 'published' | 'derived' | 'common practice' | 'from memory';

export interface Source {
  /** The standard, textbook or page; for common practice, the words "common practice, no source". */
  readonly text: string;
  readonly standing: Standing;
}

/** The source of much that is worked out of how drives and leaves move. */
export const mechanics: Source = { text: 'plane kinematics, any mechanics textbook', standing: 'derived' };

/** One number that went into a figure. */
export interface Input {
  readonly name: string;
  readonly value: number;
  readonly unit: FigureUnit;
  /** Where it comes from when it is not stated in the file: a default, a model, another figure. */
  readonly from?: string;
}

/** What figures are about, and whether an editor shows them beside the lines unless it is told otherwise. */
export const topics = {
  timing: { doc: 'run times, lags, the dwell and the whole cycle', shown: true },
  travel: { doc: 'stroke, levers and angles of the drives', shown: true },
  impact: { doc: 'speed and energy of the moving leaves, and how far they run on', shown: true },
  force: { doc: 'what moves a leaf, and what the force limits leave', shown: true },
  safety: { doc: 'places that can hurt, and what the safety functions reach', shown: true },
  settings: { doc: 'where to set the adjusters of the panel', shown: true },
  measurements: { doc: 'what to read at edge loops, and what measured forces show', shown: false },
  gaps: { doc: 'gaps at hinges, under leaves and through them', shown: false },
  electrical: { doc: 'currents, voltages, cables, protection, batteries', shown: false },
  wind: { doc: 'wind pressure, and the gusts that stop a drive', shown: false },
  traffic: { doc: 'duty of the motors, and queues', shown: false },
} as const satisfies Readonly<Record<string, { readonly doc: string; readonly shown: boolean }>>;
export type Topic = keyof typeof topics;

/** A family of figures: one calculation, worked for every subject that it applies to. */
export interface FigureKind {
  /**
   * The id with the subject's name in capitals: `leaf.NAME.inertia`; of a part of a panel, `panel.PANEL.adjuster.NAME`, whose subjects are
   * `main/dwell-dial`.
   */
  readonly id: string;
  readonly title: string;
  /** The unit of `value`: SI, angles in degrees; years, hours and degrees Celsius where the standard that asks reckons in them. */
  readonly unit: FigureUnit;
  readonly topic: Topic;
  readonly formula: string;
  readonly source: Source;
  /** The number is only a code for the words that are given with it, as 3 is for “PL c”: by itself it says nothing to people. */
  readonly coded?: true;
  /** What a person would change in the file to change it. */
  readonly changedBy: string;
  /** Gives each figure of this kind to `give`. Never throws; where a fact is missing it gives nothing. */
  readonly work: (installation: Installation, give: Give) => void;
  /** False where this kind has nothing to give, so that it need not be asked. */
  readonly where?: (installation: Installation) => boolean;
}

/**
 * Kinds that give nothing where `where` is false: that is asked once for all of them. It only saves time, so what it says has to follow
 * from what they do.
 */
export const onlyWhere = (where: (installation: Installation) => boolean, kinds: readonly FigureKind[]): readonly FigureKind[] =>
  kinds.map((kind) => ({ ...kind, where }));

/** A figure found: the subject's name, the value, the line that causes it, and its derivation on demand. */
export type Give = (
  subject: string,
  value: number,
  at: { readonly start: number; readonly end: number },
  inputs: () => readonly Input[],
  words?: () => string,
) => void;

export interface Figure {
  readonly kind: FigureKind;
  readonly id: string;
  readonly value: number;
  readonly at: { readonly start: number; readonly end: number };
  /** The numbers that went into it. */
  readonly inputs: () => readonly Input[];
  /** The value as a person would say it, where that says more than the number: "about a quarter turn". */
  readonly words: (() => string) | undefined;
}

const degrees = 180 / Math.PI;
/** Radians to degrees, for figures that people read. */
export const inDegrees = (radians: number): number => radians * degrees;
