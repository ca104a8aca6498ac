#!/usr/bin/env node
// The command as it is started. Only here are the process and the clock touched.
import { isatty } from 'node:tty';
import { Channel } from './channel.ts';
import { readAll } from './files.ts';
import { lastWords, run } from './run.ts';
import { exit, type Terminal } from './terminal.ts';

const { env } = process;
const isWatched = isatty(1);
const output = new Channel(1, isWatched);
const errors = new Channel(2, true);

/** What standard error cannot take is lost: there is nowhere to say so. */
function complain(text: string): void {
  try {
    errors.write(text);
  } catch {
    // As said.
  }
}

process.on('uncaughtException', (error) => {
  complain(`pintle: ${lastWords(error)}\n`);
  process.exit(exit.wrong);
});

const terminal: Terminal = {
  out: (text) => output.write(text),
  err: (text) => {
    // What was said before is read before.
    output.flush();
    complain(text);
  },
  input: (most) => readAll(0, most),
  folder: process.cwd(),
  colour: isWatched && (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb',
  watched: isatty(2),
  // Standard output as a stream is made only where it is a terminal: it would set a pipe not to wait.
  columns: isWatched ? process.stdout.columns : undefined,
  today: () => {
    const now = new Date();
    return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
  },
  now: () => performance.now(),
};

const code = run(process.argv.slice(2), terminal);
try {
  output.flush();
  process.exitCode = code;
} catch (error) {
  complain(`pintle: ${lastWords(error)}\n`);
  process.exitCode = exit.wrong;
}
