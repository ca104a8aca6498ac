import { type Cable, factPlace } from '../../model/index.ts';
import { hasCables } from '../cables/working.ts';
import { onlyWhere, type Source } from '../kind.ts';
import { electrodeLimit, touchLimit, touchVoltage } from './maths.ts';
import { isOnElectrode } from './working.ts';

const source: Source = { text: 'BS 7671, 411.5.3 and Table 41.5', standing: 'published' };

const place = (cable: Cable): { start: number; end: number } => factPlace(cable, cable.facts['residual-current']);

export const figures = onlyWhere(hasCables, [
  {
    id: 'cable.NAME.electrode-limit',
    title: 'Greatest resistance of the earth electrode for this residual-current device',
    unit: 'ohm',
    topic: 'electrical',
    formula: 'RA ≤ 50 V/IΔn',
    source,
    changedBy: 'a device of a smaller rated residual current',
    work: (installation, give) => {
      if (!isOnElectrode(installation)) return;
      for (const cable of installation.cables) {
        const residual = cable.facts['residual-current']?.value;
        if (residual !== undefined)
          give(cable.name, electrodeLimit(residual), place(cable), () => [
            { name: 'IΔn, rated residual current', value: residual, unit: 'A' },
            { name: 'touch voltage allowed', value: touchLimit, unit: 'V', from: 'BS 7671, 411.5.3' },
          ]);
      }
    },
  },
  {
    id: 'cable.NAME.touch-voltage',
    title: 'Voltage on earthed metal when the residual-current device is about to trip',
    unit: 'V',
    topic: 'electrical',
    formula: 'RA·IΔn',
    source,
    changedBy: 'a better electrode, or a device of a smaller rated residual current',
    work: (installation, give) => {
      const electrode = installation.site?.facts['earth-electrode']?.value;
      if (electrode === undefined || !isOnElectrode(installation)) return;
      for (const cable of installation.cables) {
        const residual = cable.facts['residual-current']?.value;
        if (residual !== undefined)
          give(cable.name, touchVoltage(electrode, residual), place(cable), () => [
            { name: 'RA, earth electrode', value: electrode, unit: 'ohm' },
            { name: 'IΔn, rated residual current', value: residual, unit: 'A' },
          ]);
      }
    },
  },
]);
