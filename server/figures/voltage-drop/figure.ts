import { type Cable, factPlace } from '../../model/index.ts';
import { hasCables } from '../cables/working.ts';
import { type Input, onlyWhere } from '../kind.ts';
import { type CableWorkings, dropOf } from './working.ts';

function inputsOf(cable: Cable, workings: CableWorkings): Input[] {
  const { tabulated } = workings;
  return [
    { name: 'L, length one way', value: workings.length, unit: 'm' },
    { name: 'I, current', value: workings.current, unit: 'A' },
    {
      name: 'R20, one conductor at 20 °C',
      value: workings.perMetre,
      unit: 'ohm/m',
      from: workings.fromTable ? 'IEC 60228' : 'plain copper, the size is not in IEC 60228',
    },
    {
      name: 't, conductor temperature',
      value: workings.temperature,
      unit: '°C',
      from: workings.isTemperatureReckoned ? `cable.${cable.name}.conductor-temperature` : 'default: as warm as the insulation allows',
    },
    { name: 'drop reckoned at that temperature', value: workings.reckoned, unit: 'V' },
    ...(tabulated === undefined
      ? []
      : [
          { name: 'tabulated drop, there and back', value: tabulated.value, unit: 'V/(A·m)' as const, from: `BS 7671, ${tabulated.table}` },
          { name: 'drop by the table', value: tabulated.drop, unit: 'V' as const },
        ]),
    { name: 'share of the voltage at the beginning', value: workings.share, unit: '1' },
  ];
}

export const figures = onlyWhere(hasCables, [
  {
    id: 'cable.NAME.voltage-drop',
    title: 'Voltage lost in the cable, there and back: on the mains by the table where it has the size, else as reckoned',
    unit: 'V',
    topic: 'electrical',
    formula: 'ΔU = (mV/A/m)·L·I/1000, or ΔU = 2·L·I·R20·(1 + 0.00393·(t − 20))',
    source: {
      text: 'BS 7671, Appendix 4 (tabulated drop); IEC 60228 (greatest conductor resistance at 20 °C), IEC 60028 (temperature coefficient of copper)',
      standing: 'published',
    },
    changedBy: 'a thicker conductor, a shorter run, or less current',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = dropOf(cable);
        if (workings !== undefined) give(cable.name, workings.drop, factPlace(cable, cable.facts.carries), () => inputsOf(cable, workings));
      }
    },
  },
  {
    id: 'cable.NAME.end-voltage',
    title: 'Voltage that is left at the far end of the cable at the greatest current',
    unit: 'V',
    topic: 'electrical',
    formula: 'U at the beginning − ΔU',
    source: {
      text: 'BS 7671, Appendix 4 (tabulated drop); IEC 60228 (greatest conductor resistance at 20 °C), IEC 60028 (temperature coefficient of copper)',
      standing: 'published',
    },
    changedBy: 'a thicker conductor, a shorter run, or less current',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = dropOf(cable);
        if (workings === undefined) continue;
        give(cable.name, workings.voltage - workings.drop, factPlace(cable, cable.facts.length), () => [
          { name: 'voltage at the beginning', value: workings.voltage, unit: 'V' },
          { name: 'ΔU, voltage lost', value: workings.drop, unit: 'V', from: `cable.${cable.name}.voltage-drop` },
        ]);
      }
    },
  },
]);
