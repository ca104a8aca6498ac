import { factPlace, type Leaf, perSubject } from '../../model/index.ts';
import { hasPush } from '../common.ts';
import { type FigureKind, inDegrees, type Input, onlyWhere, type Source } from '../figure.ts';
import { forceCaseOf, gravityAt, type ForceCase } from '../force-window/case.ts';
import { airDensity, windAt } from '../wind/maths.ts';
import { beaufortInWords } from '../wind/beaufort.ts';
import { gripsOf } from '../wind/figure.ts';

/** The gust, in m/s at the gate, against which the drive can no longer move the leaf; square to the leaf. */
export interface Stall {
  readonly of: ForceCase;
  readonly gust: number;
  /** Leaf position, radians. */
  readonly at: number;
  /** What the drive has left for the wind there, N·m. */
  readonly spare: number;
  /** Moment for each pascal, m³. */
  readonly grip: number;
  /** Drive force or torque, and its lever there. */
  readonly push: number;
  readonly lever: number;
}

export interface Stalls {
  readonly closed: Stall;
  readonly moving: Stall;
  readonly open: Stall;
}

/** Stall winds of a swing leaf by what its drive is set to, or else by the most that it can; undefined where a fact is missing. */
export const stallsOf = perSubject((leaf: Leaf): Stalls | undefined => {
  const of = forceCaseOf(leaf);
  if (of === undefined || !of.swing) return undefined;
  const grips = gripsOf(leaf);
  if (grips === undefined) return undefined;
  const push = of.setting ?? of.greatest;
  const { leaf: positions, rate } = of.linkage;
  const last = positions.length - 1;
  const stall = (i: number, grip: number, ways: readonly (1 | -1)[]): Stall => {
    const at = positions[i] as number;
    const lever = rate[i] as number;
    let spare = Infinity;
    for (const way of ways) spare = Math.min(spare, push * lever - of.friction - way * gravityAt(of, at));
    spare = Math.max(0, spare);
    return { of, gust: Math.sqrt((2 * spare) / (airDensity * grip)), at, spare, grip, push, lever };
  };
  let moving = stall(0, grips.moving.moment, [1, -1]);
  for (let i = 1; i <= last; i++) {
    const here = stall(i, grips.moving.moment, [1, -1]);
    if (here.gust < moving.gust) moving = here;
  }
  return { closed: stall(0, grips.closed.moment, [1]), moving, open: stall(last, grips.moving.moment, [-1]) };
});

/** The ten-minute mean in open country that brings gusts of that speed to the gate, m/s: what Beaufort numbers are about. */
export function meanBehind(leaf: Leaf, gust: number): number | undefined {
  const wind = leaf.installation.site?.facts.wind;
  const each = windAt(wind?.terrain ?? 'II', 1, (wind?.base ?? 0) + (leaf.facts.height?.value ?? 0));
  return each === undefined ? undefined : gust / each.gust;
}

function inputsOf(stall: Stall): Input[] {
  const { unit, setting, drive, friction } = stall.of;
  return [
    { name: 'what the drive pushes with', value: stall.push, unit, from: setting === undefined ? `drive-model ${drive.model?.name ?? ''}, the most that it can` : 'the force set' },
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
