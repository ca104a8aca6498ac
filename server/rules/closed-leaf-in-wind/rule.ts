import { airDensity, beaufortInWords, gripsWith, gustShareOf, infillOf, probabilityFactor } from '../../figures/wind/working.ts';
import { stallsOf } from '../../figures/wind-stall/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** A wind that comes every other winter: nobody is surprised by it. */
const every = 2;
const closed = 0.8;
const held = { figure: 'leaf.NAME.stall-wind-moving', name: 'gust that stops the drive', unit: 'm/s', way: 'least' } as const;

export const rule = installationRule({
  name: 'closed-leaf-in-wind',
  severity: 'note',
  title: 'A closed leaf stands where the wind stops its drive in most winters.',
  why: 'A leaf that the wind holds or throws strains its hinges and its drive, and whoever then pushes or forces it stands in its way.',
  remedy: 'Let more wind through, or have a rule for stormy days.',
  source: { text: 'EN 1991-1-4:2005+A1, 4.2 to 4.5 and 7.4.1; what to do is common practice, no source', standing: 'published' },
  acceptable: true,
  holds: ({ site, leaves }, hold) => {
    const wind = site?.facts.wind;
    if (wind === undefined) return;
    const basic = wind.speed * (probabilityFactor(every) ?? 1);
    for (const leaf of leaves) {
      const { width, height, infill } = leaf.facts;
      // A leaf that lets the wind through is none of those that surprise.
      const stall = infillOf(leaf) < closed ? undefined : stallsOf(leaf)?.moving;
      if (width === undefined || height === undefined || stall === undefined) continue;
      const each = gustShareOf(leaf);
      if (each === undefined) continue;
      const usual = basic * each;
      hold(bound(held, leaf.name, stall.gust, usual), factPlace(leaf, infill ?? height), () => ({
        what: `Gusts of ${shown(stall.gust)} m/s stop ${quoted(leaf.name)} on its way, which come with ${beaufortInWords(stall.gust / each) ?? ''}; in every second year there are ${shown(usual)} m/s.`,
        remedy: `${porosity((share) => gripsWith(leaf, width.value, height.value, share)?.moving.moment, stall.spare / ((airDensity * usual * usual) / 2))} For stormy days: run it slower so that it strikes less hard, keep it open and hooked back or closed and locked, and let nobody force it.`,
        related: toFact('the wind of the place', wind),
      }));
    }
  },
});

/** The greatest infill, in steps of 5 %, of which the wind has no more hold (m³) than the drive can bear. */
function porosity(holdOf: (share: number) => number | undefined, most: number): string {
  for (let percent = 95; percent >= 20; percent -= 5) {
    // Just below it, for “or less”: just below 80 % a leaf counts as a lattice, on which the wind has more hold than at 80 %.
    const grip = holdOf((percent - 1e-9) / 100);
    if (grip !== undefined && grip <= most)
      return `An infill of ${percent} % or less lets the drive win${percent <= closed * 100 ? ' (from memory)' : ''}.`;
  }
  return 'No infill of 20 % or more lets this drive win; a narrower leaf or a stronger drive would.';
}
