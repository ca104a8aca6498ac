#!/usr/bin/env node
// The command as it is started. Only here are the process and the clock touched.
import { readAll } from './files.ts';
import { lastWords, run } from './run.ts';
import { exit, type Terminal } from './terminal.ts';

const { stdout, stderr, env } = process;

/** A reader that has seen enough (`pintle … | head`) is no mistake. */
function readerGone(error: NodeJS.ErrnoException): void {
  process.exit(error.code === 'EPIPE' ? undefined : exit.wrong);
}
stdout.on('error', readerGone);
stderr.on('error', readerGone);

process.on('uncaughtException', (error) => {
  stderr.write(`pintle: ${lastWords(error)}\n`);
  process.exit(exit.wrong);
});

const terminal: Terminal = {
  out: (text) => void stdout.write(text),
  err: (text) => void stderr.write(text),
  input: (most) => readAll(0, most),
  folder: process.cwd(),
  colour: stdout.isTTY === true && (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb',
  watched: stderr.isTTY === true,
  columns: stdout.isTTY === true ? stdout.columns : undefined,
  today: () => {
    const now = new Date();
    return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
  },
  now: () => performance.now(),
};

process.exitCode = run(process.argv.slice(2), terminal);
