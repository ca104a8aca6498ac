import { problemRule } from '../rule.ts';

export const rule = problemRule({
  name: 'unit-missing',
  severity: 'error',
  title: 'A number stands without its unit.',
  why: 'The same number means a door or a field in another unit, and a reader should not have to guess which.',
  remedy: 'Write the unit behind the number.',
  acceptable: false,
  explain: ({ detail, end }) => {
    const { word, found, dimensions, units, unit } = detail;
    return {
      what: `“${found}” in “${word}” has no unit; ${dimensions.join(' or ')} is expected.`,
      remedy: `Write one of ${units.join(', ')} behind it${unit === undefined ? '' : `; “${found} ${unit}” is likely`}.`,
      fixes: unit === undefined ? [] : [{ title: `Write “${found} ${unit}”`, edits: [{ start: end, end, text: ' ' + unit }], safe: false }],
    };
  },
});
