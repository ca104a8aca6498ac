// Requests that are not in the protocol. Server and client share this list; lines count from 0, as everywhere in the protocol.
import type { RuleShown } from '../editor/index.ts';

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
}
