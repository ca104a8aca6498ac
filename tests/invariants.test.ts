// What is not there: no clock, disk or network in the core, nothing thrown, nothing sent anywhere, no promise that only a
// test body may make.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { print } from '../grammar/index.ts';
import { Workspace } from '../server/engine/index.ts';
import { examples } from './grammar/examples.ts';
import { codeOnly, importsOf, root, type Source, sources } from './kit/sources.ts';
import { noticesFile, packagesNamed } from './workshop/notices.mjs';

const coreRooms = ['grammar', 'server/vocabulary', 'server/model', 'server/figures', 'server/rules', 'server/papers', 'server/editor'];
const core = sources(coreRooms, ['.ts', '.mjs']);
const shipped = sources(['grammar', 'server', 'client'], ['.ts', '.mjs']);

/** Names of the machine that a room may not speak of. */
const clock = ['Date', 'performance', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask'];
// `window` and its kin are common words; the compiler, which has no library of a browser here, knows none of them.
const machine = ['process', 'require', 'globalThis', 'console', 'eval', 'Function', 'crypto'];
const network = ['fetch', 'XMLHttpRequest', 'WebSocket', 'EventSource', 'sendBeacon', 'RTCPeerConnection', 'importScripts'];
const networkModules =
  /^(?:node:)?(?:https?|http2|net|dgram|tls|dns|inspector|child_process|cluster|worker_threads)(?:\/|$)|^(?:axios|got|undici|node-fetch|ws|request|superagent)$/;

/** Which of these names the code speaks of; a name that it declares itself is its own. */
function spokenOf(text: string, names: readonly string[]): string[] {
  const code = codeOnly(text);
  return names.filter(
    (name) =>
      new RegExp(`(?<![.\\w$#])${name}(?![\\w$]|\\??\\s*:)`).test(code) &&
      !new RegExp(`\\b(?:const|let|function|class)\\s+${name}\\b|[(,]\\s*${name}\\s*[,:)]\\s*[^;]*=>`).test(code),
  );
}
const faultsOf = (files: readonly Source[], names: readonly string[]): string[] =>
  files.flatMap(({ path, text }) => spokenOf(text, names).map((name) => `${path}: ${name}`));
const throwing = (files: readonly Source[]): string[] =>
  files.filter(({ text }) => /\bthrow\b|Promise\.reject/.test(codeOnly(text))).map(({ path }) => path);
const calling = (files: readonly Source[]): string[] =>
  files.flatMap(({ path, text }) =>
    importsOf(text)
      .filter((from) => networkModules.test(from))
      .map((from) => `${path}: ${from}`),
  );

test('the core reads no clock, no disk, no network, no chance', () => {
  expect(core.length).toBeGreaterThan(80);
  expect(faultsOf(core, [...clock, ...machine, ...network])).toEqual([]);
  expect(core.filter(({ text }) => /Math\.random|import\.meta/.test(codeOnly(text))).map(({ path }) => path)).toEqual([]);
  expect(
    core.flatMap(({ path, text }) =>
      importsOf(text)
        .filter((from) => /^node:/.test(from))
        .map((from) => `${path}: ${from}`),
    ),
  ).toEqual([]);
});

test('the core throws nothing', () => {
  expect(throwing(core)).toEqual([]);
});

test('nothing that is shipped sends anything anywhere', () => {
  expect(faultsOf(shipped, network)).toEqual([]);
  expect(calling(shipped)).toEqual([]);
  expect(
    shipped.filter(({ text }) => /telemetry|analytics|createTelemetryLogger|sendTelemetry/i.test(codeOnly(text))).map(({ path }) => path),
  ).toEqual([]);
  const bundled = [...packagesNamed(readFileSync(join(root, 'dist', noticesFile), 'utf8'))];
  expect(bundled.length).toBeGreaterThan(4);
  expect(bundled.filter((name) => /telemetry|analytics|insights|sentry/.test(name))).toEqual([]);
});

test('the clock is read by the command and the server only', () => {
  const elsewhere = shipped.filter(({ path }) => !/^server\/(cli|lsp)\//.test(path));
  expect(faultsOf(elsewhere, ['Date'])).toEqual([]);
  // And there is something to see where it may be read.
  expect(faultsOf(shipped, ['Date']).length).toBeGreaterThan(0);
});

test('whole examples are judged without clock, chance or network', () => {
  const forbidden = (name: string) => (): never => {
    throw new Error(`${name} was used`);
  };
  const files = new Map(examples().map(({ path, text }) => ['/w/' + path, text]));
  expect(files.size).toBeGreaterThan(4);
  const judge = (): unknown[] => {
    const workspace = new Workspace({ root: '/w', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
    return [...files].map(([path, text]) => {
      const analysis = workspace.judge(path, text, '2026-11-25');
      return [
        analysis.findings,
        analysis.figures.map((figure) => [figure.id, figure.value, figure.inputs()]),
        print(analysis.installation.reading.tree),
      ];
    });
  };
  const before = JSON.stringify(judge());
  const real = { Date: globalThis.Date, random: Math.random };
  try {
    for (const name of ['Date', 'fetch', 'setTimeout', 'performance'])
      vi.stubGlobal(name, new Proxy(() => {}, { get: forbidden(name), apply: forbidden(name), construct: forbidden(name) }));
    Math.random = forbidden('Math.random');
    expect(() => Date.now()).toThrow('Date was used');
    const again = JSON.stringify(judge());
    vi.unstubAllGlobals();
    expect(again).toBe(before);
  } finally {
    vi.unstubAllGlobals();
    Math.random = real.random;
  }
  expect(globalThis.Date).toBe(real.Date);
});

test('no address of a package registry stands in the lock file', () => {
  const faults = (text: string): string[] =>
    [...text.matchAll(/"resolved":\s*"[^"]*"|registry\.[a-z.]+|_authToken/g)].map((match) => match[0]);
  expect(faults(readFileSync(join(root, 'package-lock.json'), 'utf8'))).toEqual([]);
  expect(faults('{ "resolved": "https://registry.example.org/x.tgz" }')).not.toEqual([]);
});

// The word is put together here, so that this file does not have it either.
const promise = new RegExp('\\b' + 'compli' + 'ant\\b', 'i');
test('nothing says that an installation meets a standard: only a test body may', () => {
  const faults = (files: readonly Source[]): string[] =>
    files.flatMap(({ path, text }) => text.split('\n').flatMap((line, i) => (promise.test(line) ? [`${path}:${i + 1}`] : [])));
  const everything = [
    ...sources(['grammar', 'server', 'client', 'examples'], ['.ts', '.mjs', '.md', '.json', '.gate', '.svg']),
    ...['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'tests/bench/SPEED.md', 'package.json'].map((path) => ({
      path,
      text: readFileSync(join(root, path), 'utf8'),
    })),
  ];
  expect(everything.length).toBeGreaterThan(150);
  expect(faults(everything)).toEqual([]);
  expect(faults([{ path: 'x', text: 'a\nfully Compli' + 'ant.' }])).toEqual(['x:2']);
});

describe('these checks see a fault', () => {
  const every = [...clock, ...machine, ...network];
  const cases: readonly (readonly [text: string, names: readonly string[]])[] = [
    ['const day = new Date();', ['Date']],
    ['const now = Date.now();', ['Date']],
    ['const { env } = process;', ['process']],
    ['await fetch(url)', ['fetch']],
    ['const text = `${process.cwd()}`;', ['process']],
    ['const fs = require("fs");', ['require']],
    ['return new WebSocket(x) ?? new XMLHttpRequest();', ['XMLHttpRequest', 'WebSocket']],
    ['console.log(1)', ['console']],
    ['const a = b / 2; // x\nprocess.exit() / 3', ['process']],
    ['const a = /[/"]/.test(x); eval(a)', ['eval']],
  ];
  test.each(cases)('%s', (text, names) => {
    expect(spokenOf(text, every)).toEqual(names);
  });
  test('and none where the word is only in a text, a remark or a name', () => {
    for (const text of [
      '// Date',
      '/* process */',
      "const a = 'fetch';",
      '`require ${x}`',
      'const fetchAll = a.fetch;',
      'it.Date',
      'const validate = processed;',
      '/Date/.test(x)',
      'const x = { process: 1 }',
    ])
      expect(spokenOf(text, every), text).toEqual([]);
    expect(throwing([{ path: 'x', text: "// throw\nconst a = 'throw';" }])).toEqual([]);
  });
  test('a throw, and a module of the network', () => {
    expect(throwing([{ path: 'x', text: 'if (a) throw new Error();' }])).toEqual(['x']);
    for (const from of ['node:http', 'node:https', 'net', 'node:tls', 'node:dgram', 'ws'])
      expect(calling([{ path: 'x', text: `import a from '${from}';` }])).toHaveLength(1);
  });
});

test('no random test has a seed of its own, or none', () => {
  const own = sources(['tests'], ['.test.ts']).filter(({ text }) => /\bconfigureGlobal\b|\bseed: \d|\bMath\.random\(/.test(codeOnly(text)));
  // A style of files is drawn with its seed, and one test needs a plain one.
  expect(own.map(({ path }) => path)).toEqual(['tests/grammar/recovery.test.ts']);
});
