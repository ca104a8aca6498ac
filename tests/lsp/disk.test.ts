// What the server reads from the disk: plain files of a root, through no link that leads out of it or to what is hidden.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { disk } from '../../server/lsp/disk.ts';

function folder(files: readonly string[]): string {
  const made = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-disk-')));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  for (const file of files) {
    mkdirSync(dirname(join(made, file)), { recursive: true });
    writeFileSync(join(made, file), 'language 1\n');
  }
  return made;
}

async function listed(root: string): Promise<string[]> {
  const found: string[] = [];
  for await (const paths of disk.list(root)) found.push(...paths);
  return found.map((path) => path.slice(root.length + 1)).sort();
}

test('a link out of the root is outside, and is not listed', async () => {
  const other = folder(['x.gate', 'deep/y.gate']);
  const root = folder(['a.gate', 'sub/b.gate']);
  symlinkSync(join(other, 'x.gate'), join(root, 'link.gate'));
  symlinkSync(join(other, 'deep'), join(root, 'linked'));
  symlinkSync('sub/b.gate', join(root, 'inner.gate'));
  expect(disk.read(join(root, 'link.gate'), root)).toBe('outside');
  expect(disk.read(join(root, 'linked/y.gate'), root)).toBe('outside');
  expect(disk.leaves(join(root, 'linked/y.gate'), root)).toBe(true);
  expect(disk.read(join(root, 'inner.gate'), root)).toEqual({ text: 'language 1\n' });
  expect(await listed(root)).toEqual(['a.gate', 'sub/b.gate']);
});

test('a root that becomes a link elsewhere does not stay what it was', () => {
  const other = folder(['a.gate']);
  const around = folder(['one/a.gate']);
  const root = join(around, 'root');
  symlinkSync('one', root);
  symlinkSync(join(other, 'a.gate'), join(around, 'one/out.gate'));
  expect(disk.read(join(root, 'out.gate'), root)).toBe('outside');
  rmSync(root);
  symlinkSync(other, root);
  expect(disk.read(join(root, 'a.gate'), root)).toEqual({ text: 'language 1\n' });
});

test('what is hidden is read where a path names it, and through no link', async () => {
  const root = folder(['.git/config', '.parts/p.gate', 'node_modules/n.gate', '.env', 'a.gate']);
  for (const [at, name] of ['.git/config', '.parts/p.gate', 'node_modules/n.gate', '.env'].entries()) {
    symlinkSync(name, join(root, `${at}.gate`));
    expect(disk.read(join(root, `${at}.gate`), root), name).toBe('unreadable');
  }
  expect(disk.read(join(root, '.parts/p.gate'), root)).toEqual({ text: 'language 1\n' });
  expect(await listed(root)).toEqual(['a.gate']);
});

test('what is not there is missing; what is no plain file is not readable', () => {
  const root = folder(['a.gate']);
  expect(disk.read(join(root, 'gone.gate'), root)).toBe('missing');
  expect(disk.read(join(root, 'a.gate/b.gate'), root)).toBe('missing');
  expect(disk.read(join(root, 'a\0.gate'), root)).toBe('unreadable');
  expect(disk.read(root, root)).toBe('unreadable');
  symlinkSync('round.gate', join(root, 'round.gate'));
  expect(disk.read(join(root, 'round.gate'), root)).toBe('unreadable');
});

test.runIf(process.platform === 'linux')('pipes, devices and files without an end keep nobody waiting', () => {
  const root = folder([]);
  expect(spawnSync('mkfifo', [join(root, 'pipe.gate')]).status).toBe(0);
  expect(disk.read(join(root, 'pipe.gate'), root)).toBe('unreadable');
  expect(disk.read('/dev/zero', '/dev')).toBe('unreadable');
  // It says that it has no bytes, and has some.
  expect(disk.read('/proc/version', '/proc')).toMatchObject({ text: expect.stringContaining('Linux') as string });
});
