// Generated from the files of this folder by `npm run generate`. Do not edit.
import type { BlockOfFile, Entity } from '../spec.ts';
import { block as siteBlock } from './site.ts';
import { block as leafBlock } from './leaf.ts';
import { block as driveBlock } from './drive.ts';
import { block as sensorBlock } from './sensor.ts';
import { block as controlBlock } from './control.ts';
import { block as panelBlock } from './panel.ts';
import { block as motionBlock } from './motion.ts';
import { block as cableBlock } from './cable.ts';
import { block as measuredBlock } from './measured.ts';
import { block as functionBlock } from './function.ts';
import { block as panelModelBlock } from './panel-model.ts';
import { block as driveModelBlock } from './drive-model.ts';
import { block as sensorModelBlock } from './sensor-model.ts';
import { block as cableModelBlock } from './cable-model.ts';

/** All blocks that may stand in a file, by their word, in the order of their places. */
export const blocks = {
  site: siteBlock,
  leaf: leafBlock,
  drive: driveBlock,
  sensor: sensorBlock,
  control: controlBlock,
  panel: panelBlock,
  motion: motionBlock,
  cable: cableBlock,
  measured: measuredBlock,
  function: functionBlock,
  'panel-model': panelModelBlock,
  'drive-model': driveModelBlock,
  'sensor-model': sensorModelBlock,
  'cable-model': cableModelBlock,
} as const satisfies Readonly<Record<string, BlockOfFile>>;

/** What is read of each block, as yet nothing. Written out, so that all are objects of one shape. */
export const noneRead = (): Record<keyof typeof blocks, Entity[]> => ({
  site: [],
  leaf: [],
  drive: [],
  sensor: [],
  control: [],
  panel: [],
  motion: [],
  cable: [],
  measured: [],
  function: [],
  'panel-model': [],
  'drive-model': [],
  'sensor-model': [],
  'cable-model': [],
});
