import { placesOf, queueSource, shareAbove, waitingOf } from '../../figures/traffic/working.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';

const held = {
  figure: 'motion.queue-vehicles',
  name: 'vehicles at the gate',
  unit: '1',
  way: 'most',
  says: (vehicles: number) => (vehicles === Number.POSITIVE_INFINITY ? 'more than 60' : shown(vehicles)),
} as const;

export const rule = installationRule({
  name: 'queue-reaches-road',
  severity: 'warning',
  title: 'In the busiest hour the vehicles that wait at the gate reach back into the public road.',
  why: 'Whoever waits there is run into from behind, and whoever wants to pass is driven into the oncoming lane.',
  remedy: 'Set the gate further back, make it open faster, let the vehicles ask for it sooner, or let it stand open in the busiest hours.',
  source: queueSource,
  acceptable: true,
  holds: (installation, hold) => {
    const places = placesOf(installation);
    const waiting = waitingOf(installation);
    if (places === undefined || waiting === undefined) return;
    const { count, each, room } = places;
    hold(bound(held, '', waiting.vehicles ?? Number.POSITIVE_INFINITY, count), room.line, () => ({
      what: `There is room for ${placesInWords(count)} on ${shown(room.value)} m; for ${shown(shareAbove(waiting.shares, count) * 100)} % of the busiest hour there are more. ${enoughInWords(waiting.vehicles, each)} for 95 % of it.`,
      related: toFact('the traffic', installation.site?.facts.traffic),
    }));
  },
});

const placesInWords = (count: number): string => (count === 0 ? 'no vehicle' : count === 1 ? 'one vehicle' : `${count} vehicles`);

function enoughInWords(vehicles: number | undefined, each: number): string {
  if (vehicles === undefined) return 'Room for 60 vehicles would still be too little';
  return `Room for ${placesInWords(vehicles)}, ${shown(vehicles * each)} m, is enough`;
}
