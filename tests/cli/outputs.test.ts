// The machine formats: what their readers require of them.
import { describe, expect, test } from 'vitest';
import { asOf, noUnit, type Ran, sandbox, sound, twice } from './kit.ts';

// A file with an error, one with a warning, one with nothing, a name that needs escaping, and a text that bites.
const files = {
  'a & "b"/é %41.gate': noUnit,
  'bites.gate': 'language 1\n"]]></failure><x y=\'1\'>&%0A::error::\u001b[31m" 2\n',
  'twice.gate': twice(),
  'well.gate': sound,
};
const ran = (output: string, ...more: string[]): Ran => sandbox(files).run('check', '.', '--output', output, ...more, ...asOf);

interface Located {
  physicalLocation: { artifactLocation: { uri: string }; region: Record<string, number> };
  message?: { text: string };
  id?: number;
}
interface Sarif {
  $schema: string;
  version: string;
  runs: {
    tool: {
      driver: {
        name: string;
        version: string;
        rules: { id: string; shortDescription?: { text: string }; defaultConfiguration?: { level: string } }[];
      };
    };
    columnKind: string;
    invocations: { executionSuccessful: boolean; toolExecutionNotifications: { message: { text: string } }[] }[];
    results: {
      ruleId: string;
      ruleIndex: number;
      level: string;
      message: { text: string };
      locations: Located[];
      relatedLocations?: Located[];
      partialFingerprints: Record<string, string>;
    }[];
  }[];
}

describe('SARIF: what OASIS SARIF 2.1.0 requires', () => {
  const log = (...more: string[]): Sarif => JSON.parse(ran('sarif', ...more).stdout) as Sarif;

  test('the log, its run and its driver', () => {
    const { version, $schema, runs } = log();
    expect(version).toBe('2.1.0');
    expect($schema).toMatch(/^https:\/\/.*sarif.*2\.1\.0.*\.json$/);
    expect(runs).toHaveLength(1);
    const run = runs[0] as Sarif['runs'][0];
    expect(run.tool.driver.name).toBe('pintle');
    expect(run.columnKind).toBe('utf16CodeUnits');
    expect(run.invocations.map((one) => one.executionSuccessful)).toEqual([true]);
  });

  test('results: message, level, rule and place', () => {
    const { driver } = (log().runs[0] as Sarif['runs'][0]).tool;
    const { results } = log().runs[0] as Sarif['runs'][0];
    expect(results.length).toBeGreaterThan(2);
    expect(new Set(driver.rules.map((rule) => rule.id)).size).toBe(driver.rules.length);
    for (const result of results) {
      expect(result.message.text).toMatch(/\S/);
      expect(['error', 'warning', 'note']).toContain(result.level);
      expect(driver.rules[result.ruleIndex]?.id).toBe(result.ruleId);
      for (const { physicalLocation } of [...result.locations, ...(result.relatedLocations ?? [])]) {
        const { startLine, startColumn, endLine, endColumn } = physicalLocation.region as Record<string, number>;
        for (const count of [startLine, startColumn, endLine, endColumn]) expect(count).toBeGreaterThan(0);
        expect((endLine as number) - (startLine as number) || (endColumn as number) - (startColumn as number)).toBeGreaterThanOrEqual(0);
        // RFC 3986: a relative reference, with nothing in it that would be read as something else.
        expect(physicalLocation.artifactLocation.uri).toMatch(/^[A-Za-z0-9\-._~%!$&'()*+,;=@/]+$/);
      }
    }
    expect(results.map((result) => result.locations[0]?.physicalLocation.artifactLocation.uri)).toContain(
      'a%20%26%20%22b%22/%C3%A9%20%2541.gate',
    );
    expect(results.find((result) => result.ruleId === 'unit-missing')?.locations[0]?.physicalLocation.region).toEqual({
      startLine: 3,
      startColumn: 8,
      endLine: 3,
      endColumn: 11,
    });
  });

  test('no two results have one fingerprint, and lines above do not change them', () => {
    const { run } = sandbox({ 'a.gate': noUnit + noUnit.replace('language 1\n', '').replace('plain', 'other'), 'b.gate': noUnit });
    const prints = (): string[] =>
      (JSON.parse(run('check', '.', '--output', 'sarif', ...asOf).stdout) as Sarif).runs[0]?.results.map(
        (result) => result.partialFingerprints['pintle/v1'] as string,
      ) as string[];
    const first = prints();
    expect(first).toHaveLength(3);
    expect(new Set(first).size).toBe(3);
    const moved = sandbox({
      'a.gate': '# one more line\n' + noUnit + noUnit.replace('language 1\n', '').replace('plain', 'other'),
      'b.gate': noUnit,
    });
    expect(
      (JSON.parse(moved.run('check', '.', '--output', 'sarif', ...asOf).stdout) as Sarif).runs[0]?.results.map(
        (result) => result.partialFingerprints['pintle/v1'],
      ),
    ).toEqual(first);
  });

  test('what could not be read is a notification, and the run is not called successful', () => {
    const { stdout, status } = sandbox(files).run('check', 'gone.gate', 'well.gate', '--output', 'sarif', ...asOf);
    expect(status).toBe(2);
    const [invocation] = (JSON.parse(stdout) as Sarif).runs[0]?.invocations ?? [];
    expect(invocation?.executionSuccessful).toBe(false);
    expect(invocation?.toolExecutionNotifications.map((one) => one.message.text)).toEqual(['gone.gate: there is no such file or folder']);
  });
});

describe('JUnit', () => {
  /** Reads XML strictly enough to notice what a parser would refuse; gives the elements with their attributes. */
  function elements(xml: string): { name: string; attributes: Record<string, string> }[] {
    expect(xml).toMatch(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/);
    // XML 1.0, 2.2: the characters that may stand in a document.
    expect(xml).not.toMatch(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u);
    const found: { name: string; attributes: Record<string, string> }[] = [];
    const open: string[] = [];
    const rest = xml
      .replace(/^<\?xml[^>]*\?>/, '')
      .replace(
        /<(\/?)([a-z-]+)((?:\s+[a-z]+="[^"<]*")*)\s*(\/?)>/g,
        (_, close: string, name: string, attributes: string, empty: string) => {
          if (close === '/') expect(open.pop()).toBe(name);
          else {
            found.push({
              name,
              attributes: Object.fromEntries([...attributes.matchAll(/([a-z]+)="([^"]*)"/g)].map(([, key, value]) => [key, value])),
            });
            if (empty !== '/') open.push(name);
          }
          return '';
        },
      );
    expect(open).toEqual([]);
    expect(rest).not.toMatch(/[<>]|&(?!amp;|lt;|gt;|quot;)/);
    return found;
  }

  test('is well-formed, and its counts are those of its cases', () => {
    const all = elements(ran('junit').stdout);
    const named = (name: string): number => all.filter((element) => element.name === name).length;
    expect(all[0]).toEqual({ name: 'testsuites', attributes: { name: 'pintle' } });
    // The whole is written as it comes and has no counts of its own; each suite has.
    const sum = (of: string): number =>
      all.reduce((before, { name, attributes }) => before + (name === 'testsuite' ? Number(attributes[of]) : 0), 0);
    expect([sum('tests'), sum('failures'), sum('errors')]).toEqual([named('testcase'), named('failure'), 0]);
    expect(named('testsuite')).toBe(4);
    expect(named('failure')).toBeGreaterThan(1);
    expect(all.filter((element) => element.name === 'testsuite').map((element) => element.attributes['name'])).toContain(
      'a &amp; &quot;b&quot;/é %41.gate',
    );
  });

  test('a failure is what fails the run: warnings only with --fail-on warning', () => {
    const { run } = sandbox({ 'twice.gate': twice() });
    const failures = (...more: string[]): number =>
      elements(run('check', '.', '--output', 'junit', ...more, ...asOf).stdout).filter((element) => element.name === 'failure').length;
    expect(failures()).toBe(0);
    expect(failures('--fail-on', 'warning')).toBe(1);
  });

  test('what could not be read is an error', () => {
    const { stdout } = sandbox().run('check', 'gone.gate', '--output', 'junit', ...asOf);
    expect(elements(stdout).find((element) => element.name === 'error')?.attributes).toEqual({
      message: 'there is no such file or folder',
    });
  });
});

test('GitHub: one workflow command a finding, with everything escaped that would end it early', () => {
  const { stdout } = ran('github');
  const lines = stdout.trimEnd().split('\n');
  expect(lines).toHaveLength((JSON.parse(ran('gitlab').stdout) as unknown[]).length);
  for (const line of lines)
    expect(line).toMatch(/^::(error|warning|notice) file=[^:]+,line=\d+,endLine=\d+(,col=\d+,endColumn=\d+)?,title=[a-z-]+::\S/);
  expect(stdout).toContain(
    '::error file=a & "b"/é %2541.gate,line=3,endLine=3,col=8,endColumn=11,title=unit-missing::“0.5” in “area” has no unit',
  );
  expect(stdout).toContain('::warning file=twice.gate,line=3');
  expect(stdout).not.toContain('\u001b');
});

test('lines: one for each finding, with its place and its rule', () => {
  const lines = ran('lines').stdout.trimEnd().split('\n');
  expect(lines).toHaveLength((JSON.parse(ran('gitlab').stdout) as unknown[]).length);
  expect(lines).toContainEqual(
    expect.stringMatching(/^a & "b"\/é %41\.gate:3:8-3:11: error: “0\.5” in “area” has no unit.*\[unit-missing\]$/),
  );
});

test('GitLab: the fields that its code quality report requires', () => {
  const issues = JSON.parse(ran('gitlab').stdout) as {
    description: string;
    check_name: string;
    fingerprint: string;
    severity: string;
    location: { path: string; lines: { begin: number } };
  }[];
  expect(issues.length).toBeGreaterThan(2);
  expect(new Set(issues.map((issue) => issue.fingerprint)).size).toBe(issues.length);
  for (const issue of issues) {
    expect(issue.description).toMatch(/\S/);
    expect(['info', 'minor', 'major', 'critical', 'blocker']).toContain(issue.severity);
    expect(issue.location.path).not.toMatch(/^\.?\//);
    expect(issue.location.lines.begin).toBeGreaterThan(0);
  }
});

test.each(['sarif', 'junit', 'github', 'gitlab', 'json'])('%s of nothing found is whole', (output) => {
  const { run } = sandbox({ 'well.gate': sound });
  const { stdout, stderr, status } = run('check', '.', '--output', output, ...asOf);
  expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
  if (output === 'github') expect(stdout).toBe('');
  else if (output === 'junit') expect(stdout).toContain('failures="0"');
  else expect(() => JSON.parse(stdout) as unknown).not.toThrow();
});
