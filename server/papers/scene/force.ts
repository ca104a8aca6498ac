// What the push of a drive must be and may be, over the travel of its leaf. Every point is worked out by the same functions as
// the figures. Places in radians or metres from closed, pushes in N or N·m.
import { allowedAt, needed, type SettingWindow, type Way, ways } from '../../figures/force-window/working.ts';

/** At one place of the travel. */
export interface Sample {
  readonly at: number;
  readonly needs: Readonly<Record<Way, number>>;
  /** Infinity where nothing limits it. */
  readonly allows: Readonly<Record<Way, number>>;
}

/** Places looked at between two samples of the linkage: a limit may begin or end there. */
const steps = 4;

export function samplesOf({ of }: SettingWindow): Sample[] {
  const { leaf, rate } = of.linkage;
  const found: Sample[] = [];
  for (let i = 0; i < leaf.length; i++) {
    const next = Math.min(i + 1, leaf.length - 1);
    const from = leaf[i] as number;
    const to = leaf[next] as number;
    for (let step = 0; step < (to > from ? steps : 1); step++) {
      const share = step / steps;
      const at = from + share * (to - from);
      const lever = (rate[i] as number) + share * ((rate[next] as number) - (rate[i] as number));
      const needs = (way: Way): number => needed(of, i, way) + share * (needed(of, next, way) - needed(of, i, way));
      const allows = (way: Way): number => (of.limited ? allowedAt(of, at, lever, way).push : Infinity);
      found.push({
        at,
        needs: { opening: needs('opening'), closing: needs('closing') },
        allows: { opening: allows('opening'), closing: allows('closing') },
      });
    }
  }
  return found;
}

/** The greatest need and the least allowance of some samples, in both movements. */
export const strictest = (samples: readonly Sample[]): { readonly needs: number; readonly allows: number } => ({
  needs: Math.max(...samples.flatMap(({ needs }) => ways.map((way) => needs[way]))),
  allows: Math.min(...samples.flatMap(({ allows }) => ways.map((way) => allows[way]))),
});

/** The first and the last of the samples at which no setting works; 0 where that is so between two samples alone. */
export function emptyStretch(samples: readonly Sample[]): { readonly from: number; readonly to: number } {
  const bad = samples.filter((sample) => {
    const { needs, allows } = strictest([sample]);
    return needs > allows;
  });
  const from = bad[0]?.at ?? 0;
  return { from, to: bad[bad.length - 1]?.at ?? from };
}
