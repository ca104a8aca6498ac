// The safeguarding matrix, cell by cell, against EN 12453:2000, 5.5.1, Table 1 as restated in public: HSE Safety Notice
// FOD 7-2010 (automatic control, users of type 2 and 3), and for the remaining cells the concordant public restatements
// (control and users as in the table; type 1 automatic from memory).
import { describe, expect, it } from 'vitest';
import type { ControlKind, Measures } from '../../server/safeguards/index.ts';
import { meets, requirementFor, type Users } from '../../server/safeguards/index.ts';

const letters: readonly (keyof Measures)[] = ['C', 'D', 'E'];

/** Every set of measures. */
const sets: readonly Measures[] = Array.from({ length: 8 }, (_, bits) => ({ C: (bits & 1) > 0, D: (bits & 2) > 0, E: (bits & 4) > 0 }));

/** The table again, written as the sets that are enough: shares no code with the rule. */
const enough: readonly (readonly [ControlKind, Users, readonly string[] | 'anything' | 'nothing'])[] = [
  ['hold-to-run', 'trained', 'anything'],
  ['hold-to-run', 'limited', 'nothing'],
  ['hold-to-run', 'public', 'nothing'],
  ['hold-to-run by key', 'trained', 'anything'],
  ['hold-to-run by key', 'limited', 'anything'],
  ['hold-to-run by key', 'public', 'nothing'],
  ['impulse, gate in view', 'trained', ['C', 'E']],
  ['impulse, gate in view', 'limited', ['C', 'E']],
  ['impulse, gate in view', 'public', ['CD', 'E']],
  ['impulse, gate not in view', 'trained', ['C', 'E']],
  ['impulse, gate not in view', 'limited', ['CD', 'E']],
  ['impulse, gate not in view', 'public', ['CD', 'E']],
  ['automatic', 'trained', ['CD', 'E']],
  ['automatic', 'limited', ['CD', 'E']],
  ['automatic', 'public', ['CD', 'E']],
];

describe('the safeguarding matrix', () => {
  it.each(enough)('%s, %s', (control, users, ways) => {
    for (const measures of sets) {
      const expected =
        ways === 'anything' || (ways !== 'nothing' && ways.some((way) => [...way].every((letter) => measures[letter as keyof Measures])));
      expect(meets(measures, requirementFor(control, users)), JSON.stringify(measures)).toBe(expected);
    }
  });

  it('is met by more measures wherever it is met by fewer (minimum levels)', () => {
    for (const [control, users] of enough)
      for (const measures of sets)
        for (const letter of letters) {
          const requirement = requirementFor(control, users);
          if (meets(measures, requirement)) expect(meets({ ...measures, [letter]: true }, requirement)).toBe(true);
        }
  });
});
