// From the cursor to what is drawn.
import { expect, test } from 'vitest';
import { inFileOrder, thingsAt } from '../../client/preview/things.ts';
import type { ThingAnswer } from '../../server/lsp/requests.ts';

const thing = (
  id: string,
  [line, character]: readonly [number, number],
  [endLine, endCharacter]: readonly [number, number],
): ThingAnswer => ({ id, label: id, range: { start: { line, character }, end: { line: endLine, character: endCharacter } } });

const leaf = thing('leaf.west', [10, 0], [20, 1]);
const hazard = thing('hazard.west.hinge', [10, 0], [20, 1]);
const gap = thing('hazard.west.gap', [14, 2], [14, 20]);
const panel = thing('panel.main', [30, 0], [40, 1]);
const terminal = thing('terminal.main.B1', [32, 15], [32, 17]);
const wire = thing('wire.main.beam', [32, 2], [32, 20]);
const all = [leaf, hazard, gap, panel, terminal, wire];

test('the innermost comes first', () => {
  expect(thingsAt(all, { line: 14, character: 5 })).toEqual(['hazard.west.gap', 'leaf.west', 'hazard.west.hinge']);
  expect(thingsAt(all, { line: 32, character: 16 })).toEqual(['terminal.main.B1', 'wire.main.beam', 'panel.main']);
  expect(thingsAt(all, { line: 32, character: 3 })).toEqual(['wire.main.beam', 'panel.main']);
});
test('both ends of a range belong to it', () => {
  expect(thingsAt(all, { line: 10, character: 0 })[0]).toBe('leaf.west');
  expect(thingsAt(all, { line: 20, character: 1 })[0]).toBe('leaf.west');
  expect(thingsAt(all, { line: 20, character: 2 })).toEqual([]);
  expect(thingsAt(all, { line: 25, character: 0 })).toEqual([]);
});
test('of two that touch, the one that begins', () => {
  const pair = [thing('a', [1, 0], [1, 4]), thing('b', [1, 4], [1, 8])];
  expect(thingsAt(pair, { line: 1, character: 4 })).toEqual(['b', 'a']);
});
test('what was clicked goes first, but only where it begins', () => {
  expect(thingsAt(all, { line: 10, character: 0 }, 'hazard.west.hinge')).toEqual(['hazard.west.hinge', 'leaf.west']);
  expect(thingsAt(all, { line: 14, character: 5 }, 'hazard.west.hinge')[0]).toBe('hazard.west.gap');
  expect(thingsAt(all, { line: 10, character: 0 }, 'panel.main')).toEqual(['leaf.west', 'hazard.west.hinge']);
});
test('a list has the order of the file, the outer before the inner, and only what is drawn', () => {
  const shown = new Set(['terminal.main.B1', 'wire.main.beam', 'panel.main', 'leaf.west', 'hazard.west.hinge']);
  expect(inFileOrder([...all].reverse(), shown).map(({ id }) => id)).toEqual([
    'hazard.west.hinge',
    'leaf.west',
    'panel.main',
    'wire.main.beam',
    'terminal.main.B1',
  ]);
});
