import { beaufortInWords } from '../../figures/wind/beaufort.ts';
import { gripsWith, infillOf } from '../../figures/wind/figure.ts';
import { airDensity, probabilityFactor, windAt } from '../../figures/wind/maths.ts';
import { meanBehind, stallsOf } from '../../figures/wind-stall/figure.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** A wind that comes every other winter: nobody is surprised by it. */
const every = 2;
const boarded = 0.8;
const held = { figure: 'leaf.NAME.stall-wind-moving', name: 'gust that stops the drive', unit: 'm/s', way: 'least' } as const;

/** Against the gusts of every second year; none for a leaf that lets the wind through. */
function boundOf(leaf: Leaf): Bound | undefined {
  const wind = leaf.installation.site?.facts.wind;
  const height = leaf.facts.height?.value;
  if (wind === undefined || height === undefined || infillOf(leaf) < boarded) return undefined;
  const stalls = stallsOf(leaf);
  const usual = stalls === undefined ? undefined : windAt(wind.terrain, wind.speed * (probabilityFactor(every) ?? 1), wind.base + height)?.gust;
  return stalls === undefined || usual === undefined ? undefined : bound(held, leaf.name, stalls.moving.gust, usual);
}

export const rule = installationRule({
  name: 'boarded-leaf-in-wind',
  severity: 'note',
  title: 'A boarded leaf stands where the wind stops its drive in most winters.',
  why: 'A leaf that the wind holds or throws strains its hinges and its drive, and whoever then pushes or forces it stands in its way.',
  remedy: 'Let more wind through, or have a rule for stormy days.',
  source: { text: 'EN 1991-1-4:2005+A1, 4.2 to 4.5 and 7.4.1; what to do is common practice, no source', standing: 'published' },
  acceptable: true,
  check: (installation, report) => {
    const wind = installation.site?.facts.wind;
    if (wind === undefined) return;
    for (const leaf of installation.leaves) {
      const height = leaf.facts.height?.value;
      const gust = boundOf(leaf);
      const stalls = gust === undefined || keeps(gust) ? undefined : stallsOf(leaf);
      if (height === undefined || gust === undefined || stalls === undefined) continue;
      const usual = gust.limit;
      const mean = meanBehind(leaf, stalls.moving.gust);
      report({
        at: factPlace(leaf, leaf.facts.infill ?? leaf.facts.height),
        what: `Gusts of ${shown(stalls.moving.gust)} m/s stop ${quoted(leaf.name)} on its way${mean === undefined ? '' : `, which come with ${beaufortInWords(mean) ?? ''}`}; in every second year there are ${shown(usual)} m/s.`,
        remedy: `${porosity(leaf, height, usual, stalls.moving.spare)} For stormy days: run it slower so that it strikes less hard, keep it open and hooked back or closed and locked, and let nobody force it.`,
        related: [{ message: 'the wind of the place', start: wind.line.start, end: wind.line.end }],
      });
    }
  },
  margins: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const gust = boundOf(leaf);
      if (gust !== undefined) give(gust, factPlace(leaf, leaf.facts.infill ?? leaf.facts.height));
    }
  },
});

/** The greatest infill, in steps of 5 %, with which the drive holds its own in such a gust. */
function porosity(leaf: Leaf, height: number, gust: number, spare: number): string {
  const width = leaf.facts.width?.value ?? 0;
  for (let share = 95; share >= 20; share -= 5) {
    const grips = gripsWith(leaf, width, height, share / 100);
    if (grips === undefined || share / 100 >= infillOf(leaf)) continue;
    if ((airDensity * gust * gust * grips.moving.moment) / 2 <= spare) return `An infill of ${share} % or less lets the drive win${share < boarded * 100 ? ' (from memory)' : ''}.`;
  }
  return 'No infill of 20 % or more lets this drive win; a narrower leaf or a stronger drive would.';
}
