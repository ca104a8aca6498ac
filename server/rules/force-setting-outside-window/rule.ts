import { forceWindowOf, type SettingWindow } from '../../figures/force-window/case.ts';
import { limits } from '../../figures/force-window/maths.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { restsOnMemory } from '../force-window-empty/rule.ts';
import { millimetres, shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const held = {
  most: {
    N: { figure: 'leaf.NAME.force-most', name: 'force set', unit: 'N', way: 'most' },
    'N·m': { figure: 'leaf.NAME.torque-most', name: 'torque set', unit: 'N·m', way: 'most' },
  },
  least: {
    N: { figure: 'leaf.NAME.force-least', name: 'force set', unit: 'N', way: 'least' },
    'N·m': { figure: 'leaf.NAME.torque-least', name: 'torque set', unit: 'N·m', way: 'least' },
  },
} as const;

const boundOf = (leaf: Leaf, side: 'most' | 'least', { of, [side]: { push } }: SettingWindow, setting: number): Bound => bound(held[side][of.unit], leaf.name, setting, push, hair(push));

export const rule = installationRule({
  name: 'force-setting-outside-window',
  severity: 'error',
  title: 'The force that is set is more than the limits leave, or less than the leaf needs.',
  why: 'Too much, and whoever the leaf holds is pressed harder than a body stands; too little, and the leaf stops in wind and cold and somebody turns it up.',
  remedy: 'Set the force inside the window, and measure it.',
  source: { text: 'EN 12453:2017, Annex A (force limits), with the lever rule over the whole leaf', standing: 'published' },
  acceptable: true,
  check: (installation, report) => {
    const force = installation.motion?.facts.force;
    if (force === undefined) return;
    for (const leaf of installation.leaves) {
      const window = forceWindowOf(leaf);
      const setting = window?.of.setting;
      if (window === undefined || setting === undefined) continue;
      const { of, most, least } = window;
      const related = [{ message: 'the leaf that it drives', ...factPlace(leaf, leaf.facts['hinge-guard'] ?? leaf.facts.mass) }];
      const push = (value: number): string => `${shown(value)} ${of.unit}`;
      const at = { start: force.line.start, end: force.line.end };
      if (!keeps(boundOf(leaf, 'most', window, setting))) {
        const memory = most.fromMemory ? ' (from memory)' : '';
        report({
          at,
          severity: most.fromMemory ? 'warning' : 'error',
          what: `The ${push(setting)} that are set for ${quoted(leaf.name)} are more than the ${push(most.push)} with which it presses nobody${of.swing ? ` ${millimetres(most.radius)} from the hinge` : ''} harder than ${most.limit} N${most.limit === limits.static ? ' for longer than 0.75 s' : ''}${memory}.`,
          remedy: mendWith(window, setting),
          related,
        });
      } else if (window.low <= window.high && !keeps(boundOf(leaf, 'least', window, setting)))
        report({
          at,
          severity: 'warning',
          what: `The ${push(setting)} that are set for ${quoted(leaf.name)} are less than the ${push(least.push)} that it needs to move from every place${restsOnMemory(window) === '' ? '' : ' (from memory)'}.`,
          remedy: mendWith(window, setting),
          related,
        });
    }
  },
  margins: ({ motion, leaves }, give) => {
    const force = motion?.facts.force;
    if (force === undefined) return;
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      const setting = window?.of.setting;
      if (window === undefined || setting === undefined) continue;
      if (window.most.push < Number.POSITIVE_INFINITY) give(boundOf(leaf, 'most', window, setting), force.line);
      if (window.low <= window.high) give(boundOf(leaf, 'least', window, setting), force.line);
    }
  },
});

function mendWith({ of, low, high }: SettingWindow, setting: number): string {
  if (low > high) return 'There is no setting that works: see force-window-empty.';
  const share = (value: number, round: (value: number) => number): string => `${round((value / of.greatest) * 1000) / 10} %`;
  const needed = `Set between ${share(low, Math.ceil)} and ${share(high, Math.floor)} of what the drive can, and measure the forces`;
  return setting > high ? `${needed}.` : `${needed}; or make the leaf easier to move.`;
}
