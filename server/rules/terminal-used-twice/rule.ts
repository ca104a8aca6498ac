import type { WordValue } from '../../../grammar/index.ts';
import { hasContact, isInput, isInSeries, isUnfit } from '../../circuits/index.ts';
import type { Terminal, Wire } from '../../model/index.ts';
import { installationRule, ofTheModel, type Report } from '../rule.ts';
import { quoted, roleInWords } from '../words.ts';

export const rule = installationRule({
  name: 'terminal-used-twice',
  severity: 'error',
  title: 'Two wires end on a terminal that can take only one, or contacts are in series that cannot be.',
  why: 'Two contacts on one input hide each other, and two drives on one output cannot be told apart.',
  remedy: 'Give each device a terminal of its own.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const { wires } of panels) {
      const uses = new Map<Terminal, Use>();
      for (const wire of wires) {
        checkSeries(wire, report);
        for (const { at, terminal } of wire.ends) {
          if (terminal === undefined || isOpenToAll(terminal)) continue;
          const first = uses.get(terminal);
          if (first === undefined) uses.set(terminal, { wire, at });
          else say(first, { wire, at }, terminal, report);
        }
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
  if (!sameDevice && (takesSeveral(terminal) || isInSeries(first.wire.panel, terminal, first.wire, second.wire))) return;
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
            remedy: isContact(terminal)
              ? `Give ${device} a terminal of its own; or wire the two contacts in series, one behind the other, and add “in-series-with ${first.wire.fact.device.text}” to this line.`
              : `Give ${device} a terminal of its own.`,
          }),
    related: [{ message: sameWire ? 'named here first' : `${other} is wired to it here`, start: first.at.start, end: first.at.end }],
  });
}

const isContact = ({ role }: Terminal): boolean => role === 'safety-input' || role === 'stop-input';

/** A contact can lie in series with another one on the same input, where that expects both to be closed while all is well. */
function checkSeries(wire: Wire, report: (report: Report) => void): void {
  const { fact, panel, ends, series } = wire;
  // A device that is not there at all is reported for that.
  if (fact.series === undefined || series === undefined) return;
  const device = quoted(fact.device.text);
  const other = quoted(fact.series.text);
  const say = (what: string, remedy: string): void =>
    report({
      at: fact.series ?? fact.line,
      what,
      why: 'Nobody can tell from that what the panel feels when one of the two reports.',
      remedy,
    });
  if (fact.series.text === fact.device.text) return say(`${device} is said to be in series with itself.`, 'Name the other device.');
  const inputs = ends.flatMap(({ terminal }) => (terminal !== undefined && isInput(terminal.role) ? [terminal] : []));
  if (wire.part !== 'signal')
    return say(`The ${wire.part} of ${device} is said to be in series with ${other}.`, 'Only contacts lie in series.');
  const input = inputs.find((terminal) => hasContact(panel, terminal, fact.series?.text ?? ''));
  if (input === undefined) {
    if (ends.every(({ terminal }) => terminal !== undefined))
      say(`${device} is said to be in series with ${other}, which is not wired to the same input.`, 'Wire both to the same input.');
  } else if (!isContact(input) || input.contact === 'normally-open')
    report({
      at: fact.series,
      what: `${device} is said to be in series with ${other} on ${quoted(input.name.text)}, which is for ${input.contact === 'normally-open' ? 'a contact that closes to report' : roleInWords(input.role)}.`,
      why: 'In series each of them keeps the other from being felt.',
      remedy: 'Wire them side by side, or each to an input of its own.',
    });
}

function reason({ role, contact }: Terminal, device: string, other: string): string {
  if (contact === 'normally-closed')
    return `Side by side, ${other} keeps the input closed when ${device} opens: the panel would not see either of them.`;
  if (role === 'motor') return 'Two drives on one output share its current and its limits; the panel cannot stop one of them.';
  return 'The panel cannot tell which of the two reports.';
}
