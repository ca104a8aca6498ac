import { type Drive, factPlace, headPlace, type Installation, perSubject } from '../../model/index.ts';
import { mechanics, ramMountingOf } from '../common.ts';
import { inDegrees, type FigureKind, type Input } from '../figure.ts';
import { deadPoint, leverArm, strokeUsed, type RamMounting } from './maths.ts';

export interface RamWorkings {
  readonly mounting: RamMounting;
  /** Opening angle asked for, radians. */
  readonly opening: number;
  /** Metres. */
  readonly strokeUsed: number;
  /** The first angle within the travel at which the ram cannot move the leaf, radians. */
  readonly deadPoint: number | undefined;
  /** Smallest lever arm over the travel, metres. It lies at one end: between them the lever arm only grows and falls again. */
  readonly leastLeverArm: number;
}

/** The geometry of a linear ram's brackets over the leaf's travel. */
export const ramOf = perSubject((drive: Drive): RamWorkings | undefined => {
  const mounting = ramMountingOf(drive);
  const opening = drive.leaf === undefined ? undefined : drive.leaf.facts.opens?.angle;
  if (mounting === undefined || opening === undefined) return undefined;
  const stroke = strokeUsed(mounting, opening);
  const closed = leverArm(mounting, 0);
  const open = leverArm(mounting, opening);
  if (stroke === undefined || closed === undefined || open === undefined) return undefined;
  const dead = deadPoint(mounting, opening);
  return { mounting, opening, strokeUsed: stroke, deadPoint: dead, leastLeverArm: dead === undefined ? Math.min(closed, open) : 0 };
});

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
  return stroke === undefined ? [] : [{ name: 'stroke that the ram has', value: stroke.value, unit: 'm', from: `drive-model ${drive.model?.name ?? ''}` }];
}
