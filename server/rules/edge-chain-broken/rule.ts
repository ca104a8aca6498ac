import { isResistive } from '../../figures/edge-loop/loops.ts';
import type { Statement } from '../../../grammar/index.ts';
import type { Installation, Sensor, Wire } from '../../model/index.ts';
import { without } from '../fixes.ts';
import { commonPractice, installationRule, type Fix, type Related, type Report } from '../rule.ts';
import { addLine, inModel, quotedList } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'edge-chain-broken',
  severity: 'error',
  title: 'A chain of edges does not run from the panel, edge by edge, to one terminator at its end.',
  why: 'Only through an unbroken chain with its terminator at the end can the panel see every edge, and every cut wire.',
  remedy: 'Let each edge lead to the next resistive edge, once, and only the last one have a terminator.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    for (const sensor of installation.sensors) if (sensor.facts['chains-into'] !== undefined && sensor.next !== undefined) checkChain(installation, sensor, sensor.next, report);
  },
});

const otherOutput = (sensor: Sensor): boolean => sensor.model?.facts.output !== undefined && !isResistive(sensor);

/** One fault at most is told of each edge, the gravest first. */
function checkChain(installation: Installation, sensor: Sensor, next: Sensor, report: (report: Report) => void): void {
  const at = sensor.facts['chains-into']?.line;
  if (at === undefined) return;
  if (otherOutput(sensor)) return sayOther(installation, sensor, next, sensor, at, report);
  if (otherOutput(next)) return sayOther(installation, sensor, next, next, at, report);
  const most = installation.sensors.length;
  // Few edges are chained to one that is chained on: most chains end here, and then nothing leads back.
  const circle = next.next === undefined ? undefined : circleOf(sensor, most);
  if (circle !== undefined) return sayCircle(sensor, circle, at, report);
  const rival = rivalOf(installation, sensor, next);
  if (rival !== undefined && circleOf(next, most) === undefined) return sayRival(sensor, next, rival, at, report);
  const wire = signalOf(next);
  if (wire !== undefined && signalOf(sensor) !== undefined) return sayWiredTwice(sensor, next, wire, report);
  if (sensor.facts.terminator !== undefined && endsOpen(next, most)) sayTerminated(installation, sensor, next, sensor.facts.terminator.line, report);
}

function signalOf({ wires }: Sensor): Wire | undefined {
  for (const wire of wires) if (wire.part === 'signal') return wire;
  return undefined;
}

/** An edge further up in the file that chains into the same one. */
function rivalOf({ sensors }: Installation, sensor: Sensor, next: Sensor): Sensor | undefined {
  for (const one of sensors) {
    if (one === sensor) return undefined;
    if (one.next === next) return one;
  }
  return undefined;
}

type Say = (report: Report) => void;

function sayOther(installation: Installation, sensor: Sensor, next: Sensor, one: Sensor, at: Statement, report: Say): void {
  const name = quoted(sensor.name);
  report({
    at,
    what: `${name} chains into ${quoted(next.name)}, ${one === next ? 'which' : `but ${name}`} is no resistive edge.`,
    why: 'Only the open contacts and the terminator of resistive edges can share one loop.',
    remedy: `Wire ${quoted(one.name)} to an input of its own, and end the chain before it.`,
    related: outputOf(installation, one),
  });
}

function sayCircle(sensor: Sensor, circle: readonly Sensor[], at: Statement, report: Say): void {
  // Told once, at the edge that stands first in the file.
  if (circle.some((one) => one.at.start < sensor.at.start)) return;
  const name = quoted(sensor.name);
  report({
    at,
    what: circle.length === 1 ? `${name} chains into itself.` : `The chain of ${name} leads back to it: ${quotedList(circle.map((one) => one.name))}.`,
    why: 'A circle has no end, so there is no place for the terminator.',
    remedy: 'Leave out the line of the last edge and fit the terminator there.',
    related: circle.slice(1).map((one) => chainLine(one, 'part of the circle')),
  });
}

function sayRival(sensor: Sensor, next: Sensor, rival: Sensor, at: Statement, report: Say): void {
  report({
    at,
    what: `${quoted(sensor.name)} and ${quoted(rival.name)} both chain into ${quoted(next.name)}.`,
    why: 'An edge that hangs on two chains joins their loops, and a cut wire of one is hidden by the other.',
    remedy: `Let one of them lead to ${quoted(next.name)}, and the other end in a terminator of its own or lead to another edge.`,
    related: [chainLine(rival, `${quoted(rival.name)} chains into it`)],
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
    related: [chainLine(sensor, `${name} chains into it`)],
  });
}

function sayTerminated(installation: Installation, sensor: Sensor, next: Sensor, at: Statement, report: Say): void {
  const name = quoted(sensor.name);
  const nextName = quoted(next.name);
  report({
    at,
    what: `${name} has a terminator and chains into ${nextName}, ${next.next === undefined ? 'which has none' : 'whose chain has none'}.`,
    why: `The panel sees the terminator of ${name} whether or not ${nextName} is still connected: a cut wire between them goes unseen.`,
    remedy: 'Move the terminator to the far end of the last edge of the chain.',
    related: [chainLine(sensor, 'leads on to the next edge')],
    fixes: next.next === undefined ? moved(installation, sensor, next) : [],
  });
}

/** The edges of the circle that `sensor` is part of, itself first; undefined where its chain does not lead back to it. */
function circleOf(sensor: Sensor, most: number): Sensor[] | undefined {
  const circle = [sensor];
  for (let edge = sensor.next; edge !== undefined && circle.length <= most; edge = edge.next) {
    if (edge === sensor) return circle;
    circle.push(edge);
  }
  return undefined;
}

/** True when a chain from here is known to its end, and no edge of it has a terminator. */
function endsOpen(sensor: Sensor, most: number): boolean {
  let edge: Sensor | undefined = sensor;
  for (let steps = 0; edge !== undefined; steps++) {
    if (steps > most || edge.facts.terminator !== undefined || edge.unread.length > 0 || !isResistive(edge)) return false;
    if (edge.next === undefined && edge.facts['chains-into'] !== undefined) return false;
    edge = edge.next;
  }
  return true;
}

const chainLine = (sensor: Sensor, message: string): Related => {
  const line = sensor.facts['chains-into']?.line ?? sensor.at;
  return { message, start: line.start, end: line.end };
};

function outputOf(installation: Installation, { model }: Sensor): Related[] {
  const output = model?.facts.output;
  return model === undefined || output === undefined ? [] : [inModel(model, installation, output.line, 'how it reports')];
}

function moved({ reading }: Installation, from: Sensor, to: Sensor): Fix[] {
  const { text } = reading.tree;
  const line = from.facts.terminator?.line;
  if (line === undefined) return [];
  return [
    {
      title: `Move the terminator to “${to.name}”, once it is fitted there`,
      edits: [without(text, line.start, line.end), addLine(text, to.at, text.slice(line.start, line.end), [])],
      safe: false,
    },
  ];
}
