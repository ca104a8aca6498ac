import { edgeSpeedsOf } from '../../figures/edge-speed/figure.ts';
import { factPlace } from '../../model/index.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** 1 ft/s in m/s. */
const most = 0.3048;

export const rule = installationRule({
  name: 'sliding-leaf-too-fast',
  severity: 'error',
  title: 'Under the rules of North America, a sliding leaf of usage class I or II moves faster than 1 ft/s.',
  why: 'Where families and the public pass, a faster leaf reaches people before they can step aside and strikes them harder.',
  remedy: 'Lower the speed to 1 ft/s (0.3048 m/s) or choose a slower drive.',
  source: { text: 'UL 325 (2018 rules), as quoted in DASMA TDS 353', standing: 'published' },
  acceptable: false,
  check: ({ site, leaves }, report) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    const usage = site.facts['usage-class'];
    if (usage?.value !== 'I' && usage?.value !== 'II') return;
    for (const leaf of leaves) {
      const edge = leaf.facts.slides === undefined ? undefined : edgeSpeedsOf(leaf)?.edge;
      if (edge === undefined || edge <= most + 1e-6) continue;
      report({
        at: factPlace(leaf, leaf.facts.slides),
        what: `“${leaf.name}” slides at ${shown(edge)} m/s; in usage class ${usage.value} 0.3048 m/s (1 ft/s) is the most.`,
        related: [{ message: 'this usage class', start: usage.line.start, end: usage.line.end }],
      });
    }
  },
});
