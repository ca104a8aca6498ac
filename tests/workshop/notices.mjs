// What is said of other people's work that the bundles hold: each package with its licence, as the licences ask for.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The file of it that is shipped. */
export const noticesFile = 'THIRD-PARTY-NOTICES.txt';

/** The folders of the packages of which something came into a bundle, by what the bundler says of it. */
export function packagesIn(metafile) {
  const folders = new Set();
  for (const { inputs } of Object.values(metafile.outputs))
    for (const [path, { bytesInOutput }] of Object.entries(inputs)) {
      const folder = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(path);
      if (folder !== null && bytesInOutput > 0) folders.add(folder[0]);
    }
  return [...folders].sort();
}

const isLicence = (name) => /^(licen[cs]e|copying)(\.(txt|md))?$/i.test(name);
const isNotice = (name) => /^(notice|third-?party-?notices)(\.(txt|md))?$/i.test(name);

/** The texts that a package asks to be handed on, its licence first. Throws where it brings no licence. */
function textsOf(folder) {
  const names = readdirSync(folder).sort();
  const licences = names.filter(isLicence);
  if (licences.length === 0) throw new Error(`${folder} brings no licence: it may not be bundled before its terms are known.`);
  const read = (name) => readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n').trim();
  return [...licences, ...names.filter(isNotice)].map(read);
}

const line = '-'.repeat(80);

/** The notices for these packages; `root` is where their folders start. Packages with the same texts share them. */
export function noticesFor(folders, root) {
  const shared = new Map();
  for (const folder of folders) {
    const path = join(root, folder);
    const { name, version, license } = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8'));
    for (const text of textsOf(path)) {
      if (!shared.has(text)) shared.set(text, []);
      shared.get(text).push(`${name} ${version} (${license})`);
    }
  }
  const parts = [...shared].map(([text, packages]) => `${line}\n${[...new Set(packages)].join('\n')}\n${line}\n\n${text}\n`);
  return `Pintle contains parts of the packages below, each under its own licence.\n\n${parts.join('\n')}`;
}

/** The packages that notices speak of, as `name version`. */
export const packagesNamed = (notices) => new Set([...notices.matchAll(/^(\S+ \S+) \([^)]*\)$/gm)].map(([, name]) => name));

/** A package's own name and version. */
export function nameOf(folder, root) {
  const { name, version } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
  return `${name} ${version}`;
}

/** Those notices that lie in a folder already; none where there are none. */
export const noticesIn = (folder) => (existsSync(join(folder, noticesFile)) ? readFileSync(join(folder, noticesFile), 'utf8') : '');
