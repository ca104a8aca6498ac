import { isMains } from '../../circuits/index.ts';
import { fusingCurrent, protectedBy, tripsAt } from '../../figures/loop-impedance/working.ts';
import { electrodeLimit, isOnElectrode, touchLimit, touchVoltage, unstableFrom } from '../../figures/residual-current/working.ts';
import { type Cable, factPlace, type Installation, type Site } from '../../model/index.ts';
import { type Bound, bound, hair, keeps } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { lost } from '../unread.ts';
import { ohmsInWords, quoted, written } from '../words.ts';

const held = { figure: 'cable.NAME.electrode-limit', name: 'earth electrode', unit: 'ohm', way: 'most' } as const;

type Electrode = NonNullable<Site['facts']['earth-electrode']>;
type Residual = NonNullable<Cable['facts']['residual-current']>;

export const rule = installationRule({
  name: 'residual-current-device-unfit',
  severity: 'error',
  title: 'On an earth electrode a fault is not cut off: there is no residual-current device, or the electrode is too poor for it.',
  why: 'An electrode lets too little current flow to trip a breaker. Without a residual-current device that trips in time, metal that people touch stays live.',
  remedy: 'Fit a residual-current device of a smaller rated residual current, or improve the electrode.',
  source: { text: 'BS 7671, 411.5.3 and Table 41.5', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    const electrode = installation.site?.facts['earth-electrode'];
    for (const cable of onElectrode(installation)) {
      const residual = cable.facts['residual-current'];
      if (residual === undefined) checkWithout(cable, electrode, report);
      else if (electrode !== undefined) checkStable(cable, electrode, residual, report);
    }
  },
  holds: (installation, hold) => {
    const electrode = installation.site?.facts['earth-electrode'];
    if (electrode === undefined) return;
    for (const cable of onElectrode(installation)) {
      const residual = cable.facts['residual-current'];
      if (residual === undefined) continue;
      const resistance = boundOf(cable, electrode, residual);
      hold(resistance, residual.line, () => ({
        what: `The earth electrode has ${written(electrode.line)}; a residual-current device of ${written(residual.line)} needs at most ${ohmsInWords(resistance.limit)}, or ${shown(touchVoltage(electrode.value, residual.value))} V may stay on metal that people touch where ${touchLimit} V may.`,
        related: relatedTo(cable),
      }));
    }
  },
});

/** The mains cables of an installation whose faults flow through an electrode. */
const onElectrode = (installation: Installation): readonly Cable[] =>
  isOnElectrode(installation) ? installation.cables.filter(isMains) : [];

/** The electrode against what the residual-current device of a cable needs. */
function boundOf(cable: Cable, electrode: Electrode, residual: Residual): Bound {
  const limit = electrodeLimit(residual.value);
  return bound(held, cable.name, electrode.value, limit, hair(limit));
}

function checkStable(cable: Cable, electrode: Electrode, residual: Residual, report: (report: Report) => void): void {
  if (electrode.value <= unstableFrom || !keeps(boundOf(cable, electrode, residual))) return;
  report({
    at: electrode.line,
    severity: 'warning',
    what: `The earth electrode has ${written(electrode.line)}; above ${unstableFrom} ohm it may not be stable, as soil dries and freezes.`,
    why: 'It is enough for the residual-current device today and may not be in a dry summer.',
    remedy: 'Drive the electrode deeper or add another one, and measure again.',
    related: toFact('the device that depends on it', residual),
  });
}

function checkWithout(cable: Cable, electrode: Electrode | undefined, report: (report: Report) => void): void {
  const { breaker, fuse } = cable.facts;
  if (breaker === undefined && fuse === undefined && cable.load?.kind !== 'panel') return;
  const cables = protectedBy(cable);
  if (cables.some(mayHaveDevice)) return;
  const limit = Math.max(...cables.map(overcurrentLimit));
  const isWithin = electrode !== undefined && electrode.value <= limit;
  if (isWithin && cables.some(({ facts }) => facts.breaker !== undefined && electrode.value <= breakerLimit(facts.breaker))) return;
  report({
    at: factPlace(cable, breaker ?? fuse),
    severity: isWithin ? 'warning' : 'error',
    what:
      electrode === undefined || limit === 0 || isWithin
        ? `${quoted(cable.name)} is on an earth electrode, and no residual-current device is stated for it${isWithin ? '; how soon its fuse melts is not worked out' : ''}.`
        : `${quoted(cable.name)} has no residual-current device, and its ${breaker === undefined ? 'fuse' : 'breaker'} would need an earth electrode of at most ${ohmsInWords(limit)}; this one has ${written(electrode.line)}.`,
    remedy: 'Fit a residual-current device and state it with “residual-current 30 mA” or what it is rated for.',
    related: relatedTo(cable),
  });
}

type Breaker = NonNullable<Cable['facts']['breaker']>;

/** Greatest electrode, ohm, that lets enough current flow to trip a breaker at once. */
const breakerLimit = ({ curve, rating }: Breaker): number => touchLimit / (tripsAt[curve] * rating);

/** Greatest electrode, ohm, with which the breaker of a cable trips at once or its fuse melts at all; 0 without either. */
const overcurrentLimit = ({ facts: { breaker, fuse } }: Cable): number =>
  Math.max(breaker === undefined ? 0 : breakerLimit(breaker), fuse === undefined ? 0 : touchLimit / fusingCurrent(fuse.rating));

/** True where a residual-current device is stated, or the line that states it may be one that could not be read. */
const mayHaveDevice = ({ facts, unread }: Cable): boolean =>
  facts['residual-current'] !== undefined || lost(unread, 'cable', 'residual-current');

function relatedTo({ installation }: Cable): readonly Related[] {
  const facts = installation.site?.facts;
  return [...toFact('how the supply is earthed', facts?.earthing), ...toFact('the earth electrode', facts?.['earth-electrode'])];
}
