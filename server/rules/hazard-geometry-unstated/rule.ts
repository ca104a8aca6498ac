import { hazardsOf } from '../../figures/hazards/working.ts';
import { headPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'hazard-geometry-unstated',
  severity: 'note',
  title: 'What is stated of a leaf does not show every place at which it can hurt somebody.',
  why: 'A gap that is not stated is not judged; no finding about it does not mean that it is safe.',
  remedy: 'Measure it at the closed gate and write it into the leaf.',
  source: commonPractice,
  acceptable: true,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const unstated = hazardsOf(leaf)?.unstated;
      if (unstated === undefined || unstated.length === 0) continue;
      // Found at nearly every site: so in one walk.
      const lacks: string[] = [];
      let all = '';
      for (const { about, facts } of unstated) {
        lacks.push(...facts);
        all += `${all === '' ? '' : '; '}${about} (${facts.join(', ')})`;
      }
      report({ at: headPlace(leaf), lacks, what: `Of ${quoted(leaf.name)} this is not judged: ${all}.` });
    }
  },
});
