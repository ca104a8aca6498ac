import { headPlace } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, ofTheModel } from '../rule.ts';
import { quoted, written } from '../words.ts';

/** What of a leaf is held against what of its drive. */
const sizes = [
  {
    held: { name: 'width for its drive', unit: 'm', way: 'most' },
    fact: 'width',
    limit: 'widest-leaf',
    says: (size: string) => `is ${size} wide, wider`,
  },
  {
    held: { name: 'mass for its drive', unit: 'kg', way: 'most' },
    fact: 'mass',
    limit: 'heaviest-leaf',
    says: (size: string) => `weighs ${size}, more`,
  },
] as const;

export const rule = installationRule({
  name: 'leaf-over-drive-rating',
  severity: 'error',
  title: 'A leaf is wider or heavier than its drive is made for.',
  why: 'The drive cannot hold or stop such a leaf as its maker says it does: forces, run times and the way it stops are no longer what was tested.',
  remedy: 'Choose a drive that is made for this leaf, or a smaller or lighter leaf.',
  source: ofTheModel,
  acceptable: false,
  holds: ({ drives }, hold) => {
    for (const drive of drives) {
      const { leaf, model } = drive;
      if (leaf === undefined || model === undefined) continue;
      for (const { held, fact, limit, says } of sizes) {
        const size = leaf.facts[fact];
        const most = model.facts[limit];
        if (size === undefined || most === undefined) continue;
        hold(bound(held, leaf.name, size.value, most.value, hair(most.value)), size.line, () => ({
          what: `${quoted(leaf.name)} ${says(written(size.line))} than the ${written(most.line)} that its drive ${quoted(drive.name)} (${model.name}) is made for.`,
          related: [
            { message: 'the drive', ...headPlace(drive) },
            ...toFact('moves this leaf', drive.facts.moves),
            ...toModelFact('the most that its maker allows', drive.installation, model, most),
          ],
        }));
      }
    }
  },
});
