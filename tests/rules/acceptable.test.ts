// What a local reason may overrule, rule by rule. A rule that is not in a table cannot be accepted: whoever adds one decides it here.
//
// No reason of a site overrules what a standard asks for so that nobody is hurt, what plainly cannot work, or what the file itself says
// wrongly: there the gate or the file is to be changed. It may overrule practice, what costs money or patience only, and what is a matter
// of how much is known.
import { expect, test } from 'vitest';
import { allRules } from '../../server/rules/all.ts';
import { judge } from '../kit/pages.ts';

/** Why each may be accepted, whatever it finds. */
const always = {
  'battery-too-small': 'the gate stands still in a power cut, and is released by hand',
  'closed-leaf-in-wind': 'the gate waits until the wind drops',
  'common-cause-not-shown': 'EN ISO 13849-1, Annex F, may be answered in other papers',
  'control-within-reach': 'a warning from memory',
  'drive-force-unfit': 'the model says more than is used',
  'duty-over-rating': 'the drive lives shorter or rests',
  'dwell-shorter-than-clearance': 'a protected gate waits for whoever is in the way',
  'electrical-facts-unstated': 'a gap in what is known',
  'force-window-narrow': 'it keeps to its limits',
  'gate-saturated': 'vehicles wait',
  'hold-to-run-overtravels': 'a warning from memory',
  'lag-without-overlap': 'nothing collides',
  'leaf-driven-twice': 'two drives may be meant to push one leaf',
  'leaf-without-drive': 'a leaf may be moved by hand',
  'mains-isolation-not-stated': 'it may be written elsewhere',
  'part-due-for-replacement': 'a plan of maintenance may say when',
  'pivot-gap-too-wide': 'a warning from memory',
  'protection-below-load': 'it trips too early, which is safe',
  'queue-reaches-road': 'the road may have room',
  'safety-function-undeclared': 'a gap in what is known',
  'seat-outside-practice': 'practice, no rule',
  'slow-zone-missing': 'practice, no rule',
  'solar-too-small': 'the gate stands still on dark days',
  'use-cycle': 'libraries may speak of each other',
  'use-repeated': 'it changes nothing',
  'use-unused': 'it changes nothing',
  'warning-sign-missing': 'a warning: a sign may hang elsewhere',
} as const;

/** Their warnings may be accepted and their errors may not. */
const warningsOnly = [
  'beam-too-high',
  'force-not-measured',
  'force-points-missing',
  'force-setting-outside-window',
  'force-test-overdue',
  'force-window-empty',
  'instrument-out-of-calibration',
  'lag-too-small',
  'leaf-moves-when-released',
  'manual-release-not-stated',
  'name-mixes-alphabets',
  'not-judged',
  'performance-level-too-low',
  'protection-over-cable-rating',
  'protection-untested',
  'protective-conductor-too-small',
  'tail-outside-practice',
  'voltage-drop-too-great',
];

/** Errors that cost money or patience and hurt nobody. */
const errorsThatHurtNobody = ['duty-over-rating'];

const namesOf = (acceptable: boolean | 'warnings'): string[] =>
  allRules.flatMap((rule) => (rule.acceptable === acceptable ? [rule.name] : [])).sort();

test('what may always be accepted is decided, with why', () => expect(namesOf(true)).toEqual(Object.keys(always).sort()));
test('what may be accepted as a warning alone is decided', () => expect(namesOf('warnings')).toEqual(warningsOnly));
test('no error may be accepted but one that hurts nobody', () =>
  expect(allRules.filter(({ acceptable, severity }) => acceptable === true && severity === 'error').map(({ name }) => name)).toEqual(
    errorsThatHurtNobody,
  ));

test('an error that the law of levers makes is not overruled by what a customer wants', () => {
  const site = (accepting: string): string =>
    'language 1\nsite "Example" {\n  rules europe\n  users limited\n}\n' +
    'leaf west {\n  width 2.4 m\n  height 1.6 m\n  mass 150 kg\n  opens inward 90 deg\n  hinge-guard 60 mm\n  friction 400 N\n' +
    `${accepting}}\ndrive floor : strong {\n  moves west\n}\n` +
    'drive-model strong "s" {\n  kind direct\n  rotation 110 deg\n  shaft-speed 7 deg/s\n  torque 3000 N·m\n}\n';
  const found = (accepting: string): string[] =>
    judge(site(accepting))
      .findings.filter(({ rule }) => /^(force-window-empty|acceptance)/.test(rule))
      .map(({ severity, rule }) => `${severity} ${rule}`);
  expect(found('')).toEqual(['error force-window-empty']);
  expect(found('  accept force-window-empty because "customer wants it" by "KL" until 2027-03-01\n').sort()).toEqual([
    'error acceptance-not-allowed',
    'error force-window-empty',
  ]);
});
