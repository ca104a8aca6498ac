// The commands that write: format, and check with --fix or --baseline.
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, test } from 'vitest';
import { besideOf } from '../../server/cli/leftovers.ts';
import { writeWhole } from '../../server/cli/write.ts';
import { caution } from '../../server/engine/inside.ts';
import { asOf, command, noUnit, run, type Sandbox, sandbox, sound, twice } from './kit.ts';

const textOf = ({ path }: Sandbox, name: string): string => readFileSync(path(name), 'utf8');
const untidy = 'language   1\n\n\n\ncable-model plain   {\narea 0.5 mm2 # thin\n      class 5\n cores 4 }\n';
const tidy = 'language 1\n\ncable-model plain {\n  area 0.5 mm2 # thin\n  class 5\n  cores 4\n}\n';

describe('format', () => {
  test('writes the canonical form, once', () => {
    const box = sandbox({ 'a.gate': untidy, 'b.gate': tidy });
    expect(box.run('format', '.')).toEqual({ status: 0, stdout: 'a.gate\n', stderr: '1 file changed, 1 as they should be\n' });
    expect(textOf(box, 'a.gate')).toBe(tidy);
    expect(box.run('format', '.')).toMatchObject({ status: 0, stdout: '' });
  });

  test('--check changes nothing', () => {
    const box = sandbox({ 'a.gate': untidy, 'b.gate': tidy });
    expect(box.run('format', '.', '--check')).toEqual({
      status: 1,
      stdout: 'a.gate\n',
      stderr: '1 file would change, 1 as they should be\n',
    });
    expect(textOf(box, 'a.gate')).toBe(untidy);
    expect(box.run('format', 'b.gate', '--check').status).toBe(0);
  });

  test('keeps line ends, byte order mark and mode', () => {
    const box = sandbox({ 'a.gate': '\ufeff' + untidy.replaceAll('\n', '\r\n') });
    chmodSync(box.path('a.gate'), 0o640);
    expect(box.run('format', 'a.gate').status).toBe(0);
    expect(textOf(box, 'a.gate')).toBe('\ufeff' + tidy.replaceAll('\n', '\r\n'));
    expect(statSync(box.path('a.gate')).mode & 0o777).toBe(0o640);
    expect(readdirSync(box.folder).filter((name) => name.startsWith('.pintle'))).toEqual([]);
  });

  test('refuses a file whose shape cannot be read, and says so once', () => {
    const broken = untidy.replace(' }', '').replace('thin', 'thin\n"x');
    const latin = Buffer.concat([Buffer.from(untidy + '# caf'), Buffer.from([0xe9])]);
    const box = sandbox({ 'a.gate': untidy, 'b.gate': broken, 'c.gate': latin });
    const { status, stdout, stderr } = box.run('format', '.');
    expect(status).toBe(2);
    expect(stdout).toBe('a.gate\n');
    expect(stderr.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^pintle: b\.gate: not formatted, its shape cannot be read: [a-z-]+ at \d+:\d+; “pintle check” says more$/),
      'pintle: c.gate: not formatted, it is not UTF-8 text',
      '1 file changed, 0 as they should be, 2 could not be formatted',
    ]);
    expect(textOf(box, 'b.gate')).toBe(broken);
    expect(readFileSync(box.path('c.gate')).equals(latin)).toBe(true);
  });

  test('“-” reads standard input and writes standard output', () => {
    expect(run(['format', '-'], { input: '\ufeff' + untidy.replaceAll('\n', '\r\n') })).toEqual({
      status: 0,
      stdout: '\ufeff' + tidy.replaceAll('\n', '\r\n'),
      stderr: '',
    });
    expect(run(['format', '-', '--check'], { input: untidy })).toEqual({ status: 1, stdout: '', stderr: '' });
    expect(run(['format', '-'], { input: 'a {' })).toMatchObject({ status: 2, stdout: '' });
    expect(run(['format', '-'], { input: '' })).toEqual({ status: 0, stdout: '', stderr: '' });
  });

  test('writes through a link, but not out of the root', () => {
    const outside = sandbox({ 'b.gate': untidy });
    const box = sandbox({ 'real/a.gate': untidy });
    symlinkSync('real/a.gate', box.path('link.gate'));
    symlinkSync(outside.path('b.gate'), box.path('out.gate'));
    const { status, stderr } = box.run('format', 'link.gate', 'out.gate');
    expect(status).toBe(2);
    expect(stderr).toContain('pintle: out.gate: it leads out of the root through a link');
    expect(textOf(box, 'real/a.gate')).toBe(tidy);
    expect(lstatSync(box.path('link.gate')).isSymbolicLink()).toBe(true);
    expect(textOf(outside, 'b.gate')).toBe(untidy);
  });

  test('what may not be written stays as it is, and no half-written file is left', () => {
    const box = sandbox({ 'a.gate': untidy, 'sub/b.gate': untidy });
    chmodSync(box.folder, 0o755);
    chmodSync(box.path('a.gate'), 0o444);
    chmodSync(box.path('sub'), 0o555);
    const isAdministrator = process.getuid?.() === 0;
    const { status, stderr } = run(['format', '.'], isAdministrator ? { cwd: box.folder, uid: 65534 } : { cwd: box.folder });
    expect(status).toBe(2);
    expect(stderr).toContain('pintle: a.gate: not formatted, it may not be written (permission denied)\n');
    expect(stderr).toContain('pintle: sub/b.gate: not formatted, it may not be written (permission denied)\n');
    chmodSync(box.path('sub'), 0o755);
    expect(textOf(box, 'a.gate')).toBe(untidy);
    expect(readdirSync(box.path('sub'))).toEqual(['b.gate']);
  });
});

describe('check --fix', () => {
  test('applies safe fixes, says what it changed, and reports what is left', () => {
    const box = sandbox({ 'a.gate': twice() + noUnit.replace('language 1\n', '') });
    const { status, stdout, stderr } = box.run('check', 'a.gate', '--fix', ...asOf);
    expect(stderr).toBe('fixed a.gate: Remove this line (use-repeated)\n');
    expect(stdout).toContain('unit-missing');
    expect(stdout).not.toContain('use-repeated');
    expect(status).toBe(1);
    // The fix of the missing unit would state a value, so it is left to a person.
    expect(textOf(box, 'a.gate')).toBe('language 1\nuse ".parts/plain.gate"\n' + noUnit.replace('language 1\n', ''));
  });

  test('goes on until nothing is left to fix', () => {
    const box = sandbox({ 'a.gate': twice().replace('language 1\n', '') + 'use ".parts/plain.gate"\nuse ".parts/plain.gate"\n' });
    expect(box.run('check', 'a.gate', '--fix', ...asOf).status).toBe(0);
    expect(textOf(box, 'a.gate')).toBe('language 1\nuse ".parts/plain.gate"\n');
    expect(box.run('check', 'a.gate', '--fix', ...asOf)).toEqual({ status: 0, stdout: `1 file, no findings\n${caution}\n`, stderr: '' });
  });

  test('keeps line ends, byte order mark and mode; leaves no temporary file', () => {
    const box = sandbox({ 'a.gate': '\ufeff' + twice().replace('language 1\n', '').replaceAll('\n', '\r\n') });
    chmodSync(box.path('a.gate'), 0o600);
    box.run('check', 'a.gate', '--fix', ...asOf);
    expect(textOf(box, 'a.gate')).toBe('\ufefflanguage 1\r\nuse ".parts/plain.gate"\r\n');
    expect(statSync(box.path('a.gate')).mode & 0o777).toBe(0o600);
    expect(readdirSync(box.folder).sort()).toEqual(['.git', '.parts', 'a.gate']);
  });

  test('without --fix nothing is written', () => {
    const box = sandbox({ 'a.gate': twice() });
    box.run('check', 'a.gate', ...asOf);
    expect(textOf(box, 'a.gate')).toBe(twice());
  });

  test('a file that is not wholly text is left alone', () => {
    const bytes = Buffer.concat([Buffer.from(twice() + '# caf'), Buffer.from([0xe9])]);
    const box = sandbox({ 'a.gate': bytes });
    box.run('check', 'a.gate', '--fix', ...asOf);
    expect(readFileSync(box.path('a.gate')).equals(bytes)).toBe(true);
  });
});

describe('check --baseline', () => {
  const two = noUnit + noUnit.replace('language 1\n', '').replace('plain', 'other');

  test('is written when it is not there; that run reports everything', () => {
    const box = sandbox({ 'b.gate': two, 'a/c.gate': noUnit, 'd.gate': sound });
    const first = box.run('check', '.', '--baseline', 'base.json', ...asOf);
    expect(first.status).toBe(1);
    expect(first.stdout).toContain('3 files, 3 errors\n');
    expect(first.stderr).toBe(
      'There was no baseline, so base.json was written from this run (3 errors). Runs with it from now on report what is new.\n',
    );
    expect(JSON.parse(textOf(box, 'base.json'))).toEqual({
      version: 1,
      files: { 'a/c.gate': { 'unit-missing': 1 }, 'b.gate': { 'unit-missing': 2 } },
    });
    expect(box.run('check', '.', '--baseline', 'base.json', ...asOf)).toEqual({
      status: 0,
      stdout: `3 files, no findings; 3 errors known from the baseline and not shown\n${caution}\n`,
      stderr: '',
    });
  });

  test('what is new is reported; old findings of one rule do not hide those of another', () => {
    const box = sandbox({ 'b.gate': noUnit });
    box.run('check', '.', '--baseline', 'base.json', ...asOf);
    box.write('b.gate', two + 'nonsense 1\n');
    const { status, stdout } = box.run('check', '.', '--baseline', 'base.json', ...asOf);
    expect(status).toBe(1);
    expect(stdout).toContain('b.gate:8:8 error unit-missing');
    expect(stdout).toContain('b.gate:12:1 error word-unknown');
    expect(stdout).toContain('1 file, 2 errors; 1 error known from the baseline and not shown\n');
  });

  test('only shrinks, and only when asked', () => {
    const box = sandbox({ 'a.gate': two, 'b.gate': noUnit, 'gone.gate': noUnit });
    box.run('check', '.', '--baseline', 'base.json', ...asOf);
    const before = textOf(box, 'base.json');
    box.write('a.gate', noUnit);
    box.write('b.gate', two);
    box.write('gone.gate', sound);
    const plain = box.run('check', '.', '--baseline', 'base.json', ...asOf);
    expect(plain.stderr).toBe('The baseline base.json allows 2 findings more than there are; --update-baseline lowers it.\n');
    expect(textOf(box, 'base.json')).toBe(before);
    const updated = box.run('check', '.', '--baseline', 'base.json', '--update-baseline', ...asOf);
    expect(updated).toMatchObject({ status: 1, stderr: 'The baseline base.json was lowered by 2 findings.\n' });
    expect(JSON.parse(textOf(box, 'base.json'))).toEqual({
      version: 1,
      files: { 'a.gate': { 'unit-missing': 1 }, 'b.gate': { 'unit-missing': 1 } },
    });
  });

  test('files that were not looked at keep their counts', () => {
    const box = sandbox({ 'a.gate': noUnit, 'b.gate': noUnit });
    box.run('check', '.', '--baseline', 'base.json', ...asOf);
    box.write('a.gate', sound);
    box.run('check', 'a.gate', '--baseline', 'base.json', '--update-baseline', ...asOf);
    expect(JSON.parse(textOf(box, 'base.json'))).toEqual({ version: 1, files: { 'b.gate': { 'unit-missing': 1 } } });
  });

  test('machine outputs leave out what it holds back, and standard error says how much that is', () => {
    const box = sandbox({ 'a.gate': noUnit });
    box.run('check', '.', '--baseline', 'base.json', ...asOf);
    const { status, stdout, stderr } = box.run('check', '.', '--baseline', 'base.json', '--output', 'json', ...asOf);
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as { counts: unknown }).counts).toEqual({ error: 0, warning: 0, note: 0, notJudged: 0 });
    expect(stderr).toBe('1 error known from the baseline and not shown.\n');
  });

  test.each([
    ['no JSON', '{', 'is not JSON'],
    ['another shape', '{"version":1,"files":{"a.gate":{"unit-missing":-1}}}', 'is not a baseline'],
    ['a list', '[]', 'is not a baseline'],
    ['another version', '{"version":2,"files":{}}', 'is not a baseline'],
  ])('a file that is %s is refused', (_, content, message) => {
    const { status, stdout, stderr } = sandbox({ 'a.gate': noUnit, 'base.json': content }).run(
      'check',
      '.',
      '--baseline',
      'base.json',
      ...asOf,
    );
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(message);
  });

  test('is never begun from a part of the files', () => {
    const { run } = sandbox({ 'a.gate': noUnit });
    expect(run('check', '.', '--baseline', 'base.json', '--shard', '1/2')).toMatchObject({ status: 2 });
    expect(run('check', '.', '--baseline', 'base.json', '--update-baseline')).toMatchObject({ status: 2 });
  });
});

describe('what is written', () => {
  const strangers = (box: Sandbox): string[] => readdirSync(box.folder).filter((name) => name.startsWith('.pintle-'));

  test('stays as it is where somebody else has changed it meanwhile', () => {
    const box = sandbox({ 'a.gate': tidy });
    const path = box.path('a.gate');
    expect(writeWhole(path, Buffer.from('mine'), Buffer.from(untidy))).toMatch(/changed by somebody else/);
    expect(textOf(box, 'a.gate')).toBe(tidy);
    // Of the same length, and written in the same moment.
    expect(writeWhole(path, Buffer.from('mine'), Buffer.from(tidy.replace('5', '6')))).toMatch(/changed by somebody else/);
    expect(writeWhole(path, Buffer.from('mine'), undefined)).toMatch(/changed by somebody else/);
    linkSync(path, box.path('b.gate'));
    expect(writeWhole(path, Buffer.from('mine'), Buffer.from(untidy))).toMatch(/changed by somebody else/);
    expect(textOf(box, 'a.gate')).toBe(tidy);
    expect(writeWhole(box.path('gone.gate'), Buffer.from('mine'), Buffer.from(tidy))).toBe('there is no such file or folder');
    expect(strangers(box)).toEqual([]);
  });

  test('keeps its other names, be it made longer or shorter', () => {
    const box = sandbox({ 'a.gate': untidy, 'fix.gate': 'use ".parts/plain.gate"\n', 'base.json': '{"version":1,"files":{}}' });
    for (const name of ['a.gate', 'fix.gate', 'base.json']) linkSync(box.path(name), box.path(`other-${name}.txt`));
    chmodSync(box.path('a.gate'), 0o640);
    expect(box.run('format', 'a.gate').status).toBe(0);
    expect(box.run('check', 'fix.gate', '--fix', ...asOf).status).toBe(0);
    expect(textOf(box, 'other-a.gate.txt')).toBe(tidy);
    expect(textOf(box, 'other-fix.gate.txt')).toBe('language 1\nuse ".parts/plain.gate"\n');
    expect(statSync(box.path('a.gate'))).toMatchObject({ nlink: 2, ino: statSync(box.path('other-a.gate.txt')).ino });
    expect(statSync(box.path('a.gate')).mode & 0o777).toBe(0o640);
    expect(strangers(box)).toEqual([]);
  });

  test('a baseline that is a link stays one, also where it leads to nothing yet', () => {
    const box = sandbox({ 'a.gate': noUnit, 'kept/readme.txt': '' });
    symlinkSync('kept/base.json', box.path('base.json'));
    for (const more of [[], ['--update-baseline']]) {
      box.run('check', 'a.gate', '--baseline', 'base.json', ...more, ...asOf);
      expect(lstatSync(box.path('base.json')).isSymbolicLink()).toBe(true);
      expect(JSON.parse(textOf(box, 'kept/base.json'))).toEqual({
        version: 1,
        files: more.length === 0 ? { 'a.gate': { 'unit-missing': 1 } } : {},
      });
      box.write('a.gate', sound);
    }
    expect(readdirSync(box.path('kept')).sort()).toEqual(['base.json', 'readme.txt']);
  });

  const ended = (): number => spawnSync(process.execPath, ['-e', '']).pid;
  const asOfProcess = (path: string, id: number): string => path.replace(`-${process.pid}-`, `-${id}-`);
  const hoursAgo = (path: string, hours: number): void => {
    const then = Date.now() / 1000 - hours * 3600;
    utimesSync(path, then, then);
  };

  test.each([
    ['format', ['format', '.']],
    ['check --fix', ['check', '.', '--fix']],
    ['check --baseline', ['check', 'a.gate', '--baseline', 'sub/base.json']],
  ])('%s clears away what stopped runs have left, and nothing else', (_, args) => {
    const box = sandbox({ 'a.gate': tidy, 'sub/b.gate': tidy });
    const left = asOfProcess(besideOf(box.path('sub/b.gate'), 'tmp'), ended());
    const alive = besideOf(box.path('sub/b.gate'), 'tmp');
    const old = besideOf(box.path('sub/b.gate'), 'tmp');
    const elsewhere = asOfProcess(besideOf(box.path('sub/b.gate'), 'tmp'), 1).replace(/\.pintle-[0-9a-f]{8}/, '.pintle-00000000');
    const alike = `${dirname(left)}/.pintle-notes.tmp`;
    for (const path of [left, alive, old, elsewhere, alike]) writeFileSync(path, untidy);
    hoursAgo(old, 2);
    hoursAgo(alike, 2);
    expect(box.run(...args, ...(args[0] === 'check' ? asOf : [])).status).toBe(0);
    expect([left, alive, old, elsewhere, alike].map((path) => existsSync(path))).toEqual([false, true, false, true, true]);
    expect(box.run('check', '.', ...asOf).stderr).toBe('');
  });

  test('what may be the only whole copy of a file is told and kept', () => {
    const box = sandbox({ 'a.gate': tidy.slice(0, 20), 'b.gate': tidy });
    box.write('c.gate', untidy);
    const [half, done, begun] = ['a.gate', 'b.gate', 'c.gate'].map((name) => {
      const path = asOfProcess(besideOf(box.path(name), 'new', Buffer.from(untidy)), ended());
      writeFileSync(path, tidy);
      return path;
    }) as [string, string, string];
    const { stderr } = box.run('format', '.');
    expect(stderr).toMatch(
      /^pintle: \.pintle-[\w-]+\.new: a run was stopped while it wrote a file of this folder; this is what the file was to be$/m,
    );
    expect([half, done, begun].map((path) => existsSync(path))).toEqual([true, false, false]);
  });

  test.runIf(process.platform === 'linux')('a name that is no UTF-8 is told as such', () => {
    const box = sandbox({ 'a.gate': tidy });
    const bytes = Buffer.concat([Buffer.from(`${box.folder}/caf`), Buffer.from([0xe9]), Buffer.from('.gate')]);
    writeFileSync(bytes, tidy);
    const why = 'its name is not UTF-8, so nothing can be read under it; give it another name';
    for (const verb of ['check', 'format']) {
      const ran = box.run(verb, '.');
      expect(ran.status).toBe(2);
      expect(ran.stderr).toContain(`pintle: caf\ufffd.gate: ${why}\n`);
    }
    const { status, stderr } = spawnSync('/bin/sh', ['-c', `"${process.execPath}" "${command}" check "$(printf 'caf\\351.gate')"`], {
      cwd: box.folder,
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stderr).toMatch(/if its name is not UTF-8, give it another/);
  });

  test('a long name that fills all the room there is', () => {
    const name = `${'ü'.repeat(125)}.gate`;
    const box = sandbox({ [name]: untidy });
    expect(box.run('format', '.').status).toBe(0);
    expect(textOf(box, name)).toBe(tidy);
  });
});
