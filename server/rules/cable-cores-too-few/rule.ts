import { cablesTo } from '../../circuits/index.ts';
import type { Cable, Panel, Wire } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'cable-cores-too-few',
  severity: 'error',
  title: 'A cable has fewer cores than its device is wired with.',
  why: 'One of the wires is then left off or shared: the device is not tested, not fed, or not heard.',
  remedy: 'Lay a cable with more cores, or a second one.',
  source: { text: 'one conductor to each terminal', standing: 'derived' },
  acceptable: false,
  check: ({ cables, panels }, report) => {
    for (const cable of cables) {
      const { load, model } = cable;
      const cores = model?.facts.cores;
      if (load === undefined || load.kind === 'panel' || cores === undefined) continue;
      const fed = cablesTo(load.it);
      // Said once, at the first of several cables.
      if (fed[0] !== cable) continue;
      const there = coresOf(fed);
      const needed = terminalsOf(panels, (wire) => wire.device?.it === load.it);
      if (there === undefined || needed.size <= there) continue;
      report({
        at: cable.facts.feeds?.line ?? cable.modelAt ?? cores.line,
        what: `${quoted(load.it.name)} is wired to ${needed.size} terminals (${[...needed].join(', ')}), and ${fed.length === 1 ? quoted(cable.name) : 'its cables'} ${fed.length === 1 ? 'has' : 'have'} ${there} ${there === 1 ? 'core' : 'cores'}.`,
        related: toModelFact('the cores of the cable', cable.installation, model, cores),
      });
    }
  },
});

/** The cores of several cables; undefined where one does not say how many it has. */
function coresOf(cables: readonly Cable[]): number | undefined {
  let all = 0;
  for (const { model } of cables) {
    const cores = model?.facts.cores?.value;
    if (cores === undefined) return undefined;
    all += cores;
  }
  return all;
}

/** The terminals, of whichever panel, that some wires end on. */
function terminalsOf(panels: readonly Panel[], are: (wire: Wire) => boolean): ReadonlySet<string> {
  const names = new Set<string>();
  for (const panel of panels)
    for (const wire of panel.wires)
      if (are(wire)) for (const { at } of wire.ends) names.add(panels.length === 1 ? at.text : `${panel.name} ${at.text}`);
  return names;
}
