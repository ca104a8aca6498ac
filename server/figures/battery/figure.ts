import { factPlace, type Installation, type Panel } from '../../model/index.ts';
import { inCelsius } from '../cables/working.ts';
import { type Input, onlyWhere, type Source } from '../kind.ts';
import { coldest } from './maths.ts';
import { ampereHours, type BatteryWorkings, batteryOf, day, type SolarWorkings, solarOf } from './working.ts';

const wattHours = (energy: number): string => `${Number((energy / 3600).toPrecision(3))} Wh`;
const hours = (seconds: number): string =>
  seconds >= 48 * 3600 ? `${Number((seconds / day).toPrecision(3))} days` : `${Number((seconds / 3600).toPrecision(3))} h`;

const peukert: Source = {
  text: 'Peukert’s law with the capacity rated at H hours; the exponent 1.25 of a battery with one rating only is from memory',
  standing: 'from memory',
};
const sun: Source = { text: 'peak sun hours (kWh a square metre and day) × rated power × efficiency', standing: 'derived' };
const bank: Source = {
  text: 'simplified IEEE method for lead-acid banks: load a day × days × temperature factor / share that may be used',
  standing: 'published',
};

const discharged = ({ battery: { facts }, discharge, cold }: BatteryWorkings): Input[] => [
  { name: 'share that may be used', value: discharge, unit: '1', ...(facts.discharge === undefined ? { from: 'default' } : {}) },
  {
    name: 'temperature factor',
    value: cold,
    unit: '1',
    from:
      facts.coldest === undefined
        ? 'default: 27 °C and above'
        : `simplified IEEE method${facts.coldest.value < coldest - 1e-9 ? ', whose table ends at -7 °C: it should be more' : ''}, at ${Math.round(inCelsius(facts.coldest.value))} °C`,
  },
];
const rated = (workings: BatteryWorkings): Input[] => [
  { name: 'C, rated capacity', value: workings.capacity.charge, unit: 'C' },
  { name: 'H, time of that rating', value: workings.capacity.time, unit: 's' },
  { name: 'k, Peukert exponent', value: workings.exponent, unit: '1', from: workings.exponentFrom },
];
const dailyInputs = (workings: BatteryWorkings, panel: Panel): Input[] => [
  { name: 'standby current', value: workings.standby, unit: 'A', from: `panel.${panel.name}.standby-current` },
  {
    name: 'cycles a day',
    value: workings.cycles * day,
    unit: '1',
    ...(workings.battery.facts.cycles !== undefined
      ? {}
      : { from: panel.installation.site?.facts.cycles === undefined ? 'default: none' : 'the site' }),
  },
  { name: 'charge for a cycle: current of each drive × twice its run and seat', value: workings.cycleCharge, unit: 'C' },
];

const hasBattery = ({ panels }: Installation): boolean => panels.some((panel) => panel.battery !== undefined);

export const figures = onlyWhere(hasBattery, [
  {
    id: 'panel.NAME.daily-charge',
    title: 'Charge that the gate draws from the battery in a day',
    unit: 'C',
    topic: 'electrical',
    formula:
      'I at rest × 24 h + cycles × Σ I of the drive × 2 × (run time + seat), times output over battery voltage where that is above 1',
    source: { text: 'charge is current × time', standing: 'derived' },
    changedBy: 'the cycles a day, what is fed, and how long a movement takes',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const workings = batteryOf(panel);
        if (workings !== undefined)
          give(
            panel.name,
            workings.daily,
            factPlace(workings.battery),
            () => dailyInputs(workings, panel),
            () => `${ampereHours(workings.daily)} a day`,
          );
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
          () => [
            { name: 'I, standby current', value: workings.standby, unit: 'A', from: `panel.${panel.name}.standby-current` },
            ...rated(workings),
            ...discharged(workings),
          ],
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
            {
              name: 'what the battery gives at the average current',
              value: workings.gives,
              unit: 'C',
              from: `Peukert’s law, exponent ${Number(workings.exponent.toPrecision(4))} (${workings.exponentFrom})`,
            },
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
        if (workings !== undefined)
          give(
            panel.name,
            workings.gives,
            factPlace(workings.solar, workings.solar.facts.peak),
            () => solarInputs(workings),
            () => `${wattHours(workings.gives)} a day; ${wattHours(workings.daily)} are drawn`,
          );
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
const solarInputs = (workings: SolarWorkings): Input[] => [
  { name: 'Wp, rated power', value: workings.peak, unit: 'W' },
  ...sunInputs(workings),
];
