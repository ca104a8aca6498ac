// The server as a process of its own: over standard input and output, or as the editor's client starts it.
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { disk } from './disk.ts';
import { dayOf, type Host } from './host.ts';
import { startServer } from './server.ts';

export type { Disk, Host } from './host.ts';
export { startServer } from './server.ts';

export const nodeHost: Host = {
  disk,
  today: () => dayOf(new Date()),
  now: () => performance.now(),
  tick: () => new Promise((resolve) => setImmediate(resolve)),
};

/**
 * Serves until the client ends the connection. The transport is what the arguments of the process say (`--node-ipc`,
 * `--socket`, `--pipe`), as the client library passes them; without one it is standard input and output.
 */
export function serveStdio(): void {
  const named = process.argv.some((argument) => /^--(?:node-ipc|socket|pipe)(?:=|$)/.test(argument));
  const connection = named ? createConnection(ProposedFeatures.all) : createConnection(ProposedFeatures.all, process.stdin, process.stdout);
  // Standard output belongs to the protocol: a stray line there would end the conversation.
  console.log = console.info = console.debug = (...values: unknown[]) => connection.console.log(values.map(String).join(' '));
  process.on('uncaughtException', (error) => connection.console.error(`Not caught: ${error.stack ?? error.message}`));
  process.on('unhandledRejection', (reason) =>
    connection.console.error(`Not caught: ${reason instanceof Error ? (reason.stack ?? reason.message) : String(reason)}`),
  );
  startServer(connection, nodeHost);
}

// VS Code's client starts this file itself, with `--node-ipc`; the command loads it and calls `serveStdio`.
if (process.argv.includes('--node-ipc')) serveStdio();
