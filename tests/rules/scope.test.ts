// To which body of rules each rule belongs: one that holds European limits says nothing of an American gate, and the other way
// round. The rest follow from physics, from international standards or from the file itself, and say the same everywhere.
import { expect, test } from 'vitest';
import { blocksOf, foldersWith, judge, readPage } from '../kit/pages.ts';

/** They hold what EN 12453, ASR A1.7, BS 7671 and their kin ask for. */
const european = [
  'protection-untested',
  'closing-edge-unguarded',
  'control-out-of-view',
  'edge-overtravel-too-long',
  'force-not-measured',
  'force-over-limit',
  'force-points-missing',
  'force-record-outdated',
  'force-test-overdue',
  'force-window-narrow',
  'hold-to-run-overtravels',
  'hold-to-run-too-fast',
  'loop-impedance-too-high',
  'opening-leaf-unguarded',
  'pedestrian-opening-unguarded',
  'performance-level-too-low',
  'protective-conductor-too-small',
  'required-level-below-standard',
  'residual-current-device-unfit',
  'safeguard-level-too-low',
  'safeguarding-below-minimum',
];
/** They hold what the American rules ask for. */
const american = [
  'control-within-reach',
  'entrapment-protection-below-minimum',
  'infill-opening-too-wide',
  'pedestrian-entrance-shared',
  'pivot-gap-too-wide',
  'sliding-leaf-too-fast',
  'usage-class-against-users',
  'warning-sign-missing',
];

/** How often a rule speaks of those of its flagged examples that stand under `from`, once they stand under `to`. */
function spoken(name: string, from: string, to: string): number | undefined {
  const blocks = blocksOf(readPage('rules', name)).filter((block) => block.kind === 'flagged' && block.text.includes(`  rules ${from}\n`));
  if (blocks.length === 0) return undefined;
  return blocks.flatMap((block) =>
    judge(block.text.replace(`  rules ${from}\n`, `  rules ${to}\n`), block.files, block.asOf).findings.filter(
      (finding) => finding.rule === name,
    ),
  ).length;
}

test.each(foldersWith('rules', 'rule.ts'))('%s', (name) => {
  const [abroad, here] = [spoken(name, 'europe', 'north-america'), spoken(name, 'north-america', 'europe')];
  if (abroad !== undefined) expect(abroad === 0, 'says nothing under American rules').toBe(european.includes(name));
  if (here !== undefined) expect(here === 0, 'says nothing under European rules').toBe(american.includes(name));
  if (european.includes(name)) expect(abroad, 'an example of its page stands under European rules').toBeDefined();
  if (american.includes(name)) expect(here, 'an example of its page stands under American rules').toBeDefined();
});
