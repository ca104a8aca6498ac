// A name may be of any length; no message grows with it.
import { expect, test } from 'vitest';
import { examples } from '../grammar/examples.ts';
import { judge } from '../kit/pages.ts';

const unsafe = examples().filter(({ path }) => path.startsWith('unsafe/'));

/** The text with every name of a leaf, device or panel drawn out. */
function drawnOut(text: string): string {
  const { leaves, drives, sensors, controls, panels, cables } = judge(text).installation;
  const names = [...leaves, ...drives, ...sensors, ...controls, ...panels, ...cables].map(({ name }) => name).filter((name) => name !== '');
  const longest = [...new Set(names)].sort((a, b) => b.length - a.length);
  const pattern = new RegExp(`(?<![\\w."/-])(?:${longest.join('|')})(?![\\w."/-])`, 'g');
  return text.replace(pattern, (name) => `${name}-${'x'.repeat(280)}`);
}

test.each(unsafe.map(({ path, text }) => [path, text] as const))('%s', (_path, text) => {
  const long = judge(drawnOut(text));
  expect(long.findings.length).toBeGreaterThanOrEqual(judge(text).findings.length - 1);
  for (const { rule, what, remedy } of long.findings) {
    expect(what.length, `${rule}: ${what}`).toBeLessThanOrEqual(400);
    expect(remedy.length, `${rule}: ${remedy}`).toBeLessThanOrEqual(400);
  }
});
