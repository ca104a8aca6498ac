// What single wires and links do on a panel, end by end: which end cannot take its wire, what may be missed, which wire a
// terminal has, and what a link joins with others.
import { describe, expect, test } from 'vitest';
import { bridgedBy, unfitEnd, wireOn } from '../../server/circuits/index.ts';
import type { Panel, Terminal } from '../../server/model/index.ts';
import { ruleNamed } from '../../server/rules/index.ts';
import { wiringUnsure } from '../../server/rules/unread.ts';
import { installationOf, judge } from '../kit/pages.ts';

const devices =
  'sensor a : finch-relay {\n}\nsensor edge : finch-edge {\n}\nsensor loop : finch-loop {\n}\nsensor eye : finch-beam {\n}\nsensor bare {\n}\ndrive ram : birch-floor {\n}\ncontrol key {\n}\n';
const own =
  'panel-model own {\n  terminal G0 common\n  terminal G1 safety-input common G0\n  terminal K1 command-input common K1\n  terminal K2 command-input common G1\n  terminal G4 safety-input\n}\n';
const panelOf = (lines: readonly string[], model = 'rowan-pair'): Panel =>
  installationOf(
    `language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n${own}${devices}panel main : ${model} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`,
  ).panels[0] as Panel;

describe('the end of a wire that cannot take it', () => {
  const unfit = (line: string, model?: string): string | undefined =>
    unfitEnd(panelOf([line], model).wires[0] as Panel['wires'][number])?.at.text;
  test.each([
    ['wire a to G1 G0', undefined],
    ['wire a to H1 H0', undefined],
    ['wire a to K1 K0', 'K1'],
    ['wire a to E1 E0', 'E1'],
    ['wire a to T1 T0', 'T1'],
    ['wire loop to K1 K0', undefined],
    ['wire loop to G1 G0', undefined],
    ['wire loop to E1 E0', 'E1'],
    ['wire edge to E1 E0', undefined],
    ['wire edge to G1 G0', 'G1'],
    ['wire eye to T1 T0', undefined],
    ['wire eye to G1 G0', 'G1'],
    ['wire bare to K1 K0', undefined],
    ['wire ram to LA1 LA2', undefined],
    ['wire ram to LA1 G1', 'G1'],
    ['wire key to K1 K0', undefined],
    ['wire key to H1 H0', undefined],
    ['wire key to G1 G0', 'G1'],
    ['wire a supply to V1 V0', undefined],
    ['wire a supply to X1 V0', undefined],
    ['wire a supply to G1 V0', 'G1'],
    ['wire a test to X1 V0', undefined],
    ['wire a test to V1', 'V1'],
    ['wire nobody to K1 K0', undefined],
    // A terminal that is not there hides nothing of the others.
    ['wire edge to Z9 K1', 'K1'],
    ['wire edge to K1 Z9', 'K1'],
  ])('%s: %s', (line, expected) => expect(unfit(line)).toBe(expected));
  test('is not the return of another end, but never its own', () => {
    expect(unfit('wire key to K2 G1', 'own')).toBe(undefined);
    expect(unfit('wire key to G1 K2', 'own')).toBe(undefined);
    expect(unfit('wire key to G1 G0', 'own')).toBe('G1');
    // The model says by mistake that it returns to itself.
    expect(unfit('wire a to K1 G0', 'own')).toBe('K1');
  });
});

test('wiring is unsure where a line of it could not be read, or names a terminal that is not there', () => {
  const unsure = (...lines: readonly string[]): boolean => wiringUnsure(panelOf(lines));
  expect(unsure()).toBe(false);
  expect(unsure('wire a to G1 G0', 'link G2 G0')).toBe(false);
  expect(unsure('wire a to G1 Z9')).toBe(true);
  expect(unsure('wire a to G1 G0', 'wire edge to Z9 E0')).toBe(true);
  expect(unsure('wire a to G1 G0', 'link Z9 G0')).toBe(true);
  expect(unsure('wire a')).toBe(true);
  expect(unsure('link')).toBe(true);
  expect(unsure('wier a to G1 G0')).toBe(true);
  expect(unsure('isolator')).toBe(false);
});

test('the wire on an input is the one that brings a report to it', () => {
  const panel = panelOf(['wire edge supply to G1 V0', 'wire a to G1 G0', 'wire edge to E1 E0']);
  const terminal = (name: string): Terminal => panel.model?.terminals.get(name) as Terminal;
  const on = (name: string): string | undefined => wireOn(panel, terminal(name))?.fact.device.text;
  expect(['G1', 'G0', 'E1', 'G2'].map(on)).toEqual(['a', 'a', 'edge', undefined]);
});

describe('a link', () => {
  const bridging = (...lines: readonly string[]): (string | undefined)[] => {
    const panel = panelOf(['wire a to G1 G0', ...lines]);
    return panel.links.map((link) => bridgedBy(panel, link)?.end.at.text);
  };
  test('bridges an input with others that lead on from its far end, and not with those elsewhere', () => {
    expect(bridging('link G1 G0')).toEqual(['G1']);
    expect(bridging('link G1 G2')).toEqual([undefined]);
    expect(bridging('link G1 G2', 'link G2 H0')).toEqual(['G1', undefined]);
    expect(bridging('link G1 G2', 'link K1 H0')).toEqual([undefined, undefined]);
    expect(bridging('link G1 G2', 'link G2 K2', 'link K2 K1', 'link K1 H0')).toEqual(['G1', undefined, undefined, undefined]);
    expect(bridging('link G1 G2', 'link G2 K2', 'link K1 H0')).toEqual([undefined, undefined, undefined]);
    expect(bridging('link K1 H0', 'link G2 K1', 'link G1 G2')).toEqual([undefined, undefined, 'G1']);
  });
  test('that leads nowhere is not to blame for another one beside it', () => {
    expect(bridging('link G1 G2', 'link G1 H0')).toEqual([undefined, 'G1']);
    expect(bridging('link G1 G2', 'link G2 G1')).toEqual([undefined, undefined]);
  });
  test('on an input that only a supply or a test hangs on bridges nobody', () => {
    const panel = panelOf(['wire a supply to G1 V0', 'link G1 G0']);
    expect(bridgedBy(panel, panel.links[0] as Panel['links'][number])).toBe(undefined);
  });
  test('of a model whose input names no return joins it to a common alone', () => {
    const panel = panelOf(['wire a to G4 G0', 'link G4 K1', 'link G4 G0'], 'own');
    expect(panel.links.map((link) => bridgedBy(panel, link)?.end.at.text)).toEqual([undefined, 'G4']);
  });
});

test('what a model says is the source of what is wrong with a terminal', () => {
  expect(ruleNamed('terminal-unknown')?.source.text).toBe('the model, which says what the product can do');
  const { findings } = judge('language 1\nuse "../library/panels.gate"\npanel main : rowan-pair {\n  link G1 Z9\n}\n');
  expect(findings.find(({ rule }) => rule === 'terminal-unknown')?.source).toBe('the model, which says what the product can do');
});
