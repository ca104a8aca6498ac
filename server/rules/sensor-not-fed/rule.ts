import type { Sensor } from '../../model/index.ts';
import { headPlace } from '../../model/index.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule, type Related } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'sensor-not-fed',
  severity: 'error',
  title: 'A sensor that needs a supply has none.',
  why: 'Without its supply it sees nobody; what its contact then says is chance.',
  remedy: 'Wire its supply to an output of the panel (“wire … supply to …”), or state what else feeds it with “own-supply”.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    const { panels } = installation;
    if (
      panels.length === 0 ||
      panels.some(({ unread, wires }) => lost(unread, 'panel', 'wire') || wires.some(({ device }) => device === undefined))
    )
      return;
    for (const sensor of installation.sensors) {
      if (!needsSupply(sensor) || sensor.facts['own-supply'] !== undefined || lost(sensor.unread, 'sensor', 'own-supply')) continue;
      const signal = sensor.wires.find(({ part }) => part === 'signal');
      // One that is not wired at all is reported for that.
      if (signal === undefined || sensor.wires.some(({ part }) => part === 'supply')) continue;
      report({
        at: sensor.nameAt ?? headPlace(sensor),
        what: `${quoted(sensor.name)} reports to ${quoted(signal.panel.name)}, and nothing feeds it.`,
        related: [...toFact('the wire of its report', signal.fact), ...testsOf(sensor)],
      });
    }
  },
});

const testsOf = ({ wires }: Sensor): readonly Related[] =>
  toFact('its test input is wired, and that is no supply', wires.find(({ part }) => part === 'test')?.fact);

/**
 * True for what makes light or a field, and for whatever says that it draws a current or needs a voltage. What is fed over the two wires
 * of its report needs no other supply, and a bare contact none at all.
 */
function needsSupply({ model }: Sensor): boolean {
  if (model === undefined) return false;
  const { kind, output, consumes, 'least-voltage': least } = model.facts;
  if (output === undefined || output.value === 'two-wire') return false;
  return kind?.value === 'beam' || kind?.value === 'curtain' || (consumes !== undefined && consumes.value > 0) || least !== undefined;
}
