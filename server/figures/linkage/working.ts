import type { Drive, DriveModel, Leaf } from '../../model/index.ts';
import { armMountingOf } from '../articulated-arm/working.ts';
import { ramMountingOf } from '../linear-ram/working.ts';
import { armLinkage, directLinkage, type Linkage, rackLinkage, ramLinkage } from './maths.ts';

// Other maths walks along a linkage; what would change if a bracket moved is worked out with a linkage of its own.
export { driveAt, type Linkage, leafAt, ramLinkage } from './maths.ts';

type DriveKind = NonNullable<DriveModel['facts']['kind']>['value'];

/** How a drive of this kind moves its leaf; undefined where a fact is missing, or the drive cannot make the travel. */
export function linkageOf(drive: Drive, kind: DriveKind, { facts: { opens, slides } }: Leaf): Linkage | undefined {
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
