// Wires that do not run straight bend in lanes between the strip and the boxes; links run in lanes on the other side.
import type { PlacedBox } from './places.ts';
import { rowMiddle } from './sizes.ts';

export interface Lanes {
  /** The lane of each pin's wire, by box; −1 where it runs straight. */
  readonly of: ReadonlyMap<PlacedBox, readonly number[]>;
  readonly count: number;
}

/** The wires of one terminal that are not straight; places from the top of the strip. */
interface Net {
  readonly from: number;
  low: number;
  high: number;
  readonly ends: { readonly box: PlacedBox; readonly pin: number }[];
}

/**
 * A lane for each terminal whose wires are not all straight; wires of one terminal share it. Of those that lead downwards
 * the lower ones turn first, of those that lead upwards the upper ones: then two that keep their order never cross.
 */
export function lanesOf(placed: readonly PlacedBox[]): Lanes {
  const lanes = new Map(placed.map((box) => [box, box.box.pins.map(() => -1)]));
  const all = netsOf(placed);
  const down = all.filter(({ from, high }) => high > from).sort((a, b) => b.from - a.from);
  const up = all.filter(({ from, high }) => high <= from).sort((a, b) => a.from - b.from);
  const taken: { lane: number; low: number; high: number }[] = [];
  let count = 0;
  for (const { low, high, ends } of [...down, ...up]) {
    let lane = 0;
    for (const other of taken) if (other.low < high + 3 && low - 3 < other.high) lane = Math.max(lane, other.lane + 1);
    taken.push({ lane, low: low - 3, high: high + 3 });
    for (const { box, pin } of ends) (lanes.get(box) as number[])[pin] = lane;
    count = Math.max(count, lane + 1);
  }
  return { of: lanes, count };
}

function netsOf(placed: readonly PlacedBox[]): Net[] {
  const nets = new Map<number, Net>();
  for (const box of placed)
    for (const [pin, { row }] of box.box.pins.entries()) {
      const from = rowMiddle(row);
      const to = box.pins[pin] as number;
      if (Math.abs(from - to) <= 0.5) continue;
      const net = nets.get(row) ?? { from, low: from, high: from, ends: [] };
      net.low = Math.min(net.low, to);
      net.high = Math.max(net.high, to);
      net.ends.push({ box, pin });
      nets.set(row, net);
    }
  return [...nets.values()];
}

/** A lane for each link, the shortest next to the strip. */
export function linkLanesOf(links: readonly { readonly rows: readonly number[] }[]): number[] {
  const spans = links.map(({ rows }, i) => ({ i, low: Math.min(...rows), high: Math.max(...rows) }));
  const lanes = links.map(() => 0);
  const taken: { lane: number; low: number; high: number }[] = [];
  for (const { i, low, high } of spans.sort((a, b) => a.high - a.low - (b.high - b.low))) {
    let lane = 0;
    while (taken.some((other) => other.lane === lane && other.low <= high && low <= other.high)) lane++;
    taken.push({ lane, low, high });
    lanes[i] = lane;
  }
  return lanes;
}
