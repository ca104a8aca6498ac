// Units are data. A literal keeps what was written; its value in SI is worked out here, after lexing.
// Factors are exact by definition (SI Brochure, 9th edition, 2019; international yard and pound agreement, 1959)
// unless the line says otherwise. A test holds them against two unit libraries.

/** What a quantity measures. A temperature is a point; a temperature difference is another dimension. */
export type Dimension =
  | 'length'
  | 'area'
  | 'mass'
  | 'time'
  | 'angle'
  | 'speed'
  | 'angular speed'
  | 'acceleration'
  | 'force'
  | 'torque'
  | 'pressure'
  | 'energy'
  | 'power'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'charge'
  | 'frequency'
  | 'rate'
  | 'temperature'
  | 'temperature difference'
  | 'ratio';

export interface Unit {
  /** As the canonical form and the reports write it. */
  readonly name: string;
  readonly dimension: Dimension;
  /** SI value of a number written in this unit. */
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
  /** For people: the unit in words. */
  readonly says: string;
  /** Other ways to write it that are read as the same. */
  readonly also: readonly string[];
}

const pound = 0.45359237;
const foot = 0.3048;
const standardGravity = 9.80665;
const poundForce = pound * standardGravity;
const turn = 2 * Math.PI;

const linear = (name: string, dimension: Dimension, factor: number, says: string, also: readonly string[] = []): Unit => ({
  name,
  dimension,
  toSi: (value) => value * factor,
  fromSi: (value) => value / factor,
  says,
  also,
});

/**
 * Cross-section of an American wire gauge in square metres: d = 0.127 mm · 92^((36 − n)/39) (ASTM B258).
 * Gauges 0/0 and thicker are written as negative numbers and are outside what gate wiring uses.
 */
const gaugeToArea = (gauge: number): number => {
  const diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter * diameter;
};
const areaToGauge = (area: number): number => 36 - (39 * Math.log(Math.sqrt((4 * area) / Math.PI) / 0.127e-3)) / Math.log(92);

export const units: readonly Unit[] = [
  linear('mm', 'length', 1e-3, 'millimetres'),
  linear('cm', 'length', 1e-2, 'centimetres'),
  linear('m', 'length', 1, 'metres'),
  linear('in', 'length', foot / 12, 'inches', ['inch']),
  linear('ft', 'length', foot, 'feet'),
  linear('mm2', 'area', 1e-6, 'square millimetres', ['mm²', 'mm^2']),
  linear('m2', 'area', 1, 'square metres', ['m²', 'm^2']),
  { name: 'AWG', dimension: 'area', toSi: gaugeToArea, fromSi: areaToGauge, says: 'American wire gauge', also: ['awg'] },
  linear('kg', 'mass', 1, 'kilograms'),
  linear('g', 'mass', 1e-3, 'grams'),
  linear('t', 'mass', 1000, 'tonnes'),
  linear('lb', 'mass', pound, 'pounds', ['lbs']),
  linear('ms', 'time', 1e-3, 'milliseconds'),
  linear('s', 'time', 1, 'seconds', ['sec']),
  linear('min', 'time', 60, 'minutes'),
  linear('h', 'time', 3600, 'hours'),
  // Reliability is reckoned in years of 8760 h (EN ISO 13849-1, Annex C).
  linear('years', 'time', 8760 * 3600, 'years', ['year']),
  linear('deg', 'angle', Math.PI / 180, 'degrees', ['°']),
  linear('rad', 'angle', 1, 'radians'),
  linear('turns', 'angle', turn, 'whole turns', ['turn']),
  linear('m/s', 'speed', 1, 'metres a second'),
  linear('mm/s', 'speed', 1e-3, 'millimetres a second'),
  linear('m/min', 'speed', 1 / 60, 'metres a minute'),
  linear('km/h', 'speed', 1 / 3.6, 'kilometres an hour'),
  linear('ft/s', 'speed', foot, 'feet a second'),
  linear('ft/min', 'speed', foot / 60, 'feet a minute'),
  linear('mph', 'speed', 1609.344 / 3600, 'miles an hour'),
  linear('deg/s', 'angular speed', Math.PI / 180, 'degrees a second', ['°/s']),
  linear('rad/s', 'angular speed', 1, 'radians a second'),
  linear('rpm', 'angular speed', turn / 60, 'turns a minute', ['r/min']),
  linear('m/s2', 'acceleration', 1, 'metres a second squared', ['m/s²', 'm/s^2']),
  linear('N', 'force', 1, 'newtons'),
  linear('kN', 'force', 1000, 'kilonewtons'),
  linear('lbf', 'force', poundForce, 'pounds-force'),
  linear('N·m', 'torque', 1, 'newton metres', ['N*m', 'Nm']),
  linear('lbf·ft', 'torque', poundForce * foot, 'pound-feet', ['lbf*ft', 'ft·lbf', 'ft*lbf']),
  linear('Pa', 'pressure', 1, 'pascals'),
  linear('kPa', 'pressure', 1000, 'kilopascals'),
  linear('psf', 'pressure', poundForce / (foot * foot), 'pounds-force a square foot'),
  linear('J', 'energy', 1, 'joules'),
  linear('Wh', 'energy', 3600, 'watt hours'),
  linear('W', 'power', 1, 'watts'),
  linear('kW', 'power', 1000, 'kilowatts'),
  linear('mV', 'voltage', 1e-3, 'millivolts'),
  linear('V', 'voltage', 1, 'volts'),
  linear('mA', 'current', 1e-3, 'milliamperes'),
  linear('A', 'current', 1, 'amperes'),
  linear('ohm', 'resistance', 1, 'ohms', ['Ω', '\u2126', 'ohms']),
  linear('kohm', 'resistance', 1e3, 'kiloohms', ['kΩ', 'k\u2126']),
  linear('Mohm', 'resistance', 1e6, 'megaohms', ['MΩ', 'M\u2126']),
  linear('Ah', 'charge', 3600, 'ampere hours'),
  linear('Hz', 'frequency', 1, 'hertz'),
  linear('/h', 'rate', 1 / 3600, 'an hour'),
  linear('/day', 'rate', 1 / 86400, 'a day'),
  linear('FIT', 'rate', 1e-9 / 3600, 'failures in a thousand million hours', ['fit']),
  {
    name: '°C',
    dimension: 'temperature',
    toSi: (value) => value + 273.15,
    fromSi: (value) => value - 273.15,
    says: 'degrees Celsius',
    also: ['degC'],
  },
  {
    name: '°F',
    dimension: 'temperature',
    toSi: (value) => ((value + 459.67) * 5) / 9,
    fromSi: (value) => (value * 9) / 5 - 459.67,
    says: 'degrees Fahrenheit',
    also: ['degF'],
  },
  linear('K', 'temperature difference', 1, 'kelvins'),
  linear('%', 'ratio', 0.01, 'per cent'),
];

const byName = new Map<string, Unit>();
for (const unit of units) for (const name of [unit.name, ...unit.also]) byName.set(name, unit);

/** The unit of that name, exactly as written; units are told apart by case (`mW`, `MW`). */
export function unitNamed(name: string): Unit | undefined {
  return byName.get(name);
}

/** All units of a dimension, the one that people most often use for a gate first. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return ofDimension.get(dimension) ?? [];
}

const usual: Partial<Record<Dimension, readonly string[]>> = {
  length: ['m', 'mm'],
  mass: ['kg'],
  time: ['s'],
  angle: ['deg'],
  speed: ['m/s', 'mm/s', 'km/h'],
  'angular speed': ['deg/s'],
  resistance: ['kohm', 'ohm'],
  current: ['A', 'mA'],
  voltage: ['V'],
  area: ['mm2'],
};
const ofDimension = new Map<Dimension, readonly Unit[]>();
for (const unit of units) ofDimension.set(unit.dimension, [...(ofDimension.get(unit.dimension) ?? []), unit]);
for (const [dimension, list] of ofDimension) {
  const first = usual[dimension] ?? [];
  const rank = (unit: Unit): number => (first.includes(unit.name) ? first.indexOf(unit.name) : first.length);
  ofDimension.set(
    dimension,
    [...list].sort((a, b) => rank(a) - rank(b)),
  );
}

/** The unit that figures and `figures --output json` use for a dimension: SI, angles in degrees, ratios as they are. */
export const siUnit: Readonly<Record<Dimension, string>> = {
  length: 'm',
  area: 'm2',
  mass: 'kg',
  time: 's',
  angle: 'rad',
  speed: 'm/s',
  'angular speed': 'rad/s',
  acceleration: 'm/s2',
  force: 'N',
  torque: 'N·m',
  pressure: 'Pa',
  energy: 'J',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  charge: 'C',
  frequency: 'Hz',
  rate: '/s',
  temperature: 'K',
  'temperature difference': 'K',
  ratio: '1',
};
