import { toFact, toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, rounded, written } from '../words.ts';

/** How far a supply may be from the nominal voltage, as a share. */
const allowed = 0.1;

export const rule = installationRule({
  name: 'supply-mismatch',
  severity: 'error',
  title: 'The supply of the site is not the one that the panel is made for.',
  why: 'A panel on the wrong supply does not work, or is destroyed, and may burn.',
  remedy: 'Choose the model of the panel for this supply, or correct the supply of the site.',
  source: { text: 'IEC 60038 (a supply within ± 10 % of its nominal voltage)', standing: 'published' },
  acceptable: false,
  check: ({ site, panels }, report) => {
    const supply = site?.facts.supply;
    if (supply === undefined) return;
    for (const panel of panels) {
      const { model, nameAt, modelAt } = panel;
      const made = model?.facts.supply;
      if (made === undefined || Math.abs(supply.voltage / made.voltage - 1) <= allowed + 1e-9) continue;
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
