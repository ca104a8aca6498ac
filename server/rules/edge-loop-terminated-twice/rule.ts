import { type EdgeLoop, loopsOf, resistanceOf } from '../../figures/edge-loop/loops.ts';
import { factPlace, type Sensor } from '../../model/index.ts';
import { without } from '../fixes.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { inModel, ohmsInWords, written } from '../wiring.ts';
import { quoted } from '../words.ts';

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
      for (const loop of loops) if (loop.terminated.length > 1) say(loop, report);
    }
  },
});

function say(loop: EdgeLoop, report: (report: Report) => void): void {
  const { panel, terminal, branches, terminated } = loop;
  const resistance = resistanceOf(loop);
  // In one chain it is the first that is one too many; where several edges are wired to the input, it is the second.
  const inOneChain = branches.length === 1;
  const edge = terminated[inOneChain ? 0 : 1];
  const { model, installation } = panel;
  if (edge === undefined || model === undefined) return;
  const input = quoted(terminal.name.text);
  const expected = terminal.terminator ?? edge.model?.facts.terminator?.value;
  const names = terminated.slice(0, 3).map((one) => `${quoted(one.name)} (${valueOf(one)})`);
  const more = terminated.length > 3 ? ` and ${terminated.length - 3} more` : '';
  const seen = resistance === undefined ? '' : `: side by side the panel sees ${ohmsInWords(resistance)}${expected === undefined ? '' : ` instead of ${ohmsInWords(expected)}`}`;
  report({
    at: factPlace(edge, edge.facts.terminator),
    what: `The loop at ${input} has ${terminated.length} terminators, on ${names.join(', ')}${more}${seen}.`,
    ...(inOneChain ? { remedy: `Take out the terminator of ${quoted(edge.name)}: its far end leads to the next edge.` } : {}),
    related: [
      ...terminated.filter((one) => one !== edge).map((one) => ({ message: `the terminator of ${quoted(one.name)}`, ...factPlace(one, one.facts.terminator) })),
      ...branches.map(({ wire }) => ({ message: `wired to ${input} here`, start: wire.fact.line.start, end: wire.fact.line.end })),
      ...(terminal.terminator === undefined ? [] : [inModel(model, installation, terminal.line, `${input} expects ${ohmsInWords(terminal.terminator)}`)]),
    ],
    fixes: inOneChain && terminated.length === 2 ? [{ title: `Take out the terminator of “${edge.name}”`, edits: takeOut(edge), safe: false }] : [],
  });
}

const valueOf = (edge: Sensor): string => (edge.facts.terminator === undefined ? '' : written(edge.facts.terminator.line));

function takeOut(edge: Sensor): { start: number; end: number; text: string }[] {
  const line = edge.facts.terminator?.line;
  return line === undefined ? [] : [without(edge.installation.reading.tree.text, line.start, line.end)];
}
