// Runs the tests in one process: once with no mutant, to learn which tests reach which mutants, then for each mutant those
// tests that reach it, nearest first, until one fails.

import * as fs from 'node:fs';
import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { root, work } from './places.mjs';

const require = createRequire(join(root, 'package.json'));
const load = (name) => import(pathToFileURL(require.resolve(name)).href);

Error.stackTraceLimit = 0;
const fastCheck = await load('fast-check');
// The same numbers in every run: a mutant is killed by what it breaks, never by chance.
fastCheck.default.configureGlobal({ seed: 20261125, endOnFailure: true });
const chai = await import(pathToFileURL(join(root, 'node_modules/chai/index.js')).href);
const vitestExpect = await import(pathToFileURL(join(root, 'node_modules/@vitest/expect/dist/index.js')).href);
chai.config.useProxy = false;
for (const plugin of [vitestExpect.JestExtend, vitestExpect.JestChaiExpect, vitestExpect.JestAsymmetricMatchers]) chai.use(plugin);
chai.Assertion.addMethod('toMatchFileSnapshot', function (path) {
  const text = this._obj;
  if (text !== readFileSync(path, 'utf8')) throw new Error(`${path} says something else`);
});
globalThis.__expect = Object.assign((value, message) => chai.expect(value, message), chai.expect);
globalThis[vitestExpect.GLOBAL_EXPECT] = globalThis.__expect;
vitestExpect.setState({}, globalThis.__expect);

// Files do not change while this runs, and each fresh start reads them again.
const remembered = (what) => {
  const kept = new Map();
  return (...args) => {
    const key = args.map((arg) => (typeof arg === 'object' && !(arg instanceof URL) ? JSON.stringify(arg) : String(arg))).join('\n');
    if (!kept.has(key)) kept.set(key, what(...args));
    return kept.get(key);
  };
};
const files = {
  ...fs,
  readFileSync: remembered(readFileSync),
  existsSync: remembered(existsSync),
  readdirSync: remembered(readdirSync),
  realpathSync: remembered(realpathSync),
  statSync: remembered(statSync),
};
const given = new Map([
  ['node:fs', files],
  ['fast-check', { ...fastCheck, default: fastCheck.default, __esModule: true }],
]);
globalThis.__given = (name) => given.get(name) ?? require(name);
// What the tests print is for those who run them by hand.
console.log = () => {};

const script = new Script(readFileSync(join(work, 'bundle.js'), 'utf8'), { filename: join(work, 'bundle.js') });

/** Everything anew, with a mutant switched on from the first line. */
async function fresh(active = -1, limit = Infinity, reached = null) {
  globalThis.__start = { active, limit, reached };
  await script.runInThisContext()();
  globalThis.__switch.note(null);
  return globalThis.__registered.map((test, index) => ({ ...test, index }));
}

/** Why a test fails, undefined when it passes. */
async function fails(test) {
  try {
    const result = test.run();
    if (result instanceof Promise) await result;
    return undefined;
  } catch (error) {
    return String(error?.message ?? error).slice(0, 200) || 'fails';
  }
}

const say = (message) => new Promise((done) => process.send(message, () => done()));

/** Which tests reach which mutants, how long each takes and how much it asks. */
async function survey(count) {
  const loading = new Uint8Array(count);
  const gathering = {};
  globalThis.__gathers = (file) => globalThis.__switch.note((gathering[file] = new Uint8Array(count)));
  const tests = await fresh(-1, Infinity, loading);
  globalThis.__gathers = undefined;
  const loadingAsks = globalThis.__switch.asked();
  const facts = [];
  for (const { file, name, index, run } of tests) {
    const reached = new Uint8Array(count);
    globalThis.__switch.on(-1);
    globalThis.__switch.note(reached);
    const started = performance.now();
    const failed = await fails({ run });
    globalThis.__switch.note(null);
    facts.push({ index, file, name, failed, reached, asked: globalThis.__switch.asked(), time: performance.now() - started });
  }
  return { facts, loading, gathering, loadingAsks };
}

let tests;
let facts;
let loadingAsks;
const leeway = (asked) => asked * 10 + 1_000_000;

/** Judges one mutant: `indices` are the tests to run, in order; `anew` starts with a fresh bundle. */
async function judge({ id, indices, anew }) {
  if (anew || tests === undefined) {
    try {
      tests = await fresh(anew ? id : -1, leeway(loadingAsks));
    } catch (error) {
      tests = undefined;
      return { id, status: 'killed', by: 'loading', why: String(error?.message ?? error).slice(0, 200) };
    }
  }
  let result = { id, status: 'survived' };
  for (const index of indices) {
    // A mutant that was on while the tests were gathered may have gathered others; what is not there kills nothing.
    const test =
      tests[index]?.name === facts[index].name
        ? tests[index]
        : tests.find((one) => one.name === facts[index].name && one.file === facts[index].file);
    if (test === undefined) continue;
    globalThis.__switch.on(id, leeway(facts[index].asked));
    const why = await fails(test);
    globalThis.__switch.on(-1);
    if (why === undefined) continue;
    // What an earlier mutant left behind in a cache kills nothing: the test must pass without the mutant, in the same state.
    if (!anew && (await fails(test)) !== undefined) {
      tests = undefined;
      return judge({ id, indices, anew: true });
    }
    result = { id, status: /does not come to an end/.test(why) ? 'timed out' : 'killed', by: index, why };
    break;
  }
  if (anew) tests = undefined;
  return result;
}

process.on('message', async (message) => {
  if (message.survey !== undefined) {
    await say({ survey: await survey(message.survey) });
    process.exit(0);
  }
  if (message.facts !== undefined) ({ facts, loadingAsks } = message);
  else await say({ result: await judge(message.judge) });
});
await say({ ready: true });
