// Traffic at a gate: how often it moves, how long its motors run, and how many vehicles wait. Times in seconds.

/**
 * Cycles in a time: one for each vehicle, and no more than follow one another without a break. `arrivals` per second, `cycle`
 * in seconds (undefined where it is not known); per second.
 */
export function cycleRate(arrivals: number, cycle = 0): number {
  return cycle > 0 ? Math.min(arrivals, 1 / cycle) : arrivals;
}

/** Cyclic duration factor: running time over running and resting time. IEC 60034-1, duty type S3. Undefined for no time. */
export function dutyFactor(running: number, resting: number): number | undefined {
  const all = running + resting;
  return running >= 0 && resting >= 0 && all > 0 ? running / all : undefined;
}

/** The most cycles an hour that a duty allows, for so many seconds of running in each cycle. */
export const cyclesAllowed = (duty: number, running: number): number => (duty * 3600) / running;

/** A queue before one gate to which vehicles come at random (Poisson). */
export interface Queue {
  /** Share of the time for which the gate is busy, ρ = λ · s. */
  readonly load: number;
  /** Mean number that wait behind the one being served, ρ² / (2 · (1 − ρ)). */
  readonly waiting: number;
  /** Mean time in the queue, s. */
  readonly wait: number;
  /** Mean number before the gate, with the one being served. */
  readonly present: number;
  /** Mean time until through, s. */
  readonly through: number;
}

/**
 * Means of a queue with random arrivals (Pollaczek and Khinchine): `arrivals` per second, `service` the mean time of service
 * in seconds, `variation` its standard deviation over its mean: 0 for M/D/1, 1 for M/M/1. Undefined where the gate is busy
 * without a break: the queue then grows without end.
 */
export function queueOf(arrivals: number, service: number, variation = 0): Queue | undefined {
  const load = arrivals * service;
  if (!(load >= 0) || !(load < 1)) return undefined;
  const share = (1 + variation * variation) / (2 * (1 - load));
  return {
    load,
    waiting: load * load * share,
    wait: load * service * share,
    present: load * load * share + load,
    through: load * service * share + service,
  };
}

/** The longest queue that is followed. */
export const mostVehicles = 60;

/**
 * Shares of the time with 0, 1, … vehicles before the gate, the one being served among them, by the chain embedded at the
 * departures. Ends when all but `rest` is told, or at `mostVehicles`. Each step balances the flow up past a number against the
 * flow down, so that nothing is subtracted and no digits are lost. Empty for a load that is not from 0 to below 1.
 */
export function queueShares(load: number, rest = 1e-9): number[] {
  if (!(load >= 0) || !(load < 1)) return [];
  // More than m arrivals in one service.
  const more: number[] = [];
  let chance = Math.exp(-load);
  const none = chance;
  let upTo = 0;
  const moreThan = (m: number): number => {
    while (more.length <= m) {
      upTo += chance;
      more.push(Math.max(0, 1 - upTo));
      chance *= load / more.length;
    }
    return more[m] as number;
  };
  const shares = [1 - load];
  let left = load;
  while (left > rest && shares.length <= mostVehicles) {
    const last = shares.length - 1;
    let up = (shares[0] as number) * moreThan(last);
    for (let k = 1; k <= last; k++) up += (shares[k] as number) * moreThan(last + 1 - k);
    const next = up / none;
    shares.push(next);
    left -= next;
  }
  return shares;
}

/** The share of the time in which more than `vehicles` are before the gate. */
export function shareAbove(shares: readonly number[], vehicles: number): number {
  let sum = 0;
  for (let n = 0; n <= vehicles && n < shares.length; n++) sum += shares[n] as number;
  return Math.max(0, 1 - sum);
}

/** The number of vehicles that is not passed for a share of the time; undefined where it is more than are followed. */
export function vehiclesFor(shares: readonly number[], share: number): number | undefined {
  let sum = 0;
  for (let n = 0; n < shares.length; n++) {
    sum += shares[n] as number;
    if (sum >= share) return n;
  }
  return undefined;
}
