// The TextMate grammar. It finds the same tokens as grammar/tokens.ts, and knows which words may stand in which line.
// No pattern reaches past the end of its line, so a line being typed changes no colour below it.
import { unseenRanges } from '../../grammar/index.ts';
import { blockWords, lineGroups, unitNames } from './generated-words.ts';

const hex = (code: number): string => `\\x{${code.toString(16).toUpperCase().padStart(2, '0')}}`;

/** Characters between tokens, and characters that are refused, as ranges of a character class. */
const blank = '\\x{09}\\x{0B}\\x{0C}\\x{20}\\x{A0}\\x{1680}\\x{2000}-\\x{200A}\\x{202F}\\x{205F}\\x{3000}';
/** Those that show nothing: inside a word they are passed over. */
const unseen = unseenRanges.map(([from, to]) => (from === to ? hex(from) : `${hex(from)}-${hex(to)}`)).join('');
const control = '\\x{00}-\\x{08}\\x{0E}-\\x{1F}\\x{7F}-\\x{9F}\\x{2028}\\x{2029}\\x{FFFE}\\x{FFFF}';
const signs = '{}":,#±';

/** What no word holds, but for what cannot be seen. */
const outside = `${blank}${control}${signs}\\r\\n`;
const inWord = `[^${outside}${unseen}]`;
/** What may follow a whole word: anything but more of it. Two dots end a word. */
const wordEnd = `(?=[${unseen}]*(?:\\.\\.|\\+-|[${outside}]|$))`;
const word = `(?![0-9]|[+\\-\\x{2212}][0-9]|\\.\\.|\\+-)${inWord}(?:(?!\\.\\.|\\+-)${inWord}|[${unseen}]+(?!\\.\\.|\\+-)(?=${inWord}))*`;
const number = '[+\\-\\x{2212}]?[0-9]+(?:\\.[0-9]+)?';
const date = '[0-9]{4}-[0-9]{2}-[0-9]{2}(?![0-9])';
const gap = `[${blank}]*`;

const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
/** One of these words, and no more of it. */
const oneOf = (words: Iterable<string>): string =>
  `(?:${[...new Set(words)]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map(escaped)
    .join('|')})${wordEnd}`;

const scope = (name: string): { readonly name: string } => ({ name: `${name}.pintle` });

/** A statement: from its first word up to a brace, a remark or the end of the line. */
const statement = (begin: string, captures: Readonly<Record<string, unknown>>, patterns: readonly unknown[]): unknown => ({
  begin,
  beginCaptures: captures,
  end: '(?=[{}#])|$',
  patterns: [...patterns, { include: '#value' }],
});

export function highlighting(): unknown {
  const { named, nameless } = blockWords();
  const facts = lineGroups().map(({ kind, words, keywords, choices }) =>
    statement(`(${oneOf(words)})`, { 1: scope(kind === 'control' ? 'keyword.control' : 'support.type.property-name') }, [
      ...(keywords.size > 0 ? [{ match: oneOf(keywords), ...scope('keyword.operator.word') }] : []),
      ...(choices.size > 0 ? [{ match: oneOf(choices), ...scope('constant.language') }] : []),
    ]),
  );

  return {
    information_for_contributors: ['Generated from the vocabulary by `npm run generate`. Do not edit.'],
    name: 'Pintle',
    scopeName: 'source.pintle',
    fileTypes: ['gate'],
    patterns: [{ include: '#comment' }, { include: '#brace' }, { include: '#statement' }],
    repository: {
      comment: { match: '(#).*$', ...scope('comment.line.number-sign'), captures: { 1: scope('punctuation.definition.comment') } },
      brace: {
        patterns: [
          { match: '\\{', ...scope('punctuation.section.block.begin') },
          { match: '\\}', ...scope('punctuation.section.block.end') },
        ],
      },
      statement: {
        patterns: [
          statement(`(${oneOf(named)})(?:${gap}(${word}))?`, { 1: scope('storage.type'), 2: scope('entity.name.type') }, []),
          ...(nameless.size > 0 ? [statement(`(${oneOf(nameless)})`, { 1: scope('storage.type') }, [])] : []),
          ...facts,
          // A byte order mark is before the first statement, not in it.
          statement(`(?=[^${blank}\\x{FEFF}{}#\\r\\n])`, {}, []),
        ],
      },
      value: {
        patterns: [
          {
            begin: '"',
            beginCaptures: { 0: scope('punctuation.definition.string.begin') },
            end: '(")|$',
            endCaptures: { 1: scope('punctuation.definition.string.end') },
            ...scope('string.quoted.double'),
            patterns: [{ match: '\\\\.', ...scope('constant.character.escape') }],
          },
          { match: date, ...scope('constant.other.date') },
          {
            match: `(${number})(?:${gap}(${oneOf(unitNames())}))?`,
            captures: { 1: scope('constant.numeric'), 2: scope('keyword.other.unit') },
          },
          {
            match: `(:)(?:${gap}(${word}))?`,
            captures: { 1: scope('punctuation.separator.model'), 2: scope('entity.other.inherited-class') },
          },
          { match: ',', ...scope('punctuation.separator.list') },
          { match: '±|\\+-', ...scope('keyword.operator.tolerance') },
          { match: '\\.\\.\\.?', ...scope('keyword.operator.range') },
          { match: word, ...scope('variable.other') },
          { match: `[${control}${unseen}]+`, ...scope('invalid.illegal.character') },
        ],
      },
    },
  };
}
