import { extraLow, feedingsOf } from '../../circuits/index.ts';
import type { Battery, Drive, Panel } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel, type Report } from '../rule.ts';
import { quoted, quotedList, rounded, written } from '../words.ts';

/** How far a battery may be from the voltage that the panel is made for, as a share: nominal voltages are at least a quarter apart. */
const allowed = 0.1;

export const rule = installationRule({
  name: 'battery-voltage-unfit',
  severity: 'error',
  title: 'The battery has another voltage than the panel or its drives need.',
  why: 'With too little voltage the gate does not move when there is no mains; with too much the panel is destroyed, and may burn.',
  remedy:
    'Choose a battery of the voltage that the panel is made for; where the panel makes more or less of it, state “battery” in its model.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { battery, model } = panel;
      const voltage = battery?.facts.voltage;
      if (battery === undefined || voltage === undefined) continue;
      const made = model?.facts.battery;
      if (made === undefined) checkDrives(panel, voltage, report);
      else if (Math.abs(voltage.value / made.voltage - 1) > allowed + 1e-9)
        report({
          at: voltage.line,
          what: `The battery of ${quoted(panel.name)} has ${written(voltage.line)}; its model is made for ${written(made.line)}.`,
          related: toModelFact('what it is made for', panel.installation, model, made),
        });
    }
  },
});

type Voltage = NonNullable<Battery['facts']['voltage']>;

/** Where the model says nothing of its battery: against what the drives get from the panel, and what they need. */
function checkDrives(panel: Panel, voltage: Voltage, report: (report: Report) => void): void {
  const met = new Set<Drive>();
  for (const { device } of panel.wires) {
    if (device?.kind !== 'drive' || met.has(device.it)) continue;
    met.add(device.it);
    if (checkOutputs(panel, device.it, voltage, report) || checkNeed(panel, device.it, voltage, report)) return;
  }
}

/** True where it has said that an output of the drive has another voltage. */
function checkOutputs(panel: Panel, drive: Drive, voltage: Voltage, report: (report: Report) => void): boolean {
  const feeding = feedingsOf(drive).find((one) => one.panel === panel && Math.abs(voltage.value / one.output.voltage - 1) > allowed + 1e-9);
  if (feeding === undefined) return false;
  const { output } = feeding;
  report({
    at: voltage.line,
    // A drive on the mains may get its voltage from the battery by an inverter.
    severity: output.voltage > extraLow ? 'warning' : 'error',
    what: `The battery of ${quoted(panel.name)} has ${written(voltage.line)}; ${quotedList(output.terminals.map(({ text }) => text))} give ${quoted(drive.name)} ${rounded(output.voltage)} V, and the model does not say that it makes that of the battery.`,
    related: toModelFact('what the output gives', panel.installation, panel.model, output),
  });
  return true;
}

function checkNeed(panel: Panel, drive: Drive, voltage: Voltage, report: (report: Report) => void): boolean {
  const least = drive.model?.facts['least-voltage'];
  if (least === undefined || least.value <= voltage.value) return false;
  report({
    at: voltage.line,
    severity: least.value > extraLow ? 'warning' : 'error',
    what: `The battery of ${quoted(panel.name)} has ${written(voltage.line)}; ${quoted(drive.name)} needs ${written(least.line)}.`,
    related: toModelFact('the least voltage at which it works', drive.installation, drive.model, least),
  });
  return true;
}
