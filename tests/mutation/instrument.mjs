// Makes the mutants and one bundle that holds them all together with the tests. A mutant is switched on at run time, by its
// number: Stryker's instrumenter writes every mutant beside the code that it stands for.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root, work } from './places.mjs';

const require = createRequire(join(root, 'package.json'));

/** Texts are not mutated: what a message says is checked by the tests of the messages, not by the score. */
const excludedMutations = ['StringLiteral'];

/** The files that are mutated, by what they are. */
export const kinds = {
  'maths of figures': () => inFolders('server/figures').filter((path) => path.endsWith('/maths.ts')),
  'what figures read and give': () => inFolders('server/figures').filter((path) => !path.endsWith('/maths.ts')),
  'what figures share': () => codeIn('server/figures'),
  rules: () => inFolders('server/rules'),
  'what rules share': () => codeIn('server/rules'),
  circuits: () => codeIn('server/circuits'),
  safeguards: () => codeIn('server/safeguards'),
};

/** The files of a folder itself, without what is generated and what only hands on. */
const codeIn = (folder) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.ts') && name !== 'all.ts' && name !== 'index.ts')
    .map((name) => `${folder}/${name}`)
    .sort();
const inFolders = (room) =>
  readdirSync(join(root, room), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) => codeIn(`${room}/${name}`))
    .sort();

export function filesToMutate() {
  return Object.entries(kinds).flatMap(([kind, list]) => list().map((path) => ({ kind, path })));
}

/** The tests that may kill. Those of other rooms start processes or measure, and say nothing about figures and rules. */
const testFolders = ['tests/circuits', 'tests/figures', 'tests/rules', 'tests/examples', 'tests/model', 'tests/soundness'];

/** These judge thousands of files before their tests begin, which every fresh bundle would have to wait for. */
const leftOut = ['tests/model/removal.test.ts', 'tests/rules/safety-lines.test.ts'];

/** A test that puts something else in place of a module needs vitest itself. */
const mocks = (path) =>
  /import \{[^}]*\b(?:vi|beforeEach|afterEach|beforeAll|afterAll)\b[^}]*\} from 'vitest'/.test(readFileSync(join(root, path), 'utf8'));

const testFiles = () =>
  testFolders
    .flatMap((folder) =>
      readdirSync(join(root, folder))
        .filter((name) => name.endsWith('.test.ts'))
        .map((name) => `${folder}/${name}`),
    )
    .filter((path) => !leftOut.includes(path) && !mocks(path))
    .sort();

async function instrument(files) {
  const { createInstrumenter } = await import('@stryker-mutator/instrumenter');
  const { createInjector } = await import('typed-inject');
  const silent = () => {};
  const no = () => false;
  const logger = {
    isInfoEnabled: no,
    isDebugEnabled: no,
    isTraceEnabled: no,
    isWarnEnabled: no,
    info: silent,
    debug: silent,
    warn: silent,
    trace: silent,
    error: silent,
    fatal: silent,
  };
  const instrumenter = createInjector().provideValue('logger', logger).provideValue('options', {}).injectFunction(createInstrumenter);
  return instrumenter.instrument(
    files.map(({ path }) => ({ name: join(root, path), content: readFileSync(join(root, path), 'utf8'), mutate: true })),
    { plugins: null, excludedMutations, ignorers: [], noHeader: true },
  );
}

const shared = new Set(['fast-check', 'mathjs', 'simple-statistics', 'js-quantities']);

/** Instruments and bundles; gives the mutants, each with the text that it replaces. */
export async function build(wanted = () => true) {
  const files = filesToMutate().filter(wanted);
  const { files: instrumented, mutants } = await instrument(files);
  const code = new Map(instrumented.map((file) => [file.name, file.content]));
  const sources = new Map(files.map(({ path }) => [join(root, path), readFileSync(join(root, path), 'utf8')]));
  const { build: bundle } = require('esbuild');
  const figureFiles = inFolders('server/figures').filter((path) => path.endsWith('/figure.ts'));
  // Which file a test stands in, and the modules that one test reads by their paths, are told by modules that are made up here.
  const madeUp = {
    // The rules come first, so that what is reached before the first test file is what only loading reaches.
    modules: [
      `import ${JSON.stringify(join(root, 'server/rules/index.ts'))};`,
      ...figureFiles.map((path, i) => `import * as module${i} from ${JSON.stringify(join(root, path))};`),
      `const modules = { ${figureFiles.map((path, i) => `${JSON.stringify(pathToFileURL(join(root, path)).href)}: module${i}`).join(', ')} };`,
      'globalThis.__module = (href) => modules[href];',
    ].join('\n'),
    end: `import { registered } from 'vitest'; globalThis.__registered = registered;`,
    ...Object.fromEntries(testFiles().map((path) => [path, `import { testFile } from 'vitest'; testFile(${JSON.stringify(path)});`])),
  };
  const entry = ['made-up:modules', ...testFiles().flatMap((path) => [`made-up:${path}`, join(root, path)]), 'made-up:end']
    .map((path) => `import ${JSON.stringify(path)};`)
    .join('\n');
  const result = await bundle({
    stdin: { contents: entry, resolveDir: root, sourcefile: 'entry.mjs', loader: 'js' },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    logLevel: 'error',
    plugins: [
      {
        name: 'mutation',
        setup(build) {
          build.onResolve({ filter: /^vitest$/ }, () => ({ path: join(root, 'tests/mutation/collect.mjs') }));
          build.onResolve({ filter: /^mutation-switch$/ }, () => ({ path: join(root, 'tests/mutation/switch.mjs') }));
          build.onResolve({ filter: /^made-up:/ }, ({ path }) => ({ path: path.slice('made-up:'.length), namespace: 'made-up' }));
          build.onLoad({ filter: /.*/, namespace: 'made-up' }, ({ path }) => ({ contents: madeUp[path], loader: 'js', resolveDir: root }));
          build.onResolve({ filter: /^node:/ }, ({ path }) => ({ path, namespace: 'given' }));
          build.onResolve({ filter: /^[a-z@]/ }, ({ path }) => (shared.has(path) ? { path, namespace: 'given' } : undefined));
          build.onLoad({ filter: /.*/, namespace: 'given' }, ({ path }) => ({
            contents: `module.exports = globalThis.__given(${JSON.stringify(path)});`,
            loader: 'js',
          }));
          build.onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const mutated = code.get(path);
            const text =
              mutated === undefined
                ? readFileSync(path, 'utf8')
                : `import { stryMutAct_9fa48, stryCov_9fa48 } from 'mutation-switch';\n${mutated.replace(/stry(MutAct|Cov)_9fa48\(([^)]*)\)/g, (_, name, ids) => `stry${name}_9fa48(${ids.replaceAll('"', '')})`)}`;
            return {
              contents: text
                .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
                .replaceAll('await import(pathToFileURL(', 'globalThis.__module(pathToFileURL('),
              loader: 'ts',
            };
          });
        },
      },
    ],
  });
  mkdirSync(work, { recursive: true });
  writeFileSync(join(work, 'bundle.js'), `(async function () {\n${result.outputFiles[0].text}\n})`);
  const kindOf = new Map(files.map(({ kind, path }) => [join(root, path), kind]));
  return mutants
    .filter((mutant) => mutant.status !== 'Ignored')
    .map((mutant) => ({
      id: Number(mutant.id),
      path: relative(root, mutant.fileName).replaceAll('\\', '/'),
      kind: kindOf.get(mutant.fileName),
      mutator: mutant.mutatorName,
      line: mutant.location.start.line + 1,
      column: mutant.location.start.column + 1,
      was: cut(sources.get(mutant.fileName), mutant.location),
      becomes: mutant.replacement,
    }));
}

function cut(text, { start, end }) {
  const lines = text.split('\n').slice(start.line, end.line + 1);
  lines[lines.length - 1] = lines[lines.length - 1].slice(0, end.line === start.line ? undefined : end.column);
  if (end.line === start.line) return lines[0].slice(start.column, end.column);
  return [lines[0].slice(start.column), ...lines.slice(1)].join('\n');
}
