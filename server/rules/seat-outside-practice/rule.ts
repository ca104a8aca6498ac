import type { Drive, Installation } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { seconds } from '../numbers.ts';
import { toModelFact } from '../related.ts';
import { commonPractice, type Hold, installationRule, ofTheModel } from '../rule.ts';
import { quoted, written } from '../words.ts';

/** What is usual where no model says otherwise, seconds. */
const usual = { least: 1, most: 2 } as const;
const held = { least: { name: 'seat', unit: 's', way: 'least' }, most: { name: 'seat', unit: 's', way: 'most' } } as const;

export const rule = installationRule({
  name: 'seat-outside-practice',
  severity: 'warning',
  title: 'The drives push on at the stops for less or for longer than their maker allows, or than is usual.',
  why: 'Too short, and wind or a cold drive leaves the gate ajar; too long, and the drive strains against the stop and holds whatever is caught there.',
  remedy: 'Set the seat as the maker of the drive says; where nothing is said, between 1 s and 2 s.',
  source: ofTheModel,
  acceptable: true,
  holds: (installation, hold) => {
    if (installation.motion?.facts.seat === undefined) return;
    let byModel = false;
    const models = new Set(installation.drives.map(({ model }) => model));
    for (const model of models) {
      if (model?.facts.seat === undefined) continue;
      byModel = true;
      holdToModel(installation, model, model.facts.seat, hold);
    }
    if (!byModel) holdToPractice(installation.motion.facts.seat, hold);
  },
});

type Model = NonNullable<Drive['model']>;
type Seat = NonNullable<NonNullable<Installation['motion']>['facts']['seat']>;

function holdToModel(installation: Installation, model: Model, allowed: NonNullable<Model['facts']['seat']>, hold: Hold): void {
  const seat = installation.motion?.facts.seat;
  if (seat === undefined) return;
  const { low: from, high: to } = allowed.value;
  const say = (is: 'shorter' | 'longer') => () => ({
    what: `A seat of ${written(seat.line)} is ${is} than ${quoted(model.name)} allows (${seconds(from)} to ${seconds(to)}).`,
    related: toModelFact('what its maker allows', installation, model, allowed),
  });
  hold(bound(held.least, model.name, seat.value, from, 1e-9), seat.line, say('shorter'));
  hold(bound(held.most, model.name, seat.value, to, 1e-9), seat.line, say('longer'));
}

/** Nobody but practice says how long is right, so that is worth a note and no more. */
function holdToPractice(seat: Seat, hold: Hold): void {
  const say = (is: 'shorter' | 'longer') => () => ({
    severity: 'note' as const,
    what: `A seat of ${written(seat.line)} is ${is} than usual practice (1 s to 2 s), and no drive says what its maker allows.`,
    source: commonPractice,
  });
  hold(bound(held.least, '', seat.value, usual.least), seat.line, say('shorter'));
  hold(bound(held.most, '', seat.value, usual.most), seat.line, say('longer'));
}
