// Where a driven leaf can hurt somebody, found from its shape. What covers a hazard is for the rules to say.
import { type Leaf, perSubject } from '../../model/index.ts';
import { hingeSideOf } from '../hinge-gap/working.ts';
import { infillOpeningOf, type Opening, reachFrom3, reachFrom14 } from '../reach-through/working.ts';
import { clearanceOf } from '../underside/working.ts';
import { type BodyPart, catches, caught, closedGap, crushed, leastGap } from './gaps.ts';

export { crushed, leastGap, partsInWords } from './gaps.ts';

export type HazardKind = 'closing-edge' | 'hinge' | 'underside' | 'opening-side' | 'reach-through' | 'running-past';

export interface Hazard {
  readonly kind: HazardKind;
  /** Where, so that it can follow “between the”: “leaf and its post, on the side that it opens to”. */
  readonly where: string;
  /** The movements in which it is there. */
  readonly movements: readonly ('closing' | 'opening')[];
  /** The gap over the travel, metres. For what is only a distance both are the same. */
  readonly least: number;
  readonly greatest: number;
  /** What it crushes, shears or draws in, the largest first. */
  readonly parts: readonly BodyPart[];
  /** The distance at which there would be no hazard, metres; undefined where none is enough. */
  readonly enough: number | undefined;
  /** Whether the numbers that decide are published; from memory, it is no ground for an error. */
  readonly standing: 'published' | 'from memory';
  /**
   * How grave it is where nothing covers it. A gap that stays as it is draws in or runs over who puts a hand or a foot there: of a group
   * that was shown the gate that is a note, of anybody, children among them, an error (types of use of EN 12453).
   */
  readonly grade: 'error' | 'warning' | 'note';
  /** Whether that is so because of who may be near. */
  readonly byUsers: boolean;
  /** The line that it follows from; undefined for the leaf as a whole. */
  readonly at: Stretch | undefined;
}

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** What is not stated, and so cannot be judged; in words. */
export interface Unstated {
  readonly facts: readonly string[];
  readonly about: string;
}

export interface Hazards {
  readonly found: readonly Hazard[];
  readonly unstated: readonly Unstated[];
}

const both = ['closing', 'opening'] as const;
const closingOnly = ['closing'] as const;
const openingOnly = ['opening'] as const;
const everyPart = crushed(0);
/** A gap that changes by less is taken as constant: it crushes nothing. Metres; a tool's choice, finer than a tape. */
const constant = 0.001;
/** Least distance past a smooth surface, metres: BGR 232, section 4.5. */
const pastSurface = 0.2;
/** Greatest gap that needs nothing in North America, metres: 2¼ in, CPSC, Operation Safe Gate, 2018. */
const mostOpenGap = 2.25 * 0.0254;

/** The hazards of a leaf, and what is missing to judge them; undefined for a leaf that nothing drives. */
export const hazardsOf = perSubject((leaf: Leaf): Hazards | undefined => {
  if (leaf.drives.length === 0) return undefined;
  const found: Hazard[] = [closingEdge(leaf)];
  const unstated: Unstated[] = [];
  const room = leaf.facts['room-when-open'];
  if (room === undefined) unstated.push({ facts: ['room-when-open'], about: 'the room behind it when open' });
  else if (room.value < leastGap.body)
    found.push({
      kind: 'opening-side',
      where: 'open leaf and what stands behind it',
      movements: openingOnly,
      least: room.value,
      greatest: room.value + travelled(leaf),
      parts: crushed(room.value),
      enough: leastGap.body,
      standing: 'published',
      grade: 'error',
      byUsers: false,
      at: room.line,
    });
  if (leaf.facts.opens !== undefined) {
    hinge(leaf, found, unstated);
    underside(leaf, found, unstated);
  } else if (leaf.facts.slides !== undefined) {
    underSliding(leaf, found);
    past(leaf, found, unstated);
  }
  return { found, unstated };
});

/** How far the edge travels, metres. */
function travelled(leaf: Leaf): number {
  const { opens, slides, width } = leaf.facts;
  return slides?.distance ?? (opens?.angle ?? 0) * (width?.value ?? 0);
}

function closingEdge(leaf: Leaf): Hazard {
  return {
    kind: 'closing-edge',
    where: 'closing edge and what it closes against',
    movements: closingOnly,
    least: 0,
    greatest: travelled(leaf),
    parts: everyPart,
    enough: undefined,
    standing: 'published',
    grade: 'error',
    byUsers: false,
    at: undefined,
  };
}

function hinge(leaf: Leaf, found: Hazard[], unstated: Unstated[]): void {
  const side = hingeSideOf(leaf);
  const facts = leaf.facts;
  if (side === undefined) {
    if (facts['hinge-guard'] === undefined)
      unstated.push({
        facts: (['hinge-gap', 'hinge-offset', 'thickness'] as const).filter((fact) => facts[fact] === undefined),
        about: 'the gap at the hinge',
      });
    return;
  }
  const travel = facts.opens?.angle ?? 0;
  let least = Infinity;
  let greatest = 0;
  let worse: 'opening' | 'closing' | undefined;
  let opening = false;
  let closing = false;
  for (const way of both) {
    const gap = side[way];
    if (gap.greatest - gap.least < constant - 1e-9 || !catches(gap.least, gap.greatest)) continue;
    opening ||= gap.at > 1e-6;
    closing ||= gap.at < travel - 1e-6;
    if (gap.least < least) {
      least = gap.least;
      worse = way;
    }
    greatest = Math.max(greatest, gap.greatest);
  }
  if (worse === undefined) return;
  found.push({
    kind: 'hinge',
    where: side.measured
      ? 'leaf and its post, at the hinge'
      : `leaf and its post, on the side that it ${worse === 'opening' ? 'opens to' : 'closes from'}`,
    movements: opening && closing ? both : opening ? openingOnly : closingOnly,
    least: Math.max(0, least),
    greatest,
    parts: caught(Math.max(0, least), greatest),
    enough: undefined,
    standing: 'published',
    grade: 'error',
    byUsers: false,
    at: facts['hinge-gap']?.line,
  });
}

function underside(leaf: Leaf, found: Hazard[], unstated: Unstated[]): void {
  const gap = clearanceOf(leaf);
  if (gap === undefined) {
    unstated.push({ facts: ['ground-gap'], about: 'the gap above the ground' });
    return;
  }
  if (gap.least >= leastGap.foot - 1e-9 || gap.greatest < closedGap) return;
  const parts = caught(Math.max(0, gap.least), Math.max(gap.greatest, closedGap + constant)).filter(
    (part) => part === 'foot' || part === 'toes' || part === 'hand' || part === 'finger',
  );
  // That a gap which stays as it is hurts as well, and from which size, is from memory.
  found.push({
    kind: 'underside',
    where: 'underside of the leaf and the ground',
    movements: both,
    least: Math.max(0, gap.least),
    greatest: gap.greatest,
    parts,
    enough: leastGap.foot,
    standing: 'from memory',
    grade: gap.greatest - gap.least < constant - 1e-9 ? 'note' : 'warning',
    byUsers: false,
    at: leaf.facts['ground-gap']?.line,
  });
}

/** How grave it is that a gap which stays as it is lets somebody in, and the leaf moves past. */
const whereItStays = ({ installation }: Leaf): Hazard['grade'] =>
  (installation.site?.facts.users?.value ?? 'public') === 'public' ? 'error' : 'note';

/** Under a sliding leaf the gap stays as it is; toes that are in it are run over by the rollers and drawn in by the leaf. */
function underSliding(leaf: Leaf, found: Hazard[]): void {
  const gap = leaf.facts['ground-gap'];
  if (gap === undefined || gap.value <= closedGap + 1e-9 || gap.value >= leastGap.foot - 1e-9) return;
  const published = gap.value < leastGap.toes - 1e-9;
  found.push({
    kind: 'underside',
    where: 'underside of the leaf and the ground',
    movements: both,
    least: gap.value,
    greatest: gap.value,
    parts: caught(gap.value, gap.value).filter(
      (part) => (part === 'foot' && !published) || part === 'toes' || part === 'hand' || part === 'finger',
    ),
    enough: published ? leastGap.toes : leastGap.foot,
    standing: published ? 'published' : 'from memory',
    grade: published ? whereItStays(leaf) : 'note',
    byUsers: published,
    at: gap.line,
  });
}

const openFaced = { post: 'post', fence: 'fence' } as const;

function past(leaf: Leaf, found: Hazard[], unstated: Unstated[]): void {
  const { passes, 'infill-opening': infill } = leaf.facts;
  const opening = infillOpeningOf(leaf);
  const missing: string[] = [];
  if (passes.length === 0) missing.push('passes');
  let asks = passes.length === 0;
  for (const { what, distance, line } of passes) {
    if (what === 'nothing') continue;
    if (distance === undefined) {
      if (!missing.includes('passes')) missing.push('passes');
      continue;
    }
    if (what !== 'wall') {
      asks = true;
      const reached = opening === undefined ? undefined : reachedThrough(leaf, openFaced[what], distance, opening, line);
      if (reached !== undefined) found.push(reached);
      if (reached !== undefined || (opening === undefined && infill?.shape !== 'closed')) continue;
    }
    const drawnIn = runningPast(leaf, what, distance, line);
    if (drawnIn !== undefined) found.push(drawnIn);
  }
  if (asks && opening === undefined && infill?.shape !== 'closed') missing.push('infill-opening');
  if (missing.length > 0) unstated.push({ facts: missing, about: 'what it runs past' });
}

/** What draws in whoever touches the moving leaf beside something fixed, whether the leaf has openings that nobody reaches through or none. */
function runningPast(leaf: Leaf, what: 'post' | 'fence' | 'wall', distance: number, line: Stretch): Hazard | undefined {
  const isNorthAmerican = leaf.installation.site?.facts.rules?.value === 'north-america';
  const closed = isNorthAmerican && what !== 'wall' ? mostOpenGap : closedGap;
  if (distance >= pastSurface - 1e-9 || distance <= closed + 1e-9) return undefined;
  return {
    kind: 'running-past',
    where: `leaf and the ${what} that it runs past`,
    movements: both,
    least: distance,
    greatest: distance,
    parts: caught(distance, distance).filter((part) => part !== 'body'),
    enough: pastSurface,
    standing: 'published',
    grade: what === 'wall' ? 'error' : whereItStays(leaf),
    byUsers: what !== 'wall',
    at: line,
  };
}

function reachedThrough(leaf: Leaf, past: string, distance: number, opening: Opening, line: Stretch): Hazard | undefined {
  // Above the end of its table a whole person may pass; an arm's length is then the least that can be asked for.
  const published = distance < (reachFrom14(opening) ?? 0.85) - 1e-9;
  if (!published && (leaf.installation.site?.facts.users?.value === 'trained' || distance >= (reachFrom3(opening) ?? 0.9) - 1e-9))
    return undefined;
  const enough = published ? reachFrom14(opening) : reachFrom3(opening);
  const parts: BodyPart[] =
    (enough ?? Infinity) > 0.12 ? ['arm', 'hand', 'finger'] : opening.size > 0.012 ? ['hand', 'finger'] : ['finger'];
  return {
    kind: 'reach-through',
    where: `openings of the leaf and the ${past} that it runs past`,
    movements: both,
    least: distance,
    greatest: distance,
    parts,
    enough,
    standing: published ? 'published' : 'from memory',
    grade: published ? 'error' : 'warning',
    byUsers: false,
    at: line,
  };
}
