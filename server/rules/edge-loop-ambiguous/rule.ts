import { type EdgeLoop, loopsOf } from '../../circuits/index.ts';
import { type Band, type LoopState, overlap, stateOf } from '../../figures/edge-loop/working.ts';
import type { Installation } from '../../model/index.ts';
import { bound, keeps } from '../bounds.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
import { ohmsInWords, quoted } from '../words.ts';

const held = {
  low: { figure: 'panel.PANEL.loop.NAME.rest-least', name: 'least resistance at rest', unit: 'ohm', way: 'least' },
  high: { figure: 'panel.PANEL.loop.NAME.rest-greatest', name: 'greatest resistance at rest', unit: 'ohm', way: 'most' },
} as const;

export const rule = installationRule({
  name: 'edge-loop-ambiguous',
  severity: 'error',
  title: 'The panel cannot tell an edge loop at rest from one that is pressed or cut, or may take rest for a fault.',
  why: 'Where a pressed edge or a cut wire can look like rest, the leaf drives on into a person; where rest can look like a fault, the gate stands still in the rain and someone will bridge the edge.',
  remedy: 'Use a terminator of a closer tolerance, let less damp be, shorten or thicken the cable, or choose a panel with another window.',
  source: {
    text: 'Kirchhoff’s laws: the worst case of terminator, cable, damp and panel; the window is what the panel’s model declares',
    standing: 'derived',
  },
  acceptable: false,
  check: (installation, report) => {
    eachLoop(installation, (loop, state) => {
      const { pressed, open, doubled } = state.states;
      const taken = state.window?.value ?? state.states.rest;
      if (overlap(pressed, taken)) report(saying(loop, state, `A pressed edge on ${inputOf(loop)} may show ${inWords(pressed)}`));
      // A dry loop that is cut shows nothing at all, which no window holds.
      if (overlap(open, taken))
        report(saying(loop, state, `A cut wire on ${inputOf(loop)} may show ${inWords(open)}, through the damp alone`));
      if (overlap(doubled, taken))
        report({
          ...saying(
            loop,
            state,
            `With a second terminator by mistake the loop on ${inputOf(loop)} may show ${inWords(doubled)}`,
            ' The mistake would go unseen.',
          ),
          severity: 'warning',
        });
    });
  },
  holds: (installation, hold) => {
    eachLoop(installation, (loop, state) => {
      const { panel, terminal } = loop;
      const { rest } = state.states;
      const window = state.window?.value;
      if (window === undefined) return;
      const subject = `${panel.name}/${terminal.name.text}`;
      const low = bound(held.low, subject, rest.low, window.low);
      const high = bound(held.high, subject, rest.high, window.high);
      const say = (): Omit<Report, 'at'> => ({
        ...saying(
          loop,
          state,
          `The loop on ${inputOf(loop)} at rest may show ${inWords(rest)}`,
          ' It may report a fault while all is well.',
        ),
        severity: 'warning',
      });
      hold(low, placeOf(loop), say);
      hold(high, placeOf(loop), () => (keeps(low) ? say() : undefined));
    });
  },
});

/** The loops of which it is known what they may show. */
function eachLoop({ panels }: Installation, look: (loop: EdgeLoop, state: LoopState) => void): void {
  for (const panel of panels)
    for (const loop of loopsOf(panel) ?? []) {
      const state = stateOf(loop);
      if (state !== undefined) look(loop, state);
    }
}

const inputOf = ({ terminal }: EdgeLoop): string => quoted(terminal.name.text);
const placeOf = (loop: EdgeLoop): { readonly start: number; readonly end: number } => loop.branches[0]?.wire.fact.line ?? loop.panel.at;

const inWords = ({ low, high }: Band): string =>
  high === Number.POSITIVE_INFINITY
    ? `${ohmsInWords(low)} and more`
    : low === 0
      ? `up to ${ohmsInWords(high)}`
      : `${ohmsInWords(low)} to ${ohmsInWords(high)}`;

/** What the loop may show, against what the panel takes for rest: its window, or else what this loop itself shows at rest. */
function saying(loop: EdgeLoop, { states, window, cables, leakages, terminated }: LoopState, shows: string, besides = ''): Report {
  const { model, installation } = loop.panel;
  return {
    at: placeOf(loop),
    what: `${shows}; ${window === undefined ? `the loop at rest shows ${inWords(states.rest)}` : `the panel takes ${inWords(window.value)} for rest`}.${besides}`,
    related: [
      ...toFact('the terminator', terminated.facts.terminator),
      ...leakages.flatMap(({ facts }) => toFact('the damp that is let be', facts.leakage)),
      ...cables.flatMap(({ facts }) => toFact('the cable', facts.length)),
      ...toModelFact('what the panel takes for rest', installation, model, window),
    ],
  };
}
