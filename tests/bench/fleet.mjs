// A folder of made-up sites on disk: the library, and the same sites as `.gate` and as YAML.
import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './engine.mjs';
import { gateText, generate, yamlText } from './sites.mjs';

/** The day that all runs are judged by. */
export const asOf = '2026-11-25';

/** Writes `count` sites under `folder`. Gives their paths and sizes, in one order. */
export function writeFleet(folder, count, table) {
  cpSync(join(root, 'examples', 'library'), join(folder, 'library'), { recursive: true });
  const sites = generate(count);
  const gate = [];
  const yaml = [];
  const bytes = { gate: 0, yaml: 0 };
  sites.forEach((site, index) => {
    const part = String(Math.floor(index / 250)).padStart(3, '0');
    for (const [kind, list, text] of [
      ['gate', gate, gateText(site, table)],
      ['yaml', yaml, yamlText(site, table)],
    ]) {
      const place = join(folder, kind === 'gate' ? 'fleet' : 'yaml', part);
      if (index % 250 === 0) mkdirSync(place, { recursive: true });
      const path = join(place, `${site.name}.${kind}`);
      writeFileSync(path, text);
      list.push(path);
      bytes[kind] += Buffer.byteLength(text);
    }
  });
  return { folder, sites, gate, yaml, bytes };
}
