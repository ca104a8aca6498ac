// Whole processes: a cold start of a one-file check against a bare start of node, and a whole folder against js-yaml and
// ajv. The two take turns.
import { spawnSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { root } from './engine.mjs';
import { asOf } from './fleet.mjs';
import { median } from './measure.mjs';
import { schemaOf } from './sites.mjs';

/** Why it can't be run, or undefined. */
export function commandMissing() {
  return existsSync(join(root, 'dist', 'pintle.cjs')) ? undefined : 'dist/pintle.cjs is missing; build first';
}

/** Milliseconds that node takes for that, from start to end. */
function timeOf(args, folder) {
  const began = process.hrtime.bigint();
  const { status, error, stderr } = spawnSync(process.execPath, args, { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 1e9 });
  const milliseconds = Number(process.hrtime.bigint() - began) / 1e6;
  // 1 is “something was found”, which is as good a run as 0.
  if (error !== undefined || status === null || status > 1)
    throw new Error(`node ${args.join(' ')} ended with ${status}: ${error ?? stderr}`);
  return milliseconds;
}

export function measureColdStart(file, folder, rounds) {
  const time = (args) => timeOf(args, folder);
  const bareArgs = ['-e', '0'];
  const checkArgs = [join(root, 'dist', 'pintle.cjs'), 'check', file, '--as-of', asOf];
  const bare = [];
  const check = [];
  for (let round = -2; round < rounds; round++) {
    const bareFirst = round % 2 === 0;
    let a = bareFirst ? time(bareArgs) : 0;
    const b = time(checkArgs);
    if (!bareFirst) a = time(bareArgs);
    if (round < 0) continue;
    bare.push(a);
    check.push(b);
  }
  return { rounds, bare: median(bare), check: median(check), ratio: median(check.map((value, i) => value / bare[i])) };
}

const yamlEntry = `
import Ajv from 'ajv';
import { load } from 'js-yaml';
const [, , schema, folder] = process.argv;
const validate = new Ajv().compile(JSON.parse(readFileSync(schema, 'utf8')));
const wrong = [];
for (const name of readdirSync(folder, { recursive: true })) {
  if (!name.endsWith('.yaml')) continue;
  if (!validate(load(readFileSync(join(folder, name), 'utf8')))) wrong.push(name + ': ' + validate.errors.map((error) => error.instancePath + ' ' + error.message).join('; '));
}
console.log(wrong.join('\\n'));
process.exitCode = wrong.length > 0 ? 1 : 0;
`;

/** A whole run over a folder, start of the process and output included, against js-yaml and ajv bundled in the same way. */
export async function measureWholeRun(fleet, table, folder, rounds) {
  const script = join(folder, 'yaml.cjs');
  const schema = join(folder, 'schema.json');
  writeFileSync(schema, JSON.stringify(schemaOf(table)));
  await build({
    stdin: { contents: yamlEntry, resolveDir: root },
    outfile: script,
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    logLevel: 'error',
  });
  const pintle = [];
  const yaml = [];
  for (let round = 0; round < rounds; round++) {
    const runs = [
      () => pintle.push(timeOf([join(root, 'dist', 'pintle.cjs'), 'check', join(fleet.folder, 'fleet'), '--as-of', asOf], fleet.folder)),
      () => yaml.push(timeOf([script, schema, join(fleet.folder, 'yaml')], fleet.folder)),
    ];
    for (const run of round % 2 === 0 ? runs : runs.reverse()) run();
  }
  return {
    files: fleet.gate.length,
    rounds,
    pintle: median(pintle),
    yaml: median(yaml),
    ratio: median(pintle.map((time, round) => time / yaml[round])),
  };
}
