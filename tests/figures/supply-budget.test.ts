// What hangs on an output: counted once, by the wires that feed it. Sums by hand; no table has them.
import { describe, expect, it } from 'vitest';
import { judge } from '../kit/pages.ts';

const file = (wires: string, outputs = 'output V1 V2 gives 0.2 A at 24 V\noutput T1 gives 60 mA at 24 V'): string =>
  `language 1\nuse "../library/sensors.gate"\npanel-model p {\n  terminal V1 supply-out\n  terminal V2 supply-out\n  terminal V0 common\n  terminal G0 common\n  terminal G1 safety-input normally-closed common G0\n  terminal G2 safety-input normally-closed common G0\n  terminal T0 common\n  terminal T1 two-wire-input common T0\n  terminal K1 command-input common T0\n${outputs}\n}\n` +
  `sensor a : finch-relay {\n  watches closing\n}\nsensor b : finch-relay {\n  watches opening\n}\nsensor c : finch-beam {\n  watches closing\n}\nsensor d : finch-beam {\n  watches opening\n}\ncontrol pad {\n  acts impulse\n  consumes 70 mA\n}\npanel box : p {\n${wires}\n}\n`;
const loads = (text: string): Record<string, number> =>
  Object.fromEntries(
    judge(text).figures.flatMap((figure) =>
      figure.id.includes('.output.') ? [[figure.id.slice('panel.box.output.'.length), Number(figure.value.toFixed(6))] as const] : [],
    ),
  );
const said = (text: string): string[] =>
  judge(text).findings.flatMap(({ rule, severity }) => (rule === 'output-overloaded' ? [severity] : []));

describe('outputs', () => {
  it('count each device once, on either of their terminals', () => {
    expect(loads(file('wire a to G1 G0\nwire a supply to V1 V0'))).toEqual({ 'V1.load': 0.04 });
    expect(
      loads(
        file(
          'wire a supply to V1 V0\nwire a supply to V2 V0\nwire b supply to V2 V0\nwire pad supply to V2 V0\naccessory "x" draws 10 mA from V2',
        ),
      ),
    ).toEqual({ 'V1.load': 0.16 });
  });
  it('feed self-checking sensors over their two wires, and nothing over a contact', () => {
    expect(loads(file('wire c to T1 T0\nwire d to T1 T0\nwire a to G1 G0\nwire pad to K1 T0'))).toEqual({ 'T1.load': 0.05 });
  });
  it('have no figure where something on them does not say what it draws', () => {
    expect(loads(file('wire a supply to V1 V0\nwire b supply to V1 V0').replace('sensor b : finch-relay', 'sensor b'))).toEqual({});
  });
  it('are overloaded above what they give, and near it a note', () => {
    expect(said(file('accessory "x" draws 166 mA from V1'))).toEqual([]);
    expect(said(file('accessory "x" draws 170 mA from V1'))).toEqual(['note']);
    expect(said(file('accessory "x" draws 200 mA from V1'))).toEqual(['note']);
    expect(said(file('accessory "x" draws 120 mA from V1\naccessory "y" draws 81 mA from V2'))).toEqual(['error']);
    // What is known is enough to be too much.
    expect(said(file('wire b supply to V1 V0\naccessory "x" draws 201 mA from V1').replace('sensor b : finch-relay', 'sensor b'))).toEqual([
      'error',
    ]);
  });
  it('that the panel does not have are told', () => {
    expect(judge(file('accessory "x" draws 10 mA from V9')).findings.filter((finding) => finding.rule === 'terminal-unknown')).toHaveLength(
      1,
    );
    expect(judge(file('', 'output V9 gives 0.2 A at 24 V')).findings.filter((finding) => finding.rule === 'name-unknown')).toHaveLength(1);
    expect(judge(file('', 'window V9 1 kohm .. 2 kohm')).findings.filter((finding) => finding.rule === 'name-unknown')).toHaveLength(1);
  });
});
