// How rules speak of what stands in a file: quoted as written, never too long, nothing in it that could upset a terminal.

const longestQuote = 40;

/** A piece of a file in quotation marks: on one line, clipped, with characters that cannot be seen written as their code. */
export function quoted(text: string): string {
  const clipped = text.length > longestQuote ? [...text.slice(0, longestQuote)].slice(0, -1).join('').trimEnd() + '…' : text;
  return `“${clipped.replace(/\s+/gu, ' ').replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}]/gu, (character) => `<${characterCode(character)}>`)}”`;
}

/** The code point of a character, as character tables write it: U+200B. */
export function characterCode(character: string): string {
  return 'U+' + (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
}

/** The first words of a list such as “a, b, c”, and how many more there are. */
export function listed(list: string, most = 12): string {
  const words = list.split(', ');
  return words.length <= most ? list : `${words.slice(0, most).join(', ')} and ${words.length - most} more`;
}

/** A path as people speak of it: the file and the folder that it is in. */
export function shortPath(path: string): string {
  return path.split('/').filter((part) => part !== '').slice(-2).join('/');
}

/** “a sensor”, “an edge”. */
export const withArticle = (word: string): string => (/^[aeiou]/i.test(word) ? 'an ' : 'a ') + word;

/** A block as people speak of it: leaf “west”; a block without a name of its own is just its word. */
export const blockInWords = (block: { readonly kind: string; readonly name: string }): string => (block.name === '' ? `This ${block.kind === 'measured' ? 'measured block' : block.kind}` : `The ${block.kind} ${quoted(block.name)}`);

/** “ Did you mean “width”?”-like hint for the end of a remedy; empty where nothing is near. */
export const perhaps = (meant: string): string => (meant === '' ? '' : ` Perhaps ${quoted(meant)} is meant.`);

/** A number for people: at most four significant digits. */
export const rounded = (value: number): string => String(Number(value.toPrecision(4)));

/** A list for the end of a sentence that must not grow too long: names can be of any length. */
export const clipped = (text: string): string => (text.length > 200 ? text.slice(0, 199).trimEnd() + '…' : text);
