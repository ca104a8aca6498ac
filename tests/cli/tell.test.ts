// The commands that tell: figures and explain; and the ways in which the command is started.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { caution } from '../../server/engine/inside.ts';
import { baseSite } from '../kit/pages.ts';
import { asOf, command, expectCalm, noUnit, root, run, sandbox, sound } from './kit.ts';

const { shipped } = (await import('../workshop/shipped.mjs' as string)) as {
  readonly shipped: (page: string, baseOf: (name: string) => string) => string;
};
const isFigures = new Ajv2020({ strict: true, allErrors: true }).compile(
  JSON.parse(readFileSync(new URL('./figures.schema.json', import.meta.url), 'utf8')) as object,
);
const site = readdirSync(join(root, 'examples', 'sound'))
  .filter((name) => name.endsWith('.gate'))
  .sort()
  .map((name) => `examples/sound/${name}`)[0] as string;

interface Told {
  path: string;
  figures: {
    id: string;
    value: number;
    unit: string;
    inputs: { name: string; value: number; unit: string }[];
    source: string;
    formula: string;
  }[];
}

describe('figures', () => {
  test('as JSON have the shape of the contract, in the order of their ids, the same on every run', () => {
    const { status, stdout } = run(['figures', site, '--output', 'json', ...asOf], { cwd: root });
    expect(status).toBe(0);
    const told = JSON.parse(stdout) as Told;
    expect(isFigures(told), JSON.stringify(isFigures.errors)).toBe(true);
    expect(told.path).toBe(site);
    const ids = told.figures.map((figure) => figure.id);
    expect(ids.length).toBeGreaterThan(0);
    expect(ids).toEqual([...ids].sort());
    expect(new Set(ids).size).toBe(ids.length);
    expect(run(['figures', site, '--output', 'json'], { cwd: root }).stdout).toBe(stdout);
  });

  test('as text tell value, formula, inputs, source and line of every figure', () => {
    const told = JSON.parse(run(['figures', site, '--output', 'json'], { cwd: root }).stdout) as Told;
    const { stdout } = run(['figures', site], { cwd: root });
    const blocks = stdout.trimEnd().split('\n\n').slice(1);
    expect(blocks.pop(), 'the last line says what no figure can be').toBe(caution);
    expect(blocks).toHaveLength(told.figures.length);
    told.figures.forEach((figure, index) => {
      const block = blocks[index] as string;
      expect(block.startsWith(`${figure.id} = `)).toBe(true);
      expect(block).toContain(figure.formula);
      for (const { name } of figure.inputs) expect(block).toContain(`    ${name}`);
      expect(block).toContain(`Source: ${figure.source}`);
      expect(block).toMatch(/\n {2}Line \d+: \S/);
    });
  });

  test('a file without a site has none; errors are counted as check counts them', () => {
    const { run } = sandbox({ 'a.gate': sound, 'b.gate': noUnit });
    expect(run('figures', 'a.gate')).toEqual({ status: 0, stdout: 'a.gate: no figures; it describes no site.\n', stderr: '' });
    expect(JSON.parse(run('figures', 'a.gate', '--output', 'json').stdout)).toEqual({ version: 1, path: 'a.gate', figures: [] });
    // As many as “check” counts.
    expect(run('check', 'b.gate').stdout).toContain('1 file, 1 error\n');
    expect(run('figures', 'b.gate').stderr).toBe(
      'b.gate has 1 error; figures that hang on what could not be read are left out. “pintle check” tells it.\n',
    );
  });
});

describe('explain', () => {
  const pagesOf = (room: string): string[] =>
    readdirSync(join(root, 'server', room), { withFileTypes: true }).flatMap((entry) =>
      entry.isDirectory() && readdirSync(join(root, 'server', room, entry.name)).includes('page.md') ? [entry.name] : [],
    );

  const pageOf = (room: string, name: string): string => readFileSync(join(root, 'server', room, name, 'page.md'), 'utf8');
  const shippedOf = (room: string, name: string): string => readFileSync(join(root, 'dist', 'pages', room, `${name}.md`), 'utf8');

  test('every rule and figure that has a page', () => {
    // One process each would be slow; the pages beside the command are what it prints.
    for (const room of ['rules', 'figures'])
      for (const name of pagesOf(room)) expect(shippedOf(room, name)).toBe(shipped(pageOf(room, name), baseSite));
    for (const [room, name] of [
      ['rules', 'unit-missing'],
      ['rules', 'not-judged'],
      ['figures', pagesOf('figures')[0]],
    ] as const)
      if (name !== undefined) expect(run(['explain', name])).toEqual({ status: 0, stdout: shippedOf(room, name), stderr: '' });
  });

  test('a page is whole by itself: the base sites of its examples stand at its end', () => {
    const text = shippedOf('rules', 'not-judged');
    expect(text).toContain('[swing-leaf](#swing-leaf)');
    expect(text).toContain(`\n### swing-leaf\n\n\`\`\`gate\n${baseSite('swing-leaf')}\`\`\`\n`);
    for (const room of ['rules', 'figures'])
      for (const name of pagesOf(room)) {
        const page = shippedOf(room, name);
        expect(page, name).not.toContain('](../');
        for (const [, base] of page.matchAll(/^# from ([\w-]+)/gm)) if (base !== 'above') expect(page, name).toContain(`\n### ${base}\n`);
      }
  });

  test('a figure by its id, with a name in it or not', () => {
    const { figures } = JSON.parse(run(['figures', site, '--output', 'json'], { cwd: root }).stdout) as Told;
    const id = figures.find((figure) => figure.id.startsWith('leaf.'))?.id as string;
    const general = id.replace(/^leaf\.[^.]+/, 'leaf.NAME');
    const page = run(['explain', id]);
    expect(page.status).toBe(0);
    expect(page.stdout).toContain(general);
    expect(run(['explain', general])).toEqual(page);
  });

  test('alone it lists every rule with its severity and title, and every figure', () => {
    const { status, stdout } = run(['explain']);
    expect(status).toBe(0);
    const listed = [...stdout.matchAll(/^ {2}(?:error|warning|note) +([a-z0-9-]+) {2,}\S.*\.$/gm)].map((match) => match[1]);
    const rules = readFileSync(join(root, 'server', 'rules', 'all.ts'), 'utf8')
      .match(/'\.\/([a-z0-9-]+)\/rule\.ts'/g)
      ?.map((path) => path.slice(3, -9));
    expect(listed).toEqual(rules);
    expect(stdout).toMatch(/^ {2}leaf\.NAME\.\S+ {2,}\S/m);
  });
});

describe('starting', () => {
  test('npm run pintle takes paths from where it was called', () => {
    const { folder, path } = sandbox({ 'sub/a.gate': noUnit });
    const launch = join(root, 'server', 'cli', 'launch.mjs');
    const ran = spawnSync(process.execPath, [launch, 'check', 'a.gate', ...asOf], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, npm_lifecycle_event: 'pintle', INIT_CWD: path('sub') },
    });
    expectCalm(ran);
    expect(ran).toMatchObject({ status: 1, stderr: '' });
    expect(ran.stdout).toContain('a.gate:3:8 error unit-missing');
    const other = spawnSync(process.execPath, [launch, 'check', 'a.gate'], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, npm_lifecycle_event: 'test', INIT_CWD: path('sub') },
    });
    expect(other.status).toBe(2);
  });

  test('serve --stdio answers an editor', async () => {
    const framed = (message: object): string => {
      const body = JSON.stringify({ jsonrpc: '2.0', ...message });
      return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
    };
    // Its input stays open, as an editor's does: a server whose editor is gone ends at once.
    const server = spawn(process.execPath, [command, 'serve', '--stdio', `--clientProcessId=${process.pid}`]);
    let said = '';
    server.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
    server.stdin.write(
      framed({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } }) +
        framed({ id: 2, method: 'shutdown' }) +
        framed({ method: 'exit' }),
    );
    const [status] = (await once(server, 'close')) as [number | null];
    expect(status).toBe(0);
    expect(said).toMatch(/^Content-Length: \d+\r\n/);
    expect(said).toContain('"capabilities"');
  });

  test('a check loads nothing of the language server', () => {
    const { stdout } = spawnSync(
      process.execPath,
      [
        '-e',
        `process.argv.splice(1, 1, 'node', 'help'); require(${JSON.stringify(join(root, 'dist', 'pintle.cjs'))}); process.stderr.write(Object.keys(require.cache).join())`,
      ],
      { encoding: 'utf8' },
    );
    expect(stdout).toContain('pintle check');
    expect(readFileSync(join(root, 'dist', 'pintle.cjs'), 'utf8')).not.toMatch(/vscode-(languageserver|jsonrpc)|textDocument\/hover/);
  });
});
