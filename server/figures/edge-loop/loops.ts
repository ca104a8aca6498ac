// Which edges hang on which input of a panel: wired to it, or chained behind one that is.
import type { Panel, Sensor, Terminal, Wire } from '../../model/index.ts';
import { perSubject } from '../memo.ts';
import { parallel } from './maths.ts';

/** An edge that is wired to the input, and all that its chain leads to, from the panel outwards. */
export interface EdgeBranch {
  readonly wire: Wire;
  /** One at least; each edge once. */
  readonly edges: readonly Sensor[];
  /** False where the chain does not end plainly: at a name or line that cannot be read, at something else than a resistive edge, in a circle. */
  readonly whole: boolean;
}

/** Everything that hangs on one resistive input. All terminators are side by side across its two wires. */
export interface EdgeLoop {
  readonly panel: Panel;
  readonly terminal: Terminal;
  /** One at least, in the order of the file. */
  readonly branches: readonly EdgeBranch[];
  /** Edges with a terminator, from the panel outwards. */
  readonly terminated: readonly Sensor[];
  /** Ohms that the panel sees at rest; Infinity without a terminator; undefined where a branch is not whole. */
  readonly resistance: number | undefined;
}

export const isResistive = (sensor: Sensor): boolean => sensor.model?.facts.output?.value === 'resistive';

/** The loops of a panel, in the order of its lines; undefined where no resistive edge is wired to a resistive input of it. */
export const loopsOf = perSubject((panel: Panel): readonly EdgeLoop[] | undefined => {
  let loops: { terminal: Terminal; branches: EdgeBranch[]; edges: Sensor[] }[] | undefined;
  for (const wire of panel.wires) {
    const { device } = wire;
    if (wire.part !== 'signal' || device === undefined || device.kind !== 'sensor' || !isResistive(device.it)) continue;
    for (const { terminal } of wire.ends) {
      if (terminal === undefined || terminal.role !== 'edge-input') continue;
      let loop = loops?.find((one) => one.terminal === terminal);
      if (loop === undefined) (loops ??= []).push((loop = { terminal, branches: [], edges: [] }));
      // The same edge wired to the same input twice is one edge.
      if (!loop.branches.some((branch) => branch.edges[0] === device.it)) loop.branches.push(branchOf(wire, device.it, loop.edges));
    }
  }
  return loops?.map(({ terminal, branches, edges }) => {
    const terminated = edges.filter((edge) => edge.facts.terminator !== undefined);
    const whole = branches.every((branch) => branch.whole);
    return { panel, terminal, branches, terminated, resistance: whole ? parallel(terminated.map((edge) => edge.facts.terminator?.value ?? Number.POSITIVE_INFINITY)) : undefined };
  });
});

/** Follows a chain; puts what it meets into `met`, which holds all edges of the loop. */
function branchOf(wire: Wire, first: Sensor, met: Sensor[]): EdgeBranch {
  const edges: Sensor[] = [];
  let edge: Sensor | undefined = first;
  let whole = true;
  while (edge !== undefined) {
    if (!met.includes(edge)) met.push(edge);
    // Met twice: a circle, or two branches that meet.
    else whole = false;
    edges.push(edge);
    if (edge.unread.length > 0) whole = false;
    const chain: Sensor['facts']['chains-into'] = edge.facts['chains-into'];
    const next: Sensor | undefined = edge.next;
    if (chain !== undefined && (next === undefined || !isResistive(next) || edges.includes(next))) {
      whole = false;
      break;
    }
    edge = next;
  }
  return { wire, edges, whole };
}
