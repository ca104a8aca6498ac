// What covers the hazards of a leaf, and what is there but does not.
import { heedingOf, isEdge, measureOf, missesPeople, reaches, watches } from '../circuits/index.ts';
import { type Hazard, type HazardKind, hazardsOf } from '../figures/hazards/working.ts';
import { guardedFromHinge, mostHingeGuard } from '../figures/hinge-gap/working.ts';
import { headPlace, type Installation, type Leaf, perSubject, type Sensor } from '../model/index.ts';
import { heldInView } from './commands.ts';
import { openingForcesProven } from './forces.ts';
import { missed } from './unseeing.ts';

/** A device or measure, and where the file speaks of it. */
export interface Cover {
  readonly name: string;
  /** What it is, or why it does not cover: the end of a sentence that begins with its name. */
  readonly says: string;
  readonly at: { readonly start: number; readonly end: number };
}

export interface JudgedHazard {
  readonly hazard: Hazard;
  /** True when every movement in which the hazard is there is covered. */
  readonly covered: boolean;
  /** The movements of the hazard in which nothing covers it. */
  readonly open: Hazard['movements'];
  readonly by: readonly Cover[];
  /** What looks as if it might cover the hazard, but does not. */
  readonly notBy: readonly Cover[];
}

type Edge = NonNullable<Sensor['facts']['on']>['edge'];

/** The edge on which a device feels what is caught there. */
const edgesFor: Readonly<Record<HazardKind, readonly Edge[]>> = {
  'closing-edge': ['closing-edge', 'receiving-edge'],
  hinge: ['hinge-edge'],
  underside: ['bottom-edge'],
  'opening-side': ['opening-edge'],
  'reach-through': ['post-edge'],
  'running-past': ['post-edge', 'opening-edge'],
};

/** All hazards of a leaf that are known, each with what covers it; undefined for a leaf that nothing drives. */
export const judgedHazardsOf = perSubject((leaf: Leaf): readonly JudgedHazard[] | undefined =>
  hazardsOf(leaf)?.found.map((hazard) => judge(leaf, hazard)),
);

/** The same without the closing edge, which every sensor of the opening may cover: rules about it ask which measures hold (guarding.ts). */
export const judgedPlacesOf = perSubject((leaf: Leaf): readonly JudgedHazard[] | undefined => {
  let judged: JudgedHazard[] | undefined;
  for (const hazard of hazardsOf(leaf)?.found ?? []) if (hazard.kind !== 'closing-edge') (judged ??= []).push(judge(leaf, hazard));
  return judged;
});

/** The sensors that sit on no leaf, heard or not. An edge that sits on none feels nothing. */
const looseSensorsOf = perSubject(({ sensors }: Installation): readonly Sensor[] =>
  sensors.filter((sensor) => sensor.facts.on === undefined && !isEdge(sensor)),
);

/** True where it says that the field of the sensor lies on that place of the leaf. A field across the opening lies on none of them. */
export const liesOn = ({ facts }: Sensor, leaf: Leaf, place: HazardKind): boolean =>
  facts.guards.some(({ leaf: named, places }) => named.text === leaf.name && (places as readonly string[]).includes(place));

/**
 * The sensors that may cover a hazard of a leaf, in the order of the text: its own, and of the others those that are not for some edge
 * alone.
 */
function sensorsNear(leaf: Leaf, hazard: Hazard): readonly Sensor[] {
  const all = looseSensorsOf(leaf.installation);
  const others = hazard.kind === 'closing-edge' ? all : all.filter((sensor) => liesOn(sensor, leaf, hazard.kind));
  return others.length === 0 ? leaf.sensors : [...leaf.sensors, ...others].sort((a, b) => a.at.start - b.at.start);
}

function judge(leaf: Leaf, hazard: Hazard): JudgedHazard {
  const by: Cover[] = [];
  const notBy: Cover[] = [];
  const guard = leaf.facts['hinge-guard'];
  if (hazard.kind === 'hinge' && guard !== undefined) {
    // A guard that is shorter than the gap is wide leaves somebody beside it.
    const reaches = (guardedFromHinge(leaf) ?? 0) >= Math.min(hazard.greatest, mostHingeGuard) - 1e-9;
    if (reaches) by.push({ name: leaf.name, says: 'has a guard at the hinge', at: guard.line });
    else notBy.push({ name: leaf.name, says: 'has a guard at the hinge that is shorter than the gap is wide', at: guard.line });
  }
  if (heldInView(leaf.installation))
    by.push({ name: leaf.name, says: 'moves only while a control in full view is held', at: headPlace(leaf) });
  if (hazard.kind === 'opening-side' && openingForcesProven(leaf))
    by.push({ name: leaf.name, says: 'keeps to the force limits while opening, as measured', at: headPlace(leaf) });
  const always = by.length > 0;
  const left = new Set(hazard.movements);
  for (const sensor of sensorsNear(leaf, hazard)) {
    const measure = measureOf(sensor);
    const on = sensor.facts.on;
    if (measure === undefined) continue;
    const there = on !== undefined && edgesFor[hazard.kind].includes(on.edge);
    // What feels a touch covers where it is, and what lets the leaf touch nobody where its field lies.
    const fits =
      hazard.kind === 'closing-edge' ? there || on === undefined : measure === 'E' ? there || on === undefined : there && measure === 'C';
    if (!fits && !there) continue;
    const not = whyNot(sensor, leaf, hazard, fits);
    if (not !== undefined) {
      notBy.push({ name: sensor.name, says: not, at: headPlace(sensor) });
      continue;
    }
    by.push({
      name: sensor.name,
      says: measure === 'E' ? 'lets the leaf touch nobody' : measure === 'C' ? 'gives way and stops it' : 'sees who stands in the way',
      at: headPlace(sensor),
    });
    for (const movement of hazard.movements) if (watches(sensor, movement)) left.delete(movement);
  }
  // What covers the other movement does not watch this one.
  if (!always) for (const movement of left) notBy.push(...by.map(({ name, at }) => ({ name, at, says: `does not watch ${movement}` })));
  return {
    hazard,
    covered: always || left.size === 0,
    open: always ? [] : hazard.movements.filter((movement) => left.has(movement)),
    by,
    notBy,
  };
}

function whyNot(sensor: Sensor, leaf: Leaf, hazard: Hazard, fits: boolean): string | undefined {
  if (!fits) return 'does not limit the force there';
  const heeding = heedingOf(sensor);
  if (heeding === undefined) return 'is meant to, but the panel does not heed it';
  if (!reaches(sensor, leaf)) return 'is meant to, but reports to a panel that does not drive the leaf';
  if (missesPeople(sensor)) return missed(sensor);
  if (hazard.kind !== 'closing-edge' && !heeding.tested) return `is not tested before each movement: ${heeding.because}`;
  return hazard.movements.some((movement) => watches(sensor, movement)) ? undefined : `does not watch ${hazard.movements.join(' and ')}`;
}
