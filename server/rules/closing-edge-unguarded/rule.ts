import { guards, heedingOf, isMeantFor, measureOf, missesPeople } from '../../circuits/index.ts';
import { headPlace, type Leaf, type Sensor } from '../../model/index.ts';
import { heldInView, measuresFor, missed } from '../../safeguards/index.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'closing-edge-unguarded',
  severity: 'error',
  title: 'Nothing detects a person at the closing edge of a leaf.',
  why: 'Between the closing edge and what it closes against a person is crushed, and nothing would stop the leaf.',
  remedy:
    'Fit a pressure-sensitive edge, or presence detection on the whole closing path, or let the gate move only while a control in full view is held.',
  source: { text: 'EN 12453:2000, 5.5.1', standing: 'published' },
  acceptable: false,
  under: 'outside north-america',
  check: (installation, report) => {
    // There other means count than sensors, and entrapment-protection-below-minimum counts them.
    for (const leaf of installation.leaves) {
      if (leaf.drives.length === 0) continue;
      const measures = measuresFor(leaf, 'closing', false);
      if (measures.C || measures.D || measures.E || heldInView(leaf.installation)) continue;
      const idle = unheeded(leaf);
      report({
        at: headPlace(leaf),
        what: `Nothing that the panel heeds ${overrated(leaf).length === 0 ? 'watches' : 'protects at'} the closing edge of ${quoted(leaf.name)}.`,
        ...(idle.length === 0
          ? {}
          : { remedy: 'Wire the sensor that is there to an input that can read it, and register it where the panel asks for that.' }),
        related: [...idle, ...overrated(leaf)],
      });
    }
  },
});

/** Sensors that guard it and that the panel heeds, but that cannot do what their models claim, or see nobody where they are. */
function overrated(leaf: Leaf): Related[] {
  return leaf.installation.sensors
    .filter(
      (sensor) =>
        sensor.model?.facts.measure !== undefined &&
        (measureOf(sensor) === undefined || missesPeople(sensor)) &&
        heedingOf(sensor) !== undefined &&
        guards(sensor, leaf, 'closing'),
    )
    .map((sensor) => ({
      message: `${quoted(sensor.name)} ${overratedAs(sensor)}`,
      ...headPlace(sensor),
    }));
}

function overratedAs(sensor: Sensor): string {
  if (measureOf(sensor) !== undefined) return missed(sensor);
  const { kind, measure } = sensor.model?.facts ?? {};
  return kind === undefined
    ? 'counts as nothing, for its model does not say what kind of device it is'
    : `is no device that can be measure ${measure?.value ?? ''}, which its model claims`;
}

/** Sensors that are meant to guard the leaf, but that the panel does not heed. */
function unheeded(leaf: Leaf): Related[] {
  return leaf.installation.sensors
    .filter((sensor) => isMeantFor(sensor, leaf, 'closing') && (heedingOf(sensor) === undefined || !guards(sensor, leaf, 'closing')))
    .map((sensor) => ({
      message:
        heedingOf(sensor) === undefined
          ? `${quoted(sensor.name)} is meant to, but the panel does not heed it`
          : `${quoted(sensor.name)} is meant to, but it reports to a panel that does not drive ${quoted(leaf.name)}`,
      ...headPlace(sensor),
    }));
}
