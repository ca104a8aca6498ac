// From arguments to an exit code. Whatever happens is told in one line, never as a stack trace.
import { nearest, version } from '../engine/inside.ts';
import { didYouMean, readArguments } from './arguments.ts';
import { allCommands } from './commands/all.ts';
import { visible } from './display.ts';
import { overview, pageOf } from './help.ts';
import { exit, type Terminal, WrongUse } from './terminal.ts';

const commands = [...allCommands].sort((a, b) => a.order - b.order);

/** Runs a command; gives the exit code, or nothing when the command goes on running. */
export function run(given: readonly string[], terminal: Terminal): number | undefined {
  try {
    return dispatch(given, terminal);
  } catch (error) {
    terminal.err(`pintle: ${lastWords(error)}\n`);
    return exit.wrong;
  }
}

/** What is told of something that went wrong, in one line. */
export function lastWords(error: unknown): string {
  if (error instanceof WrongUse) return visible(error.message);
  const message = error instanceof Error ? error.message : String(error);
  return `something went wrong inside Pintle, which should not happen: ${visible(message.split('\n')[0] ?? '').slice(0, 300)}`;
}

function dispatch(given: readonly string[], terminal: Terminal): number | undefined {
  const [verb, ...rest] = given;
  if (verb === undefined) {
    terminal.err(overview(commands));
    return exit.wrong;
  }
  if (verb === '--version' || verb === '-V' || verb === 'version') {
    terminal.out(version + '\n');
    return exit.fine;
  }
  if (verb === 'help' || verb === '--help' || verb === '-h') return help(rest[0], terminal);
  const command = commandNamed(verb);
  if (rest.includes('--help') || rest.includes('-h')) return help(verb, terminal);
  return command.run(readArguments(verb, rest, command.options), terminal);
}

function help(name: string | undefined, terminal: Terminal): number {
  terminal.out(name === undefined ? overview(commands) : pageOf(commandNamed(name)));
  return exit.fine;
}

function commandNamed(name: string) {
  const command = commands.find((one) => one.name === name);
  if (command !== undefined) return command;
  const meant = nearest(name, [...commands.map((one) => one.name), 'help']);
  throw new WrongUse(`There is no command “${name}”.${didYouMean(meant)} “pintle help” lists them.`);
}
