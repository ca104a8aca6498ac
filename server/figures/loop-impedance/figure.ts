import { type Cable, factPlace } from '../../model/index.ts';
import { hasCables, insulationOf, warmest } from '../cables/working.ts';
import { type Input, onlyWhere, type Source } from '../kind.ts';
import { copperInPvc, leastSupply, tripsAt, tripTime } from './maths.ts';
import { type Cutoff, type LoopWorkings, loopOf } from './working.ts';

const limits: Source = { text: 'BS 7671, 411.4.4 and Tables 41.2, 41.3 and 41.4', standing: 'published' };
const place = (cable: Cable): { start: number; end: number } =>
  factPlace(cable, cable.facts.breaker ?? cable.facts.fuse ?? cable.facts['residual-current']);

const loopInputs = (workings: LoopWorkings, cable: Cable): Input[] => [
  { name: 'Ze, outside the installation', value: workings.external, unit: 'ohm' },
  { name: 'R1, line conductor', value: workings.line, unit: 'ohm', from: `IEC 60228, at ${warmest[insulationOf(cable)]} °C` },
  { name: 'R2, protective conductor', value: workings.protective, unit: 'ohm', from: `IEC 60228, at ${warmest[insulationOf(cable)]} °C` },
];

function limitInputs(voltage: number, { cable, by }: Cutoff): Input[] {
  const { breaker, fuse, 'residual-current': residual } = cable.facts;
  const toEarth: Input = { name: 'U0, voltage to earth', value: voltage, unit: 'V' };
  if (by === 'fuse' && fuse !== undefined) return [toEarth, { name: 'In, rated current of the gG fuse', value: fuse.rating, unit: 'A' }];
  const least: Input = { name: 'Cmin', value: leastSupply, unit: '1', from: 'BS 7671, 411.4.4' };
  if (by === 'residual-current' && residual !== undefined)
    return [toEarth, least, { name: 'IΔn, rated residual current', value: residual.value, unit: 'A' }];
  return breaker === undefined
    ? []
    : [
        toEarth,
        least,
        { name: `m, characteristic ${breaker.curve}`, value: tripsAt[breaker.curve], unit: '1', from: 'EN 60898-1' },
        { name: 'In, rated current', value: breaker.rating, unit: 'A' },
      ];
}

export const figures = onlyWhere(hasCables, [
  {
    id: 'cable.NAME.loop-impedance',
    title: 'Earth fault loop impedance at the far end of the cable',
    unit: 'ohm',
    topic: 'electrical',
    formula: 'Zs = Ze + R1 + R2, with the conductors as warm as they may be',
    source: { text: 'BS 7671, Part 2 (Zs) and IEC 60228', standing: 'published' },
    changedBy: 'a thicker cable, a shorter run',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = loopOf(cable);
        if (workings !== undefined) give(cable.name, workings.impedance, place(cable), () => loopInputs(workings, cable));
      }
    },
  },
  {
    id: 'cable.NAME.loop-impedance-limit',
    title: 'Greatest earth fault loop impedance with which a fault is cut off in time',
    unit: 'ohm',
    topic: 'electrical',
    formula: 'Zs ≤ U0·Cmin/Ia, with Ia = m·In of a breaker and IΔn of a residual-current device; of a fuse by the table',
    source: limits,
    changedBy: 'a breaker of another characteristic or a smaller rated current, a residual-current device',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = loopOf(cable);
        const cutoff = workings?.cutoff;
        if (workings !== undefined && cutoff !== undefined)
          give(cable.name, cutoff.limit, factPlace(cutoff.cable, cutoff.cable.facts[cutoff.by]), () =>
            limitInputs(workings.voltage, cutoff),
          );
      }
    },
  },
  {
    id: 'cable.NAME.fault-current',
    title: 'Current that flows when the line conductor touches earthed metal at the far end',
    unit: 'A',
    topic: 'electrical',
    formula: 'I = U0/Zs',
    source: { text: 'Ohm’s law', standing: 'derived' },
    changedBy: 'a thicker cable, a shorter run',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = loopOf(cable);
        if (workings === undefined) continue;
        give(cable.name, workings.faultCurrent, place(cable), () => [
          { name: 'U0, voltage to earth', value: workings.voltage, unit: 'V' },
          { name: 'Zs', value: workings.impedance, unit: 'ohm', from: `cable.${cable.name}.loop-impedance` },
        ]);
      }
    },
  },
  {
    id: 'cable.NAME.protective-conductor-least',
    title: 'Least cross-section of the protective conductor that bears the fault until the breaker has tripped',
    unit: 'm²',
    topic: 'electrical',
    formula: 'S = √(I²·t)/k',
    source: { text: 'BS 7671, 543.1.3 and Table 54.3; the 0.1 s of the breaker from memory', standing: 'from memory' },
    changedBy: 'a longer or thinner cable lets less current flow; another protective device cuts off sooner',
    work: ({ cables }, give) => {
      for (const cable of cables) {
        const workings = loopOf(cable);
        if (workings === undefined) continue;
        const { conductorLeast: least, faultCurrent } = workings;
        if (least === undefined) continue;
        give(
          cable.name,
          least,
          place(cable),
          () => [
            { name: 'I, fault current', value: faultCurrent, unit: 'A', from: `cable.${cable.name}.fault-current` },
            { name: 't, time to cut off', value: tripTime, unit: 's', from: 'EN 60898-1 (from memory)' },
            { name: 'k, copper in a 70 °C thermoplastic cable', value: copperInPvc, unit: 'A·√s/mm²', from: 'BS 7671, Table 54.3' },
          ],
          () => `${Number((least * 1e6).toPrecision(3))} mm2`,
        );
      }
    },
  },
]);
