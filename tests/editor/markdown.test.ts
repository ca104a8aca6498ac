// Texts of files in Markdown: whatever a file calls things, an editor shows those words and nothing else. Held to two
// renderers of other people, both as they make links of bare words: marked (GFM) and markdown-it (linkify).
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { marked } from 'marked';
import { describe, expect, test } from 'vitest';
import { completion, hover, inlayValues, signature } from '../../server/editor/index.ts';
import { code, codeBlock, escape, plain } from '../../server/editor/markdown.ts';
import { bench, uses } from './bench.ts';

type MarkdownIt = new (options: { html: boolean; linkify: boolean }) => { render: (markdown: string) => string };
const MarkdownIt = createRequire(import.meta.url)('markdown-it') as MarkdownIt;
const other = new MarkdownIt({ html: true, linkify: true });

const renderers: readonly (readonly [name: string, render: (markdown: string) => string])[] = [
  ['marked', (markdown) => marked.parse(markdown, { gfm: true, async: false })],
  ['markdown-it', (markdown) => other.render(markdown)],
];

const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" };
const tagsOf = (html: string): string[] => [...html.matchAll(/<\/?([A-Za-z][^\s>]*)/g)].map(([, name]) => name as string);
const wordsOf = (html: string): string =>
  html
    .replace(/<[^>]*>/g, '')
    .replace(/&([a-z]+|#39);/g, (whole, name: string) => entities[name] ?? whole)
    .replace(/\s+/g, ' ')
    .trim();
const normal = (text: string): string => text.replace(/\s+/g, ' ').trim();

const hostile = [
  'www.evil.com',
  'WWW.evil.com',
  'http://evil',
  'https://evil.com/x?y#z',
  'ftp://evil.com',
  '//evil.com',
  '//localhost',
  'evil.com',
  'evil.com:80/x',
  'пример.рф',
  'a@evil.com',
  'mailto:a@evil.com',
  'xmpp:a@evil.com',
  '<http://evil.com>',
  '<a@evil.com>',
  '[x](command:evil)',
  '[x][y]',
  '![x](http://evil.com/x.png)',
  '<img src=x onerror=y>',
  '<script>x</script>',
  '<!-- x -->',
  '&lt;b&gt; &#60; &copy;',
  '**x** __x__ ~~x~~ `x` *x* _x_',
  '# x',
  '#',
  '- x',
  '-',
  '---',
  '- - -',
  '***',
  '===',
  '+ x',
  '1. x',
  '1.',
  '7) x',
  '> x',
  '| a | b |',
  '```x',
  '~~~x',
  '    four blanks',
  '\tx',
  'x\\',
  '\\www.evil.com',
  'x\ny',
  '[x]: http://evil.com',
  '[^1]',
  '- [ ] x',
  '$(x)',
  'x  ',
];

/** Texts out of the pieces that Markdown and its readers act on. */
const anything = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ...hostile,
        'www.',
        'http:',
        '//',
        '.',
        '@',
        'com',
        ' ',
        '\\',
        '`',
        '*',
        '_',
        '[',
        ']',
        '(',
        ')',
        '<',
        '>',
        '&',
        ';',
        '#',
        '-',
        '1',
        '.',
        '!',
        '|',
        '~',
        '=',
        '+',
        ':',
        '/',
        'a',
      ),
      fc.string({ unit: 'grapheme-ascii', maxLength: 4 }),
    ),
    { minLength: 1, maxLength: 8 },
  )
  .map((pieces) => pieces.join(''))
  .filter((text) => !/\p{Cc}/u.test(text.replace(/[\n\t]/g, '')) && text.trim() !== '');

describe.each(renderers)('%s', (_, render) => {
  const holds = (text: string): void => {
    const alone = render(escape(text));
    expect(
      tagsOf(alone).filter((tag) => tag !== 'p'),
      text,
    ).toEqual([]);
    expect(wordsOf(alone), text).toBe(normal(text));
    const among = render(`Its title is ${escape(text)}, and **${escape(text)}**.`);
    expect(
      tagsOf(among).filter((tag) => tag !== 'p' && tag !== 'strong'),
      text,
    ).toEqual([]);
    const inCode = render(`In ${code(text)} it is.`);
    expect(
      tagsOf(inCode).filter((tag) => tag !== 'p' && tag !== 'code'),
      text,
    ).toEqual([]);
    expect(wordsOf(inCode), text).toBe(`In ${normal(wordsOf(inCode).slice(3, -7))} it is.`);
    expect(wordsOf(inCode), text).toContain(normal(text));
    const block = render(codeBlock(text));
    expect(
      tagsOf(block).filter((tag) => tag !== 'pre' && tag !== 'code'),
      text,
    ).toEqual([]);
    expect(wordsOf(block), text).toBe(normal(text));
  };
  test.each(hostile)('%j is shown as it stands', (text) => holds(text));
  test('any text is', () => {
    fc.assert(fc.property(anything, holds), { numRuns: 3000 });
  });
});

test('plain text says the same without any mark', () => {
  fc.assert(
    fc.property(anything, anything, (one, other) => {
      const line = (text: string): string => text.replace(/[\r\n]+/g, ' ');
      expect(plain(escape(one))).toBe(line(one).replace(/^\s+/, ' '));
      expect(plain(code(one))).toBe(line(one));
      expect(plain(codeBlock(one))).toBe(one);
      expect(plain(`**${escape(one)}**: ${code(other)}  \nx\n\n${codeBlock(other)}`)).toBe(
        `${line(one).replace(/^\s+/, ' ')}: ${line(other)}\nx\n\n${other}`,
      );
    }),
    { numRuns: 3000 },
  );
});

test('whatever things are called, hovers, offers, signatures and derivations hold no link and no tag but our own', () => {
  const titles = ['www.evil.com', '<img src=x onerror=y> a@evil.com', '[x](command:evil) https://evil.com', '**x** `y` ![z](//evil.com)'];
  for (const title of titles) {
    const { analysis, text, textOf } = bench(`${uses}
site "${title}" {
}
drive-model own "${title}" {
  kind linear-ram
}
panel-model board "${title}" {
  terminal K0 common
  terminal K1 safety-input normally-closed common K0
  selector mode "${title}" {
    option one means "${title}"
  }
}
leaf west {
  width 2.10 m
  height 1.60 m
  mass 165 kg
  opens inward 95 deg
  closes onto own
}
drive ram : own {
  moves west
}
panel main : board {
  select mode one
  wire ram to K1 K0
}
accept seat-outside-practice because "${title}" by "KL" until 2027-01-01
|`);
    const found = new Set<string>();
    for (let offset = 0; offset <= text.length; offset++) {
      const shown = hover(analysis, offset, textOf);
      if (shown !== undefined) found.add(shown.markdown);
      const help = signature(analysis, offset);
      if (help !== undefined) for (const doc of [help.doc, ...help.parameters.map((parameter) => parameter.doc)]) found.add(doc);
    }
    for (const place of ['ram : ', 'select ', 'mode ', 'wire ram to ', 'main : '])
      for (const item of completion(analysis, text.lastIndexOf(place) + place.length, { libraries: [], today: '2026-11-20' }).items) {
        found.add(item.documentation());
      }
    for (const value of inlayValues(analysis)) found.add(value.tooltip());
    // It is in there: else nothing would be tried.
    expect([...found].filter((markdown) => plain(markdown).includes(title)).length, title).toBeGreaterThan(2);
    for (const markdown of found)
      for (const [name, render] of renderers) {
        const own = ['p', 'strong', 'code', 'pre', 'ul', 'li', 'hr', 'br'];
        expect(
          tagsOf(render(markdown)).filter((tag) => !own.includes(tag)),
          `${name}: ${markdown}`,
        ).toEqual([]);
      }
  }
});
