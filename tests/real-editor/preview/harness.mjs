// The preview's page in a browser, without VS Code around it: what the extension would say is said by the test, and what
// the page says is written down. Nothing but the page's own script and style sheet can be loaded.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { entries } from '../../workshop/build.mjs';
import { axe, root } from '../parts.mjs';
import { themes } from './themes.mjs';

const origin = 'https://preview.test';
const axeScript = () => readFileSync(axe, 'utf8');

/** Builds the page and what the tests ask of the sources. */
export async function buildPage(folder) {
  const parts = {};
  for (const { from, to, options } of entries.filter((entry) => entry.to.startsWith('preview.'))) {
    const result = await build({
      ...options,
      entryPoints: [join(root, from)],
      bundle: true,
      minify: true,
      write: false,
      outdir: folder,
      absWorkingDir: root,
      charset: 'utf8',
      logLevel: 'warning',
    });
    parts[to] = result.outputFiles[0].text;
  }
  const load = async (from, name) => {
    const outfile = join(folder, name);
    await build({
      entryPoints: [join(root, from)],
      outfile,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'esm',
      absWorkingDir: root,
      logLevel: 'warning',
      banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
    });
    return import(pathToFileURL(outfile).href);
  };
  const [{ pageHtml }, { answersOf }] = [
    await load('client/preview/html.ts', 'html.mjs'),
    await load('tests/real-editor/preview/answers.ts', 'answers.mjs'),
  ];
  return { parts, pageHtml, answersOf };
}

/**
 * Opens the page. `faults` holds whatever must never be: requests for anything else, breaches of the policy, dialogs, errors.
 * `state` is what the editor has kept from before.
 */
export async function openPage(
  browser,
  { parts, pageHtml },
  { theme = 'light', width = 900, height = 760, state, reducedMotion = 'no-preference', forcedColors = 'none', colorScheme = 'light' } = {},
) {
  const context = await browser.newContext({
    viewport: { width, height },
    reducedMotion,
    forcedColors,
    colorScheme,
    acceptDownloads: false,
  });
  const faults = [];
  const { body, variables } = themes[theme];
  const html = pageHtml({ source: origin, nonce: 'bm9uY2U', script: `${origin}/preview.js`, style: `${origin}/preview.css` }).replace(
    '<body ',
    `<body class="${body}" `,
  );
  await context.route('**/*', (route) => {
    const url = route.request().url();
    const name = url.slice(origin.length + 1);
    if (url === `${origin}/`) return route.fulfill({ contentType: 'text/html; charset=utf-8', body: html });
    if (url.startsWith(origin) && Object.hasOwn(parts, name))
      return route.fulfill({ contentType: name.endsWith('.css') ? 'text/css' : 'text/javascript', body: parts[name] });
    faults.push(`request: ${url}`);
    return route.abort();
  });
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  page.on('dialog', (dialog) => {
    faults.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
  page.on('console', (message) => message.type() === 'error' && faults.push(`console: ${message.text()}`));
  page.on('popup', () => faults.push('a window was opened'));
  await context.addInitScript(
    ({ variables, state }) => {
      const sent = [];
      let kept = state;
      globalThis.stub = { sent, kept: () => kept, breaches: [] };
      document.addEventListener('securitypolicyviolation', (event) =>
        globalThis.stub.breaches.push(`${event.violatedDirective}: ${event.blockedURI} ${event.sample}`),
      );
      globalThis.acquireVsCodeApi = () => ({
        postMessage: (message) => void sent.push(structuredClone(message)),
        getState: () => kept,
        setState: (given) => void (kept = structuredClone(given)),
      });
      const dress = () => {
        for (const [name, value] of Object.entries(variables)) document.documentElement.style.setProperty(name, value);
      };
      if (document.documentElement === null)
        new MutationObserver((_, self) => document.documentElement !== null && (dress(), self.disconnect())).observe(document, {
          childList: true,
        });
      else dress();
    },
    { variables, state },
  );
  await page.goto(`${origin}/`);
  const say = (message) => page.evaluate((data) => window.dispatchEvent(new MessageEvent('message', { data })), message);
  return {
    page,
    say,
    /** As the extension does when a file is shown. */
    show: async ({ uri, answer }, stays = false) => {
      await say({ type: 'file', uri, name: decodeURIComponent(uri.split('/').at(-1)), stays });
      await say({ type: 'answer', uri, answer });
      await page.waitForFunction(() => !document.querySelector('#panel').hidden);
      await settle(page);
    },
    sent: () => page.evaluate(() => globalThis.stub.sent),
    kept: () => page.evaluate(() => globalThis.stub.kept()),
    faults: async () => [...faults, ...(await page.evaluate(() => globalThis.stub.breaches))],
    /** What axe-core finds against WCAG 2.2 at AA, in words. */
    judge: async () => {
      await page.evaluate(axeScript());
      const found = await page.evaluate(() =>
        globalThis.axe.run(document, {
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
          resultTypes: ['violations', 'incomplete'],
        }),
      );
      const words = (list) =>
        list.flatMap(({ id, nodes }) =>
          nodes.map((node) => `${id}: ${node.target.join(' ')} ${(node.failureSummary ?? '').replace(/\s+/g, ' ')}`),
        );
      return { violations: words(found.violations), incomplete: words(found.incomplete) };
    },
    tab: async (id) => {
      await page.locator(`[role=tab][data-drawing="${id}"]`).click();
      await settle(page);
    },
    /** Forgets what went wrong so far, where the test itself has done it. */
    forgive: () => void (faults.length = 0),
    close: () => context.close(),
  };
}

/** Two frames: what was asked to be drawn is drawn. */
export const settle = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
