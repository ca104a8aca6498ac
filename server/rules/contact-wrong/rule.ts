import type { Panel, Sensor, TerminalUse, Wire } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { installationRule, type Report } from '../rule.ts';
import { inModel, isInput, isUnfit, ofTheModel } from '../wiring.ts';
import { quoted } from '../words.ts';

/** What a sensor model offers that does not say. */
const unstated = blocks['sensor-model'].lines.contact.slots.value.fallback;

export const rule = installationRule({
  name: 'contact-wrong',
  severity: 'error',
  title: 'A sensor’s relay contact is not of the kind that the input expects.',
  why: 'The panel reads the sensor the wrong way round: it sees an alarm while all is well, and all well when the sensor reports.',
  remedy: 'Use the sensor’s other contact if it has one, set the input to the other kind if the panel can, or choose another sensor or input.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      if (panel.model === undefined) continue;
      for (const wire of panel.wires) {
        const device = wire.device;
        if (device?.kind !== 'sensor' || wire.part !== 'signal' || device.it.model?.facts.output?.value !== 'relay') continue;
        const offered = device.it.model.facts.contact?.value ?? unstated;
        for (const end of wire.ends) {
          const contact = end.terminal?.contact;
          if (contact !== undefined && contact !== offered) say(panel, wire, device.it, end, report);
        }
      }
    }
  },
});

function say(panel: Panel, wire: Wire, sensor: Sensor, { at, terminal }: TerminalUse, report: (report: Report) => void): void {
  if (terminal?.contact === undefined || sensor.model === undefined || panel.model === undefined) return;
  if (!isInput(terminal.role) || isUnfit(wire, terminal.role)) return;
  // A model whose line on its contact cannot be read may say the right thing.
  if (sensor.model.unread.length > 0) return;
  const stated = sensor.model.facts.contact;
  const offered = stated?.value ?? unstated;
  report({
    at,
    what: `${quoted(at.text)} expects a ${terminal.contact} contact; ${quoted(sensor.name)} has a ${offered} one${stated === undefined ? ', as its model says nothing else' : ''}.`,
    why:
      terminal.contact === 'normally-closed'
        ? 'While all is well its contact is open, so the panel sees an alarm; when the sensor reports, the contact closes and the panel sees all well.'
        : 'While all is well its contact is closed, so the panel sees a report all the time; and a cut wire looks like all well.',
    related: [
      inModel(sensor.model, panel.installation, stated?.line ?? sensor.model.facts.output?.line ?? sensor.model.at.word ?? sensor.model.at, `the contact of ${quoted(sensor.name)}`),
      inModel(panel.model, panel.installation, terminal.line, `what ${quoted(at.text)} expects`),
    ],
  });
}
