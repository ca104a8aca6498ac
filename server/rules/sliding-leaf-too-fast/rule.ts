import { edgeSpeedsOf } from '../../figures/edge-speed/working.ts';
import { type Installation, regimeOf } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** 1 ft/s in m/s. Source: UL 325, as quoted in DASMA TDS 353. */
const most = 0.3048;
const held = { figure: 'leaf.NAME.edge-speed', name: 'edge speed', unit: 'm/s', way: 'most' } as const;

/** The usage class under which it holds; undefined where it does not. */
function usageOf(installation: Installation) {
  const usage = regimeOf(installation).hasUsageClass ? installation.site?.facts['usage-class'] : undefined;
  return usage?.value === 'I' || usage?.value === 'II' ? usage : undefined;
}

export const rule = installationRule({
  name: 'sliding-leaf-too-fast',
  severity: 'error',
  title: 'Under the rules of North America, a sliding leaf of usage class I or II moves faster than 1 ft/s.',
  why: 'Where families and the public pass, a faster leaf reaches people before they can step aside and strikes them harder.',
  remedy: 'Lower the speed to 1 ft/s (0.3048 m/s) or choose a slower drive.',
  source: { text: 'UL 325 (2018 rules), as quoted in DASMA TDS 353', standing: 'published' },
  acceptable: false,
  holds: (installation, hold) => {
    const usage = usageOf(installation);
    if (usage === undefined) return;
    for (const leaf of installation.leaves) {
      const { slides } = leaf.facts;
      const edge = edgeSpeedsOf(leaf)?.edge;
      if (slides === undefined || edge === undefined) continue;
      hold(bound(held, leaf.name, edge, most, 1e-6), slides.line, () => ({
        what: `${quoted(leaf.name)} slides at ${shown(edge)} m/s; in usage class ${usage.value} 0.3048 m/s (1 ft/s) is the most.`,
        related: toFact('this usage class', usage),
      }));
    }
  },
});
