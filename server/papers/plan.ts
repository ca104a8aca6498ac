// The plan of the opening, to scale: posts, leaves closed and open, what they sweep, their drives, where they can hurt
// somebody, and what sensors see.
import { inDegrees } from '../figures/index.ts';
import { type Drive, headPlace, type Installation, type Leaf, perSubject, type Sensor } from '../model/index.ts';
import { hazardsOf, type Hazard, type HazardKind, type Unstated } from '../figures/hazards/working.ts';
import { type Finding, type JudgedHazard, toldHazardsOf, verdictOf } from '../rules/index.ts';
import { readerOf, showSi, type Reader } from '../vocabulary/index.ts';
import { margin, nothing, notes, picture, sheetWidth, shows, Things, whole, type Drawing, type Note, type Table } from './drawing.ts';
import { carriedOf, edgeEnds, fieldsOf, type Carried, type Field } from './fields.ts';
import { assumed, mechanismAt, onGround, openingOf, turnOf, type Opening, type PlacedLeaf, type Slide, type Swing } from './opening.ts';
import { Places, type Box } from './placing.ts';
import { roundAbove } from './scale.ts';
import { arrowHead, circle, element, group, hatch, line, number, path, rect, through, type Element, type Point } from './svg.ts';
import { fitted, short, sizes, text, widthOf, wrapped } from './text.ts';

export const caution = 'This drawing takes the place of no maker’s instructions. Switch the supply off and lock it off before anything is opened.';

/** Beyond this a wall behind an open leaf is told, not drawn, metres. */
const farWall = 1.3;
const headHeight = 66;

export interface PlanScale {
  /** Metres on the ground to units of the drawing. */
  readonly at: (point: Point) => Point;
  /** Units of the drawing a metre. */
  readonly perMetre: number;
  /** Where things are drawn. */
  readonly area: Box;
}

interface Layout extends PlanScale {
  readonly opening: Opening;
  readonly fields: readonly Field[];
  readonly carried: readonly Carried[];
}

const layoutOf = perSubject((installation: Installation): Layout | undefined => {
  const opening = openingOf(installation);
  if (opening.gaps.length === 0) return undefined;
  const fields = fieldsOf(installation, opening);
  const corners: Point[] = [];
  for (const gap of opening.gaps) {
    corners.push({ x: gap.left - assumed.pillar, y: -assumed.pillar }, { x: gap.right + assumed.pillar, y: assumed.pillar });
    for (const leaf of gap.leaves) corners.push(...(leaf.kind === 'swing' ? swingCorners(leaf) : slideCorners(leaf)));
  }
  for (const { left, right, y, depth } of fields) corners.push({ x: left - 0.15, y: y - depth / 2 - 0.08 }, { x: right + 0.15, y: y + depth / 2 + 0.08 });
  const low = { x: Math.min(...corners.map(({ x }) => x)), y: Math.min(...corners.map(({ y }) => y)) };
  const high = { x: Math.max(...corners.map(({ x }) => x)), y: Math.max(...corners.map(({ y }) => y)) };
  const wide = Math.max(0.1, high.x - low.x);
  const deep = Math.max(0.1, high.y - low.y);
  const side = 126;
  // Where little is swept, labels need the room beside it.
  const above = deep < wide / 3 ? 84 : 46;
  const perMetre = Math.min((sheetWidth - 2 * margin - 2 * side) / wide, 460 / deep, 240);
  const area = { x: margin, y: headHeight, width: sheetWidth - 2 * margin, height: deep * perMetre + 2 * above };
  const left = sheetWidth / 2 - (wide * perMetre) / 2;
  const top = area.y + above;
  return { opening, fields, carried: carriedOf(installation, opening), perMetre, area, at: ({ x, y }) => ({ x: left + (x - low.x) * perMetre, y: top + (y - low.y) * perMetre }) };
});

/** The scale of an installation's plan; undefined where there is none. */
export const planScaleOf: (installation: Installation) => PlanScale | undefined = layoutOf;

function swingCorners(leaf: Swing): Point[] {
  const corners: Point[] = [];
  for (let i = 0; i <= 12; i++) corners.push(onGround(leaf, leaf.width, 0, (leaf.angle * i) / 12));
  const room = leaf.leaf.facts['room-when-open']?.value;
  if (room !== undefined && room <= farWall) for (const x of [leaf.width * 0.35, leaf.width]) corners.push(onGround(leaf, x, roomAt(leaf, room) + 0.1, leaf.angle));
  for (const drive of leaf.leaf.drives)
    for (const angle of [0, leaf.angle]) {
      const found = mechanismAt(drive, angle);
      if (found !== undefined) for (const { x, y } of found.kind === 'ram' ? [found.post, found.bracket] : [found.shaft, found.elbow, found.bracket]) corners.push(onGround(leaf, x, y));
    }
  return corners;
}

function slideCorners({ leaf, edge, way, length, distance, thickness }: Slide): Point[] {
  const room = leaf.facts['room-when-open']?.value;
  const end = edge.x + way * (distance + length + (room !== undefined && room <= farWall ? room + 0.12 : 0));
  return [{ x: edge.x, y: edge.y - thickness }, { x: end, y: edge.y + 0.45 }];
}

/** How far from the hinge axis, across the open leaf, what stands behind it begins. */
const roomAt = ({ box }: Swing, room: number): number => box.y + box.height + room;

/** A letter for each kind of hazard. */
const letters: Readonly<Record<HazardKind, string>> = { 'closing-edge': 'C', hinge: 'H', underside: 'U', 'opening-side': 'O', 'reach-through': 'R', 'running-past': 'P' };
const hazardWords: Readonly<Record<HazardKind, string>> = {
  'closing-edge': 'closing edge',
  hinge: 'hinge side',
  underside: 'underside',
  'opening-side': 'behind the open leaf',
  'reach-through': 'reaching through',
  'running-past': 'running past',
};

/** What a drawing of the plan is put together from. */
class Plan {
  readonly layout: Layout;
  readonly reader: Reader;
  readonly things = new Things();
  readonly places: Places;
  readonly back: Element[] = [];
  readonly middle: Element[] = [];
  readonly front: Element[] = [];
  readonly rows: (readonly string[])[] = [];

  constructor(layout: Layout, reader: Reader) {
    this.layout = layout;
    this.reader = reader;
    this.places = new Places(layout.area);
  }

  at(point: Point): Point {
    return this.layout.at(point);
  }

  length(metres: number): string {
    return showSi(metres, 'm', this.reader);
  }

  /** A label of a thing near a point on the paper (looked for around another one), with a line to it where it stands off. */
  label(id: string, title: string, words: readonly string[], near: Point, tone = '', around = near, lead = true): void {
    const size = 'small';
    const rows = words.filter((row) => row !== '').map((row, i) => fitted(row, 230, size, i === 0));
    const width = Math.max(...rows.map((row, i) => widthOf(row, size, i === 0))) + 6;
    const height = rows.length * (sizes[size] + 3) + 4;
    const { box, covers } = this.places.near(around, width, height);
    const parts: Element[] = [];
    const to = nearest(box, near);
    if (lead && Math.hypot(to.x - near.x, to.y - near.y) > 14) {
      parts.push(line('lead', to, near), circle('bar', near, 1.8));
      this.places.avoid(to, near, 3);
    }
    if (covers) parts.push(rect('halo', box.x, box.y, box.width, box.height, 2));
    for (const [i, row] of rows.entries()) parts.push(text(row, box.x + 3, box.y + (i + 1) * (sizes[size] + 3) - 1, size, 'start', i === 0 ? `strong ${tone}`.trim() : tone === '' ? 'quiet' : tone));
    parts.push(rect('hit', box.x, box.y, box.width, box.height, 3));
    this.front.push(shows(id, title, ...parts));
  }
}

const nearest = (box: Box, { x, y }: Point): Point => ({ x: Math.min(Math.max(x, box.x), box.x + box.width), y: Math.min(Math.max(y, box.y), box.y + box.height) });
const between = (a: Point, b: Point, share: number): Point => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });

/** The plan. `findings` decide, together with what covers each hazard, which of them are shown as covered. */
export function planOf(installation: Installation, findings: readonly Finding[]): Drawing {
  const title = 'Plan of the opening';
  const layout = layoutOf(installation);
  if (layout === undefined) {
    const table: Table = { caption: title, heads: ['What', 'Is', 'Facts'], rows: [] };
    const lacks = installation.leaves.length === 0 ? 'There is no leaf in this file: state one with its width and how it opens.' : 'No leaf states both its width and how it opens (opens or slides), so there is nothing to draw.';
    return nothing('plan', title, table, lacks);
  }
  const plan = new Plan(layout, readerOf(installation));
  const leaves = layout.opening.gaps.flatMap((gap) => gap.leaves);
  for (const y of [layout.area.y - 6, layout.area.y + layout.area.height - 14]) plan.places.keep({ x: sheetWidth / 2 - 70, y, width: 140, height: 18 });
  drawGround(plan);
  for (const leaf of leaves) if (leaf.kind === 'swing') drawSwing(plan, leaf);
    else drawSlide(plan, leaf);
  for (const field of layout.fields) drawField(plan, field);
  const hazards = leaves.flatMap((leaf) => toldHazardsOf(leaf.leaf, findings).map((judged) => ({ leaf, judged })));
  for (const [i, { leaf, judged }] of hazards.entries()) drawHazard(plan, leaf, judged, hazards.slice(0, i).filter((other) => other.leaf === leaf && other.judged.hazard.kind === judged.hazard.kind).length);
  const unknown = leaves.flatMap((leaf) => (hazardsOf(leaf.leaf)?.unstated ?? []).map((missing) => ({ leaf, missing })));
  for (const { leaf, missing } of unknown) drawUnknown(plan, leaf, missing);
  // Those with the least room first; a leaf has all that it sweeps.
  for (const field of layout.fields) labelField(plan, field);
  for (const each of layout.carried) labelCarried(plan, each);
  for (const leaf of leaves) for (const drive of leaf.leaf.drives) labelDrive(plan, leaf, drive);
  for (const leaf of leaves) drawRoomLabel(plan, leaf);
  for (const leaf of leaves) labelLeaf(plan, leaf);

  const foot: Element[] = [];
  let y = layout.area.y + layout.area.height + 8;
  foot.push(...scaleBar(layout, plan.reader, y));
  y += 34;
  if (hazards.length + unknown.length > 0) {
    foot.push(text('Where the moving leaves can hurt somebody', margin, y + 4, 'normal', 'start', 'strong'));
    y += 12;
    const told = [
      ...hazards.map(({ leaf, judged }) => ({ words: hazardInWords(leaf.leaf, judged, plan.reader), mark: (at: Point) => hazardMark(judged, at, 9) })),
      ...unknown.map(({ leaf, missing }) => ({ words: unknownInWords(leaf.leaf, missing), mark: (at: Point) => unknownMark(kindMissing(missing), at, 9) })),
    ];
    for (const { words, mark } of told) {
      const rows = wrapped(words, sheetWidth - 2 * margin - 40, 'small', 3);
      const height = Math.max(24, rows.length * 15 + 8);
      foot.push(
        // Not a thing by itself: who looks for the hazard in the plan is to see it there.
        ...mark({ x: margin + 12, y: y + height / 2 }),
        ...rows.map((row, i) => text(row, margin + 34, y + height / 2 + 4 + (i - (rows.length - 1) / 2) * 15, 'small')),
      );
      y += height;
    }
    y += 4;
  }
  const lines: Note[] = [];
  const left = layout.opening.left;
  if (left.length > 0) lines.push({ words: `Not drawn, as the width or the way it opens is not stated: ${left.map((leaf) => short(leaf.name)).join(', ')}.` });
  const signs = [
    ...(hazards.some(({ judged }) => !judged.covered) ? ['a filled diamond: not covered, or not enough'] : []),
    ...(hazards.some(({ judged }) => judged.covered) ? ['a ring with a tick: covered by what is named behind it'] : []),
    ...(unknown.length > 0 ? ['a broken ring: cannot be judged, as facts are missing'] : []),
  ].join('; ');
  if (signs !== '') lines.push({ words: `${signs[0]?.toUpperCase() ?? ''}${signs.slice(1)}.` });
  lines.push({ words: [...layout.opening.assumed, `The size of the posts is not stated${leaves.some(({ leaf }) => leaf.facts.thickness === undefined) ? ', nor how thick every leaf is' : ''}.`].join(' ') }, { words: caution, name: 'ink' });
  y = notes(lines, margin, y, sheetWidth - 2 * margin, foot);

  const heading = siteTitle(installation);
  const description = describe(installation, plan, hazards.map(({ judged }) => judged));
  const height = y + margin;
  const head = [
    text(fitted(`Plan: ${heading}`, sheetWidth - 2 * margin, 'large'), margin, 32, 'large'),
    text('OUTSIDE, road side', sheetWidth / 2, layout.area.y + 8, 'small', 'middle', 'quiet'),
    text('INSIDE, premises', sheetWidth / 2, layout.area.y + layout.area.height - 2, 'small', 'middle', 'quiet'),
  ];
  const table: Table = { caption: `${title}: what is drawn`, heads: ['What', 'Is', 'Facts'], rows: plan.rows };
  return { id: 'plan', title, description, picture: picture('plan', `${title}: ${heading}`, description, sheetWidth, height, [...head, ...plan.back, ...plan.middle, ...plan.front, ...foot]), width: sheetWidth, height, table, lacks: undefined, things: plan.things.all };
}

/** What the site is called; the file's name where it has no title. */
export function siteTitle({ site, path: from }: Installation): string {
  return short(site?.title ?? from.slice(from.lastIndexOf('/') + 1));
}

function describe(installation: Installation, { layout, reader }: Plan, hazards: readonly JudgedHazard[]): string {
  const leaves = layout.opening.gaps.flatMap((gap) => gap.leaves);
  const told = leaves.map(({ leaf }) => {
    const { width, opens, slides } = leaf.facts;
    const way = opens !== undefined ? `swings ${opens.way} by ${showSi(inDegrees(opens.angle), 'deg')}` : slides !== undefined ? `slides to the ${slides.way} by ${showSi(slides.distance, 'm', reader)}` : '';
    return `${short(leaf.name)}, ${showSi(width?.value ?? 0, 'm', reader)} wide, ${way}`;
  });
  const bare = hazards.filter((each) => !each.covered).length;
  return `${leaves.length === 1 ? 'One leaf' : `${leaves.length} leaves`} seen from above, the road at the top: ${told.join('; ')}. ${layout.fields.length + layout.carried.length} sensing fields and edges. ${hazards.length} places where somebody can be hurt, ${bare === 0 ? 'all of them covered' : `${bare} of them not covered`}.${installation.drives.length === 0 ? ' Nothing drives the leaves.' : ''}`;
}

// --- The ground.

function drawGround(plan: Plan): void {
  const { opening, perMetre } = plan.layout;
  for (const gap of opening.gaps) {
    const from = plan.at({ x: gap.left - assumed.pillar - 0.3, y: 0 });
    const to = plan.at({ x: gap.right + assumed.pillar + 0.3, y: 0 });
    plan.back.push(line('ground', from, to));
    for (const [x, swing] of [
      [gap.left - assumed.pillar, gap.leaves.find((leaf): leaf is Swing => leaf.kind === 'swing' && leaf.along === 1)],
      [gap.right, gap.leaves.find((leaf): leaf is Swing => leaf.kind === 'swing' && leaf.along === -1)],
    ] as const) {
      // In front of the leaf's own face as stated; how deep it is, is not.
      const front = swing === undefined ? assumed.pillar / 2 : swing.post.front;
      const side = swing?.side ?? 1;
      const top = Math.min(side * front, side * (front - assumed.pillar));
      const corner = plan.at({ x, y: top });
      const size = assumed.pillar * perMetre;
      plan.middle.push(rect('post', corner.x, corner.y, size, size), path('strokes', hatch(corner.x, corner.y, size, size, 7)));
      plan.places.keep({ x: corner.x, y: corner.y, width: size, height: size });
    }
  }
}

// --- Swing leaves.

const leafThing = (plan: Plan, leaf: Leaf): string => plan.things.note(`leaf.${leaf.name}`, `leaf ${short(leaf.name)}`, whole(leaf.at));

function drawSwing(plan: Plan, leaf: Swing): void {
  const { leaf: it, width, angle, box, hinge } = leaf;
  const { perMetre } = plan.layout;
  const id = leafThing(plan, it);
  const title = `leaf ${short(it.name)}, ${plan.length(width)} wide, opens ${it.facts.opens?.way ?? ''} by ${showSi(inDegrees(angle), 'deg')}`;
  const centre = plan.at(hinge);
  const radius = width * perMetre;
  const closed = plan.at(onGround(leaf, width, 0));
  const open = plan.at(onGround(leaf, width, 0, angle));
  const turn = turnOf(leaf);
  const bow = `${number(closed.x)} ${number(closed.y)}A${number(radius)} ${number(radius)} 0 ${angle > Math.PI ? 1 : 0} ${turn === 1 ? 1 : 0} ${number(open.x)} ${number(open.y)}`;
  const sector = `M${number(centre.x)} ${number(centre.y)}L${bow}Z`;
  const arc = `M${bow}`;
  plan.back.push(shows(id, `${title}: what it sweeps`, path('swept', sector), path('swept-edge', arc), path('hit', sector)));
  const corners = (by: number): Point[] =>
    [[box.x, box.y], [box.x + box.width, box.y], [box.x + box.width, box.y + box.height], [box.x, box.y + box.height]].map(([x, y]) => plan.at(onGround(leaf, x as number, y as number, by)));
  plan.back.push(shows(id, `${title}: open`, path('leaf-open', through(corners(angle), true))));
  const front = it.facts['room-when-open'];
  if (front !== undefined && front.value <= farWall) drawWall(plan, leaf, front);
  const outline = through(corners(0), true);
  const moving: Element[] = [shows(id, title, path('leaf', outline), element('path', { class: 'hit', d: outline })), ...drawCarried(plan, leaf)];
  for (const drive of it.drives) {
    const parts = drawDrive(plan, leaf, drive);
    if (parts === undefined) continue;
    plan.front.push(...parts.fixed);
    moving.push(...parts.carried);
  }
  plan.middle.push(group({ 'data-moves': `leaf.${it.name}` }, ...moving), circle('pin', centre, 4));
  plan.places.avoid(centre, closed, 8);
  plan.places.avoid(centre, open, 5);
  for (let i = 0; i < 24; i++) plan.places.avoid(plan.at(onGround(leaf, width, 0, (angle * i) / 24)), plan.at(onGround(leaf, width, 0, (angle * (i + 1)) / 24)), 5);
  const facts = it.facts;
  plan.rows.push([
    `leaf ${short(it.name)}`,
    `swings ${facts.opens?.way ?? ''}`,
    [`${plan.length(width)} wide`, `opens by ${showSi(inDegrees(angle), 'deg')}`, facts.thickness === undefined ? 'thickness not stated' : `${plan.length(facts.thickness.value)} thick`, facts['room-when-open'] === undefined ? 'room behind it not stated' : `${plan.length(facts['room-when-open'].value)} to what stands behind it when open`].join(', '),
  ]);
}

function drawWall(plan: Plan, leaf: Swing, room: { readonly value: number; readonly line: Leaf['at'] }): void {
  const y = roomAt(leaf, room.value);
  const from = plan.at(onGround(leaf, leaf.width * 0.4, y, leaf.angle));
  const to = plan.at(onGround(leaf, leaf.width, y, leaf.angle));
  const back = plan.at(onGround(leaf, leaf.width * 0.4, y + 0.1, leaf.angle));
  const shift = { x: back.x - from.x, y: back.y - from.y };
  let strokes = '';
  const count = Math.max(2, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / 10));
  for (let i = 1; i <= count; i++) {
    const foot = between(from, to, i / count);
    const end = between(from, to, (i - 0.7) / count);
    strokes += through([foot, { x: end.x + shift.x, y: end.y + shift.y }]);
  }
  const id = plan.things.note(`leaf.${leaf.leaf.name}.room-when-open`, `room behind the open leaf ${short(leaf.leaf.name)}`, whole(room.line));
  plan.back.push(shows(id, `what stands behind the open leaf ${short(leaf.leaf.name)}, ${plan.length(room.value)} from it`, line('wall', from, to), path('strokes', strokes), path('hit', through([from, to, { x: to.x + shift.x, y: to.y + shift.y }, { x: from.x + shift.x, y: from.y + shift.y }], true))));
  plan.places.avoid(from, to, 8);
  plan.places.avoid({ x: from.x + shift.x, y: from.y + shift.y }, { x: to.x + shift.x, y: to.y + shift.y }, 10);
}

function drawRoomLabel(plan: Plan, placed: PlacedLeaf): void {
  const room = placed.leaf.facts['room-when-open'];
  if (room === undefined || room.value > farWall) return;
  const at =
    placed.kind === 'swing'
      ? plan.at(onGround(placed, placed.width * 0.7, roomAt(placed, room.value), placed.angle))
      : plan.at({ x: placed.edge.x + placed.way * (placed.distance + placed.length + room.value), y: placed.edge.y });
  const id = plan.things.note(`leaf.${placed.leaf.name}.room-when-open`, `room behind the open leaf ${short(placed.leaf.name)}`, whole(room.line));
  plan.label(id, `room behind the open leaf ${short(placed.leaf.name)}`, [`${plan.length(room.value)} room`, 'position not stated'], at);
}

// --- Sliding leaves.

function drawSlide(plan: Plan, leaf: Slide): void {
  const { leaf: it, edge, way, length, distance, thickness, width } = leaf;
  const { perMetre } = plan.layout;
  const id = leafThing(plan, it);
  const title = `leaf ${short(it.name)}, ${plan.length(width)} wide, slides to the ${it.facts.slides?.way ?? ''} by ${plan.length(distance)}`;
  const boxAt = (shift: number): Box => {
    const from = plan.at({ x: Math.min(edge.x, edge.x + way * length) + shift, y: edge.y - thickness / 2 });
    return { x: from.x, y: from.y, width: length * perMetre, height: Math.max(3, thickness * perMetre) };
  };
  const closed = boxAt(0);
  const open = boxAt(way * distance);
  const swept = { x: Math.min(closed.x, open.x), y: closed.y - 5, width: (length + distance) * perMetre, height: closed.height + 10 };
  plan.back.push(shows(id, `${title}: what it sweeps`, rect('swept', swept.x, swept.y, swept.width, swept.height), rect('swept-edge', swept.x, swept.y, swept.width, swept.height), rect('hit', swept.x, swept.y, swept.width, swept.height)));
  plan.back.push(rect('leaf-open', open.x, open.y, open.width, open.height));
  const moving: Element[] = [];
  const tail = it.facts.tail;
  const leafX = way === 1 ? closed.x : closed.x + (length - width) * perMetre;
  moving.push(shows(id, title, rect('leaf', leafX, closed.y, width * perMetre, closed.height), ...(tail === undefined ? [] : [rect('leaf-open', way === 1 ? closed.x + width * perMetre : closed.x, closed.y, tail.value * perMetre, closed.height)]), rect('hit', closed.x, closed.y - 4, closed.width, closed.height + 8)));
  moving.push(...drawCarried(plan, leaf));
  plan.middle.push(group({ 'data-moves': `leaf.${it.name}` }, ...moving));
  for (const drive of it.drives) drawRack(plan, leaf, drive);
  const room = it.facts['room-when-open'];
  if (room !== undefined && room.value <= farWall) {
    const x = edge.x + way * (distance + length + room.value);
    const from = plan.at({ x, y: edge.y - 0.3 });
    const to = plan.at({ x, y: edge.y + 0.3 });
    const wide = 0.1 * perMetre;
    const left = way === 1 ? from.x : from.x - wide;
    const wall = plan.things.note(`leaf.${it.name}.room-when-open`, `room behind the open leaf ${short(it.name)}`, whole(room.line));
    plan.back.push(shows(wall, `what stands behind the open leaf ${short(it.name)}, ${plan.length(room.value)} from it`, line('wall', from, to), path('strokes', hatch(left, from.y, wide, to.y - from.y, 7)), rect('hit', left, from.y, wide, to.y - from.y)));
    plan.places.keep({ x: left, y: from.y, width: wide, height: to.y - from.y });
  }
  // The way that it opens, as an arrow inside of it.
  const arrowY = plan.at({ x: 0, y: edge.y + 0.3 }).y;
  const tip = plan.at({ x: edge.x + way * (0.3 + distance * 0.35), y: 0 });
  const back = plan.at({ x: edge.x + way * 0.3, y: 0 });
  plan.back.push(line('axis', { x: back.x, y: arrowY }, { x: tip.x, y: arrowY }), arrowHead('arrow', { x: back.x, y: arrowY }, { x: tip.x, y: arrowY }));
  plan.places.avoid({ x: back.x, y: arrowY }, { x: tip.x, y: arrowY });
  plan.places.avoid({ x: swept.x, y: closed.y + 2 }, { x: swept.x + swept.width, y: closed.y + 2 }, 10);
  plan.rows.push([
    `leaf ${short(it.name)}`,
    `slides to the ${it.facts.slides?.way ?? ''}`,
    [`${plan.length(width)} wide`, `travels ${plan.length(distance)}`, ...(tail === undefined ? [] : [`tail ${plan.length(tail.value)}`]), room === undefined ? 'room behind it not stated' : `${plan.length(room.value)} to what stands behind it when open`].join(', '),
  ]);
}

// --- Drives.

const driveThing = (plan: Plan, drive: Drive): string => plan.things.note(`drive.${drive.name}`, `drive ${short(drive.name)}`, whole(drive.at));
const kindWords = { 'linear-ram': 'linear ram', 'articulated-arm': 'articulated arm', direct: 'shaft at the hinge', rack: 'rack and pinion' } as const;
/** What kind of drive it is, in words. */
export const driveKind = (drive: Drive): string => {
  const kind = drive.model?.facts.kind?.value;
  return kind === undefined ? 'model not known' : kindWords[kind];
};

function drawDrive(plan: Plan, leaf: Swing, drive: Drive): { fixed: Element[]; carried: Element[] } | undefined {
  const id = driveThing(plan, drive);
  const title = `drive ${short(drive.name)}, ${driveKind(drive)}`;
  const closed = mechanismAt(drive, 0);
  const point = (x: number, y: number): Point => plan.at(onGround(leaf, x, y));
  const { perMetre } = plan.layout;
  plan.rows.push([`drive ${short(drive.name)}`, driveKind(drive), placeInWords(plan, drive)]);
  if (closed === undefined) {
    if (drive.model?.facts.kind?.value !== 'direct') return undefined;
    const hinge = plan.at(leaf.hinge);
    return { fixed: [shows(id, title, circle('drive', hinge, 9), circle('hit', hinge, 13))], carried: [] };
  }
  const open = mechanismAt(drive, leaf.angle);
  if (closed.kind === 'ram') {
    const post = point(closed.post.x, closed.post.y);
    const bracket = point(closed.bracket.x, closed.bracket.y);
    const lengths = [closed.length, open?.kind === 'ram' ? open.length : closed.length];
    const tube = 0.62 * Math.min(...lengths);
    const rod = Math.min(Math.max(...lengths) - 0.9 * tube, closed.length * 0.98);
    const tubeEnd = between(post, bracket, tube / closed.length);
    const rodEnd = between(bracket, post, rod / closed.length);
    if (open?.kind === 'ram') {
      const end = point(open.bracket.x, open.bracket.y);
      plan.back.push(shows(id, `${title}: open`, line('drive-open', post, end)));
      plan.places.avoid(post, end, 4);
    }
    plan.places.avoid(post, bracket, 8);
    const bracketFoot = point(Math.min(leaf.post.face, closed.post.x), Math.min(leaf.post.front, closed.post.y));
    return {
      fixed: [
        shows(id, title, line('drive', bracketFoot, post)),
        group({ 'data-moves': `drive.${drive.name}.fixed` }, shows(id, title, line('drive-body', post, tubeEnd), hitLine(post, tubeEnd))),
        shows(id, title, circle('drive-pin', post, 4)),
      ],
      carried: [group({ 'data-moves': `drive.${drive.name}.carried` }, shows(id, title, line('drive', bracket, rodEnd), hitLine(bracket, rodEnd))), shows(id, title, circle('drive-pin', bracket, 3.5))],
    };
  }
  const shaft = point(closed.shaft.x, closed.shaft.y);
  const elbow = point(closed.elbow.x, closed.elbow.y);
  const bracket = point(closed.bracket.x, closed.bracket.y);
  if (open?.kind === 'arm') {
    const bend = point(open.elbow.x, open.elbow.y);
    const end = point(open.bracket.x, open.bracket.y);
    plan.back.push(shows(id, `${title}: open`, path('drive-open', through([shaft, bend, end]))));
    plan.places.avoid(shaft, bend, 4);
    plan.places.avoid(bend, end, 4);
  }
  plan.places.avoid(shaft, elbow, 8);
  plan.places.avoid(elbow, bracket, 8);
  return {
    fixed: [
      group({ 'data-moves': `drive.${drive.name}.fixed` }, shows(id, title, line('drive', shaft, elbow), circle('drive-pin', elbow, 3.5), hitLine(shaft, elbow))),
      shows(id, title, rect('drive-pin', shaft.x - 0.07 * perMetre, shaft.y - 0.07 * perMetre, 0.14 * perMetre, 0.14 * perMetre, 2), circle('drive-pin', shaft, 3)),
    ],
    carried: [group({ 'data-moves': `drive.${drive.name}.carried` }, shows(id, title, line('drive', bracket, elbow), hitLine(bracket, elbow))), shows(id, title, circle('drive-pin', bracket, 3.5))],
  };
}

/** A surface around a line that can be hit with a pointer. */
function hitLine(from: Point, to: Point, half = 7): Element {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const x = (-(to.y - from.y) / length) * half;
  const y = ((to.x - from.x) / length) * half;
  return path('hit', through([{ x: from.x + x, y: from.y + y }, { x: to.x + x, y: to.y + y }, { x: to.x - x, y: to.y - y }, { x: from.x - x, y: from.y - y }], true));
}

function drawRack(plan: Plan, leaf: Slide, drive: Drive): void {
  const id = driveThing(plan, drive);
  const at = plan.at(rackPlace(leaf));
  const size = Math.max(14, 0.28 * plan.layout.perMetre);
  plan.front.push(shows(id, `drive ${short(drive.name)}, ${driveKind(drive)}`, rect('drive-pin', at.x - size / 2, at.y, size, size, 3), circle('drive', { x: at.x, y: at.y + size / 2 }, size / 4), rect('hit', at.x - size / 2 - 3, at.y - 3, size + 6, size + 6, 3)));
  plan.places.keep({ x: at.x - size / 2, y: at.y, width: size, height: size });
  plan.rows.push([`drive ${short(drive.name)}`, driveKind(drive), placeInWords(plan, drive)]);
}

/** A rack drive stands at the post that the leaf runs past, inside of it. */
const rackPlace = ({ edge, way, distance, thickness }: Slide): Point => ({ x: edge.x + way * (distance + 0.25), y: edge.y + thickness / 2 + 0.03 });

function placeInWords(plan: Plan, drive: Drive): string {
  const { 'post-bracket': post, shaft, 'leaf-bracket': bracket } = drive.facts;
  const parts: string[] = [];
  if (drive.model !== undefined) parts.push(`model ${short(drive.model.name)}`);
  if (post !== undefined) parts.push(`post bracket ${plan.length(post.along)} behind the hinge, ${plan.length(post.out)} out`);
  if (shaft !== undefined) parts.push(`shaft ${plan.length(shaft.along)} behind the hinge, ${plan.length(shaft.out)} out`);
  if (bracket !== undefined) parts.push(`leaf bracket ${plan.length(bracket.value)} from the hinge`);
  const kind = drive.model?.facts.kind?.value;
  if (kind === 'rack') parts.push('position not stated');
  else if (kind !== 'direct' && mechanismAt(drive, 0) === undefined) parts.push('where it is fixed is not stated, so it is not drawn');
  return parts.join(', ');
}

function labelDrive(plan: Plan, leaf: PlacedLeaf, drive: Drive): void {
  const id = driveThing(plan, drive);
  const title = `drive ${short(drive.name)}`;
  if (leaf.kind === 'slide') {
    plan.label(id, title, [short(drive.name), `${driveKind(drive)}, position not stated`], plan.at({ x: rackPlace(leaf).x, y: rackPlace(leaf).y + 0.2 }), 'in-drive');
    return;
  }
  const closed = mechanismAt(drive, 0);
  if (closed === undefined) {
    if (drive.model?.facts.kind?.value === 'direct') plan.label(id, title, [short(drive.name), driveKind(drive)], plan.at(leaf.hinge), 'in-drive');
    return;
  }
  const middle = closed.kind === 'ram' ? between(closed.post, closed.bracket, 0.4) : closed.elbow;
  plan.label(id, title, [short(drive.name), driveKind(drive)], plan.at(onGround(leaf, middle.x, middle.y)), 'in-drive');
}

// --- Sensors.

const sensorThing = (plan: Plan, sensor: Sensor): string => plan.things.note(`sensor.${sensor.name}`, `sensor ${short(sensor.name)}`, whole(sensor.at));

function drawCarried(plan: Plan, leaf: PlacedLeaf): Element[] {
  const drawn: Element[] = [];
  for (const each of plan.layout.carried) {
    if (each.leaf !== leaf) continue;
    const { sensor, kind, edge } = each;
    const id = sensorThing(plan, sensor);
    const [from, to] = edgeEnds(leaf, edge).map((end) => plan.at(end)) as [Point, Point];
    const title = `sensor ${short(sensor.name)}: ${kind} on the ${edge.replace('-', ' ')} of ${short(leaf.leaf.name)}`;
    plan.rows.push([`sensor ${short(sensor.name)}`, `${kind} on the ${edge.replace('-', ' ')} of ${short(leaf.leaf.name)}`, watchesInWords(sensor)]);
    const fixed = edge === 'post-edge';
    const shape = kind === 'edge' ? [capsule(from, to)] : kind === 'beam' ? [line('beam', from, to)] : [path('presence', strip(from, to, 0.3 * plan.layout.perMetre)), path('presence-strokes', strip(from, to, 0.3 * plan.layout.perMetre))];
    const shown = shows(id, title, ...shape, hitLine(from, to, 9));
    if (fixed) plan.front.push(shown);
    else drawn.push(shown);
    plan.places.avoid(from, to, 8);
  }
  return drawn;
}

/** A strip of rubber: thick enough to be seen at any scale. */
function capsule(from: Point, to: Point): Element {
  const middle = between(from, to, 0.5);
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const long = Math.max(length, 14) / 2;
  const x = (to.x - from.x) / length;
  const y = (to.y - from.y) / length;
  const half = 3.2;
  return path(
    'edge',
    through([
      { x: middle.x + x * long - y * half, y: middle.y + y * long + x * half },
      { x: middle.x + x * (long + half), y: middle.y + y * (long + half) },
      { x: middle.x + x * long + y * half, y: middle.y + y * long - x * half },
      { x: middle.x - x * long + y * half, y: middle.y - y * long - x * half },
      { x: middle.x - x * (long + half), y: middle.y - y * (long + half) },
      { x: middle.x - x * long - y * half, y: middle.y - y * long + x * half },
    ], true),
  );
}

function strip(from: Point, to: Point, half: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const x = (-(to.y - from.y) / length) * half;
  const y = ((to.x - from.x) / length) * half;
  return through([{ x: from.x + x, y: from.y + y }, { x: to.x + x, y: to.y + y }, { x: to.x - x, y: to.y - y }, { x: from.x - x, y: from.y - y }], true);
}

const watchesInWords = (sensor: Sensor): string => {
  const watches = sensor.facts.watches?.movements;
  return watches === undefined ? 'what it watches is not stated' : `watches ${watches.join(', ')}`;
};

/** Over the leaf that an edge sits on, so that its label stands on that leaf's side. */
function besideEdge(leaf: PlacedLeaf, edge: Carried['edge']): Point {
  const [from, to] = edgeEnds(leaf, edge);
  const middle = between(from, to, 0.5);
  if (leaf.kind === 'slide') return middle;
  const back = leaf.width * 0.22 * (edge === 'hinge-edge' || edge === 'post-edge' ? 1 : edge === 'bottom-edge' ? 0 : -1);
  return { x: middle.x + leaf.along * back, y: middle.y };
}

function labelCarried(plan: Plan, { sensor, leaf, kind, edge }: Carried): void {
  const [from, to] = edgeEnds(leaf, edge).map((end) => plan.at(end)) as [Point, Point];
  plan.label(sensorThing(plan, sensor), `sensor ${short(sensor.name)}`, [short(sensor.name), `${kind}, ${watchesInWords(sensor)}`], between(from, to, 0.5), 'in-field', plan.at(besideEdge(leaf, edge)));
}

const fieldThing = (plan: Plan, { device }: Field): string =>
  device.kind === 'sensor' ? sensorThing(plan, device.it) : plan.things.note(`control.${device.it.name}`, `control ${short(device.it.name)}`, whole(device.it.at));

function heightInWords(plan: Plan, { kind, device }: Field): string {
  if (kind === 'loop' || device.kind !== 'sensor') return '';
  const height = device.it.facts.height;
  return height === undefined ? 'height not stated' : `${plan.length(height.value)} high`;
}

function drawField(plan: Plan, field: Field): void {
  const { kind, device, left, right, y, depth } = field;
  const { perMetre } = plan.layout;
  const id = fieldThing(plan, field);
  const title = `${device.kind} ${short(device.it.name)}: ${kind}, position not stated`;
  const from = plan.at({ x: left, y });
  const to = plan.at({ x: right, y });
  const movement = device.kind === 'sensor' ? watchesInWords(device.it) : 'commands';
  plan.rows.push([`${device.kind} ${short(device.it.name)}`, kind === 'loop' ? 'loop in the ground' : kind, [heightInWords(plan, field), movement, 'position not stated'].filter((part) => part !== '').join(', ')]);
  if (kind === 'beam') {
    plan.back.push(shows(id, title, line('beam', from, to), rect('eye', from.x - 9, from.y - 5, 9, 10, 2), rect('eye', to.x, to.y - 5, 9, 10, 2), hitLine(from, to)));
    plan.places.avoid(from, to, 6);
    return;
  }
  const top = from.y - (depth * perMetre) / 2;
  const high = depth * perMetre;
  const shape =
    kind === 'curtain'
      ? [rect('presence', from.x, top, to.x - from.x, high), path('presence-strokes', hatch(from.x, top, to.x - from.x, high, 12))]
      : [rect('loop', from.x, top, to.x - from.x, high, 10), rect('loop', from.x + 5, top + 5, to.x - from.x - 10, high - 10, 7)];
  plan.back.push(shows(id, title, ...shape, rect('hit', from.x, top, to.x - from.x, high, 4)));
  plan.places.avoid({ x: from.x, y: top }, { x: to.x, y: top });
  plan.places.avoid({ x: from.x, y: top + high }, { x: to.x, y: top + high });
  plan.places.avoid({ x: from.x, y: top }, { x: from.x, y: top + high });
  plan.places.avoid({ x: to.x, y: top }, { x: to.x, y: top + high });
}

function labelField(plan: Plan, field: Field): void {
  const { kind, device, left, right, y } = field;
  const share = kind === 'loop' ? 0.5 : 0.5 + 0.18 * ((plan.layout.fields.indexOf(field) % 3) - 1);
  const at = plan.at({ x: left + (right - left) * share, y });
  plan.label(fieldThing(plan, field), `${device.kind} ${short(device.it.name)}`, [`${short(device.it.name)}${heightInWords(plan, field) === '' ? '' : `, ${heightInWords(plan, field)}`}`, `${kind}, position not stated`], at, 'in-field');
}

// --- Hazards and labels.

/** Where on the ground a hazard is marked. */
function hazardPlace(leaf: PlacedLeaf, { kind }: Pick<Hazard, 'kind'>): Point {
  if (leaf.kind === 'swing') {
    const { width, box, angle, post } = leaf;
    switch (kind) {
      case 'closing-edge':
        return onGround(leaf, width, 0);
      case 'hinge':
        return onGround(leaf, (post.face + box.x) / 2, box.y + box.height);
      case 'underside':
        return onGround(leaf, width * 0.62, 0);
      default:
        return onGround(leaf, width * 0.9, box.y + box.height, angle);
    }
  }
  const { edge, way, distance, length } = leaf;
  switch (kind) {
    case 'opening-side':
      return { x: edge.x + way * (distance + length), y: edge.y };
    case 'reach-through':
    case 'running-past':
      return { x: edge.x + way * distance, y: edge.y };
    default:
      return { x: edge.x, y: edge.y };
  }
}

function drawHazard(plan: Plan, leaf: PlacedLeaf, judged: JudgedHazard, before: number): void {
  const { hazard } = judged;
  const place = hazard.at ?? headPlace(leaf.leaf);
  const words = `hazard ${short(leaf.leaf.name)}, ${hazardWords[hazard.kind]}`;
  const id = plan.things.note(`hazard.${leaf.leaf.name}.${hazard.kind}${before === 0 ? '' : `.${before + 1}`}`, words, place);
  const at = plan.at(hazardPlace(leaf, hazard));
  const { box } = plan.places.near(at, 26, 26, 4);
  const middle = { x: box.x + 13, y: box.y + 13 };
  const parts: Element[] = [];
  if (Math.hypot(middle.x - at.x, middle.y - at.y) > 15) parts.push(line('lead', middle, at), circle('bar', at, 2));
  parts.push(...hazardMark(judged, middle, 11), circle('hit', middle, 15));
  plan.front.push(shows(id, hazardInWords(leaf.leaf, judged, plan.reader), ...parts));
  plan.rows.push([`${short(leaf.leaf.name)}, ${hazardWords[hazard.kind]}`, judged.covered ? 'hazard, covered' : 'hazard, not covered', hazardInWords(leaf.leaf, judged, plan.reader)]);
}

/** A ring with a tick for what is covered, a filled diamond for what is not; the letter says what kind of place it is. */
function hazardMark({ hazard, covered }: JudgedHazard, { x, y }: Point, r: number): Element[] {
  const letter = letters[hazard.kind];
  if (covered)
    return [
      circle('covered', { x, y }, r),
      text(letter, x, y + 4, 'small', 'middle', 'strong in-sound'),
      path('halo', through([{ x: x + r * 0.35, y: y - r * 1.15 }, { x: x + r * 1.5, y: y - r * 1.15 }, { x: x + r * 1.5, y: y - r * 0.2 }, { x: x + r * 0.35, y: y - r * 0.2 }], true)),
      path('covered-tick', through([{ x: x + r * 0.5, y: y - r * 0.75 }, { x: x + r * 0.8, y: y - r * 0.45 }, { x: x + r * 1.3, y: y - r * 1.1 }])),
    ];
  const d = r * 1.3;
  return [path('bare', through([{ x, y: y - d }, { x: x + d, y }, { x, y: y + d }, { x: x - d, y }], true)), text(letter, x, y + 4, 'small', 'middle', 'strong in-over')];
}

/** What kind of place it is that cannot be judged; told by the fact that is missing. */
function kindMissing({ facts }: Unstated): HazardKind {
  if (facts.includes('room-when-open')) return 'opening-side';
  if (facts.includes('ground-gap')) return 'underside';
  return facts.includes('passes') || facts.includes('infill-opening') ? 'running-past' : 'hinge';
}

function unknownMark(kind: HazardKind, { x, y }: Point, r: number): Element[] {
  return [circle('guessed', { x, y }, r), text(`${letters[kind]}?`, x, y + 4, 'small', 'middle', 'strong quiet')];
}

const unknownInWords = (leaf: Leaf, missing: Unstated): string => `${short(leaf.name)}: ${hazardWords[kindMissing(missing)]}. Not judged: ${missing.about} is not known${missing.facts.length === 0 ? '' : `, as ${missing.facts.map((fact) => `“${fact}”`).join(', ')} ${missing.facts.length === 1 ? 'is' : 'are'} not stated`}.`;

function drawUnknown(plan: Plan, leaf: PlacedLeaf, missing: Unstated): void {
  const kind = kindMissing(missing);
  const words = unknownInWords(leaf.leaf, missing);
  const at = plan.at(hazardPlace(leaf, { kind }));
  const { box } = plan.places.near(at, 24, 24, 4);
  const middle = { x: box.x + 12, y: box.y + 12 };
  plan.front.push(
    shows(leafThing(plan, leaf.leaf), words, ...(Math.hypot(middle.x - at.x, middle.y - at.y) > 15 ? [line('lead', middle, at), circle('bar', at, 2)] : []), ...unknownMark(kind, middle, 10), circle('hit', middle, 13)),
  );
  plan.rows.push([`${short(leaf.leaf.name)}, ${hazardWords[kind]}`, 'cannot be judged', words]);
}

function hazardInWords(leaf: Leaf, judged: JudgedHazard, reader: Reader): string {
  const { hazard, covered, by, notBy } = judged;
  const gap = hazard.least === hazard.greatest ? `, ${showSi(hazard.least, 'm', reader)}` : `, ${showSi(hazard.least, 'm', reader)} to ${showSi(hazard.greatest, 'm', reader)}`;
  const names = (covers: readonly { readonly name: string; readonly says: string }[]): string => covers.map(({ name, says }) => (name === '' ? short(says, 220).replace(/\.$/, '') : `${short(name)} ${says}`)).join('; ');
  const verdict = covered ? `Covered: ${names(by)}.` : notBy.length > 0 ? `${verdictOf(judged) === 'not enough' ? 'Not enough' : 'Not covered'}: ${names(notBy)}.` : 'Not covered by anything in this file.';
  // Of the closing edge there is nothing to add: it closes up to nothing.
  const where = hazard.kind === 'closing-edge' ? '' : ` (between the ${hazard.where}${gap})`;
  return `${short(leaf.name)}: ${hazardWords[hazard.kind]}${where}. ${verdict}`;
}

function labelLeaf(plan: Plan, leaf: PlacedLeaf): void {
  const id = leafThing(plan, leaf.leaf);
  const { opens, slides } = leaf.leaf.facts;
  if (leaf.kind === 'swing') {
    plan.label(id, `leaf ${short(leaf.leaf.name)}`, [short(leaf.leaf.name), `${plan.length(leaf.width)}, ${opens?.way ?? ''} ${showSi(inDegrees(leaf.angle), 'deg')}`], plan.at(onGround(leaf, leaf.width * 0.55, leaf.box.y + leaf.box.height, leaf.angle * 0.45)), '', undefined, false);
    return;
  }
  plan.label(id, `leaf ${short(leaf.leaf.name)}`, [short(leaf.leaf.name), `${plan.length(leaf.width)}, slides ${slides?.way ?? ''} by ${plan.length(leaf.distance)}`], plan.at({ x: leaf.edge.x + leaf.way * leaf.width * 0.5, y: leaf.edge.y + leaf.thickness / 2 }));
}

/** A bar of a round length, so that the plan can be measured off at any size. */
function scaleBar({ perMetre }: PlanScale, reader: Reader, y: number): Element[] {
  const unit = reader === 'american' ? 0.3048 : 1;
  const length = roundAbove(90 / perMetre / unit) * unit;
  const width = length * perMetre;
  const x = margin;
  const words = reader === 'american' ? `${Number((length / unit).toPrecision(3))} ft` : length >= 1 ? `${Number(length.toPrecision(3))} m` : showSi(length, 'm');
  return [rect('bar', x, y, width / 2, 5), rect('bar-open', x + width / 2, y, width / 2, 5), text('0', x, y + 18, 'small', 'start', 'quiet'), text(words, x + width, y + 18, 'small', 'middle', 'quiet')];
}
