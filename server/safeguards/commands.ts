// In which ways the gate is commanded, and whether whoever commands it holds on and sees it.
import { type Control, type Installation, perSubject, regimeOf } from '../model/index.ts';

/** The ways in which EN 12453 tells controls apart. */
export type ControlKind = 'hold-to-run' | 'hold-to-run by key' | 'impulse, gate in view' | 'impulse, gate not in view' | 'automatic';

export interface Command {
  readonly kind: ControlKind;
  /** Where the file says so. */
  readonly at: { readonly start: number; readonly end: number };
  /** The control that gives it; undefined where the gate closes by itself after the dwell. */
  readonly control: Control | undefined;
}

/** True when every way to command the gate is hold-to-run: somebody watches, and lets go. */
export function onlyHeld(installation: Installation): boolean {
  const commands = commandsOf(installation);
  if (commands.length === 0) return false;
  for (const command of commands) if (command.kind !== 'hold-to-run' && command.kind !== 'hold-to-run by key') return false;
  return true;
}

/** The same, and whoever holds it sees the whole gate: only then does letting go protect anybody. Sight that is not stated is none. */
export function heldInView(installation: Installation): boolean {
  if (!onlyHeld(installation)) return false;
  const ofSite = installation.site?.facts.sight?.value;
  return installation.controls.every(({ facts }) => facts.acts === undefined || (facts.sight?.value ?? ofSite) === 'full');
}

/** The first control that is held, where the body of rules judges held controls; undefined where there is none. */
export const judgedHeldControlOf = (installation: Installation): Control | undefined =>
  regimeOf(installation).judgesHeldControls ? installation.controls.find(({ facts }) => facts.acts?.value === 'hold-to-run') : undefined;

/** All the ways in which the gate is commanded. A gate that closes by itself is automatic, whatever else it has. */
export const commandsOf = perSubject((installation: Installation): readonly Command[] => {
  const commands: Command[] = [];
  for (const control of installation.controls) {
    const { acts } = control.facts;
    if (acts === undefined) continue;
    const kind = kindOf(control, acts.value);
    commands.push({ kind, at: acts.line, control });
  }
  const dwell = installation.motion?.facts.dwell;
  if (dwell !== undefined) commands.push({ kind: 'automatic', at: dwell.line, control: undefined });
  return commands;
});

function kindOf(control: Control, acts: NonNullable<Control['facts']['acts']>['value']): ControlKind {
  if (acts === 'automatic') return acts;
  // Nobody watches beside a clock, and a vehicle on a loop does not let go in time.
  if (control.facts.by?.value === 'clock' || (control.facts.by?.value === 'loop' && acts === 'hold-to-run')) return 'automatic';
  if (acts === 'hold-to-run') return control.facts.by?.value === 'key-switch' ? 'hold-to-run by key' : 'hold-to-run';
  const sight = control.facts.sight?.value ?? control.installation.site?.facts.sight?.value ?? 'none';
  return sight === 'full' ? 'impulse, gate in view' : 'impulse, gate not in view';
}
