// Runs the tests of a file as vitest does, but a random one again and again, each time with a new seed, until its share of the
// time is over. A test that asks for no seed is none of ours and runs once. What fails is noted, and the next seed is tried.
import { setMaxListeners } from 'node:events';
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { type RunnerTestCase, type RunnerTestSuite, TestRunner } from 'vitest';
import { getFn } from 'vitest/suite';
import { chance } from '../kit/chance.ts';
import type { Note } from './notes.ts';

const setting = (name: string): string => process.env[`PINTLE_EXPLORE_${name}`] ?? '';
/** When all ends, ms since 1970, and what each file may take, ms, but for the last try of each test. */
const until = Number(setting('UNTIL'));
const share = Number(setting('SHARE'));
/** Failures of one test in one round that are worth reading. */
const enough = 3;

/** What earlier rounds have shown to be no random tests. */
const notRandom = new Set(
  (existsSync(setting('NOTES')) ? readFileSync(setting('NOTES'), 'utf8') : '')
    .split('\n')
    .filter(Boolean)
    .flatMap((line) => {
      const one = JSON.parse(line) as Note;
      return 'tries' in one && one.tries === 0 ? [`${one.file} > ${one.test}`] : [];
    }),
);

export default class Explorer extends TestRunner {
  async runTask(test: RunnerTestCase): Promise<void> {
    if (notRandom.has(nameOf(test))) return;
    const run = getFn(test);
    setMaxListeners(0, test.context.signal);
    const end = Math.min(until, Date.now() + share / testsIn(test.file).filter((one) => !notRandom.has(nameOf(one))).length);
    let tries = 0;
    for (let failures = 0, isRandom = true; isRandom && failures < enough && Date.now() < end; ) {
      chance.seed = Math.floor(Math.random() * 2 ** 31);
      const asked = chance.asked;
      const failed = await failureOf(run);
      isRandom = chance.asked > asked;
      if (isRandom) tries += 1;
      if (failed === undefined) continue;
      failures += 1;
      note({ ...placeOf(test), seed: isRandom ? chance.seed : undefined, said: failed });
    }
    if (Date.now() < until || tries > 0) note({ ...placeOf(test), tries });
  }
}

async function failureOf(run: () => unknown): Promise<string | undefined> {
  try {
    await run();
    return undefined;
  } catch (error) {
    const { message = String(error), cause } = error as { message?: string; cause?: { message?: string } };
    return cause?.message === undefined ? message : `${message}\nCaused by: ${cause.message}`;
  }
}

const placeOf = (test: RunnerTestCase): { file: string; test: string } => ({
  file: relative(process.cwd(), test.file.filepath),
  test: test.fullTestName,
});
const nameOf = (test: RunnerTestCase): string => test.fullName;
const testsIn = (suite: RunnerTestSuite): RunnerTestCase[] =>
  suite.tasks.flatMap((task) => (task.type === 'test' ? [task] : testsIn(task)));

/** One line for each: several processes write into the same file. */
const note = (one: Note): void => appendFileSync(setting('NOTES'), `${JSON.stringify(one)}\n`);
