import { bridgedBy } from '../../circuits/index.ts';
import { without } from '../fixes.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'input-bridged',
  severity: 'error',
  title: 'A link bridges an input that has a device wired to it.',
  why: 'Whatever the device reports, the panel sees only the link: the device can never stop the gate.',
  remedy:
    'Take the link out, on the panel and in the file. If the device is faulty, mend or replace it, and keep the gate from moving by itself until then.',
  source: commonPractice,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels)
      for (const link of panel.links) {
        const found = bridgedBy(panel, link);
        if (found === undefined) continue;
        const { wire, end } = found;
        const { line } = link.fact;
        const device = quoted(wire.fact.device.text);
        const direct = link.ends.some((other) => other.terminal?.role === 'common' || other.at.text === end.terminal?.common?.text);
        report({
          at: line,
          what: `${quoted(end.at.text)} has ${device} wired to it, and this link bridges it${direct ? '' : ' together with other links'}.`,
          why:
            end.terminal?.contact === 'normally-open'
              ? `The panel sees a closed contact all the time, whatever ${device} does.`
              : `Whatever ${device} reports, the panel sees only the link: ${device} can never stop the gate.`,
          related: toFact(`${device} is wired here`, wire.fact),
          fixes: [
            {
              title: 'Take the link out of the file',
              edits: [without(panel.installation.reading.tree.text, line.start, line.end)],
              safe: false,
            },
          ],
        });
      }
  },
});
