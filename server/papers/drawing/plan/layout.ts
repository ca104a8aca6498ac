// How a plan lies on its sheet: what stands on the ground to places of the drawing.
import { type Installation, perSubject } from '../../../model/index.ts';
import { type PlanScene, planSceneOf } from '../../scene/plan.ts';
import type { Point } from '../../scene/point.ts';
import { margin, sheetWidth } from '../drawing.ts';
import type { Box } from '../placing.ts';

export interface PlanScale {
  /** Metres on the ground to units of the drawing. */
  readonly at: (point: Point) => Point;
  /** Units of the drawing a metre. */
  readonly perMetre: number;
  /** Where things are drawn. */
  readonly area: Box;
}

export interface Layout extends PlanScale {
  readonly scene: PlanScene;
}

const headHeight = 66;
/** Room for labels on both sides. */
const side = 126;
const mostHeight = 460;
const mostPerMetre = 240;

/** Undefined where no leaf can be drawn. */
export const layoutOf = perSubject((installation: Installation): Layout | undefined => {
  const scene = planSceneOf(installation);
  if (scene === undefined) return undefined;
  const { low, high } = scene;
  const wide = Math.max(0.1, high.x - low.x);
  const deep = Math.max(0.1, high.y - low.y);
  // Where little is swept, labels need the room beside it.
  const above = deep < wide / 3 ? 84 : 46;
  const perMetre = Math.min((sheetWidth - 2 * margin - 2 * side) / wide, mostHeight / deep, mostPerMetre);
  const area = { x: margin, y: headHeight, width: sheetWidth - 2 * margin, height: deep * perMetre + 2 * above };
  const left = sheetWidth / 2 - (wide * perMetre) / 2;
  const top = area.y + above;
  return { scene, perMetre, area, at: ({ x, y }) => ({ x: left + (x - low.x) * perMetre, y: top + (y - low.y) * perMetre }) };
});

/** The scale of an installation's plan; undefined where there is none. */
export const planScaleOf: (installation: Installation) => PlanScale | undefined = layoutOf;
