// Marks of hazards: their number in the list, in a shape that says whether they are covered.
import type { HazardKind } from '../../../figures/hazards/working.ts';
import { headPlace } from '../../../model/index.ts';
import { verdictOf } from '../../../rules/index.ts';
import type { Cover } from '../../../safeguards/index.ts';
import { type Reader, showSi } from '../../../vocabulary/index.ts';
import { hazardPlace, type MarkedHazard, type UnjudgedHazard } from '../../scene/hazards.ts';
import type { Point } from '../../scene/point.ts';
import { shows } from '../drawing.ts';
import { circle, type Element, path, through } from '../svg.ts';
import { short, text } from '../text.ts';
import { lead, type Plan } from './plan.ts';
import { leafThing } from './things.ts';

/** Each kind of hazard in words. */
const kinds: Readonly<Record<HazardKind, string>> = {
  'closing-edge': 'closing edge',
  hinge: 'hinge side',
  underside: 'underside',
  'opening-side': 'behind the open leaf',
  'reach-through': 'reaching through',
  'running-past': 'running past',
};

/** A hazard in words, and the first of them drawn where its leaf is. */
export function drawHazard(plan: Plan, marked: MarkedHazard, drawn: boolean): void {
  const { leaf, judged, nth } = marked;
  const { kind, at: stated } = judged.hazard;
  const name = short(leaf.leaf.name);
  const numbered = `hazard.${leaf.leaf.name}.${kind}${nth === 1 ? '' : `.${nth}`}`;
  const id = plan.things.note(numbered, `hazard ${name}, ${kinds[kind]}`, stated ?? headPlace(leaf.leaf));
  const words = hazardInWords(marked, plan.reader);
  plan.rows.push([`${marked.number}: ${name}, ${kinds[kind]}`, judged.covered ? 'hazard, covered' : 'hazard, not covered', words]);
  if (!plan.takes('hazard') || !drawn) return;
  const at = plan.at(hazardPlace(leaf, kind));
  const middle = markPlace(plan, at, 26);
  plan.front.push(shows(id, words, ...lead(middle, at, 15, 2), ...hazardMark(marked, middle, 11), circle('hit', middle, 15)));
}

export function drawUnjudged(plan: Plan, unjudged: UnjudgedHazard, drawn: boolean): void {
  const { leaf, kind } = unjudged;
  const words = unjudgedInWords(unjudged);
  plan.rows.push([`${unjudged.number}: ${short(leaf.leaf.name)}, ${kinds[kind]}`, 'cannot be judged', words]);
  if (!plan.takes('hazard') || !drawn) return;
  const at = plan.at(hazardPlace(leaf, kind));
  const middle = markPlace(plan, at, 24);
  const mark = [...lead(middle, at, 15, 2), ...unjudgedMark(unjudged, middle, 10), circle('hit', middle, 13)];
  plan.front.push(shows(leafThing(plan, leaf.leaf), words, ...mark));
}

/** A free place for the middle of a mark of that size. */
function markPlace({ places }: Plan, at: Point, size: number): Point {
  const { box } = places.near(at, size, size, 4);
  return { x: box.x + size / 2, y: box.y + size / 2 };
}

/** A ring with a tick for what is covered, a filled diamond for what is not. */
export function hazardMark({ judged: { covered }, number }: MarkedHazard, { x, y }: Point, r: number): Element[] {
  const d = r * 1.3;
  if (!covered) {
    const diamond = [
      { x, y: y - d },
      { x: x + d, y },
      { x, y: y + d },
      { x: x - d, y },
    ];
    return [path('bare', through(diamond, true)), text(String(number), x, y + 4, 'small', 'middle', 'strong in-over')];
  }
  const behind = [
    { x: x + r * 0.35, y: y - r * 1.15 },
    { x: x + r * 1.5, y: y - r * 1.15 },
    { x: x + r * 1.5, y: y - r * 0.2 },
    { x: x + r * 0.35, y: y - r * 0.2 },
  ];
  const tick = [
    { x: x + r * 0.5, y: y - r * 0.75 },
    { x: x + r * 0.8, y: y - r * 0.45 },
    { x: x + r * 1.3, y: y - r * 1.1 },
  ];
  return [
    circle('covered', { x, y }, r),
    text(String(number), x, y + 4, 'small', 'middle', 'strong in-sound'),
    path('halo', through(behind, true)),
    path('covered-tick', through(tick)),
  ];
}

/** A broken ring for what cannot be judged. */
export const unjudgedMark = ({ number }: UnjudgedHazard, { x, y }: Point, r: number): Element[] => [
  circle('guessed', { x, y }, r),
  text(`${number}?`, x, y + 4, 'small', 'middle', 'strong quiet'),
];

export function unjudgedInWords({ leaf, kind, missing: { about, facts } }: UnjudgedHazard): string {
  const names = facts.map((fact) => `“${fact}”`).join(', ');
  const lacks = facts.length === 0 ? '' : `, as ${names} ${facts.length === 1 ? 'is' : 'are'} not stated`;
  return `${short(leaf.leaf.name)}: ${kinds[kind]}. Not judged: ${about} is not known${lacks}.`;
}

export function hazardInWords({ leaf, judged }: MarkedHazard, reader: Reader): string {
  const { kind, where, least, greatest } = judged.hazard;
  const length = (metres: number): string => showSi(metres, 'm', reader);
  const gap = least === greatest ? `, ${length(least)}` : `, ${length(least)} to ${length(greatest)}`;
  // Of the closing edge there is nothing to add: it closes up to nothing.
  const place = kind === 'closing-edge' ? '' : ` (between the ${where}${gap})`;
  return `${short(leaf.leaf.name)}: ${kinds[kind]}${place}. ${verdictInWords(judged)}`;
}

function verdictInWords(judged: MarkedHazard['judged']): string {
  const { by, notBy } = judged;
  const verdict = verdictOf(judged);
  if (verdict === 'covered') return `Covered: ${coversInWords(by)}.`;
  if (notBy.length === 0) return 'Not covered by anything in this file.';
  return `${verdict === 'not enough' ? 'Not enough' : 'Not covered'}: ${coversInWords(notBy)}.`;
}

/** What covers a hazard, or does not; a whole sentence of a finding has no name before it. */
const coversInWords = (covers: readonly Cover[]): string =>
  covers.map(({ name, says }) => (name === '' ? short(says, 220).replace(/\.$/, '') : `${short(name)} ${says}`)).join('; ');
