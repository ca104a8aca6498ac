// What an output of `check` is: one file each in this folder; the list of them is generated.
import type { Report } from '../report.ts';

/** How a person reads it. Outputs for programs take no notice. */
export interface Manner {
  readonly colour: boolean;
  /** Columns of the terminal; undefined where lines need not be broken. */
  readonly columns: number | undefined;
  /** Findings only: no summary. */
  readonly quiet: boolean;
}

export interface Output {
  /** As `--output` takes it. */
  readonly name: string;
  /** What it is, in one line for the help, without a full stop. */
  readonly summary: string;
  readonly reader: 'person' | 'program';
  readonly write: (report: Report, manner: Manner) => string;
}
