import type { Panel, TerminalRole, TerminalUse, Wire } from '../../model/index.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { inModel, isInput, isUnfit, ofTheModel, quotedList, roleInWords, unfitEnd } from '../wiring.ts';
import { quoted } from '../words.ts';

const unreadable = 'A panel reads a relay contact, a resistance and a two-wire sensor in different ways; on the wrong input a device reports nothing, or nonsense.';

export const rule = installationRule({
  name: 'terminal-unfit',
  severity: 'error',
  title: 'A device is wired to a terminal that is not made for it.',
  why: unreadable,
  remedy: 'Wire the device to a terminal of the kind that it needs.',
  source: ofTheModel,
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      if (panel.model === undefined) continue;
      for (const wire of panel.wires) {
        const end = unfitEnd(wire);
        if (end !== undefined) say(panel, wire, end, report);
        else if (reachesNothing(wire)) sayNothing(panel, wire, report);
      }
    }
  },
});

/** True when all ends are known, and every one is a common or an earth. */
function reachesNothing({ ends, device }: Wire): boolean {
  if (device === undefined) return false;
  for (const { terminal } of ends) if (terminal === undefined || (terminal.role !== 'common' && terminal.role !== 'earth')) return false;
  return ends.length > 0;
}

function say(panel: Panel, wire: Wire, end: TerminalUse, report: (report: Report) => void): void {
  const { terminal } = end;
  if (terminal === undefined || panel.model === undefined) return;
  const related = relatedTo(panel, wire);
  related.push(inModel(panel.model, panel.installation, terminal.line, `what ${quoted(terminal.name.text)} is for`));
  report({
    at: end.at,
    what: `${quoted(terminal.name.text)} is for ${roleInWords(terminal.role)}; ${inWords(wire)} is wired to it.`,
    why: whyOf(wire, terminal.role),
    remedy: whereTo(panel, wire),
    related,
  });
}

function sayNothing(panel: Panel, wire: Wire, report: (report: Report) => void): void {
  const names = wire.ends.map((end) => end.at.text);
  const [first, last] = [wire.ends[0], wire.ends.at(-1)];
  if (first === undefined || last === undefined) return;
  report({
    at: { start: first.at.start, end: last.at.end },
    what: `${quoted(wire.fact.device.text)} is wired only to ${quotedList(names)}, which ${names.length === 1 ? 'is a return' : 'are returns'}.`,
    why: 'A return by itself carries no report: the panel would never hear of this device.',
    remedy: whereTo(panel, wire),
    related: relatedTo(panel, wire),
  });
}

function relatedTo(panel: Panel, { device }: Wire): Related[] {
  if (device?.kind !== 'sensor') return [];
  const { model } = device.it;
  const output = model?.facts.output;
  return model === undefined || output === undefined ? [] : [inModel(model, panel.installation, output.line, `how ${quoted(device.it.name)} reports`)];
}

/** The device as the sentence needs it: what it is, and its name. */
function inWords({ device, part, fact }: Wire): string {
  const name = quoted(fact.device.text);
  if (part === 'supply') return `the supply of ${name}`;
  if (part === 'test') return `the test input of ${name}`;
  if (device?.kind === 'drive') return `${name}, a drive,`;
  if (device?.kind === 'control') return `${name}, a control,`;
  const output = device?.it.model?.facts.output?.value;
  return `${name}, ${output === 'two-wire' ? 'a self-checking sensor on two wires' : output === 'resistive' ? 'a resistive edge' : 'a sensor with a relay contact'},`;
}

function whyOf({ device, part }: Wire, role: TerminalRole): string {
  if (part !== 'signal') return part === 'supply' ? 'There is no supply on that terminal: the device does not work, or is destroyed.' : 'That terminal tests nothing: a device that has failed is not found before the next movement.';
  if (device?.kind === 'drive') return 'The drive does not run there, or destroys what it is wired to.';
  if (!isInput(role)) return 'That terminal reads nothing: the panel would never hear of this device, and one of the two may be destroyed.';
  return device?.kind === 'control' ? 'The panel takes its command for a report of something else.' : unreadable;
}

function whereTo(panel: Panel, wire: Wire): string {
  const names: string[] = [];
  for (const terminal of panel.model?.facts.terminal ?? []) {
    if (terminal.role === 'common' || terminal.role === 'earth' || isUnfit(wire, terminal.role)) continue;
    names.push(terminal.name.text);
  }
  const model = quoted(panel.model?.name ?? '');
  if (names.length === 0) return `${model} has no terminal for it: choose another device, or another panel.`;
  return `Wire it where ${model} takes it: ${quotedList(names)}.`;
}
