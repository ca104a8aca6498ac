import { type Cable, factPlace, perSubject } from '../../model/index.ts';
import { classOf, insulationOf } from '../cables.ts';
import { extraLow, upstreamOf } from '../../circuits/index.ts';
import { warmthOf } from '../current-rating/figure.ts';
import { hasCables } from '../common.ts';
import { onlyWhere, type Input } from '../figure.ts';
import { atTemperature, resistancePerMetre, tabulatedDrop, voltageDrop, warmest, type TabulatedDrop } from './maths.ts';

export interface CableWorkings {
  /** One way, m. */
  readonly length: number;
  /** A. */
  readonly current: number;
  /** At the beginning, V. */
  readonly voltage: number;
  /** Volts: as tabulated on the mains where a table has the size, else as reckoned. */
  readonly drop: number;
  /** Volts, by IEC 60228 at the conductor temperature. */
  readonly reckoned: number;
  /** Volts, by IEC 60228 at 20 °C: less cannot be lost in a warm country. */
  readonly cold: number;
  readonly tabulated: (TabulatedDrop & { readonly drop: number }) | undefined;
  /** Of the voltage at the beginning, 0 to 1. */
  readonly share: number;
  /** Ohm/m at 20 °C. */
  readonly perMetre: number;
  readonly fromTable: boolean;
  /** °C. */
  readonly temperature: number;
  readonly isTemperatureReckoned: boolean;
  readonly mains: boolean;
}

export const dropOf = perSubject((cable: Cable): CableWorkings | undefined => {
  const { length, carries } = cable.facts;
  const area = cable.model?.facts.area?.value;
  if (length === undefined || carries === undefined || area === undefined) return undefined;
  const resistance = resistancePerMetre(area, classOf(cable));
  if (resistance === undefined) return undefined;
  const insulation = insulationOf(cable);
  const reckonedTemperature = warmthOf(cable)?.celsius;
  // Where it is not known how warm the conductors get, they are as warm as they may: the unfavourable side.
  const temperature = reckonedTemperature ?? warmest[insulation];
  const reckoned = voltageDrop(atTemperature(resistance.value, temperature), length.value, carries.current);
  const cold = voltageDrop(resistance.value, length.value, carries.current);
  const entry = tabulatedDrop(area, classOf(cable), insulation);
  const tabulated = entry === undefined ? undefined : { ...entry, drop: entry.value * length.value * carries.current };
  const mains = carries.voltage > extraLow;
  const drop = mains && tabulated !== undefined ? tabulated.drop : reckoned;
  return { length: length.value, current: carries.current, voltage: carries.voltage, drop, reckoned, cold, tabulated, share: drop / carries.voltage, perMetre: resistance.value, fromTable: resistance.fromTable, temperature, isTemperatureReckoned: reckonedTemperature !== undefined, mains };
});

export interface WholeDrop {
  /** Volts lost from the origin to the load, in this cable and in the one that feeds its panel. */
  readonly drop: number;
  /** Metres. */
  readonly length: number;
  readonly upstream: Cable | undefined;
}

/** What is lost on the whole way; undefined where the drop of one of the two cannot be worked out. */
export function wholeDropOf(cable: Cable): WholeDrop | undefined {
  const own = dropOf(cable);
  if (own === undefined) return undefined;
  const upstream = own.mains ? upstreamOf(cable) : undefined;
  if (upstream === undefined) return { drop: own.drop, length: own.length, upstream };
  const before = dropOf(upstream);
  return before === undefined ? undefined : { drop: own.drop + before.drop, length: own.length + before.length, upstream };
}

function inputsOf(cable: Cable, workings: CableWorkings): Input[] {
  const { tabulated } = workings;
  return [
    { name: 'L, length one way', value: workings.length, unit: 'm' },
    { name: 'I, current', value: workings.current, unit: 'A' },
    { name: 'R20, one conductor at 20 °C', value: workings.perMetre, unit: 'ohm/m', from: workings.fromTable ? 'IEC 60228' : 'plain copper, the size is not in IEC 60228' },
    { name: 't, conductor temperature', value: workings.temperature, unit: '°C', from: workings.isTemperatureReckoned ? `cable.${cable.name}.conductor-temperature` : 'default: as warm as the insulation allows' },
    { name: 'drop reckoned at that temperature', value: workings.reckoned, unit: 'V' },
    ...(tabulated === undefined
      ? []
      : [
          { name: 'tabulated drop, there and back', value: tabulated.value, unit: 'V/(A·m)', from: `BS 7671, ${tabulated.table}` },
          { name: 'drop by the table', value: tabulated.drop, unit: 'V' },
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
    source: { text: 'BS 7671, Appendix 4 (tabulated drop); IEC 60228 (greatest conductor resistance at 20 °C), IEC 60028 (temperature coefficient of copper)', standing: 'published' },
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
    source: { text: 'BS 7671, Appendix 4 (tabulated drop); IEC 60228 (greatest conductor resistance at 20 °C), IEC 60028 (temperature coefficient of copper)', standing: 'published' },
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
