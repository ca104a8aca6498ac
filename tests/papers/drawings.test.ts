// What holds for every drawing: what may be in it, that each thing stands where it says, that hostile texts stay texts.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Preview, preview } from '../../server/editor/index.ts';
import { drawingFile } from '../../server/engine/index.ts';
import { caution } from '../../server/engine/inside.ts';
import { clean } from '../../server/papers/drawing/svg.ts';
import { type Size, sizes, widthOf } from '../../server/papers/drawing/text.ts';
import { uses } from '../editor/bench.ts';
import { all, drawingOf, example, judged, of, parsed, previewOf, sites } from './kit.ts';

const tags = new Set(['svg', 'g', 'path', 'line', 'rect', 'circle', 'text', 'title', 'desc']);
const attributes = new Set([
  'xmlns',
  'class',
  'data-drawing',
  'data-thing',
  'data-moves',
  'viewBox',
  'role',
  'text-anchor',
  'd',
  'x',
  'y',
  'x1',
  'y1',
  'x2',
  'y2',
  'cx',
  'cy',
  'r',
  'rx',
  'width',
  'height',
]);

/** What a drawing may not be, for any text; returns the ids of the things that are drawn. */
function sound(shown: Preview): Set<string> {
  const drawn = new Set<string>();
  const known = new Set(shown.things.map(({ id }) => id));
  expect(known.size).toBe(shown.things.length);
  for (const drawing of shown.drawings) {
    expect(drawing.lacks === undefined).toBe(drawing.svg !== '');
    expect(drawing.description).not.toBe('');
    for (const row of drawing.table.rows) expect(row.length).toBe(drawing.table.heads.length);
    if (drawing.svg === '') continue;
    const document = parsed(drawing.svg);
    // Gathered first: an expectation for each of some thousand attributes takes its time.
    const faults: string[] = [];
    for (const each of all(document)) {
      if (!tags.has(each.tagName)) faults.push(each.tagName);
      for (let i = 0; i < each.attributes.length; i++) {
        const { name, value } = each.attributes.item(i) ?? { name: '', value: '' };
        if (!attributes.has(name)) faults.push(name);
        if (/^(x|y|cx|cy|r|d|x1|y1|x2|y2|width|height|rx|viewBox)$/.test(name) && !/^[-\d. MLAZ]*$/.test(value))
          faults.push(`${name}="${value}"`);
      }
      const thing = each.getAttribute('data-thing');
      if (thing === null || thing === '') continue;
      drawn.add(thing);
      if (!known.has(clean(thing))) faults.push(`unknown ${thing}`);
    }
    expect(faults).toEqual([]);
    expect(all(document).length).toBeGreaterThan(10);
    expect(drawing.svg).not.toMatch(/NaN|undefined|Infinity/);
    expect(drawing.description + JSON.stringify(drawing.table)).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
  }
  return drawn;
}

describe.each(sites)('%s', (path) => {
  const analysis = example(path);
  const shown = preview(analysis);

  test('drawings of nothing but shapes and text, with every thing known', () => {
    const drawn = sound(shown);
    // And nothing is told as a thing that no drawing shows.
    expect(shown.things.filter(({ id }) => !drawn.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test('every text stands on the paper, and none on another', () => {
    for (const { id, svg } of shown.drawings) {
      if (svg === '') continue;
      const document = parsed(svg);
      const [, , width, height] = (document.documentElement?.getAttribute('viewBox') ?? '').split(' ').map(Number) as [
        number,
        number,
        number,
        number,
      ];
      const boxes = all(document)
        .filter((each) => each.tagName === 'text')
        .map((each) => {
          const [name, ...more] = (each.getAttribute('class') ?? '').split(' ') as [Size, ...string[]];
          const words = each.textContent ?? '';
          const wide = widthOf(words, name, more.includes('strong') || name === 'large');
          const anchor = each.getAttribute('text-anchor');
          return {
            words,
            x: of(each, 'x') - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0),
            y: of(each, 'y') - sizes[name] * 0.75,
            wide,
            high: sizes[name] * 0.75,
          };
        });
      expect(
        boxes.filter(({ x, y, wide, high }) => x < 0 || y < 0 || x + wide > width || y + high > height).map(({ words }) => words),
        id,
      ).toEqual([]);
      const on = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter(
            (b) =>
              Math.min(a.x + a.wide, b.x + b.wide) - Math.max(a.x, b.x) > 2 &&
              Math.min(a.y + a.high, b.y + b.high) - Math.max(a.y, b.y) > 1,
          )
          .map((b) => `${a.words} / ${b.words}`),
      );
      expect(on, id).toEqual([]);
    }
  });

  test('each thing stands where it says', () => {
    for (const { id, start, end } of shown.things) {
      const text = analysis.text.slice(start, end);
      expect(end).toBeGreaterThan(start);
      const [kind, name, rest] = id.split('.') as [string, string | undefined, string | undefined];
      if (['leaf', 'drive', 'sensor', 'control', 'panel', 'cable'].includes(kind)) {
        if (rest === undefined) expect(text, id).toMatch(new RegExp(`^${kind} ${name ?? ''}\\b`));
        else expect(text, id).toMatch(new RegExp(`^${rest}\\b`));
      } else if (kind === 'terminal') expect(text, id).toBe(rest);
      else if (kind === 'wire') expect(text, id).toMatch(new RegExp(`^wire ${rest ?? ''}\\b`));
      else if (kind === 'link' || kind === 'accessory' || kind === 'isolator' || kind === 'battery')
        expect(text, id).toMatch(new RegExp(`^${kind}\\b`));
      else if (kind === 'hazard')
        expect(text, id).toMatch(new RegExp(`^(leaf ${name ?? ''}|hinge-gap|ground-gap|room-when-open|passes)\\b`));
      else if (kind === 'motion') expect(text, id).toMatch(new RegExp(`^${name ?? 'motion'}\\b`));
      else if (kind === 'site') expect(text, id).toMatch(/^supply\b/);
      else expect.fail(`no check for ${id}`);
    }
  });

  test('as a file of its own it is whole, has its size, and its colours', () => {
    for (const { id, svg } of shown.drawings) {
      for (const theme of ['light', 'dark', 'print'] as const) {
        const file = drawingFile(analysis, id, theme);
        if (svg === '') {
          expect(file).toEqual({ svg: '', width: 0, height: 0 });
          continue;
        }
        const root = parsed(file.svg).documentElement;
        expect([Number(root?.getAttribute('width')), Number(root?.getAttribute('height'))]).toEqual([file.width, file.height]);
        expect(root?.getAttribute('viewBox')).toBe(`0 0 ${file.width} ${file.height}`);
        expect(file.svg).not.toMatch(/var\(|href|<script|@import|url\(/);
        expect(root?.getElementsByTagName('style').length).toBe(1);
      }
      expect(drawingFile(analysis, 'other', 'light').svg).toBe('');
    }
  });
});

test('the same text gives the same bytes', () => {
  const once = JSON.stringify(preview(judged(example('withy-lane').text)));
  expect(JSON.stringify(preview(judged(example('withy-lane').text)))).toBe(once);
});

test('every drawing says what it takes the place of, in the picture and in its words', () => {
  const seen = new Set<string>();
  for (const site of ['withy-lane', 'salt-quay', 'mill-race', 'garden-court'])
    for (const id of ['plan', 'wiring', 'timing', 'force']) {
      const { svg, description } = drawingOf(previewOf(site), id);
      if (svg === '') continue;
      seen.add(id);
      // Rows of text, one behind the other.
      const shown = svg.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
      expect(shown, id).toContain(`This drawing takes the place of no maker’s instructions. ${caution}`);
      expect(description).toContain(caution);
    }
  expect([...seen].sort()).toEqual(['force', 'plan', 'timing', 'wiring']);
});

describe('hostile texts', () => {
  const site = (text: string, name = 'x'): string => `${uses}
site "${text}" {
  supply 230 V 50 Hz
}
leaf ${name} {
  width 2 m
  height 1.8 m
  mass 120 kg
  opens inward 90 deg
}
drive d : alder-ram {
  moves ${name}
  post-bracket 140 mm by 120 mm
  leaf-bracket 780 mm
}
sensor s : finch-beam {
  watches closing
}
panel p : marram-one {
  isolator "${text}"
  wire d to D1 D2
  wire s to Y1 Y0
  accessory "${text}" draws 20 mA from F1
}
cable c : heron-signal {
  feeds s
  length 12 m
  carries 20 mA at 24 V
}
`;
  const nasty = [
    '</svg><script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    "'\\\" onload='x",
    '&lt;b&gt; &amp; &#0;',
    'a\u202egnp.exe\u2066',
    ']]>',
    '<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "b">]>',
    'url(javascript:alert(1))',
    '\u0000\u0001\u001b[31m',
    '\ud800 half',
  ];

  test.each(nasty)('%j', (text) => {
    const shown = preview(judged(site(text.replaceAll('"', '\\"'))));
    sound(shown);
    for (const { svg } of shown.drawings) expect(svg).not.toMatch(/<script|<img|onload='|<!DOCTYPE|<\?xml|[\u0000-\u0008\u202e\u2066]/);
  });

  test('a name and a title of ten thousand characters are cut where they are shown', () => {
    const long = 'n'.repeat(10_000);
    const shown = preview(judged(site(`${'t'.repeat(10_000)}`, long)));
    sound(shown);
    expect(shown.things.some(({ id }) => id === `leaf.${long}`)).toBe(true);
    for (const { label } of shown.things) expect(label.length).toBeLessThan(160);
    for (const { svg, description } of shown.drawings) {
      expect(description.length).toBeLessThan(2000);
      if (svg !== '')
        for (const each of all(parsed(svg))) if (each.tagName === 'text') expect((each.textContent ?? '').length).toBeLessThan(200);
    }
  });

  test('any words at all in a title, a place and an accessory', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 80 }),
        (words) => void sound(preview(judged(site(words.replace(/[\\"\r\n]/g, ' '))))),
      ),
      { numRuns: 40 },
    );
  });

  test('half a site, line by line, is drawn as far as its facts go', () => {
    const text = example('withy-lane').text;
    const lines = text.split('\n');
    for (let count = 0; count < lines.length; count += 7) sound(preview(judged(lines.slice(0, count).join('\n'))));
    // And with each seventh line gone.
    for (let gone = 0; gone < 7; gone++) sound(preview(judged(lines.filter((_, i) => i % 7 !== gone).join('\n'))));
  });
});
