import { declaredAs, heedingOf, measureOf } from '../../circuits/index.ts';
import { headPlace, type Panel, type PanelModel, type Sensor, type SensorModel } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'safeguard-level-too-low',
  severity: 'error',
  title: 'A device or a panel that protects people is declared at less than the standard for gates asks for.',
  why: 'A chain is no surer than its weakest part, whatever the others are: it fails dangerously more often than the risk allows.',
  remedy: 'Use a device or panel of PL c or more, or of category 2 or more.',
  source: { text: 'EN 12453:2017, 5.1.2; DHF, Powered Gate Myth Buster #4 (at least category 2 as installed)', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    if (installation.site?.facts.rules?.value !== 'europe') return;
    const panels = new Map<Panel, Sensor>();
    for (const sensor of installation.sensors) {
      const heeding = measureOf(sensor) === undefined ? undefined : heedingOf(sensor);
      if (heeding === undefined) continue;
      if (declaredAs(sensor.model?.facts) === 'too low') report(said(sensor, sensor.model, 'protects people'));
      if (!panels.has(heeding.wire.panel)) panels.set(heeding.wire.panel, sensor);
    }
    for (const [panel, sensor] of panels)
      if (declaredAs(panel.model?.facts) === 'too low') report(said(panel, panel.model, `stops the gate for ${quoted(sensor.name)}`));
  },
});

function said(it: Panel | Sensor, model: PanelModel | SensorModel | undefined, does: string): Report {
  const { 'performance-level': level, category, pfhd } = model?.facts ?? {};
  const declared = [
    ...(level === undefined ? [] : [`PL ${level.value}`]),
    ...(category === undefined ? [] : [`category ${category.value}`]),
    ...(pfhd === undefined ? [] : [`${(pfhd.value * 3600).toExponential(1)} dangerous failures an hour`]),
  ].join(', ');
  return {
    at: it.modelAt ?? headPlace(it),
    what: `${quoted(it.name)} ${does}, and is declared as ${declared}; PL c or category 2 is the least.`,
    related: toModelFact('what is declared', it.installation, model, level ?? category ?? pfhd),
  };
}
