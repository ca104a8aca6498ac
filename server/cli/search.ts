// Which files there are: those that were named, and every `.gate` file in the folders that were named.
import { isUtf8 } from 'node:buffer';
import { type Dirent, readdirSync, realpathSync } from 'node:fs';
import { absolute, type GateFile, inWords, shownFrom, statOf, type Trouble } from './files.ts';
import { isSearched, type Roots } from './roots.ts';

export interface Search {
  /** Sorted by their paths, each once: in the same order wherever the command was called. */
  readonly files: readonly GateFile[];
  /** What could not be read, or may not be; sorted in the same way. */
  readonly troubles: readonly Trouble[];
}

/** `folder`: the current one. */
export function findFiles(given: readonly string[], folder: string, roots: Roots): Search {
  const files = new Map<string, GateFile>();
  const troubles = new Map<string, Trouble>();
  const found: Found = {
    file: (path) => void files.set(path, { path, shown: shownFrom(folder, path) }),
    trouble: (path, why, shown = shownFrom(folder, path)) => void troubles.set(path, { path, shown, why }),
  };
  for (const one of given) {
    const path = absolute(folder, one);
    const reached = roots.reach(path);
    const stats = 'why' in reached ? reached.why : statOf(reached.real);
    if (typeof stats === 'string') found.trouble(path, stats, one);
    else if (stats.isDirectory()) searchFolder(path, roots, found);
    else found.file(path);
  }
  return { files: sorted(files.values()), troubles: sorted(troubles.values()) };
}

const sorted = <File extends GateFile>(files: Iterable<File>): File[] =>
  [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));

interface Found {
  readonly file: (path: string) => void;
  readonly trouble: (path: string, why: string, shown?: string) => void;
}

const nameUnfit = 'its name is not UTF-8, so nothing can be read under it; give it another name';

/** Links are followed after all that is not behind a link, and no folder is entered twice: so there are no circles. */
function searchFolder(start: string, roots: Roots, found: Found): void {
  const entered = new Set<string>();
  const waiting = [start];
  const behindLinks: string[] = [];
  for (;;) {
    const folder = waiting.pop() ?? behindLinks.shift();
    if (folder === undefined) return;
    try {
      const real = realpathSync.native(folder);
      if (entered.has(real)) continue;
      entered.add(real);
      // As bytes: a name that is no UTF-8 would come as another one, under which there is nothing.
      for (const entry of readdirSync(folder, { withFileTypes: true, encoding: 'buffer' })) {
        const name = entry.name.toString();
        const path = folder.endsWith('/') ? folder + name : `${folder}/${name}`;
        const kind = kindOf(entry, path, name);
        if (kind === undefined) continue;
        const reached = isUtf8(entry.name) ? (entry.isSymbolicLink() ? roots.reach(path) : undefined) : { why: nameUnfit };
        if (reached !== undefined && 'why' in reached) found.trouble(path, reached.why);
        else if (kind === 'file') found.file(path);
        else (entry.isSymbolicLink() ? behindLinks : waiting).push(path);
      }
    } catch (error) {
      found.trouble(folder, inWords(error, folder));
    }
  }
}

/** What a search makes of an entry; nothing where it does not care. A link is what it leads to. */
function kindOf(entry: Dirent<Buffer>, path: string, name: string): 'file' | 'folder' | undefined {
  const asFile = name.endsWith('.gate') ? 'file' : undefined;
  const asFolder = isSearched(name) ? 'folder' : undefined;
  if (!entry.isSymbolicLink()) return entry.isDirectory() ? asFolder : asFile;
  if (asFile === undefined && asFolder === undefined) return undefined;
  const stats = statOf(path);
  return typeof stats !== 'string' && stats.isDirectory() ? asFolder : asFile;
}
