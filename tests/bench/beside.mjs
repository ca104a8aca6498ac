// The engine of another tree beside this one, on the same files, in one process. They take turns on slices of the files, and what
// is told is processor time, so that whatever else the machine does falls on both alike.
import { mkdtempSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { asOf } from './fleet.mjs';
import { median } from './measure.mjs';

const slice = 500;

/** Processor microseconds a file of both engines, and the ratio of the new one to the old, by the median of all pairs of slices. */
export async function beside(engine, folderOfOld, fleet, rounds, temporary) {
  const { loadEngine } = await import(pathToFileURL(join(resolve(folderOfOld), 'tests', 'bench', 'engine.mjs')).href);
  const old = await loadEngine(mkdtempSync(join(temporary, 'old-')));
  const root = fleet.folder.replaceAll('\\', '/');
  const read = (path) => ({ text: readFileSync(path, 'utf8') });
  let sink = 0;
  const checking = (one) => {
    const workspace = new one.Workspace({ root, read });
    return (path) => {
      const analysis = workspace.judge(path, readFileSync(path, 'utf8'), asOf);
      for (const figure of analysis.figures) sink += figure.value;
      sink += analysis.findings.length;
    };
  };
  const timed = (check, files) => {
    const start = process.cpuUsage();
    for (const path of files) check(path);
    const { user, system } = process.cpuUsage(start);
    return (user + system) / files.length;
  };
  const times = { old: [], new: [] };
  const ratios = [];
  for (let round = 0; round < rounds; round++) {
    const [before, after] = [checking(old), checking(engine)];
    for (let at = 0, turn = round; at < fleet.gate.length; at += slice, turn++) {
      const files = fleet.gate.slice(at, at + slice);
      const inTurns = turn % 2 === 0 ? [before, after] : [after, before];
      const [first, second] = inTurns.map((check) => timed(check, files));
      const [was, is] = turn % 2 === 0 ? [first, second] : [second, first];
      // The first round warms both up.
      if (round === 0) continue;
      times.old.push(was);
      times.new.push(is);
      ratios.push(is / was);
    }
  }
  return { files: fleet.gate.length, pairs: ratios.length, old: median(times.old), new: median(times.new), ratio: median(ratios), sink };
}
