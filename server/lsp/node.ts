// The server as a process of its own: over standard input and output, or as the editor's client starts it.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createConnection,
  createServerPipeTransport,
  createServerSocketTransport,
  IPCMessageReader,
  IPCMessageWriter,
  type MessageReader,
  type MessageWriter,
  ProposedFeatures,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { plainly } from './client.ts';
import { disk } from './disk.ts';
import { FramedReader } from './framing.ts';
import { createGate, type Gate } from './gate.ts';
import { dayOf, type Host } from './host.ts';
import { startServer } from './server.ts';

export { FramedReader } from './framing.ts';
export type { Disk, Host } from './host.ts';

export const nodeHost: Host = {
  disk,
  today: () => dayOf(new Date()),
  now: () => performance.now(),
  tick: () => new Promise((resolve) => setImmediate(resolve)),
  pages: shippedPages(),
};

/** Beside the built server; nowhere beside its sources. */
function shippedPages(): string | undefined {
  // Only what is built is a script with a folder of its own; a module has none.
  if (typeof __dirname === 'undefined') return undefined;
  const pages = join(__dirname, 'pages');
  return existsSync(join(pages, 'rules')) ? pathToFileURL(pages).href : undefined;
}

/** Serves one client; `broken` is told why nothing more can be read of it. */
export function serve(reader: MessageReader, writer: MessageWriter, host: Host, broken?: (why: string) => void): Gate {
  const gate = createGate(reader, writer, broken);
  startServer(createConnection(ProposedFeatures.all, gate.reader, gate.writer), host);
  return gate;
}

type Transport = readonly [reader: MessageReader, writer: MessageWriter];

/** What follows `--NAME` or `--NAME=` among the arguments of the process. */
function argument(name: string): string | undefined {
  const at = process.argv.findIndex((one) => one === `--${name}` || one.startsWith(`--${name}=`));
  return at < 0 ? undefined : (/=(.*)$/s.exec(process.argv[at] ?? '')?.[1] ?? process.argv[at + 1]);
}

function transport(): Transport {
  if (process.argv.includes('--node-ipc')) return [new IPCMessageReader(process), new IPCMessageWriter(process)];
  const [socket, pipe] = [argument('socket'), argument('pipe')];
  if (socket !== undefined) return createServerSocketTransport(Number(socket));
  if (pipe !== undefined) return createServerPipeTransport(pipe);
  return [new FramedReader(process.stdin), new StreamMessageWriter(process.stdout)];
}

/**
 * Serves until the client ends the connection. The transport is what the arguments of the process say (`--node-ipc`,
 * `--socket`, `--pipe`), as the client library passes them; without one it is standard input and output.
 */
export function serveStdio(): void {
  const tell = (line: string): void => void process.stderr.write(`pintle: ${line}\n`);
  // Standard output belongs to the protocol: a stray line there would end the conversation.
  console.log = console.info = console.debug = (...values: unknown[]) => tell(values.map(String).join(' '));
  process.on('uncaughtException', (error) => tell(`not caught: ${plainly(error)}`));
  process.on('unhandledRejection', (reason) => tell(`not caught: ${plainly(reason)}`));
  const [reader, writer] = transport();
  const gate = serve(reader, writer, nodeHost, (why) => {
    tell(`${why} The conversation ends here.`);
    process.exit(1);
  });
  // A client that goes away without a word ends the server too.
  const gone = (): void => process.exit(gate.isDown() ? 0 : 1);
  reader.onClose(gone);
  process.on('disconnect', gone);
}

// VS Code's client starts this file itself, with `--node-ipc`; the command loads it and calls `serveStdio`.
if (process.argv.includes('--node-ipc')) serveStdio();
