// Values as people read them: from SI to the unit in which the trade would say it, with three significant digits.
// One table for the editor, the command line and the papers. Nothing here is read back by the language.

import type { Blocks } from './kinds.ts';
import type { Facts } from './spec.ts';
import { type Dimension, unitNamed, unitsOf } from './units.ts';

/** Whose units: metric, or those of North America. */
export type Reader = 'metric' | 'american';

/** The reader of a site: American where it says `rules north-america`, else metric. */
export function readerOf(installation: { readonly site: { readonly facts: Pick<Facts<Blocks['site']>, 'rules'> } | undefined }): Reader {
  return installation.site?.facts.rules?.value === 'north-america' ? 'american' : 'metric';
}

/** One way to show a value of some SI unit: from which size on, in what, and times how much. */
interface Scale {
  /** Least absolute value, in SI, from which this scale is used. */
  readonly from: number;
  readonly unit: string;
  readonly factor: number;
  /** Added after the factor: temperatures. */
  readonly shift?: number;
}

const foot = 0.3048;
const inch = foot / 12;
const pound = 0.45359237;
const poundForce = pound * 9.80665;
const one = (unit: string, factor = 1): Scale => ({ from: 0, unit, factor });

/** By SI unit, the greatest scale first. The last one always fits. */
const metric: Readonly<Partial<Record<FigureUnit, readonly Scale[]>>> = {
  m: [{ from: 0.9995, unit: 'm', factor: 1 }, one('mm', 1000)],
  'm²': [{ from: 0.01, unit: 'm²', factor: 1 }, one('mm²', 1e6)],
  kg: [{ from: 0.9995, unit: 'kg', factor: 1 }, one('g', 1000)],
  s: [
    { from: 7200, unit: 'h', factor: 1 / 3600 },
    { from: 600, unit: 'min', factor: 1 / 60 },
    { from: 0.09995, unit: 's', factor: 1 },
    one('ms', 1000),
  ],
  deg: [one('°')],
  'm/s': [{ from: 0.09995, unit: 'm/s', factor: 1 }, one('mm/s', 1000)],
  'm/s²': [one('m/s²')],
  'deg/s': [one('°/s')],
  N: [{ from: 9995, unit: 'kN', factor: 1e-3 }, one('N')],
  N·m: [{ from: 9995, unit: 'kN·m', factor: 1e-3 }, one('N·m')],
  Pa: [{ from: 9995, unit: 'kPa', factor: 1e-3 }, one('Pa')],
  J: [{ from: 9995, unit: 'kJ', factor: 1e-3 }, one('J')],
  W: [{ from: 9995, unit: 'kW', factor: 1e-3 }, one('W')],
  V: [{ from: 0.09995, unit: 'V', factor: 1 }, one('mV', 1000)],
  A: [{ from: 0.9995, unit: 'A', factor: 1 }, one('mA', 1000)],
  ohm: [
    { from: 999.5e3, unit: 'Mohm', factor: 1e-6 },
    { from: 999.5, unit: 'kohm', factor: 1e-3 },
    { from: 0.09995, unit: 'ohm', factor: 1 },
    one('mohm', 1000),
  ],
  C: [{ from: 360, unit: 'Ah', factor: 1 / 3600 }, one('C')],
  Hz: [one('Hz')],
  K: [one('K')],
  '°C': [one('°C')],
  'kg·m²': [one('kg·m²')],
  '1': [one('')],
};

const american: typeof metric = {
  ...metric,
  m: [{ from: 3 * foot, unit: 'ft', factor: 1 / foot }, one('in', 1 / inch)],
  'm²': [{ from: 0.01, unit: 'ft²', factor: 1 / (foot * foot) }, one('mm²', 1e6)],
  kg: [one('lb', 1 / pound)],
  'm/s': [one('ft/s', 1 / foot)],
  'm/s²': [one('ft/s²', 1 / foot)],
  N: [one('lbf', 1 / poundForce)],
  N·m: [one('lbf·ft', 1 / (poundForce * foot))],
  Pa: [one('psf', (foot * foot) / poundForce)],
  J: [one('ft·lbf', 1 / (poundForce * foot))],
  '°C': [{ from: 0, unit: '°F', factor: 1.8, shift: 32 }],
  'kg·m²': [one('lb·ft²', 1 / (pound * foot * foot))],
};

/** What a unit is in SI: the unit's name there, how many of that make one, and what is added for temperatures. */
interface InSi {
  readonly si: string;
  readonly factor?: number;
  readonly shift?: number;
}

const hour = 3600;
/** Reliability is reckoned in years of 8760 h (EN ISO 13849-1, Annex C). */
const year = 8760 * hour;

/**
 * Every unit in which figures, their inputs and bounds are worked out, each in the one way it is spelt, with what it is in SI (Bureau
 * International des Poids et Mesures, The International System of Units, 9th edition). Angles are in degrees throughout.
 */
const units = {
  '1': { si: '1' },
  m: { si: 'm' },
  'm²': { si: 'm²' },
  'm³': { si: 'm³' },
  kg: { si: 'kg' },
  'kg·m²': { si: 'kg·m²' },
  s: { si: 's' },
  'm/s': { si: 'm/s' },
  'm/s²': { si: 'm/s²' },
  deg: { si: 'deg' },
  'deg/s': { si: 'deg/s' },
  'deg/s²': { si: 'deg/s²' },
  N: { si: 'N' },
  N·m: { si: 'N·m' },
  'N/m': { si: 'N/m' },
  Pa: { si: 'Pa' },
  J: { si: 'J' },
  W: { si: 'W' },
  V: { si: 'V' },
  A: { si: 'A' },
  C: { si: 'C' },
  Hz: { si: 'Hz' },
  K: { si: 'K' },
  ohm: { si: 'ohm' },
  'ohm/m': { si: 'ohm/m' },
  'V/(A·m)': { si: 'V/(A·m)' },
  '°C': { si: 'K', shift: 273.15 },
  years: { si: 's', factor: year },
  '1/h': { si: '1/s', factor: 1 / hour },
  '1/day': { si: '1/s', factor: 1 / (24 * hour) },
  '1/year': { si: '1/s', factor: 1 / year },
  'A·√s/mm²': { si: 'A·√s/m²', factor: 1e6 },
} as const satisfies Readonly<Record<string, InSi>>;

/** A unit as figures are worked out in. */
export type FigureUnit = keyof typeof units;
export type SiUnit = (typeof units)[FigureUnit]['si'];

/** All of them. */
export const figureUnits = Object.keys(units) as FigureUnit[];

/** A value in SI, with angles in degrees. */
export function inSi(value: number, unit: FigureUnit): { readonly value: number; readonly unit: SiUnit } {
  const { si, factor = 1, shift = 0 }: InSi = units[unit];
  return { value: value * factor + shift, unit: si as SiUnit };
}

/**
 * A number with three significant digits and no needless zeros: 2.1, 780, 17.9, 12300, 0.000123. Below one
 * ten-thousandth and from a thousand million on, as a power of ten: 1.2e-7. What is not finite is shown as it is called.
 */
export function threeDigits(value: number): string {
  if (!Number.isFinite(value)) return Number.isNaN(value) ? 'not a number' : value < 0 ? '−∞' : '∞';
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(3));
  const size = Math.abs(rounded);
  return size < 1e-4 || size >= 1e9 ? rounded.toExponential().replace('e+', 'e') : String(rounded);
}

/**
 * A value as the reader would say it: `2.1 m`, `780 mm`, `17.9 s`, `95°`, `8.2 kohm`. A unit of which nothing is said above is shown
 * as it is; one of `1` is a bare number.
 */
export function showSi(value: number, unit: FigureUnit, reader: Reader = 'metric'): string {
  const scales = (reader === 'american' ? american : metric)[unit];
  if (scales === undefined) return `${threeDigits(value)} ${unit}`;
  const size = Math.abs(value);
  const scale = (
    size === 0
      ? (scales.find((candidate) => candidate.factor === 1) ?? scales[0])
      : (scales.find((candidate) => size >= candidate.from) ?? scales[scales.length - 1])
  ) as Scale;
  const number = threeDigits(value * scale.factor + (scale.shift ?? 0));
  return scale.unit === '' ? number : scale.unit === '°' ? number + '°' : `${number} ${scale.unit}`;
}

/** A share as people say it: 0.9 is `90 %`. */
export const showShare = (value: number): string => `${threeDigits(value * 100)} %`;

/** Units in which a quantity is shown beside its own, by dimension: the everyday ones of both readers. */
const everyday: Partial<Record<Dimension, readonly string[]>> = {
  length: ['m', 'mm', 'ft', 'in'],
  mass: ['kg', 'lb'],
  time: ['s', 'min'],
  angle: ['deg', 'rad', 'turns'],
  speed: ['m/s', 'mm/s', 'km/h', 'ft/s'],
  'angular speed': ['deg/s', 'rpm'],
  force: ['N', 'lbf'],
  torque: ['N·m', 'lbf·ft'],
  pressure: ['Pa', 'psf'],
  energy: ['J', 'Wh'],
  power: ['W', 'kW'],
  resistance: ['ohm', 'kohm'],
  area: ['mm2', 'AWG'],
  charge: ['Ah'],
  current: ['A', 'mA'],
  voltage: ['V'],
  temperature: ['°C', '°F'],
};

/** What a quantity written as `amount` `unit` is in the other everyday units of its dimension; empty for an unknown unit. */
export function inOtherUnits(amount: number, unit: string): string[] {
  const own = unitNamed(unit);
  if (own === undefined || !Number.isFinite(amount)) return [];
  const si = own.toSi(amount);
  const names = everyday[own.dimension] ?? unitsOf(own.dimension).map((other) => other.name);
  const shown: string[] = own.dimension === 'ratio' ? [threeDigits(si)] : [];
  for (const name of names) {
    const other = unitNamed(name);
    if (other === undefined || other === own) continue;
    const value = other.fromSi(si);
    const size = Math.abs(value);
    // A gate is not measured in units that make it a ten-thousandth or a million of something.
    if (Number.isFinite(value) && (size === 0 || (size >= 1e-3 && size < 1e6)))
      shown.push(name === 'AWG' ? `about AWG ${Math.round(value)}` : `${threeDigits(value)} ${name}`);
  }
  return shown;
}

/** A limit of a slot, which is in SI, in the most usual unit of its dimension that shows it without a fraction of a thousandth. */
export function showLimit(si: number, dimension: Dimension): string {
  if (!Number.isFinite(si)) return 'any';
  const choices = unitsOf(dimension);
  const fitting = choices.find((unit) => si === 0 || (Math.abs(unit.fromSi(si)) >= 0.1 && Math.abs(unit.fromSi(si)) < 10000)) ?? choices[0];
  return fitting === undefined ? threeDigits(si) : `${Number(fitting.fromSi(si).toPrecision(4))} ${fitting.name}`;
}
