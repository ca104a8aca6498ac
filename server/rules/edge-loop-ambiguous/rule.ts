import { type EdgeLoop, loopsOf } from '../../figures/edge-loop/loops.ts';
import { overlap, type Band } from '../../figures/edge-loop/maths.ts';
import { type LoopState, stateOf } from '../../figures/edge-loop/state.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { inModel, ohmsInWords } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = {
  low: { figure: 'panel.PANEL.loop.NAME.rest-least', name: 'least resistance at rest', unit: 'ohm', way: 'least' },
  high: { figure: 'panel.PANEL.loop.NAME.rest-greatest', name: 'greatest resistance at rest', unit: 'ohm', way: 'most' },
} as const;

/** The loop at rest within what the panel takes for rest; none where its model states no window. */
function restOf({ panel, terminal }: EdgeLoop, { states, window }: LoopState): readonly [low: Bound, high: Bound] | undefined {
  if (window === undefined) return undefined;
  const subject = `${panel.name}/${terminal.name.text}`;
  return [bound(held.low, subject, states.rest.low, window.value.low), bound(held.high, subject, states.rest.high, window.value.high)];
}

const placeOf = (loop: EdgeLoop): { readonly start: number; readonly end: number } => loop.branches[0]?.wire.fact.line ?? loop.panel.at;

export const rule = installationRule({
  name: 'edge-loop-ambiguous',
  severity: 'error',
  title: 'The panel cannot tell an edge loop at rest from one that is pressed or cut, or may take rest for a fault.',
  why: 'Where a pressed edge or a cut wire can look like rest, the leaf drives on into a person; where rest can look like a fault, the gate stands still in the rain and someone will bridge the edge.',
  remedy: 'Use a terminator of a closer tolerance, let less damp be, shorten or thicken the cable, or choose a panel with another window.',
  source: { text: 'Kirchhoff’s laws: the worst case of terminator, cable, damp and panel; the window is what the panel’s model declares', standing: 'derived' },
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const loops = loopsOf(panel);
      if (loops === undefined) continue;
      for (const loop of loops) {
        const state = stateOf(loop);
        if (state !== undefined) checkLoop(loop, state, report);
      }
    }
  },
  margins: ({ panels }, give) => {
    for (const panel of panels)
      for (const loop of loopsOf(panel) ?? []) {
        const state = stateOf(loop);
        for (const rest of (state === undefined ? undefined : restOf(loop, state)) ?? []) give(rest, placeOf(loop));
      }
  },
});

const inWords = ({ low, high }: Band): string => (high === Number.POSITIVE_INFINITY ? `${ohmsInWords(low)} and more` : low === 0 ? `up to ${ohmsInWords(high)}` : `${ohmsInWords(low)} to ${ohmsInWords(high)}`);

function checkLoop(loop: EdgeLoop, state: LoopState, report: (report: Report) => void): void {
  const { rest, pressed, open, doubled } = state.states;
  const { window } = state;
  const taken: Band = window === undefined ? rest : window.value;
  // A dry loop that is cut shows nothing at all, which no window holds.
  const cutLooksLikeRest = open.low !== Number.POSITIVE_INFINITY && overlap(open, taken);
  const restLooksLikeFault = restOf(loop, state)?.every(keeps) === false;
  const doubleLooksLikeRest = overlap(doubled, taken) && rest.low > 0;
  if (!cutLooksLikeRest && !restLooksLikeFault && !doubleLooksLikeRest && !overlap(pressed, taken)) return;
  const as = window === undefined ? `the loop at rest shows ${inWords(rest)}` : `the panel takes ${inWords(taken)} for rest`;
  const input = quoted(loop.terminal.name.text);
  const at = placeOf(loop);
  const related = relatedTo(loop, state);
  if (overlap(pressed, taken)) report({ at, what: `A pressed edge on ${input} may show ${inWords(pressed)}; ${as}.`, related });
  if (cutLooksLikeRest) report({ at, what: `A cut wire on ${input} may show ${inWords(open)}, through the damp alone; ${as}.`, related });
  if (restLooksLikeFault)
    report({ at, severity: 'warning', what: `The loop on ${input} at rest may show ${inWords(rest)}; ${as}. It may report a fault while all is well.`, related });
  if (doubleLooksLikeRest)
    report({ at, severity: 'warning', what: `With a second terminator by mistake the loop on ${input} may show ${inWords(doubled)}; ${as}. The mistake would go unseen.`, related });
}

function relatedTo({ panel }: EdgeLoop, { window, cables, leakages, terminated }: LoopState): Related[] {
  const fitted = terminated.facts.terminator?.line;
  return [
    ...(fitted === undefined ? [] : [{ message: 'the terminator', start: fitted.start, end: fitted.end }]),
    ...leakages.flatMap((edge) => (edge.facts.leakage === undefined ? [] : [{ message: 'the damp that is let be', start: edge.facts.leakage.line.start, end: edge.facts.leakage.line.end }])),
    ...cables.flatMap((cable) => (cable.facts.length === undefined ? [] : [{ message: 'the cable', start: cable.facts.length.line.start, end: cable.facts.length.line.end }])),
    ...(window === undefined || panel.model === undefined ? [] : [inModel(panel.model, panel.installation, window.line, 'what the panel takes for rest')]),
  ];
}
