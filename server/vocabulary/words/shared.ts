// What the words of several blocks have in common.
import { choice, count, date, type LineSpec, quantity } from '../spec.ts';

export const deg = Math.PI / 180;
export const contactOptions = {
  'normally-closed': 'closed while all is well; opens to report',
  'normally-open': 'open while all is well; closes to report',
} as const;
export const directionOptions = { closing: 'while the gate closes', opening: 'while the gate opens' } as const;

export const doubleInsulated = {
  safety: true,
  doc: 'It is of protection class II: its insulation is doubled or reinforced, and it needs no protective conductor.',
  example: 'double-insulated',
  source: 'IEC 61140',
  slots: {},
} as const satisfies LineSpec;

export const hour = 3600;
export const year = 8760 * hour;
export const levelOptions = {
  a: 'less than one dangerous failure in 10 000 hours',
  b: 'less than one in 100 000 hours',
  c: 'less than three in 1 000 000 hours',
  d: 'less than one in 1 000 000 hours',
  e: 'less than one in 10 000 000 hours',
} as const;
export const requiredLevel = {
  safety: true,
  doc: 'The performance level that safety functions must reach here, as the risk assessment says.',
  example: 'required-level c',
  source: 'EN ISO 13849-1',
  slots: { value: choice(levelOptions, { doc: 'The level.' }) },
} as const satisfies LineSpec;
export const fitted = {
  doc: 'The day on which this one was fitted, where it took the place of an earlier one. Not stated means when the gate was installed.',
  example: 'fitted 2024-05-02',
  slots: { value: date({ doc: 'The day.' }) },
} as const satisfies LineSpec;
export const switchingOptions = {
  'relay-small-load': 'a relay that switches far less than its rating',
  'relay-full-load': 'a relay that switches about its rating',
  'contactor-small-load': 'a contactor that switches far less than its rating',
  'contactor-full-load': 'a contactor that switches about its rating',
} as const;
/** What a product declares for functional safety: of itself as a whole, or so that it can be reckoned. */
export const safetyLines = {
  pfhd: {
    safety: true,
    doc: 'Probability of a dangerous failure an hour, as its maker declares it for the whole of it. 45 FIT are 4.5 in 100 million hours.',
    example: 'pfhd 45 FIT',
    source: 'EN ISO 13849-1',
    slots: { value: quantity('rate', 1e-12 / hour, 1e-3 / hour, { doc: 'Failures an hour.' }) },
  },
  'performance-level': {
    safety: true,
    doc: 'The performance level that its maker declares for it.',
    example: 'performance-level d',
    source: 'EN ISO 13849-1',
    slots: { value: choice(levelOptions, { doc: 'The level.' }) },
  },
  category: {
    safety: true,
    doc: 'The category that its maker declares, 1 to 4. Not stated means B: nothing is claimed of how it is built.',
    example: 'category 2',
    source: 'EN ISO 13849-1',
    slots: { value: count(1, 4, { doc: 'The category.' }) },
  },
  mttfd: {
    safety: true,
    doc: 'Mean time to a dangerous failure of each of its channels, without the parts that wear by switching.',
    example: 'mttfd 60 years',
    source: 'EN ISO 13849-1',
    slots: { value: quantity('time', 0.1 * year, 100_000 * year, { doc: 'Mean time.' }) },
  },
  b10d: {
    safety: true,
    doc: 'Number of operations until a tenth of such parts have failed dangerously, for what wears by switching.',
    example: 'b10d 2000000',
    source: 'EN ISO 13849-1, Annex C',
    slots: { value: count(100, 1e10, { doc: 'Number of operations.' }) },
  },
  coverage: {
    safety: true,
    doc: 'Average diagnostic coverage: the share of its dangerous failures that it finds by itself. Not stated means none.',
    example: 'coverage 90 %',
    source: 'EN ISO 13849-1, Annex E',
    slots: { value: quantity('ratio', 0, 1, { doc: 'Share.', fallback: 0 }) },
  },
  'common-cause': {
    safety: true,
    doc: 'Points for measures against failures of both channels by one cause, out of 100.',
    example: 'common-cause 75',
    source: 'EN ISO 13849-1, Annex F',
    slots: { value: count(0, 100, { doc: 'Points.' }) },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;
