import { mechanics } from '../../figures/index.ts';
import { ramOf } from '../../figures/linear-ram/working.ts';
import { reachOf } from '../../figures/reachable-angle/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { degrees, millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** A tenth of a millimetre: less than any bracket is measured to. */
const slack = 1e-4;
const held = { figure: 'drive.NAME.stroke-used', name: 'stroke', unit: 'm', way: 'most' } as const;

export const rule = installationRule({
  name: 'stroke-too-short',
  severity: 'error',
  title: 'The ram has too little stroke for the opening asked for.',
  why: 'The ram comes to its own end before the leaf is at its stop: the leaf does not open fully, or does not close, and the ram’s end takes the blow.',
  remedy: 'Bring the leaf bracket or the post bracket nearer to the hinge, open less far, or choose a ram with more stroke.',
  source: mechanics,
  acceptable: false,
  holds: ({ drives }, hold) => {
    for (const drive of drives) {
      const stroke = drive.model?.facts.stroke;
      const ram = ramOf(drive);
      // A dead point has a rule of its own.
      if (stroke === undefined || ram === undefined || ram.deadPoint !== undefined) continue;
      hold(bound(held, drive.name, ram.strokeUsed, stroke.value, slack), factPlace(drive, drive.facts['leaf-bracket']), () => {
        const reach = reachOf(drive)?.angle;
        return {
          what: `${quoted(drive.name)} needs ${millimetres(ram.strokeUsed)} of stroke to open ${degrees(ram.opening)}, but has ${millimetres(stroke.value)}${reach === undefined ? '' : `, which is enough for ${degrees(reach)}`}.`,
          related: toFact('the opening asked for', drive.leaf?.facts.opens),
        };
      });
    }
  },
});
