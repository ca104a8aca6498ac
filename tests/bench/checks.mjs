// The whole check against what a user would take instead, on the same files, one thread, in one process. The pipelines
// take turns on slices of the files, so that whatever else the machine does falls on all of them alike.
import assert from 'node:assert';
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import jsYaml from 'js-yaml';
import { LineCounter, parseDocument } from 'yaml';
import { asOf } from './fleet.mjs';
import { collect, median } from './measure.mjs';
import { plain, schemaOf } from './sites.mjs';

const slice = 500;

/**
 * The pipelines. Each makes a function that checks one file and gives the number of findings in it; a fresh one is made
 * for every round, so that nothing is carried from one round to the next but compiled code.
 */
export function pipelines(engine, fleet) {
  const root = fleet.folder.replaceAll('\\', '/');
  const read = (path) => ({ text: readFileSync(path, 'utf8') });
  // The schema is compiled once, before the clock: a user would have it compiled.
  const validate = new Ajv({ allErrors: false }).compile(schemaOf(engine.table));
  const sink = { value: 0 };
  return {
    sink,
    ours: {
      title: 'Pintle: the whole check (parse, names, every figure, every rule)',
      files: fleet.gate,
      start() {
        const workspace = new engine.Workspace({ root, read });
        return (path) => {
          const analysis = workspace.judge(path, readFileSync(path, 'utf8'), asOf);
          for (const figure of analysis.figures) sink.value += figure.value;
          return analysis.findings.length;
        };
      },
    },
    oursParse: {
      title: '  of that: read the file and parse it',
      files: fleet.gate,
      start: () => (path) => engine.parse(readFileSync(path, 'utf8')).problems.length,
    },
    oursRead: {
      title: '  of that: read, parse, and read the words by the vocabulary',
      files: fleet.gate,
      start: () => (path) => engine.readFile(engine.parse(readFileSync(path, 'utf8'))).problems.length,
    },
    jsYaml: {
      title: 'js-yaml 4 + compiled ajv 8',
      files: fleet.yaml,
      start: () => (path) => {
        const value = jsYaml.load(readFileSync(path, 'utf8'));
        return validate(value) ? 0 : validate.errors.length;
      },
    },
    yaml: {
      title: 'yaml 2 with source positions + compiled ajv 8',
      files: fleet.yaml,
      start: () => (path) => {
        const lineCounter = new LineCounter();
        const document = parseDocument(readFileSync(path, 'utf8'), { lineCounter });
        if (validate(document.toJS())) return document.errors.length;
        for (const error of validate.errors) {
          const node = document.getIn(
            error.instancePath
              .split('/')
              .slice(1)
              .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~')),
            true,
          );
          if (node?.range) sink.value += lineCounter.linePos(node.range[0]).line;
        }
        return validate.errors.length;
      },
    },
  };
}

/** Before anything is timed: both texts say the same, the sound sites are sound, and every slip is found. */
export function verify(engine, fleet) {
  const all = pipelines(engine, fleet);
  const ours = all.ours.start();
  const schema = all.jsYaml.start();
  const positions = all.yaml.start();
  const counts = { slips: 0, seenByUs: 0, seenBySchema: 0, soundWithFindings: 0, rules: {} };
  const workspace = new engine.Workspace({
    root: fleet.folder.replaceAll('\\', '/'),
    read: (path) => ({ text: readFileSync(path, 'utf8') }),
  });
  fleet.sites.forEach((site, index) => {
    const text = readFileSync(fleet.gate[index], 'utf8');
    assert.deepStrictEqual(
      jsYaml.load(readFileSync(fleet.yaml[index], 'utf8')),
      plain(site, engine.table),
      `${site.name}: the YAML does not say what the site says`,
    );
    const { installation, findings } = workspace.judge(fleet.gate[index], text, asOf);
    assert.strictEqual(installation.reading.tree.problems.length, 0, `${site.name}: its text has a wrong shape`);
    const found = ours(fleet.gate[index]);
    const refused = schema(fleet.yaml[index]);
    assert.strictEqual(refused > 0, positions(fleet.yaml[index]) > 0, `${site.name}: the two YAML readers do not agree`);
    if (site.slip === undefined) {
      assert.strictEqual(refused, 0, `${site.name}: the schema refuses a sound site`);
      assert.deepStrictEqual(installation.problems, [], `${site.name}: a sound site can't be read`);
      if (found > 0) counts.soundWithFindings++;
      for (const { rule } of findings) counts.rules[rule] = (counts.rules[rule] ?? 0) + 1;
    } else {
      counts.slips++;
      if (found > 0) counts.seenByUs++;
      if (refused > 0) counts.seenBySchema++;
    }
  });
  assert.ok(counts.seenBySchema > counts.slips / 3, 'the schema sees too few of the slips: it is not strict');
  return counts;
}

/** Median µs a file of each pipeline, and its ratio to js-yaml and ajv as the median of the rounds' own ratios. */
export function compare(engine, fleet, rounds, warmUp) {
  const all = pipelines(engine, fleet);
  const keys = ['ours', 'oursParse', 'oursRead', 'jsYaml', 'yaml'];
  const times = Object.fromEntries(keys.map((key) => [key, []]));
  const count = fleet.gate.length;
  for (let round = -warmUp; round < rounds; round++) {
    const spent = Object.fromEntries(keys.map((key) => [key, 0]));
    const running = Object.fromEntries(keys.map((key) => [key, all[key].start()]));
    const end = round < 0 ? Math.min(count, 2 * slice) : count;
    collect();
    for (let from = 0, turn = 0; from < end; from += slice, turn++)
      for (let i = 0; i < keys.length; i++) {
        const key = keys[(i + turn + round + warmUp) % keys.length];
        const { files } = all[key];
        const check = running[key];
        const to = Math.min(from + slice, count);
        const began = process.hrtime.bigint();
        for (let at = from; at < to; at++) all.sink.value += check(files[at]);
        spent[key] += Number(process.hrtime.bigint() - began);
      }
    if (round >= 0) for (const key of keys) times[key].push(spent[key] / 1000 / count);
  }
  return keys.map((key) => ({
    key,
    title: all[key].title,
    microseconds: median(times[key]),
    ratio: median(times[key].map((time, round) => time / times.jsYaml[round])),
  }));
}
