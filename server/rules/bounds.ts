// A number that a rule holds against a limit. Where it is not kept the rule speaks (`look` in rule.ts), and kept or not it is
// shown to people as a margin (margins.ts).
import type { FigureUnit } from '../vocabulary/index.ts';

/** What is held, once for each rule. */
export interface Held {
  /** Id of the kind of figure that it is about, as it stands there; left out where what is held is stated and not worked out. */
  readonly figure?: string;
  /** In words: "stroke", "lag when opening". */
  readonly name: string;
  /** Of value and limit: SI, angles in degrees. */
  readonly unit: FigureUnit;
  /** Whether the limit is the most or the least that may be. */
  readonly way: 'most' | 'least';
  /** A value in words, where the number says nothing to anybody. */
  readonly says?: (value: number) => string;
  /** What is left or lacking in words; without it, as `says` or in the unit. */
  readonly saysLeft?: (left: number) => string;
}

export interface Bound {
  readonly held: Held;
  /** As figures name theirs: `west`, `main/T1`, nothing for the whole site. */
  readonly subject: string;
  readonly value: number;
  readonly limit: number;
  /** By how much it may be passed before the rule speaks: finer than anybody can tell. */
  readonly slack: number;
}

export const bound = (held: Held, subject: string, value: number, limit: number, slack = 0): Bound => ({
  held,
  subject,
  value,
  limit,
  slack,
});

/** Rounding in the last digits, for a limit that is compared as it stands. */
export const hair = (limit: number): number => Math.abs(limit) * 1e-9;

/** True where the value is within its limit. What is not a number is not within any. */
export const keeps = ({ held, value, limit, slack }: Bound): boolean =>
  held.way === 'most' ? value <= limit + slack : value >= limit - slack;
