import { factPlace } from '../../model/index.ts';
import { hasPush } from '../force-window/working.ts';
import { type FigureKind, type Input, inDegrees, onlyWhere, type Source } from '../kind.ts';
import { beaufortInWords } from '../wind/working.ts';
import { meanBehind, type Stall, type Stalls, stallsOf } from './working.ts';

function inputsOf(stall: Stall): Input[] {
  const { unit, setting, drive, friction } = stall.of;
  return [
    {
      name: 'what the drive pushes with',
      value: stall.push,
      unit,
      from: setting === undefined ? `drive-model ${drive.model?.name ?? ''}, the most that it can` : 'the force set',
    },
    { name: 'lever', value: stall.lever, unit: unit === 'N' ? 'm' : '1' },
    { name: 'friction', value: friction, unit: 'N·m' },
    { name: 'left for the wind', value: stall.spare, unit: 'N·m' },
    { name: 'moment for each pascal', value: stall.grip, unit: 'm³', from: 'EN 1991-1-4, Table 7.9 and 7.11' },
    { name: 'at an opening of', value: inDegrees(stall.at), unit: 'deg' },
  ];
}

const source: Source = { text: 'EN 1991-1-4:2005+A1, 7.4.1 and 7.11, and the lever of the drive', standing: 'derived' };

const kind = (part: keyof Stalls, title: string): FigureKind => ({
  id: `leaf.NAME.stall-wind-${part}`,
  title,
  unit: 'm/s',
  topic: 'wind',
  formula: 'v = √(2·M / (ρ·m)): M what the drive has left after friction and slope, m the moment for each pascal, ρ = 1.25 kg/m³',
  source,
  changedBy: 'less infill, a narrower leaf, a longer lever, or a stronger drive; not its speed',
  work: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const stall = stallsOf(leaf)?.[part];
      if (stall === undefined) continue;
      give(
        leaf.name,
        stall.gust,
        factPlace(leaf, leaf.facts.infill ?? leaf.facts.opens),
        () => inputsOf(stall),
        () => {
          const mean = meanBehind(leaf, stall.gust);
          return `Such gusts come with ${mean === undefined ? 'a wind that cannot be told' : (beaufortInWords(mean) ?? '')}`;
        },
      );
    }
  },
});

export const figures = onlyWhere(hasPush, [
  kind('closed', 'Gust that the drive cannot open the closed leaf against'),
  kind('moving', 'Gust that stops the leaf on its way, at the worst angle and from the worst side'),
  kind('open', 'Gust that the drive cannot close the open leaf against'),
]);
