// The things of the file that a plan shows, by their ids.
import type { Control, Drive, Leaf, Sensor } from '../../../model/index.ts';
import { whole } from '../drawing.ts';
import { short } from '../text.ts';
import type { Plan } from './plan.ts';

export const leafThing = ({ things }: Plan, leaf: Leaf): string =>
  things.note(`leaf.${leaf.name}`, `leaf ${short(leaf.name)}`, whole(leaf.at));
export const driveThing = ({ things }: Plan, drive: Drive): string =>
  things.note(`drive.${drive.name}`, `drive ${short(drive.name)}`, whole(drive.at));
export const sensorThing = ({ things }: Plan, sensor: Sensor): string =>
  things.note(`sensor.${sensor.name}`, `sensor ${short(sensor.name)}`, whole(sensor.at));
export const controlThing = ({ things }: Plan, control: Control): string =>
  things.note(`control.${control.name}`, `control ${short(control.name)}`, whole(control.at));
/** The stated room behind an open leaf. */
export const roomThing = ({ things }: Plan, leaf: Leaf, room: NonNullable<Leaf['facts']['room-when-open']>): string =>
  things.note(`leaf.${leaf.name}.room-when-open`, roomTitle(leaf), whole(room.line));
export const roomTitle = (leaf: Leaf): string => `room behind the open leaf ${short(leaf.name)}`;
