// The parts of a site as they begin: what their blocks say of them, and as yet tied to no other part. Each is a literal of its own
// although most of it is the same in all: classes, and copies of a common part, take nearly twice as long to make.
import type { Blocks, Entity } from '../vocabulary/index.ts';
import type {
  Cable,
  CableModel,
  Control,
  Drive,
  DriveModel,
  FunctionPart,
  Installation,
  Leaf,
  Panel,
  PanelModel,
  SafetyFunction,
  Sensor,
  SensorModel,
} from './installation.ts';

export const newLeaf = ({ name, at, nameAt, title, facts, unread }: Entity<Blocks['leaf']>, installation: Installation): Leaf => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  drives: [],
  sensors: [],
  forces: [],
  covers: undefined,
  coveredBy: undefined,
});

export const newDrive = (
  { name, at, nameAt, title, facts, unread, model: modelAt }: Entity<Blocks['drive']>,
  installation: Installation,
  model: DriveModel | undefined,
): Drive => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  modelAt,
  model,
  leaf: undefined,
});

export const newSensor = (
  { name, at, nameAt, title, facts, unread, model: modelAt }: Entity<Blocks['sensor']>,
  installation: Installation,
  model: SensorModel | undefined,
): Sensor => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  modelAt,
  model,
  leaf: undefined,
  next: undefined,
  wires: [],
  registered: false,
});

export const newControl = ({ name, at, nameAt, title, facts, unread }: Entity<Blocks['control']>, installation: Installation): Control => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  wires: [],
});

export const newPanel = (
  { name, at, nameAt, title, facts, unread, model: modelAt, blocks }: Entity<Blocks['panel']>,
  installation: Installation,
  model: PanelModel | undefined,
): Panel => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  modelAt,
  model,
  wires: [],
  links: [],
  selections: [],
  battery: blocks.battery[0],
  solar: blocks.solar[0],
});

export const newCable = (
  { name, at, nameAt, title, facts, unread, model: modelAt }: Entity<Blocks['cable']>,
  installation: Installation,
  model: CableModel | undefined,
): Cable => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  modelAt,
  model,
  load: undefined,
});

export const newFunction = (
  { name, at, nameAt, title, facts, unread, blocks }: Entity<Blocks['function']>,
  installation: Installation,
  parts: readonly FunctionPart[],
): SafetyFunction => ({
  name,
  at,
  nameAt,
  title,
  facts,
  unread,
  memo: [],
  installation,
  parts,
  subsystems: blocks.subsystem,
});
