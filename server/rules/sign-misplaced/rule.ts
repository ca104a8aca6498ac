import { lineStartOf } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'sign-misplaced',
  severity: 'error',
  title: 'A colon, a “±” or a “..” stands where it means nothing.',
  why: 'The sign is left out when the file is read, so the line may say something else than was meant.',
  remedy: 'Remove the sign, or write behind it what belongs there.',
  acceptable: false,
  explain: ({ detail, start, end }, text) => {
    const sign = detail.found;
    if (sign === ':') {
      // `width: 2 m`, as other languages write it: the colon says nothing that the line does not say without it.
      const value = /^([ \t]*)["\d]/.exec(text.slice(end, end + 20));
      const isPlain = value !== null && /^[ \t]*[\p{L}-]+$/u.test(text.slice(lineStartOf(text, start), start));
      return {
        what: 'A colon stands here and no name of a model follows it.',
        remedy: 'Write the name of the model behind the colon, or remove the colon: values follow their word without one.',
        // `width:2 m` needs a blank in its place.
        fixes: isPlain ? [{ title: 'Remove the colon', edits: [{ start, end, text: value[1] === '' ? ' ' : '' }], safe: true }] : [],
      };
    }
    if (sign === '±' || sign === '+-')
      return {
        what: `${quoted(sign)} stands here and is not between a quantity and its tolerance.`,
        remedy: 'Write it between a quantity and its tolerance, as in “8.2 kohm ± 5 %”.',
      };
    if (sign === '..' || sign === '...')
      return {
        what: `${quoted(sign)} stands here and is not between the two ends of a range.`,
        remedy: 'Write it between the two ends of a range, as in “2 s .. 120 s”.',
      };
    return { what: sign === '' ? 'Something stands here that does not fit.' : `${quoted(sign)} stands here and means nothing.` };
  },
});
