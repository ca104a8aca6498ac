// Drives: rams and arms with what of them stays and what the leaf carries along, shafts at the hinge, racks.
import type { Drive } from '../../../model/index.ts';
import { type ArmAt, mechanismAt, type RamAt, rackPlace } from '../../scene/mechanism.ts';
import { onGround, type PlacedLeaf, type Slide, type Swing } from '../../scene/opening.ts';
import { between, type Point } from '../../scene/point.ts';
import { driveKind } from '../../words.ts';
import { shows } from '../drawing.ts';
import { circle, type Element, group, hitLine, line, path, rect, through } from '../svg.ts';
import { short } from '../text.ts';
import type { Plan } from './plan.ts';
import { driveThing } from './things.ts';

/** What of a drive stands on the post, and what the leaf carries along. */
interface Parts {
  readonly fixed: readonly Element[];
  readonly carried: readonly Element[];
}

/** A drive on a swing leaf, and how its parts are drawn. */
interface Drawn {
  readonly plan: Plan;
  readonly leaf: Swing;
  readonly drive: Drive;
  /** Elements that show it. */
  readonly shown: (...children: readonly Element[]) => Element;
  /** It with the leaf open. */
  readonly shownOpen: (...children: readonly Element[]) => Element;
  /** A place in the leaf's coordinates, on the paper. */
  readonly point: (place: Point) => Point;
}

/** A drive in words; gives its thing. */
export function tellDrive(plan: Plan, drive: Drive): string {
  plan.rows.push([`drive ${short(drive.name)}`, driveKind(drive), placeInWords(plan, drive)]);
  return driveThing(plan, drive);
}

/** A drive of a swing leaf; no parts where it is not stated where it is fixed. */
export function drawMechanism(plan: Plan, leaf: Swing, drive: Drive): Parts {
  const id = tellDrive(plan, drive);
  if (!plan.takes('drive')) return { fixed: [], carried: [] };
  plan.drives.push({ leaf, drive });
  const title = titleOf(drive);
  const drawn: Drawn = {
    plan,
    leaf,
    drive,
    shown: (...children) => shows(id, title, ...children),
    shownOpen: (...children) => shows(id, `${title}: open`, ...children),
    point: ({ x, y }) => plan.at(onGround(leaf, x, y)),
  };
  const closed = mechanismAt(drive, 0);
  const open = closed === undefined ? undefined : mechanismAt(drive, leaf.angle);
  if (closed?.kind === 'ram') return drawRam(drawn, closed, open?.kind === 'ram' ? open : undefined);
  if (closed?.kind === 'arm') return drawArm(drawn, closed, open?.kind === 'arm' ? open : undefined);
  if (drive.model?.facts.kind?.value !== 'direct') return { fixed: [], carried: [] };
  const hinge = plan.at(leaf.hinge);
  return { fixed: [drawn.shown(circle('drive', hinge, 9), circle('hit', hinge, 13))], carried: [] };
}

const titleOf = (drive: Drive): string => `drive ${short(drive.name)}, ${driveKind(drive)}`;
const movingFixed = ({ drive }: Drawn, ...children: readonly Element[]): Element =>
  group({ 'data-moves': `drive.${drive.name}.fixed` }, ...children);
const movingCarried = ({ drive }: Drawn, ...children: readonly Element[]): Element =>
  group({ 'data-moves': `drive.${drive.name}.carried` }, ...children);

function drawRam(drawn: Drawn, closed: RamAt, open: RamAt | undefined): Parts {
  const { plan, leaf, point, shown } = drawn;
  const post = point(closed.post);
  const bracket = point(closed.bracket);
  // Tube and rod are drawn as long as they can be at both ends of the travel.
  const lengths = [closed.length, open?.length ?? closed.length];
  const tube = 0.62 * Math.min(...lengths);
  const rod = Math.min(Math.max(...lengths) - 0.9 * tube, closed.length * 0.98);
  const tubeEnd = between(post, bracket, tube / closed.length);
  const rodEnd = between(bracket, post, rod / closed.length);
  if (open !== undefined) {
    const end = point(open.bracket);
    plan.back.push(drawn.shownOpen(line('drive-open', post, end)));
    plan.places.avoid(post, end, 4);
  }
  plan.places.avoid(post, bracket, 8);
  const foot = point({ x: Math.min(leaf.post.face, closed.post.x), y: Math.min(leaf.post.front, closed.post.y) });
  return {
    fixed: [
      shown(line('drive', foot, post)),
      movingFixed(drawn, shown(line('drive-body', post, tubeEnd), hitLine(post, tubeEnd))),
      shown(circle('drive-pin', post, 4)),
    ],
    carried: [
      movingCarried(drawn, shown(line('drive', bracket, rodEnd), hitLine(bracket, rodEnd))),
      shown(circle('drive-pin', bracket, 3.5)),
    ],
  };
}

function drawArm(drawn: Drawn, closed: ArmAt, open: ArmAt | undefined): Parts {
  const { plan, point, shown } = drawn;
  const shaft = point(closed.shaft);
  const elbow = point(closed.elbow);
  const bracket = point(closed.bracket);
  if (open !== undefined) {
    const bend = point(open.elbow);
    const end = point(open.bracket);
    plan.back.push(drawn.shownOpen(path('drive-open', through([shaft, bend, end]))));
    plan.places.avoid(shaft, bend, 4);
    plan.places.avoid(bend, end, 4);
  }
  plan.places.avoid(shaft, elbow, 8);
  plan.places.avoid(elbow, bracket, 8);
  const half = 0.07 * plan.layout.perMetre;
  const size = 0.14 * plan.layout.perMetre;
  return {
    fixed: [
      movingFixed(drawn, shown(line('drive', shaft, elbow), circle('drive-pin', elbow, 3.5), hitLine(shaft, elbow))),
      shown(rect('drive-pin', shaft.x - half, shaft.y - half, size, size, 2), circle('drive-pin', shaft, 3)),
    ],
    carried: [
      movingCarried(drawn, shown(line('drive', bracket, elbow), hitLine(bracket, elbow))),
      shown(circle('drive-pin', bracket, 3.5)),
    ],
  };
}

export function drawRack(plan: Plan, leaf: Slide, drive: Drive): void {
  const id = tellDrive(plan, drive);
  if (!plan.takes('drive')) return;
  plan.drives.push({ leaf, drive });
  const at = plan.at(rackPlace(leaf));
  const size = Math.max(14, 0.28 * plan.layout.perMetre);
  const left = at.x - size / 2;
  plan.front.push(
    shows(
      id,
      titleOf(drive),
      rect('drive-pin', left, at.y, size, size, 3),
      circle('drive', { x: at.x, y: at.y + size / 2 }, size / 4),
      rect('hit', left - 3, at.y - 3, size + 6, size + 6, 3),
    ),
  );
  plan.places.keep({ x: left, y: at.y, width: size, height: size });
}

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

export function labelDrive(plan: Plan, leaf: PlacedLeaf, drive: Drive): void {
  const near = labelPlace(leaf, drive);
  if (near === undefined) return;
  const kind = `${driveKind(drive)}${leaf.kind === 'slide' ? ', position not stated' : ''}`;
  const name = short(drive.name);
  plan.label({ id: driveThing(plan, drive), title: `drive ${name}`, words: [name, kind], near: plan.at(near), tone: 'in-drive' });
}

/** Where on the ground a drive is labelled; undefined where it is not drawn. */
function labelPlace(leaf: PlacedLeaf, drive: Drive): Point | undefined {
  if (leaf.kind === 'slide') return { x: rackPlace(leaf).x, y: rackPlace(leaf).y + 0.2 };
  const closed = mechanismAt(drive, 0);
  if (closed === undefined) return drive.model?.facts.kind?.value === 'direct' ? leaf.hinge : undefined;
  const { x, y } = closed.kind === 'ram' ? between(closed.post, closed.bracket, 0.4) : closed.elbow;
  return onGround(leaf, x, y);
}
