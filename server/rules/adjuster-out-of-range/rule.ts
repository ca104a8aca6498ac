import { settingsOf } from '../../figures/adjuster/working.ts';
import { headPlace } from '../../model/index.ts';
import { shown } from '../numbers.ts';
import { toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'adjuster-out-of-range',
  severity: 'error',
  title: 'The motion asks for a value that the panel’s adjuster does not have.',
  why: 'Whoever sets the panel has to guess, and what the file says is then not what the gate does.',
  remedy: 'Ask for a value inside the range, or choose another panel.',
  source: { text: 'the range that the panel’s model states', standing: 'derived' },
  acceptable: false,
  check: (installation, report) => {
    for (const { position, adjuster, panel, value, line } of settingsOf(installation)) {
      const range = adjuster.facts.range?.value;
      if (position !== undefined || range === undefined) continue;
      const say = (amount: number): string => (range.dimension === 'time' ? `${shown(amount)} s` : `${shown(amount * 100)} %`);
      report({
        at: line,
        what: `The motion asks for ${say(value)}, but ${quoted(adjuster.name)} of ${quoted(panel.name)} goes from ${say(range.low)} to ${say(range.high)}${range.low === 0 && adjuster.facts.curve?.value === 'logarithmic' ? ', and a logarithmic range cannot start at 0' : ''}.`,
        related: [
          { message: 'the panel', ...headPlace(panel) },
          ...toModelFact('the adjuster', installation, panel.model, { line: headPlace(adjuster) }),
        ],
      });
    }
  },
});
