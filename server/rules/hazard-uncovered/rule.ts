import { type Hazard, type HazardKind, leastGap, partsInWords } from '../../figures/hazards/working.ts';
import type { Source } from '../../figures/index.ts';
import { headPlace } from '../../model/index.ts';
import { judgedPlacesOf } from '../../safeguards/index.ts';
import { millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

type Judged = Exclude<HazardKind, 'closing-edge' | 'opening-side'>;

const gaps = 'EN ISO 13854 (minimum gaps); ASR A1.7, section 6 (gaps of up to 8 mm)';
const reach = 'EN ISO 13857, as reprinted in DGUV Information 208-022, Table 2';
const underGate: Source = { text: 'EN ISO 13854, applied to the gap under a leaf from memory', standing: 'from memory' };
const reachFrom3: Source = { text: 'EN ISO 13857 for persons of 3 years and above, from memory', standing: 'from memory' };

const sources: Readonly<Record<Judged, Source>> = {
  hinge: { text: gaps, standing: 'published' },
  underside: underGate,
  'reach-through': { text: reach, standing: 'published' },
  'running-past': {
    text: 'ASR A1.7, section 6 (secondary closing edges: more than 8 mm); BGR 232, section 4.5 (historic)',
    standing: 'published',
  },
};

const distances: Readonly<Record<Exclude<Judged, 'underside'>, string>> = {
  hinge: 'Make the gap one that stays closed (8 mm or less) or wide enough at every angle, or cover it and state “hinge-guard”',
  'reach-through': 'Keep more distance, or close the openings or make them smaller',
  'running-past': 'Keep 200 mm, or close the gap to 8 mm or less',
};

const devices: Readonly<Record<Judged, string>> = {
  hinge: 'a pressure-sensitive edge on “hinge-edge”',
  underside: 'a pressure-sensitive edge on “bottom-edge”',
  'reach-through': 'a pressure-sensitive edge on “post-edge”',
  'running-past': 'a pressure-sensitive edge on “post-edge”',
};

const reasons: Readonly<Record<Judged, string>> = {
  hinge:
    'Near the hinge the drive pushes many times harder than at the edge, and a leaf that catches a hand there does not notice it; a child has been trapped at deep pillars.',
  underside: 'The leaf sweeps over whoever stands in its way, and a foot that is under it stays there.',
  'reach-through': 'A hand or an arm that is put through the leaf is taken along and sheared off at the edge that does not move.',
  'running-past': 'Clothing, an arm or a head beside the leaf is taken along and pressed into a gap that gets no wider.',
};

export const rule = installationRule({
  name: 'hazard-uncovered',
  severity: 'error',
  title: 'A gap that the moving leaf makes crushes, shears or draws in, and nothing covers it.',
  why: 'The devices on the closing edge feel nothing of a person who is caught elsewhere, and the leaf moves on; children have been trapped in such gaps.',
  remedy: 'Remove the gap by distance or shape, detect whoever is in it, or let the gate move only while a control in full view is held.',
  source: { text: `${gaps}; ${reach}`, standing: 'published' },
  acceptable: false,
  check: ({ leaves, site }, report) => {
    for (const leaf of leaves)
      for (const judged of judgedPlacesOf(leaf) ?? none) {
        const { hazard } = judged;
        // These two have rules of their own.
        if (judged.covered || hazard.kind === 'closing-edge' || hazard.kind === 'opening-side') continue;
        const memory = hazard.standing === 'from memory';
        report({
          at: headPlace(leaf),
          severity: hazard.grade,
          what: `${quoted(leaf.name)}: between ${said(hazard)}${memory ? ' (from memory)' : ''}, and nothing covers it while ${judged.open.join(' or ')}.`,
          why: reasons[hazard.kind],
          remedy: `${distanceFor(hazard)}; or fit ${devices[hazard.kind]}, or presence detection that lets the leaf touch nobody there, as its “guards” says; or let the gate move only while a control in full view is held.`,
          source: memory
            ? hazard.kind === 'underside'
              ? underGate
              : reachFrom3
            : hazard.kind === 'underside'
              ? sources.hinge
              : sources[hazard.kind],
          related: [
            ...(hazard.at === undefined ? none : [{ message: 'it follows from this', start: hazard.at.start, end: hazard.at.end }]),
            ...(hazard.byUsers ? toFact('who may be near', site?.facts.users) : none),
            ...judged.notBy.map(({ name, says, at }): Related => ({ message: `${quoted(name)} ${says}`, ...at })),
          ],
        });
      }
  },
});

/** What distance would do. */
function distanceFor({ kind, enough }: Hazard): string {
  return kind === 'underside'
    ? `Leave ${millimetres(enough ?? leastGap.foot)}, or less than 8 mm, everywhere on the way`
    : distances[kind as Exclude<Judged, 'underside'>];
}

/** “the leaf and its post the gap shrinks to 12 mm (60 mm at its widest) and catches a hand”. */
function said({ kind, where, least, greatest, parts, enough }: Hazard): string {
  const caught = partsInWords(parts);
  switch (kind) {
    case 'reach-through':
      return `the ${where} there are ${millimetres(least)}, where ${enough === undefined ? 'so large an opening needs far more' : `${millimetres(enough)} are needed`}: it shears ${caught}`;
    case 'running-past':
      return `the ${where} there are ${millimetres(least)}, which draws in ${caught}`;
    case 'underside':
      return `the ${where} there are ${millimetres(least)}${greatest - least < 0.001 ? '' : ` to ${millimetres(greatest)}`}, which catches ${caught}`;
    default:
      return `the ${where}, the gap shrinks from ${millimetres(greatest)} to ${millimetres(least)} and catches ${caught}`;
  }
}

const none: readonly never[] = [];
