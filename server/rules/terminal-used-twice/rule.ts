import type { Panel, Terminal, TerminalUse, Wire } from '../../model/index.ts';
import { installationRule, type Report } from '../rule.ts';
import { isUnfit, ofTheModel } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'terminal-used-twice',
  severity: 'error',
  title: 'Two wires end on a terminal that can take only one.',
  why: 'Two contacts on one input hide each other, and two drives on one output cannot be told apart.',
  remedy: 'Give each device a terminal of its own.',
  source: ofTheModel,
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      if (panel.model === undefined) continue;
      if (panel.wires.length > many) checkMany(panel, report);
      else checkFew(panel, report);
    }
  },
});

/** Above this number of wires, a map is quicker than looking at each pair. */
const many = 40;

interface Use {
  readonly wire: Wire;
  readonly end: TerminalUse;
}

function checkFew({ wires }: Panel, report: (report: Report) => void): void {
  for (let i = 0; i < wires.length; i++) {
    const wire = wires[i] as Wire;
    const { ends } = wire;
    for (let j = 0; j < ends.length; j++) {
      const end = ends[j] as TerminalUse;
      const terminal = end.terminal;
      if (terminal === undefined || isOpenToAll(terminal)) continue;
      search: for (let k = 0; k <= i; k++) {
        const first = wires[k] as Wire;
        const upTo = k === i ? j : first.ends.length;
        for (let l = 0; l < upTo; l++)
          if (first.ends[l]?.terminal === terminal) {
            say({ wire: first, end: first.ends[l] as TerminalUse }, { wire, end }, terminal, report);
            break search;
          }
      }
    }
  }
}

function checkMany({ wires }: Panel, report: (report: Report) => void): void {
  const seen = new Map<Terminal, Use>();
  for (const wire of wires)
    for (const end of wire.ends) {
      const { terminal } = end;
      if (terminal === undefined || isOpenToAll(terminal)) continue;
      const first = seen.get(terminal);
      if (first === undefined) seen.set(terminal, { wire, end });
      else say(first, { wire, end }, terminal, report);
    }
}

const isOpenToAll = ({ role }: Terminal): boolean => role === 'common' || role === 'supply-out' || role === 'earth' || role === 'test-output';

/** Inputs on which devices of different names may lie side by side: two-wire sensors, contacts that close to report; resistive edges have rules of their own. */
const takesSeveral = ({ role, contact }: Terminal): boolean =>
  role === 'two-wire-input' || role === 'edge-input' || contact === 'normally-open' || (role === 'command-input' && contact === undefined);

function say(first: Use, second: Use, terminal: Terminal, report: (report: Report) => void): void {
  const sameWire = first.wire === second.wire;
  const sameDevice = first.wire.fact.device.text === second.wire.fact.device.text && first.wire.part === second.wire.part;
  if (!sameDevice && takesSeveral(terminal)) return;
  // A device that does not belong there at all is reported for that.
  if (isUnfit(first.wire, terminal.role) || isUnfit(second.wire, terminal.role)) return;
  const name = quoted(terminal.name.text);
  const device = quoted(second.wire.fact.device.text);
  const other = quoted(first.wire.fact.device.text);
  report({
    at: second.end.at,
    ...(sameWire
      ? { what: `This wire of ${device} names ${name} twice.`, why: 'Both its conductors would end on the same terminal.', remedy: 'Name each terminal once.' }
      : sameDevice
        ? { what: `${device} is wired to ${name} already.`, why: 'One connection that stands in the file twice will be changed in one place only.', remedy: 'Leave out one of the two lines.' }
        : { what: `Terminal ${name} already takes ${other}; ${device} is wired to it as well.`, why: reason(terminal, device, other), remedy: `Give ${device} a terminal of its own.` }),
    related: [{ message: sameWire ? 'named here first' : `${other} is wired to it here`, start: first.end.at.start, end: first.end.at.end }],
  });
}

function reason({ role, contact }: Terminal, device: string, other: string): string {
  if (contact === 'normally-closed') return `Side by side, ${other} keeps the input closed when ${device} opens: the panel would not see either of them.`;
  if (role === 'motor') return 'Two drives on one output share its current and its limits; the panel cannot stop one of them.';
  return 'The panel cannot tell which of the two reports.';
}
