import { bridgedBy, isInput } from '../../circuits/index.ts';
import type { Panel, PanelModel, Terminal, TerminalLink, TerminalRole, TerminalUse } from '../../model/index.ts';
import { asWritten } from '../../vocabulary/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel, type Related, type Report } from '../rule.ts';
import { quoted, quotedList, roleInWords } from '../words.ts';

export const rule = installationRule({
  name: 'link-wrong',
  severity: 'error',
  title: 'A link is not one between an unused normally-closed input and its own common.',
  why: 'A link is for one thing: to close an input that nothing is wired to. Anything else joins what the panel keeps apart, or holds an input in a state that it should not be in.',
  remedy: 'Link each unused normally-closed input to its own common, with a line of its own.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { model } = panel;
      if (model === undefined) continue;
      for (const link of panel.links) {
        const fault = faultOf(panel, model, link);
        // A link that bridges a device is reported for that.
        if (fault !== undefined && bridgedBy(panel, link) === undefined) report({ at: link.fact.line, ...fault });
      }
    }
  },
});

/** What is wrong with a link; it is said of the whole line unless it says where. */
type Fault = Omit<Report, 'at'> & Partial<Pick<Report, 'at'>>;

const named = ({ at }: TerminalUse): string => quoted(at.text);

function faultOf(panel: Panel, model: PanelModel, { ends }: TerminalLink): Fault | undefined {
  const first = ends[0];
  const second = ends[1];
  if (first === undefined || second === undefined || ends.length > 2) return miscounted(ends);
  const one = first.terminal;
  const other = second.terminal;
  if (one === undefined || other === undefined) return undefined;
  if (one === other)
    return {
      what: `This link joins ${named(first)} to itself.`,
      why: 'It does nothing, and the input that it was meant for stays open.',
      remedy: 'Name the input and its common.',
    };
  const fault = isInput(one.role)
    ? isInput(other.role)
      ? bothInputs(first, second)
      : ofInput(one, second)
    : isInput(other.role)
      ? ofInput(other, first)
      : undefined;
  if (fault !== undefined) return { ...fault, related: modelled(panel, model, isInput(one.role) ? one : other) };
  const live = isLive(one) ? one : isLive(other) ? other : undefined;
  return live === undefined ? undefined : { ...onLive(live), related: modelled(panel, model, live) };
}

const modelled = ({ installation }: Panel, model: PanelModel, terminal: Terminal): readonly Related[] =>
  toModelFact(`${quoted(terminal.name.text)} in the model`, installation, model, terminal);

function miscounted(ends: readonly TerminalUse[]): Fault {
  const names = quotedList(ends.map((end) => end.at.text));
  return {
    what: ends.length > 2 ? `This link names ${ends.length} terminals: ${names}.` : `This link names only ${names}.`,
    why: 'A link joins two terminals; who fits it has to know which two.',
    remedy: 'Write one line for each link, with its two terminals.',
  };
}

const bothInputs = (first: TerminalUse, second: TerminalUse): Fault => ({
  what: `This link joins two inputs, ${named(first)} and ${named(second)}.`,
  why: 'A device on one of them would be read as both, and two devices would hide each other.',
  remedy: 'Link each unused input to its own common.',
});

/** A link between an input and something that is none. */
function ofInput(input: Terminal, to: TerminalUse): Fault | undefined {
  const { common, contact, role } = input;
  if (common !== undefined && common.text !== to.at.text) {
    const isPlain = contact === 'normally-closed';
    return {
      at: to.at,
      what: `${quoted(input.name.text)} is linked to ${named(to)}, but it returns to ${quoted(common.text)}.`,
      why: 'The input stays open, and two circuits that the panel keeps apart are joined.',
      remedy: isPlain ? `Link it to ${quoted(common.text)}.` : 'Take the link out.',
      fixes: isPlain
        ? [{ title: `Write “${common.text}”`, edits: [{ start: to.at.start, end: to.at.end, text: asWritten(common.text) }], safe: false }]
        : [],
    };
  }
  if (contact !== 'normally-open' && role !== 'edge-input' && role !== 'two-wire-input') return undefined;
  return {
    what: `${quoted(input.name.text)} is for ${roleInWords(role)}${contact === 'normally-open' ? ', with a contact that closes to report' : ''}; a link reports on it all the time.`,
    why: whyOf(role),
    remedy: 'Take the link out; see in the panel’s manual how this input is left unused.',
  };
}

function whyOf(role: TerminalRole): string {
  if (role === 'edge-input') return 'A loop of no resistance is what a pressed edge looks like.';
  if (role === 'two-wire-input') return 'The link shorts the two wires that feed the sensors.';
  return role === 'command-input'
    ? 'A command that never ends moves the gate, or holds it, when nobody has asked for it.'
    : 'The panel sees a report that never ends.';
}

/** True for terminals that carry the supply or drive a motor: nothing may be linked to them. */
const isLive = ({ role }: Terminal): boolean => role === 'supply-in' || role === 'motor';

const onLive = ({ name, role }: Terminal): Fault => ({
  what: `This link ends on ${quoted(name.text)}, which is for ${roleInWords(role)}.`,
  why: 'It is a short circuit, or puts the supply where people and devices should be safe from it.',
  remedy: 'Take the link out.',
});
