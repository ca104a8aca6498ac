import { isMains, upstreamOf } from '../../circuits/index.ts';
import { protectedBy } from '../../figures/loop-impedance/working.ts';
import { type Cable, factPlace } from '../../model/index.ts';
import { toFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted, written } from '../words.ts';

export const rule = installationRule({
  name: 'mains-circuit-unprotected',
  severity: 'error',
  title: 'A mains circuit has neither a breaker nor a fuse.',
  why: 'A fault to earth leaves metal live that people touch, and a short circuit or an overload burns the cable, until somebody notices.',
  remedy:
    'Fit a breaker or a fuse at the beginning of the cable, and state it with “breaker B 10 A” or “fuse 10 A” and what it is rated for.',
  source: { text: 'BS 7671, 411.3.2 and 430.3 (IEC 60364-4-41 and IEC 60364-4-43)', standing: 'published' },
  acceptable: false,
  check: ({ cables }, report) => {
    for (const cable of cables) {
      if (isMains(cable) !== true) continue;
      const { load } = cable;
      // Where the feed of its panel is not stated, what stands before this cable is not known.
      if (load !== undefined && load.kind !== 'panel' && upstreamOf(cable) === undefined) continue;
      const cables = protectedBy(cable);
      if (!cables.some(mayBeProtected)) report(unprotected(cable, cables));
    }
  },
});

/** True where a breaker or fuse is stated, or the line that states it may be one that could not be read. */
const mayBeProtected = ({ facts, unread }: Cable): boolean =>
  facts.breaker !== undefined || facts.fuse !== undefined || lost(unread, 'cable', 'breaker') || lost(unread, 'cable', 'fuse');

function unprotected(cable: Cable, cables: readonly Cable[]): Report {
  const residual = cables.find(({ facts }) => facts['residual-current'] !== undefined)?.facts['residual-current'];
  const what = `${quoted(cable.name)} is on the mains and has neither a breaker nor a fuse`;
  if (residual === undefined) return { at: factPlace(cable, cable.facts.carries), what: `${what}.` };
  return {
    at: factPlace(cable, cable.facts.carries),
    severity: 'warning',
    what: `${what}; a residual-current device of ${written(residual.line)} sees faults to earth only.`,
    why: 'A short circuit between the conductors, or an overload, is none of its business: the cable burns.',
    related: toFact('the residual-current device', residual),
  };
}
