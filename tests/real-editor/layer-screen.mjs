// Through the screen, as eyes and keys have it. Pictures go to tests/artifacts/: look at them.
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { pageAddress } from './editor.mjs';
import { axe, root } from './parts.mjs';

const artifacts = join(root, 'tests', 'artifacts');
/** Themes by what a page is told of them. */
const themes = {
  light: 'Light Modern',
  dark: 'Dark Modern',
  'high-contrast': 'Dark High Contrast',
  'high-contrast-light': 'Light High Contrast',
};

const plain = (text) => text.replaceAll('\u00a0', ' ');

/** Asks until it is so; what stands on the screen comes when it comes. */
async function until(what, get, holds = (value) => value !== undefined && value !== false) {
  let last;
  for (let tries = 0; tries < 300; tries++) {
    last = await get();
    if (holds(last)) return last;
    await wait(50);
  }
  throw new Error(`${what}; last seen: ${JSON.stringify(last)?.slice(0, 600)}`);
}

export async function runLayer({ server, browser, site, report }) {
  mkdirSync(artifacts, { recursive: true });
  for (const name of readdirSync(artifacts)) if (/^failed-.*\.png$/.test(name)) rmSync(join(artifacts, name));
  const context = await browser.newContext({ viewport: { width: 1360, height: 860 } });
  context.setDefaultTimeout(15_000);
  const page = await context.newPage();
  const strangers = new Set();
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (/^(https?|wss?):$/.test(url.protocol) && url.hostname !== '127.0.0.1' && !url.hostname.endsWith('.vscode-cdn.net'))
      strangers.add(url.host);
  });

  const shot = (name) => page.screenshot({ path: join(artifacts, `${name}.png`) });
  const texts = (selector) =>
    page
      .locator(selector)
      .evaluateAll((all) => all.map((one) => one.textContent))
      .then((all) => all.map(plain));
  const labels = (selector) =>
    page
      .locator(selector)
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''))
      .then((all) => all.map(plain));
  /** Runs a command by its title, from the list of commands. */
  const command = async (title) => {
    await page.keyboard.press('F1');
    const input = page.locator('.quick-input-widget input').first();
    await input.waitFor({ state: 'visible' });
    await input.fill(`>${title}`);
    const row = page.locator(`.quick-input-list .monaco-list-row[aria-label^="${title}"]`).first();
    await row.click({ timeout: 10_000 });
    // It closes, or another list takes its place.
    await until('the list of commands is gone', async () => !(await input.isVisible()) || !(await input.inputValue()).startsWith('>'));
  };
  const useTheme = async (name) => {
    await command('Preferences: Color Theme');
    const input = page.locator('.quick-input-widget input').first();
    await input.fill(name);
    await page.locator(`.quick-input-list .monaco-list-row[aria-label^="${name}"]`).first().click();
    await input.waitFor({ state: 'hidden' });
  };
  const goTo = async (line) => {
    // In the text's editor, also with the list of problems below it or the preview beside it.
    await page.mouse.click(820, 330);
    await page.keyboard.press('Control+g');
    const input = page.locator('.quick-input-widget input').first();
    await input.waitFor({ state: 'visible' });
    await input.fill(`:${line}`);
    await page.keyboard.press('Enter');
    await input.waitFor({ state: 'hidden' });
  };
  const test = async (name, body) => {
    try {
      await body();
      report('screen', name);
    } catch (error) {
      await shot(`failed-${name.replaceAll(/[^a-z]+/gi, '-').slice(0, 40)}`).catch(() => undefined);
      report('screen', name, error?.stack ?? String(error));
      await page.keyboard.press('Escape').catch(() => undefined);
    }
  };
  const previewFrame = () =>
    until('the frame of the preview', async () => {
      for (const frame of page.frames())
        if (
          await frame.evaluate(() => document.getElementById('page') !== null && document.querySelector('svg') !== null).catch(() => false)
        )
          return frame;
      return undefined;
    });

  try {
    // A machine that is busy with other things takes its time.
    await page.goto(pageAddress(server, site, [], join(site, 'unsafe', 'leaves-collide.gate')), { timeout: 120_000 });

    await test('mistakes are underlined, and listed with their rule', async () => {
      await page.locator('.view-line').first().waitFor({ timeout: 30_000 });
      const lag =
        readFileSync(join(site, 'unsafe', 'leaves-collide.gate'), 'utf8')
          .split('\n')
          .findIndex((line) => line.includes('lag closing')) + 1;
      await goTo(lag);
      await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
      await shot('squiggles');
      await command('Problems: Focus on Problems View');
      await until(
        'problems',
        () => page.locator('.markers-panel .monaco-list-row').count(),
        (many) => many > 3,
      );
      const filter = page.locator('.viewpane-filter input, .viewpane-filter textarea').first();
      // The view is made anew as findings arrive, and what is typed meanwhile is lost.
      const listed = async () =>
        (await texts('.markers-panel .monaco-list-row')).some((text) => text.includes('lag of 0.2 s') && text.includes('lag-too-small'));
      for (let tries = 0; tries < 8 && !(await listed()); tries++) {
        await filter.fill('');
        await filter.click();
        await page.keyboard.type('lag of 0.2 s');
        await wait(1000);
      }
      if (!(await listed()))
        throw new Error(`no row has the lag and its rule: ${(await texts('.markers-panel .monaco-list-row')).join(' | ')}`);
      await shot('problems');
      await command('View: Hide Panel');
    });

    await test('values stand behind their lines', async () => {
      await goTo(1);
      const lines = await until(
        'values',
        () => texts('.view-line'),
        (all) => all.some((line) => /run time [\d.]+ s/.test(line)),
      );
      if (!lines.some((line) => /^leaf left/.test(line))) throw new Error('the file is not the one that was opened');
      await shot('values');
    });

    await test('hover tells what a word means', async () => {
      await page
        .locator('.view-line span', { hasText: /^overlap/ })
        .first()
        .hover();
      const text = await until(
        'a hover',
        async () => (await texts('.monaco-hover')).join('\n'),
        (all) => all.includes('overlap') && all.length > 60,
      );
      await shot('hover');
      if (text.includes('undefined')) throw new Error(text);
      await page.mouse.move(5, 5);
    });

    await test('a value tells its formula and its source', async () => {
      await page
        .locator('.view-line span', { hasText: /run.time/ })
        .last()
        .hover();
      await until(
        'the working',
        async () => (await texts('.monaco-hover')).join('\n'),
        (all) => /= 17\.2 s/.test(all) && /Source: /.test(all),
      );
      await shot('value-hover');
      await page.mouse.move(5, 5);
    });

    await test('the verdict stands in the status bar', async () => {
      await until(
        'the verdict',
        () => labels('.statusbar-item, .statusbar-item a'),
        (all) => all.some((label) => /Pintle: .*error/i.test(label)),
      );
    });

    await test('the installation is a tree', async () => {
      const header = page.locator('.pane-header', { hasText: 'Gate Installation' });
      await header.waitFor();
      if ((await header.getAttribute('aria-expanded')) !== 'true') await header.click();
      const pane = '.pane:has(.pane-header:has-text("Gate Installation")) .monaco-list-row';
      const rows = await until(
        'leaves in the tree',
        () => labels(pane),
        (all) => all.some((label) => /leaf.*left/i.test(label)),
      );
      if (!rows.some((label) => /, an? (error|warning) in it/.test(label)))
        throw new Error(`no row tells of what is wrong: ${rows.join(' | ')}`);
      await shot('tree');
    });

    await test('the walkthrough opens', async () => {
      await command('Welcome: Open Walkthrough...');
      const pick = page.locator('.quick-input-list .monaco-list-row', { hasText: 'Gates as text' }).first();
      await pick.waitFor();
      await pick.click();
      await page.locator('.gettingStartedContainer .getting-started-step', { hasText: 'Write a site' }).first().waitFor();
      await wait(800);
      await shot('walkthrough');
      await command('View: Close Editor');
    });

    await test('a rule is explained by its page', async () => {
      await command('Pintle: Explain a Rule');
      const input = page.locator('.quick-input-widget input').first();
      await until(
        'the list of rules',
        () => page.locator('.quick-input-list .monaco-list-row').count(),
        (many) => many > 5,
      );
      await input.fill('lag-too-small');
      await until(
        'the rule',
        () => texts('.quick-input-list .monaco-list-row'),
        (all) => all[0]?.includes('lag-too-small'),
      );
      await page.keyboard.press('Enter');
      await until('its page', async () => {
        for (const frame of page.frames())
          if (await frame.evaluate(() => document.querySelector('h1')?.textContent?.includes('lag-too-small') === true).catch(() => false))
            return true;
        return undefined;
      });
      await shot('rule-page');
      await command('View: Close Editor');
    });

    await test('what files promise are tests that can be run', async () => {
      await command('Testing: Focus on Test Explorer View');
      const rows = await until(
        'files in the list of tests',
        () => labels('.test-explorer .monaco-list-row'),
        (all) => all.some((label) => label.includes('withy-lane.gate')),
      );
      if (rows.some((label) => /[Ff]ailed/.test(label))) throw new Error(`failed before it was run: ${rows.join(' | ')}`);
      await command('Test: Run All Tests');
      await until(
        'they have passed',
        () => labels('.test-explorer .monaco-list-row'),
        (all) => all.some((label) => /withy-lane\.gate.*[Pp]assed|[Pp]assed.*withy-lane\.gate/.test(label)),
      );
      await shot('tests');
      await command('Explorer: Focus on Folders View');
    });

    await test('the preview draws the installation', async () => {
      await goTo(1);
      await page
        .locator('.view-line', { hasText: /leaf.left/ })
        .first()
        .click();
      await command('Pintle: Open the Preview to the Side');
      const frame = await previewFrame();
      await until(
        'a leaf in the drawing',
        () => frame.locator('[data-thing="leaf.left"]').count(),
        (many) => many > 0,
      );
      await wait(500);
      await shot('preview-light');
    });

    for (const [theme, name] of Object.entries(themes))
      await test(`the preview can be used by all in ${theme}`, async () => {
        await useTheme(name);
        const wanted = `vscode-${theme}`;
        const frame = await previewFrame();
        await until(
          'the theme',
          () => frame.evaluate(() => document.body.className),
          (classes) => classes.split(' ').includes(wanted),
        );
        await wait(400);
        await frame.evaluate(readFileSync(axe, 'utf8'));
        const faults = await frame.evaluate(async () => {
          const { violations, passes } = await globalThis.axe.run(document, {
            runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
            resultTypes: ['violations', 'passes'],
          });
          return {
            passed: passes.length,
            violations: violations.map(
              ({ id, help, nodes }) =>
                `${id}: ${help}\n  ${nodes
                  .slice(0, 4)
                  .map(({ target, failureSummary }) => `${target.join(' ')} ${failureSummary}`)
                  .join('\n  ')}`,
            ),
          };
        });
        await shot(`preview-${theme}`);
        if (faults.passed < 8) throw new Error(`only ${faults.passed} checks of accessibility applied`);
        if (faults.violations.length > 0) throw new Error(faults.violations.join('\n'));
      });

    await test('the preview can be used by keys alone', async () => {
      await useTheme(themes.light);
      const frame = await previewFrame();
      await frame.locator('body').click({ position: { x: 3, y: 3 } });
      const stops = [];
      for (let presses = 0; presses < 40; presses++) {
        await page.keyboard.press('Tab');
        const stop = await frame.evaluate(() => {
          const { activeElement: active } = document;
          if (active === null || active === document.body) return undefined;
          const { outlineStyle, boxShadow } = getComputedStyle(active);
          return {
            name:
              active.getAttribute('data-thing') ??
              active.getAttribute('aria-label') ??
              active.textContent?.trim().slice(0, 40) ??
              active.tagName,
            tag: active.tagName.toLowerCase(),
            seen: outlineStyle !== 'none' || boxShadow !== 'none',
          };
        });
        if (stop !== undefined) stops.push(stop);
      }
      const different = new Set(stops.map(({ name }) => name));
      if (different.size < 5) throw new Error(`the keys reach only: ${[...different].join(', ')}`);
      const unseen = stops.filter(({ seen, tag }) => !seen && tag !== 'select');
      if (unseen.length > 0)
        throw new Error(
          `where the keys are cannot be seen at: ${[...new Set(unseen.map(({ name, tag }) => `${tag} ${name}`))].join(', ')}`,
        );
      await shot('preview-keys');
    });

    await test('nothing is asked of anybody elsewhere', async () => {
      if (strangers.size > 0) throw new Error([...strangers].join(', '));
    });
  } finally {
    await context.close();
  }
}
