// A link that bridges an input: by itself or with others, by any common, by a return that is no common.
import { expect, it } from 'vitest';
import { judge, lineOf } from '../kit/pages.ts';

const bridged = (links: string): string[] => {
  const analysis = judge(`language 1
use "../library/sensors.gate"

panel-model sedge-cell {
  supply 24 V
  terminal G0 common
  terminal H0 common
  terminal V1 supply-out
  terminal G1 safety-input normally-closed common G0
  terminal G2 safety-input normally-closed common V1
  terminal G3 safety-input normally-closed
  terminal G4 safety-input normally-closed common G0
}

sensor a : finch-relay {
  watches closing
}

sensor b : finch-relay {
  watches opening
}

sensor c : finch-relay {
  watches opening
}

panel box : sedge-cell {
  wire a to G1 G0
  wire b to G2 V1
  wire c to G3 G0
  ${links}
}
`);
  return analysis.findings
    .filter(({ rule }) => rule === 'input-bridged')
    .map(({ start, what }) => `${analysis.text.split('\n')[lineOf(analysis, start) - 1]?.trim()}: ${what}`);
};

it.each([
  ['its own common', 'link G1 G0', '“G1” has “a” wired to it, and this link bridges it.'],
  ['any other common', 'link G1 H0', '“G1” has “a” wired to it, and this link bridges it.'],
  ['a common, where it says of none', 'link G3 H0', '“G3” has “c” wired to it, and this link bridges it.'],
  ['a return that is no common', 'link G2 V1', '“G2” has “b” wired to it, and this link bridges it.'],
])('a link to %s bridges an input by itself', (_, link, what) => {
  expect(bridged(link)).toEqual([`${link}: ${what}`]);
});

it('a link to another input bridges it only where that one is joined to a common as well', () => {
  expect(bridged('link G1 G4')).toEqual([]);
  expect(bridged('link G1 G4\n  link G4 H0')).toEqual([
    'link G1 G4: “G1” has “a” wired to it, and this link bridges it together with other links.',
  ]);
});

it('a link between terminals that nothing hangs on, or that is no return of the input, bridges nothing', () => {
  expect(bridged('link G4 G0')).toEqual([]);
  expect(bridged('link G1 V1')).toEqual([]);
  expect(bridged('link G1 X9')).toEqual([]);
});
