import { upstreamOf } from '../../circuits/index.ts';
import type { Source } from '../../figures/index.ts';
import { allowedShare, type CableWorkings, dropOf, wholeDropOf } from '../../figures/voltage-drop/working.ts';
import { type Cable, factPlace, regimeOf } from '../../model/index.ts';
import { type Bound, bound, hair, keeps } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact, toModelFact } from '../related.ts';
import { type Hold, installationRule, type Related } from '../rule.ts';
import { quoted, written } from '../words.ts';

const byShare: Source = { text: 'BS 7671, Appendix 4, Table 4Ab', standing: 'published' };
const byMemory: Source = {
  text: 'NEC, informational notes on voltage drop, and the limits of a private supply in BS 7671 (from memory)',
  standing: 'from memory',
};

/** Share that may be lost from the origin to the load where the NEC holds: its informational notes, from memory. */
const american = 0.05;
/** Exactly nothing is nothing too, V. */
const aboveNothing = -1e-12;

const lost = { figure: 'cable.NAME.voltage-drop', name: 'voltage lost on the whole way', unit: 'V', way: 'most' } as const;
const left = { figure: 'cable.NAME.end-voltage', name: 'voltage at the end', unit: 'V', way: 'least' } as const;

export const rule = installationRule({
  name: 'voltage-drop-too-great',
  severity: 'error',
  title: 'So much voltage is lost in a cable that what it feeds may not work.',
  why: 'A drive without its voltage is weak and slow, and a sensor without its voltage drops out or, worse, reports at random.',
  remedy: 'Choose a thicker conductor or a shorter way, or place the supply nearer to the load.',
  source: {
    text: 'IEC 60228 (greatest conductor resistance), and the least voltage that the model of the load states',
    standing: 'published',
  },
  acceptable: 'warnings',
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const { carries } = cable.facts;
      const workings = dropOf(cable);
      if (carries === undefined || workings === undefined) continue;
      if (workings.mains) holdOnMains(cable, carries, workings, hold);
      else holdAtExtraLow(cable, carries, workings, hold);
    }
  },
});

type Carries = NonNullable<Cable['facts']['carries']>;

/** On the mains: what is lost up to the end of the cable, against the share that may be. */
function holdOnMains(cable: Cable, carries: Carries, workings: CableWorkings, hold: Hold): void {
  const whole = wholeDropOf(cable);
  if (whole === undefined) return;
  const site = cable.installation.site?.facts;
  const isAmerican = regimeOf(cable.installation).gauges;
  const privateSupply = site?.['private-supply'] !== undefined;
  const allowed = isAmerican ? american : allowedShare({ lighting: cable.facts.lighting !== undefined, privateSupply }, whole.length);
  const most = allowed * carries.voltage;
  hold(bound(lost, cable.name, whole.drop, most, hair(most)), factPlace(cable, carries), () => {
    const memory = isAmerican || privateSupply;
    return {
      severity: 'warning',
      what: `On the way to the end of ${quoted(cable.name)} ${shown(whole.drop)} V of ${written(carries.line, 'at')} are lost, ${shown((whole.drop / carries.voltage) * 100)} %${whole.upstream === undefined ? '' : `, with the ${shown(whole.drop - workings.drop)} V of ${quoted(whole.upstream.name)}`}; ${shown(allowed * 100)} % may be${memory ? ' (from memory)' : ''}.`,
      source: memory ? byMemory : byShare,
      related: relatedTo(cable),
    };
  });
}

/** At extra-low voltage: what is left at the end, against what the load needs; without that, against none at all. */
function holdAtExtraLow(cable: Cable, carries: Carries, workings: CableWorkings, hold: Hold): void {
  const need = needOf(cable);
  const feed = upstreamOf(cable);
  const before = feed === undefined ? undefined : dropOf(feed);
  const rest = carries.voltage - workings.reckoned - (before?.reckoned ?? 0);
  // That something is left at all is no margin worth telling; that nothing is left is one.
  if (need === undefined && rest > 0) return;
  const held = (value: number): Bound =>
    need === undefined
      ? bound(left, cable.name, value, 0, aboveNothing)
      : bound(left, cable.name, value, need.least.value, hair(need.least.value));
  hold(held(rest), factPlace(cable, carries), () => {
    // What is lost even in cold conductors is lost in any: until then it depends on how warm they get.
    const surely = !keeps(held(carries.voltage - workings.cold - (before?.cold ?? 0)));
    const needs = need === undefined ? '' : `; ${quoted(need.name)} needs ${written(need.least.line)}`;
    return {
      severity: surely || workings.isTemperatureReckoned ? 'error' : 'warning',
      what:
        rest <= 0
          ? `${quoted(cable.name)} loses ${shown(carries.voltage - rest)} V of ${written(carries.line, 'at')}: nothing is left at its end.`
          : `At the end of ${quoted(cable.name)} ${shown(rest)} V of ${written(carries.line, 'at')} are left, with the conductors at ${Math.round(workings.temperature)} °C${needs}.`,
      related: [...relatedTo(cable), ...toModelFact('the least voltage at which it works', cable.installation, need?.model, need?.least)],
    };
  });
}

/** The sensor or drive that a cable feeds, with the least voltage at which it works, as its model states it. */
function needOf({ load }: Cable) {
  if (load?.kind !== 'sensor' && load?.kind !== 'drive') return undefined;
  const { name, model } = load.it;
  const least = model?.facts['least-voltage'];
  return least === undefined ? undefined : { name, model, least };
}

const relatedTo = (cable: Cable): readonly Related[] => toFact('the length of the run', cable.facts.length);
