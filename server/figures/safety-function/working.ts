import {
  type FunctionPart,
  factPlace,
  headPlace,
  type Load,
  perSubject,
  type SafetyFunction,
  type Site,
  type Subsystem,
} from '../../model/index.ts';
import { type Blocks, blocks, type Facts } from '../../vocabulary/index.ts';
import { typical } from './annex.ts';
import {
  averageCoverage,
  type Category,
  cap,
  inSeries,
  type Level,
  leastPfhdOf,
  levelFromPfhd,
  levelOf,
  mostPfhdOf,
  mttfdFromB10d,
  type Reckoned,
  reckon,
  singleChannelPfhd,
  t10d,
} from './maths.ts';

export { leastCommonCause, missionTime } from './annex.ts';
export { type Level, letterOf, levelFromRisk, levelOf, levelPublished } from './maths.ts';

type Declared = Pick<
  Facts<Blocks['panel-model']>,
  'pfhd' | 'performance-level' | 'category' | 'mttfd' | 'b10d' | 'coverage' | 'common-cause'
>;
interface Place {
  readonly start: number;
  readonly end: number;
}

/** A part that wears by switching. */
export interface Wearing {
  readonly what: string;
  readonly b10d: number;
  readonly isFromMemory: boolean;
  /** A tenth have failed after so many years. */
  readonly years: number;
  /** The day since which it wears, where the file says. */
  readonly since: string | undefined;
  readonly at: Place;
}

interface Component {
  readonly what: string;
  readonly mttfd: number;
  readonly coverage: number;
}

/** One link of a safety function's chain. */
export interface ChainLink {
  readonly what: string;
  readonly at: Place;
  readonly pfhd: number;
  readonly level: Level;
  /** What is sure of its failures an hour by published relations and declared numbers alone; 0 where nothing is. */
  readonly pfhdAtLeast: number;
  /** The level that its maker declares. */
  readonly declared: Level | undefined;
  /** Mean time of a channel as it counts: capped, and one for two. */
  readonly mttfd: number | undefined;
  /** What it consists of, each with its own mean time; none where that is not known. */
  readonly components: readonly Component[];
  /** Why it is not better than that; empty where nothing stands in the way. */
  readonly because: string;
  /** How its number was found; undefined where its maker declares it. */
  readonly reckoned: Reckoned | undefined;
}

/** What lacks before a function can be worked out. */
export interface Lack {
  /** The part or subsystem; empty for the function itself. */
  readonly what: string;
  /** The rest of the sentence; empty where something else was already reported. */
  readonly says: string;
  readonly at: Place;
}

export interface Chain {
  readonly links: readonly ChainLink[];
  readonly lacks: readonly Lack[];
  readonly wearing: readonly Wearing[];
  /** The level that the links known so far still allow: what lacks can only make it worse. */
  readonly atBest: Level;
  /** Undefined while something lacks. */
  readonly pfhd: number | undefined;
  readonly level: Level | undefined;
  /** By published relations and declared numbers alone. */
  readonly pfhdAtLeast: number;
  /** The lowest level that a maker declares in it. */
  readonly declared: Level | undefined;
  readonly mttfd: number | undefined;
  readonly coverage: number | undefined;
}

const year = 8760 * 3600;
export const allYear = blocks.site.lines['days-in-use'].slots.value.fallback;

export const inYear = (cycles: number, days: number = allYear): number => cycles * 86_400 * days;

/** Cycles of the gate a year; undefined where the site does not say how many it makes a day. */
export const operationsOf = (site: Site | undefined): number | undefined => {
  const cycles = site?.facts.cycles;
  return cycles === undefined ? undefined : inYear(cycles.value, site?.facts['days-in-use']?.value);
};

/** The chain of a safety function with all that can be said of it. */
export const chainOf = perSubject((of: SafetyFunction): Chain => {
  const { site } = of.installation;
  const work: Work = { operations: operationsOf(site), installed: site?.facts.installed?.value, links: [], lacks: [], wearing: [] };
  for (const part of of.parts) addPart(work, part);
  for (const subsystem of of.subsystems) addSubsystem(work, subsystem);
  const { links, lacks, wearing } = work;
  if (links.length === 0 && lacks.length === 0) lacks.push({ what: '', says: 'it names no parts', at: headPlace(of) });
  const isWhole = lacks.length === 0;
  let pfhd = 0;
  let pfhdAtLeast = 0;
  let level: Level = 5;
  let declared: Level | undefined;
  for (const link of links) {
    pfhd += link.pfhd;
    pfhdAtLeast += link.pfhdAtLeast;
    if (link.level < level) level = link.level;
    if (link.declared !== undefined && link.declared < (declared ?? 6)) declared = link.declared;
  }
  level = Math.min(level, levelFromPfhd(pfhd)) as Level;
  const means = links.flatMap(({ mttfd }) => (mttfd === undefined ? [] : [mttfd]));
  const isKnown = isWhole && means.length === links.length;
  return {
    links,
    lacks,
    wearing,
    pfhd: isWhole ? pfhd : undefined,
    level: isWhole ? level : undefined,
    atBest: level,
    pfhdAtLeast,
    declared,
    mttfd: isKnown ? inSeries(means) : undefined,
    coverage:
      isKnown && links.every(({ components }) => components.length > 0)
        ? averageCoverage(links.flatMap(({ components }) => components))
        : undefined,
  };
}) as (of: SafetyFunction) => Chain;

const noCycles = 'wears by switching, and the site does not say how many “cycles” a day the gate makes';

interface Work {
  readonly operations: number | undefined;
  readonly installed: string | undefined;
  readonly links: ChainLink[];
  readonly lacks: Lack[];
  readonly wearing: Wearing[];
}

/** What the maker of a device declares of it; undefined for a control, and for a device without a model. */
export const declaredOf = (load: Load): Declared | undefined => (load.kind === 'control' ? undefined : load.it.model?.facts);

function addPart(work: Work, { at, it: load }: FunctionPart): void {
  // A name that leads nowhere was reported where it stands, and so was a model.
  const what = at.text;
  const lack = (says: string): void => void work.lacks.push({ what, says, at });
  if (load === undefined) return lack('');
  if (load.kind === 'control') return lack('is a control, and has to stand as an component of a subsystem, with what its maker declares');
  const facts = declaredOf(load);
  if (facts === undefined) return lack(load.it.modelAt === undefined ? 'has no model' : '');
  const relay = load.kind === 'panel' ? load.it.model?.facts['output-relay']?.value : undefined;
  const b10d = facts.b10d?.value ?? (relay === undefined ? undefined : typical[relay].b10d);
  const isFromMemory = facts.b10d === undefined && b10d !== undefined;
  if (b10d !== undefined) wears(work, { what, b10d, isFromMemory, times: 1, since: load.it.facts.fitted?.value, at: headPlace(load.it) });
  const means: number[] = facts.mttfd === undefined ? [] : [facts.mttfd.value / year];
  if (b10d !== undefined && work.operations !== undefined) means.push(mttfdFromB10d(b10d, work.operations));
  const mean = inSeries(means);
  const coverage = facts.coverage?.value ?? 0;
  const declared = facts['performance-level'] === undefined ? undefined : levelOf(facts['performance-level'].value);
  if (facts.pfhd !== undefined || declared !== undefined) {
    const pfhd = facts.pfhd === undefined ? mostPfhdOf(declared as Level) : facts.pfhd.value * 3600;
    const pfhdAtLeast = facts.pfhd === undefined ? leastPfhdOf(declared as Level) : pfhd;
    // Of what is declared as a whole, only what is stated beside it is known, and that only with all that wears in it.
    const stated = facts.mttfd === undefined || (b10d !== undefined && work.operations === undefined) ? undefined : mean;
    work.links.push({
      what,
      at,
      pfhd,
      pfhdAtLeast,
      level: Math.min(declared ?? 5, levelFromPfhd(pfhd)) as Level,
      declared,
      mttfd: stated === undefined ? undefined : Math.min(stated, cap((facts.category?.value ?? 0) as Category)),
      components: stated === undefined || facts.coverage === undefined ? [] : [{ what, mttfd: stated, coverage }],
      because: facts.pfhd === undefined ? 'only its level is declared, so the worst of it counts' : '',
      reckoned: undefined,
    });
    return;
  }
  if (b10d !== undefined && work.operations === undefined) return lack(noCycles);
  if (mean === undefined) return lack('has a model that declares none of “pfhd”, “performance-level”, “mttfd” and “b10d”');
  const category = (facts.category?.value ?? 0) as Category;
  // Whoever declares category 2 for a product has met its conditions on testing; they cannot be seen from outside.
  const reckoned = reckon({
    category,
    first: mean,
    second: category >= 3 ? mean : undefined,
    coverage,
    commonCause: facts['common-cause']?.value,
    tests: Infinity,
    tester: Infinity,
  });
  work.links.push(linkOf(what, at, reckoned, category, mean, isFromMemory, [{ what, mttfd: mean, coverage }]));
}

function addSubsystem(work: Work, subsystem: Subsystem): void {
  const at = headPlace(subsystem);
  const category = (subsystem.facts.category?.value ?? 0) as Category;
  const channels = { first: [] as number[], second: [] as number[], test: [] as number[] };
  const components: Component[] = [];
  let isFromMemory = false;
  const lacksBefore = work.lacks.length;
  for (const component of subsystem.facts.component) {
    const { what } = component;
    const place = factPlace(subsystem, component);
    const kind = component.kind === undefined ? undefined : typical[component.kind];
    const b10d = component.b10d ?? (component.mttfd === undefined && kind !== undefined && 'b10d' in kind ? kind.b10d : undefined);
    const mttfd =
      component.mttfd !== undefined
        ? component.mttfd / year
        : component.b10d === undefined && kind !== undefined && 'mttfd' in kind
          ? kind.mttfd
          : undefined;
    const recalled = component.b10d === undefined && component.mttfd === undefined;
    if (recalled) isFromMemory = true;
    if (b10d !== undefined) wears(work, { what, b10d, isFromMemory: recalled, times: component.times, since: component.fitted, at: place });
    const means: number[] = mttfd === undefined ? [] : [mttfd];
    if (b10d !== undefined && work.operations !== undefined) means.push(mttfdFromB10d(b10d, work.operations * component.times));
    if (b10d !== undefined && work.operations === undefined) work.lacks.push({ what, says: noCycles, at: place });
    const mean = inSeries(means);
    if (mean === undefined) {
      if (b10d === undefined) work.lacks.push({ what, says: 'has none of “b10d”, “mttfd” and “kind”', at: place });
      continue;
    }
    channels[component.channel].push(mean);
    if (component.channel !== 'test') components.push({ what, mttfd: mean, coverage: component.coverage });
  }
  const first = inSeries(channels.first);
  if (first === undefined || work.lacks.length > lacksBefore) {
    if (work.lacks.length === lacksBefore) work.lacks.push({ what: subsystem.name, says: 'has no component in its first channel', at });
    return;
  }
  const { tests, 'tested-on-demand': onDemand, 'common-cause': commonCause } = subsystem.facts;
  const second = inSeries(channels.second);
  const reckoned = reckon({
    category,
    first,
    second,
    coverage: averageCoverage(components) ?? 0,
    commonCause: commonCause?.value,
    tests: onDemand === undefined ? tests?.value : Infinity,
    tester: inSeries(channels.test),
  });
  work.links.push(linkOf(subsystem.name, at, reckoned, category, first, isFromMemory || second !== undefined, components));
}

/** A link that was reckoned. For one channel of that mean time the relation is published; a second one, tests and caps are from memory. */
function linkOf(
  what: string,
  at: Place,
  reckoned: Reckoned,
  claimed: Category,
  mean: number,
  isFromMemory: boolean,
  components: readonly Component[],
): ChainLink {
  const pfhdAtLeast = claimed <= 1 && !isFromMemory ? singleChannelPfhd(mean) : 0;
  return {
    what,
    at,
    pfhd: reckoned.pfhd,
    pfhdAtLeast,
    level: reckoned.level,
    declared: undefined,
    mttfd: reckoned.mttfd,
    components,
    because: reckoned.because,
    reckoned,
  };
}

function wears(work: Work, { what, b10d, isFromMemory, times, since, at }: Omit<Wearing, 'years'> & { readonly times: number }): void {
  if (work.operations !== undefined)
    work.wearing.push({ what, b10d, isFromMemory, years: t10d(b10d, work.operations * times), since: since ?? work.installed, at });
}

/** The part of a function that is to be replaced first. */
export function firstToReplace({ wearing }: Chain): Wearing | undefined {
  let first: Wearing | undefined;
  for (const part of wearing) if (part.years < (first?.years ?? Infinity)) first = part;
  return first;
}
