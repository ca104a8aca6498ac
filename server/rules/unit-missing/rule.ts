import { problemRule } from '../rule.ts';

export const rule = problemRule({
  name: 'unit-missing',
  severity: 'error',
  title: 'A number stands without its unit.',
  why: 'The same number means a door or a field in another unit, and a reader should not have to guess which.',
  remedy: 'Write the unit behind the number.',
  acceptable: false,
  explain: ({ detail, end }) => {
    const unit = detail['unit'] ?? '';
    return {
      what: `“${detail['found']}” in “${detail['word']}” has no unit; ${detail['dimension']} is expected.`,
      remedy: `Write one of ${detail['units']} behind it${unit === '' ? '' : `; “${detail['found']} ${unit}” is likely`}.`,
      fixes: unit === '' ? [] : [{ title: `Write “${detail['found']} ${unit}”`, edits: [{ start: end, end, text: ' ' + unit }], safe: false }],
    };
  },
});
