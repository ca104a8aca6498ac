// What every message to people keeps to. Gives a list of what is wrong with one; empty when nothing is.

const longest = 400;

/** What a fact that is missing is asked for with: a question as one asks it, and no sentence that ends in doubt. */
const question = /^((At|By|For|From|In|On|To|With) )?(how|what|where|which|who) .*\?$/i;

/** What is wrong with a sentence that is shown to people; `file` is the text that it may quote numbers from. */
export function faultsOf(sentence: string, file: string): string[] {
  const faults: string[] = [];
  const say = (fault: string): void => void faults.push(`${fault}: ${JSON.stringify(sentence)}`);
  if (sentence.trim() === '') say('is empty');
  if (!sentence.endsWith('.') && !question.test(sentence)) say('does not end with a full stop');
  if (!/^[\p{Lu}“"‘']/u.test(sentence)) say('does not start with a capital or a quotation mark');
  if (/undefined|NaN|\[object|Infinity/.test(sentence)) say('shows a slip of the program');
  if (withoutQuotes(sentence).includes('!')) say('shouts');
  if (/ {2}|\n/.test(sentence)) say('has a double space or a line end');
  if (/\.\./.test(withoutQuotes(sentence).replaceAll(' .. ', ' '))) say('has two full stops in a row');
  if (/\p{Cc}|[\u200b-\u200f\u202a-\u202e\u2066-\u2069]/u.test(sentence)) say('has a character that cannot be seen');
  if (sentence.length > longest) say(`is longer than ${longest} characters`);
  if (/\bcompliant\b/i.test(sentence)) say('promises what nobody can promise');
  for (const number of sentence.match(/(?<![\w.])\d+(?:\.\d+)?(?![\w])/g) ?? []) {
    const digits = number.replace('.', '').replace(/^0+/, '');
    const significant = number.includes('.') ? digits : digits.replace(/0+$/, '');
    if (significant.length > 4 && !file.includes(number)) say(`has a number with more than four significant digits (${number})`);
  }
  return faults;
}

const withoutQuotes = (sentence: string): string => sentence.replace(/“[^”]*”/g, '“”');
