// What the papers say alike, whatever they are drawn or written on.
import type { Drive, Installation, Leaf } from '../model/index.ts';
import { isDraft } from '../safeguards/index.ts';
import { short } from './drawing/text.ts';
import { mostDrawn } from './scene/limit.ts';

/** Stands at the end of whatever a person reads that is worked out of a file: on papers, under findings and under figures. */
export const caution =
  'A figure is no test: measure forces on site. No finding does not mean safe. Isolate and lock off before a panel is opened. ' +
  'Local codes and licensed practice come first.';

/** Stands on every paper that somebody may take to the gate. */
export const drawingCaution = `This drawing takes the place of no maker’s instructions. ${caution}`;

/** What the site is called; the file's name where it has no title. A draft says so before anything else. */
export function siteTitle(installation: Installation): string {
  const { site, path } = installation;
  return `${isDraft(installation) ? 'DRAFT: ' : ''}${short(site?.title ?? path.slice(path.lastIndexOf('/') + 1))}`;
}

const kindWords = {
  'linear-ram': 'linear ram',
  'articulated-arm': 'articulated arm',
  direct: 'shaft at the hinge',
  rack: 'rack and pinion',
} as const;

/** What kind of drive it is. */
export function driveKind({ model }: Drive): string {
  const kind = model?.facts.kind?.value;
  return kind === undefined ? 'model not known' : kindWords[kind];
}

/** So many of a list in words as are drawn of it; of those beyond it is said how many there are. `count`: of how many `all` are the first. */
export function firstInWords<T>(
  all: readonly T[],
  kind: string,
  separator: string,
  words: (one: T) => string,
  count: number = all.length,
): string {
  const told = all.slice(0, mostDrawn).map(words).join(separator);
  return count > mostDrawn ? `${told}${separator}and ${count - mostDrawn} more ${kind}` : told;
}

export const drivenLeaves = ({ leaves }: Installation): Leaf[] => leaves.filter((leaf) => leaf.drives.length > 0);

/** Said in place of a drawing of what moves. */
export const nothingDriven = 'Nothing drives a leaf: state a drive that moves it, with its model.';

/** The same where the travel of these leaves cannot be followed. */
export const motionUnknown = (leaves: readonly Leaf[]): string =>
  `The motion of ${firstInWords(leaves, 'leaves', ' and ', (leaf) => short(leaf.name))} cannot be worked out: that takes how far the leaf opens, ` +
  'a drive model with its kind and speed, and the brackets of a ram or an arm that can make the whole travel.';
