// What a worker runs: the server, on the worker's own messages. Apart from browser.ts, which tests run on a port of theirs.
import { serveWorker } from './browser.ts';

serveWorker(globalThis as never);
