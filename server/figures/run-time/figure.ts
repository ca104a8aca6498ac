import { factPlace } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, mechanics } from '../kind.ts';
import { fallback, type LeafMotion, motionOf, travelPlace } from './working.ts';

function inputsOf(motion: LeafMotion): Input[] {
  const rotary = motion.unit === 'rad';
  const shown = (value: number): number => (rotary ? inDegrees(value) : value);
  const unit = rotary ? 'deg' : 'm';
  const model = `drive-model ${motion.model.name}`;
  const { ramp, 'slow-speed': slowest } = motion.model.facts;
  const set = motion.drive.installation.motion?.facts;
  const zone = set?.['slow-zone'];
  const shareOf = (share: number): string => `${Number((share * 100).toPrecision(6))} % of that of ${model}`;
  return [
    { name: 'drive travel', value: shown(motion.travel), unit },
    {
      name: 'full speed',
      value: shown(motion.speed),
      unit: `${unit}/s`,
      from: set?.speed === undefined ? model : shareOf(set.speed.value),
    },
    { name: 'travel in the slow zone', value: shown(motion.slowTravel), unit },
    {
      name: 'slow speed',
      value: shown(motion.slowSpeed),
      unit: `${unit}/s`,
      from: zone?.speed !== undefined ? shareOf(zone.speed) : slowest !== undefined ? model : `default: ${shareOf(fallback.slowSpeed)}`,
    },
    { name: 'time to full speed', value: ramp?.value ?? fallback.ramp, unit: 's', from: ramp === undefined ? 'default: none' : model },
  ];
}

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.run-time',
    title: 'Time from one stop to the other, at full speed and then through the slow zone',
    unit: 's',
    topic: 'timing',
    formula: 't = speeding up + full-speed travel / full speed + braking + slow travel / slow speed + braking to the stop',
    source: mechanics,
    changedBy: 'speed, slow zone, brackets, or another drive',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const motion = motionOf(leaf);
        if (motion !== undefined) give(leaf.name, motion.runTime, travelPlace(leaf), () => inputsOf(motion));
      }
    },
  },
  {
    id: 'leaf.NAME.drive-time',
    title: 'Time for which the drive is on: the run and the seat',
    unit: 's',
    topic: 'timing',
    formula: 'run time + seat',
    source: mechanics,
    changedBy: 'the seat, and all that changes the run time',
    work: ({ leaves, motion }, give) => {
      const seat = motion?.facts.seat;
      if (seat === undefined) return;
      for (const leaf of leaves) {
        const run = motionOf(leaf)?.runTime;
        if (run !== undefined)
          give(leaf.name, run + seat.value, factPlace({ at: seat.line }, seat), () => [
            { name: 'run time', value: run, unit: 's', from: `leaf.${leaf.name}.run-time` },
            { name: 'seat', value: seat.value, unit: 's' },
          ]);
      }
    },
  },
];
