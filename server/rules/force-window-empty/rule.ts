import { changesThatOpen } from '../../figures/force-changes/working.ts';
import { forceWindowOf, limits, type SettingWindow } from '../../figures/force-window/working.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { type Bound, bound } from '../bounds.ts';
import { degrees, millimetres, shown } from '../numbers.ts';
import { toModelFact } from '../related.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

const held = {
  N: { figure: 'leaf.NAME.force-window', name: 'force that the leaf needs', unit: 'N', way: 'most' },
  N·m: { figure: 'leaf.NAME.force-window', name: 'torque that the leaf needs', unit: 'N·m', way: 'most' },
} as const;

/** What the leaf needs against what the limits leave, and that much again where room is asked for. */
export const windowBound = (leaf: Leaf, { of, low, high }: SettingWindow, room = 1): Bound =>
  bound(held[of.unit], leaf.name, low, high / room);

export const rule = installationRule({
  name: 'force-window-empty',
  severity: 'error',
  title: 'No setting of the drive both moves the leaf everywhere and keeps to the force limits everywhere.',
  why: 'Whoever sets the force so that the gate works then sets it so that somebody is hurt; at the hinge side the same drive presses many times harder than at the free edge.',
  remedy: 'Change the leaf, its guards or its drive until a window opens; then set and measure the forces.',
  source: { text: 'EN 12453:2017, Annex A (force limits), with the lever rule over the whole leaf', standing: 'published' },
  acceptable: 'warnings',
  cost: 'idle',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      if (window === undefined) continue;
      hold(windowBound(leaf, window), factPlace(leaf, leaf.facts['hinge-guard'] ?? leaf.facts.mass), () => {
        const memory = restsOnMemory(window);
        return {
          ...(isTooWeak(window) ? tooWeak : {}),
          severity: memory === '' ? 'error' : 'warning',
          what: `${quoted(leaf.name)} ${inWords(window)}${memory === '' ? '' : ' (from memory)'}.`,
          ...(memory === ''
            ? {}
            : {
                why: `${isTooWeak(window) ? tooWeak.why : 'Whoever sets the force so that the gate works then sets it so that somebody is hurt.'} The verdict rests on ${memory}, which is known from memory only.`,
              }),
          remedy: remedyFor(window, 1),
          related: relatedTo(leaf, window),
        };
      });
    }
  },
});

/** True where it is the drive that gives too little; limits of force, if there are any, would leave more. */
const isTooWeak = ({ most, high }: SettingWindow): boolean => high < most.push;

const tooWeak = {
  why: 'The leaf stops where the drive cannot move it any further, and whoever then pushes it, or forces the drive, stands in its way.',
  source: { text: 'statics and constant acceleration, any mechanics textbook', standing: 'derived' },
} as const;

/** What of the window is from memory, in words; empty where nothing is. */
function restsOnMemory({ of, most, least, low, high }: SettingWindow): string {
  const parts: string[] = [];
  if (of.leastFromMemory && low === least.push) parts.push(of.swing ? 'the wind force on a leaf with gaps' : 'the rolling resistance');
  if (most.fromMemory && high === most.push) parts.push('the boundary of 50 mm below which a gap is not measured');
  return parts.join(' and ');
}

/** "needs at least 690 N to move at 0°, but at most 600 N are allowed …". */
function inWords(window: SettingWindow): string {
  const { of, least, most, low, high } = window;
  const push = (value: number): string => `${shown(value)} ${of.unit}`;
  const where = (at: number): string => (of.swing ? degrees(at) : `${millimetres(at)} of opening`);
  const need = low > least.push ? `cannot be driven with less than ${push(low)}` : `needs ${push(low)} to move from ${where(least.at)}`;
  if (isTooWeak(window)) return `${need}, and the drive gives at most ${push(high)}`;
  const reach = of.swing ? `${millimetres(most.radius)} from the hinge` : 'at its leading edge';
  return `${need}, but ${push(high)} are the most with which it presses nobody ${reach} harder than ${most.limit} N${most.limit === limits.static ? ' for longer than 0.75 s' : ''}, ${most.way} at ${where(most.at)}`;
}

/** What would open the window, tried one by one. */
export function remedyFor(window: SettingWindow, wide: number): string {
  const { alone, changes } = changesThatOpen(window.of, wide);
  const [first] = changes;
  if (first === undefined)
    return 'No change of one or two facts that was tried opens it: think of another drive, another way to hang the leaf, or presence detection that lets it touch nobody.';
  let out = `${alone ? (changes.length === 1 ? 'This opens it' : 'Any one of these opens it') : 'No single change opens it; these do'}: ${first}`;
  for (const change of changes.slice(1)) {
    if (out.length + change.length > 380) break;
    out += `; ${change}`;
  }
  return out + '.';
}

function relatedTo(leaf: Leaf, { of: { drive, unit } }: SettingWindow): readonly Related[] {
  return toModelFact(
    `what the drive of ${quoted(leaf.name)} can push with`,
    leaf.installation,
    drive.model,
    drive.model?.facts[unit === 'N' ? 'thrust' : 'torque'],
  );
}
