import { headPlace, type Drive } from '../../model/index.ts';
import type { Statement } from '../../../grammar/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { installationRule, type Report } from '../rule.ts';
import { inModel, ofTheModel, written } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = {
  width: { name: 'width for its drive', unit: 'm', way: 'most' },
  mass: { name: 'mass for its drive', unit: 'kg', way: 'most' },
} as const;

/** A leaf against what its drive is made for. */
function boundOf({ leaf, model }: Drive, what: 'width' | 'mass'): Bound | undefined {
  const most = model?.facts[what === 'width' ? 'widest-leaf' : 'heaviest-leaf']?.value;
  const value = leaf?.facts[what]?.value;
  return leaf === undefined || most === undefined || value === undefined ? undefined : bound(held[what], leaf.name, value, most, hair(most));
}

const isOver = (drive: Drive, what: 'width' | 'mass'): boolean => {
  const size = boundOf(drive, what);
  return size !== undefined && !keeps(size);
};

export const rule = installationRule({
  name: 'leaf-over-drive-rating',
  severity: 'error',
  title: 'A leaf is wider or heavier than its drive is made for.',
  why: 'The drive cannot hold or stop such a leaf as its maker says it does: forces, run times and the way it stops are no longer what was tested.',
  remedy: 'Choose a drive that is made for this leaf, or a smaller or lighter leaf.',
  source: ofTheModel,
  acceptable: false,
  check: ({ drives }, report) => {
    for (const drive of drives) {
      const limits = drive.model?.facts;
      const facts = drive.leaf?.facts;
      if (limits === undefined || facts === undefined) continue;
      const widest = limits['widest-leaf'];
      const heaviest = limits['heaviest-leaf'];
      const { width, mass } = facts;
      if (widest !== undefined && width !== undefined && isOver(drive, 'width')) say(drive, width.line, widest.line, `is ${written(width.line)} wide, wider`, report);
      if (heaviest !== undefined && mass !== undefined && isOver(drive, 'mass')) say(drive, mass.line, heaviest.line, `weighs ${written(mass.line)}, more`, report);
    }
  },
  margins: ({ drives }, give) => {
    for (const drive of drives)
      for (const what of ['width', 'mass'] as const) {
        const size = boundOf(drive, what);
        const line = drive.leaf?.facts[what]?.line;
        if (size !== undefined && line !== undefined) give(size, line);
      }
  },
});

function say(drive: Drive, fact: Statement, limit: Statement, is: string, report: (report: Report) => void): void {
  const { leaf, model, installation } = drive;
  if (leaf === undefined || model === undefined) return;
  const moves = drive.facts.moves?.line;
  report({
    at: fact,
    what: `${quoted(leaf.name)} ${is} than the ${written(limit)} that its drive ${quoted(drive.name)} (${model.name}) is made for.`,
    related: [
      { message: 'the drive', ...headPlace(drive) },
      ...(moves === undefined ? [] : [{ message: 'moves this leaf', start: moves.start, end: moves.end }]),
      inModel(model, installation, limit, 'the most that its maker allows'),
    ],
  });
}
