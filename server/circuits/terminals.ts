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

/** The signal wires that end on each terminal, in the order of the text. */
const signalsByTerminal = perSubject(({ wires }: Panel): ReadonlyMap<Terminal, readonly Wire[]> => {
  const byTerminal = new Map<Terminal, Wire[]>();
  for (const wire of wires) {
    if (wire.part !== 'signal') continue;
    for (const { terminal } of wire.ends) {
      if (terminal === undefined) continue;
      const known = byTerminal.get(terminal);
      if (known === undefined) byTerminal.set(terminal, [wire]);
      else if (known.at(-1) !== wire) known.push(wire);
    }
  }
  return byTerminal;
});

/** The first signal wire of that panel that ends on an input. */
export const wireOn = (panel: Panel, input: Terminal): Wire | undefined => signalsByTerminal(panel).get(input)?.[0];

/** The contacts on each terminal on which there are several, by the names of their devices: those in series have one sign in common. */
const contactsOf = perSubject((panel: Panel): ReadonlyMap<Terminal, ReadonlyMap<string, object>> => {
  const byTerminal = new Map<Terminal, ReadonlyMap<string, object>>();
  for (const [terminal, wires] of signalsByTerminal(panel)) if (wires.length > 1) byTerminal.set(terminal, rowsOf(wires));
  return byTerminal;
});

/** A sign for each device: the same for those that the lines put in series, with each other or by way of others. */
function rowsOf(wires: readonly Wire[]): ReadonlyMap<string, object> {
  const rows = new Map<string, Set<string>>();
  for (const { fact } of wires) rows.set(fact.device.text, new Set([fact.device.text]));
  for (const { fact } of wires) {
    const one = rows.get(fact.device.text);
    const other = fact.series === undefined ? undefined : rows.get(fact.series.text);
    if (one === undefined || other === undefined || one === other) continue;
    // The smaller goes into the larger: so none moves more often than the sizes double.
    const [small, large] = one.size < other.size ? [one, other] : [other, one];
    for (const name of small) rows.set(name, large.add(name));
  }
  return rows;
}

/** True where two devices on one terminal lie in series there. */
export function isInSeries(panel: Panel, terminal: Terminal, one: Wire, other: Wire): boolean {
  const rows = contactsOf(panel).get(terminal);
  const row = rows?.get(one.fact.device.text);
  return row !== undefined && row === rows?.get(other.fact.device.text);
}

/**
 * True where another contact on the terminal keeps the panel from feeling the one of this wire: side by side with one that is to open to
 * report, or in series with one that is to close.
 */
export function isHiddenOn({ panel, fact }: Wire, terminal: Terminal): boolean {
  if (terminal.role === 'two-wire-input' || terminal.role === 'edge-input') return false;
  const rows = contactsOf(panel).get(terminal);
  if (rows === undefined || rows.size < 2) return false;
  const own = rows.get(fact.device.text) as ReadonlySet<string> | undefined;
  return terminal.contact === 'normally-open' ? (own?.size ?? 0) > 1 : own?.size !== rows.size;
}

/** True where a signal wire of that device ends on the terminal too. */
export const hasContact = (panel: Panel, terminal: Terminal, device: string): boolean =>
  contactsOf(panel).get(terminal)?.has(device) === true;

/** The terminals of a panel that a wire or a link ends on. */
const usedOf = perSubject(({ wires, links }: Panel): ReadonlySet<Terminal> => {
  const used = new Set<Terminal>();
  for (const { ends } of wires) for (const { terminal } of ends) if (terminal !== undefined) used.add(terminal);
  for (const { ends } of links) for (const { terminal } of ends) if (terminal !== undefined) used.add(terminal);
  return used;
});

/** True where a wire or a link of the panel ends on a terminal. */
export const isUsed = (panel: Panel, terminal: Terminal): boolean => usedOf(panel).has(terminal);
