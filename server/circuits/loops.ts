// Which edges hang on which input of a panel: wired to it, or chained behind one that is.
import { type Installation, type Panel, perSubject, type Sensor, type Terminal, type Wire } from '../model/index.ts';

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
  /** The edges once more, to be asked for. */
  readonly met: Set<Sensor>;
}

/** The edges that chain into each one, in the order of the file. */
const chainedIntoOf = perSubject(({ sensors }: Installation): ReadonlyMap<Sensor, readonly Sensor[]> => {
  const byNext = new Map<Sensor, Sensor[]>();
  for (const sensor of sensors) {
    if (sensor.next === undefined) continue;
    const known = byNext.get(sensor.next);
    if (known === undefined) byNext.set(sensor.next, [sensor]);
    else known.push(sensor);
  }
  return byNext;
});

/** The edges that chain into this one, in the order of the file; undefined where none does. */
export const chainedInto = (sensor: Sensor): readonly Sensor[] | undefined => chainedIntoOf(sensor.installation).get(sensor);

/** The circles of chains, by each edge that is part of one. */
const circlesOf = perSubject(({ sensors }: Installation): ReadonlyMap<Sensor, readonly Sensor[]> => {
  const circles = new Map<Sensor, readonly Sensor[]>();
  const done = new Set<Sensor>();
  for (const sensor of sensors) {
    if (sensor.next === undefined) continue;
    // A walk ends at the end of its chain, at what an earlier one has met, or where it meets itself.
    const walk: Sensor[] = [];
    let edge: Sensor | undefined = sensor;
    for (; edge !== undefined && !done.has(edge); edge = edge.next) {
      done.add(edge);
      walk.push(edge);
    }
    const from = edge === undefined ? -1 : walk.lastIndexOf(edge);
    if (from < 0) continue;
    const met = walk.slice(from);
    let first = 0;
    for (const [i, one] of met.entries()) if (one.at.start < (met[first] as Sensor).at.start) first = i;
    const circle = [...met.slice(first), ...met.slice(0, first)];
    for (const one of circle) circles.set(one, circle);
  }
  return circles;
});

/** The circle that an edge is part of, from the edge on that stands first in the file; undefined where its chain does not lead back to it. */
export const circleOf = (sensor: Sensor): readonly Sensor[] | undefined => circlesOf(sensor.installation).get(sensor);

/** The edges whose chains are known to their ends, with no terminator from them on. */
const openOf = perSubject((installation: Installation): ReadonlySet<Sensor> => {
  const open = new Set<Sensor>();
  const isBare = ({ facts, unread }: Sensor): boolean => facts.terminator === undefined && unread.length === 0;
  const left: Sensor[] = [];
  for (const sensor of installation.sensors)
    if (sensor.facts['chains-into'] === undefined && isBare(sensor) && isResistive(sensor)) left.push(sensor);
  for (let edge = left.pop(); edge !== undefined; edge = left.pop()) {
    open.add(edge);
    for (const before of chainedInto(edge) ?? []) if (isBare(before) && isResistive(before)) left.push(before);
  }
  return open;
});

/** True when the chain of an edge is known to its end, and no edge from this one on has a terminator. */
export const endsOpen = (sensor: Sensor): boolean => openOf(sensor.installation).has(sensor);

export const isResistive = (sensor: Sensor): boolean => sensor.model?.facts.output?.value === 'resistive';

/** The loops of a panel, in the order of its lines; undefined where no resistive edge is wired to a resistive input of it. */
export const loopsOf = perSubject((panel: Panel): readonly EdgeLoop[] | undefined => {
  let byTerminal: Map<Terminal, OpenLoop> | undefined;
  for (const wire of panel.wires) {
    const { device } = wire;
    if (device === undefined || device.kind !== 'sensor' || wire.part !== 'signal' || !isResistive(device.it)) continue;
    for (const { terminal } of wire.ends) {
      if (terminal === undefined || terminal.role !== 'edge-input') continue;
      byTerminal ??= new Map();
      let loop = byTerminal.get(terminal);
      if (loop === undefined)
        byTerminal.set(terminal, (loop = { panel, terminal, branches: [], edges: [], terminated: [], met: new Set(), memo: [] }));
      // An edge that was met already, as the head of a branch or in its chain, adds nothing.
      if (!loop.met.has(device.it)) loop.branches.push(branchOf(wire, device.it, loop));
    }
  }
  return byTerminal === undefined ? undefined : [...byTerminal.values()];
});

/** Follows a chain up to its end, or to an edge of the same loop that was met already: a circle, or a chain that joins another. */
function branchOf(wire: Wire, first: Sensor, { edges: all, terminated, met }: OpenLoop): EdgeBranch {
  const edges: Sensor[] = [];
  let edge = first;
  for (;;) {
    met.add(edge);
    all.push(edge);
    edges.push(edge);
    const { terminator, 'chains-into': chain } = edge.facts;
    if (terminator !== undefined) terminated.push(edge);
    if (edge.unread.length > 0) return { wire, edges, whole: false };
    if (chain === undefined) return { wire, edges, whole: true };
    const { next } = edge;
    if (next === undefined || !isResistive(next) || met.has(next)) return { wire, edges, whole: false };
    edge = next;
  }
}
