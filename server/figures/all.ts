// Generated from the folders of this room by `npm run generate`. Do not edit.
import { figures as adjuster } from './adjuster/figure.ts';
import { figures as articulatedArm } from './articulated-arm/figure.ts';
import { figures as clearanceTime } from './clearance-time/figure.ts';
import { figures as currentRating } from './current-rating/figure.ts';
import { figures as cycleTime } from './cycle-time/figure.ts';
import { figures as designCurrent } from './design-current/figure.ts';
import { figures as edgeLoop } from './edge-loop/figure.ts';
import { figures as edgeSpeed } from './edge-speed/figure.ts';
import { figures as kineticEnergy } from './kinetic-energy/figure.ts';
import { figures as leafInertia } from './leaf-inertia/figure.ts';
import { figures as leastLag } from './least-lag/figure.ts';
import { figures as linearRam } from './linear-ram/figure.ts';
import { figures as reachableAngle } from './reachable-angle/figure.ts';
import { figures as runTime } from './run-time/figure.ts';
import { figures as voltageDrop } from './voltage-drop/figure.ts';
import type { FigureKind } from './figure.ts';

export const allFigures: readonly FigureKind[] = [
  ...adjuster,
  ...articulatedArm,
  ...clearanceTime,
  ...currentRating,
  ...cycleTime,
  ...designCurrent,
  ...edgeLoop,
  ...edgeSpeed,
  ...kineticEnergy,
  ...leafInertia,
  ...leastLag,
  ...linearRam,
  ...reachableAngle,
  ...runTime,
  ...voltageDrop,
];
