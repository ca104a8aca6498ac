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
    const written = numberAt(text, start) ?? text.slice(start, end);
    const meant = readingsOf(written);
    return {
      what: `${quoted(written)} has a comma in it.`,
      ...(meant.length === 0
        ? {}
        : { remedy: `Write ${meant.map(quoted).join(' or ')}${meant.length > 1 ? ', whichever is meant' : ''}.` }),
      fixes: meant.map((number) => ({
        title: `Write ${quoted(number)}`,
        edits: [{ start, end: start + written.length, text: number }],
        safe: false,
      })),
    };
  },
});

/** The number at an offset, with all its points and commas. */
function numberAt(text: string, start: number): string | undefined {
  const number = /[-+\u2212]?\d+(?:[.,]\d+)*/y;
  number.lastIndex = start;
  return number.exec(text)?.[0];
}

/** A comma before the decimals, with or without points between thousands. */
const beforeDecimals = /^[-+\u2212]?(?:\d+|[1-9]\d{0,2}\.\d{3}),\d+$/;
/** Commas between thousands, with or without a point before decimals. */
const betweenThousands = /^[-+\u2212]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;

/** What a number with commas in it may be meant as; nothing where it makes no sense either way. */
function readingsOf(written: string): string[] {
  const readings: string[] = [];
  if (beforeDecimals.test(written)) readings.push(written.replaceAll('.', '').replace(',', '.'));
  if (betweenThousands.test(written)) readings.push(written.replaceAll(',', ''));
  return readings;
}
