// What the panel may see of its edge loops.
import { cablesTo, type EdgeLoop } from '../../circuits/index.ts';
import { type Cable, type Panel, type PanelModel, perSubject, type Sensor } from '../../model/index.ts';
import { atTemperature, classOf, insulationOf, resistancePerMetre, warmest } from '../cables/working.ts';
import { type LoopStates, parallel, type Resistor, statesOf } from './maths.ts';

export { type Band, isStandard, nearestStandard, overlap } from './maths.ts';

/** Ohms that the panel sees at rest; Infinity without a terminator; undefined where a chain cannot be followed to its end. */
export function resistanceOf({ branches, terminated }: EdgeLoop): number | undefined {
  for (const branch of branches) if (!branch.whole) return undefined;
  return parallel(terminated.map((edge) => edge.facts.terminator?.value ?? Number.POSITIVE_INFINITY));
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
    for (const each of cablesTo(edge)) {
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
  const measures = measuresOf(panel).get(terminal.name.text);
  const window = windowsOf(panel).get(terminal.name.text);
  const terminator = { resistance: fitted.value, tolerance: fitted.tolerance };
  const states = statesOf({ terminator, cable, pressed, leakage: 1 / leakage, panel: measures?.tolerance ?? 0 });
  return states === undefined
    ? undefined
    : { states, terminator, terminated: last, cables, cable, leakages, measures, window, from: `panel-model ${panel.model?.name ?? ''}` };
});

/** What the panel's model says of each terminal, the first line of each kind. */
const measuresOf = perSubject(({ model }: Panel) => firstByTerminal<PanelModel['facts']['measures'][number]>(model?.facts.measures ?? []));
const windowsOf = perSubject(({ model }: Panel) => firstByTerminal<PanelModel['facts']['window'][number]>(model?.facts.window ?? []));

function firstByTerminal<L extends { readonly terminal: { readonly text: string } }>(lines: readonly L[]): ReadonlyMap<string, L> {
  const byTerminal = new Map<string, L>();
  for (const line of lines) if (!byTerminal.has(line.terminal.text)) byTerminal.set(line.terminal.text, line);
  return byTerminal;
}

/** Ohms of a cable there and back, as warm as it may be. */
function cableResistance(cable: Cable): number | undefined {
  const area = cable.model?.facts.area?.value;
  const length = cable.facts.length?.value;
  if (area === undefined || length === undefined) return undefined;
  const perMetre = resistancePerMetre(area, classOf(cable));
  return perMetre === undefined ? undefined : 2 * length * atTemperature(perMetre.value, warmest[insulationOf(cable)]);
}
