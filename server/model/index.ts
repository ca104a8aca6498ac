// The model room: names, imports, models, and the installation that comes of them.

export type {
  Adjuster,
  Battery,
  Cable,
  CableModel,
  Control,
  Device,
  Drive,
  DriveModel,
  ForceRecord,
  FunctionPart,
  Installation,
  Leaf,
  Load,
  Measured,
  Motion,
  Panel,
  PanelModel,
  Place,
  SafetyFunction,
  Selection,
  Sensor,
  SensorModel,
  Site,
  Solar,
  Subsystem,
  Terminal,
  TerminalLink,
  TerminalRole,
  TerminalUse,
  Wire,
} from './installation.ts';
export { factPlace, headPlace } from './installation.ts';
export { perSubject } from './memo.ts';
export { folderOf, looseRoot, resolveUse } from './paths.ts';
export { type Plain, type PlainBlock, type PlainSite, plainSite } from './plain.ts';
export type { InstallationProblem, InstallationProblems } from './problems.ts';
export { type Body, type Regime, regimeOf } from './regime.ts';
export { resolve } from './resolve.ts';
export { buildingShelf, hasOwnModels, type Library, type Lookup, libraryOf, type Models, mostLibraries, type Shelf } from './shelf.ts';
export { inOneGo, type Steps } from './steps.ts';
