import { factPlace } from '../../model/index.ts';
import type { FigureKind } from '../kind.ts';
import { designCurrent } from './maths.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'drive.NAME.design-current',
    title: 'Current that the drive’s motor draws from the supply at its rated output',
    unit: 'A',
    topic: 'electrical',
    formula: 'Ib = P/(η·cos φ·U)',
    source: { text: 'definition of efficiency and power factor, any textbook of electrical machines', standing: 'derived' },
    changedBy: 'another drive, or another supply',
    work: ({ drives, site }, give) => {
      const supply = site?.facts.supply;
      if (supply === undefined) return;
      for (const drive of drives) {
        const motor = drive.model?.facts.motor;
        if (motor === undefined) continue;
        const current = designCurrent(motor.output, motor.efficiency, motor.factor, supply.voltage);
        const from = `drive-model ${drive.model?.name ?? ''}`;
        if (current !== undefined)
          give(drive.name, current, factPlace(drive), () => [
            { name: 'P, rated output', value: motor.output, unit: 'W', from },
            { name: 'η, efficiency', value: motor.efficiency, unit: '1', from },
            { name: 'cos φ, power factor', value: motor.factor, unit: '1', from },
            { name: 'U, supply', value: supply.voltage, unit: 'V' },
          ]);
      }
    },
  },
];
