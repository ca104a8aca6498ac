// Contacts of several devices on one input, in series and side by side: which of them the panel feels. By hand, from what a row of closed
// contacts does when one of them opens.
import { describe, expect, test } from 'vitest';
import { heedingOf } from '../../server/circuits/index.ts';
import { judge } from '../kit/pages.ts';

const heard = (contact: string, ...wires: string[]): string[] => {
  const names = [...new Set(wires.map((wire) => wire.split(' ')[0] as string))];
  const { installation } = judge(
    `language 1\npanel-model sedge {\n  terminal S0 common\n  terminal S1 safety-input ${contact} common S0\n  terminal S2 safety-input ${contact} common S0\n}\n` +
      `sensor-model wren {\n  kind edge\n  output relay\n  contact ${contact === '' ? 'normally-closed' : contact}\n}\n` +
      names.map((name) => `sensor ${name} : wren {\n  watches closing\n}\n`).join('') +
      `panel box : sedge {\n${wires.map((wire) => `  wire ${wire}\n`).join('')}}\n`,
  );
  return installation.sensors.flatMap((sensor) => (heedingOf(sensor) === undefined ? [] : [sensor.name]));
};

describe.each(['normally-closed', ''])('contacts on an input that is %s', (contact) => {
  test('are felt one and all in series, however the lines put them there', () => {
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with a')).toEqual(['a', 'b']);
    expect(heard(contact, 'a to S1 S0 in-series-with b', 'b to S1 S0')).toEqual(['a', 'b']);
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with a', 'c to S1 S0 in-series-with b')).toEqual(['a', 'b', 'c']);
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with a', 'c to S1 S0 in-series-with a')).toEqual(['a', 'b', 'c']);
  });
  test('hide each other side by side, a row of them too', () => {
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0')).toEqual([]);
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with a', 'c to S1 S0')).toEqual([]);
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with c', 'c to S2 S0')).toEqual(['c']);
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with b')).toEqual([]);
    expect(heard(contact, 'a to S1 S0', 'b to S1 S0 in-series-with nobody')).toEqual([]);
  });
});

test('contacts that close to report are felt side by side, and not in series', () => {
  expect(heard('normally-open', 'a to S1 S0', 'b to S1 S0')).toEqual(['a', 'b']);
  expect(heard('normally-open', 'a to S1 S0', 'b to S1 S0 in-series-with a')).toEqual([]);
  expect(heard('normally-open', 'a to S1 S0', 'b to S1 S0 in-series-with a', 'c to S1 S0')).toEqual(['c']);
});
