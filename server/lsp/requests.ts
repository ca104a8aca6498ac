// Requests that are not in the protocol. Server and client share this list; lines count from 0, as everywhere in the protocol.

import type { DrawingShown, OverviewKind, Preview } from '../editor/index.ts';
import type { DrawingFile, RuleShown, Severity } from '../engine/index.ts';

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
  readonly inputs: readonly {
    readonly name: string;
    readonly value: number;
    readonly unit: string;
    readonly shown: string;
    readonly from?: string;
  }[];
  readonly source: string;
  readonly line: number;
}

/** Client to server: all rules. */
export const rulesRequest = 'pintle/rules';
export type RulesAnswer = readonly RuleShown[];

/** Client to server: how much of a file was judged. */
export const accountRequest = 'pintle/account';
export interface AccountParams {
  readonly uri: string;
}
export interface AccountAnswer {
  /** The file says that it is a draft. */
  readonly draft: boolean;
  readonly judged: number;
  readonly of: number;
  /** What settles most, as one asks for it; none where everything is judged. */
  readonly question?: string;
}

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
  readonly promises: readonly {
    readonly id: string;
    readonly label: string;
    readonly range: RangeAnswer;
    readonly kept: boolean;
    readonly message: string;
  }[];
}

/** Client to server: drawings of an installation, and what in them stands where in its file. */
export const previewRequest = 'pintle/preview';
export interface PreviewParams {
  readonly uri: string;
}
export interface PreviewAnswer extends Omit<Preview, 'things'> {
  readonly things: readonly ThingAnswer[];
}
export type DrawingAnswer = DrawingShown;
export interface ThingAnswer {
  /** `leaf.west`, `sensor.lower-beam`, `terminal.main.B1`, `hazard.west.hinge`. */
  readonly id: string;
  readonly label: string;
  readonly range: RangeAnswer;
}
export type CycleAnswer = NonNullable<Preview['cycle']>;
export type CycleLeaf = CycleAnswer['leaves'][number];

/** Client to server: one drawing as a file of its own, with its style and its colours in it. */
export const drawingRequest = 'pintle/drawing';
export interface DrawingParams {
  readonly uri: string;
  readonly id: string;
  readonly theme: 'light' | 'dark' | 'print';
}
export type DrawingFileAnswer = DrawingFile;

/** Server to client, where it says `readsFiles`: the text of a file that the server cannot read itself. */
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
  /** Command of the client under which it shows a lens that is words and nothing to press: empty in VS Code. Without it there are none. */
  readonly lensCommand?: string;
  /** The client answers `pintle/read`. */
  readonly readsFiles?: boolean;
  /** The client knows the types and modifiers of tokens that are not of the protocol. Without it those of the protocol stand for them. */
  readonly ownTokenTypes?: boolean;
  /** Command of the client that shows the page of a rule, whose name it is given; without it no action offers that. */
  readonly explainCommand?: string;
}
