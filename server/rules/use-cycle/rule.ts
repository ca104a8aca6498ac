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
    const { chain } = detail;
    const last = chain.slice(-1);
    const names = (chain.length > most ? [...chain.slice(0, 4), '…', ...last] : chain).map((path) => quoted(shortPath(path)));
    if (chain.at(-2) === last[0]) return { what: `The file ${names.at(-1)} uses itself.` };
    return { what: `Files use each other in a circle: ${names[0]} uses ${names.slice(1).join(', which uses ')}.` };
  },
});

/** More files than this are not all named. */
const most = 6;
