// What `check` says of what was judged and what was not: in a line and three questions, in full, for programs, and as an exit code.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { asOf, root, sandbox } from './kit.ts';

const corpus = join(root, 'tests', 'corpus');
const read = (path: string): string => readFileSync(join(corpus, path), 'utf8');
const libraries = Object.fromEntries(['drives', 'panels', 'sensors'].map((name) => [`library/${name}.gate`, read(`library/${name}.gate`)]));
const swing = read('base/swing.gate');
const lacking = swing.replace('  room-when-open 900 mm\n', '').replace('  ground-gap 150 mm\n', '');
const day = ['--as-of', '2026-11-30'];

describe('text', () => {
  test('says in one line that all was judged', () => {
    const { run } = sandbox({ ...libraries, 'sites/a.gate': swing });
    expect(run('check', 'sites', '--root', '.', ...day).stdout).toMatch(/^1 file, no findings\nJudged 12 of 12\.\n/);
  });

  test('asks what settles most, three questions at most, and says where', () => {
    const { run } = sandbox({ ...libraries, 'sites/a.gate': lacking });
    const { stdout, status } = run('check', 'sites', '--root', '.', ...day);
    expect(stdout).toContain('Judged 10 of 12. 2 facts would settle 2.\n');
    expect(stdout).toContain('  How much room is left behind “gate” when it is open? sites/a.gate:13, settles 1\n');
    expect(status).toBe(0);
  });

  test('asks a library once, with the number of sites', () => {
    const panels = (libraries['library/panels.gate'] ?? '').replaceAll(' acts automatic', '');
    const pair = read('base/pair.gate');
    const { run } = sandbox({
      ...libraries,
      'library/panels.gate': panels,
      'sites/a.gate': pair,
      'sites/b.gate': pair,
      'sites/c.gate': lacking,
    });
    const { stdout } = run('check', 'sites', '--root', '.', ...day);
    expect(stdout).toContain(' 3 facts would settle 4.\n');
    const [question] = stdout.split('\n').filter((line) => line.startsWith('  How is the gate commanded'));
    expect(question).toMatch(
      /^ {2}How is the gate commanded while “reply” of “rowan-pair” is at “closes-alone”\? library\/panels\.gate:\d+, settles 2 in 2 sites$/,
    );
  });

  test('--account tells everything, file by file', () => {
    const { run } = sandbox({ ...libraries, 'sites/a.gate': lacking });
    const { stdout } = run('check', 'sites', '--root', '.', '--account', ...day);
    expect(stdout).toContain('sites/a.gate judged 10 of 12\n');
    expect(stdout).toContain('  13: the closing edge of “gate”: covered\n');
    expect(stdout).toContain('  13: the gap under “gate”: not judged, lacks ground-gap\n');
  });

  test('--quiet says nothing of it', () => {
    const { run } = sandbox({ ...libraries, 'sites/a.gate': lacking });
    expect(run('check', 'sites', '--root', '.', '--quiet', ...day).stdout).not.toMatch(/^Judged/m);
  });

  test('a draft is told as one', () => {
    const draft = lacking.replace('  rules europe\n', '  stage draft\n  rules europe\n');
    const { run } = sandbox({
      ...libraries,
      'sites/a.gate': draft,
      'sites/b.gate': 'language 1\nsite "x" {\n  stage draft\n  rules europe\n  users limited\n}\n',
    });
    expect(run('check', 'sites/a.gate', '--root', '.', ...day).stdout).toContain(
      '\nDRAFT: 1 file in the stage of a draft. Judged 10 of 12.',
    );
    // Where there is nothing to judge yet, too.
    expect(run('check', 'sites/b.gate', ...day).stdout).toContain('\nDRAFT: 1 file in the stage of a draft.\n');
  });
});

describe('--fail-on not-judged', () => {
  test('is a switch of its own, beside the severities', () => {
    const { run } = sandbox({ ...libraries, 'sites/a.gate': swing, 'sites/b.gate': lacking });
    const code = (...rest: readonly string[]): number | null => run('check', ...rest, '--root', '.', ...day).status;
    expect(code('sites/a.gate', '--fail-on', 'not-judged')).toBe(0);
    expect(code('sites/b.gate', '--fail-on', 'not-judged')).toBe(1);
    expect(code('sites/b.gate', '--fail-on', 'error')).toBe(0);
    expect(code('sites/b.gate', '--fail-on', 'error', '--fail-on', 'not-judged')).toBe(1);
    expect(code('sites/b.gate', '--fail-on', 'warning')).toBe(1);
  });

  test('also refuses a draft', () => {
    const { run } = sandbox({ ...libraries, 'sites/a.gate': lacking.replace('  rules europe\n', '  stage draft\n  rules europe\n') });
    expect(run('check', 'sites/a.gate', '--root', '.', '--fail-on', 'not-judged', ...day).status).toBe(1);
    expect(run('check', 'sites/a.gate', '--root', '.', '--fail-on', 'warning', ...day).status).toBe(0);
  });

  test('two severities are wrong use', () => {
    const { run } = sandbox({ 'a.gate': 'language 1\n' });
    const { status, stderr } = run('check', 'a.gate', '--fail-on', 'error', '--fail-on', 'note', ...asOf);
    expect(status).toBe(2);
    expect(stderr).toContain('“--fail-on” takes one severity, and once “not-judged” beside it.');
  });
});

test('JSON has it as the contract says', () => {
  const { run } = sandbox({ ...libraries, 'sites/a.gate': lacking });
  const { files, counts } = JSON.parse(run('check', 'sites', '--root', '.', '--output', 'json', ...day).stdout);
  const range = { start: { line: 13, column: 1 }, end: { line: 13, column: 10 } };
  expect(files[0].judged).toEqual({
    judged: 10,
    of: 12,
    open: [
      { what: 'the room behind the open leaf “gate”', lacks: ['room-when-open'], range },
      { what: 'the gap under “gate”', lacks: ['ground-gap'], range },
    ],
    asks: [
      { fact: 'room-when-open', path: 'sites/a.gate', range, settles: 1 },
      { fact: 'ground-gap', path: 'sites/a.gate', range, settles: 1 },
    ],
  });
  expect(counts).toEqual({ error: 0, warning: 1, note: 0, notJudged: 2 });
});
