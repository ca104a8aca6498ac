import { factPlace } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { commonPractice, installationRule } from '../rule.ts';

const least = 1;
const most = 2;
const held = { least: { name: 'seat', unit: 's', way: 'least' }, most: { name: 'seat', unit: 's', way: 'most' } } as const;

const boundsOf = (seat: number): readonly [Bound, Bound] => [bound(held.least, '', seat, least), bound(held.most, '', seat, most)];

export const rule = installationRule({
  name: 'seat-outside-practice',
  severity: 'warning',
  title: 'The drives push on at the stops for less than 1 s or more than 2 s.',
  why: 'Too short, and wind or a cold drive leaves the gate ajar; too long, and the drive strains against the stop and holds whatever is caught there.',
  remedy: 'Set the seat between 1 s and 2 s.',
  source: commonPractice,
  acceptable: true,
  check: ({ motion }, report) => {
    const seat = motion?.facts.seat;
    if (seat === undefined || boundsOf(seat.value).every(keeps)) return;
    report({ at: factPlace({ at: seat.line }, seat), what: `A seat of ${seat.value} s is ${seat.value < least ? 'shorter' : 'longer'} than usual practice (1 s to 2 s).` });
  },
  margins: ({ motion }, give) => {
    const seat = motion?.facts.seat;
    if (seat !== undefined) for (const each of boundsOf(seat.value)) give(each, factPlace({ at: seat.line }, seat));
  },
});
