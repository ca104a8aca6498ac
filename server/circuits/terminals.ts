// What may be wired to a terminal, and what is.
import { type Panel, perSubject, type Terminal, type TerminalRole, type TerminalUse, type Wire } from '../model/index.ts';

/** True for the inputs that a sensor or a control is wired to. */
export const isInput = (role: TerminalRole): boolean =>
  role === 'safety-input' || role === 'edge-input' || role === 'two-wire-input' || role === 'command-input' || role === 'stop-input';

/** True where a terminal of that role surely cannot take this wire; false where it can, or where it cannot be told. */
export function isUnfit({ device, part }: Pick<Wire, 'device' | 'part'>, role: TerminalRole): boolean {
  if (role === 'common' || role === 'earth' || device === undefined) return false;
  // A panel may test a sensor by switching its supply.
  if (part === 'supply') return role !== 'supply-out' && role !== 'test-output';
  if (part === 'test') return role !== 'test-output';
  if (device.kind === 'drive') return role !== 'motor';
  // A command is no stop, and a stop no command: on the other's input each does the opposite of what is meant.
  if (device.kind === 'control') {
    const acts = device.it.facts.acts?.value;
    if (acts === undefined) return role !== 'command-input' && role !== 'stop-input';
    return role !== (acts === 'stop' ? 'stop-input' : 'command-input');
  }
  const { model } = device.it;
  const output = model?.facts.output?.value;
  if (output === undefined) return false;
  if (output === 'two-wire') return role !== 'two-wire-input';
  if (output === 'resistive') return role !== 'edge-input';
  // A loop in the ground may also command the gate.
  return role !== 'safety-input' && role !== 'stop-input' && !(role === 'command-input' && model?.facts.kind?.value === 'loop');
}

/** The first end of a wire that surely cannot take it. An input may return to a terminal of any role. */
export function unfitEnd(wire: Wire): TerminalUse | undefined {
  for (const end of wire.ends) if (end.terminal !== undefined && isUnfit(wire, end.terminal.role) && !isReturnIn(wire, end)) return end;
  return undefined;
}

function isReturnIn(wire: Wire, end: TerminalUse): boolean {
  for (const other of wire.ends) if (other !== end && other.terminal?.common?.text === end.at.text) return true;
  return false;
}

/** True when a terminal stands twice among the ends. */
export function repeatsAnEnd(ends: readonly TerminalUse[]): boolean {
  if (ends.length < 2) return false;
  const met = new Set<string>();
  for (const { at } of ends) if (met.size === met.add(at.text).size) return true;
  return false;
}

/** What the signal wires bring to one terminal. */
interface Signals {
  /** In the order of the text. */
  readonly first: Wire;
  /** Whether another one brings those of another device. */
  isShared: boolean;
}

const signalsByTerminal = perSubject(({ wires }: Panel): ReadonlyMap<Terminal, Signals> => {
  const byTerminal = new Map<Terminal, Signals>();
  for (const wire of wires) {
    if (wire.part !== 'signal') continue;
    for (const { terminal } of wire.ends) {
      if (terminal === undefined) continue;
      const known = byTerminal.get(terminal);
      if (known === undefined) byTerminal.set(terminal, { first: wire, isShared: false });
      else if (known.first.fact.device.text !== wire.fact.device.text) known.isShared = true;
    }
  }
  return byTerminal;
});

/** The first signal wire of that panel that ends on an input. */
export const wireOn = (panel: Panel, input: Terminal): Wire | undefined => signalsByTerminal(panel).get(input)?.first;

/** True where signal wires of several devices end on a terminal. */
export const isShared = (panel: Panel, terminal: Terminal): boolean => signalsByTerminal(panel).get(terminal)?.isShared === true;

/** The terminals of a panel that a wire or a link ends on. */
const usedOf = perSubject(({ wires, links }: Panel): ReadonlySet<Terminal> => {
  const used = new Set<Terminal>();
  for (const { ends } of wires) for (const { terminal } of ends) if (terminal !== undefined) used.add(terminal);
  for (const { ends } of links) for (const { terminal } of ends) if (terminal !== undefined) used.add(terminal);
  return used;
});

/** True where a wire or a link of the panel ends on a terminal. */
export const isUsed = (panel: Panel, terminal: Terminal): boolean => usedOf(panel).has(terminal);
