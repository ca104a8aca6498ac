// The model room: names, imports, models, and the installation that comes of them.
export { factPlace, headPlace } from './installation.ts';
export type {
  Adjuster, Battery, Cable, CableModel, Control, Device, Drive, DriveModel, ForceRecord, FunctionPart, Installation, Leaf, Load, Measured,
  Motion, Panel, PanelModel, Place, SafetyFunction, Selection, Sensor, SensorModel, Site, Solar, Subsystem, Terminal, TerminalLink,
  TerminalRole, TerminalUse, Wire,
} from './installation.ts';
export { perSubject } from './memo.ts';
export { plainSite, type Plain, type PlainBlock, type PlainSite } from './plain.ts';
export { regimeOf, type Body, type Regime } from './regime.ts';
export type { InstallationProblem, InstallationProblems } from './problems.ts';
export { folderOf, resolveUse } from './paths.ts';
export { resolve } from './resolve.ts';
export { buildShelf, hasOwnModels, libraryOf, type Library, type Lookup, type Models, type Shelf } from './shelf.ts';
