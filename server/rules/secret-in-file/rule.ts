import { commonPractice, installationRule } from '../rule.ts';
import { type SecretKind, secretsOf } from './secrets.ts';

// What is found is never repeated: findings end up in logs that more people read than the file.
const said: Readonly<Record<SecretKind, { readonly what: string; readonly remedy: string }>> = {
  password: {
    what: 'A password seems to stand here.',
    remedy: 'Take it out, keep it where only those who need it can look it up, and change it: the history of the file still has it.',
  },
  code: {
    what: 'A PIN or the code of a transmitter or keypad seems to stand here.',
    remedy:
      'Take it out, keep it where only those who need it can look it up, and change it at the gate: the history of the file still has it.',
  },
  telephone: {
    what: 'A telephone number seems to stand here.',
    remedy: 'Take it out and write where to find it: a name, or the customer’s number in the books.',
  },
};

export const rule = installationRule({
  name: 'secret-in-file',
  severity: 'error',
  scope: 'file',
  title: 'A password, a code or a telephone number stands in the file.',
  why: 'The file is copied, reviewed and printed by people who should not be able to open this gate, and its history keeps what was once written.',
  remedy: 'Take it out of the file.',
  source: commonPractice,
  acceptable: false,
  check: ({ reading }, report) => {
    for (const { kind, start, end } of secretsOf(reading))
      report({ at: { start, end }, ...said[kind], severity: kind === 'telephone' ? 'warning' : 'error' });
  },
});
