import type { Statement } from '../../../grammar/index.ts';
import { headPlace, type Leaf } from '../../model/index.ts';
import { hair } from '../bounds.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, ofTheModel } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted, rounded, written } from '../words.ts';

export const rule = installationRule({
  name: 'sensor-out-of-reach',
  severity: 'warning',
  title: 'A beam or curtain does not reach across the opening.',
  why: 'Beyond its reach a beam is lost in rain, dirt or low sun: the gate stands still, or the sensor is turned up until it sees nothing.',
  remedy: 'Choose a sensor with more reach.',
  source: ofTheModel,
  acceptable: true,
  check: ({ sensors, leaves }, report) => {
    let opening: Opening | undefined;
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
      opening ??= openingToSpan(leaves);
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

interface Opening {
  /** Metres. */
  readonly width: number;
  /** The lines that make it as wide as it is. */
  readonly parts: readonly Statement[];
}

/**
 * The opening with the lines that make it as wide as it is: the widths of its swing leaves and the travels of its sliding ones, m.
 * Undefined where one is not known.
 */
function openingToSpan(leaves: readonly Leaf[]): Opening | undefined {
  const parts: Statement[] = [];
  let width = 0;
  for (const { facts, unread } of leaves) {
    const part = facts.slides ?? facts.width;
    if (unread.length > 0 || part === undefined) return undefined;
    parts.push(part.line);
    width += 'distance' in part ? part.distance : part.value;
  }
  return { width, parts };
}

function widthInWords({ width, parts }: Opening): string {
  const [only, second] = parts;
  return only !== undefined && second === undefined ? written(only) : `${rounded(width)} m`;
}
