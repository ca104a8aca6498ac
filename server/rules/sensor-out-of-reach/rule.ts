import type { Statement } from '../../../grammar/index.ts';
import { headPlace, type Leaf } from '../../model/index.ts';
import { hair } from '../bounds.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { lost, ofTheModel, written } from '../wiring.ts';
import { quoted, rounded } from '../words.ts';

export const rule = installationRule({
  name: 'sensor-out-of-reach',
  severity: 'warning',
  title: 'A beam or curtain does not reach across the opening.',
  why: 'Beyond its reach a beam is lost in rain, dirt or low sun: the gate stands still, or the sensor is turned up until it sees nothing.',
  remedy: 'Choose a sensor with more reach.',
  source: ofTheModel,
  acceptable: true,
  check: ({ sensors, leaves }, report) => {
    const opening = openingOf(leaves);
    if (opening === undefined) return;
    for (const sensor of sensors) {
      const { model } = sensor;
      const kind = model?.facts.kind?.value;
      const reach = model?.facts.reach;
      if (model === undefined || reach === undefined || (kind !== 'beam' && kind !== 'curtain')) continue;
      // One that sits on a leaf, or that does not watch the closing gate, need not span the opening.
      if (sensor.facts.on !== undefined || lost(sensor.unread, 'sensor', 'on') || sensor.facts.watches?.movements.includes('closing') !== true) continue;
      if (opening.width <= reach.value + hair(reach.value)) continue;
      report({
        at: sensor.modelAt ?? headPlace(sensor),
        what: `${quoted(sensor.name)} (${model.name}) reaches ${written(reach.line)}; the opening is ${opening.inWords} wide.`,
        related: [...opening.parts.slice(0, mostParts).flatMap(({ line }) => toFact(`${written(line)} of the opening`, { line })), ...toModelFact('its reach', sensor.installation, model, reach)],
      });
    }
  },
});

/** Most leaves that are shown as parts of the opening. */
const mostParts = 12;

/** The opening with the lines that make it as wide as it is: the widths of its swing leaves and the travels of its sliding ones, m. Undefined where one is not known. */
function openingOf(leaves: readonly Leaf[]) {
  const parts: { readonly line: Statement; readonly metres: number }[] = [];
  for (const { facts, unread } of leaves) {
    const { slides, width } = facts;
    if (unread.length > 0) return undefined;
    if (slides !== undefined) parts.push({ line: slides.line, metres: slides.distance });
    else if (width !== undefined) parts.push({ line: width.line, metres: width.value });
    else return undefined;
  }
  const width = parts.reduce((sum, { metres }) => sum + metres, 0);
  const [only, second] = parts;
  return { width, parts, inWords: only !== undefined && second === undefined ? written(only.line) : `${rounded(width)} m` };
}
