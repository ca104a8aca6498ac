import { type Drive, type Installation, type Leaf, perSubject, type Site } from '../../model/index.ts';
import { clearanceOf } from '../clearance-time/working.ts';
import { cycleOf } from '../cycle-time/working.ts';
import type { Source } from '../kind.ts';
import { motionOf } from '../run-time/working.ts';
import { cycleRate, dutyFactor, type Queue, queueOf, queueShares, vehiclesFor } from './maths.ts';

export { cyclesAllowed, shareAbove } from './maths.ts';

/** Share of the time for which the queue is to fit: what the room for waiting is reckoned by. */
const fittingShare = 0.95;

export interface Traffic {
  /** What the site states. */
  readonly fact: NonNullable<Site['facts']['traffic']>;
  /** Vehicles and cycles, per second. */
  readonly arrivals: number;
  readonly cycles: number;
  /** The shortest time from the start of one cycle to that of the next, s; undefined where the run times are not known. */
  readonly cycle: number | undefined;
  /** Time for which a vehicle keeps the gate busy, s; undefined where a fact is missing. */
  readonly service: number | undefined;
  /** Share of the time for which the gate would have to be busy. */
  readonly load: number | undefined;
  /** Undefined too where the gate cannot keep up. */
  readonly queue: Queue | undefined;
  /** Length of road for each vehicle, m. */
  readonly room: number | undefined;
}

/** The traffic at the gate in its busiest hour; undefined where the site does not state it. */
export const trafficOf = perSubject((installation: Installation): Traffic | undefined => {
  const { site } = installation;
  const traffic = site?.facts.traffic;
  if (site === undefined || traffic === undefined) return undefined;
  const times = cycleOf(installation);
  const passing = clearanceOf(installation);
  const dwell = installation.motion?.facts.dwell?.value;
  const cycle = times === undefined ? undefined : times.opening + times.closing + 2 * times.preWarning + (dwell ?? passing ?? 0);
  const service = traffic.taking ?? (times === undefined || passing === undefined ? undefined : times.preWarning + times.opening + passing);
  return {
    fact: traffic,
    arrivals: traffic.rate,
    cycles: cycleRate(traffic.rate, cycle),
    cycle,
    service,
    load: service === undefined ? undefined : traffic.rate * service,
    queue: service === undefined ? undefined : queueOf(traffic.rate, service),
    room: traffic.room ?? site.facts.vehicle?.length,
  };
});

export interface Waiting {
  /** The number before the gate, the one being served among them, that is not passed for 95 % of the time; undefined above 60. */
  readonly vehicles: number | undefined;
  /** Shares of the time with 0, 1, … of them. */
  readonly shares: readonly number[];
}

/** How many vehicles stand before the gate; undefined where nothing is known of the queue. */
export const waitingOf = perSubject((installation: Installation): Waiting | undefined => {
  const queue = trafficOf(installation)?.queue;
  if (queue === undefined) return undefined;
  const shares = queueShares(queue.load);
  return { shares, vehicles: vehiclesFor(shares, fittingShare) };
});

/** How many vehicles the room for waiting holds, with the length of road for each, m; undefined where one of the two is not known. */
export function placesOf(installation: Installation) {
  const room = installation.site?.facts['waiting-room'];
  const each = trafficOf(installation)?.room;
  return room === undefined || each === undefined ? undefined : { room, each, count: Math.floor(room.value / each + 1e-9) };
}

export interface Duty {
  readonly drive: Drive;
  readonly leaf: Leaf;
  /** From stop to stop, and on at the stop, s. */
  readonly run: number;
  readonly seat: number;
  /** Time for which the motor runs in a cycle, s. */
  readonly running: number;
  /** Share of the time for which it runs in the busiest hour. */
  readonly factor: number;
}

/** The duty of a drive in the busiest hour; undefined where the traffic or its run time is not known. */
export const dutyOf = perSubject((drive: Drive): Duty | undefined => {
  const { leaf, installation } = drive;
  const traffic = trafficOf(installation);
  if (leaf === undefined || traffic === undefined) return undefined;
  const run = motionOf(leaf)?.runTime;
  if (run === undefined) return undefined;
  const seat = installation.motion?.facts.seat?.value ?? 0;
  const running = 2 * (run + seat);
  const factor = dutyFactor(running * traffic.cycles * 3600, Math.max(0, 1 - running * traffic.cycles) * 3600);
  return factor === undefined ? undefined : { drive, leaf, run, seat, running, factor };
});

export const dutySource: Source = { text: 'IEC 60034-1, duty type S3', standing: 'published' };
export const queueSource: Source = {
  text: 'the queue M/D/1 with its embedded chain, as in Gross and Harris, Fundamentals of Queueing Theory',
  standing: 'derived',
};
