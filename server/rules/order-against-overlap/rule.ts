import type { Motion } from '../../model/index.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

type Order = Motion['facts']['order'][number];

export const rule = installationRule({
  name: 'order-against-overlap',
  severity: 'error',
  title: 'The leaf that starts first is the one that the overlap holds back.',
  why: 'The leaf that lies underneath pushes against the one that covers it: both drives strain, and the gate jams.',
  remedy: 'Let the covering leaf open first and close last.',
  source: { text: 'geometry of the overlap', standing: 'derived' },
  acceptable: false,
  check: ({ motion, leaves }, report) => {
    const orders = motion?.facts.order;
    if (orders === undefined) return;
    const opening = orders.find((order) => order.movement === 'opening');
    for (const covering of leaves) {
      const { covers } = covering;
      if (covers === undefined) continue;
      for (const order of orders) {
        // A closing order that is not the opening order backwards is reported for that.
        if (order.movement === 'closing' && opening !== undefined && !isReverseOf(order, opening)) continue;
        const [first, second] = order.movement === 'opening' ? [covering, covers] : [covers, covering];
        if (!isBefore(order, second.name, first.name)) continue;
        report({
          at: order.line,
          what: `${quoted(second.name)} is to start ${order.leaves[0]?.text === second.name ? 'first' : `before ${quoted(first.name)}`} when ${order.movement}, but ${quoted(covering.name)} covers ${quoted(covers.name)}, so ${quoted(first.name)} must start first.`,
          related: toFact('the overlap', covering.facts.closes),
        });
      }
    }
  },
});

/** True where one leaf is to start before another, or first of all that the order names. */
function isBefore({ leaves }: Order, one: string, other: string): boolean {
  const at = leaves.findIndex((leaf) => leaf.text === one);
  return at === 0 || (at > 0 && leaves.findIndex((leaf) => leaf.text === other) > at);
}

/** True when the closing order is the opening order backwards. */
export const isReverseOf = (closing: Order, opening: Order): boolean =>
  opening.leaves.length === closing.leaves.length && opening.leaves.every((leaf, i) => leaf.text === closing.leaves.at(-1 - i)?.text);
