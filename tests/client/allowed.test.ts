// What of a drawing is let into the preview's page.
import { describe, expect, test } from 'vitest';
import { allowedAttribute, allowedElement } from '../../client/preview/allowed.ts';

describe('elements', () => {
  test.each(['svg', 'g', 'path', 'rect', 'circle', 'line', 'text', 'tspan'])('%s draws', (name) => {
    expect(allowedElement(name)).toBe(true);
  });
  const others = [
    'script',
    'style',
    'a',
    'use',
    'image',
    'foreignObject',
    'animate',
    'set',
    'animateTransform',
    'animateMotion',
    'iframe',
    'object',
    'link',
    'metadata',
    'title',
    'feImage',
    'filter',
    'mask',
    'SCRIPT',
    'constructor',
    '__proto__',
    '',
  ];
  test.each(others)('%s does not come in', (name) => {
    expect(allowedElement(name)).toBe(false);
  });
});

describe('attributes', () => {
  test.each([
    ['d', 'M0 0L10 10Z'],
    ['transform', 'rotate(12 3 4)'],
    ['class', 'leaf lit'],
    ['data-thing', 'terminal.main.B1'],
    ['data-moves', 'leaf.west'],
    ['viewBox', '0 0 900 400'],
    ['fill', 'none'],
    // An id of a thing holds what the file calls it: it is compared, and nothing else.
    ['data-thing', 'leaf.javascript:alert(1)'],
  ])('%s="%s" stays as it is', (name, value) => {
    expect(allowedAttribute(name, value)).toBe(value);
  });
  test.each([
    ['onload', 'alert(1)'],
    ['onclick', 'alert(1)'],
    ['ONLOAD', 'alert(1)'],
    ['href', '#x'],
    ['xlink:href', 'https://example.org'],
    ['style', 'fill: red'],
    ['tabindex', '0'],
    ['role', 'button'],
    ['aria-label', 'x'],
    ['nonce', 'x'],
    ['src', 'x'],
    ['is', 'x'],
    ['fill', 'url(https://example.org/a.svg#b)'],
    ['fill', 'URL( "//example.org" )'],
    ['fill', 'url(#a) url(https://example.org)'],
    ['fill', 'u\\72l(https://example.org)'],
    ['stroke', 'javascript:alert(1)'],
    ['fill', 'image-set("x" 1x)'],
    ['id', 'a b'],
    ['id', ''],
  ])('%s="%s" is left out', (name, value) => {
    expect(allowedAttribute(name, value)).toBeUndefined();
  });
  test('ids are the drawing’s own, and addresses lead to them', () => {
    expect(allowedAttribute('id', 'page')).toBe('drawn-page');
    expect(allowedAttribute('marker-end', 'url(#arrow)')).toBe('url(#drawn-arrow)');
    expect(allowedAttribute('fill', "url( '#a.b-c' ) none")).toBe('url(#drawn-a.b-c) none');
  });
  test('a text that looks like our own marks is no address', () => {
    expect(allowedAttribute('fill', '\u0000https://example.org\u0001')).toBeUndefined();
  });
});
