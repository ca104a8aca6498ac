import { factPlace, type Leaf } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, type Source } from '../kind.ts';
import { rollingShare } from '../leaf-load/working.ts';
import { travelForceOf } from './working.ts';

function inputsOf({ facts: { mass, slope, friction } }: Leaf): Input[] {
  return [
    { name: 'm, mass', value: mass?.value ?? 0, unit: 'kg' },
    friction === undefined
      ? { name: 'c, rolling resistance as a share of the weight', value: rollingShare, unit: '1', from: 'not stated: from memory' }
      : { name: 'R, rolling resistance', value: friction.value, unit: 'N' },
    {
      name: 'α, slope of the track, rising towards open',
      value: inDegrees(Math.atan(slope?.value ?? 0)),
      unit: 'deg',
      ...(slope === undefined ? { from: 'not stated: level' } : {}),
    },
  ];
}

const source: Source = {
  text: 'statics, any mechanics textbook; a rolling resistance that is not stated from memory',
  standing: 'derived',
};

const kind = (movement: 'opening' | 'closing', sign: string): FigureKind => ({
  id: `leaf.NAME.travel-force-${movement}`,
  title: `Force that keeps a sliding leaf ${movement} at even speed; below 0 it runs by itself`,
  unit: 'N',
  topic: 'force',
  formula: `R ${sign} m·g·sin α, with R as stated or c·m·g·cos α`,
  source,
  changedBy: 'mass, slope, and how easily it rolls',
  work: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const force = travelForceOf(leaf, movement);
      if (force !== undefined) give(leaf.name, force, factPlace(leaf, leaf.facts.friction ?? leaf.facts.mass), () => inputsOf(leaf));
    }
  },
});

export const figures: readonly FigureKind[] = [kind('opening', '+'), kind('closing', '−')];
