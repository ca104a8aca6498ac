// A force window in words.
import type { SettingWindow } from '../../../figures/force-window/working.ts';
import { inDegrees } from '../../../figures/index.ts';
import { motionOf } from '../../../figures/run-time/working.ts';
import type { Installation, Leaf } from '../../../model/index.ts';
import { type Reader, showShare, showSi } from '../../../vocabulary/index.ts';
import { drivenLeaves, motionUnknown, nothingDriven } from '../../words.ts';
import { short } from '../text.ts';

/** A push in the reader's unit. */
export const pushInWords = ({ of }: SettingWindow, value: number, reader: Reader): string => showSi(value, of.unit, reader);

/** How far the leaf is open. */
export const placeInWords = ({ of }: SettingWindow, at: number, reader: Reader): string =>
  of.swing ? showSi(inDegrees(at), 'deg') : showSi(at, 'm', reader);

/** The same at the end of a sentence. */
export const whereInWords = (window: SettingWindow, at: number, reader: Reader): string =>
  window.of.swing ? `at ${placeInWords(window, at, reader)}` : `${placeInWords(window, at, reader)} open`;

/** A setting as a share of what the drive can. */
export const shareInWords = ({ of }: SettingWindow, setting: number): string => showShare(setting / of.greatest);

/** What is wrong with the setting, or right; empty where it cannot be told, as no setting works. */
export function settingInWords({ low, high }: SettingWindow, setting: number): 'too little' | 'too much' | 'within the window' | '' {
  if (low > high) return '';
  if (setting < low) return 'too little';
  return setting > high ? 'too much' : 'within the window';
}

export function windowInWords(leaf: Leaf, window: SettingWindow, reader: Reader): string {
  const { of, least, low, high } = window;
  const needs = `${pushInWords(window, least.push, reader)} (${least.way}, ${whereInWords(window, least.at, reader)})`;
  const works =
    low <= high
      ? `Settings from ${shareInWords(window, low)} to ${shareInWords(window, high)} work everywhere.`
      : 'No setting works everywhere: the window is empty.';
  const verdict = of.setting === undefined ? '' : settingInWords(window, of.setting);
  const set =
    of.setting === undefined
      ? 'No setting is stated.'
      : `It is set to ${pushInWords(window, of.setting, reader)}, ${shareInWords(window, of.setting)} of what the drive can` +
        `${verdict === '' ? '' : `: ${verdict}`}.`;
  return `${short(leaf.name)} needs at least ${needs}, ${mostInWords(window, reader)}. ${works} ${set}`;
}

function mostInWords(window: SettingWindow, reader: Reader): string {
  const { of, most } = window;
  if (most.push < Infinity)
    return `and may get at most ${pushInWords(window, most.push, reader)} (${most.way}, ${whereInWords(window, most.at, reader)})`;
  return of.limited ? 'and nothing limits it: every place is guarded' : 'and the force limits of EN 12453 are not applied here';
}

/** Why leaves have no window. */
export function lacksOf(installation: Installation): string {
  const driven = drivenLeaves(installation);
  if (driven.length === 0) return nothingDriven;
  const models = driven.flatMap(({ drives: [drive] }) => drive?.model ?? []);
  const silent = models.filter(({ facts: { thrust, torque } }) => thrust === undefined && torque === undefined);
  if (silent.length > 0) {
    const names = [...new Set(silent.map(({ name }) => short(name)))];
    return (
      `${names.join(' and ')} ${names.length === 1 ? 'does' : 'do'} not state how hard the drive pushes: ` +
      '“thrust” of a ram or a rack, “torque” of a shaft.'
    );
  }
  const still = driven.filter((leaf) => motionOf(leaf) === undefined);
  if (still.length > 0) return motionUnknown(still);
  return 'For the window the mass and the height of the leaf are needed, and a thrust of a ram or a rack, or a torque of a shaft.';
}
