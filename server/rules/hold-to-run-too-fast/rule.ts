import { edgeSpeedsOf } from '../../figures/edge-speed/figure.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** Greatest speed of the edge, m/s. */
const most = 0.5;
const held = { figure: 'leaf.NAME.edge-speed', name: 'edge speed', unit: 'm/s', way: 'most' } as const;

function boundOf(leaf: Leaf): Bound | undefined {
  const edge = edgeSpeedsOf(leaf)?.edge;
  return edge === undefined ? undefined : bound(held, leaf.name, edge, most, 1e-9);
}

export const rule = installationRule({
  name: 'hold-to-run-too-fast',
  severity: 'error',
  title: 'A leaf moves faster than 0.5 m/s while a hold-to-run control is held.',
  why: 'Hold-to-run protects only as long as whoever holds the control can let go before the leaf reaches somebody.',
  remedy: 'Lower the speed of the drive, or choose a slower one.',
  source: { text: 'EN 12453 (speed of the edge under hold-to-run)', standing: 'published' },
  acceptable: false,
  check: ({ site, controls, leaves }, report) => {
    if (site?.facts.rules?.value !== 'europe') return;
    const held = controls.find((control) => control.facts.acts?.value === 'hold-to-run');
    const acts = held?.facts.acts;
    if (held === undefined || acts === undefined) return;
    for (const leaf of leaves) {
      const speed = boundOf(leaf);
      if (speed === undefined || keeps(speed)) continue;
      report({
        at: factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides),
        what: `The edge of “${leaf.name}” reaches ${shown(speed.value)} m/s, but “${held.name}” is hold-to-run, which allows 0.5 m/s at most.`,
        related: [{ message: 'this control', start: acts.line.start, end: acts.line.end }],
      });
    }
  },
  margins: ({ site, controls, leaves }, give) => {
    if (site?.facts.rules?.value !== 'europe' || !controls.some((control) => control.facts.acts?.value === 'hold-to-run')) return;
    for (const leaf of leaves) {
      const speed = boundOf(leaf);
      if (speed !== undefined) give(speed, factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides));
    }
  },
});
