// How the command is called, and what it says when it is called wrongly.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { noUnit, root, run, sandbox, sound, twice } from './kit.ts';

describe('wrong use gives one line, exit code 2, and nothing on standard output', () => {
  test.each([
    [['chekc', '.'], 'There is no command “chekc”. Did you mean “check”?'],
    [['chck'], 'Did you mean “check”?'],
    [['xyzzy'], 'There is no command “xyzzy”. “pintle help” lists them.'],
    [['--chek'], 'There is no command “--chek”.'],
    [['check'], '“pintle check” needs a file or a folder'],
    [['check', 'a.gate', '--ouput', 'json'], '“pintle check” has no option “--ouput”. Did you mean “--output”?'],
    [['check', 'a.gate', '-o'], 'has no option “-o”'],
    [
      ['check', 'a.gate', '--output', 'jsn'],
      '“--output jsn” is not known. Did you mean “json”? It takes one of text, github, gitlab, json, junit, lines, sarif.',
    ],
    [['check', 'a.gate', '--output'], '“--output” needs a value'],
    [['check', 'a.gate', '--output', '--fix'], '“--output” needs a value'],
    [['check', 'a.gate', '--fix=yes'], '“--fix” takes no value'],
    [['check', 'a.gate', '--quiet', '--quiet'], '“--quiet” is given twice'],
    [['check', 'a.gate', '--as-of', 'tomorrow'], '“--as-of tomorrow” is not a date'],
    [['check', 'a.gate', '--as-of', '2026-02-29'], '“--as-of 2026-02-29” is not a date'],
    [['check', 'a.gate', '--fail-on', 'fatal'], '“--fail-on fatal” is not known'],
    [['check', 'a.gate', '--shard', '3/2'], '“--shard 3/2” is not a part of a whole'],
    [['check', 'a.gate', '--shard', '0/2'], '“--shard 0/2” is not a part of a whole'],
    [['check', 'a.gate', '--root', 'nowhere'], '“--root nowhere” is not a folder'],
    [['check', 'a.gate', '--update-baseline'], '“--update-baseline” needs the baseline'],
    [['check', 'empty'], 'There is no .gate file in “empty”'],
    [['format'], '“pintle format” needs a file or a folder'],
    [['format', '-', 'a.gate'], '“-” stands for standard input'],
    [['figures'], '“pintle figures” takes one file'],
    [['figures', 'a.gate', 'b.gate'], '“pintle figures” takes one file'],
    [['figures', 'c.gate'], '“c.gate” could not be read: there is no such file'],
    [['explain', 'seat-outside-practise'], 'There is no rule or figure “seat-outside-practise”. Did you mean “seat-outside-practice”?'],
    [['explain', '../../package'], 'There is no rule or figure “../../package”'],
    [['explain', 'a', 'b'], '“pintle explain” takes one rule or figure'],
    [['serve'], 'pintle serve --stdio'],
  ])('%j', (args, message) => {
    const { run } = sandbox({ 'a.gate': sound, 'b.gate': sound, 'empty/readme.md': 'no gate here' });
    const { status, stdout, stderr } = run(...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(message);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('exit codes of check', () => {
  const files = { 'a.gate': sound, 'warning.gate': twice(), 'error.gate': noUnit };
  test.each([
    [['a.gate'], 0],
    [['a.gate', '--fail-on', 'note'], 0],
    [['warning.gate'], 0],
    [['warning.gate', '--fail-on', 'error'], 0],
    [['warning.gate', '--fail-on', 'warning'], 1],
    [['warning.gate', '--fail-on=note'], 1],
    [['error.gate'], 1],
    [['.'], 1],
    [['.', '--quiet'], 1],
    [['a.gate', 'gone.gate'], 2],
    [['error.gate', 'gone.gate'], 2],
  ])('check %j gives %i', (args, status) => {
    expect(sandbox(files).run('check', ...args).status).toBe(status);
  });
});

test('what is not there is said, and the rest is still checked', () => {
  const { run } = sandbox({ 'error.gate': noUnit });
  const { status, stdout, stderr } = run('check', 'gone.gate', 'error.gate', 'gone/too');
  expect(status).toBe(2);
  expect(stderr).toBe('pintle: gone.gate: there is no such file or folder\npintle: gone/too: there is no such file or folder\n');
  expect(stdout).toContain('error.gate:3:8 error unit-missing');
  expect(stdout).toContain('1 file, 1 error; 2 could not be read\n');
});

test('help and version', () => {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  expect(run(['--version'])).toEqual({ status: 0, stdout: version + '\n', stderr: '' });
  const overview = run(['help']).stdout;
  expect(run(['--help']).stdout).toBe(overview);
  for (const verb of ['check', 'format', 'figures', 'explain', 'serve']) {
    expect(overview).toContain(`pintle ${verb}`);
    const page = run(['help', verb]);
    expect(page.status).toBe(0);
    expect(page.stdout).toMatch(new RegExp(`^pintle ${verb}`));
    expect(run([verb, '--help']).stdout).toBe(page.stdout);
  }
  expect(run([])).toMatchObject({ status: 2, stdout: '' });
  expect(run(['help', 'chekc'])).toMatchObject({ status: 2 });
});

test('options may stand before, between and behind paths, and “--” ends them', () => {
  const { run, write } = sandbox({ 'a.gate': twice() });
  write('--odd.gate', twice());
  const wanted = run('check', 'a.gate', '--output', 'github', '--fail-on', 'warning');
  expect(wanted.status).toBe(1);
  expect(run('check', '--output=github', 'a.gate', '--fail-on', 'warning')).toEqual(wanted);
  expect(run('check', '--', '--odd.gate').stdout).toContain('--odd.gate:3:5 warning');
});

test('nothing that a shell or a terminal sends is taken for the command’s own doing', () => {
  const { run } = sandbox({ 'a.gate': twice() });
  expect(run('check', 'a.gate').stdout).not.toContain('\u001b');
});
