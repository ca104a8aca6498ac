import { asWritten, isAsPrinted, isPrintable, slotInWords, unitNamed } from '../../vocabulary/index.ts';
import { without } from '../fixes.ts';
import { problemRule, type Report } from '../rule.ts';
import { quotedUnlessSecret } from '../secret-in-file/secrets.ts';
import { listed, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'value-unfit',
  severity: 'error',
  title: 'A value is of another kind than the line takes.',
  why: 'The value can’t be read, so the whole line says nothing.',
  remedy: 'Write a value of the kind that the line takes.',
  acceptable: false,
  explain: ({ detail, start, end }, text) => {
    const { word, found, slot, shape } = detail;
    const equals = found === '=';
    return {
      what: `${quotedUnlessSecret(found, text, start)} in ${quoted(word)} is not ${slotInWords(slot, listed)}.`,
      remedy: equals ? 'Remove the equals sign: a value follows its word without one.' : `Write the line as “${shape}”.`,
      fixes: equals ? [{ title: 'Remove the equals sign', edits: [{ ...without(text, start, end) }], safe: false }] : [],
      ...(isAsPrinted(slot) && !equals ? inQuotationMarks(text, start, end) : {}),
    };
  },
});

/** A name that begins with a figure has been read as a number, up to the next blank it is one. */
function inQuotationMarks(text: string, start: number, end: number): Pick<Report, 'remedy' | 'fixes'> {
  // “2A” is one name, and so may “2 A” be, or two: only whoever wrote it knows.
  const [, figures, letters] = /^([\d.]+)\s*([^\s\d"\\][^\s"\\]*)$/.exec(text.slice(start, end)) ?? [];
  if (figures !== undefined && letters !== undefined && unitNamed(letters) !== undefined) {
    const [one, two] = [asWritten(figures + letters), `${asWritten(figures)} ${asWritten(letters)}`];
    return {
      remedy: `Write it as ${quoted(one)} where it is one name, and as ${quoted(two)} where these are two.`,
      fixes: [
        { title: 'Put the name in quotation marks', edits: [{ start, end, text: one }], safe: false },
        { title: 'Write two names, the first in quotation marks', edits: [{ start, end, text: two }], safe: false },
      ],
    };
  }
  const name = /[^\s{},:#"]*/y;
  name.lastIndex = start;
  const found = name.exec(text)?.[0] ?? '';
  if (!isPrintable(found)) return {};
  const written = asWritten(found);
  return {
    remedy: `Write the name as ${quoted(written)}.`,
    fixes: [{ title: 'Put the name in quotation marks', edits: [{ start, end: start + found.length, text: written }], safe: false }],
  };
}
