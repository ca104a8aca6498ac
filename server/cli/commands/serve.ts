import type { Arguments } from '../arguments.ts';
import type { Command } from '../command.ts';
import { WrongUse } from '../terminal.ts';

export const command: Command = {
  name: 'serve',
  order: 5,
  usage: 'serve --stdio',
  summary: 'Runs the language server for an editor.',
  options: {
    stdio: { help: 'speak over standard input and output, the one way there is' },
    clientProcessId: { value: 'ID', help: 'the editor that started it; some editors say so' },
  },
  details: 'Started by an editor and not by hand. It reads the files of the workspace and sends nothing anywhere.',
  run: runServe,
};

function runServe(given: Arguments): undefined {
  if (!given.has('stdio') || given.paths.length > 0)
    throw new WrongUse('The language server speaks over standard input and output: pintle serve --stdio');
  // Loaded only here: these libraries take longer to load than a check takes to run.
  const server = require('./server.cjs') as { readonly serveStdio: () => void };
  server.serveStdio();
}
