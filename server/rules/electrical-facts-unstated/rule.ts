import { extraLow, isMains, upstreamOf } from '../../circuits/index.ts';
import { coldest } from '../../figures/battery/working.ts';
import { ratingOf } from '../../figures/current-rating/working.ts';
import { protectiveAreaOf } from '../../figures/loop-impedance/working.ts';
import { consumptionOf } from '../../figures/supply-budget/working.ts';
import { type Cable, factPlace, headPlace, type Panel, regimeOf, type Site } from '../../model/index.ts';
import { protectionOf } from '../electrical.ts';
import { installationRule, type Report } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted, quotedList, written } from '../words.ts';

type Say = (report: Report) => void;

export const rule = installationRule({
  name: 'electrical-facts-unstated',
  severity: 'note',
  title: 'A fact is missing without which a cable, its protection or a battery is not judged.',
  why: 'Nothing is said of it, and that is not to be taken for a verdict that it is sound.',
  remedy: 'State what is missing.',
  source: { text: 'what the other rules about cables and batteries read', standing: 'derived' },
  acceptable: true,
  check: (installation, report) => {
    const { site, cables, panels } = installation;
    let isEarthingAsked = false;
    for (const cable of cables) {
      if (cable.unread.length > 0) continue;
      checkRating(cable, report);
      checkLeastVoltage(cable, report);
      if (isMains(cable) !== true) continue;
      isEarthingAsked = true;
      checkFeed(cable, report);
      checkProtectiveConductor(cable, site, report);
    }
    if (isEarthingAsked && site !== undefined && regimeOf(installation).judgesMainsByIec) checkEarthing(site, report);
    for (const panel of panels) {
      checkBattery(panel, report);
      checkCold(panel, report);
    }
  },
});

function checkRating(cable: Cable, report: Say): void {
  const device = protectionOf(cable);
  if (device === undefined || cable.facts.method !== undefined || cable.model === undefined || ratingOf(cable) !== undefined) return;
  report({
    at: factPlace(cable, device),
    what: `Whether ${quoted(cable.name)} bears what its protection lets through is not judged: it is not stated how it is laid.`,
    remedy: 'State its “method”, and “ambient” and “grouped” where it is warm there or more circuits run beside it.',
  });
}

function checkLeastVoltage(cable: Cable, report: Say): void {
  const { load } = cable;
  const { carries } = cable.facts;
  if (carries === undefined || carries.voltage > extraLow || (load?.kind !== 'sensor' && load?.kind !== 'drive')) return;
  const { model } = load.it;
  if (
    model === undefined ||
    model.facts['least-voltage'] !== undefined ||
    lost(model.unread, load.kind === 'sensor' ? 'sensor-model' : 'drive-model', 'least-voltage')
  )
    return;
  report({
    at: factPlace(cable, cable.facts.feeds),
    what: `Whether enough voltage is left at the end of ${quoted(cable.name)} is not judged: the model ${quoted(model.name)} does not say the least that ${quoted(load.it.name)} works at.`,
    remedy: 'State “least-voltage” in the model.',
  });
}

/** What a mains cable behind a panel is protected by, where it has nothing of its own, stands at the panel's feed. */
function checkFeed(cable: Cable, report: Say): void {
  const { load } = cable;
  if (protectionOf(cable) !== undefined || load === undefined || load.kind === 'panel' || upstreamOf(cable) !== undefined) return;
  report({
    at: factPlace(cable, cable.facts.feeds),
    what: `Whether ${quoted(cable.name)} is protected is not judged: it has no breaker or fuse of its own, and no mains cable to the panel of ${quoted(load.it.name)} is stated.`,
    remedy: 'State the cable that feeds the panel, with its breaker or fuse.',
  });
}

function checkProtectiveConductor(cable: Cable, site: Site | undefined, report: Say): void {
  const { model } = cable;
  if (
    site?.facts.earthing === undefined ||
    !regimeOf(cable.installation).judgesMainsByIec ||
    model === undefined ||
    protectiveAreaOf(cable) !== undefined
  )
    return;
  // Fewer than three cores are another finding.
  if (model.facts.cores !== undefined && model.facts.cores.value < 3) return;
  report({
    at: cable.modelAt ?? headPlace(cable),
    what: `Whether a fault at the end of ${quoted(cable.name)} is cut off is not judged: its model does not say of its protective conductor.`,
    remedy: 'State “cores” in the model, or the size of “protective-conductor”.',
  });
}

function checkEarthing(site: Site, report: Say): void {
  const { earthing } = site.facts;
  const missing = earthing === undefined ? 'earthing' : earthing.value === 'TN' ? 'external-impedance' : 'earth-electrode';
  if (site.facts[missing] !== undefined || lost(site.unread, 'site', missing)) return;
  report({
    at: factPlace(site, earthing),
    what: `Whether a fault to earth is cut off in time is not judged: ${earthing === undefined ? 'it is not stated how the supply is earthed' : earthing.value === 'TN' ? 'the impedance of the loop outside is not stated' : 'the resistance of the electrode is not stated'}.`,
    remedy: `State “${missing}”, as measured.`,
  });
}

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
