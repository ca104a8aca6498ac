import {
  type Chain,
  type ChainLink,
  chainOf,
  type Level,
  letterOf,
  levelFromRisk,
  levelOf,
  levelPublished,
} from '../../figures/safety-function/working.ts';
import { headPlace, type SafetyFunction } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { toFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
import { quoted } from '../words.ts';

interface Required {
  readonly level: Level;
  /** The line that asks for it; none where no line does. */
  readonly fact: Parameters<typeof toFact>[1];
  readonly says: string;
  readonly isFromMemory: boolean;
}

/** What is asked of a function: its own line, the site's, its risk, or else what is usual for gates. */
function requiredOf(of: SafetyFunction): Required | undefined {
  const site = of.installation.site?.facts;
  const stated = of.facts['required-level'] ?? site?.['required-level'];
  if (stated !== undefined)
    return { level: levelOf(stated.value), fact: stated, says: `PL ${stated.value} is required here`, isFromMemory: false };
  const { risk } = of.facts;
  if (risk !== undefined) {
    const level = levelFromRisk(risk.severity === 'serious', risk.exposure === 'often', risk.avoidance === 'unavoidable');
    return { level, fact: risk, says: `the stated risk asks for PL ${letterOf(level)} (from memory)`, isFromMemory: true };
  }
  if (site?.rules?.value !== 'europe') return undefined;
  return { level: 3, fact: undefined, says: 'PL c is usual for gates (from memory)', isFromMemory: true };
}

const inWords = (level: Level): string => (level === 0 ? 'no performance level' : `PL ${letterOf(level)}`);

const held = {
  figure: 'function.NAME.performance-level',
  name: 'performance level',
  unit: '1',
  way: 'least',
  says: (level: number) => inWords(level as Level),
  saysLeft: (levels: number) => (levels === 1 ? 'one level' : `${levels} levels`),
} as const;

export const rule = installationRule({
  name: 'performance-level-too-low',
  severity: 'error',
  title: 'A safety function does not reach the performance level that it must reach.',
  why: 'It fails dangerously more often than the risk allows, and nobody notices until somebody is caught.',
  remedy: 'Use parts of a higher level, a second channel or a test for the weakest part, or fewer parts in the chain.',
  source: {
    text: 'EN ISO 13849-1: the level of a function is that of its failures an hour, and none better than that of any part',
    standing: 'published',
  },
  acceptable: 'warnings',
  holds: ({ functions }, hold) => {
    for (const of of functions) {
      const chain = chainOf(of);
      const required = chain.links.length === 0 ? undefined : requiredOf(of);
      if (required !== undefined)
        hold(bound(held, of.name, chain.atBest, required.level), headPlace(of), () => reportOf(of, chain, required));
    }
  },
});

function reportOf(of: SafetyFunction, chain: Chain, required: Required): Omit<Report, 'at'> {
  const surely = Math.min(levelPublished(chain.pfhdAtLeast), chain.declared ?? 5) as Level;
  const isSure = !required.isFromMemory && surely < required.level;
  const weakest = isSure ? surestOf(chain, surely) : weakestOf(chain);
  const related = [...toFact('the weakest part', { line: weakest.at }), ...toFact('the level asked for', required.fact)];
  return isSure
    ? { severity: 'error', what: saidSurely(of, chain, surely, required, weakest), related }
    : {
        severity: 'warning',
        what: said(of, chain, required, weakest),
        related,
        source: { text: 'EN ISO 13849-1, Annex A and Annex K; EN 12453:2017, 5.1.2 (from memory)', standing: 'from memory' },
      };
}

function said(of: SafetyFunction, chain: Chain, required: Required, weakest: ChainLink): string {
  const isBounded = weakest.reckoned === undefined && weakest.because !== '';
  const hedge = required.isFromMemory ? '' : isBounded ? ' at the worst' : ' (from memory: the table or a limit of the standard)';
  const because = weakest.because === '' ? '' : `, because ${weakest.because}`;
  return `The function ${quoted(of.name)} reaches ${inWords(chain.atBest)}${hedge}, but ${required.says}: ${quoted(weakest.what)} has ${inWords(weakest.level)}${because}.`;
}

/** Only what makers declare and what published relations give; what else is reckoned stands in brackets. */
function saidSurely(of: SafetyFunction, chain: Chain, surely: Level, required: Required, weakest: ChainLink): string {
  const worse = chain.atBest < surely ? ` (${inWords(chain.atBest)} when reckoned in full, from memory)` : '';
  const why =
    weakest.declared === surely
      ? `${quoted(weakest.what)} is declared as ${inWords(surely)}`
      : `it fails dangerously at least ${chain.pfhdAtLeast.toExponential(2)} times an hour, ${chain.links.length === 1 ? 'by' : 'mostly by'} ${quoted(weakest.what)}`;
  return `The function ${quoted(of.name)} reaches no more than ${inWords(surely)}${worse}, but ${required.says}: ${why}.`;
}

/** The link that shows it most clearly: the one that is declared so low, or else the one that surely fails most often. */
function surestOf({ links }: Chain, surely: Level): ChainLink {
  let surest = links[0] as ChainLink;
  for (const link of links) {
    if (link.declared === surely) return link;
    if (link.pfhdAtLeast > surest.pfhdAtLeast) surest = link;
  }
  return surest;
}

/** The link of the lowest level, and among those the one that fails most often. */
function weakestOf({ links }: Chain): ChainLink {
  let weakest = links[0] as ChainLink;
  for (const link of links) if (link.level < weakest.level || (link.level === weakest.level && link.pfhd > weakest.pfhd)) weakest = link;
  return weakest;
}
