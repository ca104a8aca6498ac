// Texts and their canonical form, case by case.
export const canonicalCases: readonly (readonly [name: string, text: string, canonical: string])[] = [
  ['nothing', ' \n\n', ''],
  ['spaces and tabs', 'leaf\ta  {\n\twidth   2.10    m\n}', 'leaf a {\n  width 2.10 m\n}\n'],
  ['a brace on the next line', 'leaf a\n{\n  width 2 m\n}\n', 'leaf a {\n  width 2 m\n}\n'],
  ['a block on one line', 'leaf a { width 2 m }', 'leaf a {\n  width 2 m\n}\n'],
  ['an empty block', 'leaf a {}', 'leaf a {\n}\n'],
  [
    'blank lines',
    'language 1\n\n\n\nleaf a {\n\n\n  width 2 m\n\n\n  mass 5 kg\n\n}\n\n\n',
    'language 1\n\nleaf a {\n  width 2 m\n\n  mass 5 kg\n}\n',
  ],
  ['no blank line is put in', 'leaf a {\n}\nleaf b {\n}\n', 'leaf a {\n}\nleaf b {\n}\n'],
  [
    'a remark behind a line',
    'leaf a { # left\n  width 2 m   # measured  \n} # done\n',
    'leaf a { # left\n  width 2 m # measured\n} # done\n',
  ],
  ['a remark between header and brace', 'leaf a # left\n{\n}\n', '# left\nleaf a {\n}\n'],
  ['remarks first and last', '# first\nleaf a {\n  # in\n}\n# last', '# first\nleaf a {\n  # in\n}\n# last\n'],
  ['a remark with a blank line before and behind', 'a\n\n# b\n\nc\n', 'a\n\n# b\n\nc\n'],
  ['a number as it was written', 'w 2.10 m\nw +5 %\nw \u22125 mm\nw 007 s\n', 'w 2.10 m\nw +5 %\nw -5 mm\nw 007 s\n'],
  ['signs', 'w 8.2kohm±5%\nw 2 s..3 s\nw 1 +- 2\nw 3 ... 4\n', 'w 8.2 kohm ± 5 %\nw 2 s .. 3 s\nw 1 ± 2\nw 3 .. 4\n'],
  ['a list', 'watches closing ,opening,pedestrian\n', 'watches closing, opening, pedestrian\n'],
  ['a model', 'drive a:b {\n}\n', 'drive a : b {\n}\n'],
  ['a text and its escapes', 'use "a \\"b\\" \\\\ c \\d"\n', 'use "a \\"b\\" \\\\ c d"\n'],
  ['line ends', 'a\r\n\r\nb\rc', 'a\n\nb\nc\n'],
  ['a mark of byte order', '\ufeffa\n', 'a\n'],
];
