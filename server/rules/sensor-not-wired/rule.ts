import { chainedInto } from '../../circuits/index.ts';
import { headPlace, type Installation, type Sensor } from '../../model/index.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { blockLost, isRepeatedName, lost } from '../unread.ts';
import { quoted, quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'sensor-not-wired',
  severity: 'error',
  title: 'A sensor is not wired to any panel.',
  why: 'It looks as if it protected somebody, and the panel never hears of it.',
  remedy: 'Wire its signal to an input of the panel, or take the sensor out of the file and off the gate.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    if (installation.panels.length === 0) return;
    for (const sensor of installation.sensors) {
      const kind = sensor.model?.facts.kind?.value;
      if (kind === undefined || kind === 'loop' || isWired(sensor)) continue;
      // Where another edge leads to it, that one, or the head of its chain, is to be wired.
      if (chainedInto(sensor) !== undefined) continue;
      say(installation, sensor, report);
    }
  },
});

function isWired({ wires }: Sensor): boolean {
  for (const wire of wires) if (wire.part === 'signal') return true;
  return false;
}

function say(installation: Installation, sensor: Sensor, report: (report: Report) => void): void {
  const { panels } = installation;
  if (isRepeatedName(installation, sensor.nameAt) || blockLost(installation, 'panel')) return;
  // The line that is missed may be one that could not be read, or that names a sensor there is not.
  for (const panel of panels) if (lost(panel.unread, 'panel', 'wire') || panel.wires.some((wire) => wire.device === undefined)) return;
  const name = quoted(sensor.name);
  const other = sensor.wires[0];
  const next = sensor.next;
  report({
    at: sensor.nameAt ?? headPlace(sensor),
    what: `${name} is not wired to ${panels.length === 1 ? quotedList(panels.map((panel) => panel.name)) : 'any panel'}${other === undefined ? '' : `: its ${other.part} is, but not its signal`}.`,
    ...(next === undefined
      ? {}
      : {
          remedy: `Wire ${name} to the panel; ${quoted(next.name)} is then reached through it. A chain begins at the panel: the edge that is wired there names the next one.`,
        }),
    related: [
      ...panels.slice(0, 4).map((panel) => ({ message: `nothing in ${quoted(panel.name)} wires it`, ...headPlace(panel) })),
      ...(other === undefined ? [] : toFact(`its ${other.part}`, other.fact)),
    ],
  });
}
