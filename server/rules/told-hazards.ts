// What covers a hazard and what the rules find there, as one verdict: for plan, tree and whoever else shows it to people.
import { firstIndex } from '../../grammar/index.ts';
import type { HazardKind } from '../figures/hazards/working.ts';
import { headPlace, type Installation, type Leaf } from '../model/index.ts';
import { type JudgedHazard, judgedHazardsOf } from '../safeguards/index.ts';
import type { Finding } from './rule.ts';

/** Findings that say of a hazard that what is there does not do. */
const against: Readonly<Record<HazardKind, readonly string[]>> = {
  'closing-edge': [
    'closing-edge-unguarded',
    'safeguarding-below-minimum',
    'protection-untested',
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
const kindsAgainst = new Map<string, HazardKind[]>();
for (const [kind, rules] of Object.entries(against) as [HazardKind, readonly string[]][])
  for (const rule of rules) kindsAgainst.set(rule, [...(kindsAgainst.get(rule) ?? []), kind]);

/** Of the findings that are against a hazard so many are told. */
const mostTold = 2;

/** Findings by their number, the first `mostTold` of each kind of hazard. */
type Against = Map<HazardKind, number[]>;

/**
 * Tells every hazard of a leaf as it is to be shown; `findings` are those of the rules, accepted ones too, as a reason makes no hazard
 * safe. They are gone through once, for all leaves.
 */
export function tellerOfHazards(installation: Installation, findings: readonly Finding[]): (leaf: Leaf) => readonly JudgedHazard[] {
  const byLeaf = new Map<Leaf, Against>();
  const everywhere: Against = new Map();
  for (const [number, finding] of findings.entries()) {
    const kinds = kindsAgainst.get(finding.rule);
    if (kinds === undefined) continue;
    const own = leafAround(installation, finding);
    // A finding in no leaf, as on the kind of control, is about all of them.
    if (own === undefined) note(everywhere, kinds, number);
    else note(againstOf(byLeaf, own), kinds, number);
    for (const place of finding.related) {
      const leaf = place.path === undefined ? leafAround(installation, place) : undefined;
      if (leaf !== undefined) note(againstOf(byLeaf, leaf), kinds, number);
    }
  }
  return (leaf) =>
    (judgedHazardsOf(leaf) ?? none).map((judged) => {
      const { kind } = judged.hazard;
      const numbers = new Set([...(byLeaf.get(leaf)?.get(kind) ?? none), ...(everywhere.get(kind) ?? none)]);
      const first = [...numbers].sort((a, b) => a - b).slice(0, mostTold);
      return told(
        leaf,
        judged,
        first.map((number) => findings[number] as Finding),
      );
    });
}

function againstOf(byLeaf: Map<Leaf, Against>, leaf: Leaf): Against {
  let own = byLeaf.get(leaf);
  if (own === undefined) byLeaf.set(leaf, (own = new Map()));
  return own;
}

function note(own: Against, kinds: readonly HazardKind[], number: number): void {
  for (const kind of kinds) {
    const numbers = own.get(kind);
    if (numbers === undefined) own.set(kind, [number]);
    else if (numbers.length < mostTold && numbers[numbers.length - 1] !== number) numbers.push(number);
  }
}

/** The leaf in whose block a place lies. Leaves stand in the order of the text, and none within another. */
function leafAround({ leaves }: Installation, { start, end }: Stretch): Leaf | undefined {
  const leaf = leaves[firstIndex(leaves, ({ at }) => at.start > start) - 1];
  return leaf !== undefined && end <= leaf.at.end ? leaf : undefined;
}

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** In two words at most; what is there and does not do is not enough. */
export function verdictOf({ covered, by, notBy }: JudgedHazard): 'covered' | 'not enough' | 'not covered' {
  if (covered) return 'covered';
  return notBy.length > 0 && (by.length > 0 || notBy.some(({ name }) => name === '')) ? 'not enough' : 'not covered';
}

/**
 * Nothing is shown as covered that a rule finds wanting; and where the rule on the room behind an open leaf is content with a
 * sensor that only sees people, so is what is shown. `found`: what the rules find against the hazard.
 */
function told(leaf: Leaf, judged: JudgedHazard, found: readonly Finding[]): JudgedHazard {
  const { hazard, covered } = judged;
  if (covered && (hazard.kind === 'closing-edge' || hazard.kind === 'opening-side') && found.length > 0)
    return {
      ...judged,
      covered: false,
      notBy: found.map(({ what, start, end }) => ({ name: '', says: what, at: { start, end } })),
    };
  if (!covered && hazard.kind === 'opening-side' && found.length === 0)
    return { ...judged, covered: true, by: [{ name: '', says: 'a sensor watches it while the leaf opens', at: headPlace(leaf) }] };
  return judged;
}

const none: readonly never[] = [];
