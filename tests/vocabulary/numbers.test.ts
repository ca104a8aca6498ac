// Numbers of a file are put together digit by digit; they have to be the very numbers that the language of the engine makes of them.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/index.ts';
import { readFile, unitNamed } from '../../server/vocabulary/index.ts';

/** The room behind a leaf that is open, as read of a file. */
const asRead = (written: string): number | undefined =>
  readFile(parse(`language 1\nleaf a {\n  width ${written} m\n}\n`)).entities.leaf[0]?.facts.width?.value;

const digits = (least: number, most: number): fc.Arbitrary<string> =>
  fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: least, maxLength: most, size: 'max' });

test('a number of any length is the number that its digits say', () => {
  const metre = unitNamed('m');
  fc.assert(
    fc.property(fc.constantFrom('1', '2', '5', '007', '+3', '12'), digits(0, 25), (whole, share) => {
      const written = share === '' ? whole : `${whole}.${share}`;
      expect(asRead(written)).toBe(metre?.toSi(Number(written)));
    }),
    { numRuns: 2000 },
  );
});
