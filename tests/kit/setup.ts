// Before every file of tests: fast-check draws from the seed of all random tests, and asks for it anew in each. No test sets
// anything else for all: what one file wants otherwise it hands to `fc.assert`.
import fc from 'fast-check';
import { seed } from './chance.ts';

fc.configureGlobal({
  get seed() {
    return seed();
  },
});
