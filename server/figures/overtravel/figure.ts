import { factPlace, type Leaf } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, type Source } from '../kind.ts';
import { travelPlace } from '../run-time/working.ts';
import { closingStopOf, type EdgeStop, openingStopOf } from './working.ts';

const source: Source = { text: 'constant-acceleration motion; what it is held against: ASR A1.7, section 6', standing: 'derived' };

function inputsOf(leaf: Leaf, stop: EdgeStop): Input[] {
  const swing = leaf.facts.opens !== undefined;
  const rotary = stop.motion.unit === 'rad';
  const edgeModel = `sensor-model ${stop.edge?.model?.name ?? ''}`;
  return [
    { name: 'v, speed of the edge when it is told to stop', value: stop.edgeSpeed, unit: 'm/s' },
    swing ? { name: 'at an opening of', value: inDegrees(stop.at), unit: 'deg' } : { name: 'at an opening of', value: stop.at, unit: 'm' },
    {
      name: 't, reaction',
      value: stop.reaction,
      unit: 's',
      from: stop.edge === undefined ? 'no edge; the slowest of what else is to stop it, or its panel' : edgeModel,
    },
    {
      name: 'a, deceleration of the drive',
      value: rotary ? inDegrees(stop.deceleration) : stop.deceleration,
      unit: rotary ? 'deg/s²' : 'm/s²',
      from: `drive-model ${stop.motion.model.name}`,
    },
    ...(stop.deformation === undefined
      ? []
      : [{ name: 'what the edge still gives', value: stop.deformation, unit: 'm' as const, from: edgeModel }]),
    ...(stop.energy === undefined ? [] : [{ name: 'energy of the leaf when it trips', value: stop.energy, unit: 'J' as const }]),
  ];
}

const words = (stop: EdgeStop): string => {
  const millimetres = (metres: number): string => `${Number((metres * 1000).toPrecision(3))} mm`;
  const energy = stop.energy === undefined ? '' : `, with ${Number(stop.energy.toPrecision(3))} J in the leaf`;
  return stop.deformation === undefined ? `No edge on that side${energy}` : `The edge gives ${millimetres(stop.deformation)}${energy}`;
};

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.overtravel',
    title: 'How far the closing edge runs on after its sensor has tripped, at the worst place while closing',
    unit: 'm',
    topic: 'impact',
    formula:
      's = w·Δθ while the drive runs on by u·t + u²/(2·a) from there: u its speed, w the width; about (u·t + u²/(2·a))·w / r with its lever r (for a sliding leaf w / r is 1)',
    source,
    changedBy: 'the speed most of all, then the reaction and how fast the drive stops',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const stop = closingStopOf(leaf);
        if (stop !== undefined)
          give(
            leaf.name,
            stop.distance,
            stop.edge === undefined ? travelPlace(leaf) : factPlace(stop.edge, stop.edge.facts.on),
            () => inputsOf(leaf, stop),
            () => words(stop),
          );
      }
    },
  },
  {
    id: 'leaf.NAME.overtravel-when-opening',
    title: 'How far the edge that leads while opening runs on after its sensor has tripped, at the worst place',
    unit: 'm',
    topic: 'impact',
    formula:
      's = w·Δθ while the drive runs on by u·t + u²/(2·a) from there: u its speed, w the width; about (u·t + u²/(2·a))·w / r with its lever r (for a sliding leaf w / r is 1)',
    source,
    changedBy: 'the speed most of all, then the reaction and how fast the drive stops',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const stop = openingStopOf(leaf);
        if (stop?.edge !== undefined)
          give(
            leaf.name,
            stop.distance,
            factPlace(stop.edge, stop.edge.facts.on),
            () => inputsOf(leaf, stop),
            () => words(stop),
          );
      }
    },
  },
];
