import { isReverseOf } from '../order-against-overlap/rule.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'closing-order-not-reversed',
  severity: 'error',
  title: 'The closing order is not the opening order backwards.',
  why: 'The leaf that opens first is the one on top, and it must come back last; in any other order the leaves close onto each other’s backs and cannot lock.',
  remedy: 'Write the leaves of the closing order the other way round.',
  source: commonPractice,
  acceptable: false,
  check: ({ motion, leaves }, report) => {
    const orders = motion?.facts.order ?? [];
    const opening = orders.find(({ movement }) => movement === 'opening');
    const closing = orders.find(({ movement }) => movement === 'closing');
    if (opening === undefined || closing === undefined || isReverseOf(closing, opening)) return;
    report({
      at: closing.line,
      severity: leaves.some((leaf) => leaf.covers !== undefined) ? 'error' : 'warning',
      what: `The gate opens in the order ${names(opening.leaves)} and closes in the order ${names(closing.leaves)}; it must close in the opposite one.`,
      related: toFact('the opening order', opening),
    });
  },
});

const names = (leaves: readonly { readonly text: string }[]): string => leaves.map((leaf) => quoted(leaf.text)).join(', ');
