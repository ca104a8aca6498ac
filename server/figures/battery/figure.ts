import { type Battery, factPlace, type Installation, type Panel, perSubject, type Solar } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { drawOf, inCelsius } from '../cables.ts';
import { onlyWhere, type Input, type Source } from '../figure.ts';
import { motionOf } from '../run-time/figure.ts';
import { standbyOf } from '../supply-budget/figure.ts';
import { capacityNeeded, chargeAt, coldest, coldFactor, dailyCharge, exponentFrom, solarNeeded, solarYield, usualExponent, type Capacity } from './maths.ts';

const batteryLines = blocks.panel.blocks.battery.lines;
const solarLines = blocks.panel.blocks.solar.lines;
const day = 24 * 3600;

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

/** C that all drives of a panel draw to open and close once, with the seats; undefined where one of them is not known. */
function cycleChargeOf(panel: Panel): number | undefined {
  const seat = panel.installation.motion?.facts.seat?.value ?? 0;
  let charge = 0;
  const met = new Set<unknown>();
  for (const { device } of panel.wires) {
    if (device?.kind !== 'drive' || met.has(device.it)) continue;
    met.add(device.it);
    const current = drawOf(device.it);
    const run = device.it.leaf === undefined ? undefined : motionOf(device.it.leaf)?.runTime;
    if (current === undefined || run === undefined) return undefined;
    charge += 2 * current * (run + seat);
  }
  return met.size === 0 ? undefined : charge;
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
const wattHours = (energy: number): string => `${Number((energy / 3600).toPrecision(3))} Wh`;
const hours = (seconds: number): string => (seconds >= 48 * 3600 ? `${Number((seconds / day).toPrecision(3))} days` : `${Number((seconds / 3600).toPrecision(3))} h`);

const peukert: Source = { text: 'Peukert’s law with the capacity rated at H hours; the exponent 1.25 of a battery with one rating only is from memory', standing: 'from memory' };
const bank: Source = { text: 'simplified IEEE method for lead-acid banks: load a day × days × temperature factor / share that may be used', standing: 'published' };
const sun: Source = { text: 'peak sun hours (kWh a square metre and day) × rated power × efficiency', standing: 'derived' };

const discharged = ({ battery: { facts }, discharge, cold }: BatteryWorkings): Input[] => [
  { name: 'share that may be used', value: discharge, unit: '1', ...(facts.discharge === undefined ? { from: 'default' } : {}) },
  { name: 'temperature factor', value: cold, unit: '1', from: facts.coldest === undefined ? 'default: 27 °C and above' : `simplified IEEE method${facts.coldest.value < coldest - 1e-9 ? ', whose table ends at -7 °C: it should be more' : ''}, at ${Math.round(inCelsius(facts.coldest.value))} °C` },
];
const rated = (workings: BatteryWorkings): Input[] => [
  { name: 'C, rated capacity', value: workings.capacity.charge, unit: 'C' },
  { name: 'H, time of that rating', value: workings.capacity.time, unit: 's' },
  { name: 'k, Peukert exponent', value: workings.exponent, unit: '1', from: workings.exponentFrom },
];
const dailyInputs = (workings: BatteryWorkings, panel: Panel): Input[] => [
  { name: 'standby current', value: workings.standby, unit: 'A', from: `panel.${panel.name}.standby-current` },
  { name: 'cycles a day', value: workings.cycles * day, unit: '1', ...(workings.battery.facts.cycles !== undefined ? {} : { from: panel.installation.site?.facts.cycles === undefined ? 'default: none' : 'the site' }) },
  { name: 'charge for a cycle: current of each drive × twice its run and seat', value: workings.cycleCharge, unit: 'C' },
];


const hasBattery = ({ panels }: Installation): boolean => panels.some((panel) => panel.battery !== undefined);

export const figures = onlyWhere(hasBattery, [
  {
    id: 'panel.NAME.daily-charge',
    title: 'Charge that the gate draws from the battery in a day',
    unit: 'C',
    topic: 'electrical',
    formula: 'I at rest × 24 h + cycles × Σ I of the drive × 2 × (run time + seat)',
    source: { text: 'charge is current × time', standing: 'derived' },
    changedBy: 'the cycles a day, what is fed, and how long a movement takes',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const workings = batteryOf(panel);
        if (workings !== undefined) give(panel.name, workings.daily, factPlace(workings.battery), () => dailyInputs(workings, panel), () => `${ampereHours(workings.daily)} a day`);
      }
    },
  },
  {
    id: 'panel.NAME.standby-time',
    title: 'Time that the battery keeps the panel going while nothing moves',
    unit: 's',
    topic: 'electrical',
    formula: 't = DoD/fT · min(C/I, H·(C/(I·H))^k)',
    source: peukert,
    changedBy: 'a larger battery, or less current at rest',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const workings = batteryOf(panel);
        if (workings === undefined) continue;
        give(
          panel.name,
          workings.standbyTime,
          factPlace(workings.battery, workings.battery.facts.capacity[0]),
          () => [{ name: 'I, standby current', value: workings.standby, unit: 'A', from: `panel.${panel.name}.standby-current` }, ...rated(workings), ...discharged(workings)],
          () => hours(workings.standbyTime),
        );
      }
    },
  },
  {
    id: 'panel.NAME.battery-needed',
    title: 'Capacity that the battery needs to last as long as it is to',
    unit: 'C',
    topic: 'electrical',
    formula: 'charge a day × days × fT/DoD',
    source: bank,
    changedBy: 'the time that it is to last, the cycles a day, and what is fed',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const workings = batteryOf(panel);
        if (workings?.needed === undefined) continue;
        const { battery, needed, lasts } = workings;
        give(
          panel.name,
          needed,
          factPlace(battery, battery.facts.lasts),
          () => [
            { name: 'charge a day', value: workings.daily, unit: 'C', from: `panel.${panel.name}.daily-charge` },
            { name: 'time that it is to last', value: lasts ?? 0, unit: 's' },
            ...discharged(workings),
            { name: 'what the battery gives at the average current', value: workings.gives, unit: 'C', from: `Peukert’s law, exponent ${Number(workings.exponent.toPrecision(4))} (${workings.exponentFrom})` },
          ],
          () => ampereHours(needed),
        );
      }
    },
  },
  {
    id: 'panel.NAME.solar-yield',
    title: 'Energy that the solar panel gives in a day of the worst month',
    unit: 'J',
    topic: 'electrical',
    formula: 'Wp × peak sun hours × η',
    source: sun,
    changedBy: 'a larger solar panel, or a place with more sun',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const workings = solarOf(panel);
        if (workings !== undefined) give(panel.name, workings.gives, factPlace(workings.solar, workings.solar.facts.peak), () => solarInputs(workings), () => `${wattHours(workings.gives)} a day; ${wattHours(workings.daily)} are drawn`);
      }
    },
  },
  {
    id: 'panel.NAME.solar-needed',
    title: 'Rated power that the solar panel needs to give back what is drawn in a day',
    unit: 'W',
    topic: 'electrical',
    formula: 'Wp = energy a day/(peak sun hours × η)',
    source: sun,
    changedBy: 'the cycles a day, what is fed, and the sun at the place',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const workings = solarOf(panel);
        if (workings === undefined) continue;
        give(panel.name, workings.needed, factPlace(workings.solar, workings.solar.facts.sun), () => [
          { name: 'energy drawn in a day', value: workings.daily, unit: 'J', from: `panel.${panel.name}.daily-charge × battery voltage` },
          ...sunInputs(workings),
        ]);
      }
    },
  },
]);

const sunInputs = ({ solar, sun, efficiency }: SolarWorkings): Input[] => [
  { name: 'peak sun a day', value: sun, unit: 's' },
  { name: 'η, efficiency', value: efficiency, unit: '1', ...(solar.facts.efficiency === undefined ? { from: 'default' } : {}) },
];
const solarInputs = (workings: SolarWorkings): Input[] => [{ name: 'Wp, rated power', value: workings.peak, unit: 'W' }, ...sunInputs(workings)];
