import { factPlace, type Installation, type Leaf } from '../../model/index.ts';
import { type FigureKind, type Input, onlyWhere, type Source } from '../kind.ts';
import { type Balance, balanceOf } from './working.ts';

const inputsOf = ({ facts: { width, mass, tail, 'roller-spacing': spacing } }: Leaf): Input[] => [
  { name: 'm, mass with the tail', value: mass?.value ?? 0, unit: 'kg' },
  { name: 'L, leaf without the tail', value: width?.value ?? 0, unit: 'm' },
  { name: 'c, tail', value: tail?.value ?? 0, unit: 'm' },
  { name: 's, distance of the rollers', value: spacing?.value ?? 0, unit: 'm' },
];

const statics: Source = { text: 'statics of a beam on two supports, any mechanics textbook', standing: 'derived' };

const force = (
  id: string,
  title: string,
  formula: string,
  which: (balance: Balance) => number | undefined,
  more: (leaf: Leaf) => Input[],
): FigureKind => ({
  id,
  title,
  unit: 'N',
  topic: 'force',
  formula,
  source: statics,
  changedBy: 'a longer tail, rollers further apart, or a lighter leaf',
  work: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const balance = balanceOf(leaf);
      const value = balance === undefined ? undefined : which(balance);
      if (value !== undefined)
        give(leaf.name, value, factPlace(leaf, leaf.facts['roller-spacing']), () => [...inputsOf(leaf), ...more(leaf)]);
    }
  },
});

const closedOnly = (): Input[] => [];
const opened = (leaf: Leaf): Input[] => [{ name: 'd, travel', value: leaf.facts.slides?.distance ?? 0, unit: 'm' }];

const hasTail = ({ leaves }: Installation): boolean => leaves.some((leaf) => leaf.facts.tail !== undefined);

export const figures = onlyWhere(hasTail, [
  {
    id: 'leaf.NAME.tail-share',
    title: 'Tail of a leaf without a track, as a share of the leaf without it',
    unit: '1',
    topic: 'force',
    formula: 'c / L',
    source: { text: 'common practice, no source', standing: 'common practice' },
    changedBy: 'the tail',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const balance = balanceOf(leaf);
        if (balance !== undefined) give(leaf.name, balance.share, factPlace(leaf, leaf.facts.tail), () => inputsOf(leaf).slice(1, 3));
      }
    },
  },
  force(
    'leaf.NAME.front-roller-load',
    'What the front rollers carry when the leaf is closed',
    'W·(1 + (L − c)/(2s)), W = m·g',
    ({ closed }) => closed?.front,
    closedOnly,
  ),
  force(
    'leaf.NAME.rear-roller-load',
    'What the rear rollers carry when the leaf is closed; below 0, they hold it down',
    '−W·(L − c)/(2s), W = m·g',
    ({ closed }) => closed?.rear,
    closedOnly,
  ),
  force(
    'leaf.NAME.rear-roller-load-open',
    'What the rear rollers carry when the leaf is open',
    'W·(d − (L − c)/2)/s, W = m·g',
    ({ open }) => open?.rear,
    opened,
  ),
]);
