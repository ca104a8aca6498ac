// What `check` prints for people, and the JSON that the contract fixes.
import { readFileSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { caution } from '../../server/engine/inside.ts';
import { asOf, noUnit, root, run, sandbox, sound, twice } from './kit.ts';

const schema = JSON.parse(readFileSync(new URL('./check.schema.json', import.meta.url), 'utf8')) as object;
const isCheck = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

interface Place {
  path: string;
  range: { start: { line: number; column: number }; end: { line: number; column: number } };
  message: string;
}
interface Found extends Omit<Place, 'path'> {
  rule: string;
  severity: string;
  related: Place[];
  source: string;
}
interface Checked {
  files: { path: string; findings: Found[] }[];
  counts: Record<string, number>;
}

function checked(stdout: string): Checked {
  const read = JSON.parse(stdout) as Checked;
  expect(isCheck(read), JSON.stringify(isCheck.errors)).toBe(true);
  return read;
}

const acceptedTwice = (until: string): string => `${twice()}accept use-repeated because "the merge is under way" until ${until} by "KL"\n`;

describe('text', () => {
  test('a finding shows its line, what is wrong, why, what to do, and the source', () => {
    const { run } = sandbox({ 'a.gate': noUnit });
    expect(run('check', 'a.gate').stdout).toBe(
      [
        'a.gate:3:8 error unit-missing',
        '  3 |   area 0.5',
        '    |        ^^^',
        '  “0.5” in “area” has no unit; area is expected.',
        '  Why: The same number means a door or a field in another unit, and a reader should not have to guess which.',
        '  Do: Write one of mm2, m2, AWG behind it; “0.5 mm2” is likely.',
        '  Source: the language itself',
        '',
        '1 file, 1 error',
        caution,
        '',
      ].join('\n'),
    );
  });

  test.each([
    ['CRLF', noUnit.replaceAll('\n', '\r\n'), 'a.gate:3:8 error', '  3 |   area 0.5\n    |        ^^^\n'],
    ['a byte order mark', '\ufeff' + noUnit, 'a.gate:3:8 error', '  3 |   area 0.5\n'],
    [
      'a finding on line 1 behind a byte order mark',
      '\ufeffcable-model plain { area 0.5 }',
      'a.gate:1:26 error',
      '  1 | cable-model plain { area 0.5 }\n    |                          ^^^\n',
    ],
    ['tabs', noUnit.replace('  area ', '\t\tarea\t'), 'a.gate:3:8 error', '  3 |         area    0.5\n    |                 ^^^\n'],
    [
      'wide characters',
      'language 1\ncable-model 門 { area 0.5 }\n',
      'a.gate:2:22 error',
      '  2 | cable-model 門 { area 0.5 }\n    |                       ^^^\n',
    ],
    ['control characters', 'language 1\n"\u001b[2J\u001b]0;x\u0007" 2\n', 'a.gate:2:1 error', '  2 | "␛[2J␛]0;x␇" 2\n'],
    ['a character that turns the direction of reading', 'language 1\n"\u202eabc" 2\n', 'a.gate:2:1 error', '  2 | "<202E>abc" 2\n'],
    [
      'a range over several lines shows the first',
      'language 1\ncable-model plain {\n',
      'a.gate:2:1 error',
      '  2 | cable-model plain {\n    | ^^^^^^^^^^^',
    ],
  ])('%s', (_, text, where, shown) => {
    const { run } = sandbox({ 'a.gate': text });
    const { stdout } = run('check', 'a.gate');
    expect(stdout).toContain(where);
    expect(stdout).toContain(shown);
    expect(stdout).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
  });

  test('a very long line is cut so that the caret stays in sight', () => {
    const { run } = sandbox({ 'a.gate': `language 1\ncable-model plain { ${' '.repeat(5000)}area 0.5 # ${'far '.repeat(1000)}\n}\n` });
    const lines = run('check', 'a.gate').stdout.split('\n');
    expect(lines[0]).toBe('a.gate:2:5026 error unit-missing');
    const [line, carets] = [lines[1] as string, lines[2] as string];
    expect(line.length).toBeLessThan(170);
    expect(line).toMatch(/\| … .*…$/);
    expect(line.indexOf('0.5')).toBe(carets.indexOf('^^^'));
  });

  test('the summary counts findings and what is accepted; --quiet leaves it out', () => {
    const { run } = sandbox({
      'a.gate': noUnit,
      'b.gate': acceptedTwice('2026-12-31'),
      'c/d.gate': twice('../'),
      'e.gate': sound,
    });
    expect(run('check', '.', ...asOf).stdout).toContain(`\n4 files, 1 error, 1 warning; 1 accepted\n${caution}\n`);
    expect(run('check', '.', '--quiet', ...asOf).stdout).not.toMatch(/files|accepted/);
    expect(run('check', 'e.gate', ...asOf).stdout).toBe(`1 file, no findings\n${caution}\n`);
    expect(run('check', 'e.gate', '--quiet', ...asOf).stdout).toBe('');
    expect(run('check', 'b.gate', '--as-of', '2027-01-01').stdout).toContain('acceptance-expired');
  });
});

describe('json', () => {
  test('has the shape of the contract, sorted, with lines and columns from 1', () => {
    const { run } = sandbox({ 'z.gate': noUnit, 'a/b.gate': 'language 1\ncable-model a {\n  area 5\n  cores 2.5\n}\n', 'm.gate': sound });
    const { stdout, status } = run('check', '.', '--output', 'json', ...asOf);
    expect(status).toBe(1);
    const read = checked(stdout);
    expect(read.files.map((file) => file.path)).toEqual(['a/b.gate', 'm.gate', 'z.gate']);
    expect(read.files[0]?.findings.map((finding) => finding.range.start)).toEqual([
      { line: 3, column: 8 },
      { line: 4, column: 9 },
    ]);
    expect(read.files[1]?.findings).toEqual([]);
    expect(read.files[2]?.findings[0]).toEqual({
      rule: 'unit-missing',
      severity: 'error',
      message:
        '“0.5” in “area” has no unit; area is expected. The same number means a door or a field in another unit, and a reader should not have to guess which. Write one of mm2, m2, AWG behind it; “0.5 mm2” is likely.',
      range: { start: { line: 3, column: 8 }, end: { line: 3, column: 11 } },
      related: [],
      source: 'the language itself',
    });
    expect(read.counts).toEqual({ error: 3, warning: 0, note: 0, notJudged: 0 });
  });

  test('related places carry the path they are in', () => {
    const { run } = sandbox({ 'a.gate': sound + sound.replace('language 1\n', '') });
    const found = checked(run('check', 'a.gate', '--output', 'json', ...asOf).stdout).files[0]?.findings.find(
      (finding) => finding.rule === 'name-repeated',
    );
    expect(found?.related).toEqual([
      { message: 'the first one of that name', path: 'a.gate', range: { start: { line: 2, column: 13 }, end: { line: 2, column: 18 } } },
    ]);
  });

  test('columns count UTF-16 units', () => {
    const { run } = sandbox({ 'a.gate': 'language 1\ncable-model 🚪 { area 5 }\n' });
    expect(
      checked(run('check', 'a.gate', '--output', 'json', ...asOf).stdout).files[0]?.findings.find(
        (finding) => finding.rule === 'unit-missing',
      )?.range.start,
    ).toEqual({ line: 2, column: 23 });
  });

  test('paths are told from the root on, wherever one stands', () => {
    const { folder } = sandbox({ 'in/a.gate': noUnit, 'out/b.gate': noUnit });
    for (const output of ['json', 'sarif', 'junit', 'github', 'gitlab']) {
      const inside = run(['check', '../out', 'a.gate', '--output', output, ...asOf], { cwd: join(folder, 'in') }).stdout;
      const above = run(['check', 'in', 'out', '--output', output, ...asOf], { cwd: folder }).stdout;
      const far = run(['check', folder, '--output', output, ...asOf], { cwd: '/' }).stdout;
      expect(inside.split('\n').sort(), output).toEqual(above.split('\n').sort());
      expect(far, output).toBe(above);
      expect(above, output).toContain('out/b.gate');
      expect(above, output).not.toContain(folder);
    }
  });

  test('the same bytes on every run and in every place', () => {
    const files = {
      'b/z.gate': noUnit,
      'a.gate': twice(),
      'é ü.gate': noUnit,
      'lib/x.gate': 'language 1\nuse "../../out.gate"\nuse "gone.gate"\nuse "y.gate"\n',
      'lib/y.gate': 'language 1\nuse "x.gate"\n',
    };
    for (const output of ['text', 'json', 'sarif', 'junit', 'github', 'gitlab', 'lines']) {
      const [first, second] = [sandbox(files), sandbox(files)];
      const wanted = first.run('check', '.', '--output', output, ...asOf);
      expect(wanted.stdout.length).toBeGreaterThan(100);
      expect(first.run('check', '.', '--output', output, ...asOf)).toEqual(wanted);
      expect(first.run('check', './b', 'a.gate', '.', 'a.gate', '--output', output, ...asOf)).toEqual(wanted);
      expect(wanted.stdout).not.toContain(first.folder);
      // The folder that the files are in has another name on every machine.
      expect(second.run('check', '.', '--output', output, ...asOf)).toEqual(wanted);
    }
  });

  test('without --as-of, the day is today', () => {
    const { run } = sandbox({ 'a.gate': acceptedTwice('2000-01-01') });
    expect(run('check', 'a.gate').stdout).toContain('acceptance-expired');
    expect(run('check', 'a.gate', '--as-of', '2000-01-01').stdout).not.toContain('acceptance-expired');
  });

  test('the examples of this repository', () => {
    const read = checked(run(['check', 'examples', '--output', 'json', ...asOf], { cwd: root }).stdout);
    expect(read.files.length).toBeGreaterThan(3);
    expect(read.files.flatMap((file) => file.findings).length).toBe(
      (read.counts['error'] ?? 0) + (read.counts['warning'] ?? 0) + (read.counts['note'] ?? 0),
    );
  });
});

describe('which files', () => {
  test('folders are searched; node_modules, folders with a dot and other files are left out; what is named is taken', () => {
    const { run } = sandbox({
      'a.gate': sound,
      'b/c/d.gate': sound,
      'node_modules/x.gate': sound,
      '.hidden/y.gate': sound,
      'b/.z/e.gate': sound,
      'notes.txt': sound,
      'f.gate.bak': sound,
    });
    const paths = (...args: string[]): string[] =>
      checked(run('check', ...args, '--output', 'json', ...asOf).stdout).files.map((file) => file.path);
    expect(paths('.')).toEqual(['a.gate', 'b/c/d.gate']);
    expect(paths('.hidden', 'notes.txt')).toEqual(['.hidden/y.gate', 'notes.txt']);
  });

  test('links to folders are followed, but not in circles, and no file is checked twice', () => {
    const { run, path } = sandbox({ 'a/b/c.gate': sound, 'z/d.gate': sound });
    symlinkSync('..', path('a/b/up'));
    symlinkSync('../z', path('a/more'));
    symlinkSync('b', path('a/again'));
    symlinkSync('loop', path('a/loop'));
    const read = checked(run('check', 'a', '--output', 'json', ...asOf).stdout);
    expect(read.files.map((file) => file.path)).toEqual(['a/b/c.gate', 'a/more/d.gate']);
  });

  test('shards part the files: each is in exactly one, whatever the order of the arguments', () => {
    const files = Object.fromEntries(Array.from({ length: 11 }, (_, index) => [`s${index}.gate`, sound]));
    const { run } = sandbox(files);
    const of = (...args: string[]): string[] =>
      checked(run('check', ...args, '--output', 'json', ...asOf).stdout).files.map((file) => file.path);
    const parts = [1, 2, 3].map((part) => of('.', '--shard', `${part}/3`));
    expect(parts.map((part) => part.length)).toEqual([4, 4, 3]);
    expect(parts.flat().sort()).toEqual(of('.'));
    expect(of('s9.gate', '.', 's0.gate', '--shard', '2/3')).toEqual(parts[1]);
    expect(run('check', 's1.gate', '--shard', '2/2').status).toBe(0);
  });
});

describe('the root, which no “use” line may leave', () => {
  const library = 'language 1\ndrive-model oak { \n  kind linear-ram\n}\n';
  const site = (use: string): string => `language 1\nuse "${use}"\nleaf a {\n  width 2 m\n  mass 50 kg\n}\ndrive d : oak {\n  moves a\n}\n`;
  const rules = (ran: { stdout: string }): string[] =>
    checked(ran.stdout).files.flatMap((file) => file.findings.map((finding) => finding.rule));

  test('is the folder that holds .git, and --root where it is given', () => {
    const { run } = sandbox({ 'lib/l.gate': library, 'sites/deep/a.gate': site('../../lib/l.gate') });
    expect(rules(run('check', 'sites', '--output', 'json', ...asOf))).not.toContain('use-outside-root');
    expect(rules(run('check', 'sites', '--root', 'sites', '--output', 'json', ...asOf))).toContain('use-outside-root');
  });

  test('without .git it is the current folder, or the one that was named, or the one above a file that was named', () => {
    const elsewhere = sandbox();
    const bare = sandbox({ 'lib/l.gate': library, 'sites/a.gate': site('../lib/l.gate'), 'sites/deep/b.gate': site('../../lib/l.gate') });
    rmSync(bare.path('.git'), { recursive: true });
    const found = (cwd: string, ...paths: string[]): readonly string[] =>
      rules(run(['check', ...paths, '--output', 'json', ...asOf], { cwd }));
    expect(found(bare.folder, 'sites')).not.toContain('use-outside-root');
    expect(found(bare.path('sites'), 'a.gate')).toContain('use-outside-root');
    expect(found(elsewhere.folder, bare.folder)).not.toContain('use-outside-root');
    expect(found(elsewhere.folder, bare.path('sites'))).toContain('use-outside-root');
    expect(found(elsewhere.folder, bare.path('sites/a.gate'))).not.toContain('use-outside-root');
    // What else is named changes nothing for a file.
    const deep = bare.path('sites/deep/b.gate');
    expect(found(elsewhere.folder, deep)).toContain('use-outside-root');
    expect(found(elsewhere.folder, deep, bare.path('lib/l.gate'))).toContain('use-outside-root');
  });

  test('a link cannot lead out of it', () => {
    const outside = sandbox({ 'l.gate': library });
    const { run, path } = sandbox({
      'a.gate': site('l.gate'),
      'b.gate': site('lib/l.gate'),
      'c.gate': site('inner.gate'),
      'own/l.gate': library,
    });
    symlinkSync(outside.path('l.gate'), path('l.gate'));
    symlinkSync(outside.folder, path('lib'));
    symlinkSync('own/l.gate', path('inner.gate'));
    const of = (name: string): string[] => rules(run('check', name, '--output', 'json', ...asOf));
    expect(of('a.gate')).toContain('use-outside-root');
    expect(of('b.gate')).toContain('use-outside-root');
    expect(of('c.gate')).not.toContain('use-outside-root');
  });
});
