// Takes the pictures of the walkthrough and of the README from the product itself: `node tests/real-editor/pictures.mjs`.
// Look at them before you keep them. Where ImageMagick is there, they are reduced to 32 colours, which nobody sees.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { pack } from '../workshop/package.mjs';
import { prepare } from '../workshop/prepare.mjs';
import { missingParts, root } from './parts.mjs';

const missing = missingParts();
if (missing.length > 0) {
  console.error(`No pictures: ${missing.join(', ')}.`);
  process.exit(1);
}
const media = join(root, 'client', 'media');
const base = mkdtempSync(join(tmpdir(), 'pintle-pictures-'));
let server;
let browser;
try {
  prepare();
  const vsix = join(base, 'pintle.vsix');
  pack(vsix);
  const { pageAddress, startBrowser, startServer } = await import('./editor.mjs');
  const site = join(base, 'site');
  cpSync(join(root, 'examples'), site, { recursive: true });
  server = await startServer(base, vsix, {
    'workbench.activityBar.location': 'hidden',
    'workbench.sideBar.location': 'left',
    'breadcrumbs.enabled': false,
    'editor.lineNumbers': 'on',
    'editor.fontSize': 13,
    'editor.scrollBeyondLastLine': false,
  });
  browser = await startBrowser();
  const open = async (file, width = 900, height = 620) => {
    const page = await browser.newPage({ viewport: { width, height } });
    await page.goto(pageAddress(server, site, [], join(site, file)));
    await page.locator('.view-line').first().waitFor({ timeout: 30_000 });
    await page.waitForFunction(
      () => [...document.querySelectorAll('.view-line')].some((line) => /run.time/.test(line.textContent)),
      undefined,
      { timeout: 30_000 },
    );
    await page.keyboard.press('Control+b');
    await wait(1500);
    return page;
  };
  const goTo = async (page, place) => {
    await page.keyboard.press('Control+g');
    const input = page.locator('.quick-input-widget input').first();
    await input.waitFor({ state: 'visible' });
    await input.fill(`:${place}`);
    await page.keyboard.press('Enter');
    await input.waitFor({ state: 'hidden' });
    await wait(400);
  };
  const take = async (page, name, clip) => {
    const path = join(media, name);
    await page.screenshot({ path, ...(clip === undefined ? {} : { clip }) });
    spawnSync('convert', [path, '-dither', 'None', '-colors', '32', '-strip', `PNG8:${path}`]);
    console.log(`${name}: ${(statSync(path).size / 1000).toFixed(0)} kB`);
  };
  const lineOf = async (text) => {
    const file = (await import('node:fs')).readFileSync(text.file, 'utf8').split('\n');
    return file.findIndex((line) => line.includes(text.has)) + 1;
  };
  const within = { x: 4, y: 32, width: 620, height: 380 };

  const withy = join(site, 'sound', 'withy-lane.gate');
  const collide = join(site, 'unsafe', 'leaves-collide.gate');
  // First, for what is typed below stays in the file for as long as the editor lives.
  let page = await open('sound/withy-lane.gate', 1060, 640);
  await goTo(page, 25);
  await page.keyboard.press('F1');
  const input = page.locator('.quick-input-widget input').first();
  await input.waitFor({ state: 'visible' });
  await input.fill('>Pintle: Open the Preview');
  await page.locator('.quick-input-list .monaco-list-row').first().click();
  await wait(5000);
  await take(page, 'walkthrough/see.png', { x: 0, y: 32, width: 1060, height: 580 });
  await page.close();

  page = await open('sound/withy-lane.gate');
  await goTo(page, await lineOf({ file: withy, has: 'drive west-ram' }));
  await wait(1500);
  await take(page, 'walkthrough/read.png', { ...within, y: 120 });
  await goTo(page, `${await lineOf({ file: withy, has: 'wire west-edge to E1' })}:3`);
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.keyboard.type('wire fobs to ');
  await page.keyboard.press('Control+Space');
  await page.locator('.suggest-widget .monaco-list-row').first().waitFor();
  await wait(1500);
  await take(page, 'walkthrough/write.png', { ...within, y: 130 });
  await page.close();

  page = await open('unsafe/leaves-collide.gate');
  await goTo(page, await lineOf({ file: collide, has: 'lag closing' }));
  await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
  await page
    .locator('.view-line', { hasText: /lag.closing/ })
    .first()
    .hover({ position: { x: 40, y: 8 } });
  await page.locator('.monaco-hover').first().waitFor({ state: 'visible' });
  await wait(1200);
  await take(page, 'walkthrough/mend.png', { ...within, width: 780, y: 110, height: 400 });
  await page.close();
} finally {
  await browser?.close();
  server?.stop();
  rmSync(base, { recursive: true, force: true, maxRetries: 3 });
}
