// Runs the tests that live inside an editor's page, and hears what they say.

const mark = '[pintle-test] ';

/** Opens an address and waits until the tests inside have ended. `whatElse` gets the page before it is opened. */
export async function runInside({ browser, layer, address, report, whatElse = async () => undefined }) {
  const context = await browser.newContext();
  const page = await context.newPage();
  const heard = new Map();
  const errors = [];
  let said = Date.now();
  const hear = (text) => {
    said = Date.now();
    const at = text.indexOf(mark);
    if (at < 0) return;
    const result = JSON.parse(text.slice(at + mark.length));
    // The console of the host comes by two ways.
    if (heard.has(result.index)) return;
    heard.set(result.index, result);
    report(layer, result.name, result.error);
  };
  try {
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type()) || /pintle/i.test(message.text())) errors.push(message.text().slice(0, 500));
      hear(message.text());
    });
    page.on('pageerror', (error) => errors.push(String(error)));
    let code;
    const ended = new Promise((resolve) => void page.exposeFunction('codeAutomationExit', (number) => resolve((code = number))));
    await page.exposeFunction('codeAutomationLog', (_type, [text]) => hear(String(text)));
    await whatElse(page);
    // A machine that is busy with other things takes its time.
    await page.goto(address, { timeout: 120_000 });
    while (code === undefined && Date.now() - said < 60_000)
      await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 1000))]);
    const [first] = heard.values();
    const missing = (first?.of ?? 1) - heard.size;
    if (code === undefined || missing > 0 || (code === 0) !== [...heard.values()].every(({ error }) => error === undefined))
      report(
        layer,
        'runs to its end',
        `exit code ${code}, ${heard.size} of ${first?.of ?? 'some'} tests told of\n${errors.slice(-15).join('\n')}`,
      );
    return { page, context };
  } finally {
    if (process.env.PINTLE_EDITOR_LOG !== undefined) console.log(errors.join('\n'));
    await context.close();
  }
}
