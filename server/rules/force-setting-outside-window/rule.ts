import { forceWindowOf, limits, type SettingWindow } from '../../figures/force-window/working.ts';
import type { Leaf } from '../../model/index.ts';
import { type Bound, bound, hair } from '../bounds.ts';
import { millimetres, shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const held = {
  most: {
    N: { figure: 'leaf.NAME.force-most', name: 'force set', unit: 'N', way: 'most' },
    N·m: { figure: 'leaf.NAME.torque-most', name: 'torque set', unit: 'N·m', way: 'most' },
  },
  least: {
    N: { figure: 'leaf.NAME.force-least', name: 'force set', unit: 'N', way: 'least' },
    N·m: { figure: 'leaf.NAME.torque-least', name: 'torque set', unit: 'N·m', way: 'least' },
  },
} as const;

const boundOf = (leaf: Leaf, side: 'most' | 'least', { of, [side]: { push } }: SettingWindow, setting: number): Bound =>
  bound(held[side][of.unit], leaf.name, setting, push, hair(push));

export const rule = installationRule({
  name: 'force-setting-outside-window',
  severity: 'error',
  title: 'The force that is set is more than the limits leave, or less than the leaf needs.',
  why: 'Too much, and whoever the leaf holds is pressed harder than a body stands; too little, and the leaf stops in wind and cold and somebody turns it up.',
  remedy: 'Set the force inside the window, and measure it.',
  source: { text: 'EN 12453:2017, Annex A (force limits), with the lever rule over the whole leaf', standing: 'published' },
  acceptable: 'warnings',
  holds: ({ motion, leaves }, hold) => {
    const force = motion?.facts.force;
    if (force === undefined) return;
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      if (window === undefined) continue;
      const { of, most, least, low, high } = window;
      const setting = force.value * of.greatest;
      const isOpen = low <= high;
      const push = (value: number): string => `${shown(value)} ${of.unit}`;
      const related = () => toFact('the leaf that it drives', leaf.facts['hinge-guard'] ?? leaf.facts.mass);
      // Where nothing limits the force there is no most to be held against.
      if (most.push < Number.POSITIVE_INFINITY)
        hold(boundOf(leaf, 'most', window, setting), force.line, () => ({
          severity: most.fromMemory ? 'warning' : 'error',
          what: `The ${push(setting)} that are set for ${quoted(leaf.name)} are more than the ${push(most.push)} with which it presses nobody${of.swing ? ` ${millimetres(most.radius)} from the hinge` : ''} harder than ${most.limit} N${most.limit === limits.static ? ' for longer than 0.75 s' : ''}${most.fromMemory ? ' (from memory)' : ''}.`,
          remedy: isOpen ? `${rangeOf(window)}.` : 'There is no setting that works: see force-window-empty.',
          related: related(),
        }));
      // Where no setting works, too little is not what is wrong.
      if (isOpen)
        hold(boundOf(leaf, 'least', window, setting), force.line, () => ({
          severity: 'warning',
          what: `The ${push(setting)} that are set for ${quoted(leaf.name)} are less than the ${push(least.push)} that it needs to move from every place${of.leastFromMemory ? ' (from memory)' : ''}.`,
          remedy: `${rangeOf(window)}; or make the leaf easier to move.`,
          related: related(),
        }));
    }
  },
});

function rangeOf({ of, low, high }: SettingWindow): string {
  const share = (value: number, round: (value: number) => number): string => `${round((value / of.greatest) * 1000) / 10} %`;
  return `Set between ${share(low, Math.ceil)} and ${share(high, Math.floor)} of what the drive can, and measure the forces`;
}
