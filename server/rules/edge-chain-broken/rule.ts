import type { Statement } from '../../../grammar/index.ts';
import { chainedInto, circleOf, endsOpen, isResistive } from '../../circuits/index.ts';
import { factPlace, type Sensor, type Wire } from '../../model/index.ts';
import { addLine, without } from '../fixes.ts';
import { toModelFact } from '../related.ts';
import { commonPractice, type Fix, installationRule, type Report } from '../rule.ts';
import { quoted, quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'edge-chain-broken',
  severity: 'error',
  title: 'A chain of edges does not run from the panel, edge by edge, to one terminator at its end.',
  why: 'Only through an unbroken chain with its terminator at the end can the panel see every edge, and every cut wire.',
  remedy: 'Let each edge lead to the next resistive edge, once, and only the last one have a terminator.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    for (const sensor of installation.sensors) if (sensor.next !== undefined) checkChain(sensor, sensor.next, report);
  },
});

const otherOutput = (sensor: Sensor): boolean => sensor.model?.facts.output !== undefined && !isResistive(sensor);

/** One fault at most is told of each edge, the gravest first. */
function checkChain(sensor: Sensor, next: Sensor, report: (report: Report) => void): void {
  const other = [sensor, next].find(otherOutput);
  if (other !== undefined) return sayOther(sensor, next, other, report);
  const circle = circleOf(sensor);
  if (circle !== undefined) return sayCircle(sensor, circle, report);
  const rival = rivalOf(sensor, next);
  if (rival !== undefined && circleOf(next) === undefined) return sayRival(sensor, next, rival, report);
  const wire = signalOf(next);
  if (wire !== undefined && signalOf(sensor) !== undefined) return sayWiredTwice(sensor, next, wire, report);
  const { terminator } = sensor.facts;
  if (terminator !== undefined && endsOpen(next)) sayTerminated(sensor, next, terminator.line, report);
}

const signalOf = ({ wires }: Sensor): Wire | undefined => wires.find(({ part }) => part === 'signal');

/** An edge further up in the file that chains into the same one: the first of them. */
function rivalOf(sensor: Sensor, next: Sensor): Sensor | undefined {
  const first = chainedInto(next)?.[0];
  return first === sensor ? undefined : first;
}

type Say = (report: Report) => void;

function sayOther(sensor: Sensor, next: Sensor, one: Sensor, report: Say): void {
  const name = quoted(sensor.name);
  report({
    at: chainPlace(sensor),
    what: `${name} chains into ${quoted(next.name)}, ${one === next ? 'which' : `but ${name}`} is no resistive edge.`,
    why: 'Only the open contacts and the terminator of resistive edges can share one loop.',
    remedy: `Wire ${quoted(one.name)} to an input of its own, and end the chain before it.`,
    related: toModelFact('how it reports', one.installation, one.model, one.model?.facts.output),
  });
}

function sayCircle(sensor: Sensor, circle: readonly Sensor[], report: Say): void {
  // Told once, at the edge that stands first in the file.
  if (circle[0] !== sensor) return;
  const name = quoted(sensor.name);
  report({
    at: chainPlace(sensor),
    what:
      circle.length === 1
        ? `${name} chains into itself.`
        : `The chain of ${name} leads back to it: ${quotedList(circle.map((one) => one.name))}.`,
    why: 'A circle has no end, so there is no place for the terminator.',
    remedy: 'Leave out the line of the last edge and fit the terminator there.',
    related: circle.slice(1).map((one) => ({ message: 'part of the circle', ...chainPlace(one) })),
  });
}

function sayRival(sensor: Sensor, next: Sensor, rival: Sensor, report: Say): void {
  report({
    at: chainPlace(sensor),
    what: `${quoted(sensor.name)} and ${quoted(rival.name)} both chain into ${quoted(next.name)}.`,
    why: 'An edge that hangs on two chains joins their loops, and a cut wire of one is hidden by the other.',
    remedy: `Let one of them lead to ${quoted(next.name)}, and the other end in a terminator of its own or lead to another edge.`,
    related: [{ message: `${quoted(rival.name)} chains into it`, ...chainPlace(rival) }],
  });
}

function sayWiredTwice(sensor: Sensor, next: Sensor, wire: Wire, report: Say): void {
  const name = quoted(sensor.name);
  const nextName = quoted(next.name);
  report({
    at: wire.fact.line,
    what: `${nextName} is wired to the panel, and ${name} chains into it as well.`,
    why: 'The edge would hang on the panel twice, so a cut wire on one way is hidden by the other.',
    remedy: `Leave out this wire if ${nextName} is reached through ${name}; else leave out the chain, and give ${name} a terminator.`,
    related: [{ message: `${name} chains into it`, ...chainPlace(sensor) }],
  });
}

function sayTerminated(sensor: Sensor, next: Sensor, terminator: Statement, report: Say): void {
  const name = quoted(sensor.name);
  const nextName = quoted(next.name);
  report({
    at: terminator,
    what: `${name} has a terminator and chains into ${nextName}, ${next.next === undefined ? 'which has none' : 'whose chain has none'}.`,
    why: `The panel sees the terminator of ${name} whether or not ${nextName} is still connected: a cut wire between them goes unseen.`,
    remedy: 'Move the terminator to the far end of the last edge of the chain.',
    related: [{ message: 'leads on to the next edge', ...chainPlace(sensor) }],
    fixes: next.next === undefined ? [moved(terminator, next)] : [],
  });
}

/** Where an edge says what it leads to. */
const chainPlace = (sensor: Sensor): { readonly start: number; readonly end: number } => factPlace(sensor, sensor.facts['chains-into']);

function moved({ start, end }: Statement, to: Sensor): Fix {
  const { text } = to.installation.reading.tree;
  return {
    title: `Move the terminator to ${quoted(to.name)}, once it is fitted there`,
    edits: [without(text, start, end), addLine(text, to.at, text.slice(start, end), [])],
    safe: false,
  };
}
