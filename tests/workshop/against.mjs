// Holds this tree against another one: what both say of every page, example and random variation of them.
// Usage: npm run against -- FOLDER [VARIATIONS OF EACH, 12 unless told] [SHOWN, 5 unless told]. Exits with 1 where anything differs.
import { existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

/** A small generator of numbers from 0 to 1, the same from the same seed. */
function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Every text of the old tree: those of pages, with the files that stand before them, and the example sites. */
function textsOf(root, expander) {
  const texts = [];
  const baseOf = (name) => readFileSync(join(root, 'examples/bases', `${name}.gate`), 'utf8');
  for (const room of ['rules', 'figures', 'safeguards']) {
    const folder = join(root, 'server', room);
    if (!existsSync(folder)) continue;
    for (const name of readdirSync(folder)) {
      const page = join(folder, name, 'page.md');
      if (!existsSync(page)) continue;
      let files = {};
      const expand = expander(baseOf);
      for (const [, info, shown] of readFileSync(page, 'utf8').matchAll(/^```gate([^\n]*)\n([\s\S]*?)^```$/gm)) {
        const [kind, path] = info.trim().split(/\s+/);
        if (kind === 'file') files[posix.join('sound', path)] = shown;
        else {
          const text = expand(kind, shown);
          texts.push({ name: `${room}/${name}`, path: 'sound/page.gate', text: info.includes('repeated') ? text.repeat(5) : text, files });
          if (kind !== 'fixed') files = {};
        }
      }
    }
  }
  for (const folder of ['sound', 'unsafe', 'library', 'bases'].filter((name) => existsSync(join(root, 'examples', name))))
    for (const name of readdirSync(join(root, 'examples', folder))) {
      const path = `${folder}/${name}`;
      texts.push({ name: path, path, text: readFileSync(join(root, 'examples', path), 'utf8'), files: {} });
    }
  return texts;
}

/** A text with one to four small changes: lines gone, said twice or moved, numbers and words changed. */
function varied(text, next) {
  const lines = text.split('\n');
  const pick = (list) => list[Math.floor(next() * list.length)];
  for (let left = 1 + Math.floor(next() * 4); left > 0 && lines.length > 0; left--) {
    const at = Math.floor(next() * lines.length);
    const line = lines[at] ?? '';
    const kind = next();
    if (kind < 0.3) lines.splice(at, 1);
    else if (kind < 0.4) lines.splice(Math.floor(next() * lines.length), 0, line);
    else if (kind < 0.7)
      lines[at] = line.replace(/\d+(?:\.\d+)?/, (number) =>
        String(Number((Number(number) * pick([0, 0.1, 0.5, 0.9, 1.1, 2, 10])).toPrecision(4))),
      );
    else if (kind < 0.9) {
      const words = (pick(lines) ?? '').trim().split(/\s+/);
      lines[at] = line.replace(/(\s)([a-z][\w-]*)(\s*)$/, (_, before, word, after) => `${before}${words.at(-1) ?? word}${after}`);
    } else lines[at] = line.slice(0, Math.floor(next() * line.length));
  }
  return lines.join('\n');
}

/** A source of a tree with all that it imports. */
async function bundled(root, from, folder, name) {
  const outfile = join(folder, `${name}.mjs`);
  const define = { pintleRoot: JSON.stringify(root), pintleVersion: '"0"' };
  const how = { bundle: true, platform: 'node', target: 'node20', format: 'esm', logLevel: 'warning' };
  await build({ ...how, entryPoints: [join(root, from)], outfile, absWorkingDir: root, define });
  return import(pathToFileURL(outfile).href);
}

async function teller(root, folder, name) {
  const { told } = await bundled(root, 'tests/workshop/told.ts', folder, name);
  const examples = realpathSync(join(root, 'examples'));
  const kept = new Map();
  return ({ path, text, files }) => {
    const full = join(examples, path);
    const read = (asked) => {
      if (asked === full) return { text };
      const inside = asked.startsWith(examples + '/') ? asked.slice(examples.length + 1) : undefined;
      if (inside === undefined) return 'outside';
      if (Object.hasOwn(files, inside)) return { text: files[inside] };
      if (!kept.has(asked))
        kept.set(asked, statSync(asked, { throwIfNoEntry: false })?.isFile() === true ? { text: readFileSync(asked, 'utf8') } : 'missing');
      return kept.get(asked);
    };
    const parts = told(examples, full, text, '2026-11-25', read);
    return Object.fromEntries(
      Object.entries(parts).map(([part, value]) => [part, (JSON.stringify(value) ?? '').replaceAll(examples, 'EXAMPLES')]),
    );
  };
}

/** The stretch around the first sign that differs. */
function difference(old, fresh) {
  let at = 0;
  while (at < old.length && old[at] === fresh[at]) at++;
  const from = Math.max(0, at - 160);
  return `    old …${old.slice(from, at + 160)}\n    new …${fresh.slice(from, at + 160)}`;
}

const [folderOfOld, variations = '12', shown = '5'] = process.argv.slice(2);
if (folderOfOld === undefined) {
  console.error('Say which folder holds the old tree: npm run against -- FOLDER');
  process.exit(2);
}
const temporary = mkdtempSync(join(tmpdir(), 'pintle-'));
try {
  const old = resolve(folderOfOld);
  const [before, after] = [await teller(old, temporary, 'old'), await teller(here, temporary, 'new')];
  const counts = new Map();
  let seen = 0;
  const { expander } = await bundled(here, 'tests/kit/derived.ts', temporary, 'derived');
  for (const text of textsOf(old, expander)) {
    const next = random(seen + 1);
    const all = [text, ...Array.from({ length: Number(variations) }, () => ({ ...text, text: varied(text.text, next) }))];
    for (const one of all) {
      seen++;
      const [said, says] = [before(one), after(one)];
      for (const part of new Set([...Object.keys(said), ...Object.keys(says)])) {
        if (said[part] === says[part]) continue;
        const count = (counts.get(part) ?? 0) + 1;
        counts.set(part, count);
        if (count <= Number(shown))
          console.log(`${part} of ${one.name} (text ${seen}):\n${difference(said[part] ?? '', says[part] ?? '')}`);
      }
    }
  }
  console.log(
    `${seen} texts; ${counts.size === 0 ? 'nothing differs' : [...counts].map(([part, count]) => `${part} differ in ${count}`).join(', ')}`,
  );
  if (counts.size > 0) process.exitCode = 1;
} finally {
  rmSync(temporary, { recursive: true, force: true });
}
