import { extraLow, upstreamOf } from '../../circuits/index.ts';
import { type Cable, perSubject } from '../../model/index.ts';
import { atTemperature, classOf, insulationOf, resistancePerMetre, warmest } from '../cables/working.ts';
import { warmthOf } from '../current-rating/working.ts';
import { type TabulatedDrop, tabulatedDrop, voltageDrop } from './maths.ts';

export { allowedShare } from './maths.ts';

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
  return {
    length: length.value,
    current: carries.current,
    voltage: carries.voltage,
    drop,
    reckoned,
    cold,
    tabulated,
    share: drop / carries.voltage,
    perMetre: resistance.value,
    fromTable: resistance.fromTable,
    temperature,
    isTemperatureReckoned: reckonedTemperature !== undefined,
    mains,
  };
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
