// What is asked for so that a battery can be judged, and where nothing is asked. What is asked of cables: unjudged-circuits.test.ts.
import { describe, expect, it } from 'vitest';
import { judge, lineOf } from '../kit/pages.ts';

const asked = (text: string): string[] => {
  const analysis = judge(text);
  return analysis.findings
    .filter(({ rule }) => rule === 'electrical-facts-unstated')
    .map(({ start, what }) => `${analysis.text.split('\n')[lineOf(analysis, start) - 1]?.trim()}: ${what}`);
};

const use = 'language 1\nuse "../library/cables.gate"\n';

describe('how long a battery lasts', () => {
  const panel = (
    standby: string,
    wires: string,
    battery = 'battery {\n    voltage 24 V\n    capacity 7 Ah over 20 h\n  }',
  ): string => `panel-model sedge-cell {
  supply 24 V
  ${standby}
  terminal G0 common
  terminal G1 safety-input normally-closed common G0
  terminal G2 safety-input normally-closed common G0
}
sensor-model reed-eye {
  kind beam
  output relay
  contact normally-closed
}
sensor-model wren-eye {
  kind beam
  output relay
  contact normally-closed
  consumes 30 mA
}
sensor eye : reed-eye {
  watches closing
}
sensor other : wren-eye {
  watches opening
}
panel box : sedge-cell {
  ${wires}
  ${battery}
}
`;
  const unknown = (what: string): string[] => [`battery {: How long the battery of “box” lasts is not worked out: ${what}.`];
  it('is told to depend on the panel, and on each sensor that does not say what it draws', () => {
    expect(asked('language 1\n' + panel('', 'wire other to G2 G0'))).toEqual(unknown('the model “sedge-cell” lacks “standby”'));
    expect(asked('language 1\n' + panel('standby 50 mA', 'wire eye to G1 G0\n  wire other to G2 G0'))).toEqual(
      unknown('“reed-eye” lacks “consumes”'),
    );
    expect(asked('language 1\n' + panel('', 'wire eye to G1 G0\n  wire other to G2 G0'))).toEqual(
      unknown('the model “sedge-cell” lacks “standby”, and “reed-eye” lacks “consumes”'),
    );
  });
  it.each([
    ['all is stated', panel('standby 50 mA', 'wire other to G2 G0')],
    ['what a sensor draws cannot be read', panel('standby 50 mA', 'wire other to G2 G0').replace('30 mA', 'little')],
    ['there is none', panel('', 'wire eye to G1 G0', '')],
    ['a line of the panel cannot be read', panel('', 'wir eye to G1 G0')],
    ['what the panel draws cannot be read', panel('standby some', 'wire other to G2 G0')],
    ['nobody knows what panel it is', panel('', 'wire eye to G1 G0').replace('box : sedge-cell', 'box : unheard-of')],
  ])('is not asked where %s', (_, text) => {
    expect(asked('language 1\n' + text)).toEqual([]);
  });
});

describe('how cold a battery gets', () => {
  const cold = (coldest: string): string =>
    `${use}use "../library/panels.gate"\npanel main : rowan-pair {\n  battery {\n    voltage 24 V\n    capacity 7 Ah over 20 h\n    ${coldest}\n  }\n}\n`;
  const noted = (coldest: string): string[] => asked(cold(coldest)).filter((what) => what.includes('not known here'));
  it('is told where no table says what it still gives, and the table ends at 20 °F', () => {
    expect(noted('coldest -20 °C')).toEqual([
      'coldest -20 °C: What the battery of “main” gives at -20 °C is not known here: it is judged as if it were −7 °C, where the table ends.',
    ]);
    expect(noted('coldest -6.7 °C')).toHaveLength(1);
    expect(noted('coldest -6.6 °C')).toEqual([]);
    expect(noted('')).toEqual([]);
  });
});
