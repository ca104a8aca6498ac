import { problemRule } from '../rule.ts';

export const rule = problemRule({
  name: 'nested-too-deep',
  severity: 'error',
  title: 'Blocks stand in blocks, deeper than is read.',
  why: 'What stands deeper is not read at all; the language itself needs three levels.',
  remedy: 'Close the blocks that are done, so that each stands beside the other and not within it.',
  acceptable: false,
  explain: () => ({ what: 'Blocks stand in blocks here, more than 16 deep; what stands deeper is not read.' }),
});
