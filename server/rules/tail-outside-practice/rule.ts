import { balanceOf } from '../../figures/cantilever/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const least = 0.3;
const most = 0.5;
const says = (share: number): string => `${shown(share * 100)} %`;
const held = {
  least: { figure: 'leaf.NAME.tail-share', name: 'tail', unit: '1', way: 'least', says },
  most: { figure: 'leaf.NAME.tail-share', name: 'tail', unit: '1', way: 'most', says },
} as const;

export const rule = installationRule({
  name: 'tail-outside-practice',
  severity: 'warning',
  title: 'The tail of a leaf without a track is shorter or longer than is usual.',
  why: 'With a short tail the rollers carry several times the weight, and the free end drops and swings; a long one costs room behind the opening and gains little.',
  remedy: 'Make the tail 30 to 50 % of the leaf, 40 % as a rule, the more the heavier or windier; or accept it with the reason.',
  source: commonPractice,
  acceptable: true,
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const share = balanceOf(leaf)?.share;
      if (share === undefined) continue;
      const say = () => ({ what: `The tail of ${quoted(leaf.name)} is ${says(share)} of the leaf; 30 to 50 % is usual.` });
      hold(bound(held.least, leaf.name, share, least, 1e-9), factPlace(leaf, leaf.facts.tail), say);
      hold(bound(held.most, leaf.name, share, most, 1e-9), factPlace(leaf, leaf.facts.tail), say);
    }
  },
});
