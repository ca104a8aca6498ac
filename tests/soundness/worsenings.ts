// One fact of an installation made worse: protection taken away, or more to be protected from.
import type { Made, SensorMade } from './generate.ts';
import { withoutSensor } from './shrink.ts';

export interface Worse {
  /** Of what kind it is, then “ of ” and the name. */
  readonly says: string;
  readonly made: Made;
}

export function worsenings(made: Made): Worse[] {
  const all: Worse[] = [];
  const worse = (says: string, changed: Partial<Made>): void => void all.push({ says, made: { ...made, ...changed } });
  const sensor = (says: string, one: SensorMade, changed: Partial<SensorMade>): void =>
    worse(`${says} of ${one.name}`, { sensors: made.sensors.map((each) => (each === one ? { ...each, ...changed } : each)) });

  for (const one of made.sensors) {
    const input = one.signal?.input;
    // Where two devices share an input, each spoils the other: taking one away mends what is left.
    const shares =
      input !== undefined && made.sensors.some((other) => other !== one && other.panel === one.panel && other.signal?.input === input);
    if (!shares) {
      all.push({ says: `removal of ${one.name}`, made: withoutSensor(made, one.name) });
      // An edge behind another one reports through that one if its own wire is gone.
      if (one.signal !== undefined && one.behind === undefined) sensor('signal wire removed', one, { signal: undefined });
    }
    if (one.behind !== undefined && one.signal === undefined) sensor('chain cut', one, { behind: undefined });
    if (one.test === 'wire' || one.test === 'supply') sensor('test wire removed', one, { test: 'none' });
    if (one.testable) sensor('test input lost', one, { testable: false });
    if (one.terminator) sensor('terminator removed', one, { terminator: false });
    if (one.learntBy.length > 0) sensor('forgotten by the panel', one, { learntBy: [] });
    if (one.watches.length > 1)
      for (const left of one.watches)
        sensor('watches one movement only', one, { watches: one.watches.filter((movement) => movement !== left) });
    if (one.kind === 'beam' || one.kind === 'curtain') {
      sensor('ray raised', one, { height: 2 });
      sensor('reach shortened', one, { reach: 1.5, liesOn: undefined });
    }
    if (one.declares !== undefined) sensor('declared at too little', one, { declares: 'performance-level a' });
    if (one.letter === 'E' || one.letter === 'C') sensor('measure lost', one, { letter: undefined });
    if (one.signal !== undefined && one.signal.back === 'own common' && !shares && !made.panels.some((panel) => panel.bridges.length > 0))
      worse(`input bridged of ${one.name}`, {
        panels: made.panels.map((panel) =>
          panel.name === one.panel && input !== undefined && input !== 'W1'
            ? { ...panel, bridges: [...panel.bridges, { input, by: 'link' as const }] }
            : panel,
        ),
      });
  }
  for (const panel of made.panels) {
    if (panel.testsRelays)
      worse(`panel tests nothing of ${panel.name}`, {
        panels: made.panels.map((one) => (one === panel ? { ...one, testsRelays: false } : one)),
      });
    if (panel.position !== 'closes-alone')
      worse(`closing by itself selected of ${panel.name}`, {
        panels: made.panels.map((one) => (one === panel ? { ...one, position: 'closes-alone' as const } : one)),
      });
    if (!panel.learns)
      worse(`panel learns of ${panel.name}`, { panels: made.panels.map((one) => (one === panel ? { ...one, learns: true } : one)) });
  }
  for (const leaf of made.leaves) {
    const { drive } = leaf;
    const changed = (it: Partial<typeof leaf>): Partial<Made> => ({
      leaves: made.leaves.map((one) => (one === leaf ? { ...one, ...it } : one)),
    });
    if (leaf.opens === 'inward') worse(`opening outward of ${leaf.name}`, changed({ opens: 'outward' }));
    if (drive?.senses === true) worse(`sensing lost of ${leaf.name}`, changed({ drive: { ...drive, senses: false } }));
    if (drive?.limits === true) worse(`limit of force lost of ${leaf.name}`, changed({ drive: { ...drive, limits: false } }));
    if (drive !== undefined && leaf.room !== undefined && leaf.room > 0.1) worse(`less room of ${leaf.name}`, changed({ room: 0.1 }));
    if (made.pedestrian === undefined)
      for (const dwell of [undefined, 10]) worse(`pedestrian opening added of ${leaf.name}`, { pedestrian: { leaf: leaf.name, dwell } });
  }
  if (made.users === 'trained') worse('users limited', { users: 'limited' });
  if (made.users === 'limited') worse('users public', { users: 'public' });
  if (made.sight === 'full') worse('site out of view', { sight: 'none' });
  for (const control of made.controls)
    if (control.sight === 'full')
      worse(`control out of view of ${control.name}`, {
        controls: made.controls.map((one) => (one === control ? { ...one, sight: 'none' as const } : one)),
      });
  for (const control of made.controls)
    if (control.by === 'push-button' || control.by === 'key-switch' || control.by === 'keypad')
      worse(`given by radio of ${control.name}`, {
        controls: made.controls.map((one) => (one === control ? { ...one, by: 'transmitter' as const } : one)),
      });
  if (made.dwell === undefined) worse('closing by itself added', { dwell: 20 });
  if (made.pedestrian !== undefined && made.pedestrian.dwell === undefined)
    worse('pedestrian dwell added', { pedestrian: { ...made.pedestrian, dwell: 10 } });
  worse('automatic control added', { controls: [...made.controls, { name: 'worse', acts: 'automatic', by: undefined, sight: undefined }] });
  worse('impulse control added', { controls: [...made.controls, { name: 'worse', acts: 'impulse', by: undefined, sight: 'none' }] });
  return all;
}
