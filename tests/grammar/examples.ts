// The example files, for tests that hold for each of them.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../examples/', import.meta.url));

export interface Example {
  /** Relative to `examples/`, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** Every `.gate` file in `examples/` or in one folder of it. */
export function examples(folder = ''): Example[] {
  const base = join(root, folder);
  if (!existsSync(base)) return [];
  return readdirSync(base, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.gate'))
    .sort()
    .map((path) => ({ path: join(folder, path).replaceAll('\\', '/'), text: readFileSync(join(base, path), 'utf8') }));
}
