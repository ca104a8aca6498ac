import { coldest } from '../../figures/battery/working.ts';
import { consumptionOf } from '../../figures/supply-budget/working.ts';
import { headPlace, type Panel } from '../../model/index.ts';
import { installationRule, type Report } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted, quotedList, written } from '../words.ts';

type Say = (report: Report) => void;

export const rule = installationRule({
  name: 'electrical-facts-unstated',
  severity: 'note',
  title: 'A fact is missing without which a battery is not judged.',
  why: 'Nothing is said of it, and that is not to be taken for a verdict that it is sound.',
  remedy: 'State what is missing.',
  source: { text: 'what the other rules about batteries read', standing: 'derived' },
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      checkBattery(panel, report);
      checkCold(panel, report);
    }
  },
});

/** As people say it: −7 °C, where the table of the battery figure ends. */
const coldestSaid = `${Math.round(coldest - 273.15)} °C`.replace('-', '−');

function checkCold({ battery, name }: Panel, report: Say): void {
  const stated = battery?.facts.coldest;
  if (stated === undefined || stated.value >= coldest) return;
  report({
    at: stated.line,
    what: `What the battery of ${quoted(name)} gives at ${written(stated.line)} is not known here: it is judged as if it were ${coldestSaid}, where the table ends.`,
    remedy: 'Ask the maker of the battery what it gives at that temperature, and state that as its capacity.',
  });
}

function checkBattery(panel: Panel, report: Say): void {
  const { model, battery } = panel;
  if (battery === undefined || model === undefined || panel.unread.length > 0 || lost(model.unread, 'panel-model', 'standby')) return;
  const silent = new Set<string>();
  for (const { device } of panel.wires) {
    if (device?.kind !== 'sensor') continue;
    const sensor = device.it.model;
    if (sensor !== undefined && consumptionOf(device) === undefined && !lost(sensor.unread, 'sensor-model', 'consumes'))
      silent.add(sensor.name);
  }
  if (model.facts.standby !== undefined && silent.size === 0) return;
  const missing = [
    ...(model.facts.standby === undefined ? [`the model ${quoted(model.name)} lacks “standby”`] : []),
    ...(silent.size === 0 ? [] : [`${quotedList([...silent], 3)} ${silent.size === 1 ? 'lacks' : 'lack'} “consumes”`]),
  ];
  report({
    at: headPlace(battery),
    what: `How long the battery of ${quoted(panel.name)} lasts is not worked out: ${missing.join(', and ')}.`,
    remedy: 'State in the models what the panel and its sensors draw.',
  });
}
