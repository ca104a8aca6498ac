import { headPlace, type Panel, type Sensor, type Wire } from '../../model/index.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { addLine, inModel, lost } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'sensor-not-registered',
  severity: 'error',
  title: 'A sensor is wired to a panel that learns its sensors, and the panel has not learnt it.',
  why: 'A panel that learns its sensors does not heed one that it has not learnt: the gate moves as if the sensor were not there.',
  remedy: 'Let the panel learn the sensor, see that it stops the gate, and then write it into the panel’s “registered” line.',
  source: commonPractice,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      if (panel.model?.facts['registers-sensors'] === undefined) continue;
      for (const wire of panel.wires) {
        const device = wire.device;
        if (device?.kind !== 'sensor' || wire.part !== 'signal' || device.it.registered || device.it.model?.facts.output?.value !== 'two-wire') continue;
        if (isFirstOnInput(wire, device.it)) say(panel, wire, device.it, report);
      }
    }
  },
});

/** True when the wire ends on a two-wire input, and no earlier one of the same sensor does. */
function isFirstOnInput(wire: Wire, sensor: Sensor): boolean {
  for (const one of sensor.wires)
    for (const end of one.ends) if (one.part === 'signal' && one.panel === wire.panel && end.terminal?.role === 'two-wire-input') return one === wire;
  return false;
}

function say(panel: Panel, { fact }: Wire, sensor: Sensor, report: (report: Report) => void): void {
  const { model, installation } = panel;
  const learns = model?.facts['registers-sensors'];
  if (model === undefined || learns === undefined || lost(panel.unread, 'panel', 'registered')) return;
  const lines = panel.facts.registered;
  // A name in those lines that leads nowhere may be meant for this sensor.
  if (installation.problems.some((problem) => lines.some(({ line }) => problem.start >= line.start && problem.end <= line.end))) return;
  const name = quoted(sensor.name);
  const last = lines.at(-1)?.sensors.at(-1);
  const text = installation.reading.tree.text;
  const comma = last !== undefined && text.slice(lines.at(-1)?.line.start, last.start).includes(',') ? ',' : '';
  report({
    at: fact.device,
    what: `${name} is wired to ${quoted(panel.name)}, but the panel has not learnt it.`,
    related: [
      { message: `the sensor`, ...headPlace(sensor) },
      inModel(model, installation, learns.line, `${quoted(model.name)} heeds only sensors that it has learnt`),
      ...lines.slice(0, 1).map(({ line }) => ({ message: 'what it has learnt', start: line.start, end: line.end })),
    ],
    fixes: [
      last === undefined
        ? { title: `Write “registered ${sensor.name}”, once the panel has learnt it`, edits: [addLine(text, panel.at, `registered ${sensor.name}`, ['registered'])], safe: false }
        : { title: `Add “${sensor.name}” to the registered sensors, once the panel has learnt it`, edits: [{ start: last.end, end: last.end, text: `${comma} ${sensor.name}` }], safe: false },
    ],
  });
}
