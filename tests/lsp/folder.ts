// A folder on the disk with the library of the examples, made anew for each test.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { library } from '../editor/bench.ts';

export interface Folder {
  readonly path: string;
  readonly uri: string;
  readonly uriOf: (name: string) => string;
  readonly write: (name: string, text: string) => string;
  readonly remove: (name: string) => void;
  readonly end: () => void;
}

/** `library/` holds the examples' library; `files` are put beside it. */
export function folder(files: Readonly<Record<string, string>> = {}): Folder {
  const path = mkdtempSync(join(tmpdir(), 'pintle ü '));
  const uriOf = (name: string): string => pathToFileURL(join(path, name)).href;
  const write = (name: string, text: string): string => {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), text);
    return uriOf(name);
  };
  for (const [from, text] of library) write(from.slice('/site/'.length), text);
  for (const [name, text] of Object.entries(files)) write(name, text);
  return {
    path,
    uri: pathToFileURL(path).href,
    uriOf,
    write,
    remove: (name) => rmSync(join(path, name), { recursive: true, force: true }),
    end: () => rmSync(path, { recursive: true, force: true }),
  };
}
