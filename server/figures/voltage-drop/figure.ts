import { factPlace, type Cable } from '../../model/index.ts';
import type { FigureKind } from '../figure.ts';
import { perSubject } from '../memo.ts';
import { atTemperature, resistancePerMetre, voltageDrop } from './maths.ts';

/** The warmest that a conductor in thermoplastic insulation may run, °C: the drop is worked out for it, the unfavourable side. */
const warmest = 70;

export interface CableWorkings {
  /** Volts. */
  readonly drop: number;
  /** Of the voltage at the beginning, 0 to 1. */
  readonly share: number;
  /** Ohm/m at 20 °C. */
  readonly perMetre: number;
  readonly fromTable: boolean;
}

export const dropOf = perSubject((cable: Cable): CableWorkings | undefined => {
  const { length, carries } = cable.facts;
  const area = cable.model?.facts.area?.value;
  if (length === undefined || carries === undefined || area === undefined) return undefined;
  const resistance = resistancePerMetre(area, cable.model?.facts.class?.value ?? 5);
  if (resistance === undefined) return undefined;
  const drop = voltageDrop(atTemperature(resistance.value, warmest), length.value, carries.current);
  return { drop, share: drop / carries.voltage, perMetre: resistance.value, fromTable: resistance.fromTable };
});

export const figures: readonly FigureKind[] = [
  {
    id: 'cable.NAME.voltage-drop',
    title: 'Voltage lost in the cable, there and back, with the conductors at 70 °C',
    unit: 'V',
    formula: 'ΔU = 2·L·I·R20·(1 + 0.00393·(70 − 20))',
    source: { text: 'IEC 60228 (greatest conductor resistance at 20 °C), IEC 60028 (temperature coefficient of copper)', standing: 'published' },
    changedBy: 'a thicker conductor, a shorter run, or less current',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = dropOf(cable);
        const { length, carries } = cable.facts;
        if (workings === undefined || length === undefined || carries === undefined) continue;
        give(cable.name, workings.drop, factPlace(cable, carries), () => [
          { name: 'L, length one way', value: length.value, unit: 'm' },
          { name: 'I, current', value: carries.current, unit: 'A' },
          { name: 'R20, one conductor at 20 °C', value: workings.perMetre, unit: 'ohm/m', from: workings.fromTable ? 'IEC 60228' : 'plain copper, the size is not in IEC 60228' },
          { name: 'share of the voltage at the beginning', value: workings.share, unit: '1' },
        ]);
      }
    },
  },
];
