import { type FigureKind, inDegrees } from '../kind.ts';
import { settingsOf, turnOf } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'panel.PANEL.adjuster.NAME',
    title: 'Where to set the adjuster, as a share of its sweep from the low stop',
    unit: '1',
    topic: 'settings',
    formula: 'linear: (value − low) / (high − low); logarithmic: ln(value / low) / ln(high / low)',
    source: { text: 'the curve that the panel’s model states', standing: 'derived' },
    changedBy: 'the value asked for in motion',
    work: (installation, give) => {
      for (const setting of settingsOf(installation)) {
        const { position, adjuster, panel, sweep, unit, low, high } = setting;
        if (position === undefined) continue;
        give(
          `${panel.name}/${adjuster.name}`,
          position,
          setting.line,
          () => {
            const from = `panel-model ${panel.model?.name ?? ''}`;
            return [
              { name: 'value asked for', value: setting.value, unit },
              { name: 'at the low stop', value: low, unit, from },
              { name: 'at the high stop', value: high, unit, from },
              { name: 'sweep', value: inDegrees(sweep), unit: 'deg', from },
            ];
          },
          () => `${adjuster.name} ${turnOf(adjuster, position)}`,
        );
      }
    },
  },
];
