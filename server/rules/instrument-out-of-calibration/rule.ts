import { aYearAfter, dayOf, inCalibration } from '../../figures/force-records/working.ts';
import { factPlace, type Measured } from '../../model/index.ts';
import { needsForceTest, owesForceTest } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'instrument-out-of-calibration',
  severity: 'error',
  title: 'Forces were measured with an instrument that was not calibrated within the year before.',
  why: 'A gauge that has drifted shows less than there is, and nobody notices; such readings prove nothing.',
  remedy: 'Have the instrument calibrated, measure again, and state the day of the calibration.',
  source: { text: 'Door Industry Journal, Winter 2022, p. 93, by the DHF (a force meter is calibrated yearly)', standing: 'published' },
  acceptable: 'warnings',
  check: ({ reading, leaves }, report) => {
    const owed = new Set<Measured>();
    for (const leaf of leaves) if (owesForceTest(leaf) && needsForceTest(leaf)) for (const { measured } of leaf.forces) owed.add(measured);
    for (const measured of reading.entities.measured) {
      const day = dayOf(measured);
      if (day === undefined || measured.facts.force.length === 0) continue;
      const instrument = measured.facts.instrument;
      // A line that could not be read is reported where it stands.
      if (instrument === undefined && measured.unread.includes('instrument')) continue;
      const verdict = inCalibration(measured);
      if (verdict === true) continue;
      const calibrated = instrument?.calibrated;
      report({
        at: factPlace(measured, instrument),
        severity: owed.has(measured) ? 'error' : 'warning',
        what:
          calibrated === undefined
            ? `Nothing says when the instrument of the measurement of ${day} was calibrated.`
            : calibrated > day
              ? `The instrument was calibrated on ${calibrated}, after it was measured with on ${day}.`
              : `The calibration of ${calibrated} was good until ${aYearAfter(calibrated)}, and it was measured with on ${day}.`,
      });
    }
  },
});
