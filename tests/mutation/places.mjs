import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** MUTATE_ROOT: another copy of the house to mutate, for trying things out. */
export const root = process.env.MUTATE_ROOT ?? fileURLToPath(new URL('../..', import.meta.url)).replaceAll('\\', '/').replace(/\/$/, '');
/** What a run leaves behind; not kept under version control. */
export const work = join(root, 'tests/artifacts/mutation');
