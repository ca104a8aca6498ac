import { type EdgeLoop, loopsOf } from '../../circuits/index.ts';
import type { Panel } from '../../model/index.ts';
import type { FigureKind, Input, Source } from '../kind.ts';
import { dividerVoltage, parallelBand } from './maths.ts';
import { type LoopState, resistanceOf, stateOf } from './working.ts';

const rounded = (ohms: number): string =>
  ohms >= 1000 ? `${Number((ohms / 1000).toPrecision(4))} kohm` : `${Number(ohms.toPrecision(4))} ohm`;

const circuits: Source = { text: 'Kirchhoff’s laws, IEC 60228 for the cable', standing: 'published' };

export const figures: readonly FigureKind[] = [
  {
    id: 'panel.PANEL.loop.NAME.resistance',
    title: 'Resistance of an edge loop at rest',
    unit: 'ohm',
    topic: 'measurements',
    formula: '1/R = Σ 1/Rᵢ, over every terminator that hangs on the input',
    source: {
      text: 'Kirchhoff’s laws: resistors side by side (Serway and Jewett, Physics for Scientists and Engineers)',
      standing: 'published',
    },
    changedBy: 'the terminators of the edges, which edges are wired to the input, and how they are chained',
    work: ({ panels }, give) => {
      for (const panel of panels) {
        const loops = loopsOf(panel);
        if (loops === undefined || panel.nameAt === undefined) continue;
        for (const loop of loops) {
          const { terminal, terminated } = loop;
          const resistance = resistanceOf(loop);
          if (resistance === undefined) continue;
          const resistors = () =>
            terminated.flatMap(({ name, facts: { terminator } }) =>
              terminator === undefined ? [] : [{ name, resistance: terminator.value, tolerance: terminator.tolerance }],
            );
          give(
            `${panel.name}/${terminal.name.text}`,
            resistance,
            placeOf(loop),
            () => [
              ...resistors().flatMap((resistor) => [
                { name: `terminator of ${resistor.name}`, value: resistor.resistance, unit: 'ohm' as const },
                { name: `tolerance of the terminator of ${resistor.name}`, value: resistor.tolerance, unit: '1' as const },
              ]),
              ...(terminal.terminator === undefined
                ? []
                : [
                    {
                      name: `expected at ${terminal.name.text}`,
                      value: terminal.terminator,
                      unit: 'ohm' as const,
                      from: `panel-model ${panel.model?.name ?? ''}`,
                    },
                  ]),
            ],
            () => {
              const band = parallelBand(resistors());
              return band === undefined
                ? rounded(resistance)
                : `${rounded(resistance)}, by the tolerances ${rounded(band.low)} to ${rounded(band.high)}`;
            },
          );
        }
      }
    },
  },
  {
    id: 'panel.PANEL.loop.NAME.rest-least',
    title: 'Least resistance that the panel may see at an edge loop at rest',
    unit: 'ohm',
    topic: 'measurements',
    formula: '1/R = 1/(RT·(1 − tolerance)) + Σ 1/leakage, over 1 + tolerance of the panel’s resistor',
    source: circuits,
    changedBy: 'the tolerance of the terminator, and damp that is let be',
    work: ({ panels }, give) =>
      eachState(panels, (subject, state, at) =>
        give(
          subject,
          state.states.rest.low,
          at,
          () => inputsOf(state),
          () => rounded(state.states.rest.low),
        ),
      ),
  },
  {
    id: 'panel.PANEL.loop.NAME.rest-greatest',
    title: 'Greatest resistance that the panel may see at an edge loop at rest',
    unit: 'ohm',
    topic: 'measurements',
    formula: 'RT·(1 + tolerance) + 2·R20·L·(1 + 0.00393·(t − 20)), over 1 − tolerance of the panel’s resistor',
    source: circuits,
    changedBy: 'the tolerance of the terminator, and the length and size of the cable',
    work: ({ panels }, give) =>
      eachState(panels, (subject, state, at) =>
        give(
          subject,
          state.states.rest.high,
          at,
          () => inputsOf(state),
          () => rounded(state.states.rest.high),
        ),
      ),
  },
  {
    id: 'panel.PANEL.loop.NAME.rest-voltage',
    title: 'Voltage to be read at the input of an edge loop at rest',
    unit: 'V',
    topic: 'measurements',
    formula: 'U = Us·RL/(RP + RL)',
    source: circuits,
    changedBy: 'the terminator, and how the panel measures',
    work: ({ panels }, give) =>
      eachState(panels, (subject, state, at) => {
        const { measures, terminator } = state;
        if (measures === undefined) return;
        const volts = (loop: number): string => String(Number(dividerVoltage(measures.voltage, measures.resistor, loop).toPrecision(3)));
        // The states are as the panel sees them: its own resistor is in them already.
        const { rest, pressed, open } = state.states;
        give(
          subject,
          dividerVoltage(measures.voltage, measures.resistor, terminator.resistance),
          at,
          () => [
            { name: 'Us, voltage of the input', value: measures.voltage, unit: 'V', from: state.from },
            { name: 'RP, resistor in the panel', value: measures.resistor, unit: 'ohm', from: state.from },
            { name: 'RL, terminator', value: terminator.resistance, unit: 'ohm' },
          ],
          () =>
            `${volts(terminator.resistance)} V, by the tolerances ${volts(rest.low)} V to ${volts(rest.high)} V; pressed up to ${volts(pressed.high)} V, cut from ${volts(open.low)} V`,
        );
      }),
  },
];

function eachState(panels: readonly Panel[], say: (subject: string, state: LoopState, at: { start: number; end: number }) => void): void {
  for (const panel of panels) {
    const loops = loopsOf(panel);
    if (loops === undefined || panel.nameAt === undefined) continue;
    for (const loop of loops) {
      const state = stateOf(loop);
      if (state !== undefined) say(`${panel.name}/${loop.terminal.name.text}`, state, placeOf(loop));
    }
  }
}

const placeOf = ({ panel, branches }: EdgeLoop): { start: number; end: number } => branches[0]?.wire.fact.line ?? panel.at;

const inputsOf = ({ terminator, leakages, cables, measures, from, cable }: LoopState): Input[] => [
  { name: 'RT, terminator', value: terminator.resistance, unit: 'ohm' },
  { name: 'tolerance of the terminator', value: terminator.tolerance, unit: '1' },
  ...leakages.map((edge) => ({ name: `leakage of ${edge.name}`, value: edge.facts.leakage?.value ?? 0, unit: 'ohm' as const })),
  ...cables.map((each) => ({ name: `length of ${each.name}`, value: each.facts.length?.value ?? 0, unit: 'm' as const })),
  {
    name: 'cables there and back, warm',
    value: cable,
    unit: 'ohm',
    from: cables.length === 0 ? 'default: no cable is stated' : 'IEC 60228',
  },
  ...(measures === undefined ? [] : [{ name: 'tolerance of the panel’s resistor', value: measures.tolerance, unit: '1' as const, from }]),
];
