import { bound } from '../bounds.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { written } from '../words.ts';

/** Seconds. */
const least = 1;
const most = 2;
const held = { least: { name: 'seat', unit: 's', way: 'least' }, most: { name: 'seat', unit: 's', way: 'most' } } as const;

export const rule = installationRule({
  name: 'seat-outside-practice',
  severity: 'warning',
  title: 'The drives push on at the stops for less than 1 s or more than 2 s.',
  why: 'Too short, and wind or a cold drive leaves the gate ajar; too long, and the drive strains against the stop and holds whatever is caught there.',
  remedy: 'Set the seat between 1 s and 2 s.',
  source: commonPractice,
  acceptable: true,
  holds: ({ motion }, hold) => {
    const seat = motion?.facts.seat;
    if (seat === undefined) return;
    const say = (is: 'shorter' | 'longer') => () => ({
      what: `A seat of ${written(seat.line)} is ${is} than usual practice (1 s to 2 s).`,
    });
    hold(bound(held.least, '', seat.value, least), seat.line, say('shorter'));
    hold(bound(held.most, '', seat.value, most), seat.line, say('longer'));
  },
});
