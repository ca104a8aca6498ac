// Reports of hostile files, read back by readers that know nothing of us: what comes out is what went in, and nothing in it is a
// command, a mark or a control for whoever prints it.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DOMParser, type Element } from '@xmldom/xmldom';
import { Ajv2020 } from 'ajv/dist/2020.js';
import ajvDraft4 from 'ajv-draft-04';
import { describe, expect, test } from 'vitest';
import { root } from '../kit/sources.ts';
import { asOf, noUnit, sandbox } from './kit.ts';

/** Its types speak of another kind of module than it is. */
const Draft4 = ajvDraft4 as unknown as typeof ajvDraft4.default;

const names = [
  ...['##[error]x.gate', '::error::x.gate', ' blank.gate', '-dash.gate', '--root.gate', 'a,b:c%d.gate', 'x"y<z>&\'.gate', 'é ü 門.gate'],
  ...[
    'new\nline.gate',
    'tab\there.gate',
    'esc\u001b[31m.gate',
    'bell\u0007.gate',
    'c1\u009b31m.gate',
    'turned\u202egate.gate',
    'a]]>b.gate',
  ],
  ...[
    'deep/::warning file=x,line=1::.gate',
    'deep/#.gate',
    '1:2:3.gate',
    '%0A::error::.gate',
    'zero\u200bwidth.gate',
    '##vso[task.x]y.gate',
  ],
];
const bites = [
  '"]]></failure><x y=\'1\'>&%0A::error::\u001b[31m" 2',
  'leaf ##[error] {\n  width 2\n}',
  '::error file=a::b',
  'site "\u202e\u2066evil\u009b2J\u001b]8;;http://x\u0007" {\n}',
  'leaf \u0435ast {\n  width 5\n}\nleaf east {\n  width 5\n}',
  `leaf ${'x'.repeat(5000)} {\n  width 2 ${'y'.repeat(5000)}\n}`,
  '# \u2028\u2029 ##vso[task.setvariable]x\nuse "##[group]x.gate"\nuse "::set-output::"',
  'accept "::stop-commands::x" because "%0D%0A" by "\ud83d"',
];
const files = Object.fromEntries(
  names.map((name, index) => [name, index % 3 === 0 ? noUnit : `language 1\n${bites[index % bites.length]}\n`] as const),
);
const place = () => sandbox(files);

interface Found {
  readonly path: string;
  readonly rule: string;
  readonly severity: string;
  readonly line: number;
}
const inOrder = (found: readonly Found[]): string[] =>
  found.map(({ path, rule, severity, line }) => JSON.stringify([path, rule, severity, line])).sort();

/** What is found, by the JSON, whose shape is the contract: all others are held to it. */
function truth(): { readonly found: readonly Found[]; readonly text: string } {
  const text = place().run('check', '.', '--output', 'json', ...asOf).stdout;
  const report = JSON.parse(text) as {
    files: { path: string; findings: { rule: string; severity: string; range: { start: { line: number } } }[] }[];
  };
  const found = report.files.flatMap(({ path, findings }) =>
    findings.map(({ rule, severity, range }) => ({ path, rule, severity, line: range.start.line })),
  );
  return { found, text };
}
let known: ReturnType<typeof truth> | undefined;
const truly = () => (known ??= truth());

/** Characters that do something where a text is shown: of category Cc but for line ends, and those that turn the direction (UAX 9). */
const active = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;
/** As GitHub's runner takes a line for a command, and Azure Pipelines' (from memory). */
const commands = /^\s*::|##\[|##vso\[/m;
/** A path as the outputs for people and XML show it: undone by the rule that the help tells. */
const unshown = (path: string): string =>
  path
    .replace(/^\.\//, '')
    .replace(/[\u2400-\u241f]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0x2400))
    .replace(/<([0-9A-F]{4})>/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

test('the corpus bites: every file is found faulty, by many rules', () => {
  const { found } = truly();
  expect([...new Set(found.map(({ path }) => path))].sort()).toEqual(Object.keys(files).sort());
  expect(new Set(found.map(({ rule }) => rule)).size).toBeGreaterThan(6);
});

test('json: the contract’s schema, and the same paths', () => {
  const asJson = truly().text;
  const schema = JSON.parse(readFileSync(join(root, 'tests/cli/check.schema.json'), 'utf8')) as object;
  const validate = new Ajv2020({ strict: false }).compile(schema);
  expect(validate(JSON.parse(asJson)), JSON.stringify(validate.errors)).toBe(true);
  expect(asJson).not.toMatch(active);
  expect(asJson).not.toMatch(/##\[|##vso\[/);
});

interface Log {
  runs: {
    tool: { driver: { rules: { id: string }[] } };
    results: {
      ruleId: string;
      ruleIndex: number;
      level: string;
      locations: { physicalLocation: { artifactLocation: { uri: string }; region: { startLine: number } } }[];
    }[];
  }[];
}

describe('sarif', () => {
  const logOf = (): string => place().run('check', '.', '--output', 'sarif', ...asOf).stdout;
  test('tells the same', () => {
    const text = logOf();
    const [run] = (JSON.parse(text) as Log).runs;
    expect(run?.results.every(({ ruleId, ruleIndex }) => run.tool.driver.rules[ruleIndex]?.id === ruleId)).toBe(true);
    const read = (run?.results ?? []).map(({ ruleId, level, locations: [first] }) => ({
      path: decodeURIComponent(first?.physicalLocation.artifactLocation.uri ?? ''),
      rule: ruleId,
      severity: level,
      line: first?.physicalLocation.region.startLine ?? 0,
    }));
    expect(inOrder(read)).toEqual(inOrder(truly().found));
    expect(text).not.toMatch(active);
  });
  const schemas = process.env['PINTLE_SCHEMAS'] ?? join(root, '../shared/reference/schemas');
  const file = join(schemas, 'sarif-2.1.0.schema.json');
  test.runIf(existsSync(file) || process.env['PINTLE_REQUIRE_ALL'] === '1')('is valid by the OASIS schema of SARIF 2.1.0', () => {
    const validate = new Draft4({ strict: false, validateFormats: false }).compile(JSON.parse(readFileSync(file, 'utf8')) as object);
    expect(validate(JSON.parse(logOf())), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  });
});

test('junit: strict XML that tells the same', () => {
  const text = place().run('check', '.', '--output', 'junit', '--fail-on', 'note', ...asOf).stdout;
  const faults: string[] = [];
  const xml = new DOMParser({ onError: (level, message) => void faults.push(`${level} ${message}`) }).parseFromString(text, 'text/xml');
  expect(faults).toEqual([]);
  const read = [...xml.getElementsByTagName('failure')].map((failure) => {
    const of = failure.parentNode as Element;
    const [, rule, line] = /^(\S+) at (\d+):\d+$/.exec(of.getAttribute('name') ?? '') ?? [];
    return {
      path: unshown(of.getAttribute('classname') ?? ''),
      rule: rule ?? '',
      severity: failure.getAttribute('type') ?? '',
      line: Number(line),
    };
  });
  expect(inOrder(read)).toEqual(inOrder(truly().found));
  expect(text).not.toMatch(active);
  expect(text).not.toMatch(commands);
});

test('github: workflow commands, one for each finding and nothing else', () => {
  // GitHub’s documentation, “Workflow commands for GitHub Actions”; what is escaped is in the runner’s ActionCommand (from memory).
  const text = place().run('check', '.', '--output', 'github', ...asOf).stdout;
  const undone = (escaped: string): string =>
    escaped.replace(/%0D/g, '\r').replace(/%0A/g, '\n').replace(/%3A/g, ':').replace(/%2C/g, ',').replace(/%25/g, '%');
  const read = text
    .trimEnd()
    .split('\n')
    .map((line) => {
      const [, command, given] = /^::(error|warning|notice) ([^:]*)::[^\n]+$/.exec(line) ?? [];
      expect(command, line.slice(0, 200)).toBeDefined();
      const properties = new Map(
        (given ?? '').split(',').map((one) => [one.split('=')[0], undone(one.slice(one.indexOf('=') + 1))] as const),
      );
      return {
        path: unshown(properties.get('file') ?? ''),
        rule: properties.get('title') ?? '',
        severity: command === 'notice' ? 'note' : (command ?? ''),
        line: Number(properties.get('line')),
      };
    });
  expect(inOrder(read)).toEqual(inOrder(truly().found));
  expect(text).not.toMatch(active);
  expect(text).not.toMatch(/##\[|##vso\[/);
});

test('gitlab: a code quality report with a fingerprint for each', () => {
  // GitLab’s documentation, “Code Quality”: description, check_name, fingerprint, severity, location.path, location.lines.begin.
  const text = place().run('check', '.', '--output', 'gitlab', ...asOf).stdout;
  const issues = JSON.parse(text) as {
    description: string;
    check_name: string;
    fingerprint: string;
    severity: string;
    location: { path: string; lines: { begin: number } };
  }[];
  const grades: Readonly<Record<string, string>> = { critical: 'error', minor: 'warning', info: 'note' };
  const read = issues.map(({ check_name, severity, location }) => ({
    path: location.path,
    rule: check_name,
    severity: grades[severity] ?? '',
    line: location.lines.begin,
  }));
  expect(inOrder(read)).toEqual(inOrder(truly().found));
  expect(new Set(issues.map(({ fingerprint }) => fingerprint)).size).toBe(issues.length);
  expect(text).not.toMatch(active);
  expect(text).not.toMatch(/##\[|##vso\[/);
});

test('lines: one for each finding, with nothing in it that is obeyed', () => {
  const text = place().run('check', '.', '--output', 'lines', ...asOf).stdout;
  const read = text
    .trimEnd()
    .split('\n')
    .map((line) => {
      const [, path, at, severity, rule] = /^(.+?):(\d+):\d+-\d+:\d+: (error|warning|note): .* \[([a-z-]+)\]$/.exec(line) ?? [];
      expect(path, line.slice(0, 200)).toBeDefined();
      return { path: unshown(path ?? ''), rule: rule ?? '', severity: severity ?? '', line: Number(at) };
    });
  expect(inOrder(read)).toEqual(inOrder(truly().found));
  expect(text).not.toMatch(active);
  expect(text).not.toMatch(commands);
});

test('text: nothing that a terminal or a build server obeys, and every finding', () => {
  const text = place().run('check', '.', ...asOf).stdout;
  expect(text).not.toMatch(active);
  expect(text).not.toMatch(commands);
  expect([...text.matchAll(/^\S.*:\d+:\d+ (?:error|warning|note) [a-z-]+$/gm)]).toHaveLength(truly().found.length);
});
