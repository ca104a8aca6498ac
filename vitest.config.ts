import { configDefaults, defineConfig } from 'vitest/config';

/** Tests that run the built command; only for these is it built first. */
const built = ['tests/cli/**/*.test.ts'];
const exclude = [...configDefaults.exclude, 'tests/real-editor/**'];
const setupFiles = ['tests/kit/setup.ts'];

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'source', include: ['tests/**/*.test.ts'], exclude: [...exclude, ...built], setupFiles, testTimeout: 30_000 } },
      { test: { name: 'built', include: built, exclude, setupFiles, globalSetup: ['tests/cli/setup.ts'], testTimeout: 60_000 } },
    ],
  },
});
