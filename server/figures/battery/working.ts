import { feedingsOf } from '../../circuits/index.ts';
import { type Battery, type Drive, type Panel, perSubject, type Solar } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { drawOf } from '../design-current/working.ts';
import { motionOf } from '../run-time/working.ts';
import { isForMovements, standbyOf } from '../supply-budget/working.ts';
import {
  type Capacity,
  capacityNeeded,
  chargeAt,
  coldFactor,
  dailyCharge,
  exponentFrom,
  solarNeeded,
  solarYield,
  usualExponent,
} from './maths.ts';

export { coldest } from './maths.ts';

const batteryLines = blocks.panel.blocks.battery.lines;
const solarLines = blocks.panel.blocks.solar.lines;
/** Seconds. */
export const day = 24 * 3600;

export interface BatteryWorkings {
  readonly battery: Battery;
  readonly capacity: Capacity;
  readonly exponent: number;
  readonly exponentFrom: string;
  readonly discharge: number;
  readonly cold: number;
  /** Amperes at rest. */
  readonly standby: number;
  /** A second. */
  readonly cycles: number;
  /** C for one cycle. */
  readonly cycleCharge: number;
  /** C a day. */
  readonly daily: number;
  /** Seconds at rest from full until the share that may be used is used. */
  readonly standbyTime: number;
  /** C that it gives at the average current of the day. */
  readonly gives: number;
  /** Seconds that it is to last, and C for them; undefined where that is not stated. */
  readonly lasts: number | undefined;
  readonly needed: number | undefined;
}

/** What the battery of a panel is asked for and gives; undefined where a fact is missing. */
export const batteryOf = perSubject((panel: Panel): BatteryWorkings | undefined => {
  const { battery } = panel;
  const standby = standbyOf(panel);
  if (battery === undefined || standby === undefined || standby.current <= 0) return undefined;
  const { facts } = battery;
  let slowest = facts.capacity[0];
  if (slowest === undefined) return undefined;
  let fastest = slowest;
  for (const rating of facts.capacity) {
    if (rating.time > slowest.time) slowest = rating;
    if (rating.time < fastest.time) fastest = rating;
  }
  const measured = exponentFrom(slowest, fastest);
  const exponent = measured ?? usualExponent;
  const discharge = facts.discharge?.value ?? batteryLines.discharge.slots.value.fallback;
  const cold = facts.coldest === undefined ? 1 : coldFactor(facts.coldest.value);
  const cycles = (facts.cycles ?? panel.installation.site?.facts.cycles)?.value ?? 0;
  const cycleCharge = cycles === 0 ? 0 : cycleChargeOf(panel);
  if (cycleCharge === undefined) return undefined;
  const daily = dailyCharge(standby.current, cycles * day, cycleCharge);
  const atRest = chargeAt(slowest, standby.current, exponent);
  const gives = chargeAt(slowest, daily / day, exponent);
  if (atRest === undefined || gives === undefined) return undefined;
  return {
    battery,
    capacity: slowest,
    exponent,
    exponentFrom: measured === undefined ? 'lead-acid, from memory' : 'the two capacities stated',
    discharge,
    cold,
    standby: standby.current,
    cycles,
    cycleCharge,
    daily,
    standbyTime: (atRest * discharge) / (cold * standby.current),
    gives,
    lasts: facts.lasts?.value,
    needed: facts.lasts === undefined ? undefined : capacityNeeded(daily, facts.lasts.value / day, discharge, cold),
  };
});

/** C from the battery by which all drives of a panel open and close once, with the seats; undefined where one of them is not known. */
function cycleChargeOf(panel: Panel): number | undefined {
  const seat = panel.installation.motion?.facts.seat?.value ?? 0;
  let charge = 0;
  let longest = 0;
  const met = new Set<unknown>();
  for (const { device } of panel.wires) {
    if (device?.kind !== 'drive' || met.has(device.it)) continue;
    met.add(device.it);
    const current = drawOf(device.it);
    const run = device.it.leaf === undefined ? undefined : motionOf(device.it.leaf)?.runTime;
    if (current === undefined || run === undefined) return undefined;
    charge += 2 * current * (run + seat) * boostOf(panel, device.it);
    longest = Math.max(longest, run + seat);
  }
  // Lamps and locks draw as long as the slowest leaf moves.
  for (const accessory of panel.facts.accessory) if (isForMovements(panel, accessory)) charge += 2 * accessory.current * longest;
  return met.size === 0 ? undefined : charge;
}

/**
 * How much more than a drive draws is drawn from the battery: power carries over, and not current, where its output has a higher voltage;
 * a lower one may be made in ways that save nothing. Without an output that says, the least voltage of the drive counts.
 */
function boostOf(panel: Panel, drive: Drive): number {
  const battery = panel.battery?.facts.voltage?.value;
  if (battery === undefined) return 1;
  let highest = drive.model?.facts['least-voltage']?.value ?? battery;
  for (const { output } of feedingsOf(drive)) highest = Math.max(highest, output.voltage);
  return Math.max(1, highest / battery);
}

export interface SolarWorkings {
  readonly solar: Solar;
  /** W. */
  readonly peak: number;
  /** Seconds of full sun a day. */
  readonly sun: number;
  /** J a day. */
  readonly daily: number;
  readonly gives: number;
  /** W. */
  readonly needed: number;
  readonly efficiency: number;
}

/** What the sun must give a panel each day and gives. */
export const solarOf = perSubject((panel: Panel): SolarWorkings | undefined => {
  const { solar } = panel;
  if (solar === undefined) return undefined;
  const { facts } = solar;
  const voltage = panel.battery?.facts.voltage?.value;
  const battery = batteryOf(panel);
  if (facts.peak === undefined || facts.sun === undefined || voltage === undefined || battery === undefined) return undefined;
  const efficiency = facts.efficiency?.value ?? solarLines.efficiency.slots.value.fallback;
  const daily = battery.daily * voltage;
  const [peak, sun] = [facts.peak.value, facts.sun.value];
  return { solar, peak, sun, daily, gives: solarYield(peak, sun, efficiency), needed: solarNeeded(daily, sun, efficiency), efficiency };
});

/** C for people. */
export const ampereHours = (charge: number): string => `${Number((charge / 3600).toPrecision(3))} Ah`;
