import { toFact } from '../related.ts';
import { installationRule, ofTheLanguage } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'leaf-swings-and-slides',
  severity: 'error',
  title: 'A leaf is said both to swing and to slide.',
  why: 'It can do one of them only. Places that crush, speeds and times are worked out for the other one, and what is found to be safe is not this gate.',
  remedy: 'Keep “opens” for a leaf on hinges, or “slides” for one on rollers.',
  source: ofTheLanguage,
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const { opens, slides } = leaf.facts;
      if (opens === undefined || slides === undefined) continue;
      const [first, second] = opens.line.start < slides.line.start ? [opens, slides] : [slides, opens];
      report({
        at: second.line,
        what: `${quoted(leaf.name)} is said to swing and to slide.`,
        related: toFact('it says the other here', first),
      });
    }
  },
});
