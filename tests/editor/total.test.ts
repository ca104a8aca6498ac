// No text and no place in it brings a feature down.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { completion, definition, diagnostics, figuresShown, fixAll, fixes, formatting, highlight, hover, inlayValues, mentionsOf, symbols } from '../../server/editor/index.ts';
import { bench, library, site } from './bench.ts';

const pieces = ['{', '}', '"', '#', '\n', '\r\n', ' ', '±', '..', ':', ',', '𝄞', '\ud800', 'leaf ', 'wire ', 'to ', 'use "', 'accept ', '8.2 kohm', 'panel-model x {', 'constructor', '__proto__', 'toString '];
const cut = fc.tuple(fc.nat(), fc.nat(80), fc.constantFrom(...pieces, ''));
const texts = fc.tuple(fc.constantFrom(site(), ...library.values()), fc.array(cut, { maxLength: 8 })).map(([text, cuts]) => cuts.reduce((now, [at, length, put]) => now.slice(0, at % (now.length + 1)) + put + now.slice((at % (now.length + 1)) + length), text));

test('every feature answers everywhere in any text', () => {
  fc.assert(
    fc.property(texts, fc.array(fc.nat(), { minLength: 1, maxLength: 6 }), (text, places) => {
      const { analysis, textOf } = bench(text);
      const inside = (place: { readonly start: number; readonly end: number }): void => {
        expect(place.start).toBeGreaterThanOrEqual(0);
        expect(place.end).toBeGreaterThanOrEqual(place.start);
        expect(place.end).toBeLessThanOrEqual(text.length);
      };
      for (const place of places) {
        const offset = place % (text.length + 1);
        const offered = completion(analysis, offset, { libraries: [...library.keys()] });
        inside(offered.replace);
        for (const item of offered.items.slice(0, 5)) expect(typeof item.documentation()).toBe('string');
        const found = hover(analysis, offset, textOf);
        if (found !== undefined) inside(found);
        const target = definition(analysis, offset);
        if (target !== undefined) inside(target.from);
        highlight(analysis, offset).forEach(inside);
        fixes(analysis, { start: offset, end: offset });
      }
      diagnostics(analysis).forEach(inside);
      mentionsOf(analysis).forEach(inside);
      for (const value of inlayValues(analysis)) {
        inside({ start: value.offset, end: value.offset });
        expect(typeof value.tooltip()).toBe('string');
      }
      for (const symbol of symbols(analysis)) inside(symbol.whole);
      figuresShown(analysis);
      fixAll(analysis);
      formatting(text);
    }),
    { numRuns: 400 },
  );
}, 60_000);
