import { problemRule } from '../rule.ts';
import { quoted, shortPath } from '../words.ts';

export const rule = problemRule({
  name: 'use-cycle',
  severity: 'warning',
  title: 'Files use each other in a circle.',
  why: 'Nobody can read one of them first, and a change of one is a change of all.',
  remedy: 'Move what they share into a file that uses none of them.',
  acceptable: true,
  explain: ({ detail }) => {
    const chain = (detail['chain'] ?? '').split('\n').map(shortPath);
    const shown = chain.length > 6 ? [...chain.slice(0, 4), '…', ...chain.slice(-1)] : chain;
    return {
      what: chain.length === 2 && chain[0] === chain[1] ? `The file ${quoted(chain[0] ?? '')} uses itself.` : `Files use each other in a circle: ${shown.map(quoted).join(', which uses ').replace(', which', '')}.`,
    };
  },
});
