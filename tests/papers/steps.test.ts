// Drawings in small steps: what is done between two rests does not grow with the file, what is drawn has a limit that is told, and what
// is told has none.
import { afterEach, describe, expect, test, vi } from 'vitest';
import { preview, previewing } from '../../server/editor/index.ts';
import { Things } from '../../server/papers/drawing/drawing.ts';
import { Places } from '../../server/papers/drawing/placing.ts';
import { kinds } from '../bench/growing.mjs';
import { drawingOf, example, judged, parsed, withClass } from './kit.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** The most that is noted and placed between two rests, and how many rests there are. */
function stepsOf(text: string): { readonly most: number; readonly rests: number } {
  const note = vi.spyOn(Things.prototype, 'note');
  const near = vi.spyOn(Places.prototype, 'near');
  const done = (): number => note.mock.calls.length + near.mock.calls.length;
  const steps = previewing(judged(text));
  let most = 0;
  let rests = 0;
  for (let before = done(); steps.next().done !== true; rests++) {
    most = Math.max(most, done() - before);
    before = done();
  }
  vi.restoreAllMocks();
  return { most, rests };
}

const grown = [
  'gates',
  'leaves that overlap',
  'sliding leaves',
  'drives on one leaf',
  'sensors on one leaf, wired',
  'beams of the opening, wired',
  'edges chained',
  'cables to devices',
  'panel of many inputs, wired',
  'panel: wires to unknown terminals',
  'panel: wires of one device',
  'panel: accessories',
  'panel: links',
] as const;

test.each(grown)('between two rests a drawing does as much in a long text as in a short one: %s', (kind) => {
  const textOf = kinds[kind] as (lines: number) => string;
  const few = stepsOf(textOf(400));
  const many = stepsOf(textOf(1600));
  expect(many.most).toBeLessThanOrEqual(few.most + 8);
  expect(many.rests).toBeGreaterThan(few.rests);
});

test('in steps and in one go the same is drawn', () => {
  for (const text of [example('withy-lane').text, (kinds['gates'] as (lines: number) => string)(600)]) {
    const steps = previewing(judged(text));
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    expect(JSON.stringify(step.value)).toBe(JSON.stringify(preview(judged(text))));
  }
});

describe('of many things the first hundred are drawn, and that is told', () => {
  const shownOf = (kind: string, lines: number): ReturnType<typeof preview> =>
    preview(judged((kinds[kind] as (lines: number) => string)(lines)));
  const wordsIn = (svg: string): string =>
    withClass(parsed(svg), 'small')
      .map((each) => each.textContent)
      .join(' ');

  test('sensors on one leaf', () => {
    const shown = shownOf('sensors on one leaf', 1500);
    const plan = drawingOf(shown, 'plan');
    // Beside the 300 that grow there is the edge of the gate.
    expect(plan.description).toContain('Drawn are the first 100 of 301 edges and fields on leaves.');
    expect(wordsIn(plan.svg)).toContain('Drawn are the first 100 of 301 edges and fields on leaves.');
    expect(plan.table.rows.filter(([what]) => what?.startsWith('sensor edge-'))).toHaveLength(300);
    expect(shown.things.filter(({ id }) => id.startsWith('sensor.edge-'))).toHaveLength(300);
    expect(new Set(withClass(parsed(plan.svg), 'edge')).size).toBe(100);
  });

  test('leaves: plan, chart and the moves of the slider', () => {
    const shown = shownOf('leaves that overlap', 1800);
    const plan = drawingOf(shown, 'plan');
    expect(plan.description).toMatch(/^150 leaves seen from above/);
    expect(plan.description).toContain('and 50 more leaves');
    expect(wordsIn(plan.svg)).toContain('the first 100 of 150 leaves');
    expect(plan.table.rows.filter(([what]) => what?.startsWith('leaf leaf-'))).toHaveLength(150);
    const timing = drawingOf(shown, 'timing');
    expect(wordsIn(timing.svg)).toContain('the first 100 of 150 leaves');
    expect(timing.table.rows.filter(([what]) => what?.endsWith('opening, at full speed'))).toHaveLength(150);
    expect(shown.things.filter(({ id }) => /^leaf\.leaf-\d+$/.test(id))).toHaveLength(150);
    expect(shown.cycle?.leaves.filter(({ thing }) => thing.startsWith('leaf.'))).toHaveLength(100);
  });

  test('terminals, wires and links of a panel', () => {
    const linked = drawingOf(shownOf('panel of many inputs, linked', 500), 'wiring');
    expect(wordsIn(linked.svg)).toContain('Panel main: drawn are the first 100 of 251 terminals and the first 100 of 250 links.');
    expect(linked.table.rows.filter(([what]) => /^S\d+$/.test(what ?? ''))).toHaveLength(250);
    expect(linked.table.rows.find(([what]) => what === 'S249')?.[2]).toBe('link to C0');
    const wired = drawingOf(shownOf('panel: wires of one device', 300), 'wiring');
    expect(wordsIn(wired.svg)).toContain('of 602 wires of one device');
  });

  test('what fits is drawn whole, and nothing is said of a limit', () => {
    for (const { svg } of preview(example('withy-lane')).drawings) expect(svg).not.toContain('Drawn are');
  });
});
