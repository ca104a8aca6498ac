// The colours of the tree-sitter grammar. Its shape is written by hand (grammar/tree-sitter/grammar.js); what a word is, the
// vocabulary says. No two patterns name the same place, so that it does not matter whether the first or the last one wins.
import { blockWords, type LineGroup, lineGroups, unitNames } from './generated-words.ts';

const list = (words: Iterable<string>): string =>
  [...new Set(words)]
    .sort()
    .map((word) => JSON.stringify(word))
    .join(' ');

const pattern = (shape: string, ...predicates: readonly string[]): string =>
  `(${shape}\n${predicates.map((predicate) => `  (${predicate})`).join('\n')})`;

type Capture = '@keyword.operator' | '@constant.builtin';

export function treeSitterHighlights(): string {
  const { named, nameless } = blockWords();
  const groups = lineGroups();
  const units = new Set(unitNames());
  const facts = groups.filter((group) => group.kind === 'fact').flatMap((group) => group.words);
  const control = groups.filter((group) => group.kind === 'control').flatMap((group) => group.words);

  // Editors follow some 256 beginnings of patterns at a time and forget the rest, and each pattern that looks at the first word
  // of a line begins with every word behind it. So lines without names share one: there, a word of another line is a mistake
  // anyway. Lines with names have their own: a sensor may be called like a word of another line.
  const wordsIn = ({ keywords, choices }: LineGroup, capture: Capture): string[] =>
    capture === '@keyword.operator' ? [...keywords] : [...choices].filter((word) => !keywords.has(word));
  const shared = groups.filter((group) => !group.hasNames);
  const isBoth = (word: string): boolean =>
    shared.some((group) => group.keywords.has(word)) && shared.some((group) => group.choices.has(word) && !group.keywords.has(word));
  const inLine = (lines: readonly string[], words: readonly string[], capture: Capture, shape = `(word) ${capture}`): string[] =>
    words.length === 0
      ? []
      : [pattern(`(line word: (word) @_line ${shape})`, `#any-of? @_line ${list(lines)}`, `#any-of? ${capture} ${list(words)}`)];
  const patternsOf = (capture: Capture): string[] => {
    const having = shared.filter((group) => wordsIn(group, capture).length > 0);
    const both = groups.flatMap((group) => wordsIn(group, capture).filter((word) => !units.has(word)));
    return [
      ...inLine(
        having.flatMap((group) => group.words),
        having.flatMap((group) => wordsIn(group, capture).filter((word) => !isBoth(word))),
        capture,
      ),
      ...having.flatMap((group) => inLine(group.words, wordsIn(group, capture).filter(isBoth), capture)),
      ...groups.filter((group) => group.hasNames).flatMap((group) => inLine(group.words, wordsIn(group, capture), capture)),
      // Behind a number, where it is not its unit. No name stands there.
      ...inLine(
        groups.flatMap((group) => (wordsIn(group, capture).length > 0 ? group.words : [])),
        both.filter((word) => !bothKinds.has(word)),
        capture,
        `(number unit: (word) ${capture})`,
      ),
      ...groups.flatMap((group) =>
        inLine(
          group.words,
          wordsIn(group, capture).filter((word) => bothKinds.has(word) && !units.has(word)),
          capture,
          `(number unit: (word) ${capture})`,
        ),
      ),
    ];
  };
  const bothKinds = new Set(
    groups
      .flatMap((group) => wordsIn(group, '@keyword.operator'))
      .filter((word) => groups.some((group) => wordsIn(group, '@constant.builtin').includes(word))),
  );

  return [
    '; Generated from the vocabulary by `npm run generate`. Do not edit.',
    '(comment) @comment',
    '(text) @string',
    '(escape) @string.escape',
    '(date) @constant',
    '(figure) @number',
    pattern('(number unit: (word) @number.unit)', `#any-of? @number.unit ${list(units)}`),
    '[(tolerance) (range)] @operator',
    '["{" "}"] @punctuation.bracket',
    '[":" ","] @punctuation.delimiter',
    '(model name: (word) @type)',
    pattern('(line word: (word) @keyword)', `#any-of? @keyword ${list([...named, ...nameless])}`),
    pattern('(line word: (word) @_line . (word) @type)', `#any-of? @_line ${list(named)}`),
    pattern('(line word: (word) @keyword.directive)', `#any-of? @keyword.directive ${list(control)}`),
    pattern('(line word: (word) @property)', `#any-of? @property ${list(facts)}`),
    ...patternsOf('@keyword.operator'),
    ...patternsOf('@constant.builtin'),
    '',
  ].join('\n\n');
}
