import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'decimal-comma',
  severity: 'error',
  title: 'A number is written with a comma.',
  why: 'A comma parts decimals in one country and thousands in another; the two readings differ by a factor of a thousand.',
  remedy: 'Write a point before the decimals, and nothing between thousands.',
  acceptable: false,
  explain: ({ start, end }, text) => {
    const written = /^[-+\u2212]?\d+(?:,\d+)+/.exec(text.slice(start, start + 40))?.[0] ?? text.slice(start, end);
    const comma = end - 1;
    const decimals = written.length - (comma - start) - 1;
    const point = { title: `Write “${written.replace(',', '.')}”`, edits: [{ start: comma, end, text: '.' }], safe: false };
    const together = { title: `Write “${written.replace(',', '')}”`, edits: [{ start: comma, end, text: '' }], safe: false };
    return {
      what: `${quoted(written)} has a comma in it.`,
      remedy: decimals === 3 ? `Write “${written.replace(',', '.')}” or “${written.replace(',', '')}”, whichever is meant.` : `Write “${written.replace(',', '.')}”.`,
      fixes: written.indexOf(',') !== written.lastIndexOf(',') ? [] : decimals === 3 ? [point, together] : [point],
    };
  },
});
