// What measured forces prove of a leaf.
import { forceRecordsOf } from '../figures/force-records/working.ts';
import { type Leaf, regimeOf } from '../model/index.ts';

/**
 * True when the drive limits its own force and measured forces show that the closing edge keeps to the limits of EN 12453:
 * complete, within the limits, with a calibrated instrument. That is force limitation (C) without an edge. Of a drive that
 * has no limit of its own the records show what an edge did on that day, and taking the edge away would leave nothing; other
 * bodies of rules do not count records at all.
 */
export function forcesProven(leaf: Leaf): boolean {
  return countsRecords(leaf) && forceRecordsOf(leaf)?.closingProven === true;
}

/** The same for the opening movement: whoever is pressed against what stands behind the leaf is pressed no harder than the limits allow. */
export function openingForcesProven(leaf: Leaf): boolean {
  return countsRecords(leaf) && forceRecordsOf(leaf)?.openingProven === true;
}

const countsRecords = (leaf: Leaf): boolean => leaf.forces.length > 0 && regimeOf(leaf.installation).limitsForces && limitsForce(leaf);

const limitsForce = (leaf: Leaf): boolean =>
  leaf.drives.length > 0 &&
  leaf.drives.every(({ model }) => model?.facts['limits-force'] !== undefined || model?.facts['senses-obstacles'] !== undefined);

/**
 * True when the own sensing of the drives, proven by their maker, limits the force: it is at work in every movement. Of a leaf that has
 * one.
 */
export const limitsItself = (leaf: Leaf): boolean => leaf.drives.every((drive) => drive.model?.facts['senses-obstacles'] !== undefined);
