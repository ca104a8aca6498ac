// Generated from the folders of this room by `npm run generate`. Do not edit.
import { figures as adjuster } from './adjuster/figure.ts';
import { figures as articulatedArm } from './articulated-arm/figure.ts';
import { figures as battery } from './battery/figure.ts';
import { figures as cantilever } from './cantilever/figure.ts';
import { figures as clearanceTime } from './clearance-time/figure.ts';
import { figures as currentRating } from './current-rating/figure.ts';
import { figures as cycleTime } from './cycle-time/figure.ts';
import { figures as designCurrent } from './design-current/figure.ts';
import { figures as edgeLoop } from './edge-loop/figure.ts';
import { figures as edgeSpeed } from './edge-speed/figure.ts';
import { figures as forceRecords } from './force-records/figure.ts';
import { figures as forceWindow } from './force-window/figure.ts';
import { figures as hazards } from './hazards/figure.ts';
import { figures as hingeGap } from './hinge-gap/figure.ts';
import { figures as kineticEnergy } from './kinetic-energy/figure.ts';
import { figures as leafInertia } from './leaf-inertia/figure.ts';
import { figures as leafLoad } from './leaf-load/figure.ts';
import { figures as leastLag } from './least-lag/figure.ts';
import { figures as linearRam } from './linear-ram/figure.ts';
import { figures as loopImpedance } from './loop-impedance/figure.ts';
import { figures as overtravel } from './overtravel/figure.ts';
import { figures as reachThrough } from './reach-through/figure.ts';
import { figures as reachableAngle } from './reachable-angle/figure.ts';
import { figures as residualCurrent } from './residual-current/figure.ts';
import { figures as runTime } from './run-time/figure.ts';
import { figures as safetyFunction } from './safety-function/figure.ts';
import { figures as sliding } from './sliding/figure.ts';
import { figures as supplyBudget } from './supply-budget/figure.ts';
import { figures as traffic } from './traffic/figure.ts';
import { figures as underside } from './underside/figure.ts';
import { figures as voltageDrop } from './voltage-drop/figure.ts';
import { figures as wind } from './wind/figure.ts';
import { figures as windStall } from './wind-stall/figure.ts';
import type { FigureKind } from './kind.ts';

export const allFigures: readonly FigureKind[] = [
  ...adjuster,
  ...articulatedArm,
  ...battery,
  ...cantilever,
  ...clearanceTime,
  ...currentRating,
  ...cycleTime,
  ...designCurrent,
  ...edgeLoop,
  ...edgeSpeed,
  ...forceRecords,
  ...forceWindow,
  ...hazards,
  ...hingeGap,
  ...kineticEnergy,
  ...leafInertia,
  ...leafLoad,
  ...leastLag,
  ...linearRam,
  ...loopImpedance,
  ...overtravel,
  ...reachThrough,
  ...reachableAngle,
  ...residualCurrent,
  ...runTime,
  ...safetyFunction,
  ...sliding,
  ...supplyBudget,
  ...traffic,
  ...underside,
  ...voltageDrop,
  ...wind,
  ...windStall,
];
