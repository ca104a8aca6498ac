// What the body of rules that a site names changes. Every judgement that depends on it asks here.
import type { Installation } from './installation.ts';

/** The body of rules that a site says it is under; `unstated` where it says nothing. */
export type Body = 'europe' | 'north-america' | 'unstated';

export interface Regime {
  readonly body: Body;
  /** The force limits of EN 12453 hold, and forces measured against them count as proof. */
  readonly limitsForces: boolean;
  /** Forces are to be measured before the gate is used (EN 12453); only where the site says so. */
  readonly asksForForceTests: boolean;
  /** Sensors that only see people are enough behind an opening leaf. */
  readonly seeingIsEnoughWhenOpening: boolean;
  /** Holding a control is judged by who uses the gate, and limits its speed (EN 12453, table 1); only where the site says so. */
  readonly judgesHeldControls: boolean;
  /** Faults to earth on the mains are judged by IEC 60364: loop impedance, residual current, protective conductor. */
  readonly judgesMainsByIec: boolean;
  /** Conductors are of a gauge, and their current and drop are those of the American code. */
  readonly gauges: boolean;
  /** A site has a usage class, and it limits the speed of a sliding leaf (UL 325). */
  readonly hasUsageClass: boolean;
}

const elsewhere = {
  limitsForces: true,
  asksForForceTests: false,
  seeingIsEnoughWhenOpening: false,
  judgesHeldControls: false,
  judgesMainsByIec: true,
  gauges: false,
  hasUsageClass: false,
} as const;

const regimes: Readonly<Record<Body, Regime>> = {
  europe: { ...elsewhere, body: 'europe', asksForForceTests: true, judgesHeldControls: true },
  'north-america': {
    body: 'north-america',
    limitsForces: false,
    asksForForceTests: false,
    seeingIsEnoughWhenOpening: true,
    judgesHeldControls: false,
    judgesMainsByIec: false,
    gauges: true,
    hasUsageClass: true,
  },
  unstated: { ...elsewhere, body: 'unstated' },
};

/** What holds at a site by the body of rules that it names. */
export const regimeOf = ({ site }: Installation): Regime => regimes[site?.facts.rules?.value ?? 'unstated'];
