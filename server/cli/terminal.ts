// What a command knows of the world it runs in. Made once in main.ts; the clock is read here and nowhere else.
import type { TooLong } from './files.ts';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Everything on standard input, if it has at most so many bytes. Throws what reading throws. */
  readonly input: (most: number) => { readonly bytes: Uint8Array } | TooLong;
  /** The folder that paths are meant from. */
  readonly folder: string;
  /** True when a person is reading standard output, and has not asked for plain text. */
  readonly colour: boolean;
  /** True when a person is reading standard error. */
  readonly watched: boolean;
  /** Columns of the terminal; undefined when standard output is not one. */
  readonly columns: number | undefined;
  /** Today in local time, as YYYY-MM-DD. */
  readonly today: () => string;
  /** Milliseconds since some moment; for progress only. */
  readonly now: () => number;
}

/** What the exit codes mean; the contract fixes them. */
export const exit = { fine: 0, findings: 1, wrong: 2 } as const;

/** Wrong use or unreadable input, with a message for people. Ends the command with exit code 2. */
export class WrongUse extends Error {}
