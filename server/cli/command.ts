// What a command is. Each stands in a file of its own under commands/.
import type { Arguments, Options } from './arguments.ts';
import type { Terminal } from './terminal.ts';

export interface Command {
  readonly name: string;
  /** Its place in the list of commands, the smallest first; none stands twice. */
  readonly order: number;
  /** How it is called, without the program's name. */
  readonly usage: string;
  /** One line for the list of commands. */
  readonly summary: string;
  readonly options: Options;
  /** What else there is to know, for `help NAME`. */
  readonly details: string;
  /** Gives the exit code; nothing when it goes on running. */
  readonly run: (given: Arguments, terminal: Terminal) => number | undefined;
}
