import { headPlace, type Installation, type Leaf, type Panel } from '../../model/index.ts';
import { installationRule, type Report } from '../rule.ts';
import { inModel, ofTheModel, quotedList } from '../wiring.ts';
import { quoted } from '../words.ts';

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
      const most = panel.model?.facts.leaves?.value;
      if (most !== undefined && installation.leaves.length > most) checkPanel(installation, panel, most, report);
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

function checkPanel(installation: Installation, panel: Panel, most: number, report: (report: Report) => void): void {
  const driven = drivenBy(installation, panel);
  const { model } = panel;
  const line = model?.facts.leaves?.line;
  if (driven.length <= most || model === undefined || line === undefined) return;
  report({
    at: panel.nameAt ?? headPlace(panel),
    what: `${quoted(panel.name)} (${model.name}) drives ${most === 1 ? 'one leaf' : `${most} leaves`}; ${driven.length} have drives: ${quotedList(driven.map((leaf) => leaf.name))}.`,
    related: [inModel(model, installation, line, 'what its model can drive'), ...driven.slice(0, 6).map((leaf) => ({ message: 'a driven leaf', ...headPlace(leaf) }))],
  });
}
