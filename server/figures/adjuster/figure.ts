import type { Adjuster, Installation, Panel } from '../../model/index.ts';
import { fallback } from '../common.ts';
import { inDegrees, type FigureKind } from '../figure.ts';
import { perSubject } from '../memo.ts';
import { positionFor, turnInWords } from './maths.ts';

export interface Setting {
  readonly panel: Panel;
  readonly adjuster: Adjuster;
  /** The value that the motion asks for, in SI, and the line that does. */
  readonly value: number;
  readonly line: { readonly start: number; readonly end: number };
  /** Share of the adjuster's sweep from its low stop; undefined where the value is outside its range. */
  readonly position: number | undefined;
  /** Angle between the stops, radians. */
  readonly sweep: number;
}

/** Each adjuster of each panel for which the motion asks something. */
export const settingsOf = perSubject((installation: Installation): readonly Setting[] => {
  const settings: Setting[] = [];
  for (const panel of installation.panels)
    for (const adjuster of panel.model?.adjusters ?? none) {
      const range = adjuster.facts.range?.value;
      const asked = askedOf(installation, adjuster);
      if (range === undefined || asked === undefined || range.dimension !== asked.dimension) continue;
      const curve = adjuster.facts.curve?.value ?? 'linear';
      settings.push({
        panel,
        adjuster,
        value: asked.value,
        line: asked.line,
        position: positionFor({ low: range.low, high: range.high, curve }, asked.value),
        sweep: adjuster.facts.sweep?.value ?? fallback.sweep,
      });
    }
  return settings;
}) as (installation: Installation) => readonly Setting[];

const none: readonly never[] = [];

interface Asked {
  readonly value: number;
  readonly dimension: 'time' | 'ratio';
  readonly line: { readonly start: number; readonly end: number };
}

function askedOf({ motion }: Installation, adjuster: Adjuster): Asked | undefined {
  const facts = motion?.facts;
  const of = (fact: { readonly line: { readonly start: number; readonly end: number } } | undefined, value: number | undefined, dimension: 'time' | 'ratio'): Asked | undefined =>
    fact === undefined || value === undefined ? undefined : { value, dimension, line: fact.line };
  switch (adjuster.facts.sets?.value) {
    case 'dwell':
      return of(facts?.dwell, facts?.dwell?.value, 'time');
    case 'seat':
      return of(facts?.seat, facts?.seat?.value, 'time');
    case 'speed':
      return of(facts?.speed, facts?.speed?.value, 'ratio');
    case 'force':
      return of(facts?.force, facts?.force?.value, 'ratio');
    case 'slow-zone':
      return of(facts?.['slow-zone'], facts?.['slow-zone']?.last, 'ratio');
    case 'lag-opening':
    case 'lag-closing': {
      const movement = adjuster.facts.sets.value === 'lag-opening' ? 'opening' : 'closing';
      const lag = facts?.lag.find((each) => each.movement === movement);
      return of(lag, lag?.time, 'time');
    }
    case undefined:
      return undefined;
  }
}

export const figures: readonly FigureKind[] = [
  {
    id: 'panel.PANEL.adjuster.NAME',
    title: 'Where to set the adjuster, as a share of its sweep from the low stop',
    unit: '1',
    topic: 'settings',
    formula: 'linear: (value − low) / (high − low); logarithmic: ln(value / low) / ln(high / low)',
    source: { text: 'the curve that the panel’s model states', standing: 'derived' },
    changedBy: 'the value asked for in motion',
    work: (installation, give) => {
      for (const setting of settingsOf(installation)) {
        const { position, adjuster, panel, sweep } = setting;
        if (position === undefined) continue;
        const range = adjuster.facts.range?.value;
        const unit = range?.dimension === 'time' ? 's' : '1';
        give(
          `${panel.name}/${adjuster.name}`,
          position,
          setting.line,
          () => [
            { name: 'value asked for', value: setting.value, unit },
            { name: 'at the low stop', value: range?.low ?? 0, unit, from: `panel-model ${panel.model?.name ?? ''}` },
            { name: 'at the high stop', value: range?.high ?? 0, unit, from: `panel-model ${panel.model?.name ?? ''}` },
            { name: 'sweep', value: inDegrees(sweep), unit: 'deg', from: `panel-model ${panel.model?.name ?? ''}` },
          ],
          () => `${adjuster.name} ${turnInWords(position, sweep) ?? ''}`.trim(),
        );
      }
    },
  },
];
