import { factPlace, type FunctionPart, headPlace, type Load, perSubject, type SafetyFunction, type Site, type Subsystem } from '../../model/index.ts';
import { blocks, type Facts, type Blocks } from '../../vocabulary/index.ts';
import type { FigureKind, Give, Input, Source } from '../figure.ts';
import { typical } from './annex.ts';
import {
  averageCoverage, cap, categoryName, inSeries, leastPfhdOf, letterOf, levelFromPfhd, levelOf, mostPfhdOf, mttfdFromB10d, reckon, singleChannelPfhd, t10d,
  type Category, type Level, type Reckoned,
} from './maths.ts';

type Declared = Pick<Facts<Blocks['panel-model']>, 'pfhd' | 'performance-level' | 'category' | 'mttfd' | 'b10d' | 'coverage' | 'common-cause'>;
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

interface Element {
  readonly what: string;
  readonly mttfd: number;
  readonly coverage: number;
}

/** One link of a safety function's chain. */
export interface Link {
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
  readonly elements: readonly Element[];
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
  readonly links: readonly Link[];
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
const allYear = blocks.site.lines['days-in-use'].slots.value.fallback;

const inYear = (cycles: number, days: number = allYear): number => cycles * 86_400 * days;

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
    coverage: isKnown && links.every(({ elements }) => elements.length > 0) ? averageCoverage(links.flatMap(({ elements }) => elements)) : undefined,
  };
}) as (of: SafetyFunction) => Chain;

const noCycles = 'wears by switching, and the site does not say how many “cycles” a day the gate makes';

interface Work {
  readonly operations: number | undefined;
  readonly installed: string | undefined;
  readonly links: Link[];
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
  if (load.kind === 'control') return lack('is a control, and has to stand as an element of a subsystem, with what its maker declares');
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
      elements: stated === undefined || facts.coverage === undefined ? [] : [{ what, mttfd: stated, coverage }],
      because: facts.pfhd === undefined ? 'only its level is declared, so the worst of it counts' : '',
      reckoned: undefined,
    });
    return;
  }
  if (b10d !== undefined && work.operations === undefined) return lack(noCycles);
  if (mean === undefined) return lack('has a model that declares none of “pfhd”, “performance-level”, “mttfd” and “b10d”');
  const category = (facts.category?.value ?? 0) as Category;
  // Whoever declares category 2 for a product has met its conditions on testing; they cannot be seen from outside.
  const reckoned = reckon({ category, first: mean, second: category >= 3 ? mean : undefined, coverage, commonCause: facts['common-cause']?.value, tests: Infinity, tester: Infinity });
  work.links.push(linkOf(what, at, reckoned, category, mean, isFromMemory, [{ what, mttfd: mean, coverage }]));
}

function addSubsystem(work: Work, subsystem: Subsystem): void {
  const at = headPlace(subsystem);
  const category = (subsystem.facts.category?.value ?? 0) as Category;
  const channels = { first: [] as number[], second: [] as number[], test: [] as number[] };
  const elements: Element[] = [];
  let isFromMemory = false;
  const lacksBefore = work.lacks.length;
  for (const element of subsystem.facts.element) {
    const { what } = element;
    const place = factPlace(subsystem, element);
    const kind = element.kind === undefined ? undefined : typical[element.kind];
    const b10d = element.b10d ?? (element.mttfd === undefined && kind !== undefined && 'b10d' in kind ? kind.b10d : undefined);
    const mttfd = element.mttfd !== undefined ? element.mttfd / year : element.b10d === undefined && kind !== undefined && 'mttfd' in kind ? kind.mttfd : undefined;
    const recalled = element.b10d === undefined && element.mttfd === undefined;
    if (recalled) isFromMemory = true;
    if (b10d !== undefined) wears(work, { what, b10d, isFromMemory: recalled, times: element.times, since: element.fitted, at: place });
    const means: number[] = mttfd === undefined ? [] : [mttfd];
    if (b10d !== undefined && work.operations !== undefined) means.push(mttfdFromB10d(b10d, work.operations * element.times));
    if (b10d !== undefined && work.operations === undefined) work.lacks.push({ what, says: noCycles, at: place });
    const mean = inSeries(means);
    if (mean === undefined) {
      if (b10d === undefined) work.lacks.push({ what, says: 'has none of “b10d”, “mttfd” and “kind”', at: place });
      continue;
    }
    channels[element.channel].push(mean);
    if (element.channel !== 'test') elements.push({ what, mttfd: mean, coverage: element.coverage });
  }
  const first = inSeries(channels.first);
  if (first === undefined || work.lacks.length > lacksBefore) {
    if (work.lacks.length === lacksBefore) work.lacks.push({ what: subsystem.name, says: 'has no element in its first channel', at });
    return;
  }
  const { tests, 'tested-on-demand': onDemand, 'common-cause': commonCause } = subsystem.facts;
  const second = inSeries(channels.second);
  const reckoned = reckon({
    category,
    first,
    second,
    coverage: averageCoverage(elements) ?? 0,
    commonCause: commonCause?.value,
    tests: onDemand === undefined ? tests?.value : Infinity,
    tester: inSeries(channels.test),
  });
  work.links.push(linkOf(subsystem.name, at, reckoned, category, first, isFromMemory || second !== undefined, elements));
}

/** A link that was reckoned. For one channel of that mean time the relation is published; a second one, tests and caps are from memory. */
function linkOf(what: string, at: Place, reckoned: Reckoned, claimed: Category, mean: number, isFromMemory: boolean, elements: readonly Element[]): Link {
  const pfhdAtLeast = claimed <= 1 && !isFromMemory ? singleChannelPfhd(mean) : 0;
  return { what, at, pfhd: reckoned.pfhd, pfhdAtLeast, level: reckoned.level, declared: undefined, mttfd: reckoned.mttfd, elements, because: reckoned.because, reckoned };
}

function wears(work: Work, { what, b10d, isFromMemory, times, since, at }: Omit<Wearing, 'years'> & { readonly times: number }): void {
  if (work.operations !== undefined) work.wearing.push({ what, b10d, isFromMemory, years: t10d(b10d, work.operations * times), since: since ?? work.installed, at });
}

/** The part of a function that is to be replaced first. */
export function firstToReplace({ wearing }: Chain): Wearing | undefined {
  let first: Wearing | undefined;
  for (const part of wearing) if (part.years < (first?.years ?? Infinity)) first = part;
  return first;
}

const annexC: Source = { text: 'EN ISO 13849-1, Annex C', standing: 'published' };
const annexK: Source = { text: 'EN ISO 13849-1, Annex K (Table K.1, the caps and the conditions of the categories from memory)', standing: 'from memory' };
const changedBy = 'what the makers declare, the category, the diagnostic coverage, the number of cycles, or another product';

/** The work of a kind of figure that every function has. */
const each =
  (work: (of: SafetyFunction, chain: Chain, give: Give) => void): FigureKind['work'] =>
  ({ functions }, give) => {
    for (const of of functions) if (of.name !== '') work(of, chainOf(of), give);
  };

function inputsOf({ links }: Chain): Input[] {
  return links.flatMap((link): Input[] => {
    const { reckoned } = link;
    if (reckoned === undefined) return [{ name: `failures an hour of ${link.what}`, value: link.pfhd, unit: '1/h', from: link.because === '' ? 'declared by its maker' : link.because }];
    const from = `category ${categoryName(reckoned.category)}${reckoned.because === '' ? '' : `, because ${reckoned.because}`}`;
    return [
      { name: `failures an hour of ${link.what}`, value: link.pfhd, unit: '1/h', from },
      { name: `mean time of a channel of ${link.what}, as it counts`, value: reckoned.mttfd, unit: 'years' },
      { name: `diagnostic coverage of ${link.what}`, value: reckoned.coverage, unit: '1' },
    ];
  });
}

export const figures: readonly FigureKind[] = [
  {
    id: 'site.operations',
    title: 'Cycles of the gate in a year',
    unit: '1/year',
    topic: 'traffic',
    formula: 'cycles a day · days in use',
    source: annexC,
    changedBy: 'the cycles a day, and the days of use',
    work: ({ site }, give) => {
      const cycles = site?.facts.cycles;
      if (site === undefined || cycles === undefined) return;
      const days = site.facts['days-in-use'];
      give('', inYear(cycles.value, days?.value), factPlace(site, cycles), () => [
        { name: 'cycles a day', value: cycles.value * 86_400, unit: '1/day' },
        { name: 'days in use', value: days?.value ?? allYear, unit: '1', ...(days === undefined ? { from: 'not stated' } : {}) },
      ]);
    },
  },
  {
    id: 'function.NAME.pfhd',
    title: 'Probability of a dangerous failure of the safety function in an hour',
    unit: '1/h',
    topic: 'safety',
    formula: 'the sum over its parts; of one channel 1 / (8760 · MTTFD), of others by Table K.1 at the row at or below',
    source: annexK,
    changedBy,
    work: each((of, chain, give) => {
      if (chain.pfhd !== undefined) give(of.name, chain.pfhd, headPlace(of), () => inputsOf(chain));
    }),
  },
  {
    id: 'function.NAME.performance-level',
    title: 'Performance level of the safety function, 1 to 5 for a to e',
    unit: '1',
    topic: 'safety',
    formula: 'the level of the sum of the failures an hour, but none better than that of any part',
    source: annexK,
    changedBy,
    work: each((of, { pfhd, level, links }, give) => {
      if (pfhd === undefined || level === undefined) return;
      const inputs = (): Input[] => [
        { name: 'failures an hour', value: pfhd, unit: '1/h', from: `function.${of.name}.pfhd` },
        ...links.flatMap(({ what, level: own, reckoned }): Input[] => [
          { name: `level of ${what}`, value: own, unit: '1' },
          ...(reckoned?.simplified === undefined ? [] : [{ name: `level of ${what} by the simplified table`, value: reckoned.simplified, unit: '1', from: 'a band, for comparison' }]),
        ]),
      ];
      give(of.name, level, headPlace(of), inputs, () => (level === 0 ? 'no PL' : `PL ${letterOf(level)}`));
    }),
  },
  {
    id: 'function.NAME.mttfd',
    title: 'Mean time to a dangerous failure of the function’s parts in series',
    unit: 'years',
    topic: 'safety',
    formula: '1 / MTTFD = Σ 1 / MTTFD of each part; B10D / (0.1 · operations a year) for what wears by switching',
    source: { text: 'EN ISO 13849-1, Annex C and Annex D (the caps from memory)', standing: 'from memory' },
    changedBy,
    work: each((of, { mttfd, links }, give) => {
      if (mttfd !== undefined) give(of.name, mttfd, headPlace(of), () => links.map((link) => ({ name: `mean time of a channel of ${link.what}`, value: link.mttfd as number, unit: 'years' })));
    }),
  },
  {
    id: 'function.NAME.dcavg',
    title: 'Average diagnostic coverage of the function’s parts',
    unit: '1',
    topic: 'safety',
    formula: 'Σ (DC / MTTFD) / Σ (1 / MTTFD)',
    source: { text: 'EN ISO 13849-1, Annex E (from memory)', standing: 'from memory' },
    changedBy,
    work: each((of, { coverage, links }, give) => {
      if (coverage === undefined) return;
      const inputs = (): Input[] =>
        links.flatMap(({ elements }) =>
          elements.flatMap((element) => [
            { name: `mean time of ${element.what}`, value: element.mttfd, unit: 'years' },
            { name: `diagnostic coverage of ${element.what}`, value: element.coverage, unit: '1' },
          ]),
        );
      give(of.name, coverage, headPlace(of), inputs, () => `${Number((coverage * 100).toPrecision(3))} %`);
    }),
  },
  {
    id: 'function.NAME.replace-after',
    title: 'Years after which the first of its parts is to be replaced: a tenth of such parts have then failed',
    unit: 'years',
    topic: 'safety',
    formula: 'T10D = B10D / operations a year, the least of its parts',
    source: annexC,
    changedBy: 'the cycles a day, or a part that lasts longer',
    work: each((of, chain, give) => {
      const first = firstToReplace(chain);
      if (first === undefined) return;
      give(of.name, first.years, headPlace(of), () => [
        { name: `B10D of ${first.what}`, value: first.b10d, unit: '1', ...(first.isFromMemory ? { from: 'by its kind, from memory' } : {}) },
        { name: 'operations a year', value: first.b10d / first.years, unit: '1/year', from: 'site.operations' },
      ]);
    }),
  },
];
