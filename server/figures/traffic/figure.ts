import type { DriveModel, Installation } from '../../model/index.ts';
import { type FigureKind, type Give, type Input, onlyWhere } from '../kind.ts';
import { cyclesAllowed, mostVehicles, shareAbove } from './maths.ts';
import { type Duty, dutyOf, dutySource, placesOf, queueSource, type Traffic, trafficOf, waitingOf } from './working.ts';

const perHour = (rate: number): number => rate * 3600;

const busyInputs = ({ fact, arrivals, service }: Traffic): Input[] => [
  { name: 'vehicles an hour', value: perHour(arrivals), unit: '1/h' },
  {
    name: 'time for which each keeps the gate busy',
    value: service ?? 0,
    unit: 's',
    ...(fact.taking === undefined ? { from: 'pre-warning, motion.opening-time and motion.clearance-time' } : {}),
  },
];
const queueInputs = (traffic: Traffic): Input[] => [...busyInputs(traffic), { name: 'load', value: traffic.load ?? 0, unit: '1' }];

function giveDuty(give: Give, subject: string, { leaf, run, seat, running, factor }: Duty, { fact, cycles }: Traffic): void {
  give(
    subject,
    factor,
    fact.line,
    () => [
      { name: 'run time', value: run, unit: 's', from: `leaf.${leaf.name}.run-time` },
      { name: 'seat', value: seat, unit: 's' },
      { name: 'running time in a cycle', value: running, unit: 's' },
      { name: 'cycles an hour', value: perHour(cycles), unit: '1/h', from: 'motion.cycles-an-hour' },
    ],
    () => inPercent(factor),
  );
}

const queueChangedBy = 'the traffic, a faster opening, or a quicker passage';

/** The work of a kind of figure that only a site with traffic has. */
const busy =
  (work: (traffic: Traffic, installation: Installation, give: Give) => void): FigureKind['work'] =>
  (installation, give) => {
    const traffic = trafficOf(installation);
    if (traffic !== undefined) work(traffic, installation, give);
  };

const hasTraffic = ({ site }: Installation): boolean => site?.facts.traffic !== undefined;

export const figures = onlyWhere(hasTraffic, [
  {
    id: 'motion.cycles-an-hour',
    title: 'Cycles of the gate in its busiest hour, at the most',
    unit: '1/h',
    topic: 'traffic',
    formula: 'the least of: vehicles an hour; 3600 / time of a whole cycle',
    source: { text: 'common practice, no source', standing: 'common practice' },
    changedBy: 'the traffic, and the time of a cycle',
    work: busy((traffic, _, give) => {
      give('', perHour(traffic.cycles), traffic.fact.line, () => [
        { name: 'vehicles an hour', value: perHour(traffic.arrivals), unit: '1/h' },
        ...(traffic.cycle === undefined
          ? []
          : [
              {
                name: 'time of a whole cycle',
                value: traffic.cycle,
                unit: 's' as const,
                from: 'pre-warning, opening, dwell or else the vehicle’s passage, pre-warning, closing',
              },
            ]),
      ]);
    }),
  },
  {
    id: 'drive.NAME.duty',
    title: 'Share of the time for which the motor runs in the busiest hour',
    unit: '1',
    topic: 'traffic',
    formula: '2 · (run time + seat) · cycles an hour / 3600',
    source: dutySource,
    changedBy: 'the traffic, the run time, the seat',
    work: busy((traffic, { drives }, give) => {
      for (const drive of drives) {
        const duty = dutyOf(drive);
        if (duty !== undefined) giveDuty(give, drive.name, duty, traffic);
      }
    }),
  },
  {
    id: 'motion.duty',
    title: 'Share of the time for which the busiest motor runs in the busiest hour',
    unit: '1',
    topic: 'traffic',
    formula: '2 · (run time + seat) · cycles an hour / 3600, the greatest of the drives',
    source: dutySource,
    changedBy: 'the traffic, the run time, the seat',
    work: busy((traffic, { drives }, give) => {
      let busiest: Duty | undefined;
      for (const drive of drives) {
        const duty = dutyOf(drive);
        if (duty !== undefined && (busiest === undefined || duty.factor > busiest.factor)) busiest = duty;
      }
      if (busiest !== undefined) giveDuty(give, '', busiest, traffic);
    }),
  },
  {
    id: 'motion.cycles-allowed',
    title: 'The most cycles an hour that the motors are rated for',
    unit: '1/h',
    topic: 'traffic',
    formula: 'duty · 3600 / (2 · (run time + seat)), the least of the drives',
    source: dutySource,
    changedBy: 'drives of a higher duty, a shorter run time',
    work: busy((traffic, { drives }, give) => {
      let least: Allowed | undefined;
      for (const drive of drives) {
        const { model } = drive;
        const rated = model?.facts.duty?.value;
        const duty = dutyOf(drive);
        if (model === undefined || rated === undefined || duty === undefined) continue;
        const cycles = cyclesAllowed(rated, duty.running);
        if (least === undefined || cycles < least.cycles) least = { cycles, rated, model, duty };
      }
      if (least === undefined) return;
      const { cycles, rated, model, duty } = least;
      give('', cycles, traffic.fact.line, () => [
        { name: 'duty', value: rated, unit: '1', from: `drive-model ${model.name}` },
        { name: 'running time in a cycle', value: duty.running, unit: 's', from: `drive ${duty.drive.name}` },
      ]);
    }),
  },
  {
    id: 'motion.queue-load',
    title: 'Share of the time for which the gate has to be busy with vehicles in the busiest hour',
    unit: '1',
    topic: 'traffic',
    formula: 'ρ = vehicles an hour · time for which each keeps the gate busy / 3600',
    source: queueSource,
    changedBy: queueChangedBy,
    work: busy((traffic, _, give) => {
      const { fact, load } = traffic;
      if (load !== undefined)
        give(
          '',
          load,
          fact.line,
          () => busyInputs(traffic),
          () => inPercent(load),
        );
    }),
  },
  {
    id: 'motion.queue-length',
    title: 'Mean number of vehicles that wait behind the one that the gate is busy with',
    unit: '1',
    topic: 'traffic',
    formula: 'ρ² / (2 · (1 − ρ))',
    source: queueSource,
    changedBy: queueChangedBy,
    work: busy((traffic, _, give) => {
      const { fact, queue } = traffic;
      if (queue !== undefined) give('', queue.waiting, fact.line, () => queueInputs(traffic));
    }),
  },
  {
    id: 'motion.queue-wait',
    title: 'Mean time that a vehicle waits before the gate turns to it',
    unit: 's',
    topic: 'traffic',
    formula: 'ρ · s / (2 · (1 − ρ)), s the time for which each keeps the gate busy',
    source: queueSource,
    changedBy: queueChangedBy,
    work: busy((traffic, _, give) => {
      const { fact, queue } = traffic;
      if (queue !== undefined) give('', queue.wait, fact.line, () => queueInputs(traffic));
    }),
  },
  {
    id: 'motion.queue-vehicles',
    title: 'Number of vehicles before the gate, the first one among them, that is not passed for 95 % of the time',
    unit: '1',
    topic: 'traffic',
    formula: 'the least n for which P(N ≤ n) ≥ 95 %; P(1) = (1 − ρ) · (e^ρ − 1), and so on by the chain embedded at the departures',
    source: queueSource,
    changedBy: queueChangedBy,
    work: busy((traffic, installation, give) => {
      const waiting = waitingOf(installation);
      if (waiting?.vehicles === undefined) return;
      const { vehicles, shares } = waiting;
      give('', vehicles, traffic.fact.line, () => [
        ...queueInputs(traffic),
        { name: 'share of the time with more', value: shareAbove(shares, vehicles), unit: '1' },
      ]);
    }),
  },
  {
    id: 'motion.queue-road',
    title: 'Length of way that waiting vehicles need for 95 % of the time',
    unit: 'm',
    topic: 'traffic',
    formula: 'vehicles before the gate · room for each',
    source: queueSource,
    changedBy: `${queueChangedBy}, shorter vehicles`,
    work: busy(({ fact, room }, installation, give) => {
      const vehicles = waitingOf(installation)?.vehicles;
      if (vehicles === undefined || room === undefined) return;
      give('', vehicles * room, fact.line, () => [
        { name: 'vehicles before the gate', value: vehicles, unit: '1', from: 'motion.queue-vehicles' },
        { name: 'room for each', value: room, unit: 'm', ...(fact.room === undefined ? { from: 'the longest vehicle' } : {}) },
      ]);
    }),
  },
  {
    id: 'motion.queue-overflow',
    title: 'Share of the time for which more vehicles stand before the gate than the room for waiting holds',
    unit: '1',
    topic: 'traffic',
    formula: '1 − Σ P(n), n up to the vehicles that the room holds',
    source: queueSource,
    changedBy: `${queueChangedBy}, more room`,
    work: busy((traffic, installation, give) => {
      const waiting = waitingOf(installation);
      const places = placesOf(installation);
      // Beyond what is followed nothing can be said.
      if (waiting === undefined || places === undefined || (places.count >= waiting.shares.length && waiting.shares.length > mostVehicles))
        return;
      const share = shareAbove(waiting.shares, places.count);
      give(
        '',
        share,
        places.room.line,
        () => [...queueInputs(traffic), { name: 'vehicles that the room holds', value: places.count, unit: '1' }],
        () => inPercent(share),
      );
    }),
  },
]);

const inPercent = (share: number): string => `${Number((share * 100).toPrecision(3))} %`;

interface Allowed {
  /** An hour. */
  readonly cycles: number;
  readonly rated: number;
  readonly model: DriveModel;
  readonly duty: Duty;
}
