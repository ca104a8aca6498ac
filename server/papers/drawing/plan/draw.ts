// The plan of the opening, to scale: posts, leaves closed and open, what they sweep, their drives, where they can hurt
// somebody, and what sensors see.
import { inDegrees } from '../../../figures/index.ts';
import type { Installation, Leaf, Steps } from '../../../model/index.ts';
import type { Finding } from '../../../rules/index.ts';
import { type Reader, readerOf, showSi } from '../../../vocabulary/index.ts';
import { type MarkedHazard, markedHazardsOf, type UnjudgedHazard, unjudgedHazardsOf } from '../../scene/hazards.ts';
import { mostDrawn } from '../../scene/limit.ts';
import { firstInWords, siteTitle } from '../../words.ts';
import { type Drawing, eachOf, finished, margin, notes, nothing, sheetWidth, type Table } from '../drawing.ts';
import type { Element } from '../svg.ts';
import { fitted, short, text } from '../text.ts';
import { labelCarried } from './carried.ts';
import { labelDrive } from './drives.ts';
import { drawField, labelField } from './fields.ts';
import { hazardList, planNotes, scaleBar } from './foot.ts';
import { drawGround } from './ground.ts';
import { drawHazard, drawUnjudged } from './hazards.ts';
import { labelLeaf, labelRoom } from './labels.ts';
import { layoutOf } from './layout.ts';
import { Plan } from './plan.ts';
import { drawSlide, tellSlide } from './slide.ts';
import { drawSwing, tellSwing } from './swing.ts';

const title = 'Plan of the opening';
const heads = ['What', 'Is', 'Facts'];

/** The plan. `findings` decide, together with what covers each hazard, which of them are shown as covered. */
export function* planOf(installation: Installation, findings: readonly Finding[]): Steps<Drawing> {
  const layout = layoutOf(installation);
  if (layout === undefined) return nothing('plan', title, { caption: title, heads, rows: [] }, lacksOf(installation));
  const plan = new Plan(layout, readerOf(installation));
  const { leaves, others } = layout.scene;
  const all = [...leaves, ...others];
  const marked = yield* markedHazardsOf(installation, all, findings);
  const unjudged = unjudgedHazardsOf(all, marked.length);
  yield* drawAll(plan, marked, unjudged);

  const below: Element[] = [];
  let y = layout.area.y + layout.area.height + 8;
  below.push(...scaleBar(layout, plan.reader, y));
  y = yield* hazardList(marked, unjudged, plan.reader, y + 34, below);
  y = notes(planNotes(plan, marked, unjudged), margin, y, sheetWidth - 2 * margin, below);

  const heading = siteTitle(installation);
  const description = describe(installation, plan, marked);
  const height = y + margin;
  const drawn = [...headOf(plan, heading), ...plan.back, ...plan.middle, ...plan.front, ...below];
  const table: Table = { caption: `${title}: what is drawn`, heads, rows: plan.rows };
  return finished({ id: 'plan', title, heading, description, width: sheetWidth, height, table, drawn, things: plan.things });
}

const lacksOf = ({ leaves }: Installation): string =>
  leaves.length === 0
    ? 'There is no leaf in this file: state one with its width and how it opens.'
    : 'No leaf states both its width and how it opens (opens or slides), so there is nothing to draw.';

/** From the ground up; then the labels, those with the least room first: a leaf has all that it sweeps. */
function* drawAll(plan: Plan, marked: readonly MarkedHazard[], unjudged: readonly UnjudgedHazard[]): Steps<void> {
  const { area, scene } = plan.layout;
  const { leaves, others, fields } = scene;
  const isDrawn = new Set(leaves);
  // The words for the two sides.
  for (const y of [area.y - 6, area.y + area.height - 14]) plan.places.keep({ x: sheetWidth / 2 - 70, y, width: 140, height: 18 });
  drawGround(plan);
  for (const leaf of leaves) {
    yield;
    plan.takes('leaf');
    if (leaf.kind === 'swing') yield* drawSwing(plan, leaf);
    else yield* drawSlide(plan, leaf);
  }
  for (const leaf of others) {
    yield;
    plan.takes('leaf');
    if (leaf.kind === 'swing') yield* tellSwing(plan, leaf);
    else yield* tellSlide(plan, leaf);
  }
  yield* eachOf(fields, (field) => drawField(plan, field));
  yield* eachOf(marked, (hazard) => drawHazard(plan, hazard, isDrawn.has(hazard.leaf)));
  yield* eachOf(unjudged, (hazard) => drawUnjudged(plan, hazard, isDrawn.has(hazard.leaf)));
  yield* eachOf(fields.slice(0, mostDrawn), (field, i) => labelField(plan, field, i));
  const carried = plan.carried.sort((a, b) => a.sensor.at.start - b.sensor.at.start);
  yield* eachOf(carried, (each) => labelCarried(plan, each));
  yield* eachOf(plan.drives, ({ leaf, drive }) => labelDrive(plan, leaf, drive));
  yield* eachOf(leaves, (leaf) => labelRoom(plan, leaf));
  yield* eachOf(leaves, (leaf) => labelLeaf(plan, leaf));
}

function headOf({ layout: { area } }: Plan, heading: string): Element[] {
  return [
    text(fitted(`Plan: ${heading}`, sheetWidth - 2 * margin, 'large'), margin, 32, 'large'),
    text('OUTSIDE, road side', sheetWidth / 2, area.y + 8, 'small', 'middle', 'quiet'),
    text('INSIDE, premises', sheetWidth / 2, area.y + area.height - 2, 'small', 'middle', 'quiet'),
  ];
}

function describe({ drives }: Installation, { layout, reader, limits, counted }: Plan, marked: readonly MarkedHazard[]): string {
  const { leaves, others, fields } = layout.scene;
  const all = [...leaves, ...others];
  const bare = marked.filter(({ judged }) => !judged.covered).length;
  return [
    `${all.length === 1 ? 'One leaf' : `${all.length} leaves`} seen from above, the road at the top:`,
    `${firstInWords(all, 'leaves', '; ', ({ leaf }) => leafInWords(leaf, reader))}.`,
    `${fields.length + counted('carried')} sensing fields and edges.`,
    `${marked.length} places where somebody can be hurt, ${bare === 0 ? 'all of them covered' : `${bare} of them not covered`}.`,
    ...(drives.length === 0 ? ['Nothing drives the leaves.'] : []),
    ...limits.map(({ words }) => words),
  ].join(' ');
}

function leafInWords({ name, facts: { width, opens, slides } }: Leaf, reader: Reader): string {
  const swings = opens === undefined ? undefined : `swings ${opens.way} by ${showSi(inDegrees(opens.angle), 'deg')}`;
  const runs = slides === undefined ? undefined : `slides to the ${slides.way} by ${showSi(slides.distance, 'm', reader)}`;
  return `${short(name)}, ${showSi(width?.value ?? 0, 'm', reader)} wide, ${swings ?? runs ?? ''}`;
}
