// The minimum level of safeguarding at the main closing edge, by kind of control and type of use.
// EN 12453:2000, 5.5.1, Table 1: the readable minimum. The current edition is EN 12453:2017+A1:2021.
import { type Installation, perSubject } from '../model/index.ts';
import { type Command, type ControlKind, commandsOf } from './commands.ts';
import type { Measures } from './guarding.ts';

/** EN 12453's types of use: 1 trained, 2 a limited group, 3 the public. */
export type Users = 'trained' | 'limited' | 'public';

/** What one cell of the table asks for. */
export type Requirement = 'hold-to-run is enough' | 'not allowed' | 'C or E' | '(C and D) or E';

const table: Readonly<Record<ControlKind, Readonly<Record<Users, Requirement>>>> = {
  'hold-to-run': { trained: 'hold-to-run is enough', limited: 'not allowed', public: 'not allowed' },
  'hold-to-run by key': { trained: 'hold-to-run is enough', limited: 'hold-to-run is enough', public: 'not allowed' },
  // Held by somebody who may not see the gate is not held at all.
  'hold-to-run, gate not in view': { trained: 'C or E', limited: '(C and D) or E', public: '(C and D) or E' },
  'impulse, gate in view': { trained: 'C or E', limited: 'C or E', public: '(C and D) or E' },
  'impulse, gate not in view': { trained: 'C or E', limited: '(C and D) or E', public: '(C and D) or E' },
  automatic: { trained: '(C and D) or E', limited: '(C and D) or E', public: '(C and D) or E' },
};

export function requirementFor(control: ControlKind, users: Users): Requirement {
  return table[control][users];
}

/** True when the measures meet the requirement. `not allowed` is met by nothing. */
export function meets(measures: Measures, requirement: Requirement): boolean {
  switch (requirement) {
    case 'hold-to-run is enough':
      return true;
    case 'not allowed':
      return false;
    case 'C or E':
      return measures.C || measures.E;
    case '(C and D) or E':
      return (measures.C && measures.D) || measures.E;
  }
}

/** A requirement in words. */
export const inWords: Readonly<Record<Requirement, string>> = {
  'hold-to-run is enough': 'nothing more than the hold-to-run control',
  'not allowed': 'another kind of control',
  'C or E': 'force limitation, as a pressure-sensitive edge gives (C), or presence detection that lets the leaf touch nobody (E)',
  '(C and D) or E':
    'force limitation, as a pressure-sensitive edge gives (C), together with detection of a person on the ground (D); or presence detection that lets the leaf touch nobody (E)',
};

/** The letters that are there, in words. */
export function present(measures: Measures): string {
  const letters = (['C', 'D', 'E'] as const).filter((letter) => measures[letter]);
  return letters.length === 0 ? 'none' : letters.join(' and ');
}

export const matrixSource = {
  text: 'EN 12453:2000, 5.5.1, Table 1 (readable minimum; the current edition is EN 12453:2017+A1:2021)',
  standing: 'published',
} as const;

export interface Asked {
  readonly command: Command;
  readonly requirement: Requirement;
}

/**
 * The command that asks for most of what measures can meet. Undefined where each is held in view, which asks for none, or not allowed,
 * which none meets; and where nothing commands.
 */
export function strictest(commands: readonly Command[], users: Users): Asked | undefined {
  let worst: Asked | undefined;
  for (const command of commands) {
    const requirement = requirementFor(command.kind, users);
    if (requirement === 'hold-to-run is enough' || requirement === 'not allowed') continue;
    if (worst === undefined || (worst.requirement === 'C or E' && requirement === '(C and D) or E')) worst = { command, requirement };
  }
  return worst;
}

/** What the ways in which the gate is commanded ask of every closing edge. Who may be near and is not stated may be anybody. */
export const askedOf = perSubject((installation: Installation): Asked | undefined =>
  strictest(commandsOf(installation), installation.site?.facts.users?.value ?? 'public'),
);
