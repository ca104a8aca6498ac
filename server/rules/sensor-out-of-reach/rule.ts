import { type Opening, openingOf } from '../../circuits/index.ts';
import { headPlace } from '../../model/index.ts';
import { hair } from '../bounds.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, ofTheModel } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted, rounded, written } from '../words.ts';

export const rule = installationRule({
  name: 'sensor-out-of-reach',
  severity: 'error',
  title: 'A beam or curtain does not reach across the opening.',
  why: 'Beyond its reach a beam is lost, and nobody is seen there: the gate stands still, or the sensor is turned up until it sees nothing.',
  remedy: 'Choose a sensor with more reach.',
  source: ofTheModel,
  acceptable: false,
  check: (installation, report) => {
    const { sensors } = installation;
    for (const sensor of sensors) {
      const { model } = sensor;
      const kind = model?.facts.kind?.value;
      const reach = model?.facts.reach;
      if (model === undefined || reach === undefined || (kind !== 'beam' && kind !== 'curtain')) continue;
      // One that sits on a leaf, or that does not watch the closing gate, need not span the opening.
      if (
        sensor.facts.on !== undefined ||
        lost(sensor.unread, 'sensor', 'on') ||
        sensor.facts.watches?.movements.includes('closing') !== true
      )
        continue;
      const opening = openingOf(installation);
      if (opening === undefined) return;
      if (opening.width <= reach.value + hair(reach.value)) continue;
      report({
        at: sensor.modelAt ?? headPlace(sensor),
        what: `${quoted(sensor.name)} (${model.name}) reaches ${written(reach.line)}; the opening is ${widthInWords(opening)} wide.`,
        related: [
          ...opening.parts.slice(0, mostParts).flatMap((line) => toFact(`${written(line)} of the opening`, { line })),
          ...toModelFact('its reach', sensor.installation, model, reach),
        ],
      });
    }
  },
});

/** Most leaves that are shown as parts of the opening. */
const mostParts = 12;

function widthInWords({ width, parts }: Opening): string {
  const [only, second] = parts;
  return only !== undefined && second === undefined ? written(only) : `${rounded(width)} m`;
}
