// Input that nobody would write, and that arrives all the same. `run` itself looks for stack traces.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, symlinkSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { caution } from '../../server/engine/inside.ts';
import { asOf, command, noUnit, run, sandbox, sound } from './kit.ts';

const outputs = ['text', 'json', 'sarif', 'junit', 'github', 'gitlab', 'lines'];

describe('whatever stands in a file, there is a verdict and no stack trace', () => {
  const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
  const hostile: Readonly<Record<string, string | Uint8Array>> = {
    'empty.gate': '',
    'mark-only.gate': '\ufeff',
    'nul.gate': '\0'.repeat(1000),
    'nul-within.gate': 'language 1\nleaf a\0b {\n\0}\n',
    'braces.gate': '{'.repeat(100_000),
    'closing.gate': '}'.repeat(100_000),
    'colons.gate': ':'.repeat(10_000),
    'quotes.gate': '"'.repeat(100_001),
    'latin.gate': new Uint8Array([...utf8('language 1\nleaf caf'), 0xe9, ...utf8(' {\n}\n')]),
    'comment-latin.gate': new Uint8Array([...utf8('language 1\n# caf'), 0xe9, 0x0a]),
    'utf-16.gate': new Uint8Array([0xff, 0xfe, 0x6c, 0x00, 0x61, 0x00]),
    'utf-16-be.gate': new Uint8Array([0xfe, 0xff, 0x00, 0x6c]),
    'surrogate.gate': new Uint8Array([...utf8('language 1\n'), 0xed, 0xa0, 0x80, 0x0a]),
    'bytes.gate': Uint8Array.from({ length: 4096 }, (_, index) => (index * 151 + (index >> 3)) % 256),
    'one-line.gate': 'language 1 ' + 'a '.repeat(500_000),
    'returns.gate': '\r'.repeat(10_000),
    'proto.gate': 'language 1\nleaf __proto__ { constructor 1 m }\n__proto__ x { }\nuse "__proto__"\n',
    'long-word.gate': 'x'.repeat(1_000_000),
    'use-nul.gate': 'language 1\nuse "a\\\0b.gate"\nuse ""\nuse "/etc/passwd"\nuse "../../../../../../etc/passwd"\nuse "."\nuse ".."\n',
  };

  test.each(outputs)('as %s', (output) => {
    const { run } = sandbox(hostile);
    const { status, stdout } = run('check', '.', '--output', output, ...asOf);
    expect(status).toBe(1);
    if (!['text', 'junit', 'github', 'lines'].includes(output)) expect(() => JSON.parse(stdout) as unknown).not.toThrow();
    if (output === 'text') for (const name of Object.keys(hostile)) expect(stdout, name).toContain(`${name}:`);
    if (output === 'lines')
      for (const line of stdout.trimEnd().split('\n'))
        expect(line).toMatch(/^[^:]+:\d+:\d+-\d+:\d+: (error|warning|note): .+ \[[a-z-]+\]$/);
    expect(stdout.length).toBeLessThan(5_000_000);
  });

  test('and the other commands bear it too', () => {
    const { run } = sandbox(hostile);
    for (const name of Object.keys(hostile)) run('figures', name, '--output', 'json');
    run('format', '.', '--check');
    run('check', '.', '--fix', ...asOf);
    run('format', '.');
  });
});

test('a file in another encoding is a finding at the byte, even in a comment', () => {
  const { run } = sandbox({
    'a.gate': Buffer.concat([Buffer.from('\ufefflanguage 1\n# \ufffd ü caf'), Buffer.from([0xe9]), Buffer.from('\n')]),
  });
  expect(run('check', 'a.gate', ...asOf).stdout).toContain(
    'a.gate:2:10 error character-not-allowed\n  2 | # \ufffd ü caf\ufffd\n    |          ^\n  This file is not UTF-8 text: the byte 0xE9 does not belong here.',
  );
});

test('U+FFFD that really stands in a file is not taken for a wrong byte', () => {
  expect(sandbox({ 'a.gate': sound + '# \ufffd\n' }).run('check', 'a.gate', ...asOf).stdout).toBe(`1 file, no findings\n${caution}\n`);
});

test('a file of 50 MB is a finding, and the file beside it is checked', () => {
  const { run } = sandbox({ 'big.gate': Buffer.alloc(50_000_000, '{'), 'error.gate': noUnit });
  const { status, stdout } = run('check', '.', '--output', 'json', ...asOf);
  expect(status).toBe(1);
  const rules = (JSON.parse(stdout) as { files: { path: string; findings: { rule: string }[] }[] }).files.map((file) => [
    file.path,
    file.findings.map((finding) => finding.rule),
  ]);
  expect(rules).toEqual([
    ['big.gate', ['file-too-large']],
    ['error.gate', ['unit-missing']],
  ]);
});

test('a file of a little more than 4 million characters is a finding', () => {
  const { run } = sandbox({ 'a.gate': sound + '#'.repeat(4_000_000) });
  expect(run('check', 'a.gate', '--output', 'github', ...asOf).stdout).toMatch(/^::error .*title=file-too-large::/);
});

test('a folder that is called like a file is searched', () => {
  const { run } = sandbox({ 'odd.gate/a.gate': noUnit });
  expect(run('check', '.', '--output', 'github', ...asOf).stdout).toMatch(/file=odd\.gate\/a\.gate,/);
  expect(run('figures', 'odd.gate')).toMatchObject({ status: 2, stdout: '' });
});

test('links that lead nowhere or in a circle are told, and exit with 2', () => {
  const { run, path } = sandbox({ 'a.gate': sound });
  symlinkSync('gone', path('b.gate'));
  symlinkSync('c.gate', path('c.gate'));
  const { status, stdout, stderr } = run('check', '.', ...asOf);
  expect(status).toBe(2);
  expect(stdout).toContain('1 file, no findings; 2 could not be read');
  expect(stderr).toBe('pintle: b.gate: there is no such file or folder\npintle: c.gate: its links lead in a circle\n');
});

test('what may not be read is told, and exits with 2', () => {
  const { folder, write, path } = sandbox({ 'a.gate': sound });
  write('secret.gate', sound);
  mkdirSync(path('closed'));
  chmodSync(folder, 0o755);
  chmodSync(path('secret.gate'), 0o000);
  chmodSync(path('closed'), 0o000);
  // The administrator may read everything, so the command runs as nobody then.
  const isAdministrator = process.getuid?.() === 0;
  const { status, stderr } = run(['check', '.', ...asOf], isAdministrator ? { cwd: folder, uid: 65534 } : { cwd: folder });
  expect(stderr).toBe(
    'pintle: closed: it may not be read (permission denied)\npintle: secret.gate: it may not be read (permission denied)\n',
  );
  expect(status).toBe(2);
});

test('something that is neither a file nor a folder is told', () => {
  const { run } = sandbox();
  expect(run('check', '/dev/null')).toMatchObject({ status: 2, stderr: 'pintle: /dev/null: it is not a file\n' });
});

test('names of files cannot drive a terminal', () => {
  const { run } = sandbox({ 'a\u001b[31m\nb.gate': noUnit });
  for (const output of ['text', 'github', 'junit']) expect(run('check', '.', '--output', output, ...asOf).stdout).not.toContain('\u001b');
  expect(run('check', 'x\u001b[31m').stderr).not.toContain('\u001b');
  expect(run('\u001b[31m').stderr).not.toContain('\u001b');
});

test('a secret is not repeated in any output', () => {
  const { run } = sandbox({ 'a.gate': sound.replace('area 0.5 mm2', 'area 0.5 # keypad code 483957') });
  for (const output of outputs) {
    const { stdout } = run('check', '.', '--output', output, ...asOf);
    expect(stdout).toContain('secret-in-file');
    expect(stdout).not.toContain('483957');
  }
});

test('a reader that goes away is no mistake', () => {
  const { folder } = sandbox(Object.fromEntries(Array.from({ length: 200 }, (_, index) => [`${index}.gate`, noUnit])));
  const { stdout, stderr } = spawnSync('/bin/sh', ['-c', `"${process.execPath}" "${command}" check . | head -n 1`], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(stdout.split('\n')).toHaveLength(2);
});
