// The rows of the whole gate: its phases at the top, and what the panel shows while nothing moves.
import { margin } from '../drawing.ts';
import { text } from '../text.ts';
import { type Chart, drawStretch, moment, type Stretch, seconds, tell } from './chart.ts';

/** Where the row of the phases begins. */
export const top = 58;
const phaseHeight = 28;
const stateHeight = 22;

export function drawPhases(chart: Chart): void {
  chart.drawn.push(text('gate', margin, top + 19, 'normal', 'start', 'strong'));
  const { times } = chart;
  for (const phase of phasesOf(chart)) {
    if (phase.to <= phase.from) continue;
    drawStretch(chart, phase, top, phaseHeight, true);
    if (times.dwell === undefined && phase.from === times.open)
      chart.rows.push(['standing open', moment(chart, phase.from), 'the command to close', 'not stated']);
    else tell(chart, phase.title, phase.from, phase.to);
  }
}

function phasesOf({ times, dwell, warning }: Chart): Stretch[] {
  const { cycle, opens, open, warns, closes, closed } = times;
  const lamp = { id: warning, surface: 'lamp', choices: [`warns ${seconds(cycle.preWarning)}`] } as const;
  const stands = times.dwell === undefined ? undefined : seconds(times.dwell);
  const title = stands === undefined ? 'standing open until it is told to close; how long is not stated' : 'standing open';
  const [full, brief] = stands === undefined ? ['until told to close', 'until told'] : [stands, stands];
  const moving = { id: undefined, surface: 'state' } as const;
  return [
    { ...lamp, from: 0, to: opens, title: 'warning before it opens' },
    { ...moving, from: opens, to: open, title: 'opening', choices: [`opens ${seconds(cycle.opening)}`] },
    { id: dwell, surface: 'state', from: open, to: warns, title, choices: [`stands open ${full}`, `open ${brief}`] },
    { ...lamp, from: warns, to: closes, title: 'warning before it closes' },
    { ...moving, from: closes, to: closed, title: 'closing', choices: [`closes ${seconds(cycle.closing)}`] },
  ];
}

/** What the panel shows while nothing moves; gives where that ends. */
export function drawPanel(chart: Chart, y: number): number {
  const { times, dwell, warning } = chart;
  const { opens, open, warns, closes } = times;
  chart.drawn.push(text('panel', margin, y + 15, 'normal', 'start', 'strong'));
  const state = (id: string | undefined, from: number, to: number, choices: readonly string[]): void => {
    if (!(chart.axis.at(to) > chart.axis.at(from))) return;
    drawStretch(chart, { id, from, to, surface: 'state', title: choices[0] ?? '', choices }, y, stateHeight, false);
  };
  if (times.dwell === undefined) state(undefined, open, warns, ['waits for a command', 'waits']);
  else state(dwell, open, warns, ['counts the dwell, then closes by itself', 'counts the dwell', 'dwell']);
  if (times.cycle.preWarning > 0) {
    state(warning, warns, closes, ['lamp flashes', 'lamp']);
    state(warning, 0, opens, ['lamp flashes', 'lamp']);
  }
  return y + 36;
}
