import { isLearntBy } from '../../circuits/index.ts';
import { headPlace, type Panel, type Sensor, type Wire } from '../../model/index.ts';
import { addLine } from '../fixes.ts';
import { toFact, toModelFact } from '../related.ts';
import { commonPractice, type Fix, installationRule } from '../rule.ts';
import { lost } from '../unread.ts';
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
      const { model } = panel;
      const learns = model?.facts['registers-sensors'];
      if (model === undefined || learns === undefined) continue;
      for (const wire of panel.wires) {
        const { device } = wire;
        if (
          device?.kind !== 'sensor' ||
          device.it.model?.facts.output?.value !== 'two-wire' ||
          isLearntBy(panel, device.it) ||
          !isFirstOnInput(wire, device.it) ||
          isUnsure(panel)
        )
          continue;
        report({
          at: wire.fact.device,
          what: `${quoted(device.it.name)} is wired to ${quoted(panel.name)}, but the panel has not learnt it.`,
          related: [
            { message: 'the sensor', ...headPlace(device.it) },
            ...toModelFact(`${quoted(model.name)} heeds only sensors that it has learnt`, panel.installation, model, learns),
            ...toFact('what it has learnt', panel.facts.registered[0]),
          ],
          fixes: [fixOf(panel, device.it.name)],
        });
      }
    }
  },
});

/** True where a line of what the panel has learnt could not be read, or a name in one leads nowhere: it may be meant for this sensor. */
function isUnsure({ facts, unread, installation }: Panel): boolean {
  if (lost(unread, 'panel', 'registered')) return true;
  return facts.registered.some(({ sensors }) => sensors.some(({ text }) => !installation.sensors.some(({ name }) => name === text)));
}

/** True when the wire ends on a two-wire input, and no earlier one of the same sensor does. */
function isFirstOnInput(wire: Wire, sensor: Sensor): boolean {
  for (const one of sensor.wires)
    for (const end of one.ends)
      if (one.part === 'signal' && one.panel === wire.panel && end.terminal?.role === 'two-wire-input') return one === wire;
  return false;
}

function fixOf({ facts, at, installation }: Panel, name: string): Fix {
  const last = facts.registered.flatMap(({ line, sensors }) => sensors.map(({ end }) => ({ line, end }))).at(-1);
  if (last === undefined)
    return {
      title: `Write “registered ${name}”, once the panel has learnt it`,
      edits: [addLine(installation.reading.tree.text, at, `registered ${name}`, [])],
      safe: false,
    };
  const comma = last.line.values.some(({ kind }) => kind === 'comma') ? ',' : '';
  return {
    title: `Add ${quoted(name)} to the registered sensors, once the panel has learnt it`,
    edits: [{ start: last.end, end: last.end, text: `${comma} ${name}` }],
    safe: false,
  };
}
