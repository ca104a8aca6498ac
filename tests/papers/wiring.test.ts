// The wiring against the lines of the panel: every end of every wire, every link, every terminal, in the order of the model.
import { describe, expect, test } from 'vitest';
import { preview } from '../../server/editor/index.ts';
import { widthOf } from '../../server/papers/drawing/text.ts';
import { uses } from '../editor/bench.ts';
import { all, drawingOf, example, judged, of, parsed, pointsOf, previewOf, sites, thingOf, withClass } from './kit.ts';

type Drawn = ReturnType<typeof all>[number];
const middle = (box: Drawn): number => of(box, 'y') + of(box, 'height') / 2;

/** The strip as it is drawn: names from top to bottom with the height of each. */
function stripOf(document: ReturnType<typeof parsed>): { name: string; y: number; right: number; free: boolean }[] {
  return [...withClass(document, 'terminal'), ...withClass(document, 'terminal-free')]
    .map((cell) => {
      let next = cell.nextSibling as Drawn | null;
      while (next !== null && next.tagName !== 'text') next = next.nextSibling as Drawn | null;
      return {
        name: next?.textContent ?? '',
        y: middle(cell),
        right: of(cell, 'x') + of(cell, 'width'),
        free: cell.getAttribute('class') === 'terminal-free',
      };
    })
    .sort((a, b) => a.y - b.y);
}

describe.each(sites)('%s', (path) => {
  const { installation } = example(path);
  const shown = drawingOf(previewOf(path), 'wiring');
  const document = parsed(shown.svg);
  const strip = stripOf(document);
  const panel = installation.panels[0] as (typeof installation.panels)[number];

  test('every terminal of the model, in its order, and in the table', () => {
    expect(strip.map(({ name }) => name)).toEqual([...(panel.model?.terminals.keys() ?? [])]);
    expect(shown.table.rows.slice(0, strip.length).map(([name]) => name)).toEqual(strip.map(({ name }) => name));
    for (const { name, free } of strip) expect(shown.table.rows.find(([row]) => row === name)?.[2] === 'not used', name).toBe(free);
  });

  test('every wire leads from each of its terminals to its own box', () => {
    let ends = 0;
    for (const wire of panel.wires) {
      const id = `wire.${panel.name}.${wire.fact.device.text}.${wire.part}`;
      const lines = all(document).filter(
        (each) => each.tagName === 'path' && /^(wire|wrong)$/.test(each.getAttribute('class') ?? '') && thingOf(each) === id,
      );
      expect(lines.length, id).toBe(wire.ends.length);
      const from = lines.map((each) => pointsOf(each)[0] as [number, number]);
      expect(from.map(([x, y]) => strip.find((row) => Math.abs(row.y - y) < 0.1 && Math.abs(row.right - x) < 0.1)?.name).sort()).toEqual(
        wire.ends.map(({ at }) => at.text).sort(),
      );
      const box = all(document).find(
        (each) => each.getAttribute('class') === 'box' && thingOf(each) === `${wire.device?.kind ?? ''}.${wire.fact.device.text}`,
      ) as Drawn;
      for (const line of lines) {
        const [x, y] = pointsOf(line).at(-1) as [number, number];
        expect(Math.abs(x - of(box, 'x'))).toBeLessThan(0.1);
        expect(y > of(box, 'y') && y < of(box, 'y') + of(box, 'height')).toBe(true);
        ends++;
      }
    }
    expect(ends).toBeGreaterThan(0);
  });

  test('every link joins its terminals', () => {
    expect(withClass(document, 'link').length).toBe(panel.links.length);
    for (const [i, link] of panel.links.entries()) {
      const drawn = withClass(document, 'link').find((each) => thingOf(each) === `link.${panel.name}.${i + 1}`) as Drawn;
      const heights = new Set(pointsOf(drawn).map(([, y]) => Math.round(y)));
      expect(link.ends.every(({ at }) => heights.has(Math.round(strip.find(({ name }) => name === at.text)?.y ?? NaN)))).toBe(true);
    }
  });

  test('no box covers another, and every cable is told', () => {
    const boxes = withClass(document, 'box').sort((a, b) => of(a, 'y') - of(b, 'y'));
    for (let i = 1; i < boxes.length; i++)
      expect(of(boxes[i] as Drawn, 'y')).toBeGreaterThanOrEqual(of(boxes[i - 1] as Drawn, 'y') + of(boxes[i - 1] as Drawn, 'height'));
    const things = new Set(all(document).map((each) => each.getAttribute('data-thing')));
    for (const cable of installation.cables) expect(things, cable.name).toContain(`cable.${cable.name}`);
    expect(shown.table.rows.filter(([what]) => what?.startsWith('cable ')).length).toBe(installation.cables.length);
  });

  test('a dot joins the wires of one terminal where they part, and no others', () => {
    const lines = all(document)
      .filter(
        (each) =>
          each.tagName === 'path' &&
          /^(wire|wrong|wire-guessed)$/.test(each.getAttribute('class') ?? '') &&
          pointsOf(each).length >= 2 &&
          Math.abs((pointsOf(each)[0] as [number, number])[0] - (strip[0]?.right ?? 0)) < 0.1,
      )
      .map(pointsOf);
    const expected = new Set<string>();
    for (const { y } of strip) {
      const own = lines.filter((points) => Math.abs((points[0] as [number, number])[1] - y) < 0.1);
      // Three ways or more meet at a point: left along the terminal's own wire, up, down, or on to the right.
      const ways = new Map<string, Set<string>>();
      const way = (x: number, at: number, name: string): void =>
        void ways.set(`${x} ${at}`, (ways.get(`${x} ${at}`) ?? new Set()).add(name));
      for (const points of own) {
        const bent = points.length === 4;
        const trunk = own
          .map((other) => (other.length === 4 ? (other[2] as [number, number]) : undefined))
          .filter((found) => found !== undefined);
        for (const [tx, ty] of trunk) {
          way(tx, y, 'left');
          way(tx, ty, 'right');
          way(tx, y, ty > y ? 'down' : 'up');
          if (!bent) way(tx, y, 'right');
          for (const [ox, oy] of trunk)
            if (ox === tx)
              for (const other of [ty, y])
                if (other !== oy && Math.sign(oy - y) === Math.sign(other === y ? oy - y : other - y))
                  way(tx, oy, other > oy ? 'down' : 'up');
        }
      }
      for (const [place, found] of ways) if (found.size > 2) expected.add(place);
    }
    const dots = withClass(document, 'joint')
      .filter((each) => of(each, 'cx') > (strip[0]?.right ?? 0) && !(thingOf(each) ?? '').startsWith('link'))
      .map((each) => `${each.getAttribute('cx') ?? ''} ${each.getAttribute('cy') ?? ''}`);
    expect(new Set(dots)).toEqual(expected);
  });

  test('no two wires lie on each other unless they leave the same terminal', () => {
    const upright = new Map<number, { low: number; high: number; from: number }[]>();
    for (const wire of [...withClass(document, 'wire'), ...withClass(document, 'wire-guessed')].filter(
      (each) => each.tagName === 'path' && pointsOf(each).length === 4,
    )) {
      const [start, bend, turn] = pointsOf(wire) as [[number, number], [number, number], [number, number]];
      if (bend[0] !== turn[0]) continue;
      const span = { low: Math.min(bend[1], turn[1]), high: Math.max(bend[1], turn[1]), from: start[1] };
      for (const other of upright.get(bend[0]) ?? [])
        if (other.from !== span.from) expect(other.high < span.low || span.high < other.low).toBe(true);
      upright.set(bend[0], [...(upright.get(bend[0]) ?? []), span]);
    }
  });
});

test('a terminal that several lines name stands at the first of them', () => {
  const { text } = example('garden-court');
  const terminal = previewOf('garden-court').things.find(({ id }) => id === 'terminal.main.E0');
  expect(terminal?.start).toBe(text.indexOf('E1 E0') + 3);
});

test('edges: a chain, a terminator, and none at all', () => {
  const chain = drawingOf(previewOf('withy-lane'), 'wiring');
  const words = (svg: string): string[] =>
    all(parsed(svg))
      .filter((each) => each.tagName === 'text')
      .map((each) => each.textContent ?? '');
  expect(words(chain.svg)).toEqual(expect.arrayContaining(['chained behind it, finch-edge', '8.2 kohm ± 1 %']));
  expect(withClass(parsed(chain.svg), 'resistor').length).toBe(1);
  expect(words(drawingOf(previewOf('open-loops'), 'wiring').svg)).toContain('no terminator');
});

test('a panel of forty terminals, names of sixty characters, wires to what does not fit and to what is not there', () => {
  const long = 'n'.repeat(58);
  const terminals = Array.from(
    { length: 40 },
    (_, i) => `  terminal Z${i} ${['common', 'safety-input normally-closed common Z0', 'motor', 'supply-out'][i % 4] as string}`,
  ).join('\n');
  const sensors = Array.from(
    { length: 14 },
    (_, i) => `sensor ${long}${String(i).padStart(2, '0')} : finch-relay {\n  watches closing\n}`,
  ).join('\n');
  const wires = Array.from(
    { length: 14 },
    (_, i) =>
      `  wire ${long}${String(i).padStart(2, '0')} to Z${((i * 7) % 10) * 4 + 1} Z0\n  wire ${long}${String(i).padStart(2, '0')} supply to Z${((i * 3) % 10) * 4 + 3} Z0`,
  ).join('\n');
  const text = `${uses}
panel-model big "${'b'.repeat(60)}" {
${terminals}
}
${sensors}
panel ${'p'.repeat(60)} : big {
${wires}
  wire nobody to Z2 Z4
  wire ${long}00 test to Z2 Z99
  accessory "${'a'.repeat(300)}" draws 20 mA from Z3
}
`;
  const shown = preview(judged(text));
  const wiring = drawingOf(shown, 'wiring');
  const document = parsed(wiring.svg);
  const [, , width, height] = (document.documentElement?.getAttribute('viewBox') ?? '').split(' ').map(Number) as [
    number,
    number,
    number,
    number,
  ];
  expect(stripOf(document).length).toBe(41);
  expect(withClass(document, 'wrong').filter((each) => each.tagName === 'path').length).toBeGreaterThan(0);
  expect(all(document).some((each) => each.textContent === 'no device of this name in the file')).toBe(true);
  // All that is written stands on the paper, and in its box.
  for (const each of all(document).filter((one) => one.tagName === 'text')) {
    const size = (each.getAttribute('class') ?? '').split(' ')[0] as 'small';
    const wide = widthOf(each.textContent ?? '', size, (each.getAttribute('class') ?? '').includes('strong'));
    const anchor = each.getAttribute('text-anchor');
    const left = of(each, 'x') - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0);
    expect(left, each.textContent ?? '').toBeGreaterThanOrEqual(0);
    expect(left + wide, each.textContent ?? '').toBeLessThanOrEqual(width);
    expect(of(each, 'y')).toBeLessThanOrEqual(height);
  }
  for (const box of withClass(document, 'box'))
    for (const each of all(box.parentNode as Drawn).filter((one) => one.tagName === 'text')) {
      const strong = (each.getAttribute('class') ?? '').includes('strong');
      expect(of(each, 'x') + widthOf(each.textContent ?? '', strong ? 'normal' : 'small', strong)).toBeLessThanOrEqual(
        of(box, 'x') + of(box, 'width') + 1,
      );
      expect(of(each, 'y')).toBeLessThanOrEqual(of(box, 'y') + of(box, 'height'));
    }
});

test('several panels, each with its own strip; a panel without a model has the terminals that are named', () => {
  const shown = preview(
    judged(`${uses}
control button {
  by push-button
  acts impulse
}
panel one : marram-one {
  wire button to C1 C0
}
panel two : not-there {
  wire button to A B
  link A B
}
`),
  );
  const document = parsed(drawingOf(shown, 'wiring').svg);
  expect(withClass(document, 'strip').length).toBe(2);
  expect(drawingOf(shown, 'wiring').table.rows.map(([name]) => name)).toEqual(expect.arrayContaining(['one C1', 'two A', 'two B']));
  expect(drawingOf(preview(judged('language 1\npanel x : y {\n}\n')), 'wiring').lacks).toContain('No terminal');
  expect(drawingOf(preview(judged('language 1\n')), 'wiring').lacks).toContain('no panel');
});
