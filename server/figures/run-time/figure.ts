import { type Drive, type DriveModel, factPlace, type Leaf, perSubject } from '../../model/index.ts';
import { armMountingOf, fallback, mechanics, ramMountingOf, travelPlace } from '../common.ts';
import { inDegrees, type FigureKind, type Input } from '../figure.ts';
import { armLinkage, directLinkage, rackLinkage, ramLinkage, type Linkage } from '../linkage/maths.ts';
import { profileOf, runTime, type Profile } from '../motion-profile/maths.ts';

/** How one leaf moves from stop to stop. Opening and closing use the same profile, each from its own end. */
export interface LeafMotion {
  readonly drive: Drive;
  readonly model: DriveModel;
  readonly linkage: Linkage;
  readonly profile: Profile;
  /** Drive travel: metres of ram or rack, radians of shaft. */
  readonly travel: number;
  /** Drive travel run slowly at the end of each movement. */
  readonly slowTravel: number;
  /** What the drive can, what it is set to, and what it does in the slow zone: metres or radians a second. */
  readonly fullSpeed: number;
  readonly speed: number;
  readonly slowSpeed: number;
  /** Stop to stop, without the seat, seconds. */
  readonly runTime: number;
  readonly unit: 'm' | 'rad';
}

/** The motion of a leaf by its first drive; undefined where a fact is missing or the drive cannot make the travel. */
export const motionOf = perSubject((leaf: Leaf): LeafMotion | undefined => {
  const drive = leaf.drives[0];
  if (drive?.model?.facts.kind === undefined) return undefined;
  const { model } = drive;
  const { facts } = model;
  const kind = drive.model.facts.kind.value;
  const linkage = linkageOf(drive, kind, leaf);
  const unit = kind === 'linear-ram' || kind === 'rack' ? 'm' : 'rad';
  const full = unit === 'm' ? facts.speed?.value : facts['shaft-speed']?.value;
  if (linkage === undefined || full === undefined) return undefined;
  const motion = leaf.installation.motion?.facts;
  const zone = motion?.['slow-zone'];
  const ramp = facts.ramp?.value ?? fallback.ramp;
  const travel = linkage.drive[linkage.drive.length - 1] as number;
  const speed = full * (motion?.speed?.value ?? fallback.speed);
  const slowSpeed = full * (zone?.speed ?? facts['slow-speed']?.value ?? fallback.slowSpeed);
  const slowTravel = travel * (zone?.last ?? 0);
  const profile = profileOf({ travel, speed, acceleration: full / ramp, slowTravel, slowSpeed });
  if (profile === undefined) return undefined;
  return { drive, model, linkage, profile, travel, slowTravel, fullSpeed: full, speed, slowSpeed: Math.min(slowSpeed, speed), runTime: runTime(profile), unit };
});

function linkageOf(drive: Drive, kind: NonNullable<DriveModel['facts']['kind']>['value'], { facts: { opens, slides } }: Leaf): Linkage | undefined {
  switch (kind) {
    case 'linear-ram': {
      const mounting = ramMountingOf(drive);
      return mounting === undefined || opens === undefined ? undefined : ramLinkage(mounting, opens.angle);
    }
    case 'articulated-arm': {
      const mounting = armMountingOf(drive);
      return mounting === undefined || opens === undefined ? undefined : armLinkage(mounting, opens.angle);
    }
    case 'direct':
      return opens === undefined ? undefined : directLinkage(opens.angle);
    case 'rack':
      return slides === undefined ? undefined : rackLinkage(slides.distance);
  }
}

function inputsOf(motion: LeafMotion): Input[] {
  const rotary = motion.unit === 'rad';
  const shown = (value: number): number => (rotary ? inDegrees(value) : value);
  const unit = rotary ? 'deg' : 'm';
  const model = `drive-model ${motion.model.name}`;
  const { ramp, 'slow-speed': slowest } = motion.model.facts;
  const set = motion.drive.installation.motion?.facts;
  const zone = set?.['slow-zone'];
  const shareOf = (share: number): string => `${Number((share * 100).toPrecision(6))} % of that of ${model}`;
  return [
    { name: 'drive travel', value: shown(motion.travel), unit },
    { name: 'full speed', value: shown(motion.speed), unit: unit + '/s', from: set?.speed === undefined ? model : shareOf(set.speed.value) },
    { name: 'travel in the slow zone', value: shown(motion.slowTravel), unit },
    { name: 'slow speed', value: shown(motion.slowSpeed), unit: unit + '/s', from: zone?.speed !== undefined ? shareOf(zone.speed) : slowest !== undefined ? model : `default: ${shareOf(fallback.slowSpeed)}` },
    { name: 'time to full speed', value: ramp?.value ?? fallback.ramp, unit: 's', from: ramp === undefined ? 'default: none' : model },
  ];
}

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.run-time',
    title: 'Time from one stop to the other, at full speed and then through the slow zone',
    unit: 's',
    topic: 'timing',
    formula: 't = speeding up + full-speed travel / full speed + braking + slow travel / slow speed + braking to the stop',
    source: mechanics,
    changedBy: 'speed, slow zone, brackets, or another drive',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const motion = motionOf(leaf);
        if (motion !== undefined) give(leaf.name, motion.runTime, travelPlace(leaf), () => inputsOf(motion));
      }
    },
  },
  {
    id: 'leaf.NAME.drive-time',
    title: 'Time for which the drive is on: the run and the seat',
    unit: 's',
    topic: 'timing',
    formula: 'run time + seat',
    source: mechanics,
    changedBy: 'the seat, and all that changes the run time',
    work: ({ leaves, motion }, give) => {
      const seat = motion?.facts.seat;
      if (seat === undefined) return;
      for (const leaf of leaves) {
        const run = motionOf(leaf)?.runTime;
        if (run !== undefined)
          give(leaf.name, run + seat.value, factPlace({ at: seat.line }, seat), () => [
            { name: 'run time', value: run, unit: 's', from: `leaf.${leaf.name}.run-time` },
            { name: 'seat', value: seat.value, unit: 's' },
          ]);
      }
    },
  },
];
