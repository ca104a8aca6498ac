import { type MotorEnd, type MotorWiring, motorWiringOf } from '../../circuits/index.ts';
import type { Drive } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel, type Related, type Report } from '../rule.ts';
import { quoted, quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'motor-wires-wrong',
  severity: 'error',
  title: 'The wires of a drive do not end on one motor output, and on all of it.',
  why: 'A motor runs between the terminals of one output; wired otherwise it does not run, or runs when the panel means another one.',
  remedy: 'Wire the drive to all terminals of one motor output.',
  source: ofTheModel,
  acceptable: false,
  check: ({ drives }, report) => {
    for (const drive of drives) {
      const wiring = motorWiringOf(drive);
      // What ends on something that is no motor output is reported for that.
      if (wiring === undefined || !wiring.whole || wiring.ends.length === 0) continue;
      const found = panelsApart(drive, wiring) ?? outputsApart(drive, wiring) ?? oneWire(drive, wiring) ?? lacking(drive, wiring);
      if (found !== undefined) report(found);
    }
  },
});

const related = (end: MotorEnd | undefined): readonly Related[] =>
  end === undefined
    ? []
    : toModelFact(`the output of ${quoted(end.use.at.text)}`, end.panel.installation, end.panel.model, end.output ?? end.use.terminal);

function panelsApart(drive: Drive, { ends }: MotorWiring): Report | undefined {
  const first = ends[0];
  const other = ends.find(({ panel }) => panel !== first?.panel);
  if (first === undefined || other === undefined) return undefined;
  return {
    at: other.use.at,
    what: `${quoted(drive.name)} is wired to ${quoted(first.panel.name)} and to ${quoted(other.panel.name)}.`,
    why: 'Two panels on one motor do not know of each other: one drives it while the other has stopped it, or the two short each other.',
    remedy: 'Wire the drive to one panel.',
    related: [{ message: `its wire to ${quoted(first.panel.name)}`, start: first.use.at.start, end: first.use.at.end }],
  };
}

function outputsApart(drive: Drive, { ends }: MotorWiring): Report | undefined {
  const first = ends.find(({ output }) => output !== undefined);
  const other = ends.find(({ output }) => output !== undefined && output !== first?.output);
  if (first === undefined || other === undefined) return undefined;
  return {
    at: other.use.at,
    what: `${quoted(drive.name)} is wired to ${quoted(first.use.at.text)} and ${quoted(other.use.at.text)}, which belong to two outputs of ${quoted(first.panel.name)}.`,
    related: [...related(first), ...related(other)],
  };
}

function oneWire(drive: Drive, { ends, returns }: MotorWiring): Report | undefined {
  const [first, second] = ends;
  if (first === undefined || second !== undefined || returns) return undefined;
  return {
    at: first.use.at,
    what: `${quoted(drive.name)} is wired to ${quoted(first.use.at.text)} alone.`,
    why: 'Over one wire no current flows: the drive does not run.',
    related: related(first),
  };
}

/** Of an output of three terminals (common, open, close) all are needed; on one of four there may be two motors. */
function lacking(drive: Drive, { ends }: MotorWiring): Report | undefined {
  const output = ends[0]?.output;
  if (output === undefined || output.terminals.length !== 3 || ends.length !== 2) return undefined;
  const missing = output.terminals.filter(({ text }) => !ends.some(({ use }) => use.at.text === text));
  return {
    at: ends[0]?.wire.fact.line ?? ends[0]?.use.at ?? drive.at,
    what: `${quoted(drive.name)} is wired to ${quotedList(ends.map(({ use }) => use.at.text))}, and not to ${quotedList(missing.map(({ text }) => text))} of the same output.`,
    why: 'A motor with a common and a wire for each way runs one way only when one of them is missing.',
    related: related(ends[0]),
  };
}
