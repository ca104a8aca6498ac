// Keeping the conversation fluent: long work rests, and what does not rest is told.
import type { Host } from './host.ts';

/** Longest stretch without a rest, in milliseconds, before a line is logged. */
const longestStretch = 10;
/** A rest is taken before that. */
const restAfter = 7;

export interface Pace {
  /** Runs a piece of work that cannot rest, and logs it when it takes too long. */
  readonly timed: <R>(what: string, work: () => R) => R;
  /**
   * Drives work in small steps to its end, and rests whenever it is time; undefined where it was given up meanwhile: `isGivenUp` is asked
   * after each rest.
   */
  readonly driven: <R>(what: string, steps: Generator<unknown, R>, isGivenUp?: () => boolean) => Promise<R | undefined>;
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
  const timed: Pace['timed'] = (what, work) => {
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
  };
  return {
    timed,
    driven: async (what, steps, isGivenUp = () => false) => {
      for (;;) {
        const step = timed(what, () => {
          const from = host.now();
          for (;;) {
            const next = steps.next();
            if (next.done === true || host.now() - from > restAfter) return next;
          }
        });
        if (step.done === true) return step.value;
        await host.tick();
        if (isGivenUp()) return undefined;
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
