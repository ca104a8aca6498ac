// Installations made by chance, judged by the rules and by an oracle that is written from the published tables: nothing that
// the tables call unsafe passes without an error, nothing that they call sound is flagged by a rule about safeguarding.
//   SITES=100000 npx vitest run tests/soundness     the long run
//   PINTLE_SEED=123 …                              another seed
import { expect, test } from 'vitest';
import { Workspace } from '../../server/engine/index.ts';
import { type Finding, ruleNamed } from '../../server/rules/index.ts';
import { seed } from '../kit/chance.ts';
import { type Made, make, textOf, truthOf } from './generate.ts';
import { cell, judge, rowsIn, type Verdict } from './oracle.ts';
import { smaller, withoutSensor } from './shrink.ts';
import { worsenings } from './worsenings.ts';

const count = Number(process.env['SITES'] ?? 2000);

/** The rules that judge how people are protected. */
const aboutLeaf = ['closing-edge-unguarded', 'safeguarding-below-minimum', 'protection-untested', 'entrapment-protection-below-minimum'];
const safeguarding = [
  ...aboutLeaf,
  'hold-to-run-misuse',
  'pedestrian-opening-unguarded',
  'opening-leaf-unguarded',
  'safeguard-level-too-low',
];
/** The rules that judge whether a device can report at all. */
const wiring = [
  'contact-wrong',
  'common-wrong',
  'terminal-used-twice',
  'terminal-unfit',
  'edge-loop-unterminated',
  'edge-loop-terminated-twice',
  'edge-chain-broken',
  'edge-loop-ambiguous',
];

test('the rules that are meant are there', () => {
  for (const name of [...safeguarding, ...wiring]) expect(ruleNamed(name)?.severity, name).toBe('error');
});

function findingsIn(made: Made): readonly Finding[] {
  const { site, library } = textOf(made);
  const workspace = new Workspace({
    root: '/w',
    read: (path) => (path === '/w/models.gate' && library !== undefined ? { text: library } : 'missing'),
  });
  const { installation, findings } = workspace.judge('/w/site.gate', site, '2026-11-25');
  // A text that cannot be read proves nothing.
  if (installation.problems.length > 0)
    throw new Error(
      `the generator writes what cannot be read: ${installation.problems.map((problem) => `${problem.kind} ${site.slice(problem.start, problem.end)}`).join(', ')}\n${site}`,
    );
  return findings.filter((finding) => finding.severity === 'error');
}

const about = (findings: readonly Finding[], rules: readonly string[], name: string): Finding[] =>
  findings.filter((finding) => rules.includes(finding.rule) && finding.what.includes(`“${name}”`));

/** Where the rules and the oracle differ; nothing, where they agree. `tally` counts what was judged how. */
function disagreements(made: Made, tally?: Map<string, number>): string[] {
  const errors = findingsIn(made);
  const verdicts = judge(made, truthOf(made));
  const found: string[] = [];
  const hold = (what: string, verdict: Verdict, own: readonly Finding[]): void => {
    if (tally !== undefined) tally.set(`${what.split(' ')[0]} ${verdict}`, (tally.get(`${what.split(' ')[0]} ${verdict}`) ?? 0) + 1);
    if (verdict === 'unsafe' && own.length === 0) found.push(`${what} is unsafe, and no rule about safeguarding says so`);
    if (verdict === 'miswired' && own.length === 0 && !errors.some((finding) => wiring.includes(finding.rule)))
      found.push(`${what} is unsafe by its wiring, and nothing says so`);
    if (verdict === 'sound' && own.length > 0)
      found.push(`${what} is sound, and is flagged: ${own.map((finding) => finding.rule).join(', ')}`);
  };
  for (const [leaf, verdict] of verdicts.leaves)
    hold(`${made.rules === 'europe' ? 'leaf' : 'american-leaf'} “${leaf}”`, verdict, about(errors, aboutLeaf, leaf));
  for (const [control, verdict] of verdicts.controls) hold(`control “${control}”`, verdict, about(errors, ['hold-to-run-misuse'], control));
  for (const [leaf, verdict] of verdicts.openings) hold(`opening of “${leaf}”`, verdict, about(errors, ['opening-leaf-unguarded'], leaf));
  for (const [name, verdict] of verdicts.levels)
    hold(
      `level of “${name}”`,
      verdict,
      errors.filter(({ rule, what }) => rule === 'safeguard-level-too-low' && what.startsWith(`“${name}”`)),
    );
  if (verdicts.pedestrian !== undefined)
    hold(
      'pedestrian opening',
      verdicts.pedestrian,
      errors.filter((finding) => finding.rule === 'pedestrian-opening-unguarded'),
    );
  return found;
}

/** The smallest site made out of this one that still fails, for a person to read. */
function told(made: Made, fails: (made: Made) => string[]): string {
  const least = smaller(made, (one) => fails(one).length > 0);
  const { site, library } = textOf(least);
  return [...fails(least), '', site, ...(library === undefined ? [] : ['# models.gate', library])].join('\n');
}

test(`nothing unsafe passes and nothing sound is flagged, in ${count} installations`, { timeout: 3_600_000 }, () => {
  const first = seed();
  console.log(`${count} installations from seed ${first}`);
  const tally = new Map<string, number>();
  for (let i = 0; i < count; i++) {
    const made = make(first + i);
    const found = disagreements(made, tally);
    if (found.length > 0) expect.fail(`installation ${i} (seed ${first + i}):\n${told(made, disagreements)}`);
  }
  console.log(
    [...tally]
      .sort()
      .map(([what, times]) => `${what}: ${times}`)
      .join('; '),
  );
  // Every kind of verdict was held against the rules, unless somebody asked for very few installations.
  if (count < 2000) return;
  for (const what of [
    'leaf unsafe',
    'leaf miswired',
    'leaf sound',
    'american-leaf unsafe',
    'american-leaf miswired',
    'american-leaf sound',
    'control unsafe',
    'control sound',
    'opening unsafe',
    'opening sound',
    'level unsafe',
    'level sound',
    'pedestrian unsafe',
    'pedestrian miswired',
    'pedestrian sound',
  ])
    expect(tally.get(what) ?? 0, what).toBeGreaterThan(count / 1000);
});

test('every cell of the table is met and missed by installations that are generated', () => {
  const seen = new Set<string>();
  const first = seed();
  for (let i = 0; i < 2000; i++) {
    const made = make(first + i);
    const [row, ...more] = rowsIn(made);
    if (made.rules !== 'europe' || row === undefined || more.length > 0) continue;
    const { leaves, controls } = judge(made, truthOf(made));
    const held = made.controls.filter(({ acts }) => acts === 'hold-to-run');
    const verdicts = row === 'held' ? held.map(({ name }) => controls.get(name)) : [...leaves.values()];
    for (const verdict of verdicts) seen.add(`${row}, ${made.users}, ${cell(row, made.users)}: ${verdict}`);
  }
  for (const users of ['trained', 'limited', 'public'] as const)
    for (const row of ['impulse in view', 'impulse unseen', 'automatic', 'held'] as const)
      for (const verdict of ['sound', 'unsafe']) {
        // Held where it may be held by anybody there is nothing to miss, and where it may not, nothing to meet.
        if (row === 'held' && (users === 'trained' ? verdict === 'unsafe' : users === 'public' && verdict === 'sound')) continue;
        expect(seen).toContain(`${row}, ${users}, ${cell(row, users)}: ${verdict}`);
      }
});

// Worse facts never silence the rules: for each leaf, if an installation has an error about the safeguarding of that leaf (one
// of the rules above, other than about controls, that names the leaf), then so has the installation with any one fact worse.
// The worse facts are those of worsenings.ts: each takes protection away, or adds a movement, or people, or an unseen gate.
test(`no worse fact silences the last error about a leaf, in ${Math.ceil(count / 10)} installations`, { timeout: 3_600_000 }, () => {
  const rules = [...aboutLeaf, 'pedestrian-opening-unguarded', 'opening-leaf-unguarded'];
  const tally = new Map<string, number>();
  const silenced = (made: Made, only?: string): string[] => {
    const before = findingsIn(made);
    const flagged = made.leaves.filter((leaf) => about(before, rules, leaf.name).length > 0);
    if (flagged.length === 0) return [];
    return worsenings(made).flatMap(({ says, made: worse }) => {
      const kind = says.replace(/ of .*/, '');
      if (only !== undefined && kind !== only) return [];
      tally.set(kind, (tally.get(kind) ?? 0) + 1);
      const after = findingsIn(worse);
      return flagged
        .filter((leaf) => about(after, rules, leaf.name).length === 0)
        .map(
          (leaf) =>
            `${says} silences ${about(before, rules, leaf.name)
              .map((finding) => finding.rule)
              .join(', ')} about “${leaf.name}”`,
        );
    });
  };
  const first = seed() + 500_000_000;
  for (let i = 0; i < Math.ceil(count / 10); i++) {
    const made = make(first + i);
    const found = silenced(made);
    if (found[0] !== undefined) {
      const kind = found[0].replace(/ silences .*/, '').replace(/ of .*/, '');
      expect.fail(`seed ${first + i}:\n${told(made, (one) => silenced(one, kind))}`);
    }
  }
  console.log(
    [...tally]
      .sort()
      .map(([what, times]) => `${what}: ${times}`)
      .join('; '),
  );
  if (count >= 2000) expect(tally.size).toBe(30);
});

test('a disagreement is seen, and made small', () => {
  // The oracle is asked about another installation than the rules are: with one sensor fewer.
  const without = (made: Made): Made => ({ ...made, sensors: made.sensors.map((sensor) => ({ ...sensor, signal: undefined })) });
  const differs = (made: Made): boolean => {
    const wrong = judge(without(made), truthOf(without(made)));
    const errors = findingsIn(made);
    return [...wrong.leaves].some(([leaf, verdict]) => verdict === 'unsafe' && about(errors, aboutLeaf, leaf).length === 0);
  };
  // From the second seed comes one that needs a beam and a chain of two edges.
  for (const first of [seed(), 1488880674]) {
    let found: Made | undefined;
    for (let i = 0; found === undefined; i++) if (differs(make(first + i))) found = make(first + i);
    const least = smaller(found, differs);
    expect(differs(least)).toBe(true);
    expect(least.leaves.length).toBe(1);
    expect(least.panels.length).toBe(1);
    for (const { name } of least.sensors) expect(differs(withoutSensor(least, name)), `without ${name}`).toBe(false);
  }
});
