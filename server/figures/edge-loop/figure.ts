import type { FigureKind } from '../figure.ts';
import { loopsOf, resistanceOf } from './loops.ts';
import { parallelBand } from './maths.ts';

const rounded = (ohms: number): string => (ohms >= 1000 ? `${Number((ohms / 1000).toPrecision(4))} kohm` : `${Number(ohms.toPrecision(4))} ohm`);

export const figures: readonly FigureKind[] = [
  {
    id: 'panel.PANEL.loop.NAME.resistance',
    title: 'Resistance of an edge loop at rest',
    unit: 'ohm',
    formula: '1/R = Σ 1/Rᵢ, over every terminator that hangs on the input',
    source: { text: 'Kirchhoff’s laws: resistors side by side (Serway and Jewett, Physics for Scientists and Engineers)', standing: 'published' },
    changedBy: 'the terminators of the edges, which edges are wired to the input, and how they are chained',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const loops = loopsOf(panel);
        if (loops === undefined || panel.nameAt === undefined) continue;
        for (const loop of loops) {
          const { terminal, branches, terminated } = loop;
          const resistance = resistanceOf(loop);
          if (resistance === undefined) continue;
          const resistors = terminated.flatMap(({ name, facts: { terminator } }) => (terminator === undefined ? [] : [{ name, resistance: terminator.value, tolerance: terminator.tolerance }]));
          give(
            `${panel.name}/${terminal.name.text}`,
            resistance,
            branches[0]?.wire.fact.line ?? panel.at,
            () => [
              ...resistors.flatMap((resistor) => [
                { name: `terminator of ${resistor.name}`, value: resistor.resistance, unit: 'ohm' },
                { name: `tolerance of the terminator of ${resistor.name}`, value: resistor.tolerance, unit: '1' },
              ]),
              ...(terminal.terminator === undefined ? [] : [{ name: `expected at ${terminal.name.text}`, value: terminal.terminator, unit: 'ohm', from: `panel-model ${panel.model?.name ?? ''}` }]),
            ],
            () => {
              const band = parallelBand(resistors);
              return band === undefined ? rounded(resistance) : `${rounded(resistance)}, by the tolerances ${rounded(band.low)} to ${rounded(band.high)}`;
            },
          );
        }
      }
    },
  },
];
