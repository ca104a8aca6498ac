// Links, pipes, devices and hidden folders: nothing is read that leads out of the root, or that nobody named, and nothing hangs.
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readBytes } from '../../server/cli/files.ts';
import { asOf, command, noUnit, type Ran, run, type Sandbox, sandbox, sound } from './kit.ts';

const outputs = ['text', 'json', 'sarif', 'junit', 'github', 'gitlab', 'lines'];
const secret = 'BUILD_TOKEN_hunter2';
const told = 'it leads out of the root through a link, so it is not read; --root FOLDER names a wider root';
const isOnLinux = process.platform === 'linux';

/** Everything that a run said. */
const said = ({ stdout, stderr }: Ran): string => stdout + stderr;

/** A folder outside of everything, with a secret that is no site file but would be quoted as a line of one. */
function outside(): Sandbox {
  const box = sandbox({ 'env.gate': `language 1\n${secret} 1\n`, 'lib/l.gate': `language 1\n${secret} 1\n` });
  rmSync(box.path('.git'), { recursive: true });
  return box;
}

describe('a link that leads out of the root is told and not read', () => {
  const ways: readonly (readonly [string, (box: Sandbox) => Ran])[] = [
    ['found in a folder', (box) => box.run('check', '.', ...asOf)],
    ['with --root', (box) => box.run('check', '.', '--root', '.', ...asOf)],
    ['named outright', (box) => box.run('check', 'link.gate', ...asOf)],
    ['a folder named outright', (box) => box.run('check', 'folder', ...asOf)],
    ['with --fix', (box) => box.run('check', '.', '--fix', ...asOf)],
    ['with a new baseline', (box) => box.run('check', '.', '--baseline', 'base.json', ...asOf)],
    ['format', (box) => box.run('format', '.')],
    ['format of a link', (box) => box.run('format', 'link.gate')],
  ];
  test.each(ways)('%s', (_, way) => {
    const other = outside();
    const box = sandbox({ 'a.gate': sound });
    symlinkSync(other.path('env.gate'), box.path('link.gate'));
    symlinkSync(other.path('lib'), box.path('folder'));
    const ran = way(box);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(new RegExp(`^pintle: (link\\.gate|folder): ${told}$`, 'm'));
    expect(said(ran)).not.toContain(secret);
    expect(said(ran)).not.toContain(other.folder);
    expect(readFileSync(other.path('env.gate'), 'utf8')).toContain(secret);
  });

  test.runIf(isOnLinux).each(outputs)('the environment of the process is in no output (%s)', (output) => {
    const box = sandbox({ 'a.gate': sound });
    symlinkSync('/proc/self/environ', box.path('env.gate'));
    for (const more of [[], ['--root', '.'], ['--fix']]) {
      const ran = run(['check', '.', '--output', output, ...more, ...asOf], { cwd: box.folder, env: { BUILD_TOKEN: secret } });
      expect(ran.status).toBe(2);
      expect(said(ran)).not.toContain(secret);
    }
  });

  test.runIf(isOnLinux)('where nothing else says which folder is the root, the top of the disk is not', () => {
    const box = sandbox();
    rmSync(box.path('.git'), { recursive: true });
    symlinkSync('/proc/self/environ', box.path('env.gate'));
    for (const paths of [[box.folder], [box.path('env.gate')], [box.folder, '/proc/version']]) {
      const ran = run(['check', ...paths, ...asOf], { cwd: '/', env: { BUILD_TOKEN: secret } });
      expect(ran.status).toBe(2);
      expect(ran.stderr).toContain(told);
      expect(said(ran)).not.toContain(secret);
    }
  });

  test('but it is read where --root covers it, and a plain file outside of --root where it is named', () => {
    const other = outside();
    const box = sandbox({ 'in/a.gate': sound, 'b.gate': noUnit });
    symlinkSync('../b.gate', box.path('in/link.gate'));
    expect(box.run('check', 'in', '--root', 'in', ...asOf)).toMatchObject({ status: 2 });
    expect(box.run('check', 'in', ...asOf).stdout).toContain('in/link.gate:3:8 error unit-missing');
    expect(box.run('check', 'b.gate', '--root', 'in', ...asOf).stdout).toContain('b.gate:3:8 error unit-missing');
    expect(box.run('check', other.path('env.gate'), ...asOf).stdout).toContain(secret);
    expect(box.run('check', other.path('lib'), '--root', 'in', ...asOf).stdout).toContain(secret);
  });

  test('figures and the baseline keep to it too', () => {
    const other = sandbox({ 'base.json': '{"version":1,"files":{}}', 'a.gate': sound });
    const box = sandbox({ 'a.gate': noUnit });
    symlinkSync(other.path('a.gate'), box.path('link.gate'));
    symlinkSync(other.path('base.json'), box.path('base.json'));
    symlinkSync(other.path('new.json'), box.path('new.json'));
    expect(box.run('figures', 'link.gate')).toMatchObject({ status: 2, stdout: '' });
    for (const name of ['base.json', 'new.json']) {
      const ran = box.run('check', 'a.gate', '--baseline', name, '--update-baseline', ...asOf);
      expect(ran).toMatchObject({ status: 2, stdout: '' });
      expect(ran.stderr).toContain('it leads out of the root through a link');
    }
    expect(box.run('check', 'a.gate', '--baseline', 'new.json', ...asOf)).toMatchObject({ status: 2 });
    expect(existsSync(other.path('new.json'))).toBe(false);
    expect(lstatSync(box.path('new.json')).isSymbolicLink()).toBe(true);
  });
});

describe('what is hidden is read only where it is named', () => {
  const hidden = { '.git/config.gate': noUnit, '.store/x.gate': noUnit, 'node_modules/y.gate': noUnit, '.env': noUnit, 'a.gate': sound };
  const paths = (ran: Ran): string[] => (JSON.parse(ran.stdout) as { files: { path: string }[] }).files.map(({ path }) => path);

  test.each([
    ['.git/config.gate', '.git'],
    ['.store/x.gate', '.store'],
    ['node_modules/y.gate', 'node_modules'],
    ['.env', '.env'],
  ])('no link leads to %s', (target, part) => {
    const box = sandbox(hidden);
    symlinkSync(target, box.path('link.gate'));
    box.write('uses.gate', 'language 1\nuse "link.gate"\n');
    for (const args of [['.'], ['link.gate']]) {
      const ran = box.run('check', ...args, '--output', 'json', ...asOf);
      expect(ran.status).toBe(2);
      expect(ran.stderr).toBe(`pintle: link.gate: it leads through a link into “${part}”, which is read only where it is named\n`);
      expect(paths(ran)).not.toContain('link.gate');
    }
    expect(box.run('check', 'uses.gate', ...asOf).stdout).toContain('use-missing-file');
  });

  test('nor does a link to a folder', () => {
    const box = sandbox(hidden);
    symlinkSync('.store', box.path('sites'));
    const ran = box.run('check', '.', '--output', 'json', ...asOf);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toContain('pintle: sites: it leads through a link into “.store”');
    expect(paths(ran)).toEqual(['a.gate']);
  });

  test('a path that passes through it names it, and so does a “use” line', () => {
    const box = sandbox(hidden);
    symlinkSync('x.gate', box.path('.store/again.gate'));
    expect(paths(box.run('check', '.store', 'node_modules', '.env', '--output', 'json', ...asOf)).sort()).toEqual([
      '.env',
      '.store/again.gate',
      '.store/x.gate',
      'node_modules/y.gate',
    ]);
    box.write('uses.gate', 'language 1\nuse ".parts/plain.gate"\n');
    expect(box.run('check', 'uses.gate', ...asOf)).toMatchObject({ status: 0 });
  });
});

describe('what is no plain file, or has no end, keeps nobody waiting', () => {
  const pipe = (path: string): void => void expect(spawnSync('mkfifo', [path]).status).toBe(0);
  const limits = { timeout: 60_000, killSignal: 'SIGKILL' } as const;
  const quickly = (box: Sandbox, ...args: string[]): Ran => {
    const { status, stdout, stderr, signal } = spawnSync(process.execPath, [command, ...args], {
      cwd: box.folder,
      encoding: 'utf8',
      ...limits,
    });
    expect(signal, args.join(' ')).toBeNull();
    return { status, stdout, stderr };
  };

  test.runIf(process.platform !== 'win32')('a pipe: found, named, used, as baseline, linked to', () => {
    const box = sandbox({ 'a.gate': 'language 1\nuse "pipe.gate"\n' });
    pipe(box.path('pipe.gate'));
    symlinkSync('pipe.gate', box.path('link.gate'));
    for (const args of [
      ['check', '.'],
      ['check', '.', '--fix'],
      ['check', 'link.gate'],
      ['format', '.'],
      ['format', 'pipe.gate'],
    ]) {
      const ran = quickly(box, ...args);
      expect(ran.status).toBe(2);
      expect(ran.stderr).toContain('gate: it is not a file\n');
    }
    expect(quickly(box, 'figures', 'pipe.gate')).toMatchObject({ status: 2, stdout: '' });
    expect(quickly(box, 'check', 'a.gate', '--baseline', 'pipe.gate')).toMatchObject({
      status: 2,
      stdout: '',
      stderr: 'pintle: The baseline “pipe.gate” could not be read: it is not a file.\n',
    });
    expect(quickly(box, 'check', 'a.gate', ...asOf).stdout).toContain('use-missing-file');
  });

  test.runIf(isOnLinux)('devices', () => {
    const box = sandbox({ 'a.gate': sound });
    for (const device of ['/dev/zero', '/dev/tty', '/dev/full', '/dev/random']) {
      if (!existsSync(device)) continue;
      expect(quickly(box, 'check', device)).toMatchObject({ status: 2, stderr: `pintle: ${device}: it is not a file\n` });
      expect(quickly(box, 'check', 'a.gate', '--baseline', device).stderr).toContain('could not be read: it is not a file');
      expect(quickly(box, 'format', device).status).toBe(2);
    }
    const { signal, status, stderr } = spawnSync('/bin/sh', ['-c', `"${process.execPath}" "${command}" format - < /dev/zero`], {
      encoding: 'utf8',
      ...limits,
    });
    expect({ signal, status, stderr }).toEqual({
      signal: null,
      status: 2,
      stderr: 'pintle: standard input: not formatted, it is too large\n',
    });
  });

  test.runIf(isOnLinux)('files that say a size of 0: read to their end, or as far as files are read', () => {
    const box = sandbox({ 'a.gate': sound });
    expect(quickly(box, 'check', '/proc/version', ...asOf).stdout).toContain('/proc/version:1:1 error');
    expect(readBytes('/proc/version', 1000)).toEqual({ bytes: readFileSync('/proc/version') });
    expect(readBytes('/proc/version', 10)).toEqual({ beyond: 11, orMore: true });
  });

  test('a folder as baseline', () => {
    const box = sandbox({ 'a.gate': sound });
    mkdirSync(box.path('base'));
    expect(box.run('check', 'a.gate', '--baseline', 'base', ...asOf)).toMatchObject({
      status: 2,
      stderr: 'pintle: The baseline “base” could not be read: it is a folder.\n',
    });
  });
});
