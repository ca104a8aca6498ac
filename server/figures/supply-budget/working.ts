import { loadsOf, type Output, outputsNamed } from '../../circuits/index.ts';
import { type Device, type Panel, type PanelModel, perSubject } from '../../model/index.ts';
import { drawOf } from '../design-current/working.ts';
import type { Input, Source } from '../kind.ts';
import { total } from './maths.ts';

/** One thing that an output feeds. */
export interface Draw {
  readonly name: string;
  /** Amperes; undefined where it is not stated. */
  readonly current: number | undefined;
  readonly line: { readonly start: number; readonly end: number };
}

export interface OutputLoad {
  readonly output: Output;
  /** The terminals of the output that something hangs on, else all of it. */
  readonly name: string;
  readonly draws: readonly Draw[];
  /** Amperes of what is known. */
  readonly known: number;
  /** True where everything that hangs on it says what it draws. */
  readonly isWhole: boolean;
}

export const sumOfCurrents: Source = { text: 'Kirchhoff’s laws: currents into a point add up', standing: 'derived' };

/** What a device draws from the panel, A; 0 for a bare contact; undefined where it draws something that is not stated. */
export function consumptionOf(device: Device): number | undefined {
  if (device.kind === 'drive') return drawOf(device.it);
  if (device.kind === 'control') return device.it.facts.consumes?.value;
  const facts = device.it.model?.facts;
  // A resistive edge is a contact and a resistor: it draws nothing worth counting.
  return facts?.consumes?.value ?? (facts?.output?.value === 'resistive' ? 0 : undefined);
}

/** Every output of the panel whose rating is stated, with all that hangs on it. */
export const outputsOf = perSubject((panel: Panel): readonly OutputLoad[] | undefined => {
  const outputs = panel.model?.facts.output;
  return outputs?.map((output) => loadOf(panel, output));
});

function loadOf(panel: Panel, output: Output): OutputLoad {
  const draws: Draw[] = [];
  for (const { device, wire } of loadsOf(panel).get(output)?.values() ?? [])
    draws.push({ name: device.it.name, current: consumptionOf(device), line: wire.fact.line });
  for (const accessory of accessoriesByOutput(panel).get(output) ?? [])
    draws.push({ name: accessory.what, current: accessory.current, line: accessory.line });
  const known = total(draws);
  return { output, name: output.terminals[0]?.text ?? '', draws, known: known.sum, isWhole: known.isWhole };
}

/**
 * Amperes that a panel draws at the least from a supply of `voltage` V while everything runs: the power of its outputs, and nothing for
 * what the panel itself needs or loses. Only what says what it draws counts.
 */
export function leastDrawOf(panel: Panel, voltage: number): { readonly current: number; readonly draws: readonly Draw[] } {
  const draws: Draw[] = [];
  let current = 0;
  for (const { output, draws: on, known } of outputsOf(panel) ?? []) {
    current += (known * output.voltage) / voltage;
    for (const draw of on) if ((draw.current ?? 0) > 0) draws.push(draw);
  }
  return { current, draws };
}

const accessoriesByOutput = perSubject((panel: Panel): ReadonlyMap<Output, readonly Panel['facts']['accessory'][number][]> => {
  const byOutput = new Map<Output, Panel['facts']['accessory'][number][]>();
  for (const accessory of panel.facts.accessory)
    for (const output of outputsNamed(panel).get(accessory.from.text) ?? []) {
      const known = byOutput.get(output);
      if (known === undefined) byOutput.set(output, [accessory]);
      else known.push(accessory);
    }
  return byOutput;
});

export interface Standby {
  /** Amperes from the battery while nothing moves. */
  readonly current: number;
  readonly inputs: readonly Input[];
  /** How much more than the device draws is drawn from a battery of a lower voltage; 1 where it is not lower. */
  readonly boost: number;
}

/** What the panel and all it feeds draw at rest; undefined where the panel, or a sensor that needs a supply, does not say. */
export const standbyOf = perSubject((panel: Panel): Standby | undefined => {
  const { model } = panel;
  if (model?.facts.standby === undefined) return undefined;
  const own = model.facts.standby;
  const boost = boostOf(panel, model);
  const inputs: Input[] = [{ name: 'the panel itself', value: own.value, unit: 'A', from: `panel-model ${model.name}` }];
  const met = new Set<unknown>();
  for (const { device } of panel.wires) {
    if (device === undefined || device.kind === 'drive' || met.has(device.it)) continue;
    met.add(device.it);
    const current = device.kind === 'control' ? (device.it.facts.consumes?.value ?? 0) : consumptionOf(device);
    if (current === undefined) return undefined;
    if (current > 0)
      inputs.push({
        name: device.it.name,
        value: current,
        unit: 'A',
        ...(device.kind === 'sensor' ? { from: `sensor-model ${device.it.model?.name ?? ''}` } : {}),
      });
  }
  for (const accessory of panel.facts.accessory)
    if (!isForMovements(panel, accessory)) inputs.push({ name: accessory.what, value: accessory.current, unit: 'A' });
  const fed = inputs.slice(1).reduce((sum, input) => sum + input.value, 0);
  if (boost > 1) inputs.push({ name: 'outputs over battery voltage', value: boost, unit: '1' });
  return { current: own.value + fed * boost, inputs, boost };
});

/** True for what hangs on an output for a lamp or a lock: it draws while the gate moves, or is about to. */
export function isForMovements({ model }: Panel, { from }: Panel['facts']['accessory'][number]): boolean {
  const role = model?.terminals.get(from.text)?.role;
  return role === 'lamp-output' || role === 'lock-output';
}

/**
 * Power comes from the battery: an output of a higher voltage draws more current from it. A lower one may be made by a series regulator,
 * which saves nothing.
 */
function boostOf({ battery: own }: Panel, { facts }: PanelModel): number {
  const battery = own?.facts.voltage?.value;
  if (battery === undefined) return 1;
  let highest = battery;
  for (const { voltage } of facts.output) if (voltage <= 60) highest = Math.max(highest, voltage);
  return highest / battery;
}
