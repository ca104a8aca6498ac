// Mutation tests of the figures and the rules: a mutant of their code should make a test fail.
//   npm run mutate                          all of figures, rules, circuits and safeguards but the generated lists
//   npm run mutate -- force-window least    only files whose path holds one of these words
//   npm run mutate -- --survivors           only those that survived the last time, and those that are new
//   npm run mutate -- --quick               without the slow tests of other names: the score is then, if anything, too low
// What survives is written to tests/artifacts/mutation/survivors.md, all results to results.json beside it.
import { fork } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { install } from './install.mjs';
import { work } from './places.mjs';
import { scoreTable, survivorList } from './tell.mjs';

const words = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const options = process.argv.slice(2).filter((word) => word.startsWith('--'));
const unknown = options.filter((option) => option !== '--survivors' && option !== '--quick');
if (unknown.length > 0) {
  console.error(`There is no option ${unknown[0]}; there are --survivors and --quick.`);
  process.exit(2);
}
// The generator of whole sites is asked for fewer of them: each survivor has to go through them.
process.env.SITES ??= '500';
// Milliseconds without an answer, after which the worker is given up and the mutant counts as timed out.
const silence = 120_000;
const started = performance.now();
const passed = () => `${Math.round((performance.now() - started) / 1000)} s`;

install();
const { build } = await import('./instrument.mjs');
const mutants = await build((file) => words.length === 0 || words.some((word) => file.path.includes(word)));
if (mutants.length === 0) {
  console.error('No file that is mutated has such a path.');
  process.exit(2);
}
console.log(`${mutants.length} mutants (${passed()})`);

function worker() {
  const child = fork(fileURLToPath(new URL('worker.mjs', import.meta.url)), [], {
    serialization: 'advanced',
    execArgv: ['--max-old-space-size=3000', '--stack-size=900'],
  });
  return {
    child,
    ready: new Promise((done, failed) => child.once('message', done).once('exit', () => failed(new Error('the worker did not start')))),
  };
}

async function survey() {
  const { child, ready } = worker();
  await ready;
  const answer = new Promise((done, failed) =>
    child.once('message', done).once('exit', () => failed(new Error('the worker ended while it ran the tests without a mutant'))),
  );
  child.send({ survey: mutants.length === 0 ? 0 : Math.max(...mutants.map((mutant) => mutant.id)) + 1 });
  return (await answer).survey;
}

const { facts, loading, gathering, loadingAsks } = await survey();
const failing = facts.filter((fact) => fact.failed !== undefined);
if (failing.length > 0) {
  console.error(`Without any mutant these tests fail:\n${failing.map((fact) => `${fact.file} ${fact.name}: ${fact.failed}`).join('\n')}`);
  process.exit(1);
}
const allTime = facts.reduce((sum, fact) => sum + fact.time, 0);
console.log(`${facts.length} tests pass in ${(allTime / 1000).toFixed(1)} s (${passed()})`);

// The same mutant in the next run: by what it changes, not by where that stands.
const seen = new Map();
for (const mutant of mutants) {
  const key = [mutant.path, mutant.mutator, mutant.was, mutant.becomes].join('\n');
  const times = seen.get(key) ?? 0;
  seen.set(key, times + 1);
  mutant.key = `${key}\n${times}`;
}
const resultsPath = join(work, 'results.json');
const before = new Map((existsSync(resultsPath) ? JSON.parse(readFileSync(resultsPath, 'utf8')) : []).map((one) => [one.key, one]));
const byLabel = new Map(facts.map((fact) => [`${fact.file} > ${fact.name}`, fact]));

/** Tests in the order in which they most likely kill soonest: the page of the folder, the tests of its name, then the quickest. */
function inOrder(mutant, candidates) {
  const [room, name] = placeOf(mutant);
  const nearness = (fact) =>
    isPageOf(fact, room, name) ? 0 : fact.file === `tests/figures/${name}.test.ts` || fact.name.includes(name) ? 1 : 2;
  return [...candidates].sort((a, b) => nearness(a) - nearness(b) || a.time - b.time);
}
/** Room and folder of a mutant. */
const placeOf = (mutant) => mutant.path.split('/').slice(1, 3);
const isPageOf = (fact, room, name) => fact.file === `tests/${room}/pages.test.ts` && fact.name.startsWith(`${name} > `);
const isExampleOf = (fact, room, name) => isPageOf(fact, room, name) && / line \d+ of the page/.test(fact.name);

/** Tests that take longer than this, in milliseconds, come after the others. */
const slow = 30;
/**
 * Spoilt examples of other pages hardly ever tell a rule from its mutant, and are most of the time; without them the score is, if
 * anything, too low.
 */
const isAside = (fact, mutant) => fact.file === 'tests/rules/messages.test.ts' && !fact.name.startsWith(`${mutant.path.split('/')[2]},`);

/** Test files that work something out before their tests begin: it may be kept from one mutant to the next. */
const keeping = Object.entries(gathering)
  .filter(([, marks]) => marks.includes(1))
  .map(([file]) => file);

/** The tests of a mutant, nearest first, and those that must meet it in a bundle of its own. */
function testsFor(mutant) {
  const isStatic = loading[mutant.id] === 1;
  const gathered = keeping.filter((file) => gathering[file][mutant.id] === 1);
  const reaching = facts.filter((fact) => fact.reached[mutant.id] === 1 && !isAside(fact, mutant));
  const all = inOrder(mutant, reaching);
  const killer = byLabel.get(before.get(mutant.key)?.by ?? '');
  if (killer !== undefined && all.includes(killer)) all.unshift(...all.splice(all.indexOf(killer), 1));
  // What is worked out while the bundle loads may show in any test that comes near the file, or asks for what it holds.
  const anew = inOrder(
    mutant,
    facts.filter(
      (fact) =>
        fact.time < slow &&
        !isAside(fact, mutant) &&
        (isStatic ? isPageOf(fact, ...placeOf(mutant)) || !fact.file.endsWith('/pages.test.ts') : gathered.includes(fact.file)),
    ),
  );
  return {
    isReached: isStatic || gathered.length > 0 || reaching.length > 0,
    quick: all.filter((fact) => fact.time < slow),
    slow: all.filter((fact) => fact.time >= slow),
    own: all.filter(
      (fact) =>
        fact.time >= slow &&
        (fact.file === `tests/figures/${placeOf(mutant)[1]}.test.ts` || fact.name.startsWith(`${placeOf(mutant)[1]} > `)),
    ),
    anew,
  };
}

let current;
async function judge(mutant, tests, anew) {
  if (current === undefined) {
    const { child, ready } = worker();
    await ready;
    child.send({ facts: facts.map(({ file, name, asked }) => ({ file, name, asked })), loadingAsks });
    current = child;
  }
  const child = current;
  return new Promise((done) => {
    const settle = (result) => {
      clearTimeout(timer);
      child.removeAllListeners();
      done(result);
    };
    const timer = setTimeout(() => {
      current = undefined;
      settle({ id: mutant.id, status: 'timed out', why: 'no answer' });
      child.kill('SIGKILL');
    }, silence);
    child.once('message', ({ result }) => settle(result));
    child.once('exit', () => {
      current = undefined;
      settle({ id: mutant.id, status: 'killed', by: undefined, why: 'the process ended' });
    });
    child.send({ judge: { id: mutant.id, indices: tests.map((fact) => fact.index), anew } });
  });
}

function settled(mutant, result) {
  const fact = typeof result.by === 'number' ? facts[result.by] : undefined;
  mutant.status = result.status;
  mutant.by = fact === undefined ? result.by : `${fact.file} > ${fact.name}`;
  mutant.byExample = fact !== undefined && isExampleOf(fact, ...placeOf(mutant));
  mutant.why = result.why;
}

function keep() {
  mkdirSync(work, { recursive: true });
  const judged = new Map(before);
  const paths = new Set(mutants.map((mutant) => mutant.path));
  const keys = new Set(mutants.map((mutant) => mutant.key));
  for (const [key, one] of before) if (paths.has(one.path) && !keys.has(key)) judged.delete(key);
  for (const { id, ...mutant } of mutants) if (mutant.status !== undefined) judged.set(mutant.key, mutant);
  writeFileSync(resultsPath, JSON.stringify([...judged.values()], undefined, 1));
}

let asked = mutants;
if (options.includes('--survivors')) {
  asked = [];
  for (const mutant of mutants) {
    const known = before.get(mutant.key);
    if (known === undefined || known.status === 'survived' || known.status === 'not reached') asked.push(mutant);
    else Object.assign(mutant, { status: known.status, by: known.by, byExample: known.byExample, why: known.why });
  }
  console.log(`${asked.length} to judge`);
}

let told = performance.now();
function progress(what, done, of) {
  if (performance.now() - told < 60_000) return;
  told = performance.now();
  console.log(`${what}: ${done} of ${of} (${passed()})`);
  keep();
}

// First the quick tests, then the slow ones, in one loaded bundle. What is worked out once, while the bundle loads or the tests
// are gathered, is judged in a bundle of its own, loaded with the mutant on.
const stages = [
  { name: 'quick tests', isAnew: false, tests: ({ quick }) => quick },
  { name: 'slow tests', isAnew: false, tests: ({ slow, own }) => (options.includes('--quick') ? own : slow) },
  { name: 'in a bundle of its own', isAnew: true, tests: ({ anew }) => anew },
];
let remaining = [];
for (const mutant of asked) {
  if (testsFor(mutant).isReached) remaining.push(mutant);
  else settled(mutant, { status: 'not reached' });
}
for (const { name, tests, isAnew } of stages) {
  const surviving = [];
  for (const [i, mutant] of remaining.entries()) {
    const chosen = tests(testsFor(mutant));
    const result = chosen.length === 0 ? { status: 'survived' } : await judge(mutant, chosen, isAnew);
    settled(mutant, result);
    if (result.status === 'survived') surviving.push(mutant);
    progress(name, i + 1, remaining.length);
  }
  remaining = surviving;
  console.log(`${remaining.length} survive: ${name} (${passed()})`);
}
current?.kill();
keep();
writeFileSync(join(work, 'survivors.md'), survivorList(mutants));
const table = scoreTable(mutants);
writeFileSync(join(work, 'scores.md'), table);
console.log(`\n${table}\nSurvivors: ${join(work, 'survivors.md')} (${passed()})`);
