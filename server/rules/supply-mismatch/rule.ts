import { feedingsOf } from '../../circuits/index.ts';
import type { Cable } from '../../model/index.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
import { quoted, rounded, written } from '../words.ts';

/** How far a supply may be from the nominal voltage, as a share. */
const allowed = 0.1;

export const rule = installationRule({
  name: 'supply-mismatch',
  severity: 'error',
  title: 'A panel is fed with another voltage than it is made for, or a cable begins with another than feeds it.',
  why: 'A panel on the wrong supply does not work, or is destroyed, and may burn.',
  remedy: 'Choose the model of the panel for this supply, or correct the supply of the site.',
  source: { text: 'IEC 60038 (a supply within ± 10 % of its nominal voltage)', standing: 'published' },
  acceptable: false,
  check: ({ site, panels, cables }, report) => {
    for (const cable of cables) checkCable(cable, report);
    const supply = site?.facts.supply;
    if (supply === undefined) return;
    for (const panel of panels) {
      const { model, nameAt, modelAt } = panel;
      const made = model?.facts.supply;
      if (made === undefined || agree(supply.voltage, made.voltage)) continue;
      report({
        at: supply.line,
        what: `The site has ${written(supply.line)}; ${quoted(panel.name)} (${model?.name ?? ''}) is made for ${written(made.line)}, that is ${rounded(made.voltage * (1 - allowed))} V to ${rounded(made.voltage * (1 + allowed))} V.`,
        related: [
          ...toFact('the panel', { line: { start: (nameAt ?? panel.at).start, end: (modelAt ?? panel.at).end } }),
          ...toModelFact('what its model is made for', panel.installation, model, made),
        ],
      });
    }
  },
});

const agree = (one: number, other: number): boolean => Math.abs(one / other - 1) <= allowed + 1e-9;

/** What a cable carries, against what the panel at its end is made for, or what the outputs give that feed the device there. */
function checkCable(cable: Cable, report: (report: Report) => void): void {
  const { load, installation } = cable;
  const { carries } = cable.facts;
  if (load === undefined || carries === undefined) return;
  const at = carries.line;
  const said = `${quoted(cable.name)} carries ${written(at, 'at')}`;
  if (load.kind === 'panel') {
    const made = load.it.model?.facts.supply;
    const battery = load.it.battery?.facts.voltage;
    if (made !== undefined && !agree(carries.voltage, made.voltage) && (battery === undefined || !agree(carries.voltage, battery.value)))
      report({
        at,
        what: `${said} to ${quoted(load.it.name)}, which is made for ${written(made.line)}.`,
        related: toModelFact('what its model is made for', installation, load.it.model, made),
      });
    return;
  }
  const feedings = feedingsOf(load.it);
  const first = feedings[0];
  // A device that is fed in several ways may have a cable for each of them.
  if (first === undefined || feedings.some(({ output }) => agree(carries.voltage, output.voltage))) return;
  report({
    at,
    what: `${said} to ${quoted(load.it.name)}; the output of ${quoted(first.panel.name)} that feeds it gives ${rounded(first.output.voltage)} V.`,
    why: 'What is lost in the cable, and what is left at its end, is then worked out from a voltage that is not there.',
    remedy: 'Correct the voltage of the cable, or the wiring of the device.',
    related: toModelFact('what the output gives', first.panel.installation, first.panel.model, first.output),
  });
}
