import { type Drive, factPlace, headPlace, type Installation } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, mechanics } from '../kind.ts';
import { type RamWorkings, ramOf } from './working.ts';

function inputsOf({ mounting, opening }: RamWorkings): Input[] {
  return [
    { name: 'A, post bracket behind the hinge', value: mounting.along, unit: 'm' },
    { name: 'B, post bracket towards the opening side', value: mounting.out, unit: 'm' },
    { name: 'b, leaf bracket from the hinge', value: mounting.leafBracket, unit: 'm' },
    { name: 'θ, opening angle', value: inDegrees(opening), unit: 'deg' },
  ];
}

const place = (drive: Drive): { start: number; end: number } => factPlace(drive, drive.facts['leaf-bracket']);

export const figures: readonly FigureKind[] = [
  {
    id: 'drive.NAME.stroke-used',
    title: 'Stroke that the ram uses between closed and open',
    unit: 'm',
    topic: 'travel',
    formula: 'greatest − smallest L(θ) over the travel, with L² = (b·cos θ + A)² + (b·sin θ − B)²',
    source: mechanics,
    changedBy: 'the bracket distances and the opening angle',
    work: ({ drives }: Installation, give) => {
      for (const drive of drives) {
        const ram = ramOf(drive);
        if (ram !== undefined) give(drive.name, ram.strokeUsed, place(drive), () => [...inputsOf(ram), ...strokeHad(drive)]);
      }
    },
  },
  {
    id: 'drive.NAME.lever-arm',
    title: 'Smallest lever arm of the ram about the hinge over the travel',
    unit: 'm',
    topic: 'travel',
    formula: 'r = b·|A·sin θ + B·cos θ| / L(θ), at the end of the travel where it is smaller',
    source: mechanics,
    changedBy: 'the bracket distances; a longer lever arm gives more torque and a slower leaf',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const ram = ramOf(drive);
        if (ram !== undefined) give(drive.name, ram.leastLeverArm, factPlace(drive, drive.facts['post-bracket']), () => inputsOf(ram));
      }
    },
  },
  {
    id: 'drive.NAME.dead-point',
    title: 'Angle within the travel at which the ram cannot move the leaf',
    unit: 'deg',
    topic: 'travel',
    formula: 'tan θ = −B / A: hinge and both brackets in one line',
    source: mechanics,
    changedBy: 'the post bracket: it belongs behind the hinge, on the side that the leaf opens to',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const ram = ramOf(drive);
        if (ram?.deadPoint !== undefined) give(drive.name, inDegrees(ram.deadPoint), headPlace(drive), () => inputsOf(ram));
      }
    },
  },
];

function strokeHad(drive: Drive): Input[] {
  const stroke = drive.model?.facts.stroke;
  return stroke === undefined
    ? []
    : [{ name: 'stroke that the ram has', value: stroke.value, unit: 'm', from: `drive-model ${drive.model?.name ?? ''}` }];
}
