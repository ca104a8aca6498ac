import { headPlace, type Installation, type Leaf, type Panel } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel } from '../rule.ts';
import { quoted, quotedList } from '../words.ts';

/** Of the leaves that it drives as many are shown. */
const mostLeaves = 6;

export const rule = installationRule({
  name: 'panel-too-small',
  severity: 'error',
  title: 'More leaves have drives than the panel can drive.',
  why: 'The drive of a further leaf has no output of its own, so the panel can neither limit nor time that leaf.',
  remedy: 'Choose a panel for that many leaves.',
  source: ofTheModel,
  acceptable: false,
  check: (installation, report) => {
    for (const panel of installation.panels) {
      const { model } = panel;
      if (model === undefined) continue;
      const most = model.facts.leaves;
      if (most === undefined || installation.leaves.length <= most.value) continue;
      const driven = drivenBy(installation, panel);
      if (driven.length <= most.value) continue;
      report({
        at: panel.nameAt ?? headPlace(panel),
        what: `${quoted(panel.name)} (${model.name}) drives ${most.value === 1 ? 'one leaf' : `${most.value} leaves`}; ${driven.length} have drives: ${quotedList(driven.map((leaf) => leaf.name))}.`,
        related: [
          ...toModelFact('what its model can drive', installation, model, most),
          ...driven.slice(0, mostLeaves).map((leaf) => ({ message: 'a driven leaf', ...headPlace(leaf) })),
        ],
      });
    }
  },
});

/** A single panel drives every leaf that has a drive; of several, each drives those whose drives are wired to it. */
function drivenBy({ leaves, panels }: Installation, { wires }: Panel): Leaf[] {
  if (panels.length === 1) return leaves.filter((leaf) => leaf.drives.length > 0);
  const driven = new Set<Leaf>();
  for (const { device } of wires) if (device?.kind === 'drive' && device.it.leaf !== undefined) driven.add(device.it.leaf);
  return [...driven].sort((a, b) => a.at.start - b.at.start);
}
