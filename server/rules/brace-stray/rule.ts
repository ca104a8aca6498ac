import { without } from '../fixes.ts';
import { problemRule } from '../rule.ts';

export const rule = problemRule({
  name: 'brace-stray',
  severity: 'error',
  title: 'A closing brace closes nothing.',
  why: 'It most often means that a block was closed too early, or that its first line is gone, so lines near it may be read as part of nothing.',
  remedy: 'Remove the brace, or write the first line of the block that it was to close.',
  acceptable: false,
  explain: ({ start, end }, text) => {
    const many = end - start > 1;
    return {
      what: many ? 'These closing braces close nothing.' : 'This closing brace closes nothing.',
      fixes: [{ title: many ? 'Remove these braces' : 'Remove this brace', edits: [without(text, start, end)], safe: false }],
    };
  },
});
