// Makes an installation that fails smaller, as long as it still fails.
import type { ControlMade, LeafMade, Made, SensorMade } from './generate.ts';

/** Without a leaf, and without what sits on it or opens it. */
const withoutLeaf = (made: Made, name: string): Made => ({
  ...made,
  leaves: made.leaves.filter((leaf) => leaf.name !== name),
  pedestrian: made.pedestrian?.leaf === name ? undefined : made.pedestrian,
  sensors: made.sensors.map((sensor) => ({
    ...sensor,
    place: sensor.place?.leaf === name ? undefined : sensor.place,
    liesOn: sensor.liesOn?.leaf === name ? undefined : sensor.liesOn,
  })),
});

/** Without a sensor; what was wired behind it is wired nowhere. */
export const withoutSensor = (made: Made, name: string): Made => ({
  ...made,
  sensors: made.sensors
    .filter((sensor) => sensor.name !== name)
    .map((sensor) => (sensor.behind === name ? { ...sensor, behind: undefined } : sensor)),
});

const withoutPanel = (made: Made, name: string, left: string): Made => ({
  ...made,
  panels: made.panels.filter((panel) => panel.name !== name),
  leaves: made.leaves.map((leaf) => (leaf.drive?.panel === name ? { ...leaf, drive: { ...leaf.drive, panel: left } } : leaf)),
  sensors: made.sensors.map((sensor) => ({
    ...sensor,
    panel: sensor.panel === name ? left : sensor.panel,
    learntBy: sensor.learntBy.filter((one) => one !== name),
  })),
});

const withLeaf = (made: Made, one: LeafMade, changed: Partial<LeafMade>): Made => ({
  ...made,
  leaves: made.leaves.map((leaf) => (leaf === one ? { ...leaf, ...changed } : leaf)),
});
const withSensor = (made: Made, one: SensorMade, changed: Partial<SensorMade>): Made => ({
  ...made,
  sensors: made.sensors.map((sensor) => (sensor === one ? { ...sensor, ...changed } : sensor)),
});
const withControl = (made: Made, one: ControlMade, changed: Partial<ControlMade>): Made => ({
  ...made,
  controls: made.controls.map((control) => (control === one ? { ...control, ...changed } : control)),
});

function* candidates(made: Made): Iterable<Made> {
  if (made.leaves.length > 1) for (const leaf of made.leaves) yield withoutLeaf(made, leaf.name);
  for (const sensor of made.sensors) yield withoutSensor(made, sensor.name);
  for (const control of made.controls) yield { ...made, controls: made.controls.filter((one) => one !== control) };
  if (made.panels.length > 1)
    for (const panel of made.panels) yield withoutPanel(made, panel.name, made.panels.find((one) => one !== panel)?.name ?? '');
  if (made.library) yield { ...made, library: false };
  if (made.shuffle !== 0) yield { ...made, shuffle: 0 };
  if (made.dwell !== undefined) yield { ...made, dwell: undefined };
  if (made.pedestrian !== undefined) yield { ...made, pedestrian: undefined };
  if (made.pedestrian?.dwell !== undefined) yield { ...made, pedestrian: { ...made.pedestrian, dwell: undefined } };
  if (made.sight !== undefined) yield { ...made, sight: undefined };
  for (const leaf of made.leaves) {
    if (leaf.room !== undefined) yield withLeaf(made, leaf, { room: undefined });
    if (leaf.drive?.senses === true) yield withLeaf(made, leaf, { drive: { ...leaf.drive, senses: false } });
    if (leaf.drive?.limits === true) yield withLeaf(made, leaf, { drive: { ...leaf.drive, limits: false } });
    if (leaf.opens === 'outward') yield withLeaf(made, leaf, { opens: 'inward' });
    if (leaf.moves === 'slides') yield withLeaf(made, leaf, { moves: 'swings' });
  }
  for (const sensor of made.sensors) {
    if (sensor.behind !== undefined) yield withSensor(made, sensor, { behind: undefined });
    if (sensor.watches.length > 1) for (const watch of sensor.watches) yield withSensor(made, sensor, { watches: [watch] });
    if (sensor.declares !== undefined) yield withSensor(made, sensor, { declares: undefined });
    if (sensor.height !== undefined) yield withSensor(made, sensor, { height: undefined });
    if (sensor.reach !== undefined) yield withSensor(made, sensor, { reach: undefined });
    if (sensor.liesOn !== undefined) yield withSensor(made, sensor, { liesOn: undefined });
    if (sensor.place !== undefined) yield withSensor(made, sensor, { place: undefined });
    if (sensor.test !== 'none') yield withSensor(made, sensor, { test: 'none' });
    if (sensor.learntBy.length > 0) yield withSensor(made, sensor, { learntBy: [] });
    if (sensor.signal?.turned === true) yield withSensor(made, sensor, { signal: { ...sensor.signal, turned: false } });
  }
  for (const control of made.controls) {
    if (control.by !== undefined) yield withControl(made, control, { by: undefined });
    if (control.sight !== undefined) yield withControl(made, control, { sight: undefined });
  }
  for (const panel of made.panels) {
    const change = (changed: Partial<typeof panel>): Made => ({
      ...made,
      panels: made.panels.map((one) => (one === panel ? { ...one, ...changed } : one)),
    });
    if (panel.declares !== undefined) yield change({ declares: undefined });
    if (panel.position !== undefined) yield change({ position: undefined });
    if (panel.bridges.length > 0) yield change({ bridges: [] });
    if (panel.testsRelays) yield change({ testsRelays: false });
    if (panel.learns) yield change({ learns: false });
    if (panel.tidy) yield change({ tidy: false });
  }
}

/** The same failure in as little as can be: one thing after another is left out. */
export function smaller(made: Made, fails: (made: Made) => boolean): Made {
  let least = made;
  for (let found = true; found; ) {
    found = false;
    for (const candidate of candidates(least))
      if (fails(candidate)) {
        least = candidate;
        found = true;
        break;
      }
  }
  return least;
}
