import { isInput, isUnfit, unfitEnd } from '../../circuits/index.ts';
import { type Device, type Panel, type PanelModel, perSubject, type Terminal, type TerminalRole, type Wire } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel, type Related, type Report } from '../rule.ts';
import { quoted, quotedList, roleInWords } from '../words.ts';

const unreadable =
  'A panel reads a relay contact, a resistance and a two-wire sensor in different ways; on the wrong input a device reports nothing, or nonsense.';

export const rule = installationRule({
  name: 'terminal-unfit',
  severity: 'error',
  title: 'A device is wired to a terminal that is not made for it.',
  why: unreadable,
  remedy: 'Wire the device to a terminal of the kind that it needs.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      if (panel.model === undefined) continue;
      for (const accessory of panel.facts.accessory) {
        const terminal = panel.model.terminals.get(accessory.from.text);
        if (terminal !== undefined && !feedsAccessories(terminal.role)) report(feedsNothing(panel, panel.model, accessory, terminal));
      }
      for (const wire of panel.wires) {
        if (wire.device === undefined) continue;
        const end = unfitEnd(wire);
        if (end?.terminal !== undefined) report(unfit(panel, panel.model, wire, wire.device, end.at, end.terminal));
        else {
          const returns = onlyReturns(wire);
          if (returns !== undefined) report(carriesNothing(panel, panel.model, wire, wire.device, returns));
        }
      }
    }
  },
});

/** True for what gives a supply, or is the one that the panel itself has. */
const feedsAccessories = (role: TerminalRole): boolean =>
  role === 'supply-out' || role === 'supply-in' || role === 'lamp-output' || role === 'lock-output' || role === 'test-output';

function feedsNothing(panel: Panel, model: PanelModel, { what, from }: Panel['facts']['accessory'][number], terminal: Terminal): Report {
  const outputs = [...model.terminals.values()].filter(({ role }) => role === 'supply-out').map(({ name }) => name.text);
  return {
    at: from,
    what: `${quoted(from.text)} is for ${roleInWords(terminal.role)}; ${quoted(what)} is fed from it.`,
    why: 'That terminal gives no supply to anything else: what hangs on it does not work, and spoils what the terminal is there for.',
    remedy: outputs.length === 0 ? 'Feed it from another supply.' : `Feed it from a supply of the panel: ${quotedList(outputs)}.`,
    related: toModelFact(`what ${quoted(from.text)} is for`, panel.installation, model, terminal),
  };
}

/** From the first end to the last where every one is a common or an earth; undefined where another may carry something. */
function onlyReturns({ ends }: Wire): Report['at'] | undefined {
  let stretch: Report['at'] | undefined;
  for (const { at, terminal } of ends) {
    if (terminal === undefined || (terminal.role !== 'common' && terminal.role !== 'earth')) return undefined;
    stretch = { start: stretch?.start ?? at.start, end: at.end };
  }
  return stretch;
}

function unfit(panel: Panel, model: PanelModel, wire: Wire, device: Device, at: Report['at'], terminal: Terminal): Report {
  return {
    at,
    what: `${quoted(terminal.name.text)} is for ${roleInWords(terminal.role)}; ${inWords(wire, device)} is wired to it.`,
    why: whyUnfit(wire, device, terminal.role),
    remedy: whereTo(model, wire),
    related: [
      ...howItReports(panel, device),
      ...toModelFact(`what ${quoted(terminal.name.text)} is for`, panel.installation, model, terminal),
    ],
  };
}

function carriesNothing(panel: Panel, model: PanelModel, wire: Wire, device: Device, at: Report['at']): Report {
  const { ends, fact } = wire;
  const earths = ends.filter(({ terminal }) => terminal?.role === 'earth').length;
  const one = ends.length === 1;
  const kind =
    earths === 0
      ? one
        ? 'is a return'
        : 'are returns'
      : earths < ends.length
        ? 'are return and earth'
        : one
          ? 'is an earth'
          : 'are earths';
  return {
    at,
    what: `${quoted(fact.device.text)} is wired only to ${quotedList(ends.map((end) => end.at.text))}, which ${kind}.`,
    why: whyNothing(wire, device),
    remedy: whereTo(model, wire),
    related: howItReports(panel, device),
  };
}

const sensorModelOf = (device: Device) => (device.kind === 'sensor' ? device.it.model : undefined);

function howItReports(panel: Panel, device: Device): readonly Related[] {
  const model = sensorModelOf(device);
  return toModelFact(`how ${quoted(device.it.name)} reports`, panel.installation, model, model?.facts.output);
}

/** The device as the sentence needs it: what it is, and its name. */
function inWords({ part }: Wire, device: Device): string {
  const name = quoted(device.it.name);
  if (part === 'supply') return `the supply of ${name}`;
  if (part === 'test') return `the test input of ${name}`;
  if (device.kind === 'drive') return `${name}, a drive,`;
  if (device.kind === 'control') return `${name}, ${device.it.facts.acts?.value === 'stop' ? 'a stop' : 'a control'},`;
  const output = sensorModelOf(device)?.facts.output?.value;
  return `${name}, ${output === 'two-wire' ? 'a self-checking sensor on two wires' : output === 'resistive' ? 'a resistive edge' : 'a sensor with a relay contact'},`;
}

const testsNothing = 'That terminal tests nothing: a device that has failed is not found before the next movement.';

function whyUnfit({ part }: Wire, device: Device, role: TerminalRole): string {
  if (part === 'supply') return 'There is no supply on that terminal: the device does not work, or is destroyed.';
  if (part === 'test') return testsNothing;
  if (device.kind === 'drive') return 'The drive does not run there, or destroys what it is wired to.';
  if (!isInput(role)) return 'That terminal reads nothing: the panel would never hear of this device, and one of the two may be destroyed.';
  return device.kind === 'control' ? 'The panel takes its command for a report of something else.' : unreadable;
}

function whyNothing({ part }: Wire, device: Device): string {
  if (part === 'supply') return 'Nothing feeds it there: the device does not work.';
  if (part === 'test') return testsNothing;
  if (device.kind === 'drive') return 'Nothing feeds it there: the drive does not run.';
  return 'A return by itself carries no report: the panel would never hear of this device.';
}

/** The terminals of a panel's model by their roles, each with its number. */
const terminalsByRole = perSubject(({ model }: Panel): ReadonlyMap<TerminalRole, { readonly name: string; readonly number: number }[]> => {
  const byRole = new Map<TerminalRole, { readonly name: string; readonly number: number }[]>();
  for (const [number, { name, role }] of (model?.facts.terminal ?? []).entries()) {
    const known = byRole.get(role);
    if (known === undefined) byRole.set(role, [{ name: name.text, number }]);
    else known.push({ name: name.text, number });
  }
  return byRole;
});

/** More terminals than these are not named. */
const mostNamed = 6;

function whereTo(model: PanelModel, wire: Wire): string {
  let count = 0;
  const first: { readonly name: string; readonly number: number }[] = [];
  for (const [role, terminals] of terminalsByRole(wire.panel)) {
    if (role === 'common' || role === 'earth' || isUnfit(wire, role)) continue;
    count += terminals.length;
    first.push(...terminals.slice(0, mostNamed));
  }
  const names = first.sort((a, b) => a.number - b.number).map(({ name }) => name);
  if (count === 0) return `${quoted(model.name)} has no terminal for it: choose another device, or another panel.`;
  return `Wire it where ${quoted(model.name)} takes it: ${quotedList(names, mostNamed, count)}.`;
}
