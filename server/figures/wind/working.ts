import { type Installation, type Leaf, perSubject, type Site } from '../../model/index.ts';
import { dynamicPressure, type Grip, gripOf, probabilityFactor, type WindAtHeight, windAt } from './maths.ts';

export { beaufortInWords } from './beaufort.ts';
export { airDensity, probabilityFactor } from './maths.ts';

export interface SiteWind extends WindAtHeight {
  /** What the site states. */
  readonly fact: NonNullable<Site['facts']['wind']>;
  /** Basic speed for the period asked for, m/s. */
  readonly basic: number;
  readonly factor: number;
  /** Height that it is reckoned at: the top of the highest leaf, with the ground below it, m. */
  readonly height: number;
}

/** The wind that the site is to stand; undefined where the file does not say what blows there, or how high the leaves are. */
export const siteWindOf = perSubject((installation: Installation): SiteWind | undefined => {
  const wind = installation.site?.facts.wind;
  if (wind === undefined) return undefined;
  let top = 0;
  for (const leaf of installation.leaves) top = Math.max(top, leaf.facts.height?.value ?? 0);
  const factor = probabilityFactor(wind.period);
  if (factor === undefined || top === 0) return undefined;
  const basic = wind.speed * factor;
  const height = wind.base + top;
  const found = windAt(wind.terrain, basic, height);
  return found === undefined ? undefined : { ...found, fact: wind, basic, factor, height };
});

/** How fast the gusts at the top of a leaf are for each m/s of the basic wind; in open country where no other terrain is stated. */
export function gustShareOf(leaf: Leaf): number | undefined {
  const wind = leaf.installation.site?.facts.wind;
  return windAt(wind?.terrain ?? 'II', 1, (wind?.base ?? 0) + (leaf.facts.height?.value ?? 0))?.gust;
}

/** Share of the leaf's face that stops the wind. */
export const infillOf = (leaf: Leaf): number => leaf.facts.infill?.value ?? 1;

/** The leaf that meets this one in the middle of the closed gate. */
function partnerOf(leaf: Leaf): Leaf | undefined {
  const named = leaf.covers ?? leaf.coveredBy;
  if (named !== undefined) return named;
  const swinging = leaf.installation.leaves.filter((other) => other.facts.opens !== undefined);
  return swinging.length === 2 && leaf.facts.opens !== undefined ? swinging.find((other) => other !== leaf) : undefined;
}

export interface LeafGrips {
  readonly width: number;
  readonly height: number;
  readonly infill: number;
  /** As a part of the closed gate. */
  readonly closed: Grip;
  /** By itself, as while it moves and when it stands open: then both its ends are free. */
  readonly moving: Grip;
}

/** What each pascal of wind does to a leaf; undefined without its width and height. */
export const gripsOf = perSubject((leaf: Leaf): LeafGrips | undefined => {
  const width = leaf.facts.width?.value;
  const height = leaf.facts.height?.value;
  return width === undefined || height === undefined ? undefined : gripsWith(leaf, width, height, infillOf(leaf));
});

/** The same with another infill. */
export function gripsWith(leaf: Leaf, width: number, height: number, infill: number): LeafGrips | undefined {
  const beyond = partnerOf(leaf)?.facts.width?.value ?? 0;
  const moving = gripOf({ width, height, infill, wall: width, beyond: 0, corner: 0 });
  const closed = gripOf({ width, height, infill, wall: width + beyond, beyond, corner: leaf.facts['return-corner']?.value ?? 0 });
  return moving === undefined || closed === undefined ? undefined : { width, height, infill, closed, moving };
}

/** Pressure of the gust in which the gate is still to work, Pa; 0 where none is stated. */
export function workingPressureOf(installation: Installation): number {
  return dynamicPressure(installation.site?.facts['working-wind']?.value ?? 0) ?? 0;
}
