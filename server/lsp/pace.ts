// Keeping the conversation fluent: long work rests, and what does not rest is told.
import type { Host } from './host.ts';

/** Longest stretch without a rest, in milliseconds, before a line is logged. */
const longestStretch = 10;
/** A rest is taken before that. */
const restAfter = 7;

export interface Pace {
  /** Runs a piece of work that cannot rest, and logs it when it takes too long. */
  readonly timed: <R>(what: string, work: () => R) => R;
  /** For loops over many files: call it before each; it rests when it is time. */
  readonly rester: () => () => Promise<void>;
  /** Told of every edit. */
  readonly edited: () => void;
  /** Waits until the edits that have already been sent have come in: a burst is one edit. */
  readonly settled: () => Promise<void>;
}

export function createPace(host: Host, log: (line: string) => void): Pace {
  let edits = 0;
  let depth = 0;
  return {
    timed: (what, work) => {
      // The innermost piece is told by the outermost: one stretch, one line.
      const start = host.now();
      depth++;
      try {
        return work();
      } finally {
        depth--;
        const took = host.now() - start;
        if (depth === 0 && took > longestStretch) {
          log(`${what} took ${took.toFixed(0)} ms without a rest`);
          host.observe?.('stretch', what);
        }
      }
    },
    rester: () => {
      let since = host.now();
      return async () => {
        if (host.now() - since < restAfter) return;
        await host.tick();
        since = host.now();
      };
    },
    edited: () => {
      edits++;
    },
    settled: async () => {
      const start = host.now();
      let seen = edits;
      // Messages come one to a turn; three turns without an edit mean that none is waiting.
      for (let quiet = 0; quiet < 3; quiet++) {
        await host.tick();
        if (edits === seen) continue;
        if (host.now() - start > 150) return;
        seen = edits;
        quiet = -1;
      }
    },
  };
}
