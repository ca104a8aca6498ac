// What the page says is read as if a stranger had said it; what it says to people is held to its words.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pageHtml, policy } from '../../client/preview/html.ts';
import { readKept, readMessage } from '../../client/preview/messages.ts';
import { announcement, fileNameFor, tabText, thingText, verdict, verdictKind } from '../../client/preview/words.ts';
import type { PreviewAnswer } from '../../server/lsp/requests.ts';

describe('messages of the page', () => {
  test.each([
    { type: 'ready' },
    { type: 'problems' },
    { type: 'go', thing: 'leaf.west' },
    { type: 'stay', stays: true },
    { type: 'export', drawing: 'plan', format: 'png' },
    { type: 'rasterised', number: 3, png: 'AAAA' },
    { type: 'rasterised', number: 3 },
  ])('%j', (message) => {
    expect(readMessage(message)).toEqual(message);
  });
  test('what does not belong to them is left out', () => {
    expect(readMessage({ type: 'go', thing: 'a', command: 'workbench.action.quit' })).toEqual({ type: 'go', thing: 'a' });
    expect(readMessage({ type: 'rasterised', number: 1, png: 'no base64!' })).toEqual({ type: 'rasterised', number: 1 });
  });
  test.each([
    undefined,
    null,
    3,
    'ready',
    [],
    {},
    { type: 'execute' },
    { type: 'go' },
    { type: 'go', thing: 3 },
    { type: 'export', drawing: 'plan', format: 'exe' },
    { type: 'stay', stays: 'yes' },
    { type: 'rasterised', png: 'AA' },
    { type: 'toString' },
  ])('%j is none', (message) => {
    expect(readMessage(message)).toBeUndefined();
  });
  test('nothing makes the reading fail', () => {
    fc.assert(fc.property(fc.anything(), (given) => (readMessage(given), readKept(given), true)));
  });
});

describe('what is kept over a reload', () => {
  test('comes back as it was', () => {
    const kept = {
      uri: 'file:///a.gate',
      stays: true,
      drawing: 'timing',
      asTable: false,
      partsHidden: true,
      time: 12.5,
      speed: 2,
      views: { plan: { zoom: 2, x: 0.25, y: 0.75 } },
    };
    expect(readKept(kept)).toEqual(kept);
  });
  test('and what makes no sense does not', () => {
    expect(readKept({ uri: 3, time: -1, speed: Number.NaN, views: { plan: { zoom: 0, x: 0, y: 0 }, wiring: 'x' } })).toEqual({ views: {} });
    expect(readKept(undefined)).toEqual({});
  });
});

describe('the page', () => {
  const parts = { source: 'https://cdn.example', nonce: 'abc', script: 'https://cdn.example/a"b.js', style: 'https://cdn.example/c.css' };
  test('lets in one script and one style sheet, and sends nothing', () => {
    expect(policy(parts)).toBe(
      "default-src 'none'; script-src 'nonce-abc'; style-src https://cdn.example; img-src blob:; base-uri 'none'; form-action 'none'",
    );
    expect(policy(parts)).not.toMatch(/unsafe|\*|connect|data:/);
  });
  test('has no script and no style of its own, and breaks out of no attribute', () => {
    const html = pageHtml(parts);
    expect(html.match(/<script[^>]*>/g)).toEqual(['<script nonce="abc" src="https://cdn.example/a&#34;b.js">']);
    expect(html).toContain('></script>');
    expect(html).not.toMatch(/<style|\sstyle=|\son\w+=/);
    expect(html).toContain('<html lang="en">');
  });
});

describe('words', () => {
  test.each([
    [{ error: 0, warning: 0, note: 0 }, 'No errors, no warnings', 'none'],
    [{ error: 1, warning: 0, note: 2 }, '1 error, no warnings, 2 notes', 'error'],
    [{ error: 0, warning: 3, note: 1 }, 'No errors, 3 warnings, 1 note', 'warning'],
  ] as const)('%j', (counts, words, kind) => {
    expect(verdict(counts)).toBe(words);
    expect(verdictKind(counts)).toBe(kind);
  });
  test('tabs are short where there is a word for them', () => {
    expect(tabText({ id: 'plan', title: 'Plan of the opening' })).toBe('Plan');
    expect(tabText({ id: 'toString', title: 'Another drawing' })).toBe('Another drawing');
  });
  test('lines count from 1 for people', () => {
    expect(thingText('West leaf', 11)).toBe('West leaf, line 12');
  });

  const drawing = { id: 'plan', title: 'Plan', description: '', svg: '<svg/>', table: { caption: '', heads: [], rows: [] } };
  const answer: PreviewAnswer = { title: 'A', counts: { error: 0, warning: 1, note: 0 }, drawings: [drawing], things: [], style: '' };
  test('an update is told when there is something to tell', () => {
    expect(announcement(undefined, answer)).toBeUndefined();
    expect(announcement(answer, { ...answer })).toBeUndefined();
    expect(announcement(answer, { ...answer, counts: { error: 1, warning: 1, note: 0 } })).toBe('1 error, 1 warning.');
    expect(announcement(answer, { ...answer, drawings: [{ ...drawing, svg: '<svg></svg>' }] })).toBe(
      'Drawings updated. No errors, 1 warning.',
    );
  });

  test.each([
    ['/w/mill-race.gate', 'plan', 'svg', 'mill-race-plan.svg'],
    ['Untitled-1', 'timing', 'png', 'Untitled-1-timing.png'],
    ['/w/../<script>.gate', 'plan', 'svg', 'script-plan.svg'],
    ['C:\\w\\..\\a:b|c.gate', 'plan', 'svg', 'a-b-c-plan.svg'],
    ['/w/.gate', 'plan', 'svg', 'site-plan.svg'],
    ['/w/Müllers Tor.gate', 'wiring', 'svg', 'Müllers Tor-wiring.svg'],
    ['/w/a.gate', '../../x', 'svg', 'a--x.svg'],
  ])('%s is offered as a file', (path, id, format, name) => {
    expect(fileNameFor(path, id, format)).toBe(name);
  });
});
