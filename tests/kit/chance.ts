// The one place that random tests take their seed from. In `npm test` it is always the same, so that every run sees the same
// cases; `PINTLE_SEED=N npx vitest run …` sets another one, and `npm run explore` (tests/explore) a new one for each try.

interface Chance {
  seed: number;
  /** How often the seed was asked for: a test that never asks is no random one. */
  asked: number;
}

/** The seed of every run of `npm test`. */
export const usualSeed = 20261125;

/** One for all modules of a process, in whatever way they were loaded. */
const shared = globalThis as { pintleChance?: Chance };

export const chance: Chance = (shared.pintleChance ??= { seed: Number(process.env['PINTLE_SEED'] ?? usualSeed), asked: 0 });

/** The seed for what is drawn next, a whole number of 32 bits. To be asked for inside a test, not beside it. */
export function seed(): number {
  chance.asked += 1;
  return chance.seed;
}
