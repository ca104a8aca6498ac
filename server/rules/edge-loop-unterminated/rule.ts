import { type EdgeLoop, loopsOf } from '../../figures/edge-loop/loops.ts';
import { headPlace, type Sensor } from '../../model/index.ts';
import { commonPractice, installationRule, type Fix, type Report } from '../rule.ts';
import { addLine, inModel, ohmsInWords } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'edge-loop-unterminated',
  severity: 'error',
  title: 'A chain of resistive edges has no terminator at its far end.',
  why: 'The terminator is how the panel tells an edge at rest from a wire that is cut. Without it the loop is open: the gate will not move, or the panel was set to ignore a cut wire, and then nobody learns of one.',
  remedy: 'Fit the terminator at the far end of the last edge of the chain, and write it into that edge’s block.',
  source: commonPractice,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const loops = loopsOf(panel);
      if (loops === undefined) continue;
      for (const loop of loops)
        for (const branch of loop.branches)
          if (branch.whole && !hasTerminator(branch.edges)) {
            say(loop, report);
            break;
          }
    }
  },
});

const hasTerminator = (edges: readonly Sensor[]): boolean => {
  for (const edge of edges) if (edge.facts.terminator !== undefined) return true;
  return false;
};

/** One finding for each input, however many of its branches lack one. */
function say({ panel, terminal, branches, terminated }: EdgeLoop, report: (report: Report) => void): void {
  const open = branches.filter((branch) => branch.whole && !hasTerminator(branch.edges));
  const branch = open[0];
  const edge = branch?.edges.at(-1);
  const model = panel.model;
  if (branch === undefined || edge === undefined || model === undefined) return;
  const wanted = terminal.terminator ?? edge.model?.facts.terminator?.value;
  if (wanted === undefined) return;
  const input = quoted(terminal.name.text);
  const name = quoted(edge.name);
  const value = ohmsInWords(wanted);
  const chained = branch.edges.length > 1 ? ', the last of its chain,' : '';
  const alone = branches.length === 1;
  report({
    at: edge.nameAt ?? headPlace(edge),
    what: terminated.length === 0 ? `${name}${chained} has no terminator, so the loop at ${input} is open.` : `${name}${chained} has no terminator; the panel sees only that of ${quoted(terminated[0]?.name ?? '')} at ${input}.`,
    ...(terminated.length === 0 ? {} : { why: `A cut wire to ${name} changes nothing that the panel can see: from then on nobody learns that the edge is dead.` }),
    remedy: alone ? `Fit ${value} at the far end of ${name}, and write it into its block.` : `Chain the edges at ${input} one into the next, and fit ${value} at the far end of the last one only.`,
    related: [
      { message: `wired to ${input} here`, start: branch.wire.fact.line.start, end: branch.wire.fact.line.end },
      ...branches.filter((other) => other !== branch).map((other) => ({ message: `on ${input} as well`, start: other.wire.fact.line.start, end: other.wire.fact.line.end })),
      ...(terminal.terminator === undefined ? [] : [inModel(model, panel.installation, terminal.line, `${input} expects ${value}`)]),
    ],
    fixes: alone ? [fix(edge, value)] : [],
  });
}

const fix = (edge: Sensor, value: string): Fix => ({
  title: `Write “terminator ${value}”, once it is fitted`,
  edits: [addLine(edge.installation.reading.tree.text, edge.at, `terminator ${value}`, [])],
  safe: false,
});
