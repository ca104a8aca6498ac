// How the motor of each drive is wired.
import { type Drive, type Installation, type Panel, perSubject, type TerminalUse, type Wire } from '../model/index.ts';
import { type Output, outputsNamed } from './supplies.ts';

/** One end of a wire of a drive on a motor terminal. */
export interface MotorEnd {
  readonly panel: Panel;
  readonly wire: Wire;
  readonly use: TerminalUse;
  /** The output that the terminal belongs to; undefined where the model does not say, or says it of several. */
  readonly output: Output | undefined;
}

export interface MotorWiring {
  /** In the order of the text, each terminal of a panel once. */
  readonly ends: readonly MotorEnd[];
  /** False where a wire of the drive ends on something that is not known, or that no motor belongs to. */
  readonly whole: boolean;
  /** Whether a wire of it returns to a common. */
  readonly returns: boolean;
}

interface OpenWiring extends MotorWiring {
  readonly ends: MotorEnd[];
  readonly met: Set<unknown>;
  whole: boolean;
  returns: boolean;
}

const wiringsByDrive = perSubject(({ panels }: Installation): ReadonlyMap<Drive, MotorWiring> => {
  const byDrive = new Map<Drive, OpenWiring>();
  for (const panel of panels)
    for (const wire of panel.wires) {
      if (wire.device?.kind !== 'drive' || wire.part !== 'signal') continue;
      const drive = wire.device.it;
      let wiring = byDrive.get(drive);
      if (wiring === undefined) byDrive.set(drive, (wiring = { ends: [], met: new Set(), whole: true, returns: false }));
      for (const use of wire.ends) addEnd(wiring, panel, wire, use);
    }
  return byDrive;
});

function addEnd(wiring: OpenWiring, panel: Panel, wire: Wire, use: TerminalUse): void {
  const { terminal } = use;
  if (terminal?.role === 'earth') return;
  if (terminal?.role === 'common') wiring.returns = true;
  else if (terminal?.role !== 'motor') wiring.whole = false;
  else if (!wiring.met.has(terminal) || wiring.ends.every((end) => end.panel !== panel)) {
    wiring.met.add(terminal);
    const outputs = outputsNamed(panel).get(use.at.text);
    wiring.ends.push({ panel, wire, use, output: outputs?.length === 1 ? outputs[0] : undefined });
  }
}

/** How the motor of a drive is wired; undefined where no wire of any panel leads to it. */
export const motorWiringOf = (drive: Drive): MotorWiring | undefined => wiringsByDrive(drive.installation).get(drive);
