// In which ways the gate is commanded, and whether whoever commands it holds on and sees it.
import { type Control, type Installation, perSubject, regimeOf } from '../model/index.ts';
import { positionsOf } from './positions.ts';

/** The ways in which EN 12453 tells controls apart, and one that it does not know: held by somebody who may not see the gate. */
export type ControlKind =
  | 'hold-to-run'
  | 'hold-to-run by key'
  | 'hold-to-run, gate not in view'
  | 'impulse, gate in view'
  | 'impulse, gate not in view'
  | 'automatic';

export interface Command {
  readonly kind: ControlKind;
  /** Where the file says so. */
  readonly at: { readonly start: number; readonly end: number };
  /** The control that gives it; undefined where the gate moves by itself. */
  readonly control: Control | undefined;
  /** What makes it move. */
  readonly cause: 'control' | 'dwell' | 'loop' | 'selector';
}

type Means = NonNullable<Control['facts']['by']>['value'];

/**
 * Means that are fixed to a place, from which the gate may be seen. Who presses a transmitter or answers a telephone may be anywhere, and
 * a loop or a clock sees nothing.
 */
const fixedPlaces: ReadonlySet<Means | undefined> = new Set<Means>(['push-button', 'key-switch', 'keypad']);

/** True where the control stands in one place, so that it can be said what is in view from there. */
export const hasAPlace = ({ facts }: Control): boolean => fixedPlaces.has(facts.by?.value);

/** True for what a person operates at a fixed place, whether the gate can be seen from there or not. */
export const isFixed = (control: Control): boolean => hasAPlace(control) || control.facts.by?.value === 'intercom';

/** What the file says of the view from a control: its own line, or else the site's; undefined where neither is there. */
export const statedSightOf = ({ facts, installation }: Control) => facts.sight ?? installation.site?.facts.sight;

/** True where whoever uses the control surely sees the whole gate: it has a place, and the file says that the gate is in view from there. */
export const seesTheGate = (control: Control): boolean => hasAPlace(control) && statedSightOf(control)?.value === 'full';

/** True when every way to command the gate is held in full view: somebody watches, and lets go. Only then does letting go protect anybody. */
export const heldInView = perSubject((installation: Installation): boolean => {
  const commands = commandsOf(installation);
  return commands.length > 0 && commands.every(({ kind }) => kind === 'hold-to-run' || kind === 'hold-to-run by key');
});

/** The first control that is held, where the body of rules judges held controls; undefined where there is none. */
export const judgedHeldControlOf = (installation: Installation): Control | undefined =>
  regimeOf(installation).judgesHeldControls ? installation.controls.find(({ facts }) => facts.acts?.value === 'hold-to-run') : undefined;

/**
 * All the ways in which the gate is commanded to move. A gate that closes by itself, after a dwell of the whole opening or of the part
 * for people on foot, or by the position of a selector, is automatic, whatever else it has. What only stops it moves nothing.
 */
export const commandsOf = perSubject((installation: Installation): readonly Command[] => {
  const commands: Command[] = [];
  for (const control of installation.controls) {
    const { acts } = control.facts;
    if (acts === undefined || acts.value === 'stop') continue;
    commands.push({ kind: kindOf(control, acts.value), at: acts.line, control, cause: 'control' });
  }
  // A vehicle on a loop commands, and nobody with it.
  for (const { model, wires } of installation.sensors)
    if (model?.facts.kind?.value === 'loop')
      for (const { part, ends, fact } of wires)
        if (part === 'signal' && ends.some(({ terminal }) => terminal?.role === 'command-input'))
          commands.push({ kind: 'automatic', at: fact.line, control: undefined, cause: 'loop' });
  for (const { option, selection } of positionsOf(installation))
    if (option.acts === 'automatic') commands.push({ kind: 'automatic', at: selection.fact.line, control: undefined, cause: 'selector' });
  const { dwell, pedestrian } = installation.motion?.facts ?? {};
  if (pedestrian?.dwell !== undefined) commands.push({ kind: 'automatic', at: pedestrian.line, control: undefined, cause: 'dwell' });
  if (dwell !== undefined) commands.push({ kind: 'automatic', at: dwell.line, control: undefined, cause: 'dwell' });
  return commands;
});

type Moving = Exclude<NonNullable<Control['facts']['acts']>['value'], 'stop'>;

function kindOf(control: Control, acts: Moving): ControlKind {
  const by = control.facts.by?.value;
  // Nobody watches beside a clock, and a vehicle on a loop does not let go in time.
  if (acts === 'automatic' || by === 'clock' || (by === 'loop' && acts === 'hold-to-run')) return 'automatic';
  if (acts === 'impulse') return seesTheGate(control) ? 'impulse, gate in view' : 'impulse, gate not in view';
  if (!seesTheGate(control)) return 'hold-to-run, gate not in view';
  return by === 'key-switch' ? 'hold-to-run by key' : 'hold-to-run';
}

/** The first command that starts an opening with nobody beside the gate: a clock, or a vehicle on a loop. */
export const opensUnwatched = perSubject((installation: Installation): Command | undefined =>
  commandsOf(installation).find(
    ({ control, kind, cause }) =>
      cause === 'loop' || (control !== undefined && (kind === 'automatic' || control.facts.by?.value === 'loop')),
  ),
);
