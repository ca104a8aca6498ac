// Contrast as WCAG 2.1 asks: 4.5 to 1 for text (1.4.3), 3 to 1 for what has to be seen (1.4.11); in every theme.
import { describe, expect, test } from 'vitest';
import {
  contrast,
  graphicColours,
  palettes,
  plainStyle,
  styleSheet,
  type Theme,
  textColours,
  underColours,
} from '../../server/papers/drawing/style.ts';
import { previewOf } from './kit.ts';

test('contrast is reckoned as WCAG does', () => {
  // The values of its own examples: black on white, and the grey that just passes.
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

describe.each(Object.keys(palettes) as Theme[])('%s', (theme) => {
  const palette = palettes[theme];
  test('text', () => {
    for (const name of textColours) {
      expect(contrast(palette[name], palette.paper), `${name} on paper`).toBeGreaterThanOrEqual(4.5);
      expect(contrast(palette[name], palette.soft), `${name} on soft`).toBeGreaterThanOrEqual(4.5);
    }
    for (const name of underColours) expect(contrast(palette.over, palette[name]), `over on ${name}`).toBeGreaterThanOrEqual(4.5);
  });
  test('graphics', () => {
    for (const name of graphicColours) {
      expect(contrast(palette[name], palette.paper), `${name} on paper`).toBeGreaterThanOrEqual(3);
      expect(contrast(palette[name], palette.soft), `${name} on soft`).toBeGreaterThanOrEqual(3);
    }
  });
  test('a file of its own has plain colours only', () => {
    const style = plainStyle(theme);
    expect(style).not.toMatch(/var\(|\$|url|import|expression/);
    expect(style).toContain(palette.ink);
  });
});

test('high contrast is higher', () => {
  for (const theme of ['contrast', 'contrast-light'] as const)
    for (const name of textColours) expect(contrast(palettes[theme][name], palettes[theme].paper)).toBeGreaterThanOrEqual(7);
});

test('every class that is drawn is in the style sheet, and every theme of an editor', () => {
  const sheet = styleSheet();
  const classes = new Set<string>();
  for (const name of [
    'withy-lane',
    'garden-court',
    'mill-race',
    'salt-quay',
    'storm-boards',
    'open-loops',
    'pillar-trap',
    'cedar-spur',
    'leaves-collide',
  ])
    for (const { svg } of previewOf(name).drawings)
      for (const [, found] of svg.matchAll(/ class="([^"]+)"/g)) for (const one of (found as string).split(' ')) classes.add(one);
  // These two say what something is and look like nothing by themselves.
  expect(
    [...classes].filter(
      (name) => name !== 'pintle-drawing' && name !== 'thing' && name !== 'ink' && !new RegExp(`\\.${name}[ ,{]`).test(sheet),
    ),
  ).toEqual([]);
  expect(classes.size).toBeGreaterThan(40);
  for (const selector of ['.vscode-dark', '.vscode-high-contrast ', '.vscode-high-contrast-light', '@media print', 'forced-colors'])
    expect(sheet).toContain(selector);
  expect(sheet).not.toMatch(/\$|url\(|@import|<|&/);
});
