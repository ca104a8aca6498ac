// `npm run explore [-- MINUTES] [-- words of test files]`: runs the random tests with ever new seeds, for ten minutes unless told,
// goes on after a failure, and in the end prints what to keep as a case. Exits with 1 where anything was found.
// `npm run explore -- flood …` is the other kind: see flood.mjs.
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVitest } from 'vitest/node';
import { runFlood } from './flood.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
const given = process.argv.slice(2).filter((word) => word !== '--');
if (given[0] === 'flood') process.exit((await runFlood(given.slice(1))) ? 0 : 1);
const minutes = Number(given.find((word) => /^\d+(\.\d+)?$/.test(word)) ?? 10);
const words = given.filter((word) => !/^\d+(\.\d+)?$/.test(word));
/** Failures of one test that are worth reading. */
const shown = 3;

/** The test files that draw anything: from fast-check, or from the seed of our own generators. */
const files = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts') && !name.startsWith('real-editor'))
  .map((name) => `tests/${name.replaceAll('\\', '/')}`)
  .filter((path) => /\bfc\.(assert|sample|check)\(|kit\/chance\.ts/.test(readFileSync(join(root, path), 'utf8')))
  .filter((path) => words.length === 0 || words.some((word) => path.includes(word)))
  .sort();
if (files.length === 0) {
  console.error(`No random test stands in a file whose path holds ${words.join(' or ')}.`);
  process.exit(2);
}

/** What each file may take in a round, ms, so that there are several rounds; its tests share it, and each is tried at least once. */
const share = Math.min(10_000, (minutes * 60_000 * availableParallelism()) / files.length / 3);
const folder = mkdtempSync(join(tmpdir(), 'pintle-explore-'));
const notes = join(folder, 'notes');
const until = Date.now() + minutes * 60_000;
Object.assign(process.env, { PINTLE_EXPLORE_UNTIL: String(until), PINTLE_EXPLORE_SHARE: String(share), PINTLE_EXPLORE_NOTES: notes });

console.log(`Exploring ${files.length} files of random tests for ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}.`);
const vitest = await createVitest('test', {
  config: false,
  root,
  watch: false,
  silent: true,
  reporters: [{}],
  include: ['tests/**/*.test.ts'],
  setupFiles: ['tests/kit/setup.ts'],
  runner: join(root, 'tests/explore/runner.ts'),
  isolate: false,
  maxWorkers: availableParallelism(),
  testTimeout: 600_000,
  hookTimeout: 600_000,
});
await vitest.standalone();
const specifications = await vitest.globTestSpecifications(files);
// One Vitest for all rounds: what it has made of the sources serves the next round too.
while (Date.now() < until) {
  await vitest.runTestSpecifications(specifications);
  tell();
}
const broken = vitest.state.getUnhandledErrors().map((error) => error?.stack ?? String(error));
await vitest.close();

const noted = written();
rmSync(folder, { recursive: true, force: true });
const placeOf = ({ file, test }) => `${file}\n  ${test}`;
const failing = new Map();
for (const note of noted.filter(isFailure)) failing.set(placeOf(note), [...(failing.get(placeOf(note)) ?? []), note]);
for (const [where, failures] of failing) {
  const tries = noted.reduce((sum, note) => sum + (placeOf(note) === where ? (note.tries ?? 0) : 0), 0);
  console.log(`\n${where}\n  failed ${failures.length} times in ${tries} tries${failures.length > shown ? `; the first ${shown}` : ''}:`);
  for (const { file, seed, said } of failures.slice(0, shown)) {
    console.log(
      said
        .split('\n')
        .filter((line) => line !== '' && !line.startsWith('Hint:'))
        .map((line) => `    ${line}`)
        .join('\n'),
    );
    if (seed !== undefined) console.log(`    again: PINTLE_SEED=${seed} npx vitest run ${file}`);
  }
}
for (const error of broken) console.log(`\nOutside of a test: ${error}`);
const isClean = failing.size + broken.length === 0;
console.log(isClean ? 'Nothing was found.' : '\nKeep each as an ordinary test with its counterexample written out.');
process.exit(isClean ? 0 : 1);

function written() {
  return existsSync(notes)
    ? readFileSync(notes, 'utf8')
        .split('\n')
        .filter(Boolean)
        .map((line) => JSON.parse(line))
    : [];
}

function isFailure(note) {
  return note.said !== undefined;
}

function tell() {
  const all = written();
  const tries = all.reduce((sum, note) => sum + (note.tries ?? 0), 0);
  const tests = new Set(all.filter((note) => note.tries > 0).map(({ file, test }) => `${file} ${test}`)).size;
  const left = Math.max(0, Math.round((until - Date.now()) / 60_000));
  console.log(`${tests} random tests, ${tries} tries, ${all.filter(isFailure).length} failures; ${left} minutes left.`);
}
