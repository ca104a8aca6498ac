// The server as a worker of an editor in a browser. There is no disk; every library is asked of the client.
import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from 'vscode-languageserver/browser';
import { createGate } from './gate.ts';
import { dayOf, type Host } from './host.ts';
import { startServer } from './server.ts';

/** A turn of the worker's queue; a timer would wait for four milliseconds and more. */
function ticker(): () => Promise<void> {
  const waiting: (() => void)[] = [];
  const { port1, port2 } = new MessageChannel() as unknown as {
    port1: { onmessage: () => void };
    port2: { postMessage: (message: undefined) => void };
  };
  port1.onmessage = () => waiting.shift()?.();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      port2.postMessage(undefined);
    });
}

export const browserHost = (): Host => ({ disk: undefined, today: () => dayOf(new Date()), now: () => performance.now(), tick: ticker() });

type Scope = ConstructorParameters<typeof BrowserMessageReader>[0];

/** Serves from inside a worker; `scope` is the worker's own global. */
export function serveWorker(scope: Scope): void {
  const { reader, writer } = createGate(new BrowserMessageReader(scope), new BrowserMessageWriter(scope));
  startServer(createConnection(ProposedFeatures.all, reader, writer), browserHost());
}
