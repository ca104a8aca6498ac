// What covers a hazard and what the rules find there, as one verdict: for plan, tree and whoever else shows it to people.
import type { HazardKind } from '../figures/hazards/working.ts';
import { headPlace, type Leaf } from '../model/index.ts';
import { type JudgedHazard, judgedHazardsOf } from '../safeguards/index.ts';
import type { Finding } from './rule.ts';

/** Findings that say of a hazard that what is there does not do. */
const against: Readonly<Record<HazardKind, readonly string[]>> = {
  'closing-edge': [
    'closing-edge-unguarded',
    'safeguarding-below-minimum',
    'auto-close-without-tested-sensors',
    'entrapment-protection-below-minimum',
    'edge-overtravel-too-long',
    'hold-to-run-misuse',
    'force-over-limit',
  ],
  hinge: ['hazard-uncovered'],
  underside: ['hazard-uncovered'],
  'opening-side': ['open-leaf-crushes'],
  'reach-through': ['hazard-uncovered'],
  'running-past': ['hazard-uncovered'],
};

/** Every hazard of a leaf as it is to be shown; `findings` are those of the rules, accepted ones too, as a reason makes no hazard safe. */
export const toldHazardsOf = (leaf: Leaf, findings: readonly Finding[]): readonly JudgedHazard[] =>
  (judgedHazardsOf(leaf) ?? none).map((judged) => told(leaf, judged, findings));

/** In two words at most; what is there and does not do is not enough. */
export function verdictOf({ covered, by, notBy }: JudgedHazard): 'covered' | 'not enough' | 'not covered' {
  if (covered) return 'covered';
  return notBy.length > 0 && (by.length > 0 || notBy.some(({ name }) => name === '')) ? 'not enough' : 'not covered';
}

/**
 * Nothing is shown as covered that a rule finds wanting; and where the rule on the room behind an open leaf is content with a
 * sensor that only sees people, so is what is shown.
 */
function told(leaf: Leaf, judged: JudgedHazard, findings: readonly Finding[]): JudgedHazard {
  const { hazard, covered } = judged;
  const found = findings.filter((finding) => against[hazard.kind].includes(finding.rule) && isAbout(finding, leaf));
  if (covered && (hazard.kind === 'closing-edge' || hazard.kind === 'opening-side') && found.length > 0)
    return {
      ...judged,
      covered: false,
      notBy: found.slice(0, 2).map(({ what, start, end }) => ({ name: '', says: what, at: { start, end } })),
    };
  if (!covered && hazard.kind === 'opening-side' && found.length === 0)
    return { ...judged, covered: true, by: [{ name: '', says: 'a sensor watches it while the leaf opens', at: headPlace(leaf) }] };
  return judged;
}

/** A finding in no leaf, as on the kind of control, is about all of them. */
function isAbout({ start, end, related }: Finding, leaf: Leaf): boolean {
  const within = (place: { readonly start: number; readonly end: number }): boolean =>
    place.start >= leaf.at.start && place.end <= leaf.at.end;
  return (
    within({ start, end }) ||
    related.some((each) => each.path === undefined && within(each)) ||
    !leaf.installation.leaves.some((other) => start >= other.at.start && end <= other.at.end)
  );
}

const none: readonly never[] = [];
