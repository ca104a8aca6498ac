// The model room: names, imports, models, and the installation that comes of them.
export { factPlace, headPlace } from './installation.ts';
export type {
  Adjuster, Cable, CableModel, Control, Device, Drive, DriveModel, Installation, Leaf, Link, Motion, Panel, PanelModel, Place, Selection, Sensor, SensorModel, Site,
  Terminal, TerminalRole, TerminalUse, Wire,
} from './installation.ts';
export { folderOf, resolveUse } from './paths.ts';
export { resolve } from './resolve.ts';
export { buildShelf, hasOwnModels, libraryOf, type Library, type Lookup, type Models, type Shelf } from './shelf.ts';
