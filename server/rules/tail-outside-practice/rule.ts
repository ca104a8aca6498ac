import { balanceOf } from '../../figures/cantilever/figure.ts';
import { factPlace } from '../../model/index.ts';
import { shown } from '../numbers.ts';
import { commonPractice, installationRule } from '../rule.ts';

const least = 0.3;
const most = 0.5;

export const rule = installationRule({
  name: 'tail-outside-practice',
  severity: 'warning',
  title: 'The tail of a leaf without a track is shorter or longer than is usual.',
  why: 'With a short tail the rollers carry several times the weight, and the free end drops and swings; a long one costs room behind the opening and gains little.',
  remedy: 'Make the tail 30 to 50 % of the leaf, 40 % as a rule, the more the heavier or windier; or accept it with the reason.',
  source: commonPractice,
  acceptable: true,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const balance = balanceOf(leaf);
      if (balance === undefined || (balance.share >= least - 1e-9 && balance.share <= most + 1e-9)) continue;
      report({ at: factPlace(leaf, leaf.facts.tail), what: `The tail of “${leaf.name}” is ${shown(balance.share * 100)} % of the leaf; 30 to 50 % is usual.` });
    }
  },
});
