// The README as it lies in a package: its links lead to what is shipped along, or are words.
import { copyFileSync, existsSync, renameSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = join(root, 'README.md');
const kept = join(root, 'dist', 'README.kept.md');

const link = /(!?)\[((?:[^[\]]|\[[^\]]*\])*)\]\(([^)\s]+)\)/g;

/** Links of a text that are neither addresses nor places in the text itself. */
export const relativeLinks = (text) =>
  [...text.matchAll(link)].map(([, , , to]) => to).filter((to) => !/^(?:[a-z][a-z0-9+.-]*:|#)/i.test(to));

/**
 * @param has says whether a path from the root of the checkout is shipped under the same path.
 * @param moved paths of the checkout that are shipped under another one.
 */
export function packedReadme(readme, has, moved = {}) {
  return readme.replace(link, (whole, image, words, to) => {
    if (!relativeLinks(whole).includes(to)) return whole;
    const [path, place] = to.split('#');
    const normal = posix.normalize(path);
    const shipped = moved[normal] ?? (has(normal) ? normal : undefined);
    if (shipped !== undefined) return `${image}[${words}](${shipped}${place === undefined ? '' : `#${place}`})`;
    return image === '' ? words : '';
  });
}

/** Puts another README into the place of the checkout's own, which is kept. */
export function lendReadme(text) {
  returnReadme();
  copyFileSync(own, kept);
  writeFileSync(own, text);
}

/** Puts the own one back where another was left in its place; nothing where it was not. */
export function returnReadme() {
  if (existsSync(kept)) renameSync(kept, own);
}
