// Requests that are not in the protocol. Server and client share this list; lines count from 0, as everywhere in the protocol.
import type { OverviewKind, RuleShown, Severity } from '../editor/index.ts';

/** Client to server: every figure of a file. */
export const figuresRequest = 'pintle/figures';
export interface FiguresParams {
  readonly uri: string;
}
export interface FigureAnswer {
  readonly id: string;
  readonly title: string;
  /** SI, angles in degrees. */
  readonly value: number;
  readonly unit: string;
  /** In the reader's unit, or in words. */
  readonly shown: string;
  readonly formula: string;
  readonly inputs: readonly { readonly name: string; readonly value: number; readonly unit: string; readonly shown: string; readonly from?: string }[];
  readonly source: string;
  readonly line: number;
}

/** Client to server: all rules. */
export const rulesRequest = 'pintle/rules';
export type RulesAnswer = readonly RuleShown[];

/** Client to server: the installation as a tree of things. */
export const overviewRequest = 'pintle/overview';
export interface OverviewParams {
  readonly uri: string;
}
export interface OverviewAnswer {
  readonly id: string;
  readonly kind: OverviewKind;
  readonly label: string;
  readonly detail: string;
  readonly severity?: Severity;
  readonly range: RangeAnswer;
  readonly children: readonly OverviewAnswer[];
}
export interface RangeAnswer {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** Client to server: what files promise of themselves, and whether it is so. Without `uris`, all files of the folders. */
export const promisesRequest = 'pintle/promises';
export interface PromisesParams {
  readonly uris?: readonly string[];
}
export type PromisesAnswer = readonly FilePromises[];
export interface FilePromises {
  readonly uri: string;
  readonly promises: readonly { readonly id: string; readonly label: string; readonly range: RangeAnswer; readonly kept: boolean; readonly message: string }[];
}

/** Client to server: drawings of an installation, and what in them stands where in its file. */
export const previewRequest = 'pintle/preview';
export interface PreviewParams {
  readonly uri: string;
}
export interface PreviewAnswer {
  /** The site's title, or the file's name. */
  readonly title: string;
  readonly counts: { readonly error: number; readonly warning: number; readonly note: number };
  readonly drawings: readonly DrawingAnswer[];
  /** Everything that is drawn and stands in the file. A drawing's element has its id in `data-thing`. */
  readonly things: readonly ThingAnswer[];
  /** How the leaves move through one full cycle; none where that cannot be worked out. */
  readonly cycle?: CycleAnswer;
  /** Style sheet of the drawings: classes, and colours as custom properties that a theme may set. */
  readonly style: string;
}
export interface DrawingAnswer {
  /** `plan`, `timing`, `force`, `wiring`. */
  readonly id: string;
  readonly title: string;
  /** The drawing in words, for those who cannot see it. */
  readonly description: string;
  /** A whole `svg` element with a viewBox and no size, no script, no style and no address; text from the file is escaped. */
  readonly svg: string;
  /** The same facts to read. */
  readonly table: { readonly caption: string; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** Why there is nothing to draw, and which facts would change that; then `svg` is empty. */
  readonly lacks?: string;
}
export interface ThingAnswer {
  /** `leaf.west`, `sensor.lower-beam`, `terminal.main.B1`, `hazard.west.hinge`. */
  readonly id: string;
  readonly label: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number }; readonly end: { readonly line: number; readonly character: number } };
}
export interface CycleAnswer {
  /** Seconds of the whole cycle: opening, waiting open, closing, seating. */
  readonly duration: number;
  /** Stretches of it in words, for the slider. */
  readonly phases: readonly { readonly from: number; readonly to: number; readonly label: string }[];
  readonly leaves: readonly CycleLeaf[];
}
export interface CycleLeaf {
  /** Its `data-moves` in the plan; the element is drawn closed. Parts of a drive move too, and may stand within a leaf that carries them along. */
  readonly thing: string;
  /** Turns about a point of the plan (in its viewBox), or moves along it. */
  readonly motion: { readonly kind: 'turn'; readonly x: number; readonly y: number } | { readonly kind: 'shift'; readonly x: number; readonly y: number };
  /** Seconds, rising, and at each the angle in degrees as SVG turns, or the share 0 to 1 of the shift. Between them, straight lines. */
  readonly times: readonly number[];
  readonly values: readonly number[];
}

/** Client to server: one drawing as a file of its own, with its style and its colours in it. */
export const drawingRequest = 'pintle/drawing';
export interface DrawingParams {
  readonly uri: string;
  readonly id: string;
  readonly theme: 'light' | 'dark' | 'print';
}
export interface DrawingFileAnswer {
  /** A whole SVG document; empty where there is nothing to draw. */
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Server to client: the text of a file that the server cannot read itself. */
export const readRequest = 'pintle/read';
export interface ReadParams {
  readonly uri: string;
}
export type ReadAnswer = { readonly text: string } | { readonly missing: true };

/** What the client may pass when it starts the server. */
export interface InitializationOptions {
  /** Base URI of the rules' pages; each diagnostic then links to its own. */
  readonly pages?: string;
  /** The settings, for clients that cannot be asked for them; see settings.ts. */
  readonly settings?: object;
  /** Command of the client that asks for completion again after a word was taken. */
  readonly suggestCommand?: string;
  /** Command of the client that shows the drawings of a file, whose URI it is given; without it no lens offers them. */
  readonly previewCommand?: string;
}
