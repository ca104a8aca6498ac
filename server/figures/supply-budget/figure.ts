import { headPlace } from '../../model/index.ts';
import type { FigureKind } from '../kind.ts';
import { outputsOf, standbyOf, sumOfCurrents } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'panel.PANEL.output.NAME.load',
    title: 'Current drawn from an output by all that hangs on it',
    unit: 'A',
    topic: 'electrical',
    formula: 'ΣI of the sensors, controls, drives and accessories on it',
    source: sumOfCurrents,
    changedBy: 'what is wired to the output, and what it consumes',
    work: ({ panels }, give) => {
      for (const panel of panels)
        for (const load of outputsOf(panel) ?? []) {
          const first = load.draws[0];
          if (first === undefined || !load.isWhole) continue;
          give(`${panel.name}/${load.name}`, load.known, first.line, () => [
            ...load.draws.map((draw) => ({ name: draw.name, value: draw.current ?? 0, unit: 'A' as const })),
            { name: 'what the output can give', value: load.output.current, unit: 'A', from: `panel-model ${panel.model?.name ?? ''}` },
          ]);
        }
    },
  },
  {
    id: 'panel.NAME.standby-current',
    title: 'Current that the panel and all it feeds draw while nothing moves',
    unit: 'A',
    topic: 'electrical',
    formula: 'I of the panel + ΣI of what it feeds, times output over battery voltage where that is above 1',
    source: sumOfCurrents,
    changedBy: 'what is wired to the panel, and what it consumes',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const standby = standbyOf(panel);
        if (standby !== undefined) give(panel.name, standby.current, headPlace(panel), () => standby.inputs);
      }
    },
  },
];
