import { isStandard, nearestStandard } from '../../figures/edge-loop/maths.ts';
import { type EdgeBranch, type EdgeLoop, loopsOf } from '../../figures/edge-loop/loops.ts';
import type { Sensor } from '../../model/index.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { inModel, ohmsInWords, written } from '../wiring.ts';
import { quoted } from '../words.ts';

/**
 * How far a stated value may be from the one that the input expects, as a share. It takes in the same resistor under
 * another series (8.2 and 8.25 kohm) and no neighbour in E24, which is about 10 % away (IEC 60063).
 */
const allowed = 0.05;

export const rule = installationRule({
  name: 'edge-terminator-wrong',
  severity: 'error',
  title: 'The terminator of a resistive edge is not the one that the panel’s input expects.',
  why: 'The panel takes any other resistance for a fault or a pressed edge; where it does not, its window lies off the mark, and damp or a second fault goes unseen.',
  remedy: 'Fit the terminator that the input expects.',
  source: { text: 'IEC 60063 (E24, ± 5 %) for what counts as the same value; the value itself is what the panel’s model declares', standing: 'published' },
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const loops = loopsOf(panel);
      if (loops === undefined) continue;
      for (const loop of loops) {
        const expected = loop.terminal.terminator;
        if (expected === undefined) continue;
        for (const branch of loop.branches)
          for (const edge of branch.edges) {
            const fitted = edge.facts.terminator?.value;
            const made = edge.model?.facts.terminator?.value;
            if (fitted !== undefined && differs(fitted, expected)) sayFitted(loop, branch, edge, expected, fitted, report);
            else if (made !== undefined && differs(made, expected)) sayMade(loop, branch, edge, expected, made, report);
          }
      }
    }
  },
});

const differs = (value: number, expected: number): boolean => Math.abs(value / expected - 1) > allowed + 1e-9;

function sayFitted({ panel, terminal }: EdgeLoop, { wire }: EdgeBranch, edge: Sensor, expected: number, fitted: number, report: (report: Report) => void): void {
  const line = edge.facts.terminator?.line;
  if (line === undefined) return;
  const input = quoted(terminal.name.text);
  const made = edge.model?.facts.terminator;
  const unmade = isStandard(fitted, 'E24') || isStandard(fitted, 'E96') ? '' : ` No resistor of ${written(line)} is made in E24 or E96; the nearest are ${ohmsInWords(nearestStandard(fitted, 'E24') ?? fitted)} and ${ohmsInWords(nearestStandard(fitted, 'E96') ?? fitted)}.`;
  const value = line.values[0];
  // Only the number and its unit change: a tolerance behind them stays.
  const end = value?.kind === 'number' ? (value.unit?.end ?? value.start + value.text.length) : 0;
  const agree = made === undefined || !differs(made.value, expected);
  report({
    at: line,
    what: `${quoted(edge.name)} has a terminator of ${written(line)}; ${input} expects ${ohmsInWords(expected)}${agree ? '' : `, and the edge is made for ${written(made.line)}`}.`,
    remedy: (agree ? `Fit ${ohmsInWords(expected)}.` : `Ask the makers whether this edge can end in ${ohmsInWords(expected)}; else choose another edge.`) + unmade,
    related: relatedTo(panel, wire, terminal, edge, expected),
    fixes: agree && value?.kind === 'number' && end > value.start ? [{ title: `Write “${ohmsInWords(expected)}”, once it is fitted`, edits: [{ start: value.start, end, text: ohmsInWords(expected) }], safe: false }] : [],
  });
}

function sayMade({ panel, terminal }: EdgeLoop, { wire }: EdgeBranch, edge: Sensor, expected: number, made: number, report: (report: Report) => void): void {
  report({
    at: edge.modelAt ?? edge.nameAt ?? edge.at,
    what: `${quoted(edge.name)} is made for a terminator of ${ohmsInWords(made)}; ${quoted(terminal.name.text)} expects ${ohmsInWords(expected)}.`,
    remedy: `Choose an edge for ${ohmsInWords(expected)}, or ask its maker whether it can end in that value.`,
    related: relatedTo(panel, wire, terminal, edge, expected),
  });
}

function relatedTo(panel: EdgeLoop['panel'], wire: EdgeBranch['wire'], terminal: EdgeLoop['terminal'], edge: Sensor, expected: number): Related[] {
  const { model, installation } = panel;
  const made = edge.model?.facts.terminator;
  return [
    { message: `wired to ${quoted(terminal.name.text)} here`, start: wire.fact.line.start, end: wire.fact.line.end },
    ...(model === undefined ? [] : [inModel(model, installation, terminal.line, `${quoted(terminal.name.text)} expects ${ohmsInWords(expected)}`)]),
    ...(edge.model === undefined || made === undefined ? [] : [inModel(edge.model, installation, made.line, 'what the edge is made for')]),
  ];
}
