import { parse, print } from '../../../grammar/index.ts';
import { without } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'fact-repeated',
  severity: 'error',
  title: 'The same fact stands twice.',
  why: 'Only the first one counts; whoever reads the second is misled.',
  remedy: 'Remove the one that does not hold.',
  acceptable: false,
  explain: ({ detail, start, end, related }, text) => {
    const first = related?.[0];
    const line = text.slice(start, end);
    const same = first !== undefined && canonical(text.slice(first.start, first.end)) === canonical(line);
    const oneLine = !/[{}\r\n]/.test(line);
    // Only a line goes: of two blocks, each may say something that the other does not.
    const isLine = line !== detail.word || /^[ \t]*(?:#|[\r\n]|$)/.test(text.slice(end));
    return {
      what: `${quoted(detail.word)} is stated twice${same && isLine ? ' with the same values' : ''}; only the first one counts.`,
      unnecessary: same && isLine && oneLine,
      fixes: oneLine && isLine ? [{ title: 'Remove this line', edits: [without(text, start, end)], safe: same }] : [],
    };
  },
});

/** How a line is laid out makes it no other. */
const canonical = (line: string): string => print(parse(line));
