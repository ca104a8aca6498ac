// The table of confusable characters of Unicode Technical Standard 39 in few bytes. The package `unhomoglyph` carries the table as
// Unicode publishes it; rows that compatibility decomposition gives as well are left out (server/vocabulary/confusables.ts).
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { root } from './generated-traceability.ts';

/** Each character with those that it looks like, as published (confusables.txt 13.0.0). */
export const publishedConfusables = (): Readonly<Record<string, string>> =>
  createRequire(join(root, 'package.json'))('unhomoglyph/data.json') as Record<string, string>;

const base36 = (text: string): string => [...text].map((character) => (character.codePointAt(0) as number).toString(36)).join('.');

export function confusablesTable(): string {
  const published = publishedConfusables();
  const rowOf = (character: string): string => published[character] ?? character;
  const rows = Object.entries(published)
    // What is put together is taken apart before it is looked up, so that its own row is never read.
    .filter(([source, target]) => {
      if (source.normalize('NFD') !== source) return false;
      const plain = source.normalize('NFKD');
      return plain === source || [...plain].map(rowOf).join('').normalize('NFD') !== target.normalize('NFD');
    })
    .map(([source, target]) => [source.codePointAt(0) as number, target] as const)
    .sort((a, b) => a[0] - b[0]);
  const steps = rows.map(([code], i) => (code - (rows[i - 1]?.[0] ?? 0)).toString(36));
  return `// Generated from the package unhomoglyph by \`npm run generate\`. Do not edit.

/** Characters that look like others: by how many each code point is greater than the one before, in base 36. */
export const sources =
  '${steps.join(' ')}';

/** What each of them looks like: code points in base 36, with points between them. */
export const targets =
  '${rows.map(([, target]) => base36(target)).join(' ')}';
`;
}
