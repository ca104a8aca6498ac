// Before every file of tests: fast-check draws from the seed of all random tests.
import fc from 'fast-check';
import { seed } from './chance.ts';

fc.configureGlobal({
  get seed() {
    return seed();
  },
});
