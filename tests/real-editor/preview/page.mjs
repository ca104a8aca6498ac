// The preview's page, driven in a browser as people use it: with keys, with a mouse, in every theme, and with texts that
// mean harm. `runLayer` is called by ../run.mjs; run.mjs beside this runs it alone.
import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../parts.mjs';
import { buildPage, openPage, settle } from './harness.mjs';
import { hostileAnswer, hostileMarkup, hostileSite } from './hostile.mjs';
import { themes } from './themes.mjs';

const artifacts = join(root, 'tests', 'artifacts');
const sound = join(root, 'examples', 'sound', 'salt-quay.gate');
const sliding = join(root, 'examples', 'sound', 'mill-race.gate');
const unsafe = join(root, 'examples', 'unsafe', 'pillar-trap.gate');
const hostile = join(root, 'examples', 'sound', 'hostile.gate');
const empty = join(root, 'examples', 'sound', 'empty.gate');

/** `only`: tests whose name holds this text. */
export async function runLayer({ browser, base, report, only = '' }) {
  const folder = join(base, 'preview');
  mkdirSync(folder, { recursive: true });
  const built = await buildPage(folder);
  const answers = await built.answersOf({
    [sound]: undefined,
    [sliding]: undefined,
    [unsafe]: undefined,
    [hostile]: hostileSite,
    [empty]: 'language 1\n',
  });
  const open = (options) => openPage(browser, built, options);

  const tests = testsOf({ answers, open, browser });
  for (const [name, work] of Object.entries(tests)) {
    if (!name.includes(only)) continue;
    const pages = [];
    try {
      await work(async (options) => {
        const page = await open(options);
        pages.push(page);
        return page;
      });
      for (const page of pages)
        assert.deepEqual(await page.faults(), [], 'nothing is asked for, refused, raised or said that should not be');
      report('preview', name);
    } catch (error) {
      report('preview', name, error?.stack ?? String(error));
    } finally {
      for (const page of pages) await page.close();
    }
  }
}

const testsOf = ({ answers, browser }) => ({
  'there is something to look at': async () => {
    for (const path of [sound, sliding, unsafe]) {
      const { answer } = answers[path];
      assert.deepEqual(
        answer.drawings.map(({ id }) => id),
        ['plan', 'timing', 'force', 'wiring'],
      );
      assert.ok(answer.things.length > 3 && answer.drawings[0].svg.length > 1000, path);
    }
    assert.ok(answers[sound].answer.cycle.leaves.length > 1);
  },

  ...Object.fromEntries(
    Object.keys(themes).map((theme) => [
      `axe-core finds nothing against WCAG 2.2 AA: ${theme}`,
      async (open) => {
        for (const path of theme === 'dark' ? [sound, sliding, unsafe, empty] : [sound, unsafe]) {
          const it = await open({ theme });
          const { answer } = answers[path];
          await it.show(answers[path]);
          for (const { id } of answer.drawings) {
            await it.tab(id);
            assert.deepEqual((await it.judge()).violations, [], `${path}, ${id}`);
          }
          await it.page.getByRole('button', { name: 'As a table' }).click();
          assert.deepEqual((await it.judge()).violations, [], `${path}, as a table`);
          await it.page.getByRole('button', { name: 'As a table' }).click();
          await it.say({ type: 'trouble', message: 'The language server gives no answer.' });
          await it.say({ type: 'cursor', things: [answer.things[0]?.id ?? ''] });
          assert.deepEqual((await it.judge()).violations, [], `${path}, with trouble`);
        }
      },
    ]),
  ),

  // WCAG 2.2, 1.4.11: what a control needs to be seen has a contrast of 3 to 1 at least with what is beside it; axe-core has no rule for it.
  ...Object.fromEntries(
    Object.keys(themes).map((theme) => [
      `every control is seen against what is beside it: ${theme}`,
      async (open) => {
        const it = await open({ theme });
        await it.show(answers[sound]);
        const { page } = it;
        const slider = page.locator('#time');
        const pictures = [];
        for (const end of ['min', 'max']) {
          await slider.evaluate((element, name) => {
            element.value = element[name];
            element.dispatchEvent(new Event('input'));
          }, end);
          await settle(page);
          pictures.push(
            (await slider.screenshot({ path: join(artifacts, `slider-${theme.replaceAll(/\W+/g, '-')}-${end}.png`) })).toString('base64'),
          );
        }
        const seen = await compared(browser, pictures);
        // The handle stands out at both ends from what is there without it, and beyond the height of the track.
        assert.ok(seen.rows >= 12 && seen.differ >= 2 * 100, `the handle is seen in ${seen.differ} points of ${seen.rows} rows`);
        assert.ok(seen.track >= 0.6 * seen.width, `the track is seen in ${seen.track} of ${seen.width} columns`);
        const faint = await page.evaluate(() => {
          const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
          const over = (below, colour) => {
            pen.clearRect(0, 0, 1, 1);
            for (const one of [below, colour]) {
              pen.fillStyle = one;
              pen.fillRect(0, 0, 1, 1);
            }
            return [...pen.getImageData(0, 0, 1, 1).data].slice(0, 3);
          };
          const luminance = (colour) => {
            const [r, g, b] = colour.map((part) => (part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4));
            return 0.2126 * r + 0.7152 * g + 0.0722 * b;
          };
          const contrast = (a, b) => {
            const [more, less] = [luminance(a), luminance(b)].sort((x, y) => y - x);
            return (more + 0.05) / (less + 0.05);
          };
          const paper = getComputedStyle(document.body).backgroundColor;
          const faint = [];
          const look = (what, colour) => {
            const found = contrast(over(paper, colour), over(paper, paper));
            if (found < 3) faint.push(`${what}: ${colour} on ${paper}, ${found.toFixed(2)}`);
          };
          for (const element of document.querySelectorAll('button, select, input, [role=option]')) {
            if (element.getBoundingClientRect().width === 0) continue;
            const name = element.getAttribute('aria-label') ?? element.textContent;
            // What is told by its words, an underline or its place in a list needs no edge.
            if (!element.matches('[role=tab], [role=option], .verdict, input'))
              look(`the edge of ${name}`, getComputedStyle(element).borderTopColor);
            element.focus({ focusVisible: true });
            look(`the focus of ${name}`, getComputedStyle(element).outlineColor);
            if (!element.matches('input')) look(`the words of ${name}`, getComputedStyle(element).color);
          }
          const selected = document.querySelector('[role=tab][aria-selected=true]');
          look('the mark of the tab', getComputedStyle(selected).borderBottomColor);
          return faint;
        });
        assert.deepEqual(faint, []);
      },
    ]),
  ),

  'axe-core sees a fault': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    await it.page.evaluate(() => {
      for (const name of ['aria-label', 'title']) document.querySelector('.tools button').removeAttribute(name);
      document.querySelector('.caption').style.color = '#bbbbbb';
    });
    const { violations } = await it.judge();
    assert.ok(
      violations.some((words) => words.startsWith('button-name')) && violations.some((words) => words.startsWith('color-contrast')),
      violations.join('\n'),
    );
  },

  'colours that the reader forces leave every line visible': async (open) => {
    for (const colorScheme of ['light', 'dark']) {
      const it = await open({ forcedColors: 'active', colorScheme });
      await it.show(answers[sound]);
      assert.deepEqual((await it.judge()).violations, []);
      const [line, paper, canvas] = await it.page.evaluate(() => {
        const probe = document.createElement('p');
        probe.style.color = 'Canvas';
        document.body.append(probe);
        const canvas = getComputedStyle(probe).color;
        probe.remove();
        return [
          getComputedStyle(document.querySelector('.pintle-drawing .leaf')).fill,
          getComputedStyle(document.querySelector('.pintle-drawing .paper')).fill,
          canvas,
        ];
      });
      assert.equal(paper, canvas);
      assert.notEqual(line, paper);
    }
  },

  'narrow: nothing is cut off at 320 pixels, and nothing scrolls sideways': async (open) => {
    for (const path of [sound, unsafe]) {
      const it = await open({ width: 320, height: 640 });
      await it.show(answers[path]);
      for (const { id } of answers[path].answer.drawings) {
        await it.tab(id);
        const [inner, outer] = await it.page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
        assert.ok(inner <= outer, `${id}: ${inner} in ${outer}`);
        assert.deepEqual((await it.judge()).violations, [], id);
      }
      const cut = await it.page.evaluate(() =>
        [...document.querySelectorAll('button, [role=option], h1, p')]
          .filter((element) => element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).position !== 'absolute')
          .map((element) => element.textContent),
      );
      assert.deepEqual(cut, []);
    }
  },

  'low: the page scrolls and the drawing keeps a height': async (open) => {
    const it = await open({ width: 320, height: 256 });
    await it.show(answers[sound]);
    assert.ok((await it.page.locator('#viewport').boundingBox()).height >= 150);
    await it.page.locator('#time').scrollIntoViewIfNeeded();
    assert.ok(await it.page.locator('#time').isVisible());
  },

  'every target is 24 pixels high and wide at least': async (open) => {
    for (const theme of ['light', 'high contrast']) {
      const it = await open({ theme, width: 320 });
      await it.show(answers[sound]);
      const small = await it.page.evaluate(() =>
        [...document.querySelectorAll('button, select, input, [role=option]')]
          .map((element) => [element.textContent || element.id, element.getBoundingClientRect()])
          .filter(([, box]) => box.width > 0 && (box.width < 24 || box.height < 24))
          .map(([name]) => name),
      );
      assert.deepEqual(small, []);
    }
  },

  'the keyboard reaches everything in order, sees where it is, and comes out again': async (open) => {
    for (const theme of Object.keys(themes)) {
      const it = await open({ theme });
      await it.show(answers[sound]);
      const stops = [];
      for (let i = 0; i < 30; i++) {
        await it.page.keyboard.press('Tab');
        const stop = await it.page.evaluate(() => {
          const element = document.activeElement;
          if (element === null || element === document.body) return null;
          const { outlineStyle, outlineWidth } = getComputedStyle(element);
          return {
            name: element.getAttribute('aria-label') ?? element.textContent,
            seen: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
          };
        });
        if (stop === null) break;
        stops.push(stop);
      }
      const things = answers[sound].answer.things;
      const first = stops.find(({ name }) => things.some(({ label }) => name.startsWith(label)))?.name;
      assert.deepEqual(
        stops.map(({ name }) => name),
        [
          'No errors, no warnings',
          'Stay with this file',
          'Plan',
          'Zoom out',
          'Zoom in',
          'Fit',
          'As a table',
          'Parts',
          'Save SVG',
          'Save PNG',
          'Drawing; plus and minus zoom, zero fits, arrows move',
          'Play',
          'Time in the cycle',
          'Speed',
          first,
        ],
      );
      assert.deepEqual(
        stops.filter(({ seen }) => !seen),
        [],
        theme,
      );
    }
  },

  'tabs: arrows, Home and End; one stop for all': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const titles = ['Plan', 'Timing', 'Force', 'Terminals'];
    await it.page.getByRole('tab').first().focus();
    const selected = async () => [
      await it.page.locator('[role=tab][aria-selected=true]').allTextContents(),
      await it.page.evaluate(() => document.activeElement.textContent),
      await it.page.locator('[role=tab][tabindex="0"]').count(),
    ];
    for (const [key, index] of [
      ['ArrowRight', 1],
      ['ArrowRight', 2],
      ['End', 3],
      ['ArrowRight', 0],
      ['ArrowLeft', 3],
      ['Home', 0],
    ]) {
      await it.page.keyboard.press(key);
      assert.deepEqual(await selected(), [[titles[index]], titles[index], 1], key);
      assert.equal(
        await it.page.getByRole('tabpanel').getAttribute('aria-labelledby'),
        await it.page.locator('[role=tab][aria-selected=true]').getAttribute('id'),
      );
    }
  },

  'parts: arrows and letters move, Enter and Space go, what is focused is marked and named': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const { things } = answers[sound].answer;
    const nameAt = () => it.page.evaluate(() => document.activeElement.textContent);
    await it.page.locator('#parts [role=option]').first().focus();
    const first = await nameAt();
    assert.equal(await it.page.locator('.caption').textContent(), first);
    assert.ok((await it.page.locator('#viewport .pointed').count()) > 0);
    await it.page.keyboard.press('ArrowDown');
    const second = await nameAt();
    assert.notEqual(second, first);
    assert.equal(await it.page.locator('.caption').textContent(), second);
    const shown = (name) => things.find(({ label, range }) => name === `${label}, line ${range.start.line + 1}`).id;
    await it.page.keyboard.press('Enter');
    await it.page.keyboard.press('ArrowUp');
    await it.page.keyboard.press(' ');
    await it.page.keyboard.press('End');
    const last = await nameAt();
    await it.page.keyboard.press(last.charAt(0));
    assert.equal((await nameAt()).charAt(0), last.charAt(0));
    assert.deepEqual(
      (await it.sent()).filter(({ type }) => type === 'go').map(({ thing }) => thing),
      [shown(second), shown(first)],
    );
    assert.equal(await it.page.locator('#parts [aria-selected=true]').textContent(), first);
  },

  'zoom: buttons, keys and wheel; arrows, dragging and scrolling move; 0 fits': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const { page } = it;
    const width = () => page.evaluate(() => document.querySelector('#viewport > svg').getBoundingClientRect().width);
    const fitted = await width();
    await page.getByRole('button', { name: 'Zoom in' }).click();
    const once = await width();
    assert.ok(once > fitted * 1.2);
    await page.locator('#viewport').focus();
    await page.keyboard.press('+');
    assert.ok((await width()) > once);
    await page.keyboard.press('-');
    assert.ok(Math.abs((await width()) - once) < 3);
    await page.keyboard.press('0');
    assert.equal(await width(), fitted);
    // What lies under the pointer stays there.
    const box = await page.locator('#viewport').boundingBox();
    const [x, y] = [box.x + box.width * 0.7, box.y + box.height * 0.3];
    const under = () =>
      page.evaluate(
        ([px, py]) => {
          const drawn = document.querySelector('#viewport > svg').getBoundingClientRect();
          return [(px - drawn.left) / drawn.width, (py - drawn.top) / drawn.height];
        },
        [x, y],
      );
    const before = await under();
    await page.mouse.move(x, y);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -300);
    await page.keyboard.up('Control');
    await page.waitForFunction((least) => document.querySelector('#viewport > svg').getBoundingClientRect().width > least, fitted * 2);
    await settle(page);
    const after = await under();
    assert.ok(Math.hypot(before[0] - after[0], before[1] - after[1]) < 0.01, `${before} ${after}`);
    // Dragging moves, and is no click.
    const left = () => page.evaluate(() => document.querySelector('#viewport').scrollLeft);
    const from = await left();
    const [onX, onY] = await page.evaluate(() => {
      const { left: first, top, right, bottom } = document.querySelector('#viewport').getBoundingClientRect();
      for (let py = top + 40; py < bottom - 20; py += 4)
        for (let px = first + 100; px < right - 20; px += 4)
          if (document.elementFromPoint(px, py)?.closest('[data-thing]') !== null) return [px, py];
      return [0, 0];
    });
    await page.mouse.move(onX, onY);
    await page.mouse.down();
    await page.mouse.move(onX - 60, onY - 20, { steps: 4 });
    await page.mouse.up();
    assert.equal((await left()) - from, 60);
    assert.deepEqual(
      (await it.sent()).filter(({ type }) => type === 'go'),
      [],
    );
    await page.locator('#viewport').focus();
    await page.keyboard.press('ArrowLeft');
    await page.waitForFunction((at) => document.querySelector('#viewport').scrollLeft < at, from + 60);
  },

  'the mouse: a thing shows its name and goes to its line, also beside a thin one': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const { page } = it;
    const beam = answers[sound].answer.things.find(({ id }) => id === 'sensor.low-beam');
    const place = await page.evaluate((id) => {
      const piece = [...document.querySelectorAll('#viewport [data-thing]')].find((element) => element.dataset.thing === id);
      const line = piece.querySelector('line, path');
      const box = line.getBoundingClientRect();
      // Up from the line to where nothing is, and a little further.
      const x = Math.round(box.left + box.width * 0.9);
      let y = Math.round(box.top + box.height / 2);
      while (document.elementFromPoint(x, y).closest('[data-thing]') !== null) y--;
      return [x, y - 5];
    }, beam.id);
    await page.mouse.move(...place);
    assert.equal(await page.locator('.caption').textContent(), `${beam.label}, line ${beam.range.start.line + 1}`);
    await page.mouse.click(place[0], place[1]);
    assert.deepEqual(
      (await it.sent()).filter(({ type }) => type === 'go'),
      [{ type: 'go', thing: beam.id }],
    );
    await page.keyboard.press('Escape');
    assert.match(await page.locator('.caption').textContent(), /^At the cursor: /);
  },

  'the cursor: the innermost thing that is drawn is marked, listed, and brought into view': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const { page } = it;
    const { things, drawings } = answers[sound].answer;
    const [one, other] = things.filter(({ id }) => drawings[0].svg.includes(`data-thing="${id}"`));
    for (let i = 0; i < 8; i++) await page.keyboard.press('Tab');
    await page.locator('#viewport').focus();
    for (let i = 0; i < 8; i++) await page.keyboard.press('+');
    for (const thing of [one, other]) {
      await it.say({ type: 'cursor', things: ['terminal.nowhere.1', thing.id] });
      await page.waitForFunction((id) => document.querySelector('[role=option][aria-selected=true]')?.dataset.thing === id, thing.id);
      assert.ok((await page.locator('.marks .selected-line').count()) > 0);
      const near = await page.evaluate((id) => {
        const window = document.querySelector('#viewport').getBoundingClientRect();
        const boxes = [...document.querySelectorAll('#viewport [data-thing]')]
          .filter((element) => element.dataset.thing === id)
          .map((element) => element.getBoundingClientRect());
        return boxes.some(
          (box) => box.right > window.left && box.left < window.right && box.bottom > window.top && box.top < window.bottom,
        );
      }, thing.id);
      assert.ok(near, thing.id);
    }
    await it.say({ type: 'cursor', things: [] });
    assert.equal(await page.locator('.marks path').count(), 0);
    assert.equal(await page.locator('[role=option][aria-selected=true]').count(), 0);
  },

  'the slider moves the leaves, and says where they are': async (open) => {
    for (const path of [sound, sliding]) {
      const it = await open({});
      await it.show(answers[path]);
      const { page } = it;
      const { cycle } = answers[path].answer;
      const leaf = cycle.leaves[0];
      const moved = () =>
        page.evaluate((id) => document.querySelector(`#viewport [data-moves="${id}"]`).getAttribute('transform'), leaf.thing);
      const box = () =>
        page.evaluate((id) => {
          const { left, top, right, bottom } = document.querySelector(`#viewport [data-moves="${id}"]`).getBoundingClientRect();
          return [left, top, right, bottom];
        }, leaf.thing);
      const apart = (one, other) => Math.max(...one.map((value, i) => Math.abs(value - other[i])));
      const closed = await box();
      const widest = leaf.times[leaf.values.findIndex((value) => Math.abs(value) === Math.max(...leaf.values.map(Math.abs)))];
      await page.locator('#time').fill(String(Math.ceil(widest * 10) / 10));
      const open_ = await box();
      assert.ok(apart(open_, closed) > 50, `${closed} ${open_}`);
      assert.match(await moved(), leaf.motion.kind === 'turn' ? /^rotate\(-?\d/ : /^translate\(-?\d/);
      const phase = cycle.phases.find(({ from, to }) => from <= widest && widest < to)?.label ?? '';
      // Where nobody says how long the gate stands open, the cycle has no length to tell.
      const told = cycle.total === undefined ? /^\d+\.\d s: ./ : /^\d+\.\d s of \d+(\.\d)? s: ./;
      assert.equal(cycle.total === undefined, path === sound);
      assert.match(await page.locator('#time').getAttribute('aria-valuetext'), told);
      assert.ok(phase !== '');
      await page.locator('#time').focus();
      const value = Number(await page.locator('#time').inputValue());
      await page.keyboard.press('ArrowRight');
      assert.ok(Number(await page.locator('#time').inputValue()) > value);
      assert.equal(await page.locator('.moment').textContent(), await page.locator('#time').getAttribute('aria-valuetext'));
      await page.keyboard.press('Home');
      const back = await box();
      assert.ok(apart(back, closed) < 1);
    }
  },

  'play plays, pauses, and ends; with less motion it goes from picture to picture': async (open) => {
    for (const reducedMotion of ['no-preference', 'reduce']) {
      const it = await open({ reducedMotion });
      const { page } = it;
      await it.show(answers[sound]);
      const time = async () => Number(await page.locator('#time').inputValue());
      await page.getByLabel('Speed').selectOption('10');
      await page.getByRole('button', { name: 'Play' }).click();
      await page.waitForFunction(() => Number(document.querySelector('#time').value) > 3);
      await page.getByRole('button', { name: 'Pause' }).click();
      const stopped = await time();
      const borders = answers[sound].answer.cycle.phases.flatMap(({ from, to }) => [from, to]);
      const atBorder = borders.some((border) => Math.abs(border - stopped) < 0.06);
      if (reducedMotion === 'reduce') assert.ok(atBorder, `${stopped} is none of ${borders}`);
      await settle(page);
      assert.equal(await time(), stopped);
      await page.locator('#time').fill(String(Math.floor(answers[sound].answer.cycle.duration)));
      await page.getByRole('button', { name: 'Play' }).click();
      const { duration, told } = answers[sound].answer.cycle;
      const end = `${(duration - told).toFixed(1)} s after the command to close`;
      await page.waitForFunction((words) => document.querySelector('.moment').textContent.startsWith(words), end);
      await page.getByRole('button', { name: 'Play' }).waitFor();
    }
  },

  'an update keeps tab, zoom, place and time, and the drawing stays until the new one is there': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const { page } = it;
    await page.locator('#viewport').focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press('+');
    await page.locator('#viewport').evaluate((element) => element.scrollBy(40, 30));
    await settle(page);
    await page.locator('#time').fill('12');
    const look = () =>
      page.evaluate(() => {
        const { scrollLeft, scrollTop } = document.querySelector('#viewport');
        return [
          scrollLeft,
          scrollTop,
          document.querySelector('#viewport > svg').style.width,
          document.querySelector('#time').value,
          document.querySelector('[role=tab][aria-selected=true]').textContent,
        ];
      });
    const before = await look();
    await it.say({ type: 'trouble', message: 'No answer.' });
    assert.deepEqual(await page.locator('.trouble').textContent(), 'No answer.');
    assert.ok(await page.locator('#viewport > svg').isVisible());
    const { uri, answer } = answers[sound];
    const changed = {
      ...answer,
      counts: { error: 1, warning: 0, note: 0 },
      drawings: answer.drawings.map((drawing) => ({
        ...drawing,
        svg: drawing.svg.replace('</svg>', '<circle class="new" cx="1" cy="1" r="1"/></svg>'),
      })),
    };
    await it.say({ type: 'answer', uri, answer: changed });
    await page.waitForSelector('#viewport .new', { state: 'attached' });
    await settle(page);
    const after = await look();
    assert.deepEqual(after.slice(2), before.slice(2));
    // The words of trouble took room and gave it back: a pixel may be lost on the way.
    assert.ok(Math.abs(after[0] - before[0]) <= 2 && Math.abs(after[1] - before[1]) <= 2, `${before} ${after}`);
    assert.equal(await page.locator('.trouble').isVisible(), false);
    assert.equal(await page.locator('.verdict').textContent(), '1 error, no warnings');
    // An answer for another file has come too late.
    await it.say({ type: 'answer', uri: 'file:///other.gate', answer: { ...answer, title: 'Another' } });
    assert.notEqual(await page.locator('h1').textContent(), 'Another');
    // And a window that is loaded anew shows the same.
    await page.waitForFunction(() => globalThis.stub.kept()?.time === 12);
    const again = await open({ state: await it.kept() });
    await again.show({ uri, answer: changed });
    const there = await again.page.evaluate(() => [
      document.querySelector('#viewport > svg').style.width,
      document.querySelector('#time').value,
    ]);
    assert.deepEqual(there, before.slice(2, 4));
    // Another file begins anew.
    await again.show(answers[sliding]);
    assert.equal(await again.page.locator('#time').inputValue(), '0');
  },

  'what is read out: nothing while the text changes, then once': async (open) => {
    const it = await open({});
    const { page } = it;
    const { uri, answer } = answers[sound];
    await page.clock.install();
    await it.say({ type: 'file', uri, name: 'a.gate', stays: false });
    const words = () => page.locator('#announced').textContent();
    await it.say({ type: 'answer', uri, answer });
    await page.clock.runFor(5000);
    assert.equal(await words(), '');
    for (let error = 1; error < 4; error++) {
      await it.say({ type: 'answer', uri, answer: { ...answer, counts: { error, warning: 0, note: 0 } } });
      await page.clock.runFor(1000);
      assert.equal(await words(), '');
    }
    await page.clock.runFor(1000);
    assert.equal(await words(), '3 errors, no warnings.');
    assert.equal(await page.locator('#announced').getAttribute('role'), 'status');
  },

  'a drawing as a table says the same': async (open) => {
    const it = await open({});
    await it.show(answers[unsafe]);
    const { page } = it;
    await page.getByRole('button', { name: 'As a table' }).click();
    for (const { id, table } of answers[unsafe].answer.drawings) {
      await it.tab(id);
      assert.equal(await page.locator('caption').textContent(), table.caption);
      assert.deepEqual(await page.locator('thead th').allTextContents(), table.heads);
      assert.deepEqual(
        await page.locator('tbody tr').evaluateAll((rows) => rows.map((row) => [...row.cells].map((cell) => cell.textContent))),
        table.rows.map((row) => [...row]),
      );
      assert.equal(await page.locator('#viewport').isVisible(), false);
    }
  },

  'what cannot be drawn says what it lacks': async (open) => {
    const it = await open({});
    await it.show(answers[empty]);
    for (const { id, lacks } of answers[empty].answer.drawings) {
      await it.tab(id);
      assert.ok(lacks.length > 20);
      assert.equal(await it.page.locator('.lacks').textContent(), lacks);
      assert.equal(await it.page.getByRole('button', { name: 'Save PNG' }).isVisible(), false);
    }
  },

  'buttons say what they ask for': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    const { page } = it;
    await page.getByRole('button', { name: 'Stay with this file' }).click();
    assert.equal(await page.getByRole('button', { name: 'Stay with this file' }).getAttribute('aria-pressed'), 'true');
    await page.getByRole('button', { name: 'Save SVG' }).click();
    await it.tab('wiring');
    await page.getByRole('button', { name: 'Save PNG' }).click();
    await page.locator('.verdict').click();
    assert.deepEqual(await it.sent(), [
      { type: 'ready' },
      { type: 'stay', stays: true },
      { type: 'export', drawing: 'plan', format: 'svg' },
      { type: 'export', drawing: 'wiring', format: 'png' },
      { type: 'problems' },
    ]);
  },

  'every drawing becomes a picture of its size, and not an empty one': async (open) => {
    const it = await open({});
    const { page } = it;
    await it.show(answers[unsafe]);
    let number = 0;
    for (const [id, { svg, width, height }] of [...Object.entries(answers[unsafe].files), ...Object.entries(answers[sound].files)]) {
      if (svg === '') continue;
      number++;
      await it.say({ type: 'rasterise', number, svg, width, height, scale: 2 });
      await page.waitForFunction(
        (wanted) => globalThis.stub.sent.some((message) => message.type === 'rasterised' && message.number === wanted),
        number,
      );
      const { png } = (await it.sent()).find((message) => message.type === 'rasterised' && message.number === number);
      const bytes = Buffer.from(png ?? '', 'base64');
      assert.equal(bytes.subarray(1, 4).toString('latin1'), 'PNG', id);
      assert.deepEqual([bytes.readUInt32BE(16), bytes.readUInt32BE(20)], [Math.round(width * 2), Math.round(height * 2)], id);
      const colours = await coloursOf(browser, png);
      assert.ok(colours > 8, `${id} has ${colours} colours`);
    }
    assert.ok(number > 4);
    await it.say({ type: 'rasterise', number: 99, svg: 'no drawing', width: 10, height: 10, scale: 2 });
    await page.waitForFunction(() => globalThis.stub.sent.some((message) => message.number === 99));
    assert.deepEqual((await it.sent()).at(-1), { type: 'rasterised', number: 99 });
  },

  'texts that mean harm stay texts': async (open) => {
    // First that they do mean harm: in a page without a policy and without care, each of them acts.
    const bare = await browser.newContext();
    const bait = await bare.newPage();
    const asked = [];
    await bare.route(
      '**/*',
      (route) => (
        asked.push(route.request().url()),
        route.request().url() === 'https://bare.test/'
          ? route.fulfill({ contentType: 'text/html', body: '<div id=here></div>' })
          : route.abort()
      ),
    );
    await bait.goto('https://bare.test/');
    await bait.evaluate((markup) => (document.querySelector('#here').innerHTML = markup), hostileMarkup);
    await bait.waitForFunction(() => globalThis.harm > 1);
    assert.ok(asked.some((url) => url.includes('evil.test')));
    await bare.close();

    for (const given of [{ uri: 'file:///hostile.gate', answer: hostileAnswer(answers[sound].answer) }, answers[hostile]]) {
      const it = await open({});
      const { page } = it;
      await it.show(given);
      for (const { id } of given.answer.drawings) {
        await it.tab(id);
        await page.getByRole('button', { name: 'As a table' }).click();
        await settle(page);
        await page.getByRole('button', { name: 'As a table' }).click();
        for (const option of await page.locator('#parts [role=option]').all()) {
          await option.hover();
          await option.click();
        }
      }
      await it.say({ type: 'trouble', message: hostileMarkup });
      await it.say({ type: 'cursor', things: given.answer.things.map(({ id }) => id) });
      await settle(page);
      const seen = await page.evaluate(() => ({
        harm: globalThis.harm,
        strangers: [
          ...document.querySelectorAll(
            'script:not([src="https://preview.test/preview.js"]), img, iframe, object, embed, a, use, image, foreignObject, animate, set, style, #page ~ *:not(script), [onload], [onclick], [onerror], [href]:not(link), [style*="url"]',
          ),
        ].map((element) => element.outerHTML.slice(0, 80)),
        title: document.querySelector('h1').textContent,
      }));
      assert.deepEqual(seen, { harm: undefined, strangers: [], title: given.answer.title });
      if (given !== answers[hostile]) {
        // To read what must not come in, the browser tells of it, and refuses it, before anything is done with it.
        assert.deepEqual(
          (await it.faults()).filter(
            (fault) => !/violates the following Content Security Policy|^(script|style)-src-(attr|elem): inline/.test(fault),
          ),
          [],
        );
        it.forgive();
        await page.evaluate(() => void (globalThis.stub.breaches.length = 0));
      }
    }
    assert.ok(answers[hostile].answer.title.includes('<script>'), answers[hostile].answer.title);
  },

  'the policy is the second wall: even what got in would do nothing': async (open) => {
    const it = await open({});
    await it.show(answers[sound]);
    await it.page.evaluate((markup) => {
      const box = document.createElement('div');
      box.innerHTML = markup;
      document.body.append(box);
      const script = document.createElement('script');
      script.textContent = 'globalThis.harm = 9';
      document.body.append(script);
    }, hostileMarkup);
    await it.page.waitForFunction(() => globalThis.stub.breaches.length >= 3);
    assert.equal(await it.page.evaluate(() => globalThis.harm), undefined);
    assert.deepEqual(
      (await it.faults()).filter((fault) => fault.startsWith('request:')),
      [],
    );
    // These breaches were ours.
    await it.page.evaluate(() => void (globalThis.stub.breaches.length = 0));
    it.forgive();
  },
});

/** How many colours a picture has, up to a few. */
async function coloursOf(browser, png) {
  const page = await browser.newPage();
  try {
    return await page.evaluate(async (data) => {
      const picture = new Image();
      picture.src = `data:image/png;base64,${data}`;
      await picture.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [picture.width, picture.height];
      const pen = canvas.getContext('2d');
      pen.drawImage(picture, 0, 0);
      const { data: points } = pen.getImageData(0, 0, picture.width, picture.height);
      const seen = new Set();
      for (let i = 0; i < points.length && seen.size < 20; i += 4) seen.add(`${points[i]},${points[i + 1]},${points[i + 2]}`);
      return seen.size;
    }, png);
  } finally {
    await page.close();
  }
}

/**
 * Two pictures of the slider, its handle at one end and at the other: the points and rows at which they differ by 3 to 1 at least, and
 * the columns in which some point stands out from the picture's corner by as much.
 */
async function compared(browser, pictures) {
  const page = await browser.newPage();
  try {
    return await page.evaluate(async (data) => {
      const [first, second] = await Promise.all(
        data.map(async (one) => {
          const picture = new Image();
          picture.src = `data:image/png;base64,${one}`;
          await picture.decode();
          const canvas = document.createElement('canvas');
          [canvas.width, canvas.height] = [picture.width, picture.height];
          const pen = canvas.getContext('2d');
          pen.drawImage(picture, 0, 0);
          return pen.getImageData(0, 0, picture.width, picture.height);
        }),
      );
      const { width, height } = first;
      const luminance = ({ data: points }, i) => {
        const [r, g, b] = [0, 1, 2].map((part) => {
          const value = points[i * 4 + part] / 255;
          return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const contrast = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      let differ = 0;
      const rows = new Set();
      for (let i = 0; i < width * height; i++)
        if (contrast(luminance(first, i), luminance(second, i)) >= 3) {
          differ++;
          rows.add(Math.floor(i / width));
        }
      const corner = luminance(first, 0);
      let track = 0;
      for (let x = 0; x < width; x++) {
        let seen = false;
        for (let y = 0; y < height && !seen; y++) seen = contrast(luminance(first, y * width + x), corner) >= 3;
        if (seen) track++;
      }
      return { differ, rows: rows.size, track, width };
    }, pictures);
  } finally {
    await page.close();
  }
}
