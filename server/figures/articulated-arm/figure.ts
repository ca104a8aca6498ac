import { factPlace } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, type Source } from '../kind.ts';
import { type ArmWorkings, armOf } from './working.ts';

const fourBar: Source = { text: 'four-bar linkage, R. L. Norton, Design of Machinery, ch. 4 and 6', standing: 'published' };

function inputsOf({ mounting, opening }: ArmWorkings): Input[] {
  return [
    { name: 'shaft behind the hinge', value: mounting.along, unit: 'm' },
    { name: 'shaft towards the opening side', value: mounting.out, unit: 'm' },
    { name: 'arm on the shaft', value: mounting.driveArm, unit: 'm', from: 'the drive’s model' },
    { name: 'arm on the leaf', value: mounting.linkArm, unit: 'm', from: 'the drive’s model' },
    { name: 'leaf bracket from the hinge', value: mounting.leafBracket, unit: 'm' },
    { name: 'opening angle', value: inDegrees(opening), unit: 'deg' },
  ];
}

export const figures: readonly FigureKind[] = [
  {
    id: 'drive.NAME.shaft-turn',
    title: 'Angle that the shaft of an articulated arm turns between closed and open',
    unit: 'deg',
    topic: 'travel',
    formula: 'difference of the shaft angles of the four-bar linkage at closed and at open',
    source: fourBar,
    changedBy: 'where the shaft stands, the arms, the leaf bracket and the opening angle',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const arm = armOf(drive);
        if (arm?.shaftTurn !== undefined)
          give(drive.name, inDegrees(arm.shaftTurn), factPlace(drive, drive.facts.shaft), () => inputsOf(arm));
      }
    },
  },
  {
    id: 'drive.NAME.transmission-angle',
    title: 'Smallest angle between the arm on the leaf and the leaf over the travel',
    unit: 'deg',
    topic: 'travel',
    formula: 'least |θ3 − θ4| of the four-bar linkage, taken to the nearer right angle; at 0° the arm only pushes along the leaf',
    source: fourBar,
    changedBy: 'the leaf bracket and the place of the shaft',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const arm = armOf(drive);
        if (arm?.leastTransmission !== undefined)
          give(drive.name, inDegrees(arm.leastTransmission), factPlace(drive, drive.facts['leaf-bracket']), () => inputsOf(arm));
      }
    },
  },
];
