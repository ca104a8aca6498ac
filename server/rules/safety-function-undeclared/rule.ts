import { chainOf, type Lack } from '../../figures/safety-function/working.ts';
import { headPlace } from '../../model/index.ts';
import { installationRule, ofTheLanguage } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'safety-function-undeclared',
  severity: 'note',
  title: 'A safety function cannot be worked out, because something of its parts is not stated.',
  why: 'Whether it reaches its level is then not known, and nothing is said about it.',
  remedy: 'Ask the maker of the part for its numbers, and write them into its model.',
  source: ofTheLanguage,
  acceptable: true,
  check: ({ functions }, report) => {
    for (const of of functions) {
      const { lacks } = chainOf(of);
      const first = lacks[0];
      // What cannot be read or found was reported where it stands.
      if (first === undefined || of.unread.length > 0 || lacks.some(({ says }) => says === '')) continue;
      const more = lacks.length - 1;
      report({
        at: headPlace(of),
        what: `The function ${quoted(of.name)} is not worked out: ${sentence(first)}${more === 0 ? '' : more === 1 ? ', and one thing more is missing' : `, and ${more} things more are missing`}.`,
        related: lacks.map((lack) => ({ message: sentence(lack), start: lack.at.start, end: lack.at.end })),
      });
    }
  },
});

const sentence = ({ what, says }: Lack): string => (what === '' ? says : `${quoted(what)} ${says}`);
