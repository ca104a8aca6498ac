// What links join is worked out once for a panel, however many there are; the rules and the figures ask the same.
import { expect, test } from 'vitest';
import { bridgedBy, heedingOf } from '../../server/circuits/index.ts';
import type { Installation } from '../../server/model/index.ts';
import { judged } from '../papers/kit.ts';

const inputs = 300;
const range = Array.from({ length: inputs }, (_, i) => i);

/** A relay beam on the first of many inputs, and links. */
function gate(links: readonly string[]): Installation {
  const model = range.map((i) => `  terminal S${i} safety-input normally-closed common C${i}\n  terminal C${i} common\n`).join('');
  return judged(
    `language 1\nuse "../library/sensors.gate"\nsite "Links" {\n  rules europe\n}\n` +
      `panel-model large "Large" {\n  supply 230 V\n  leaves 2\n  terminal V1 supply-out\n${model}}\n` +
      `sensor beam : finch-relay {\n  watches closing\n  height 200 mm\n}\n` +
      `panel main : large {\n  wire beam to S0 C0\n${links.map((link) => `  link ${link}\n`).join('')}}\n`,
  ).installation;
}

const bridging = ({ panels: [panel] }: Installation): string[] =>
  panel?.links.flatMap((link) => {
    const found = bridgedBy(panel, link);
    return found === undefined ? [] : [`${link.ends.map(({ at }) => at.text).join(' ')}: ${found.wire.fact.device.text}`];
  }) ?? [];
const isHeeded = ({ sensors: [sensor] }: Installation): boolean => sensor !== undefined && heedingOf(sensor) !== undefined;

test('of links that close unused inputs none bridges a device', () => {
  const installation = gate(range.slice(1).map((i) => `S${i} C${i}`));
  expect(bridging(installation)).toEqual([]);
  expect(isHeeded(installation)).toBe(true);
});

test('an input is joined to its return through one link, through two, and through all there are', () => {
  for (const links of [
    ['S0 C0'],
    ['S0 V1', 'V1 C0'],
    ['V1 C0', 'S0 V1'],
    [...range.slice(1).map((i) => `S${i - 1} S${i}`), `S${inputs - 1} C7`],
  ]) {
    const installation = gate(links);
    expect(bridging(installation)[0]?.endsWith(': beam'), links.slice(0, 2).join(', ')).toBe(true);
    expect(isHeeded(installation)).toBe(false);
  }
});

test('a link from an input to what is no return bridges nothing, and nobody relies on the device', () => {
  for (const links of [['S0 V1'], ['S0 S1'], ['S0 Z9'], ['V1 S0', 'S1 C1']]) {
    const installation = gate(links);
    expect(bridging(installation)).toEqual([]);
    expect(isHeeded(installation)).toBe(false);
  }
});
