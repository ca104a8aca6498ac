import { overlapFaultOf } from '../../figures/least-lag/working.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { degrees, millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
import { blockLost } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'overlap-cannot-work',
  severity: 'error',
  title: 'Two leaves are said to overlap that cannot pass each other.',
  why: 'A leaf that covers another opens first and closes last. Where it cannot, the leaves press against each other with their drives, or one strikes the other where nobody expects it.',
  remedy: 'Let both leaves open to the same side and far enough, each by a drive of its own, or take the overlap out.',
  source: { text: 'plane geometry of the overlap', standing: 'derived' },
  acceptable: false,
  check: (installation, report) => {
    for (const covering of installation.leaves) {
      const { covers: covered } = covering;
      const said = covered === undefined ? undefined : faultIn(covering, covered);
      if (said !== undefined) report({ at: factPlace(covering, covering.facts.closes), ...said });
    }
  },
});

function faultIn(covering: Leaf, covered: Leaf): Omit<Report, 'at'> | undefined {
  const [one, other] = [quoted(covering.name), quoted(covered.name)];
  const fault = overlapFaultOf(covering, covered);
  switch (fault?.kind) {
    case 'one slides':
      return {
        what: `${one} covers ${other}, but one of them swings and the other slides.`,
        related: [...toFact('how it opens', fault.swings), ...toFact('how it opens', fault.slides)],
      };
    case 'two sides':
      return {
        what: `${one} covers ${other}, but one opens inward and the other outward: on one side the overlap holds neither, on the other it blocks both.`,
        related: [...toFact('how it opens', covering.facts.opens), ...toFact('how it opens', covered.facts.opens)],
      };
    case 'too wide':
      return {
        what: `The overlap of ${millimetres(fault.overlap)} is as wide as all of ${other}, or wider.`,
        related: toFact('its width', covered.facts.width),
      };
    case 'in the way':
      return {
        what: `${other} cannot get past ${one}: that would have to open by ${degrees(fault.needed)} and opens by ${degrees(fault.opens)}.`,
        related: toFact('how far it opens', covering.facts.opens),
      };
    case undefined:
      return isStill(covering) && covered.drives.length > 0
        ? {
            what: `${one} covers ${other} and must open first, but no drive moves it: the drive of ${other} pushes against it.`,
            related: toFact('the drive that pushes', covered.drives[0]?.facts.moves),
          }
        : undefined;
  }
}

/** True where it is certain that no drive moves the leaf: none that does not say what it moves could be its own. */
const isStill = ({ drives, installation }: Leaf): boolean =>
  drives.length === 0 && !blockLost(installation, 'drive') && installation.drives.every(({ leaf }) => leaf !== undefined);
