import { ramOf } from '../../figures/linear-ram/figure.ts';
import { reachOf } from '../../figures/reachable-angle/figure.ts';
import { mechanics } from '../../figures/common.ts';
import { factPlace, type Drive } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { degrees, millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** A tenth of a millimetre: less than any bracket is measured to. */
const slack = 1e-4;
const held = { figure: 'drive.NAME.stroke-used', name: 'stroke', unit: 'm', way: 'most' } as const;

/** None at a dead point, which has a rule of its own. */
function boundOf(drive: Drive): Bound | undefined {
  const had = drive.model?.facts.stroke?.value;
  const ram = had === undefined ? undefined : ramOf(drive);
  return had === undefined || ram === undefined || ram.deadPoint !== undefined ? undefined : bound(held, drive.name, ram.strokeUsed, had, slack);
}

export const rule = installationRule({
  name: 'stroke-too-short',
  severity: 'error',
  title: 'The ram has too little stroke for the opening asked for.',
  why: 'The ram comes to its own end before the leaf is at its stop: the leaf does not open fully, or does not close, and the ram’s end takes the blow.',
  remedy: 'Bring the leaf bracket or the post bracket nearer to the hinge, open less far, or choose a ram with more stroke.',
  source: mechanics,
  acceptable: false,
  check: ({ drives }, report) => {
    for (const drive of drives) {
      const stroke = boundOf(drive);
      const ram = stroke === undefined || keeps(stroke) ? undefined : ramOf(drive);
      if (stroke === undefined || ram === undefined) continue;
      const had = stroke.limit;
      const reach = reachOf(drive)?.angle;
      const opens = drive.leaf?.facts.opens;
      report({
        at: factPlace(drive, drive.facts['leaf-bracket']),
        what: `“${drive.name}” needs ${millimetres(ram.strokeUsed)} of stroke to open ${degrees(ram.opening)}, but has ${millimetres(had)}${reach === undefined ? '' : `, which is enough for ${degrees(reach)}`}.`,
        related: opens === undefined ? [] : [{ message: 'the opening asked for', start: opens.line.start, end: opens.line.end }],
      });
    }
  },
  margins: ({ drives }, give) => {
    for (const drive of drives) {
      const stroke = boundOf(drive);
      if (stroke !== undefined) give(stroke, factPlace(drive, drive.facts['leaf-bracket']));
    }
  },
});
