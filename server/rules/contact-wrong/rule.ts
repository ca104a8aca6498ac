import { isInput, isUnfit } from '../../circuits/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel } from '../rule.ts';
import { quoted } from '../words.ts';

/** What a sensor model offers that does not say. */
const unstated = blocks['sensor-model'].lines.contact.slots.value.fallback;

export const rule = installationRule({
  name: 'contact-wrong',
  severity: 'error',
  title: 'A sensor’s relay contact is not of the kind that the input expects.',
  why: 'The panel reads the sensor the wrong way round: it sees an alarm while all is well, and all well when the sensor reports.',
  remedy:
    'Use the sensor’s other contact if it has one, set the input to the other kind if the panel can, or choose another sensor or input.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels)
      for (const wire of panel.wires) {
        const { device } = wire;
        if (device?.kind !== 'sensor') continue;
        const { name, model } = device.it;
        const { output, contact: stated } = model?.facts ?? {};
        if (output?.value !== 'relay') continue;
        const offered = stated?.value ?? unstated;
        for (const { at, terminal } of wire.ends) {
          if (terminal?.contact === undefined || terminal.contact === offered) continue;
          // What is wrong in a graver way is reported for that; and a model with a line that cannot be read may say the right thing.
          if (!isInput(terminal.role) || isUnfit(wire, terminal.role) || model?.unread.length !== 0) continue;
          report({
            at,
            what: `${quoted(at.text)} expects a ${terminal.contact} contact; ${quoted(name)} has a ${offered} one${stated === undefined ? ', as its model says nothing else' : ''}.`,
            why:
              terminal.contact === 'normally-closed'
                ? 'While all is well its contact is open, so the panel sees an alarm; when the sensor reports, the contact closes and the panel sees all well.'
                : 'While all is well its contact is closed, so the panel sees a report all the time; and a cut wire looks like all well.',
            related: [
              ...toModelFact(`the contact of ${quoted(name)}`, panel.installation, model, stated ?? output),
              ...toModelFact(`what ${quoted(at.text)} expects`, panel.installation, panel.model, terminal),
            ],
          });
        }
      }
  },
});
