// Runs that are killed while they write: nothing is lost, and the next run clears away what is left. `PINTLE_KILLS` says
// how many times; 1,000 take some minutes.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, linkSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { setTimeout as after } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { command, sandbox } from './kit.ts';

const kills = Number(process.env['PINTLE_KILLS'] ?? 12);
const count = 60;
const untidy = 'language   1\n\n\n\ncable-model plain   {\narea 0.5 mm2 # thin\n      class 5\n cores 4 }\n';
const tidy = 'language 1\n\ncable-model plain {\n  area 0.5 mm2 # thin\n  class 5\n  cores 4\n}\n';

test(`${kills} kills lose nothing`, { timeout: 180_000 + kills * 5_000 }, async () => {
  const names = Array.from({ length: count }, (_, index) => `${index}.gate`);
  const box = sandbox(Object.fromEntries(names.map((name) => [name, untidy])));
  for (const name of names) chmodSync(box.path(name), 0o640);
  // These are written over and not replaced.
  linkSync(box.path('7.gate'), box.path('seven.txt'));
  const ours = (): string[] => readdirSync(box.folder).filter((name) => name.startsWith('.pintle-'));
  let done = 0;
  let inTheMiddle = 0;
  let leftovers = 0;
  while (done < kills) {
    for (const name of names) writeFileSync(box.path(name), untidy);
    const before = new Set(ours());
    const run = spawn(process.execPath, [command, 'format', '.'], { cwd: box.folder, stdio: 'ignore' });
    const ended = once(run, 'exit');
    let isOver = false;
    void ended.then(() => (isOver = true));
    // It writes as soon as a file of its own stands there, or as soon as a file has its new text.
    while (!isOver && !ours().some((name) => !before.has(name)) && readFileSync(box.path('0.gate'), 'utf8') === untidy) await after(1);
    await after(done % 23);
    if (run.kill('SIGKILL')) done++;
    await ended;
    const texts = names.map((name) => readFileSync(box.path(name), 'utf8'));
    // One that is written over can be caught half-way: then its new text stands whole beside it, and is told and kept.
    const half = texts.findIndex((text) => text !== untidy && text !== tidy);
    if (half >= 0) {
      const spare = ours().find((name) => name.endsWith('.new')) as string;
      expect([names[half], readFileSync(box.path(spare), 'utf8')]).toEqual(['7.gate', tidy]);
      expect(box.run('format', '.').stderr).toContain(spare);
      rmSync(box.path(spare));
    } else for (const text of texts) expect(text).toBeOneOf([untidy, tidy]);
    if (texts.includes(tidy) && texts.includes(untidy)) inTheMiddle++;
    leftovers = Math.max(leftovers, ours().length);
  }
  if (process.env['SAY'] === '1') console.log(`${inTheMiddle} of ${kills} kills in the middle of the files; up to ${leftovers} leftovers`);
  for (const name of names) writeFileSync(box.path(name), untidy);
  expect(box.run('format', '.')).toMatchObject({ status: 0, stderr: `${count} files changed, 0 as they should be\n` });
  expect(readdirSync(box.folder).sort()).toEqual(['.git', '.parts', 'seven.txt', ...names].sort());
  for (const name of names) {
    expect(readFileSync(box.path(name), 'utf8')).toBe(tidy);
    expect(statSync(box.path(name)).mode & 0o777).toBe(0o640);
  }
  expect(statSync(box.path('seven.txt')).ino).toBe(statSync(box.path('7.gate')).ino);
});
