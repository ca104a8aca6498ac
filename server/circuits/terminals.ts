// What may be wired to a terminal, and what is.
import type { Panel, Terminal, TerminalRole, TerminalUse, Wire } from '../model/index.ts';

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
  if (device.kind === 'control') return role !== 'command-input' && role !== 'stop-input';
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
  for (const end of ends) for (const other of ends) if (other !== end && other.at.text === end.at.text) return true;
  return false;
}

/** The signal wire of that panel that ends on an input. */
export function wireOn(panel: Panel, input: Terminal): Wire | undefined {
  for (const wire of panel.wires) if (wire.part === 'signal') for (const end of wire.ends) if (end.terminal === input) return wire;
  return undefined;
}
