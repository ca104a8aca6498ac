import type { Link, Panel, Terminal, TerminalUse } from '../../model/index.ts';
import { installationRule, type Fix, type Related, type Report } from '../rule.ts';
import { bridgedBy, inModel, isInput, ofTheModel, quotedList, roleInWords } from '../wiring.ts';
import { quoted } from '../words.ts';

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
      if (panel.model === undefined) continue;
      for (const link of panel.links) {
        const fault = faultOf(link);
        // A link that bridges a device is reported for that.
        if (fault !== undefined && bridgedBy(panel, link) === undefined) say(panel, link, fault, report);
      }
    }
  },
});

type Fault = 'count' | 'itself' | 'inputs' | 'common' | 'kind';

function faultOf({ ends }: Link): Fault | undefined {
  if (ends.length !== 2) return 'count';
  const first = ends[0]?.terminal;
  const second = ends[1]?.terminal;
  if (first === undefined || second === undefined) return undefined;
  if (first === second) return 'itself';
  if (isInput(first.role)) return isInput(second.role) ? 'inputs' : faultOfInput(first, second);
  return isInput(second.role) ? faultOfInput(second, first) : undefined;
}

function faultOfInput(input: Terminal, other: Terminal): Fault | undefined {
  if (input.common !== undefined && input.common.text !== other.name.text) return 'common';
  return input.contact === 'normally-open' || input.role === 'edge-input' || input.role === 'two-wire-input' ? 'kind' : undefined;
}

function say(panel: Panel, { ends, fact }: Link, fault: Fault, report: (report: Report) => void): void {
  const related: Related[] = [];
  const named = (end: TerminalUse | undefined): string => quoted(end?.at.text ?? '');
  const at = fact.line;
  if (fault === 'count') {
    const names = ends.map((end) => end.at.text);
    report({ at, what: ends.length < 2 ? `This link names only ${quotedList(names)}.` : `This link names ${names.length} terminals: ${quotedList(names)}.`, why: 'A link joins two terminals; who fits it has to know which two.', remedy: 'Write one line for each link, with its two terminals.' });
    return;
  }
  if (fault === 'itself') {
    report({ at, what: `This link joins ${named(ends[0])} to itself.`, why: 'It does nothing, and the input that it was meant for stays open.', remedy: 'Name the input and its common.' });
    return;
  }
  const input = ends.find((end) => end.terminal !== undefined && isInput(end.terminal.role));
  const other = ends.find((end) => end !== input);
  const terminal = input?.terminal;
  if (terminal === undefined || panel.model === undefined || other === undefined) return;
  related.push(inModel(panel.model, panel.installation, terminal.line, `${named(input)} in the model`));
  if (fault === 'inputs') {
    report({ at, what: `This link joins two inputs, ${named(ends[0])} and ${named(ends[1])}.`, why: 'A device on one of them would be read as both, and two devices would hide each other.', remedy: 'Link each unused input to its own common.', related });
    return;
  }
  const common = terminal.common?.text ?? '';
  if (fault === 'common') {
    const fixes: Fix[] = isPlain(terminal) ? [{ title: `Write “${common}”`, edits: [{ start: other.at.start, end: other.at.end, text: common }], safe: false }] : [];
    report({ at: other.at, what: `${named(input)} is linked to ${named(other)}, but it returns to ${quoted(common)}.`, why: 'The input stays open, and two circuits that the panel keeps apart are joined.', remedy: isPlain(terminal) ? `Link it to ${quoted(common)}.` : 'Take the link out.', related, fixes });
    return;
  }
  report({ at, what: `${named(input)} is for ${roleInWords(terminal.role)}${terminal.contact === 'normally-open' ? ', with a contact that closes to report' : ''}; a link reports on it all the time.`, why: whyOf(terminal), remedy: 'Take the link out; see in the panel’s manual how this input is left unused.', related });
}

const isPlain = (terminal: Terminal): boolean => terminal.contact === 'normally-closed';

function whyOf({ role }: Terminal): string {
  if (role === 'edge-input') return 'A loop of no resistance is what a pressed edge looks like.';
  if (role === 'two-wire-input') return 'The link shorts the two wires that feed the sensors.';
  return role === 'command-input' ? 'A command that never ends moves the gate, or holds it, when nobody has asked for it.' : 'The panel sees a report that never ends.';
}
