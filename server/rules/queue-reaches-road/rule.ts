import { placesOf, queueSource, trafficOf, waitingOf } from '../../figures/traffic/figure.ts';
import { shareAbove } from '../../figures/traffic/maths.ts';
import type { Installation } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';

const held = {
  figure: 'motion.queue-vehicles',
  name: 'vehicles at the gate',
  unit: '1',
  way: 'most',
  says: (vehicles: number) => (vehicles === Number.POSITIVE_INFINITY ? 'more than 60' : shown(vehicles)),
} as const;

function boundOf(installation: Installation): Bound | undefined {
  const waiting = installation.site?.facts['waiting-room'] === undefined ? undefined : waitingOf(installation);
  const places = placesOf(installation);
  return waiting === undefined || places === undefined ? undefined : bound(held, '', waiting.vehicles ?? Number.POSITIVE_INFINITY, places);
}

export const rule = installationRule({
  name: 'queue-reaches-road',
  severity: 'warning',
  title: 'In the busiest hour the vehicles that wait at the gate reach back into the public road.',
  why: 'Whoever waits there is run into from behind, and whoever wants to pass is driven into the oncoming lane.',
  remedy: 'Set the gate further back, make it open faster, let the vehicles ask for it sooner, or let it stand open in the busiest hours.',
  source: queueSource,
  acceptable: true,
  check: (installation, report) => {
    const room = installation.site?.facts['waiting-room'];
    if (room === undefined) return;
    const waiting = waitingOf(installation);
    const places = placesOf(installation);
    const each = trafficOf(installation)?.room;
    const traffic = installation.site?.facts.traffic;
    if (waiting === undefined || places === undefined || each === undefined || traffic === undefined) return;
    const { vehicles, shares } = waiting;
    const queue = boundOf(installation);
    if (queue === undefined || keeps(queue)) return;
    const needed = vehicles === undefined ? 'more than 60 vehicles wait at the gate' : `${vehicles} ${vehicles === 1 ? 'vehicle is' : 'vehicles are'} at the gate, which need ${shown(vehicles * each)} m`;
    report({
      at: room.line,
      what: `There is room for ${places === 0 ? 'no vehicle' : places === 1 ? 'one vehicle' : `${places} vehicles`} on ${shown(room.value)} m; for ${shown(shareAbove(shares, places) * 100)} % of the busiest hour there are more. To be enough for 95 % of it, ${needed}.`,
      related: [{ message: 'the traffic', start: traffic.line.start, end: traffic.line.end }],
    });
  },
  margins: (installation, give) => {
    const queue = boundOf(installation);
    const room = installation.site?.facts['waiting-room'];
    if (queue !== undefined && room !== undefined && trafficOf(installation)?.room !== undefined) give(queue, room.line);
  },
});
