import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url))
  .replaceAll('\\', '/')
  .replace(/\/$/, '');
/** What a run leaves behind; not kept under version control. */
export const work = join(root, 'tests/artifacts/mutation');
