// What stands in a file, as it is quoted to people: as written, never too long, nothing in it that could upset a terminal.

/** Most characters of a quote, blanks not counted: how a line is laid out decides nothing of what is said. */
const longestQuote = 40;

/** A piece of a file in quotation marks: on one line, clipped, with characters that cannot be seen written as their code. */
export function quoted(text: string): string {
  return `“${shortened(text).replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{DI}]/gu, (character) => `<${characterCode(character)}>`)}”`;
}

/** A text on one line, and cut where it is too long; of one of any length no more is looked at than is said. */
function shortened(text: string): string {
  if (text.length <= longestQuote) return text.replace(/\s+/gu, ' ');
  let out = '';
  let short = '';
  let seen = 0;
  for (const character of text) {
    if (/\s/.test(character)) {
      if (!out.endsWith(' ')) out += ' ';
      continue;
    }
    seen += character.length;
    if (seen > longestQuote) return short.trimEnd() + '…';
    out += character;
    if (seen < longestQuote) short = out;
  }
  return out;
}

/** The code point of a character, as character tables write it: U+200B. */
export function characterCode(character: string): string {
  return 'U+' + (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
}
