// What the links of a panel join: an input that is joined to its return reads a healthy device for ever.
import { type Panel, perSubject, type Terminal, type TerminalLink, type TerminalUse, type Wire } from '../model/index.ts';
import { isInput, wireOn } from './terminals.ts';

/** The terminals of a panel, commons apart, that a link bridges; undefined where there is none. */
const bridgedOf = perSubject((panel: Panel): ReadonlySet<string> | undefined => {
  let bridged: Set<string> | undefined;
  for (const link of panel.links)
    for (const { at, terminal } of link.ends)
      if (terminal !== undefined && terminal.role !== 'common') (bridged ??= new Set()).add(at.text);
  return bridged;
});

/** True when a link on the panel bridges one of the wire's terminals: the device can then never stop the gate. */
export function isBridged(wire: Wire): boolean {
  const bridged = bridgedOf(wire.panel);
  if (bridged === undefined) return false;
  for (const { at } of wire.ends) if (bridged.has(at.text)) return true;
  return false;
}

/** More links than any panel has: beyond them a path is no longer searched for. */
const mostLinks = 100;

/** The input with a device on it that this link joins to its return, by itself or together with other links. */
export function bridgedBy(panel: Panel, link: TerminalLink): { readonly end: TerminalUse; readonly wire: Wire } | undefined {
  for (const end of link.ends) {
    const input = end.terminal;
    if (input === undefined || !isInput(input.role)) continue;
    const wire = wireOn(panel, input);
    if (wire !== undefined && reachesReturn(panel, link, input)) return { end, wire };
  }
  return undefined;
}

function reachesReturn(panel: Panel, first: TerminalLink, input: Terminal): boolean {
  const links = [first];
  const reached: Terminal[] = [input];
  for (const link of links) {
    for (const { terminal } of link.ends) {
      if (terminal === undefined || reached.includes(terminal)) continue;
      if (terminal.role === 'common' || terminal.name.text === input.common?.text) return true;
      reached.push(terminal);
      if (panel.links.length > mostLinks) continue;
      for (const next of panel.links) if (!links.includes(next) && next.ends.some((end) => end.terminal === terminal)) links.push(next);
    }
  }
  return false;
}
