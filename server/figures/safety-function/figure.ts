import { factPlace, headPlace, type SafetyFunction } from '../../model/index.ts';
import type { FigureKind, Give, Input, Source } from '../kind.ts';
import { categoryName, letterOf } from './maths.ts';
import { allYear, type Chain, chainOf, firstToReplace, inYear } from './working.ts';

const annexC: Source = { text: 'EN ISO 13849-1, Annex C', standing: 'published' };
const annexK: Source = {
  text: 'EN ISO 13849-1, Annex K (Table K.1, the caps and the conditions of the categories from memory)',
  standing: 'from memory',
};
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
    if (reckoned === undefined)
      return [
        {
          name: `failures an hour of ${link.what}`,
          value: link.pfhd,
          unit: '1/h',
          from: link.because === '' ? 'declared by its maker' : link.because,
        },
      ];
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
    coded: true,
    topic: 'safety',
    formula: 'the level of the sum of the failures an hour, but none better than that of any part',
    source: annexK,
    changedBy,
    work: each((of, { pfhd, level, links }, give) => {
      if (pfhd === undefined || level === undefined) return;
      const inputs = (): Input[] => [
        { name: 'failures an hour', value: pfhd, unit: '1/h', from: `function.${of.name}.pfhd` },
        ...links.flatMap(({ what, level: own, reckoned }): Input[] => [
          { name: `level of ${what}`, value: own, unit: '1' as const },
          ...(reckoned?.simplified === undefined
            ? []
            : [
                {
                  name: `level of ${what} by the simplified table`,
                  value: reckoned.simplified,
                  unit: '1' as const,
                  from: 'a band, for comparison',
                },
              ]),
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
      if (mttfd !== undefined)
        give(of.name, mttfd, headPlace(of), () =>
          links.map((link) => ({ name: `mean time of a channel of ${link.what}`, value: link.mttfd as number, unit: 'years' })),
        );
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
        links.flatMap(({ components }) =>
          components.flatMap((component) => [
            { name: `mean time of ${component.what}`, value: component.mttfd, unit: 'years' },
            { name: `diagnostic coverage of ${component.what}`, value: component.coverage, unit: '1' },
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
        {
          name: `B10D of ${first.what}`,
          value: first.b10d,
          unit: '1',
          ...(first.isFromMemory ? { from: 'by its kind, from memory' } : {}),
        },
        { name: 'operations a year', value: first.b10d / first.years, unit: '1/year', from: 'site.operations' },
      ]);
    }),
  },
];
