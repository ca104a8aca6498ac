/// <reference types="tree-sitter-cli/dsl" />
// The shape of a .gate file for editors that colour by tree-sitter. It finds what ../tokens.ts and ../parser.ts find, and
// tests/grammar/tree-sitter.test.ts holds it to that. After a change: `tree-sitter generate --abi 14` in this
// folder, then `npm run generate`.

const blank = '\\u0009\\u000B\\u000C\\u0020\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000';
const control = '\\u0000-\\u0008\\u000E-\\u001F\\u007F-\\u009F\\u2028\\u2029\\uFFFE\\uFFFF';
// What shows nothing, as in ../unseen.ts. No word holds it here, so a word with such a character in it is an error.
const unseen =
  '\\u00AD\\u034F\\u061C\\u115F\\u1160\\u17B4\\u17B5\\u180B-\\u180F\\u200B-\\u200F\\u202A-\\u202E\\u2060-\\u206F\\u2800\\u3164' +
  '\\uFE00-\\uFE0F\\uFEFF\\uFFA0\\uFFF0-\\uFFFB\\u{13430}-\\u{1343F}\\u{1BCA0}-\\u{1BCA3}\\u{1D159}\\u{1D173}-\\u{1D17A}\\u{E0000}-\\u{E0FFF}';
const signs = '{}":,#\\u00B1';
const outside = `${blank}${control}${unseen}${signs}\\r\\n`;

// A word holds neither `..` nor `+-`, and does not begin as a number does. There is no looking ahead here, so a word is laid
// out as runs of points and pluses, each with the character that ends it.
/** Any character of a word but a point, a plus and a hyphen. */
const plain = `[^${outside}.+\\-]`;
/** The same, at its beginning: no digit, no true minus sign. */
const first = `[^${outside}.+\\-\\u22120-9]`;
/** The same behind a sign that a digit would make a number of. */
const afterSign = `[^${outside}.+\\-0-9]`;
/** A character with the points and pluses before it, if any: no two points, and no hyphen behind a plus. */
const link = `\\.?(\\++\\.)*(${plain}|-|\\++${plain})`;
/** The same with at least a point, or a plus and more, before it. */
const pointed = `\\.(\\++\\.)*(${plain}|-|\\++${plain})|(\\++\\.)+(${plain}|-|\\++${plain})|\\+\\++${plain}`;
// A plus, a hyphen or a true minus sign may be the first, but not before a digit.
const begin = `${first}|[\\-\\u2212](${afterSign}|-|${pointed}|\\+${plain})|\\+${afterSign}|${pointed}`;
/** Points and pluses with nothing behind them. */
const tail = '\\.(\\++\\.)*\\+*|\\++(\\.\\++)*\\.?';

const pattern = (source) => new RegExp(source, 'u');

module.exports = grammar({
  name: 'pintle',

  extras: ($) => [pattern(`[${blank}]`), $.comment],

  rules: {
    file: ($) => seq(optional($._ends), repeat($._item)),

    // A line takes the line ends behind it, since a brace below it may still make it the header of a block.
    _item: ($) => choice(seq($.line, optional($._ends)), seq($.block, optional($._ends))),

    block: ($) => seq($.line, optional($._ends), $.body),

    body: ($) => seq('{', optional($._ends), repeat($._item), '}'),

    line: ($) => prec.right(seq(choice(field('word', $.word), $._misplaced), repeat($._value))),

    _value: ($) => choice($.word, $.number, $.text, $.date, $.model, ',', $._misplaced),

    // Signs are looked for everywhere, or else one in a wrong place would be read as a word. What would have to follow it
    // is a character that no file may hold, so it is always an error.
    _misplaced: ($) => seq(choice($.tolerance, $.range), '\u0001'),

    // The word behind a number is its unit, or a keyword: only the vocabulary knows.
    number: ($) => prec.right(seq($.figure, optional(field('unit', $.word)), optional(seq(choice($.tolerance, $.range), $.figure, optional(field('unit', $.word)))))),

    figure: () => token(pattern('[+\\-\\u2212]?[0-9]+(\\.[0-9]+)?')),
    tolerance: () => token(choice('\u00b1', '+-')),
    range: () => token(choice('..', '...')),
    date: () => token(pattern('[0-9]{4}-[0-9]{2}-[0-9]{2}')),

    model: ($) => seq(':', field('name', $.word)),

    text: ($) => seq('"', repeat(choice($._content, $.escape)), token.immediate('"')),
    _content: () => token.immediate(prec(1, pattern('[^"\\\\\\r\\n]+'))),
    escape: () => token.immediate(prec(1, pattern('\\\\[^\\r\\n]'))),

    word: () => choice(seq(token(pattern(`(${begin})(${link})*|[\\-\\u2212]`)), optional(token.immediate(pattern(tail)))), token(pattern(tail))),

    comment: () => token(pattern('#[^\\r\\n]*')),

    _ends: () => repeat1(token(pattern('[\\r\\n]'))),
  },
});
