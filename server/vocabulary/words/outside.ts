// The lines that need no block around them.
import { choice, count, date, type LineSpec, ref, text } from '../spec.ts';

/** Lines that stand outside all blocks. */
export const topLines = {
  language: {
    doc: 'The version of the language that the file is written in. It stands first.',
    required: true,
    example: 'language 1',
    slots: { version: count(1, 1_000_000, { doc: 'The version; this Pintle reads 1.' }) },
  },
  use: {
    doc: 'A library file whose models this file speaks of, by a path relative to this file and inside the workspace.',
    many: true,
    example: 'use "../library/panels.gate"',
    slots: { path: text({ doc: 'The path, with forward slashes.' }) },
  },
  'expects-no': {
    doc:
      'Promises that nothing so grave is found in this file, but for what an “expects” line names: for files that teach or test. A ' +
      'promise that is not kept is a finding.',
    example: 'expects-no error',
    slots: {
      gravest: choice(
        { error: 'no errors', warning: 'no errors and no warnings', note: 'nothing at all' },
        { doc: 'From which severity on nothing may be found.' },
      ),
    },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;

/** Lines that may stand outside all blocks or in any block of a site: they hold for what they stand in. */
export const anywhereLines = {
  accept: {
    doc: 'Accepts what a rule finds here, with a reason, the initials of who answers for it, and an end.',
    many: true,
    example: 'accept seat-outside-practice because "worn stops, new ones are on order" by "KL" until 2027-03-31',
    slots: {
      rule: ref('rule', { doc: 'The rule.' }),
      reason: text({ doc: 'Why it is acceptable here.', after: 'because' }),
      initials: text({ doc: 'Who answers for it.', after: 'by', optional: true }),
      until: date({ doc: 'The last day on which it holds.', after: 'until' }),
    },
  },
  expects: {
    doc:
      'Promises that a rule finds something here: for files that teach or test. What it finds is shown as ever; a promise that is not ' +
      'kept is a finding of its own.',
    many: true,
    example: 'expects protection-untested',
    slots: { rule: ref('rule', { doc: 'The rule.' }) },
  },
} as const satisfies Readonly<Record<string, LineSpec>>;
