// Looks into a packed extension: what must be in it, and what must not. `node tests/workshop/check-vsix.mjs [FILE]`
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const needed = [
  'package.json',
  'LICENSE.txt',
  'dist/THIRD-PARTY-NOTICES.txt',
  'dist/pintle.cjs',
  'dist/server.cjs',
  'dist/server-worker.js',
  'dist/extension.cjs',
  'dist/extension-web.cjs',
  'dist/preview.js',
  'dist/preview.css',
  /^dist\/pages\/rules\/.+\.md$/,
  /^dist\/pages\/figures\/.+\.md$/,
];
const forbidden = [
  /\.map$/,
  /\.ts$/,
  /(^|\/)node_modules\//,
  /^tests\//,
  /^server\//,
  /^client\/(?!snippets\.json$|media\/)/,
  /^\.git/,
  /^\.ci/,
  /\.tmp$/,
  /\.vsix$/,
  /package-lock\.json$/,
];

/** The most that somebody should have to download, in bytes. */
const largest = 1_850_000;

/** The names of the files in a ZIP, from its central directory (PKWARE APPNOTE 6.3, sections 4.3.12 and 4.3.16). */
export function namesIn(bytes) {
  let end = bytes.length - 22;
  while (end >= 0 && bytes.readUInt32LE(end) !== 0x06054b50) end--;
  if (end < 0) throw new Error('not a ZIP file');
  const names = [];
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    const length = bytes.readUInt16LE(at + 28);
    names.push(bytes.toString('utf8', at + 46, at + 46 + length));
    at += 46 + length + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return names;
}

/** What is wrong with a packed extension, in words; empty when nothing is. */
export function checkVsix(path) {
  const bytes = readFileSync(path);
  const files = namesIn(bytes).flatMap((name) =>
    name.startsWith('extension/') && !name.endsWith('/') ? [name.slice('extension/'.length)] : [],
  );
  const has = (wanted) =>
    files.some((file) => (typeof wanted === 'string' ? file.toLowerCase() === wanted.toLowerCase() : wanted.test(file)));
  return [
    ...(bytes.length > largest ? [`the package has ${bytes.length} bytes, over the ${largest} that it may have`] : []),
    ...needed.filter((wanted) => !has(wanted)).map((wanted) => `missing in the package: ${wanted}`),
    ...files.filter((file) => forbidden.some((pattern) => pattern.test(file))).map((file) => `must not be in the package: ${file}`),
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const faults = checkVsix(process.argv[2] ?? fileURLToPath(new URL('../../dist/pintle.vsix', import.meta.url)));
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) process.exitCode = 1;
}
