import { type EdgeBranch, type EdgeLoop, loopsOf } from '../../circuits/index.ts';
import { headPlace, type Sensor } from '../../model/index.ts';
import { addLine } from '../fixes.ts';
import { toFact, toModelFact } from '../related.ts';
import { commonPractice, type Fix, installationRule, type Report } from '../rule.ts';
import { ohmsInWords, quoted } from '../words.ts';

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
      for (const loop of loops) {
        const open = loop.branches.find(isOpen);
        if (open !== undefined) say(loop, open, report);
      }
    }
  },
});

const isOpen = ({ whole, edges }: EdgeBranch): boolean => whole && edges.every((edge) => edge.facts.terminator === undefined);

/** One finding for each input, however many of its branches lack one. */
function say({ panel, terminal, branches, terminated }: EdgeLoop, branch: EdgeBranch, report: (report: Report) => void): void {
  const edge = branch.edges.at(-1);
  const wanted = terminal.terminator ?? edge?.model?.facts.terminator?.value;
  if (edge === undefined || wanted === undefined) return;
  const input = quoted(terminal.name.text);
  const name = quoted(edge.name);
  const value = ohmsInWords(wanted);
  const chained = branch.edges.length > 1 ? ', the last of its chain,' : '';
  const alone = branches.length === 1;
  const other = terminated[0];
  report({
    at: edge.nameAt ?? headPlace(edge),
    what:
      other === undefined
        ? `${name}${chained} has no terminator, so the loop at ${input} is open.`
        : `${name}${chained} has no terminator; the panel sees only that of ${quoted(other.name)} at ${input}.`,
    ...(other === undefined
      ? {}
      : { why: `A cut wire to ${name} changes nothing that the panel can see: from then on nobody learns that the edge is dead.` }),
    remedy: alone
      ? `Fit ${value} at the far end of ${name}, and write it into its block.`
      : `Chain the edges at ${input} one into the next, and fit ${value} at the far end of the last one only.`,
    related: [
      ...toFact(`wired to ${input} here`, branch.wire.fact),
      ...branches.filter((one) => one !== branch).flatMap((one) => toFact(`on ${input} as well`, one.wire.fact)),
      ...(terminal.terminator === undefined ? [] : toModelFact(`${input} expects ${value}`, panel.installation, panel.model, terminal)),
    ],
    fixes: alone ? [fix(edge, value)] : [],
  });
}

const fix = (edge: Sensor, value: string): Fix => ({
  title: `Write “terminator ${value}”, once it is fitted`,
  edits: [addLine(edge.installation.reading.tree.text, edge.at, `terminator ${value}`, [])],
  safe: false,
});
