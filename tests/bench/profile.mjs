// Where our whole check spends its time, function by function and line by line, by the processor's own samples.
import { readFileSync } from 'node:fs';
import { Session } from 'node:inspector';
import { pipelines } from './checks.mjs';
import { tableText } from './measure.mjs';

const post = (session, method, parameters) =>
  new Promise((done, failed) => session.post(method, parameters, (error, result) => (error ? failed(error) : done(result))));

/** Runs the whole check on all files several times and samples it. Gives shares of the time, self and with callees. */
export async function profileOf(engine, fleet, rounds) {
  const { ours, sink } = pipelines(engine, fleet);
  const run = () => {
    const check = ours.start();
    for (const path of ours.files) sink.value += check(path);
  };
  for (let i = 0; i < 3; i++) run();
  const session = new Session();
  session.connect();
  await post(session, 'Profiler.enable');
  await post(session, 'Profiler.setSamplingInterval', { interval: 200 });
  await post(session, 'Profiler.start');
  const began = process.hrtime.bigint();
  for (let i = 0; i < rounds; i++) run();
  const microseconds = Number(process.hrtime.bigint() - began) / 1000 / (rounds * ours.files.length);
  const { profile } = await post(session, 'Profiler.stop');
  session.disconnect();
  return { microseconds, ...summary(profile, engine.outfile) };
}

function summary(profile, outfile) {
  const source = readFileSync(outfile, 'utf8').split('\n');
  const modules = [];
  let module = '';
  for (const line of source) {
    if (/^\/\/ (\S+\.(ts|js|mjs))$/.test(line)) module = line.slice(3);
    modules.push(module.replace(/^.*node_modules\//, ''));
  }
  const byId = new Map(profile.nodes.map((node) => [node.id, node]));
  const parents = new Map();
  for (const node of profile.nodes) for (const child of node.children ?? []) parents.set(child, node.id);
  const nameOf = (node) => {
    const { functionName, url, lineNumber } = node.callFrame;
    const own = url.endsWith('engine.cjs');
    return `${functionName || 'anonymous'} ${own ? `${modules[lineNumber]}:${lineNumber + 1}` : url === '' ? '' : url.replace(/^.*\//, '')}`.trim();
  };
  const self = new Map();
  const whole = new Map();
  const lines = new Map();
  const rooms = new Map();
  const bump = (map, key, by) => map.set(key, (map.get(key) ?? 0) + by);
  const hits = new Map();
  for (const id of profile.samples) bump(hits, id, 1);
  let total = 0;
  for (const [id, count] of hits) {
    const node = byId.get(id);
    const name = nameOf(node);
    if (name.startsWith('(program)') || name.startsWith('(idle)')) continue;
    total += count;
    bump(self, name, count);
    const seen = new Set();
    let room;
    for (let at = id; at !== undefined; at = parents.get(at)) {
      const above = byId.get(at);
      seen.add(nameOf(above));
      if (room === undefined && above.callFrame.url.endsWith('engine.cjs')) room = modules[above.callFrame.lineNumber];
    }
    for (const each of seen) bump(whole, each, count);
    bump(rooms, room ?? name, count);
  }
  for (const node of profile.nodes)
    if (node.callFrame.url.endsWith('engine.cjs'))
      for (const { line, ticks } of node.positionTicks ?? [])
        bump(lines, `${modules[line - 1]}: ${source[line - 1]?.trim().slice(0, 110)}`, ticks);
  const top = (map, count) =>
    [...map]
      .sort((a, b) => b[1] - a[1])
      .slice(0, count)
      .map(([name, hit]) => ({ name, share: hit / total }));
  return { modules: top(rooms, 40), self: top(self, 50), whole: top(whole, 70), lines: top(lines, 50) };
}

/** The profile as text. */
export function profileText(profile) {
  const part = (title, list) =>
    `${title}\n${tableText(list.map(({ name, share }) => [name, `${(share * 100).toFixed(1)} %`, `${(share * profile.microseconds).toFixed(2)} µs`]))}`;
  return [
    `Whole check: ${profile.microseconds.toFixed(1)} µs a file while sampled`,
    part('By module (with what it calls in libraries)', profile.modules),
    part('By function, itself', profile.self),
    part('By function, with what it calls', profile.whole),
    part('By line of the bundle', profile.lines),
  ].join('\n\n');
}
