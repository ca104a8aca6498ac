import { type Feeding, feedingsOf } from '../../circuits/index.ts';
import type { Drive, Installation, Sensor } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { toModelFact } from '../related.ts';
import { type Hold, installationRule, ofTheModel } from '../rule.ts';
import { quoted, rounded, written } from '../words.ts';

const held = { name: 'voltage of the output', unit: 'V', way: 'least' } as const;
/** How far a mains voltage may be from the nominal one, as a share. Source: IEC 60038. */
const allowed = 0.1;

export const rule = installationRule({
  name: 'output-voltage-unfit',
  severity: 'error',
  title: 'An output of the panel gives another voltage than what hangs on it needs.',
  why: 'With too little voltage a drive does not run and a sensor does not report, or reports at random; with too much it is destroyed.',
  remedy: 'Choose a device for the voltage of the output, or feed it from a supply of its own voltage.',
  source: ofTheModel,
  acceptable: false,
  check: ({ drives, site }, report) => {
    const supply = site?.facts.supply;
    if (supply === undefined) return;
    // A motor of which the plate is stated runs on the supply of the site.
    for (const drive of drives) {
      const motor = drive.model?.facts.motor;
      if (motor === undefined) continue;
      for (const { panel, output, wire } of feedingsOf(drive))
        if (Math.abs(output.voltage / supply.voltage - 1) > allowed + 1e-9)
          report({
            at: wire.fact.line,
            what: `${quoted(drive.name)} has a motor for the supply of ${written(supply.line)}; its output of ${quoted(panel.name)} gives ${rounded(output.voltage)} V.`,
            related: [
              ...toModelFact('the motor', drive.installation, drive.model, motor),
              ...toModelFact('what the output gives', panel.installation, panel.model, output),
            ],
          });
    }
  },
  holds: (installation: Installation, hold) => {
    for (const sensor of installation.sensors) holdLeast(sensor, hold);
    for (const drive of installation.drives) holdLeast(drive, hold);
  },
});

function holdLeast(it: Sensor | Drive, hold: Hold): void {
  const least = it.model?.facts['least-voltage'];
  if (least === undefined) return;
  for (const feeding of feedingsOf(it)) {
    const { panel, output, wire } = feeding;
    hold(bound(held, it.name, output.voltage, least.value, hair(least.value)), wire.fact.line, () => ({
      what: `${quoted(it.name)} needs ${written(least.line)}; ${outputInWords(feeding)} gives ${rounded(output.voltage)} V.`,
      related: [
        ...toModelFact('the least voltage at which it works', it.installation, it.model, least),
        ...toModelFact('what the output gives', panel.installation, panel.model, output),
      ],
    }));
  }
}

const outputInWords = ({ panel, output }: Feeding): string =>
  `the output ${quoted(output.terminals[0]?.text ?? '')} of ${quoted(panel.name)}`;
