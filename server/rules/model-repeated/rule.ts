import { problemRule } from '../rule.ts';
import { quoted, shortPath } from '../words.ts';

export const rule = problemRule({
  name: 'model-repeated',
  severity: 'error',
  title: 'Two files have a model of the same name.',
  why: 'Which of the two is meant depends on the order of the “use” lines, and they may differ in what they can do.',
  remedy: 'Give one of them another name, or use only one of the files.',
  acceptable: false,
  explain: ({ detail }) => ({
    what: `The ${detail.kind} ${quoted(detail.name)} is in ${quoted(shortPath(detail.second))} and also in ${quoted(shortPath(detail.first))}; the latter counts.`,
  }),
});
