import { type Adjuster, type Installation, type Motion, type Panel, perSubject } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { positionFor, turnInWords } from './maths.ts';

export interface Setting {
  readonly panel: Panel;
  readonly adjuster: Adjuster;
  /** The value that the motion asks for, in SI, and the line that does. */
  readonly value: number;
  readonly unit: 's' | '1';
  /** What the adjuster sets at its low and at its high stop. */
  readonly low: number;
  readonly high: number;
  readonly line: { readonly start: number; readonly end: number };
  /** Share of the adjuster's sweep from its low stop; undefined where the value is outside its range. */
  readonly position: number | undefined;
  /** Angle between the stops, radians. */
  readonly sweep: number;
}

/** Each adjuster of each panel for which the motion asks something. */
export const settingsOf = perSubject((installation: Installation): readonly Setting[] => {
  const { motion } = installation;
  if (motion === undefined) return none;
  const settings: Setting[] = [];
  for (const panel of installation.panels)
    for (const adjuster of panel.model?.adjusters ?? none) {
      const range = adjuster.facts.range?.value;
      const asked = askedOf(motion, adjuster);
      if (range === undefined || asked === undefined || range.dimension !== asked.dimension) continue;
      settings.push({
        panel,
        adjuster,
        value: asked.value,
        unit: asked.dimension === 'time' ? 's' : '1',
        low: range.low,
        high: range.high,
        line: asked.line,
        position: positionOf(adjuster, range, asked.value),
        sweep: sweepOf(adjuster),
      });
    }
  return settings;
});

const none: readonly never[] = [];

interface Asked {
  readonly value: number;
  readonly dimension: 'time' | 'ratio';
  readonly line: { readonly start: number; readonly end: number };
}

type Place = Asked['line'];

const inTime = (fact: { readonly value: number; readonly line: Place } | undefined): Asked | undefined =>
  fact === undefined ? undefined : { value: fact.value, dimension: 'time', line: fact.line };
const asShare = (fact: { readonly value: number; readonly line: Place } | undefined): Asked | undefined =>
  fact === undefined ? undefined : { value: fact.value, dimension: 'ratio', line: fact.line };

function askedOf({ facts }: Motion, adjuster: Adjuster): Asked | undefined {
  switch (adjuster.facts.sets?.value) {
    case 'dwell':
      return inTime(facts.dwell);
    case 'seat':
      return inTime(facts.seat);
    case 'speed':
      return asShare(facts.speed);
    case 'force':
      return asShare(facts.force);
    case 'slow-zone': {
      const zone = facts['slow-zone'];
      return zone === undefined ? undefined : { value: zone.last, dimension: 'ratio', line: zone.line };
    }
    case 'lag-opening':
      return lagOf(facts, 'opening');
    case 'lag-closing':
      return lagOf(facts, 'closing');
    case undefined:
      return undefined;
  }
}

function lagOf({ lag }: Motion['facts'], movement: 'opening' | 'closing'): Asked | undefined {
  for (const each of lag) if (each.movement === movement) return { value: each.time, dimension: 'time', line: each.line };
  return undefined;
}

/** Where an adjuster stands for a value, as a share 0 to 1 of its sweep from the low stop; undefined outside its range. */
export function positionOf(adjuster: Adjuster, range: { readonly low: number; readonly high: number }, value: number): number | undefined {
  return positionFor({ low: range.low, high: range.high, curve: adjuster.facts.curve?.value ?? 'linear' }, value);
}

const usualSweep = blocks['panel-model'].blocks.adjuster.lines.sweep.slots.value.fallback;
/** Angle between the stops, radians. */
const sweepOf = (adjuster: Adjuster): number => adjuster.facts.sweep?.value ?? usualSweep;

/** How far that is for a hand and an eye: “about a quarter turn from the low stop”. */
export const turnOf = (adjuster: Adjuster, position: number): string => turnInWords(position, sweepOf(adjuster)) ?? '';
