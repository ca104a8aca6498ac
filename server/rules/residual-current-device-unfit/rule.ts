import { isMains, upstreamOf } from '../../figures/cables.ts';
import { tripsAt } from '../../figures/loop-impedance/maths.ts';
import { isOnElectrode } from '../../figures/residual-current/figure.ts';
import { electrodeLimit, touchLimit, touchVoltage, unstableFrom } from '../../figures/residual-current/maths.ts';
import { factPlace, type Cable, type Site } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { ohmsInWords, written } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = { figure: 'cable.NAME.electrode-limit', name: 'earth electrode', unit: 'ohm', way: 'most' } as const;

/** The electrode against what the residual-current device of a cable needs. */
function boundOf(cable: Cable, site: Site | undefined): Bound | undefined {
  const residual = cable.facts['residual-current'];
  const electrode = site?.facts['earth-electrode'];
  if (residual === undefined || electrode === undefined) return undefined;
  const limit = electrodeLimit(residual.value);
  return bound(held, cable.name, electrode.value, limit, hair(limit));
}

export const rule = installationRule({
  name: 'residual-current-device-unfit',
  severity: 'error',
  title: 'On an earth electrode a fault is not cut off: there is no residual-current device, or the electrode is too poor for it.',
  why: 'An electrode lets too little current flow to trip a breaker. Without a residual-current device that trips in time, metal that people touch stays live.',
  remedy: 'Fit a residual-current device of a smaller rated residual current, or improve the electrode.',
  source: { text: 'BS 7671, 411.5.3 and Table 41.5', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    if (!isOnElectrode(installation)) return;
    const { site, cables } = installation;
    for (const cable of cables) {
      if (isMains(cable) !== true) continue;
      const residual = cable.facts['residual-current'];
      if (residual === undefined) checkWithout(cable, site, report);
      else checkWith(cable, residual, site, report);
    }
  },
  margins: (installation, give) => {
    if (!isOnElectrode(installation)) return;
    for (const cable of installation.cables) {
      const resistance = isMains(cable) === true ? boundOf(cable, installation.site) : undefined;
      if (resistance !== undefined) give(resistance, factPlace(cable, cable.facts['residual-current']));
    }
  },
});

function checkWith(cable: Cable, residual: NonNullable<Cable['facts']['residual-current']>, site: Site | undefined, report: (report: Report) => void): void {
  const electrode = site?.facts['earth-electrode'];
  if (electrode === undefined) return;
  const resistance = boundOf(cable, site);
  const at = factPlace(cable, residual);
  if (resistance !== undefined && !keeps(resistance))
    report({
      at,
      what: `The earth electrode has ${written(electrode.line)}; a residual-current device of ${written(residual.line)} needs at most ${ohmsInWords(resistance.limit)}, or ${shown(touchVoltage(electrode.value, residual.value))} V may stay on metal that people touch where ${touchLimit} V may.`,
      related: relatedTo(site),
    });
  else if (electrode.value > unstableFrom)
    report({
      at: { start: electrode.line.start, end: electrode.line.end },
      severity: 'warning',
      what: `The earth electrode has ${written(electrode.line)}; above ${unstableFrom} ohm it may not be stable, as soil dries and freezes.`,
      why: 'It is enough for the residual-current device today and may not be in a dry summer.',
      remedy: 'Drive the electrode deeper or add another one, and measure again.',
      related: [{ message: 'the device that depends on it', start: residual.line.start, end: residual.line.end }],
    });
}

function checkWithout(cable: Cable, site: Site | undefined, report: (report: Report) => void): void {
  const { breaker, fuse } = cable.facts;
  if ((breaker === undefined && fuse === undefined && cable.load?.kind !== 'panel') || cable.unread.includes('residual-current')) return;
  if (upstreamOf(cable)?.facts['residual-current'] !== undefined) return;
  const electrode = site?.facts['earth-electrode'];
  const limit = breaker === undefined ? undefined : touchLimit / (tripsAt[breaker.curve] * breaker.rating);
  if (electrode !== undefined && limit !== undefined && electrode.value <= limit) return;
  const surely = electrode !== undefined && limit !== undefined;
  report({
    at: factPlace(cable, breaker ?? fuse),
    severity: surely ? 'error' : 'warning',
    what: surely
      ? `${quoted(cable.name)} has no residual-current device, and its breaker would need an earth electrode of at most ${ohmsInWords(limit)}; this one has ${written(electrode.line)}.`
      : `${quoted(cable.name)} is on an earth electrode, and no residual-current device is stated for it.`,
    remedy: 'Fit a residual-current device and state it with “residual-current 30 mA” or what it is rated for.',
    related: relatedTo(site),
  });
}

function relatedTo(site: Site | undefined): Related[] {
  const { 'earth-electrode': electrode, earthing } = site?.facts ?? {};
  return [
    ...(earthing === undefined ? [] : [{ message: 'how the supply is earthed', start: earthing.line.start, end: earthing.line.end }]),
    ...(electrode === undefined ? [] : [{ message: 'the earth electrode', start: electrode.line.start, end: electrode.line.end }]),
  ];
}
