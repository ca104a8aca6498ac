import { headPlace, type Leaf, type Sensor } from '../../model/index.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { inModel, ofTheModel, written } from '../wiring.ts';
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
    let width: number | undefined;
    for (const sensor of sensors) {
      const reach = sensor.model?.facts.reach?.value;
      if (reach === undefined) continue;
      // One that sits on a leaf, or that does not watch the closing gate, need not span the opening.
      if (sensor.facts.on !== undefined || sensor.facts.watches?.movements.includes('closing') !== true) continue;
      const kind = sensor.model?.facts.kind?.value;
      if (kind !== 'beam' && kind !== 'curtain') continue;
      width ??= openingWidth(leaves);
      if (width !== undefined && width > reach * (1 + 1e-9)) say(sensor, leaves, width, report);
    }
  },
});

/** Most leaves that are shown as parts of the opening. */
const mostParts = 12;

const partOf = ({ facts }: Leaf) => facts.slides ?? facts.width;

/** Width of the opening in metres: the widths of its swing leaves and the travels of its sliding ones. Undefined where one is not known. */
function openingWidth(leaves: readonly Leaf[]): number | undefined {
  let sum = 0;
  for (const leaf of leaves) {
    const { slides, width } = leaf.facts;
    if (leaf.unread.length > 0) return undefined;
    if (slides !== undefined) sum += slides.distance;
    else if (width !== undefined) sum += width.value;
    else return undefined;
  }
  return leaves.length === 0 ? undefined : sum;
}

function say(sensor: Sensor, leaves: readonly Leaf[], width: number, report: (report: Report) => void): void {
  const { model, installation } = sensor;
  const line = model?.facts.reach?.line;
  if (model === undefined || line === undefined) return;
  const parts = leaves.slice(0, mostParts).flatMap((leaf): Related[] => {
    const part = partOf(leaf)?.line;
    return part === undefined ? [] : [{ message: `${written(part)} of the opening`, start: part.start, end: part.end }];
  });
  const only = leaves.length === 1 && leaves[0] !== undefined ? partOf(leaves[0])?.line : undefined;
  report({
    at: sensor.modelAt ?? headPlace(sensor),
    what: `${quoted(sensor.name)} (${model.name}) reaches ${written(line)}; the opening is ${only === undefined ? `${rounded(width)} m` : written(only)} wide.`,
    related: [...parts, inModel(model, installation, line, 'its reach')],
  });
}
