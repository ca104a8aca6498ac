// The table of confusable characters of Unicode Technical Standard 39 in few bytes. The package `unhomoglyph` carries the table as
// Unicode publishes it; rows that compatibility decomposition gives as well are left out (server/vocabulary/confusables.ts), and
// those that no name is likely to need: every copy of the table is a good part of what the extension may weigh.
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { root } from './generated-traceability.ts';

/** Each character with those that it looks like, as published (confusables.txt 13.0.0). */
export const publishedConfusables = (): Readonly<Record<string, string>> =>
  createRequire(join(root, 'package.json'))('unhomoglyph/data.json') as Record<string, string>;

/** The scripts that people write in (UAX 31, table 5: recommended for names), and marks of all. */
const inUse = [
  ...['Latin', 'Cyrillic', 'Greek', 'Han', 'Hiragana', 'Katakana', 'Hangul', 'Bopomofo', 'Arabic', 'Hebrew', 'Armenian', 'Georgian'],
  ...['Devanagari', 'Bengali', 'Gurmukhi', 'Gujarati', 'Oriya', 'Tamil', 'Telugu', 'Kannada', 'Malayalam', 'Sinhala', 'Thai', 'Lao'],
  ...['Tibetan', 'Myanmar', 'Khmer', 'Ethiopic', 'Inherited'],
];
const writtenIn = new RegExp(`[${inUse.map((script) => `\\p{Script_Extensions=${script}}`).join('')}]`, 'u');

/**
 * The rows that are shipped: whatever looks like plain ASCII, with a mark or without, and letters, marks and figures of scripts in use that look like one
 * other character. What is put together is taken apart before it is looked up, so that its own row is never read.
 */
export const isShipped = (source: string, target: string): boolean =>
  source.normalize('NFD') === source &&
  (/^[A-Za-z0-9'.-]+\p{M}?$/u.test(target) || (/[\p{L}\p{M}\p{N}]/u.test(source) && writtenIn.test(source) && [...target].length === 1));

const base36 = (text: string): string => [...text].map((character) => (character.codePointAt(0) as number).toString(36)).join('.');

export function confusablesTable(): string {
  const published = publishedConfusables();
  const rowOf = (character: string): string => published[character] ?? character;
  const rows = Object.entries(published)
    .filter(([source, target]) => {
      if (!isShipped(source, target)) return false;
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
