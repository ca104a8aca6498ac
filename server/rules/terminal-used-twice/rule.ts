import type { WordValue } from '../../../grammar/index.ts';
import { isUnfit } from '../../circuits/index.ts';
import type { Terminal, Wire } from '../../model/index.ts';
import { installationRule, ofTheModel, type Report } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'terminal-used-twice',
  severity: 'error',
  title: 'Two wires end on a terminal that can take only one.',
  why: 'Two contacts on one input hide each other, and two drives on one output cannot be told apart.',
  remedy: 'Give each device a terminal of its own.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const { wires } of panels) {
      const uses = new Map<Terminal, Use>();
      for (const wire of wires)
        for (const { at, terminal } of wire.ends) {
          if (terminal === undefined || isOpenToAll(terminal)) continue;
          const first = uses.get(terminal);
          if (first === undefined) uses.set(terminal, { wire, at });
          else say(first, { wire, at }, terminal, report);
        }
    }
  },
});

interface Use {
  readonly wire: Wire;
  readonly at: WordValue;
}

const isOpenToAll = ({ role }: Terminal): boolean =>
  role === 'common' || role === 'supply-out' || role === 'earth' || role === 'test-output';

/**
 * Inputs on which devices of different names may lie side by side: two-wire sensors, contacts that close to report; resistive edges have
 * rules of their own.
 */
const takesSeveral = ({ role, contact }: Terminal): boolean =>
  role === 'two-wire-input' || role === 'edge-input' || contact === 'normally-open' || (role === 'command-input' && contact === undefined);

function say(first: Use, second: Use, terminal: Terminal, report: (report: Report) => void): void {
  const sameWire = first.wire === second.wire;
  const sameDevice = first.wire.fact.device.text === second.wire.fact.device.text;
  if (!sameDevice && takesSeveral(terminal)) return;
  // A device that does not belong there at all is reported for that.
  if (isUnfit(first.wire, terminal.role) || isUnfit(second.wire, terminal.role)) return;
  const name = quoted(terminal.name.text);
  const device = quoted(second.wire.fact.device.text);
  const other = quoted(first.wire.fact.device.text);
  report({
    at: second.at,
    ...(sameWire
      ? {
          what: `This wire of ${device} names ${name} twice.`,
          why: 'Both its conductors would end on the same terminal.',
          remedy: 'Name each terminal once.',
        }
      : sameDevice
        ? {
            what: `${device} is wired to ${name} already.`,
            why: 'One connection that stands in the file twice will be changed in one place only.',
            remedy: 'Leave out one of the two lines.',
          }
        : {
            what: `Terminal ${name} already takes ${other}; ${device} is wired to it as well.`,
            why: reason(terminal, device, other),
            remedy: `Give ${device} a terminal of its own.`,
          }),
    related: [{ message: sameWire ? 'named here first' : `${other} is wired to it here`, start: first.at.start, end: first.at.end }],
  });
}

function reason({ role, contact }: Terminal, device: string, other: string): string {
  if (contact === 'normally-closed')
    return `Side by side, ${other} keeps the input closed when ${device} opens: the panel would not see either of them.`;
  if (role === 'motor') return 'Two drives on one output share its current and its limits; the panel cannot stop one of them.';
  return 'The panel cannot tell which of the two reports.';
}
