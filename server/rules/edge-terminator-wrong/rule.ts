import type { Statement } from '../../../grammar/index.ts';
import { type EdgeBranch, type EdgeLoop, loopsOf } from '../../circuits/index.ts';
import { isStandard, nearestStandard } from '../../figures/edge-loop/working.ts';
import { headPlace, type Sensor, type SensorModel } from '../../model/index.ts';
import { toFact, toModelFact } from '../related.ts';
import { type Fix, installationRule, type Related, type Report } from '../rule.ts';
import { ohmsInWords, quoted, written } from '../words.ts';

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
  source: {
    text: 'IEC 60063 (E24, ± 5 %) for what counts as the same value; the value itself is what the panel’s model declares',
    standing: 'published',
  },
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const loops = loopsOf(panel);
      if (loops === undefined) continue;
      for (const loop of loops) {
        const expected = loop.terminal.terminator;
        if (expected === undefined) continue;
        for (const branch of loop.branches)
          for (const edge of branch.edges) {
            const fitted = edge.facts.terminator;
            const made = edge.model?.facts.terminator;
            if (fitted !== undefined && differs(fitted, expected)) sayFitted(loop, branch, edge, fitted, made, expected, report);
            else if (made !== undefined && differs(made, expected)) sayMade(loop, branch, edge, made, expected, report);
          }
      }
    }
  },
});

type Fitted = NonNullable<Sensor['facts']['terminator']>;
type Made = SensorModel['facts']['terminator'];

const differs = ({ value }: { readonly value: number }, expected: number): boolean => Math.abs(value / expected - 1) > allowed + 1e-9;

function sayFitted(
  loop: EdgeLoop,
  branch: EdgeBranch,
  edge: Sensor,
  fitted: Fitted,
  made: Made,
  expected: number,
  report: (report: Report) => void,
): void {
  const { line, value } = fitted;
  const agree = made === undefined || !differs(made, expected);
  const unmade =
    isStandard(value, 'E24') || isStandard(value, 'E96')
      ? ''
      : ` No resistor of ${written(line)} is made in E24 or E96; the nearest are ${ohmsInWords(nearestStandard(value, 'E24') ?? value)} and ${ohmsInWords(nearestStandard(value, 'E96') ?? value)}.`;
  report({
    at: line,
    what: `${quoted(edge.name)} has a terminator of ${written(line)}; ${quoted(loop.terminal.name.text)} expects ${ohmsInWords(expected)}${agree ? '' : `, and the edge is made for ${written(made.line)}`}.`,
    remedy:
      (agree
        ? `Fit ${ohmsInWords(expected)}.`
        : `Ask the makers whether this edge can end in ${ohmsInWords(expected)}; else choose another edge.`) + unmade,
    related: relatedTo(loop, branch, edge, expected),
    fixes: agree ? rewritten(line, ohmsInWords(expected)) : [],
  });
}

function sayMade(
  loop: EdgeLoop,
  branch: EdgeBranch,
  edge: Sensor,
  made: { readonly value: number },
  expected: number,
  report: (report: Report) => void,
): void {
  report({
    at: edge.modelAt ?? headPlace(edge),
    what: `${quoted(edge.name)} is made for a terminator of ${ohmsInWords(made.value)}; ${quoted(loop.terminal.name.text)} expects ${ohmsInWords(expected)}.`,
    remedy: `Choose an edge for ${ohmsInWords(expected)}, or ask its maker whether it can end in that value.`,
    related: relatedTo(loop, branch, edge, expected),
  });
}

const relatedTo = ({ panel, terminal }: EdgeLoop, { wire }: EdgeBranch, edge: Sensor, expected: number): readonly Related[] => [
  ...toFact(`wired to ${quoted(terminal.name.text)} here`, wire.fact),
  ...toModelFact(`${quoted(terminal.name.text)} expects ${ohmsInWords(expected)}`, panel.installation, panel.model, terminal),
  ...toModelFact('what the edge is made for', panel.installation, edge.model, edge.model?.facts.terminator),
];

/** Writes another number and unit; a tolerance behind them stays. */
function rewritten({ values: [value] }: Statement, text: string): Fix[] {
  return value?.kind === 'number' && value.unit !== undefined
    ? [{ title: `Write “${text}”, once it is fitted`, edits: [{ start: value.start, end: value.unit.end, text }], safe: false }]
    : [];
}
