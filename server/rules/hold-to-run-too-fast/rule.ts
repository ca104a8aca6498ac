import { edgeSpeedsOf } from '../../figures/edge-speed/working.ts';
import { factPlace } from '../../model/index.ts';
import { judgedHeldControlOf } from '../../safeguards/index.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Greatest speed of the edge, m/s. */
const most = 0.5;
const held = { figure: 'leaf.NAME.edge-speed', name: 'edge speed', unit: 'm/s', way: 'most' } as const;

export const rule = installationRule({
  name: 'hold-to-run-too-fast',
  severity: 'error',
  title: 'A leaf moves faster than 0.5 m/s while a hold-to-run control is held.',
  why: 'Hold-to-run protects only as long as whoever holds the control can let go before the leaf reaches somebody.',
  remedy: 'Lower the speed of the drive, or choose a slower one.',
  source: { text: 'EN 12453 (speed of the edge under hold-to-run)', standing: 'published' },
  acceptable: false,
  holds: (installation, hold) => {
    const control = judgedHeldControlOf(installation);
    if (control === undefined) return;
    for (const leaf of installation.leaves) {
      const speed = edgeSpeedsOf(leaf)?.edge;
      if (speed === undefined) continue;
      hold(bound(held, leaf.name, speed, most, 1e-9), factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides), () => ({
        what: `The edge of ${quoted(leaf.name)} reaches ${shown(speed)} m/s, but ${quoted(control.name)} is hold-to-run, which allows 0.5 m/s at most.`,
        related: toFact('this control', control.facts.acts),
      }));
    }
  },
});
