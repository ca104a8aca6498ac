import { upstreamOf } from '../../figures/cables.ts';
import { allowedShare } from '../../figures/voltage-drop/maths.ts';
import { dropOf, wholeDropOf, type CableWorkings } from '../../figures/voltage-drop/figure.ts';
import type { Source } from '../../figures/index.ts';
import { factPlace, type Cable } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { inModel, written } from '../wiring.ts';
import { quoted } from '../words.ts';

const byShare: Source = { text: 'BS 7671, Appendix 4, Table 4Ab', standing: 'published' };
const byMemory: Source = { text: 'NEC, informational notes on voltage drop, and the limits of a private supply in BS 7671 (from memory)', standing: 'from memory' };

const lost = { figure: 'cable.NAME.voltage-drop', name: 'voltage lost on the whole way', unit: 'V', way: 'most' } as const;
const left = { figure: 'cable.NAME.end-voltage', name: 'voltage at the end', unit: 'V', way: 'least' } as const;

/** On the mains: what is lost up to the end of the cable, against the share that may be. */
function lossOf(cable: Cable): Bound | undefined {
  const whole = wholeDropOf(cable);
  const { carries } = cable.facts;
  if (whole === undefined || carries === undefined) return undefined;
  const site = cable.installation.site?.facts;
  const lighting = cable.facts.lighting !== undefined;
  const privateSupply = site?.['private-supply'] !== undefined;
  const allowed = site?.rules?.value === 'north-america' ? allowedShare({ lighting: false, privateSupply: false }, 0) : allowedShare({ lighting, privateSupply }, whole.length);
  const most = allowed * carries.voltage;
  return bound(lost, cable.name, whole.drop, most, hair(most));
}

/** At extra-low voltage: what is left at the end, against what the load needs; without that, against none at all. */
function restOf(cable: Cable, workings: CableWorkings): Bound | undefined {
  const { carries } = cable.facts;
  if (carries === undefined) return undefined;
  const feed = upstreamOf(cable);
  const rest = carries.voltage - workings.reckoned - ((feed === undefined ? undefined : dropOf(feed))?.reckoned ?? 0);
  const least = leastOf(cable)?.value ?? 0;
  return bound(left, cable.name, rest, least, least > 0 ? hair(least) : -1e-12);
}

/** The least voltage at which the load of a cable works, as its model states it. */
function leastOf({ load }: Cable) {
  return load?.kind === 'sensor' || load?.kind === 'drive' ? load.it.model?.facts['least-voltage'] : undefined;
}

export const rule = installationRule({
  name: 'voltage-drop-too-great',
  severity: 'error',
  title: 'So much voltage is lost in a cable that what it feeds may not work.',
  why: 'A drive without its voltage is weak and slow, and a sensor without its voltage drops out or, worse, reports at random.',
  remedy: 'Choose a thicker conductor or a shorter way, or place the supply nearer to the load.',
  source: { text: 'IEC 60228 (greatest conductor resistance), and the least voltage that the model of the load states', standing: 'published' },
  acceptable: true,
  check: (installation, report) => {
    for (const cable of installation.cables) {
      const workings = dropOf(cable);
      if (workings === undefined) continue;
      if (workings.mains) checkMains(cable, report);
      else checkExtraLow(cable, workings, report);
    }
  },
  margins: ({ cables }, give) => {
    for (const cable of cables) {
      const workings = dropOf(cable);
      const voltage = workings === undefined ? undefined : workings.mains ? lossOf(cable) : restOf(cable, workings);
      // That something must be left is no margin worth telling; that nothing is left is one.
      if (voltage !== undefined && (voltage.limit > 0 || !keeps(voltage))) give(voltage, factPlace(cable, cable.facts.carries));
    }
  },
});

function checkMains(cable: Cable, report: (report: Report) => void): void {
  const whole = wholeDropOf(cable);
  const { carries } = cable.facts;
  if (whole === undefined || carries === undefined) return;
  const site = cable.installation.site?.facts;
  const loss = lossOf(cable);
  if (loss === undefined || keeps(loss)) return;
  const privateSupply = site?.['private-supply'] !== undefined;
  const american = site?.rules?.value === 'north-america';
  const allowed = loss.limit / carries.voltage;
  const share = whole.drop / carries.voltage;
  const memory = american || privateSupply;
  report({
    at: factPlace(cable, carries),
    severity: 'warning',
    what: `On the way to the end of ${quoted(cable.name)} ${shown(whole.drop)} V of ${written(carries.line, 'at')} are lost, ${shown(share * 100)} %${whole.upstream === undefined ? '' : `, with the ${shown(whole.drop - (dropOf(cable)?.drop ?? 0))} V of ${quoted(whole.upstream.name)}`}; ${shown(allowed * 100)} % may be${memory ? ' (from memory)' : ''}.`,
    source: memory ? byMemory : byShare,
    related: relatedTo(cable),
  });
}

function checkExtraLow(cable: Cable, workings: CableWorkings, report: (report: Report) => void): void {
  const { carries } = cable.facts;
  if (carries === undefined) return;
  const load = cable.load;
  const model = load?.kind === 'sensor' || load?.kind === 'drive' ? load.it.model : undefined;
  const least = leastOf(cable);
  const rest = restOf(cable, workings);
  if (rest === undefined || keeps(rest)) return;
  const floor = rest.limit;
  const feed = upstreamOf(cable);
  const before = feed === undefined ? undefined : dropOf(feed);
  const drop = workings.reckoned + (before?.reckoned ?? 0);
  // What is lost even in cold conductors is lost in any: until then it depends on how warm they get.
  const surely = carries.voltage - workings.cold - (before?.cold ?? 0) < floor || workings.cold + (before?.cold ?? 0) >= carries.voltage;
  const left = rest.value;
  report({
    at: factPlace(cable, carries),
    severity: surely || workings.isTemperatureReckoned ? 'error' : 'warning',
    what:
      left <= 0
        ? `${quoted(cable.name)} loses ${shown(drop)} V of ${written(carries.line, 'at')}: nothing is left at its end.`
        : `At the end of ${quoted(cable.name)} ${shown(left)} V of ${written(carries.line, 'at')} are left, with the conductors at ${Math.round(workings.temperature)} °C; ${quoted(load?.it.name ?? '')} needs ${least === undefined ? '' : written(least.line)}.`,
    related: [...relatedTo(cable), ...(model === undefined || least === undefined ? [] : [inModel(model, cable.installation, least.line, 'the least voltage at which it works')])],
  });
}

const relatedTo = (cable: Cable): Related[] => [cable.facts.length?.line].flatMap((line) => (line === undefined ? [] : [{ message: 'the length of the run', start: line.start, end: line.end }]));
