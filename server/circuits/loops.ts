// Which edges hang on which input of a panel: wired to it, or chained behind one that is.
import { type Panel, perSubject, type Sensor, type Terminal, type Wire } from '../model/index.ts';

/** An edge that is wired to the input, and all that its chain leads to, from the panel outwards. */
export interface EdgeBranch {
  readonly wire: Wire;
  /** One at least. An edge stands in one branch of a loop only. */
  readonly edges: readonly Sensor[];
  /**
   * False where the chain does not end plainly: at a name or line that cannot be read, at something else than a resistive edge, in a
   * circle.
   */
  readonly whole: boolean;
}

/** Everything that hangs on one resistive input. All terminators are side by side across its two wires. */
export interface EdgeLoop {
  readonly panel: Panel;
  readonly terminal: Terminal;
  /** One at least, in the order of the file. */
  readonly branches: readonly EdgeBranch[];
  /** Every edge once, from the panel outwards. */
  readonly edges: readonly Sensor[];
  /** Edges with a terminator, from the panel outwards. */
  readonly terminated: readonly Sensor[];
  /** Kept results; see memo.ts. */
  readonly memo: unknown[];
}

interface OpenLoop extends EdgeLoop {
  readonly branches: EdgeBranch[];
  readonly edges: Sensor[];
  readonly terminated: Sensor[];
}

export const isResistive = (sensor: Sensor): boolean => sensor.model?.facts.output?.value === 'resistive';

/** The loops of a panel, in the order of its lines; undefined where no resistive edge is wired to a resistive input of it. */
export const loopsOf = perSubject((panel: Panel): readonly EdgeLoop[] | undefined => {
  let loops: OpenLoop[] | undefined;
  for (const wire of panel.wires) {
    const { device } = wire;
    if (device === undefined || device.kind !== 'sensor' || wire.part !== 'signal' || !isResistive(device.it)) continue;
    for (const { terminal } of wire.ends) {
      if (terminal === undefined || terminal.role !== 'edge-input') continue;
      loops ??= [];
      let loop = loopAt(loops, terminal);
      if (loop === undefined) loops.push((loop = { panel, terminal, branches: [], edges: [], terminated: [], memo: [] }));
      // An edge that was met already, as the head of a branch or in its chain, adds nothing.
      if (!loop.edges.includes(device.it)) loop.branches.push(branchOf(wire, device.it, loop));
    }
  }
  return loops;
});

function loopAt(loops: readonly OpenLoop[], terminal: Terminal): OpenLoop | undefined {
  for (const loop of loops) if (loop.terminal === terminal) return loop;
  return undefined;
}

/** Follows a chain up to its end, or to an edge of the same loop that was met already: a circle, or a chain that joins another. */
function branchOf(wire: Wire, first: Sensor, { edges: met, terminated }: OpenLoop): EdgeBranch {
  const edges: Sensor[] = [];
  let edge = first;
  for (;;) {
    met.push(edge);
    edges.push(edge);
    const { terminator, 'chains-into': chain } = edge.facts;
    if (terminator !== undefined) terminated.push(edge);
    if (edge.unread.length > 0) return { wire, edges, whole: false };
    if (chain === undefined) return { wire, edges, whole: true };
    const { next } = edge;
    if (next === undefined || !isResistive(next) || met.includes(next)) return { wire, edges, whole: false };
    edge = next;
  }
}
