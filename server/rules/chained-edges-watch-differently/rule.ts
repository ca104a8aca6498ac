import { headPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'chained-edges-watch-differently',
  severity: 'error',
  title: 'Two edges of one chain are meant to watch different movements.',
  why: 'A chain ends at one input of the panel, which cannot tell the edges apart: what it heeds in one movement only leaves the other edge without effect.',
  remedy: 'Wire the edges to inputs of their own, or let both watch every movement that the input stops.',
  source: commonPractice,
  acceptable: false,
  check: ({ sensors }, report) => {
    for (const sensor of sensors) {
      const { next } = sensor;
      if (next === undefined) continue;
      const own = sensor.facts.watches;
      const other = next.facts.watches;
      if (own === undefined || other === undefined || isSame(own.movements, other.movements)) continue;
      const chain = sensor.facts['chains-into']?.line ?? headPlace(sensor);
      report({
        at: own.line,
        what: `${quoted(sensor.name)} watches ${own.movements.join(' and ')}, and is chained into ${quoted(next.name)}, which watches ${other.movements.join(' and ')}.`,
        related: [
          { message: 'the chain', start: chain.start, end: chain.end },
          { message: 'what the other edge watches', start: other.line.start, end: other.line.end },
        ],
      });
    }
  },
});

const isSame = (some: readonly string[], others: readonly string[]): boolean =>
  some.every((one) => others.includes(one)) && others.every((one) => some.includes(one));
