import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'overlap-circular',
  severity: 'error',
  title: 'Leaves cover each other, or a leaf covers itself.',
  why: 'Of leaves that cover each other, none can open first.',
  remedy: 'Say at one leaf only which other leaf it covers.',
  acceptable: false,
  explain: ({ detail }) => {
    const [leaf, other] = [quoted(detail.leaf), quoted(detail.other)];
    if (detail.ring)
      return {
        what: `The leaf ${leaf} closes onto ${other}, which by way of others closes onto ${leaf} again.`,
        remedy: `Remove “closes” from the leaf that closes first.`,
      };
    return leaf === other
      ? { what: `The leaf ${leaf} is said to close onto itself.`, remedy: 'Write the name of the leaf that it covers.' }
      : {
          what: `The leaf ${leaf} closes onto ${other}, and ${other} closes onto ${leaf}.`,
          remedy: `Remove “closes” from the leaf that closes first.`,
        };
  },
});
