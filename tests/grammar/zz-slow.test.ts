import { test } from 'vitest';
import { parse, print } from '/work/main/grammar/index.ts';
import { readFile } from '/work/main/server/vocabulary/index.ts';
const cases: Record<string, string> = {
  'nested 100k': '{'.repeat(100000) + '}'.repeat(100000),
  'nested headers 100k': 'a {'.repeat(100000) + '}'.repeat(100000),
  'nested headers lines 100k': 'a {\n'.repeat(100000) + '}\n'.repeat(100000),
  'stray 200k': '}'.repeat(200000),
  'stray lines 200k': '}\n'.repeat(200000),
  'stray lines spaced 200k': 'leaf a {\n'+ '  x\n }\n'.repeat(200000),
  'unclosed 200k': 'leaf a {\n  width 2 m\n'.repeat(200000).slice(0, 3_900_000),
  'unclosed flat 200k': 'leaf a {\nwidth 2 m\n'.repeat(200000).slice(0, 3_900_000),
  'unclosed empty 200k': 'leaf a {\n'.repeat(200000),
  'unclosed one line': 'leaf a { '.repeat(200000),
  'open 200k lines': '{\n'.repeat(200000),
  'open 200k': '{'.repeat(200000),
  'open a}b{': 'a } b { '.repeat(200000),
  'open } {': '} {\n'.repeat(200000),
  'words 1M one line': 'w '.repeat(1000000),
  'numbers 1M one line': '1 '.repeat(1000000),
  'commas': ','.repeat(1000000),
  'texts': '"'.repeat(1000000),
  'text lines': '"\n'.repeat(1000000),
  'bare lines': 'a\n  b\n'.repeat(300000) + '}',
  'bare closes': 'a\n  b\n}\n'.repeat(300000) + '}',
  'deep closes': 'p {\n' + '  s {\n    x\n  }\n y\n'.repeat(150000),
  'alternating': 'a {\n  }\n b\n}\n  c\n'.repeat(150000),
  'blank 4M': ' '.repeat(3_900_000) + '{',
  'blanks between': ('{' + ' '.repeat(1000)).repeat(3000),
  'comments': '# x\n'.repeat(900000) + '{',
  'keyed many': 'language 1\npanel p {\n' + '  wire ' + 'to a '.repeat(300000) + '\n}\n',
  'keyed many 2': 'language 1\npanel p {\n  registered ' + 'a, '.repeat(300000) + '\n}\n',
  'dashes': '-'.repeat(3_000_000),
  'dots': '.'.repeat(3_000_000),
  '1.1.1': '1.'.repeat(1_500_000),
  'lone surrogates': '\ud800'.repeat(3_000_000),
  'nul': '\0 '.repeat(1_500_000),
  'u2028': 'a\u2028'.repeat(1_500_000),
  'cr only': 'a\r'.repeat(1_500_000),
  '5MB': 'a'.repeat(5_000_000),
  '3.9MB line': 'a'.repeat(3_900_000),
  'repeat facts': 'language 1\nleaf a {\n' + '  width 2 m\n'.repeat(200000) + '}\n',
  'unknown words': 'language 1\nleaf a {\n' + '  widht 2 m\n'.repeat(200000) + '}\n',
  'long unknown word': 'language 1\nleaf a {\n  ' + 'w'.repeat(3_000_000) + ' 2 m\n}\n',
  'unknown choice': 'language 1\nsite {\n' + '  rules eurpoe\n'.repeat(100000) + '}\n',
  'gaps': 'p {\n}\n' + '\n# c\n'.repeat(100000) + '}\n' ,
  'bare gap': ('a' + '\n'.repeat(1000) + '  b\n').repeat(3000) + '}\n',
};
test('slow', () => {
  for (const [name, text] of Object.entries(cases)) {
    const t = performance.now();
    const tree = parse(text);
    const t1 = performance.now();
    const r = readFile(tree);
    const t2 = performance.now();
    let t3 = t2; let len = -1;
    try { len = print(tree).length; t3 = performance.now(); } catch (e) { len = -2; console.log(String(e)); }
    console.log(name.padEnd(28), text.length, 'parse', (t1 - t).toFixed(0), 'read', (t2 - t1).toFixed(0), 'print', (t3 - t2).toFixed(0), 'problems', tree.problems.length, r.problems.length, len, JSON.stringify(tree.problems.slice(0, 2)).slice(0, 150));
  }
}, 600000);
