import { type Drive, headPlace } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, mechanics } from '../kind.ts';
import { reachOf } from './working.ts';

/** What the model states of its reach; of an arm nothing, for there the mounting says it. */
function inputsOf({ model }: Drive): Input[] {
  if (model === undefined) return [];
  const { kind, stroke, rotation } = model.facts;
  const from = `drive-model ${model.name}`;
  if (kind?.value === 'linear-ram') return [{ name: 'stroke that the ram has', value: stroke?.value ?? 0, unit: 'm', from }];
  if (kind?.value === 'direct') return [{ name: 'rotation of the shaft', value: inDegrees(rotation?.value ?? 0), unit: 'deg', from }];
  return [];
}

export const figures: readonly FigureKind[] = [
  {
    id: 'drive.NAME.reachable-angle',
    title: 'How far the drive can open the leaf',
    unit: 'deg',
    topic: 'travel',
    formula:
      'the angle at which a ram’s stroke is used up or a dead point is met; for an arm, at most the opening asked for; for a shaft in the hinge, its rotation',
    source: mechanics,
    changedBy: 'the brackets, or a drive with more stroke',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const reach = reachOf(drive);
        if (reach !== undefined) give(drive.name, inDegrees(reach.angle), headPlace(drive), () => inputsOf(drive));
      }
    },
  },
];
