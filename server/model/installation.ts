// The installation: what a site file says, with every name resolved. Plain data; the figures and the rules read it.
import type { Statement, WordValue } from '../../grammar/index.ts';
import type { Acceptance, Blocks, Entity, Facts, Line, ModelKind, Reading } from '../vocabulary/index.ts';
import type { InstallationProblem } from './problems.ts';

/** A stretch of a file's text. */
export interface Place {
  readonly path: string;
  readonly start: number;
  readonly end: number;
}

interface Named<B extends keyof Blocks> {
  readonly name: string;
  readonly at: Statement;
  readonly nameAt: WordValue | undefined;
  readonly title: string | undefined;
  readonly facts: Facts<Blocks[B]>;
  /** Words of lines that stand in the block but could not be read. */
  readonly unread: readonly string[];
  /** Kept results of what is worked out of it; see memo.ts. */
  readonly memo: unknown[];
}

interface OfSite {
  readonly installation: Installation;
}

interface Modelled<M> {
  /** The word after the colon, if there is one. */
  readonly modelAt: WordValue | undefined;
  readonly model: M | undefined;
}

/** The readings at one point of a leaf, and the block that they stand in. */
export interface ForceRecord {
  readonly fact: Line<Blocks['measured']['lines']['force']>;
  readonly measured: Measured;
}

export interface Leaf extends Named<'leaf'>, OfSite {
  readonly drives: Drive[];
  /** What sits on it, in the order of the text. */
  readonly sensors: Sensor[];
  /** Forces measured on it, in the order of the text. */
  readonly forces: ForceRecord[];
  /** The leaf whose end this one covers. */
  covers: Leaf | undefined;
  /** The leaf that covers the end of this one. */
  coveredBy: Leaf | undefined;
}

export interface Drive extends Named<'drive'>, OfSite, Modelled<DriveModel> {
  leaf: Leaf | undefined;
}

export interface Sensor extends Named<'sensor'>, OfSite, Modelled<SensorModel> {
  leaf: Leaf | undefined;
  /** The next edge of its chain. */
  next: Sensor | undefined;
  readonly wires: Wire[];
  registered: boolean;
}

export interface Control extends Named<'control'>, OfSite {
  readonly wires: Wire[];
}

export interface Cable extends Named<'cable'>, OfSite, Modelled<CableModel> {
  /** What is at its far end. */
  load: Load | undefined;
}

export interface Panel extends Named<'panel'>, OfSite, Modelled<PanelModel> {
  readonly wires: Wire[];
  readonly links: TerminalLink[];
  readonly selections: Selection[];
  /** The first of each counts; a second one is reported. */
  readonly battery: Battery | undefined;
  readonly solar: Solar | undefined;
}

/** What can be wired to a panel. */
export type Device =
  | { readonly kind: 'sensor'; readonly it: Sensor }
  | { readonly kind: 'drive'; readonly it: Drive }
  | { readonly kind: 'control'; readonly it: Control };

/** What a cable can feed. */
export type Load = Device | { readonly kind: 'panel'; readonly it: Panel };

/** A terminal as named on a line of a panel; `terminal` is absent where the panel's model has none of that name. */
export interface TerminalUse {
  readonly at: WordValue;
  readonly terminal: Terminal | undefined;
}

export interface Wire {
  readonly fact: Line<Blocks['panel']['lines']['wire']>;
  readonly panel: Panel;
  readonly device: Device | undefined;
  readonly part: 'signal' | 'supply' | 'test';
  readonly ends: readonly TerminalUse[];
  /** The device with whose contact this one lies in series, as the line says; absent where no device has that name. */
  readonly series: Device | undefined;
}

/** A line of a panel that joins terminals with each other. */
export interface TerminalLink {
  readonly fact: Line<Blocks['panel']['lines']['link']>;
  readonly ends: readonly TerminalUse[];
}

export interface Selection {
  readonly fact: Line<Blocks['panel']['lines']['select']>;
  readonly selector: Entity<Blocks['panel-model']['blocks']['selector']> | undefined;
}

interface Model<B extends ModelKind> {
  readonly name: string;
  readonly title: string | undefined;
  /** The file that declares it. */
  readonly path: string;
  readonly at: Statement;
  readonly nameAt: WordValue | undefined;
  readonly facts: Facts<Blocks[B]>;
  readonly unread: readonly string[];
}

export type DriveModel = Model<'drive-model'>;
export type SensorModel = Model<'sensor-model'>;
export type CableModel = Model<'cable-model'>;

export type Terminal = Line<Blocks['panel-model']['lines']['terminal']>;
export type TerminalRole = Terminal['role'];
export type Adjuster = Entity<Blocks['panel-model']['blocks']['adjuster']>;

export interface PanelModel extends Model<'panel-model'> {
  readonly terminals: ReadonlyMap<string, Terminal>;
  readonly selectors: ReadonlyMap<string, Entity<Blocks['panel-model']['blocks']['selector']>>;
  readonly adjusters: readonly Adjuster[];
}
export type ModelOf<Kind extends ModelKind> = Kind extends 'panel-model' ? PanelModel : Model<Kind>;

/** A device that a safety function runs through; `it` is absent where no device or panel has that name. */
export interface FunctionPart {
  readonly at: WordValue;
  readonly it: Load | undefined;
}
export type Subsystem = Entity<Blocks['function']['blocks']['subsystem']>;

export interface SafetyFunction extends Named<'function'>, OfSite {
  /** In series, in the order of the text. */
  readonly parts: readonly FunctionPart[];
  readonly subsystems: readonly Subsystem[];
}

export type Battery = Entity<Blocks['panel']['blocks']['battery']>;
export type Solar = Entity<Blocks['panel']['blocks']['solar']>;
export type Measured = Entity<Blocks['measured']>;
export type Motion = Entity<Blocks['motion']>;
export type Site = Entity<Blocks['site']>;

export interface Installation {
  readonly path: string;
  readonly reading: Reading;
  /** `site`: has something of a site in it. `library`: only models. `empty`: neither. */
  readonly kind: 'site' | 'library' | 'empty';
  readonly site: Site | undefined;
  readonly motion: Motion | undefined;
  readonly leaves: readonly Leaf[];
  readonly drives: readonly Drive[];
  readonly sensors: readonly Sensor[];
  readonly controls: readonly Control[];
  readonly panels: readonly Panel[];
  readonly cables: readonly Cable[];
  readonly functions: readonly SafetyFunction[];
  readonly accepts: readonly Acceptance[];
  /** All that is wrong with text, words and names; each is named by the rule that explains it. */
  readonly problems: readonly InstallationProblem[];
  /** Files whose models this one can see, by their `use` lines and theirs. */
  readonly libraries: readonly string[];
  readonly memo: unknown[];
}

/** The line that states a fact, or else the name or the word of the block that should. */
export function factPlace(
  entity: { readonly at: Statement; readonly nameAt?: WordValue | undefined },
  fact?: { readonly line: Statement } | undefined,
): { start: number; end: number } {
  return fact === undefined ? headPlace(entity) : { start: fact.line.start, end: fact.line.end };
}

/** The word and name that open a block: where a finding about the whole block points. */
export function headPlace(entity: { readonly at: Statement; readonly nameAt?: WordValue | undefined }): { start: number; end: number } {
  const word = entity.at.word;
  return { start: entity.at.start, end: entity.nameAt?.end ?? word?.end ?? entity.at.start + 1 };
}
