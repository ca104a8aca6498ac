import { factPlace, type Drive, type Leaf } from '../../model/index.ts';
import { armMountingOf, fallback, mechanics, ramMountingOf, travelOf, travelPlace } from '../common.ts';
import { inDegrees, type FigureKind, type Input } from '../figure.ts';
import { armLinkage, directLinkage, rackLinkage, ramLinkage, type Linkage } from '../linkage/maths.ts';
import { perSubject } from '../memo.ts';
import { profileOf, runTime, type Profile } from '../motion-profile/maths.ts';

/** How one leaf moves from stop to stop. Opening and closing use the same profile, each from its own end. */
export interface LeafMotion {
  readonly drive: Drive;
  readonly linkage: Linkage;
  readonly profile: Profile;
  /** Drive travel: metres of ram or rack, radians of shaft. */
  readonly travel: number;
  /** Drive travel run slowly at the end of each movement. */
  readonly slowTravel: number;
  /** Drive speeds: metres or radians a second. */
  readonly speed: number;
  readonly slowSpeed: number;
  /** Stop to stop, without the seat, seconds. */
  readonly runTime: number;
  readonly unit: 'm' | 'rad';
}

/** The motion of a leaf by its first drive; undefined where a fact is missing or the drive cannot make the travel. */
export const motionOf = perSubject((leaf: Leaf): LeafMotion | undefined => {
  const drive = leaf.drives[0];
  const facts = drive?.model?.facts;
  const travelAsked = travelOf(leaf);
  if (drive === undefined || facts?.kind === undefined || travelAsked === undefined) return undefined;
  const kind = facts.kind.value;
  const linkage = linkageOf(drive, leaf, travelAsked);
  const full = kind === 'linear-ram' || kind === 'rack' ? facts.speed?.value : facts['shaft-speed']?.value;
  if (linkage === undefined || full === undefined) return undefined;
  const motion = leaf.installation.motion?.facts;
  const zone = motion?.['slow-zone'];
  const ramp = facts.ramp?.value ?? fallback.ramp;
  const travel = linkage.drive[linkage.drive.length - 1] as number;
  const speed = full * (motion?.speed?.value ?? fallback.speed);
  const slowSpeed = full * (zone?.speed ?? facts['slow-speed']?.value ?? fallback.slowSpeed);
  const slowTravel = travel * (zone?.last ?? 0);
  const profile = profileOf({ travel, speed, acceleration: ramp > 0 ? full / ramp : Infinity, slowTravel, slowSpeed });
  if (profile === undefined) return undefined;
  return { drive, linkage, profile, travel, slowTravel, speed, slowSpeed: Math.min(slowSpeed, speed), runTime: runTime(profile), unit: kind === 'linear-ram' || kind === 'rack' ? 'm' : 'rad' };
});

function linkageOf(drive: Drive, leaf: Leaf, travel: number): Linkage | undefined {
  switch (drive.model?.facts.kind?.value) {
    case 'linear-ram': {
      const mounting = ramMountingOf(drive);
      return mounting === undefined || leaf.facts.opens === undefined ? undefined : ramLinkage(mounting, travel);
    }
    case 'articulated-arm': {
      const mounting = armMountingOf(drive);
      return mounting === undefined || leaf.facts.opens === undefined ? undefined : armLinkage(mounting, travel);
    }
    case 'direct':
      return leaf.facts.opens === undefined ? undefined : directLinkage(travel);
    case 'rack':
      return leaf.facts.slides === undefined ? undefined : rackLinkage(travel);
    case undefined:
      return undefined;
  }
}

function inputsOf(motion: LeafMotion): Input[] {
  const rotary = motion.unit === 'rad';
  const shown = (value: number): number => (rotary ? inDegrees(value) : value);
  const unit = rotary ? 'deg' : 'm';
  const model = `drive-model ${motion.drive.model?.name ?? ''}`;
  const ramp = motion.drive.model?.facts.ramp?.value ?? fallback.ramp;
  return [
    { name: 'drive travel', value: shown(motion.travel), unit },
    { name: 'full speed', value: shown(motion.speed), unit: unit + '/s', from: model },
    { name: 'travel in the slow zone', value: shown(motion.slowTravel), unit },
    { name: 'slow speed', value: shown(motion.slowSpeed), unit: unit + '/s', from: model },
    { name: 'time to full speed', value: ramp, unit: 's', from: model },
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
