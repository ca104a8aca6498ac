import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { configDefaults, defineConfig } from 'vitest/config';

/** Tests that run the built command; only for these is it built first. */
const built = ['tests/cli/**/*.test.ts', 'tests/library/**/*.test.ts'];
/** Tests that put others in the place of modules or of what is global: each of these files in a process of its own. */
const apart = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts') && /import \{[^}]*\bvi\b[^}]*\} from 'vitest'/.test(readFileSync(`tests/${name}`, 'utf8')))
  .map((name) => `tests/${name.replaceAll('\\', '/')}`);
const include = ['tests/**/*.test.ts'];
const exclude = [...configDefaults.exclude, 'tests/real-editor/**'];
/** A test that hangs ends here; a slow or busy machine gets nowhere near. One process for each core. */
const common = { setupFiles: ['tests/kit/setup.ts'], testTimeout: 180_000, hookTimeout: 180_000, maxWorkers: availableParallelism() };

// All others share the modules that a process has loaded: to load them took half of the time. So no test may leave anything
// changed in a module or in what is global. The projects run one after another, by their names.
export default defineConfig({
  test: {
    projects: [
      { test: { ...common, name: 'apart', include: apart } },
      { test: { ...common, name: 'built', include: built, exclude, isolate: false, globalSetup: ['tests/cli/setup.ts'] } },
      { test: { ...common, name: 'source', include, exclude: [...exclude, ...built, ...apart], isolate: false } },
    ],
  },
});
