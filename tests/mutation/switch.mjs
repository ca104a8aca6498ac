// What the mutated code asks: which mutant is on. It also counts how often it was asked, so that a mutant that never ends is
// stopped, and notes which mutants a test reaches.
let active = -1;
let asked = 0;
let limit = Infinity;
let reached = null;

export function stryMutAct_9fa48(id) {
  if (++asked > limit) throw new Error('this mutant does not come to an end');
  return id === active;
}

export function stryCov_9fa48() {
  if (reached === null) return;
  for (let i = 0; i < arguments.length; i++) reached[arguments[i]] = 1;
}

globalThis.__switch = {
  /** Switches a mutant on, -1 for none, and stops it after so many questions. */
  on: (id, most = Infinity) => {
    active = id;
    limit = most;
    asked = 0;
  },
  asked: () => asked,
  note: (marks) => {
    reached = marks;
  },
};
// The state with which a fresh bundle starts is set before it runs.
if (globalThis.__start !== undefined) {
  globalThis.__switch.on(globalThis.__start.active, globalThis.__start.limit);
  reached = globalThis.__start.reached ?? null;
}
