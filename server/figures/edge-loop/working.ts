// Which edges hang on which input of a panel: wired to it, or chained behind one that is; and what the panel may see of them.
import { type Cable, type Panel, type PanelModel, perSubject, type Sensor, type Terminal, type Wire } from '../../model/index.ts';
import { atTemperature, classOf, insulationOf, resistancePerMetre, warmest } from '../cables/working.ts';
import { type LoopStates, parallel, type Resistor, statesOf } from './maths.ts';

export { type Band, isStandard, nearestStandard, overlap } from './maths.ts';

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

/** Ohms that the panel sees at rest; Infinity without a terminator; undefined where a chain cannot be followed to its end. */
export function resistanceOf({ branches, terminated }: EdgeLoop): number | undefined {
  for (const branch of branches) if (!branch.whole) return undefined;
  return parallel(terminated.map((edge) => edge.facts.terminator?.value ?? Number.POSITIVE_INFINITY));
}

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

/** What the panel may see of an edge loop in each of its states, with its cables and the damp that is let be. */
export interface LoopState {
  readonly states: LoopStates;
  readonly terminator: Resistor;
  readonly terminated: Sensor;
  /** Cables that feed the edges. */
  readonly cables: readonly Cable[];
  /** Ohms of all of them, there and back, warm. */
  readonly cable: number;
  /** Edges whose damp is stated. */
  readonly leakages: readonly Sensor[];
  readonly measures: PanelModel['facts']['measures'][number] | undefined;
  readonly window: PanelModel['facts']['window'][number] | undefined;
  readonly from: string;
}

/** Undefined unless the loop has one terminator and can be followed to its end: other rules speak of all else. */
export const stateOf = perSubject(({ panel, terminal, branches, edges, terminated }: EdgeLoop): LoopState | undefined => {
  const last = terminated[0];
  if (last?.facts.terminator === undefined || terminated.length !== 1) return undefined;
  const fitted = last.facts.terminator;
  for (const branch of branches) if (!branch.whole) return undefined;
  const cables: Cable[] = [];
  const leakages: Sensor[] = [];
  let cable = 0;
  let pressed = 0;
  let leakage = 0;
  for (const edge of edges) {
    for (const each of panel.installation.cables) {
      if (each.load?.it !== edge) continue;
      const resistance = cableResistance(each);
      if (resistance === undefined) continue;
      cables.push(each);
      cable += resistance;
    }
    pressed = Math.max(pressed, edge.model?.facts['pressed-resistance']?.value ?? 0);
    if (edge.facts.leakage !== undefined) {
      leakages.push(edge);
      leakage += 1 / edge.facts.leakage.value;
    }
  }
  const facts = panel.model?.facts;
  const measures = facts?.measures.find((line) => line.terminal.text === terminal.name.text);
  const window = facts?.window.find((line) => line.terminal.text === terminal.name.text);
  const terminator = { resistance: fitted.value, tolerance: fitted.tolerance };
  const states = statesOf({ terminator, cable, pressed, leakage: 1 / leakage, panel: measures?.tolerance ?? 0 });
  return states === undefined
    ? undefined
    : { states, terminator, terminated: last, cables, cable, leakages, measures, window, from: `panel-model ${panel.model?.name ?? ''}` };
});

/** Ohms of a cable there and back, as warm as it may be. */
function cableResistance(cable: Cable): number | undefined {
  const area = cable.model?.facts.area?.value;
  const length = cable.facts.length?.value;
  if (area === undefined || length === undefined) return undefined;
  const perMetre = resistancePerMetre(area, classOf(cable));
  return perMetre === undefined ? undefined : 2 * length * atTemperature(perMetre.value, warmest[insulationOf(cable)]);
}
