// What the links of a panel join: an input that is joined to its return reads a healthy device for ever.
import { type Panel, perSubject, type Terminal, type TerminalLink, type TerminalUse, type Wire } from '../model/index.ts';
import { isInput, wireOn } from './terminals.ts';

/** Terminals that links join with each other, through however many of them. */
interface Joined {
  readonly terminals: Set<Terminal>;
  /** Whether a common is among them: every input returns to one. */
  hasCommon: boolean;
}

/** What each terminal is joined with that a link of the panel names. */
const joinedOf = perSubject(({ links }: Panel): ReadonlyMap<Terminal, Joined> => {
  const joined = new Map<Terminal, Joined>();
  for (const { ends } of links) {
    let all: Joined | undefined;
    for (const { terminal } of ends) {
      if (terminal === undefined) continue;
      const known = joined.get(terminal) ?? { terminals: new Set([terminal]), hasCommon: terminal.role === 'common' };
      all = all === undefined || all === known ? known : merged(all, known, joined);
      joined.set(terminal, all);
    }
  }
  return joined;
});

/** The smaller of two goes into the larger: so none moves more often than the sizes double. */
function merged(one: Joined, other: Joined, joined: Map<Terminal, Joined>): Joined {
  const [small, large] = one.terminals.size < other.terminals.size ? [one, other] : [other, one];
  for (const terminal of small.terminals) {
    large.terminals.add(terminal);
    joined.set(terminal, large);
  }
  large.hasCommon ||= small.hasCommon;
  return large;
}

/** The terminals of a panel that a link ends on, commons apart; undefined where there is none. */
const linkedOf = perSubject(({ links }: Panel): ReadonlySet<Terminal> | undefined => {
  let linked: Set<Terminal> | undefined;
  for (const { ends } of links)
    for (const { terminal } of ends) if (terminal !== undefined && terminal.role !== 'common') (linked ??= new Set()).add(terminal);
  return linked;
});

/**
 * True when a link on the panel ends on one of the wire's terminals, commons apart. A link is there to close an input that nothing is
 * wired to: whatever else it joins, nobody can rely on the device.
 */
export function isLinked({ panel, ends }: Wire): boolean {
  const linked = linkedOf(panel);
  if (linked === undefined) return false;
  for (const { terminal } of ends) if (terminal !== undefined && linked.has(terminal)) return true;
  return false;
}

/** The input with a device on it that this link joins to its return, by itself or together with other links. */
export function bridgedBy(panel: Panel, link: TerminalLink): { readonly end: TerminalUse; readonly wire: Wire } | undefined {
  for (const end of link.ends) {
    const input = end.terminal;
    if (input === undefined || !isInput(input.role)) continue;
    const wire = wireOn(panel, input);
    if (wire !== undefined && isJoinedToReturn(panel, input) && leadsToReturn(panel, link, input)) return { end, wire };
  }
  return undefined;
}

function isJoinedToReturn(panel: Panel, input: Terminal): boolean {
  const joined = joinedOf(panel).get(input);
  if (joined === undefined) return false;
  const common = returnOf(panel, input);
  return joined.hasCommon || (common !== undefined && common !== input && joined.terminals.has(common));
}

const returnOf = ({ model }: Panel, input: Terminal): Terminal | undefined =>
  input.common === undefined ? undefined : model?.terminals.get(input.common.text);

/** The links that end on a terminal. */
const linksOn = perSubject(({ links }: Panel): ReadonlyMap<Terminal, readonly TerminalLink[]> => {
  const on = new Map<Terminal, TerminalLink[]>();
  for (const link of links)
    for (const { terminal } of link.ends)
      if (terminal !== undefined) {
        const known = on.get(terminal);
        if (known === undefined) on.set(terminal, [link]);
        else known.push(link);
      }
  return on;
});

/** True where it is this very link that leads on to the return: another one beside it on the input may be to blame. */
function leadsToReturn(panel: Panel, link: TerminalLink, input: Terminal): boolean {
  const common = returnOf(panel, input);
  const on = linksOn(panel);
  const met = new Set<Terminal>([input]);
  const waiting: TerminalLink[] = [link];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop())
    for (const { terminal } of next.ends) {
      if (terminal === undefined || met.has(terminal)) continue;
      if (terminal.role === 'common' || terminal === common) return true;
      met.add(terminal);
      waiting.push(...(on.get(terminal) ?? []));
    }
  return false;
}
