import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** The least performance level of what protects people at a gate. */
const least = 'c';

export const rule = installationRule({
  name: 'required-level-below-standard',
  severity: 'error',
  title: 'A lower performance level is asked for than the standard for gates asks for.',
  why: 'Every function is then held against too little, and one that fails too often looks as if it did.',
  remedy: 'Ask for PL c at least; where the risk assessment asks for more, for that.',
  source: { text: 'EN 12453:2017, 5.1.2', standing: 'published' },
  acceptable: false,
  check: ({ site, functions }, report) => {
    if (site?.facts.rules?.value !== 'europe') return;
    const ofSite = site.facts['required-level'];
    if (ofSite !== undefined && ofSite.value < least)
      report({
        at: ofSite.line,
        what: `The site asks for PL ${ofSite.value} only; what protects people at a gate needs PL ${least} at least.`,
      });
    for (const of of functions) {
      const level = of.facts['required-level'];
      if (level !== undefined && level.value < least)
        report({
          at: level.line,
          what: `The function ${quoted(of.name)} asks for PL ${level.value} only; at a gate PL ${least} is the least.`,
        });
    }
  },
});
