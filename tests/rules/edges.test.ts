// Resistive edges: chains, loops and terminators, at the borders that the pages do not show.
import { describe, expect, test } from 'vitest';
import { type Finding, marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { applyEdits, judge, saidOf } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/cables.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
/** A panel whose input states no terminator, and an edge that states none either. */
const plain =
  'panel-model alder-plain {\n  terminal E0 common\n  terminal E1 edge-input common E0\n}\nsensor-model plain-edge {\n  kind edge\n  output resistive\n}\n';
const edge = (name: string, lines = '', model = 'finch-edge'): string =>
  `sensor ${name} : ${model} {\n  watches closing\n${lines === '' ? '' : `  ${lines.replaceAll('; ', '\n  ')}\n`}}\n`;
const panel = (wires: string, model = 'rowan-pair'): string => `panel main : ${model} {\n  ${wires.replaceAll('; ', '\n  ')}\n}\n`;
const findingsOf = (rule: string, text: string): Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);
const whatsOf = (rule: string, text: string): string[] => findingsOf(rule, text).map(({ what }) => what);
const allOf = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);

describe('a chain', () => {
  const rule = 'edge-chain-broken';
  const what = (...blocks: string[]): string[] => whatsOf(rule, head + plain + blocks.join(''));

  test('from something that is no resistive edge says which one is not, and what reports how', () => {
    const text =
      head + edge('beam', 'chains-into front', 'finch-relay') + edge('front', 'terminator 8.2 kohm') + panel('wire front to E1 E0');
    const said = allOf(rule, text);
    expect(said).toContain('“beam” chains into “front”, but “beam” is no resistive edge.');
    expect(said).toContain('Wire “beam” to an input of its own');
    expect(said).toContain('See sensors.gate: how it reports');
  });
  test('of which a model is not known is not judged', () => {
    expect(what(edge('front', 'chains-into next', 'nobody'), edge('next', 'terminator 8.2 kohm'))).toEqual([]);
    expect(what(edge('front', 'chains-into next'), edge('next', 'terminator 8.2 kohm', 'nobody'))).toEqual([]);
  });
  test('to an edge whose model says nothing of its output is not judged', () => {
    expect(what('sensor-model bare {\n  kind edge\n}\n', edge('front', 'chains-into next'), edge('next', '', 'bare'))).toEqual([]);
  });
  test('into itself is told as that', () => {
    expect(what(edge('front', 'chains-into front'))).toEqual(['“front” chains into itself.']);
  });
  test('in a circle of three is told once, with the two other lines', () => {
    const found = findingsOf(rule, head + edge('a', 'chains-into b') + edge('b', 'chains-into c') + edge('c', 'chains-into a'));
    expect(found.map(({ what }) => what)).toEqual(['The chain of “a” leads back to it: “a”, “b” and “c”.']);
    expect(found[0]?.related.map(({ message }) => message)).toEqual(['part of the circle', 'part of the circle']);
  });
  test('that leads into a circle has no end and no rival: only the circle is told, and the verdict ends', () => {
    const circle = [edge('b', 'chains-into c'), edge('c', 'chains-into b')];
    const told = ['The chain of “b” leads back to it: “b” and “c”.'];
    expect(what(edge('a', 'chains-into b; terminator 8.2 kohm'), ...circle)).toEqual(told);
    expect(what(...circle, edge('a', 'chains-into b; terminator 8.2 kohm'))).toEqual(told);
    expect(what(edge('a', 'chains-into b'), ...circle, panel('wire a to E1 E0'))).toEqual(told);
  });
  test('of two that lead to one: only the second is told, and names the first', () => {
    expect(what(edge('a', 'chains-into c'), edge('b', 'chains-into c'), edge('c', 'terminator 8.2 kohm'))).toEqual([
      '“b” and “a” both chain into “c”.',
    ]);
    expect(
      what(edge('a', 'chains-into c'), edge('b', 'chains-into d'), edge('c', 'terminator 8.2 kohm'), edge('d', 'terminator 8.2 kohm')),
    ).toEqual([]);
  });
  test('is wired twice only where both edges have their signal on a panel', () => {
    const pair = [edge('a', 'chains-into b'), edge('b', 'terminator 8.2 kohm')];
    expect(what(...pair, panel('wire a to E1 E0; wire b supply to V1 V0'))).toEqual([]);
    expect(what(...pair, panel('wire a supply to V1 V0; wire b to E1 E0'))).toEqual([]);
    expect(what(...pair, panel('wire b supply to V1 V0; wire a to E1 E0; wire b to E2 E0'))).toEqual([
      '“b” is wired to the panel, and “a” chains into it as well.',
    ]);
  });
});

describe('a terminator in the middle of a chain', () => {
  const rule = 'edge-chain-broken';
  const first = edge('a', 'chains-into b; terminator 8.2 kohm');
  test('of three is told, and not moved to an edge that is not the last', () => {
    const found = findingsOf(rule, head + first + edge('b', 'chains-into c') + edge('c') + panel('wire a to E1 E0'));
    expect(found.map(({ what }) => what)).toEqual(['“a” has a terminator and chains into “b”, whose chain has none.']);
    expect(found[0]?.fixes).toEqual([]);
  });
  test('is no fault of this kind where a later edge has one too', () => {
    expect(whatsOf(rule, head + first + edge('b', 'chains-into c') + edge('c', 'terminator 8.2 kohm') + panel('wire a to E1 E0'))).toEqual(
      [],
    );
  });
  test.each([
    ['cannot be read', edge('b', 'terminator 8.2')],
    ['leads to nobody', edge('b', 'chains-into nobody')],
    ['is none of its kind', edge('b', 'chains-into beam') + edge('beam', '', 'finch-relay')],
  ])('is not told where the rest of the chain %s', (_, rest) => {
    expect(whatsOf(rule, head + first + rest + panel('wire a to E1 E0')).filter((what) => what.includes('has a terminator'))).toEqual([]);
  });
  test('is moved with its tolerance, into an empty block too', () => {
    const text = head + edge('a', 'chains-into b; terminator 8.2 kohm ± 1 %') + 'sensor b : finch-edge {\n}\n' + panel('wire a to E1 E0');
    const [finding] = findingsOf(rule, text);
    expect(finding?.fixes.map(({ title, safe }) => [title, safe])).toEqual([
      ['Move the terminator to “b”, once it is fitted there', false],
    ]);
    const after = applyEdits(text, finding?.fixes[0]?.edits ?? []);
    expect(after).toContain('sensor b : finch-edge {\n  terminator 8.2 kohm ± 1 %\n}');
    expect(after.match(/terminator/g)).toHaveLength(1);
  });
});

describe('a loop with too many terminators', () => {
  const rule = 'edge-loop-terminated-twice';
  const ended = (name: string, model?: string): string => edge(name, 'terminator 8.2 kohm', model);
  test('of five names three and counts the others; the place is the second', () => {
    const names = ['a', 'b', 'c', 'd', 'e'];
    const text = head + names.map((name) => ended(name)).join('') + panel(names.map((name) => `wire ${name} to E1 E0`).join('; '));
    const [finding] = findingsOf(rule, text);
    expect(finding?.what).toBe(
      'The loop at “E1” has 5 terminators, on “a” (8.2 kohm), “b” (8.2 kohm), “c” (8.2 kohm) and 2 more: side by side the panel sees 1.64 kohm instead of 8.2 kohm.',
    );
    expect(text.slice(0, finding?.start).split('\n').length).toBe(11);
    expect(finding?.related.map(({ message }) => message)).toEqual([
      'the terminator of “a”',
      'the terminator of “c”',
      'the terminator of “d”',
      'the terminator of “e”',
      ...Array.from({ length: 5 }, () => 'wired to “E1” here'),
      '“E1” expects 8.2 kohm',
    ]);
    expect(finding?.fixes).toEqual([]);
  });
  test('of three names them all', () => {
    const text = head + ended('a') + ended('b') + ended('c') + panel('wire a to E1 E0; wire b to E1 E0; wire c to E1 E0');
    expect(whatsOf(rule, text)).toEqual([
      'The loop at “E1” has 3 terminators, on “a” (8.2 kohm), “b” (8.2 kohm), “c” (8.2 kohm): side by side the panel sees 2.733 kohm instead of 8.2 kohm.',
    ]);
  });
  test('of three in one chain is told at the first, and none is offered away: two would be left', () => {
    const text =
      head +
      edge('a', 'chains-into b; terminator 8.2 kohm') +
      edge('b', 'chains-into c; terminator 8.2 kohm') +
      ended('c') +
      panel('wire a to E1 E0');
    const [finding] = findingsOf(rule, text);
    expect(finding?.remedy).toBe('Take out the terminator of “a”: its far end leads to the next edge.');
    expect(finding?.fixes).toEqual([]);
  });
  test('where neither input nor edge states a value says only what the panel sees', () => {
    const said = allOf(
      rule,
      head + plain + ended('a', 'plain-edge') + ended('b', 'plain-edge') + panel('wire a to E1 E0; wire b to E1 E0', 'alder-plain'),
    );
    expect(said).toContain('on “a” (8.2 kohm), “b” (8.2 kohm): side by side the panel sees 4.1 kohm.\n');
    expect(said).not.toContain('expects');
  });
  test('where only the edge states a value holds it against that, and points to no input', () => {
    const [finding] = findingsOf(
      rule,
      head +
        plain +
        edge('a', 'terminator 10 kohm') +
        edge('b', 'terminator 10 kohm') +
        panel('wire a to E1 E0; wire b to E1 E0', 'alder-plain'),
    );
    expect(finding?.what).toContain('the panel sees 5 kohm instead of 8.2 kohm.');
    expect(finding?.related.map(({ message }) => message)).toEqual(['the terminator of “a”', 'wired to “E1” here', 'wired to “E1” here']);
  });
  test('where the input states another value than the edge holds it against that of the input', () => {
    const wants = 'panel-model alder-ten {\n  terminal A0 common\n  terminal A1 edge-input common A0 terminator 10 kohm\n}\n';
    expect(allOf(rule, head + wants + ended('a') + ended('b') + panel('wire a to A1 A0; wire b to A1 A0', 'alder-ten'))).toContain(
      'the panel sees 4.1 kohm instead of 10 kohm.',
    );
  });
  test('whose chain is not known to its end says nothing of what the panel sees', () => {
    const text = head + edge('a', 'chains-into nobody; terminator 8.2 kohm') + ended('b') + panel('wire a to E1 E0; wire b to E1 E0');
    expect(whatsOf(rule, text)).toEqual(['The loop at “E1” has 2 terminators, on “a” (8.2 kohm), “b” (8.2 kohm).']);
  });
});

describe('a loop without a terminator', () => {
  const rule = 'edge-loop-unterminated';
  test('in which a chain is not known to its end is not judged, whatever stands beside it', () => {
    expect(whatsOf(rule, head + edge('a', 'chains-into nobody') + panel('wire a to E1 E0'))).toEqual([]);
    expect(whatsOf(rule, head + edge('a', 'terminator 8.2') + panel('wire a to E1 E0'))).toEqual([]);
  });
  test('on the third branch is told there', () => {
    const text =
      head +
      edge('a', 'chains-into nobody') +
      edge('b', 'terminator 8.2 kohm') +
      edge('c') +
      panel('wire a to E1 E0; wire b to E1 E0; wire c to E1 E0');
    const found = findingsOf(rule, text);
    expect(found.map(({ what }) => what)).toEqual(['“c” has no terminator; the panel sees only that of “b” at “E1”.']);
    expect(found[0]?.related.map(({ message }) => message)).toEqual([
      'wired to “E1” here',
      'on “E1” as well',
      'on “E1” as well',
      '“E1” expects 8.2 kohm',
    ]);
    expect(found[0]?.fixes).toEqual([]);
  });
  test('on two branches is told once', () => {
    expect(whatsOf(rule, head + edge('a') + edge('b') + panel('wire a to E1 E0; wire b to E1 E0'))).toEqual([
      '“a” has no terminator, so the loop at “E1” is open.',
    ]);
  });
  test('asks for the value of the edge where the input states none, and points to no input', () => {
    const [finding] = findingsOf(rule, head + plain + edge('a') + panel('wire a to E1 E0', 'alder-plain'));
    expect(finding?.remedy).toBe('Fit 8.2 kohm at the far end of “a”, and write it into its block.');
    expect(finding?.related.map(({ message }) => message)).toEqual(['wired to “E1” here']);
  });
  test('asks for the value of the input before that of the edge', () => {
    const wants = 'panel-model alder-ten {\n  terminal A0 common\n  terminal A1 edge-input common A0 terminator 10 kohm\n}\n';
    expect(allOf(rule, head + wants + edge('a') + panel('wire a to A1 A0', 'alder-ten'))).toContain('Fit 10 kohm at the far end of “a”');
  });
  test('is not told where nobody states that it wants one', () => {
    expect(whatsOf(rule, head + plain + edge('a', '', 'plain-edge') + panel('wire a to E1 E0', 'alder-plain'))).toEqual([]);
  });
});

describe('the value of a terminator', () => {
  const rule = 'edge-terminator-wrong';
  const one = (value: string): string[] => whatsOf(rule, head + edge('a', `terminator ${value}`) + panel('wire a to E1 E0'));
  test('may be 5 % off, either way, and no more', () => {
    expect(one('8.61 kohm')).toEqual([]);
    expect(one('7.79 kohm')).toEqual([]);
    expect(one('8.62 kohm')).toEqual(['“a” has a terminator of 8.62 kohm; “E1” expects 8.2 kohm.']);
    expect(one('7.78 kohm')).toEqual(['“a” has a terminator of 7.78 kohm; “E1” expects 8.2 kohm.']);
  });
  test('is not judged where the input states none, whatever the edge is made for', () => {
    expect(whatsOf(rule, head + plain + edge('a', 'terminator 10 kohm') + panel('wire a to E1 E0', 'alder-plain'))).toEqual([]);
  });
  test('of an edge that states nothing itself is held against the input alone', () => {
    expect(one('8.2 kohm')).toEqual([]);
    expect(whatsOf(rule, head + plain + edge('a', 'terminator 8.2 kohm', 'plain-edge') + panel('wire a to E1 E0'))).toEqual([]);
    expect(whatsOf(rule, head + plain + edge('a', '', 'plain-edge') + panel('wire a to E1 E0'))).toEqual([]);
    const said = allOf(rule, head + plain + edge('a', 'terminator 10 kohm', 'plain-edge') + panel('wire a to E1 E0'));
    expect(said).toContain('“a” has a terminator of 10 kohm; “E1” expects 8.2 kohm.\n  What to do: Fit 8.2 kohm.\n');
    expect(said).not.toContain('made for');
  });
  test('of an edge in a chain, not the last, is held against the input by what it is made for', () => {
    const other = 'sensor-model ten-edge {\n  kind edge\n  output resistive\n  terminator 10 kohm\n}\n';
    const text = head + other + edge('a', 'chains-into b', 'ten-edge') + edge('b', 'terminator 8.2 kohm') + panel('wire a to E1 E0');
    expect(whatsOf(rule, text)).toEqual(['“a” is made for a terminator of 10 kohm; “E1” expects 8.2 kohm.']);
  });
  test('is rewritten where it is one of E96 too, and only its number and unit', () => {
    const text = head + edge('a', 'terminator 10.2 kohm ± 1 %') + panel('wire a to E1 E0');
    const [finding] = findingsOf(rule, text);
    expect(finding?.remedy).toBe('Fit 8.2 kohm.');
    expect(applyEdits(text, finding?.fixes[0]?.edits ?? [])).toBe(text.replace('10.2 kohm', '8.2 kohm'));
  });
});

describe('what a loop shows', () => {
  const rule = 'edge-loop-ambiguous';
  const withWindow = (window: string, measures = ''): string =>
    `panel-model sedge {\n  terminal E0 common\n  terminal E1 edge-input common E0 terminator 8.2 kohm\n  window E1 ${window}\n${measures}}\n`;
  /** One edge of 8.2 kohm ± 5 %: 7.79 to 8.61 kohm at rest, 500 ohm at most when pressed, 3.895 to 4.305 kohm with two terminators. */
  const loop = (window: string, lines = ''): string =>
    head + withWindow(window) + edge('front', `terminator 8.2 kohm${lines}`) + panel('wire front to E1 E0', 'sedge');
  const sorts = (text: string): string[] =>
    findingsOf(rule, text).map(({ severity, what }) => `${severity} ${/^(A pressed|A cut|The loop|With a second)/.exec(what)?.[0]}`);

  test.each([
    ['just holds it at rest', '7.79 kohm .. 8.61 kohm', '', []],
    ['begins above the least', '7.8 kohm .. 9 kohm', '', ['warning The loop']],
    ['ends below the greatest', '7 kohm .. 8.6 kohm', '', ['warning The loop']],
    ['is too narrow at both ends: that is told once', '7.8 kohm .. 8.6 kohm', '', ['warning The loop']],
    ['reaches down to a pressed edge, and so to two terminators', '500 ohm .. 9 kohm', '', ['error A pressed', 'warning With a second']],
    ['begins above a pressed edge, but not above two terminators', '501 ohm .. 9 kohm', '', ['warning With a second']],
    ['begins where two terminators may show at most', '4.305 kohm .. 9 kohm', '', ['warning With a second']],
    ['begins above that', '4.31 kohm .. 9 kohm', '', []],
    ['ends where the damp of a cut wire begins', '4.31 kohm .. 80 kohm', '; leakage 80 kohm', ['error A cut']],
    ['ends below that', '4.31 kohm .. 79.9 kohm', '; leakage 80 kohm', []],
  ])('against a window that %s', (_, window, lines, expected) => {
    expect(sorts(loop(window, lines))).toEqual(expected);
  });

  test('without a window is held against itself: damp as low as the greatest terminator hides a cut wire', () => {
    const text = (leakage: string): string =>
      head + edge('front', `terminator 8.2 kohm; leakage ${leakage}`) + panel('wire front to R1 R0', 'marram-one');
    expect(sorts(text('8.62 kohm'))).toEqual(['warning With a second']);
    expect(sorts(text('8.61 kohm'))).toEqual(['error A cut', 'warning With a second']);
    expect(marginsOf(judge(text('8.61 kohm')).installation).filter((margin) => margin.rule.name === rule)).toEqual([]);
  });

  test('is said in ohms, with all that makes it', () => {
    const text =
      head +
      withWindow('2 kohm .. 8 kohm') +
      edge('front', 'chains-into back; leakage 20 kohm') +
      edge('back', 'terminator 8.2 kohm; leakage 30 kohm') +
      'cable line : heron-signal {\n  feeds front\n  length 100 m\n}\n' +
      panel('wire front to E1 E0', 'sedge');
    // 20 and 30 kohm side by side are 12 kohm of damp; 7.79 and 12 kohm side by side 4.724 kohm. 200 m of 39 ohm/km are 7.8 ohm cold.
    expect(allOf(rule, text)).toMatch(
      /The loop on “E1” at rest may show 4\.724 kohm to 8\.619 kohm; the panel takes 2 kohm to 8 kohm for rest\. It may report a fault while all is well\.\n {2}See line \d+, “terminator 8\.2 kohm”: the terminator\n {2}See line \d+, “leakage 20 kohm”: the damp that is let be\n {2}See line \d+, “leakage 30 kohm”: the damp that is let be\n {2}See line \d+, “length 100 m”: the cable\n {2}See line \d+, “window E1 2 kohm \.\. 8 kohm”: what the panel takes for rest\n/,
    );
  });

  test('is a margin to both ends of the window, on the wire, kept or not', () => {
    const text = loop('7.8 kohm .. 9 kohm');
    const { installation } = judge(text);
    const margins = marginsOf(installation).filter((margin) => margin.rule.name === rule);
    expect(margins.map(({ held, subject, limit, kept }) => [held.name, subject, limit, kept])).toEqual([
      ['least resistance at rest', 'main/E1', 7800, false],
      ['greatest resistance at rest', 'main/E1', 9000, true],
    ]);
    expect(margins.map(({ value }) => value.toFixed(6))).toEqual(['7790.000000', '8610.000000']);
    expect(margins.map(({ at }) => text.slice(at.start, at.end))).toEqual(['wire front to E1 E0', 'wire front to E1 E0']);
  });
});
