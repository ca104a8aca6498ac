// What an output of `check` is: one file each in this folder; the list of them is generated. A report is written as it comes,
// file by file, so that it can have any size: no output may keep what it was told of a finding.
import type { Severity } from '../../engine/index.ts';
import type { CheckedFile, Totals, Unread } from '../report.ts';

/** How a person reads it. Outputs for programs take no notice. */
export interface Manner {
  readonly colour: boolean;
  /** Columns of the terminal; undefined where lines need not be broken. */
  readonly columns: number | undefined;
  /** Findings only: no summary. */
  readonly quiet: boolean;
  /** Everything that was judged or should have been is told, file by file. */
  readonly account: boolean;
}

/** What is known before the first file is looked at. */
export interface Beginning {
  readonly send: (text: string) => void;
  readonly manner: Manner;
  /** The version of the program. */
  readonly version: string;
  readonly failOn: Severity;
}

/** Told of each file once, in the order of the report, and of the whole when all are through. */
export interface Writer {
  readonly file: (file: CheckedFile) => void;
  readonly unread: (unread: Unread) => void;
  readonly end: (totals: Totals) => void;
}

export interface Output {
  /** As `--output` takes it. */
  readonly name: string;
  /** What it is, in one line for the help, without a full stop. */
  readonly summary: string;
  readonly reader: 'person' | 'program';
  readonly begin: (beginning: Beginning) => Writer;
}
