// What fits a place: which lines suit a block, which devices still want a wire, which terminals take one, which leaves have no
// drive. Choices are narrowed by what the file and its models say; where they say nothing, nothing is ruled out.
import type { Span, Statement } from '../../grammar/index.ts';
import { chainedInto, isInput, isUnfit } from '../circuits/index.ts';
import type { Device, Drive, Installation, Leaf, Panel, PanelModel, Sensor, Terminal, Wire } from '../model/index.ts';

/** A statement that is being written does not count as written: what it names is not in its own way. */
export type Writing = (line: Span) => boolean;

const says = (block: Statement, word: string, writing: Writing): boolean =>
  (block.body?.items ?? []).some((item) => item.word?.text === word && !writing(item));

const swingOnly = new Set(['opens', 'hinge-tilt', 'rises', 'hinge-guard', 'thickness', 'hinge-gap', 'hinge-offset', 'post-proud']);
const slideOnly = new Set(['slides', 'passes', 'tail', 'roller-spacing']);
const byDriveKind: Readonly<Record<string, readonly string[]>> = {
  'linear-ram': ['post-bracket', 'leaf-bracket'],
  'articulated-arm': ['shaft', 'leaf-bracket'],
  direct: [],
  rack: [],
};
const byModelKind: Readonly<Record<string, readonly string[]>> = {
  'linear-ram': ['stroke', 'speed', 'thrust'],
  'articulated-arm': ['arms', 'shaft-speed', 'torque'],
  direct: ['rotation', 'shaft-speed', 'torque'],
  rack: ['speed', 'thrust'],
};

const ruledOutBy = (table: Readonly<Record<string, readonly string[]>>, kind: string | undefined, word: string): boolean =>
  kind !== undefined &&
  Object.hasOwn(table, kind) &&
  table[kind]?.includes(word) === false &&
  Object.values(table).some((words) => words.includes(word));

/** False for a line that cannot belong into this block, by what else stands in it and by its model. */
export function lineFits(installation: Installation, block: Statement, blockWord: string, word: string, writing: Writing): boolean {
  switch (blockWord) {
    case 'leaf':
      return !(swingOnly.has(word) && says(block, 'slides', writing)) && !(slideOnly.has(word) && says(block, 'opens', writing));
    case 'drive': {
      const kind = installation.drives.find((drive) => drive.at === block)?.model?.facts.kind?.value;
      return !ruledOutBy(byDriveKind, kind, word);
    }
    case 'sensor': {
      const model = installation.sensors.find((sensor) => sensor.at === block)?.model?.facts;
      if (word === 'terminator' || word === 'leakage' || word === 'chains-into') {
        // The far end of an edge has either a terminator or the next edge.
        const other = word === 'terminator' ? 'chains-into' : word === 'chains-into' ? 'terminator' : undefined;
        return (model?.output === undefined || model.output.value === 'resistive') && (other === undefined || !says(block, other, writing));
      }
      const kind = model?.kind?.value;
      if (word === 'height') return kind === undefined || kind === 'beam' || kind === 'curtain';
      // One ray lies on no place, what is pressed sits on an edge, and a loop feels no people.
      if (word === 'guards') return kind === undefined || kind === 'curtain';
      // An edge is fed by the loop that it is in.
      if (word === 'own-supply') return model?.output === undefined || model.output.value !== 'resistive';
      return word !== 'on' || kind !== 'loop';
    }
    case 'panel': {
      const panel = installation.panels.find((candidate) => candidate.at === block);
      if (panel?.model === undefined) return true;
      if (word === 'registered')
        return panel.model.facts['registers-sensors'] !== undefined && toRegister(installation, panel, writing).length > 0;
      if (word === 'select') return unsetSelectors(panel, writing).length > 0;
      return word !== 'link' || linkable(panel, writing).length > 0;
    }
    case 'motion':
      return (word !== 'lag' && word !== 'order') || installation.leaves.length > 1;
    case 'site': {
      const { rules, earthing } = installation.site?.facts ?? {};
      if (word === 'usage-class') return rules?.value !== 'europe';
      if (word === 'external-impedance') return earthing?.value !== 'TT';
      return word !== 'earth-electrode' || earthing?.value !== 'TN';
    }
    case 'drive-model':
      return !ruledOutBy(
        byModelKind,
        installation.reading.entities['drive-model'].find((model) => model.at === block)?.facts.kind?.value,
        word,
      );
    case 'sensor-model': {
      const facts = installation.reading.entities['sensor-model'].find((model) => model.at === block)?.facts;
      if (word === 'contact') return facts?.output === undefined || facts.output.value === 'relay';
      if (word === 'terminator' || word === 'pressed-resistance') return facts?.output === undefined || facts.output.value === 'resistive';
      if (word === 'deformation') return facts?.kind === undefined || facts.kind.value === 'edge';
      return word !== 'reach' || facts?.kind === undefined || facts.kind.value === 'beam' || facts.kind.value === 'curtain';
    }
    default:
      return true;
  }
}

// --- Devices.

type Part = Wire['part'];

/** The connections of a device that no line wires yet, its signal first. */
export function partsToWire({ panels }: Installation, device: Device, writing: Writing): Part[] {
  const wired = new Set(
    panels.flatMap((panel) =>
      panel.wires.filter((wire) => wire.device?.it === device.it && !writing(wire.fact.line)).map((wire) => wire.part),
    ),
  );
  // A link to the next edge: its signal comes through the one before it.
  if (device.kind === 'sensor' && chainedInto(device.it) !== undefined) wired.add('signal');
  return partsOf(device).filter((part) => !wired.has(part));
}

function partsOf(device: Device): readonly Part[] {
  if (device.kind === 'drive') return ['signal'];
  if (device.kind === 'control')
    return ['push-button', 'key-switch'].includes(device.it.facts.by?.value ?? '') ? ['signal'] : ['signal', 'supply'];
  const output = device.it.model?.facts.output?.value;
  if (output === 'two-wire' || output === 'resistive') return ['signal'];
  return output === 'relay' && device.it.model?.facts.testable === undefined ? ['signal', 'supply'] : ['signal', 'supply', 'test'];
}

/** Every device of a file with a name, sensors first. */
export const devicesOf = ({ sensors, drives, controls }: Installation): Device[] =>
  [
    ...sensors.map((it) => ({ kind: 'sensor', it }) as const),
    ...drives.map((it) => ({ kind: 'drive', it }) as const),
    ...controls.map((it) => ({ kind: 'control', it }) as const),
  ].filter((device) => device.it.name !== '');

/** Self-checking sensors that this panel could learn and that no line says it has learnt: those wired to it, or where none is, all. */
export function toRegister(installation: Installation, panel: Panel, writing: Writing): Sensor[] {
  const known = new Set(
    panel.facts.registered.filter((fact) => !writing(fact.line)).flatMap((fact) => fact.sensors.map((word) => word.text)),
  );
  const isWired = (sensor: Sensor): boolean => sensor.wires.some((wire) => wire.panel === panel);
  const able = installation.sensors.filter(
    (sensor) => sensor.name !== '' && (sensor.model?.facts.output === undefined || sensor.model.facts.output.value === 'two-wire'),
  );
  return (able.some(isWired) ? able.filter(isWired) : able).filter((sensor) => !known.has(sensor.name));
}

/** Edges that can be the next of this one: none that another leads to, and none that leads back here. */
export function nextEdges({ sensors }: Installation, from: Sensor | undefined): Sensor[] {
  const leadsBack = new Set<Sensor>();
  for (const left = from === undefined ? [] : [from]; left.length > 0; ) {
    const edge = left.pop() as Sensor;
    if (leadsBack.has(edge)) continue;
    leadsBack.add(edge);
    left.push(...(chainedInto(edge) ?? []));
  }
  return sensors.filter((sensor) => {
    if (sensor.name === '' || leadsBack.has(sensor)) return false;
    if (sensor.model?.facts.output !== undefined && sensor.model.facts.output.value !== 'resistive') return false;
    return chainedInto(sensor)?.every((other) => other === from) !== false;
  });
}

/** Leaves that no other drive moves. */
export const undriven = ({ leaves }: Installation, drive: Drive | undefined): Leaf[] =>
  leaves.filter((leaf) => leaf.name !== '' && leaf.drives.every((other) => other === drive));

/** Leaves whose end this one can cover. */
export const coverable = ({ leaves }: Installation, from: Leaf | undefined): Leaf[] =>
  leaves.filter(
    (leaf) =>
      leaf.name !== '' &&
      leaf !== from &&
      leaf.covers !== from &&
      (leaf.coveredBy === undefined || leaf.coveredBy === from) &&
      leaf.facts.slides === undefined,
  );

// --- Terminals.

export interface TerminalChoice {
  readonly terminal: Terminal;
  /** Something is wired to it, and it takes more. */
  readonly isUsed: boolean;
  /** Smaller is better. */
  readonly rank: number;
}

/** Terminals on which several wires may end. */
const isOpenToAll = ({ role }: Terminal): boolean =>
  role === 'common' || role === 'supply-out' || role === 'earth' || role === 'test-output';
const takesSeveral = ({ role, contact }: Terminal): boolean =>
  role === 'two-wire-input' || (isInput(role) && contact === 'normally-open') || (role === 'command-input' && contact === undefined);

function usedIn(panel: Panel | undefined, writing: Writing): ReadonlySet<string> {
  const used = new Set<string>();
  for (const wire of panel?.wires ?? []) if (!writing(wire.fact.line)) for (const end of wire.ends) used.add(end.at.text);
  for (const link of panel?.links ?? []) if (!writing(link.fact.line)) for (const end of link.ends) used.add(end.at.text);
  return used;
}

/** Terminals of the panel for a wire of which some ends may be written already. */
export function terminalsFor(
  panel: Panel,
  model: PanelModel,
  device: Device | undefined,
  part: Part,
  taken: ReadonlySet<string>,
  writing: Writing,
): TerminalChoice[] {
  const all = [...model.terminals.values()];
  const named = all.filter((terminal) => taken.has(terminal.name.text));
  const commonsWanted = new Set(named.flatMap((terminal) => terminal.common?.text ?? []));
  const used = usedIn(panel, writing);
  const free = all.filter((terminal) => !taken.has(terminal.name.text));
  const missing = free.filter((terminal) => commonsWanted.has(terminal.name.text));
  if (missing.length > 0) return missing.map((terminal, index) => ({ terminal, isUsed: false, rank: index / 1000 }));
  const main = named.filter((terminal) => terminal.role !== 'common' && terminal.role !== 'earth');
  const fits = free.filter(
    (terminal) => suits(terminal, device, part) && (isOpenToAll(terminal) || takesSeveral(terminal) || !used.has(terminal.name.text)),
  );
  const choice = (terminal: Terminal, base: number, index: number): TerminalChoice => {
    const isUsed = !isOpenToAll(terminal) && used.has(terminal.name.text);
    return { terminal, isUsed, rank: base + (isUsed ? 10 : 0) + index / 1000 };
  };
  if (main.length > 0) {
    // An input with its return is whole; an output is not without one; a motor has several ends.
    if (main.some((terminal) => isInput(terminal.role))) return [];
    if (main.some((terminal) => terminal.role === 'motor')) {
      const group = new Set(
        model.facts.output
          .filter((line) => line.terminals.some((word) => taken.has(word.text)))
          .flatMap((line) => line.terminals.map((word) => word.text)),
      );
      return fits
        .filter((terminal) => terminal.role === 'motor')
        .map((terminal, index) => choice(terminal, group.has(terminal.name.text) ? 0 : 1, index));
    }
    if (named.some((terminal) => terminal.role === 'common')) return [];
    const claimed = new Set(all.flatMap((terminal) => terminal.common?.text ?? []));
    const commons = free.filter((terminal) => terminal.role === 'common');
    const own = commons.filter((terminal) => !claimed.has(terminal.name.text));
    return (own.length > 0 ? own : commons).map((terminal, index) => choice(terminal, 0, index));
  }
  // Only returns are named so far: what returns to one of them.
  if (named.length > 0)
    return fits
      .filter((terminal) => (terminal.common === undefined ? !isInput(terminal.role) : taken.has(terminal.common.text)))
      .map((terminal, index) => choice(terminal, 0, index));
  const returns = new Set(fits.flatMap((terminal) => terminal.common?.text ?? []));
  // A stop input takes a contact too, but it is not what it is there for.
  return [
    ...fits.map((terminal, index) => choice(terminal, terminal.role === 'stop-input' || terminal.role === 'test-output' ? 1 : 0, index)),
    ...free.filter((terminal) => returns.has(terminal.name.text)).map((terminal, index) => choice(terminal, 5, index)),
  ];
}

/** True where a wire of that device can end on a terminal, other than as its return. */
function suits(terminal: Terminal, device: Device | undefined, part: Part): boolean {
  const { role, contact } = terminal;
  if (role === 'common' || role === 'earth' || isUnfit({ device, part }, role)) return false;
  if (part !== 'signal' || device?.kind !== 'sensor') return true;
  const model = device.it.model?.facts;
  if (model?.output === undefined) return isInput(role);
  return model.output.value !== 'relay' || contact === undefined || contact === (model.contact?.value ?? 'normally-closed');
}

/** Normally-closed inputs that nothing is wired or linked to: those that a link can close. */
export function linkable(panel: Panel, writing: Writing): Terminal[] {
  const used = usedIn(panel, writing);
  return [...(panel.model?.terminals.values() ?? [])].filter(
    (terminal) =>
      isInput(terminal.role) &&
      terminal.contact === 'normally-closed' &&
      terminal.role !== 'edge-input' &&
      terminal.role !== 'two-wire-input' &&
      !used.has(terminal.name.text),
  );
}

/** The ends of a link, of which one may be written already. */
export function linkEnds(panel: Panel, taken: ReadonlySet<string>, writing: Writing): Terminal[] {
  const inputs = linkable(panel, writing);
  const [first, second] = [...taken];
  if (first === undefined) return inputs;
  if (second !== undefined) return [];
  const named = panel.model?.terminals.get(first);
  if (named?.common !== undefined)
    return [...(panel.model?.terminals.values() ?? [])].filter((terminal) => terminal.name.text === named.common?.text);
  return inputs.filter((terminal) => terminal.name.text !== first && terminal.common?.text === first);
}

/** Selectors of the panel's model that no line sets. */
export const unsetSelectors = (panel: Panel, writing: Writing): NonNullable<Panel['selections'][number]['selector']>[] =>
  [...(panel.model?.selectors.values() ?? [])].filter(
    (selector) => !panel.selections.some((selection) => selection.selector === selector && !writing(selection.fact.line)),
  );

/** Terminals of a panel model for a line of the model itself. */
export function ownTerminals(model: PanelModel, word: string, writing: Writing): Terminal[] {
  const all = [...model.terminals.values()];
  if (word === 'terminal') return all.filter((terminal) => terminal.role === 'common');
  if (word === 'output') {
    const told = new Set(
      model.facts.output.filter((line) => !writing(line.line)).flatMap((line) => line.terminals.map((name) => name.text)),
    );
    const gives = new Set<Terminal['role']>(['motor', 'two-wire-input', 'supply-out', 'lamp-output', 'lock-output', 'test-output']);
    return all.filter((terminal) => gives.has(terminal.role) && !told.has(terminal.name.text));
  }
  const lines: readonly { readonly line: Statement; readonly terminal: { readonly text: string } }[] =
    word === 'window' ? model.facts.window : word === 'measures' ? model.facts.measures : [];
  const told = new Set(lines.filter((line) => !writing(line.line)).map((line) => line.terminal.text));
  return all.filter((terminal) => terminal.role === 'edge-input' && !told.has(terminal.name.text));
}

/** Outputs of a panel that can feed something else. */
export const feeding = (model: PanelModel): Terminal[] =>
  [...model.terminals.values()].filter(({ role }) => role === 'supply-out' || role === 'lamp-output' || role === 'lock-output');
