import type { Leaf, Motion } from '../../model/index.ts';
import { installationRule } from '../rule.ts';

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
    if (orders === undefined || orders.length === 0) return;
    const covering = leaves.find((leaf) => leaf.covers !== undefined);
    if (covering?.covers === undefined) return;
    for (const order of orders) {
      if (order.movement === 'closing' && !isReverseOf(order, orders.find((each) => each.movement === 'opening'))) continue;
      const first: Leaf = order.movement === 'opening' ? covering : covering.covers;
      const second: Leaf = order.movement === 'opening' ? covering.covers : covering;
      if (order.leaves[0]?.text !== second.name) continue;
      report({
        at: order.line,
        what: `“${second.name}” is to start first when ${order.movement}, but “${covering.name}” covers “${covering.covers.name}”, so “${first.name}” must start first.`,
        related: covering.facts.closes === undefined ? [] : [{ message: 'the overlap', start: covering.facts.closes.line.start, end: covering.facts.closes.line.end }],
      });
    }
  },
});

/** True when the closing order is the opening order backwards, or when no opening order is stated to compare it with. */
export function isReverseOf(closing: Order, opening: Order | undefined): boolean {
  if (opening === undefined || opening.leaves.length !== closing.leaves.length) return opening === undefined;
  return opening.leaves.every((leaf, i) => leaf.text === closing.leaves[closing.leaves.length - 1 - i]?.text);
}

