// `npm run bench`: how fast Pintle is against what a user would take instead. Absolute times are this machine's;
// the ratios carry over. It judges nothing and fails only when something could not be run.
//
//   node tests/bench/run.mjs [--quick] [--json] [--only checks,keystrokes,cold,whole,folder,growth] [--profile]
//   node tests/bench/run.mjs --only growth [--growing WORD,…]   texts whose names hold one of the words, and no others
//   node tests/bench/run.mjs --against FOLDER   the engine of another tree beside this one's, and nothing else
import { mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { beside } from './beside.mjs';
import { compare, verify } from './checks.mjs';
import { serverMissing } from './client.mjs';
import { commandMissing, measureColdStart, measureWholeRun } from './cold.mjs';
import { loadEngine } from './engine.mjs';
import { writeFleet } from './fleet.mjs';
import { measureFolder } from './folder.mjs';
import { measureGrowth, steep } from './growth.mjs';
import { measureKeystrokes } from './keystrokes.mjs';
import { tableText } from './measure.mjs';
import { profileOf, profileText } from './profile.mjs';

const { values: options } = parseArgs({
  options: {
    quick: { type: 'boolean' },
    json: { type: 'boolean' },
    profile: { type: 'boolean' },
    only: { type: 'string' },
    growing: { type: 'string' },
    against: { type: 'string' },
  },
});
const parts =
  options.against !== undefined
    ? ['beside']
    : options.profile
      ? ['profile']
      : (options.only ?? 'checks,keystrokes,cold,whole,folder,growth').split(',');
const quick = options.quick === true;
const out = {
  machine: {
    node: process.version,
    cores: availableParallelism(),
    processor: cpus()[0]?.model ?? 'unknown',
    platform: `${process.platform} ${process.arch}`,
    loadBefore: loadavg()[0],
  },
  quick,
  notRun: [],
};
const say = (text) => options.json || console.log(text);
const number = (value) => (value < 10 ? value.toFixed(2) : value < 100 ? value.toFixed(1) : value.toFixed(0));

async function attempt(what, missing, run) {
  const why = missing?.();
  if (why !== undefined) {
    out.notRun.push({ what, why });
    say(`NOT RUN: ${what}: ${why}\n`);
    return;
  }
  try {
    await run();
  } catch (error) {
    out.notRun.push({ what, why: String(error?.message ?? error) });
    say(`NOT RUN: ${what}: ${error?.stack ?? error}\n`);
  }
}

const folder = realpathSync(mkdtempSync(join(tmpdir(), 'pintle-bench-')));
try {
  const { node, cores, processor, platform } = out.machine;
  say(`node ${node}, ${cores} cores, ${processor}, ${platform}${quick ? '; a short run' : ''}\n`);
  if (out.machine.loadBefore > cores / 2)
    say(`The machine is busy with other work (load ${out.machine.loadBefore.toFixed(1)}): expect even the ratios to wander.\n`);
  const engine = await loadEngine(folder, options.profile === true);
  out.machine.rules = engine.allRules.length;
  out.machine.figures = engine.allFigures.length;
  const sizes = quick ? [1000] : [1000, 10000];
  const fleets = new Map();
  const fleetOf = (count) => {
    if (!fleets.has(count)) fleets.set(count, writeFleet(join(folder, String(count)), count, engine.table));
    return fleets.get(count);
  };

  if (options.against !== undefined)
    await attempt('beside another tree', undefined, async () => {
      const found = await beside(engine, options.against, fleetOf(quick ? 1000 : 10000), quick ? 5 : 7, folder);
      out.beside = found;
      say(
        `Whole check of ${found.files} files, processor time: ${number(found.old)} µs a file there, ${number(found.new)} µs here; here ÷ there ${found.ratio.toFixed(3)} (median of ${found.pairs} pairs).`,
      );
    });

  if (parts.includes('profile'))
    await attempt('profile', undefined, async () => {
      const profile = await profileOf(engine, fleetOf(1000), quick ? 10 : 40);
      out.profile = profile;
      say(profileText(profile));
    });

  if (parts.includes('checks'))
    await attempt('whole check', undefined, () => {
      const fleet = fleetOf(1000);
      const seen = verify(engine, fleet);
      const mean = { gate: fleet.bytes.gate / 1000, yaml: fleet.bytes.yaml / 1000 };
      const tokens = meanTokens(engine, fleet);
      out.fleet = { meanBytes: mean, meanTokens: tokens, ...seen };
      say(
        `Sites: ${mean.gate.toFixed(0)} bytes and ${tokens.all.toFixed(0)} tokens (${tokens.lineEnds.toFixed(0)} of them line ends) as .gate, ${mean.yaml.toFixed(0)} bytes as YAML, on average.`,
      );
      say(
        `Of 1000, ${seen.slips} have a slip put in: Pintle says something of ${seen.seenByUs}, the schema of ${seen.seenBySchema}. ${seen.soundWithFindings} of the others have findings of rules.`,
      );
      say(
        `${engine.allRules.length} rules and ${engine.allFigures.length} kinds of figures are at work. One thread each, in turns, medians.\n`,
      );
      out.checks = [];
      for (const count of sizes) {
        const rounds = quick ? 5 : count > 1000 ? 5 : 15;
        const rows = compare(engine, fleetOf(count), rounds, 5);
        out.checks.push({ files: count, rounds, rows });
        const perByte = (row) => (row.ratio * mean.yaml) / (row.key.startsWith('ours') ? mean.gate : mean.yaml);
        say(
          tableText([
            [`${count} files from disk, ${rounds} rounds`, 'µs a file', '÷ js-yaml + ajv', 'same, per byte'],
            ...rows.map((row) => [row.title, number(row.microseconds), row.ratio.toFixed(2), perByte(row).toFixed(2)]),
          ]) + '\n',
        );
      }
    });

  if (parts.includes('keystrokes'))
    await attempt('keystroke to diagnostics', serverMissing, async () => {
      out.keystrokes = await measureKeystrokes(fleetOf(1000).folder, engine.table, quick);
      say(
        tableText([
          [`Keystroke to diagnostics, ${out.keystrokes.way}`, 'keystrokes', 'p50 ms', 'p95 ms'],
          ...out.keystrokes.results.map((row) => [`${row.lines} lines`, row.keystrokes, number(row.p50), number(row.p95)]),
        ]) + '\n',
      );
    });

  if (parts.includes('folder'))
    await attempt('work in a folder', serverMissing, async () => {
      const work = await measureFolder(fleetOf(500), engine.table, quick);
      out.folder = work;
      say(
        tableText([
          [`A file of ${work.lines} lines in a folder of ${work.files}`, 'times', 'p50 ms', 'p95 ms', 'aim ms'],
          ...work.results.map((row) => [row.title, row.count, number(row.p50), number(row.p95), row.aim === undefined ? '' : `${row.aim}`]),
        ]),
      );
      const { memory, delay } = work;
      if (memory !== undefined)
        say(
          `Heap of the server ${(memory.heapUsed / 1e6).toFixed(0)} MB (aim 150), process ${(memory.rss / 1e6).toFixed(0)} MB; its loop stood still for ${delay.longest.toFixed(1)} ms at the longest, p99 ${delay.p99.toFixed(1)} ms.`,
        );
      say(`Stretches over 10 ms that the server told of itself: ${work.stretches}.\n`);
    });

  if (parts.includes('growth'))
    await attempt('growth with the file', serverMissing, async () => {
      const growth = await measureGrowth(fleetOf(500).folder, engine.table, {
        largest: quick ? 4000 : 20_000,
        rounds: quick ? 1 : 2,
        only: options.growing?.split(','),
      });
      out.growth = growth;
      const found = steep(growth);
      const shown = (row) => [
        `${row.kind}: ${row.request}`,
        row.late === undefined ? row.exponent.toFixed(2) : 'too late',
        ...growth.sizes.map((_, i) => (row.times[i] === undefined ? '' : number(row.times[i]))),
        row.stretch === 0 ? '' : `${row.stretch}`,
      ];
      say(`Growth: ${growth.kinds} kinds of texts of ${growth.sizes.join(', ')} lines, ${growth.rows.length} rows of times.`);
      say(
        found.length === 0
          ? `Nothing that takes ${growth.least} ms or more grows faster than the file to the power of 1.25.\n`
          : tableText([
              ['Steeper than 1.25', 'exponent', ...growth.sizes.map((size) => `${size}, ms`), 'without a rest'],
              ...found.map(shown),
            ]) + '\n',
      );
      const deaf = growth.rows.filter(({ stretch }) => stretch > 0).sort((a, b) => b.stretch - a.stretch);
      if (deaf.length > 0)
        say(
          tableText([
            [`Longest stretches without a rest, of ${deaf.length}`, 'ms'],
            ...deaf.slice(0, 12).map((row) => [`${row.kind}: ${row.request}`, `${row.stretch}`]),
          ]) + '\n',
        );
    });

  if (parts.includes('cold'))
    await attempt('cold start', commandMissing, () => {
      const fleet = fleetOf(1000);
      const file = fleet.gate[fleet.sites.findIndex((site) => site.slip === undefined)];
      out.cold = measureColdStart(file, fleet.folder, quick ? 15 : 25);
      say(
        tableText([
          [`Cold start, ${out.cold.rounds} rounds`, 'ms', '÷ bare node'],
          ['node -e 0', number(out.cold.bare), '1.00'],
          ['pintle check FILE', number(out.cold.check), out.cold.ratio.toFixed(2)],
        ]) + '\n',
      );
    });

  if (parts.includes('whole'))
    await attempt('whole run', commandMissing, async () => {
      out.whole = [];
      for (const count of sizes) out.whole.push(await measureWholeRun(fleetOf(count), engine.table, folder, quick ? 3 : 7));
      say(
        tableText([
          ['Whole process over a folder', 'ms', 'js-yaml + ajv ms', 'ratio'],
          ...out.whole.map((row) => [
            `${row.files} files, ${row.rounds} rounds`,
            number(row.pintle),
            number(row.yaml),
            row.ratio.toFixed(2),
          ]),
        ]) + '\n',
      );
    });
} catch (error) {
  out.notRun.push({ what: 'all of it', why: String(error?.message ?? error) });
  say(`NOT RUN: ${error?.stack ?? error}`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
if (options.json) console.log(JSON.stringify(out, undefined, 2));
process.exitCode = out.notRun.length > 0 ? 1 : 0;

function meanTokens(engine, fleet) {
  let all = 0;
  let lineEnds = 0;
  for (const path of fleet.gate) {
    const { tokens } = engine.scan(readFileSync(path, 'utf8'));
    all += tokens.length;
    for (const token of tokens) if (token.image === '\n') lineEnds++;
  }
  return { all: all / fleet.gate.length, lineEnds: lineEnds / fleet.gate.length };
}
