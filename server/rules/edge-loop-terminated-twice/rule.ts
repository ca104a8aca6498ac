import { type EdgeLoop, loopsOf } from '../../circuits/index.ts';
import { resistanceOf } from '../../figures/edge-loop/working.ts';
import { factPlace, type Sensor } from '../../model/index.ts';
import { removal } from '../fixes.ts';
import { toFact, toModelFact } from '../related.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { ohmsInWords, quoted, written } from '../words.ts';

export const rule = installationRule({
  name: 'edge-loop-terminated-twice',
  severity: 'error',
  title: 'More than one terminator hangs on one resistive input.',
  why: 'Side by side, two terminators halve the resistance, which the panel reads as a fault or a pressed edge. A panel that puts up with it would no longer see the cut wire of one of them.',
  remedy: 'Chain the edges one into the next, and fit one terminator only, at the far end of the last.',
  source: commonPractice,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const loops = loopsOf(panel);
      if (loops === undefined) continue;
      for (const loop of loops) {
        const second = loop.terminated[1];
        if (second !== undefined) say(loop, second, report);
      }
    }
  },
});

function say(loop: EdgeLoop, second: Sensor, report: (report: Report) => void): void {
  const { panel, terminal, branches, terminated } = loop;
  const { installation } = panel;
  const resistance = resistanceOf(loop);
  // In one chain it is the first that is one too many; where several edges are wired to the input, it is the second.
  const inOneChain = branches.length === 1;
  const edge = (inOneChain ? terminated[0] : undefined) ?? second;
  const at = factPlace(edge, edge.facts.terminator);
  const input = quoted(terminal.name.text);
  const expected = terminal.terminator ?? edge.model?.facts.terminator?.value;
  const names = terminated.slice(0, 3).map((one) => `${quoted(one.name)} (${valueOf(one)})`);
  const more = terminated.length > 3 ? ` and ${terminated.length - 3} more` : '';
  const seen =
    resistance === undefined
      ? ''
      : `: side by side the panel sees ${ohmsInWords(resistance)}${expected === undefined ? '' : ` instead of ${ohmsInWords(expected)}`}`;
  report({
    at,
    what: `The loop at ${input} has ${terminated.length} terminators, on ${names.join(', ')}${more}${seen}.`,
    ...(inOneChain ? { remedy: `Take out the terminator of ${quoted(edge.name)}: its far end leads to the next edge.` } : {}),
    related: [
      ...terminated.filter((one) => one !== edge).flatMap((one) => toFact(`the terminator of ${quoted(one.name)}`, one.facts.terminator)),
      ...branches.flatMap(({ wire }) => toFact(`wired to ${input} here`, wire.fact)),
      ...(terminal.terminator === undefined
        ? []
        : toModelFact(`${input} expects ${ohmsInWords(terminal.terminator)}`, installation, panel.model, terminal)),
    ],
    fixes:
      inOneChain && terminated.length === 2
        ? removal(`Take out the terminator of ${quoted(edge.name)}`, installation.reading.tree.text, at.start, at.end, false)
        : [],
  });
}

const valueOf = (edge: Sensor): string => (edge.facts.terminator === undefined ? '' : written(edge.facts.terminator.line));
