// Which names look like each other though they are written in other letters: Unicode Technical Standard 39, Unicode Security
// Mechanisms. Its table of confusable characters is in confusables-table.ts; the rest is read from the engine's own tables.
import { sources, targets } from './confusables-table.ts';

const unusual = /[^\u0000-\u007f]/;

/** True when a text has a character beyond ASCII. Two names without one can never be taken for each other by their alphabets. */
export const hasUnusual = (text: string): boolean => unusual.test(text);

let rows: ReadonlyMap<string, string> | undefined;

/** What a character looks like, by the table as it was published, but for the rows that compatibility decomposition gives as well. */
function tableRows(): ReadonlyMap<string, string> {
  if (rows !== undefined) return rows;
  const made = new Map<string, string>();
  const all = targets.split(' ');
  let code = 0;
  sources.split(' ').forEach((step, i) => {
    code += Number.parseInt(step, 36);
    made.set(String.fromCodePoint(code), String.fromCodePoint(...(all[i] as string).split('.').map((one) => Number.parseInt(one, 36))));
  });
  return (rows = made);
}

const folded = new Map<string, string>();

/** What one character looks like, in characters that look like nothing but themselves. */
function fold(character: string): string {
  const known = folded.get(character);
  if (known !== undefined) return known;
  const parts = tableRows().get(character) ?? character.normalize('NFKD');
  const made = parts === character ? character : [...parts].map(fold).join('');
  folded.set(character, made);
  return made;
}

/**
 * The skeleton of a text (UTS 39, section 4): two texts that have the same one look alike. It is for comparing and says nothing to
 * people. Compatibility forms count as what they are forms of.
 */
export function skeleton(text: string): string {
  return [...text.normalize('NFD')].map(fold).join('').normalize('NFD');
}

/** Alphabets that have letters like those of another one, or that people write in (UAX 31, table 5). All others are one more. */
const scripts = [
  'Latin',
  'Cyrillic',
  'Greek',
  'Han',
  'Hiragana',
  'Katakana',
  'Hangul',
  'Bopomofo',
  'Arabic',
  'Hebrew',
  'Armenian',
  'Georgian',
  'Devanagari',
  'Bengali',
  'Gurmukhi',
  'Gujarati',
  'Oriya',
  'Tamil',
  'Telugu',
  'Kannada',
  'Malayalam',
  'Sinhala',
  'Thai',
  'Lao',
  'Tibetan',
  'Myanmar',
  'Khmer',
  'Ethiopic',
  'Mongolian',
  'Syriac',
  'Thaana',
  'Nko',
  'Cherokee',
  'Coptic',
  'Canadian_Aboriginal',
  'Lisu',
  'Tifinagh',
  'Vai',
  'Yi',
  'Deseret',
  'Gothic',
  'Runic',
  'Old_Italic',
  'Osage',
  'Glagolitic',
] as const;
export type Script = (typeof scripts)[number] | 'other';

/** What is written in more than one script together (UTS 39, section 5.1), by the scripts that it is of. */
const together = { japanese: ['Han', 'Hiragana', 'Katakana'], chinese: ['Han', 'Bopomofo'], korean: ['Han', 'Hangul'] } as const;

const patterns = scripts.map((script) => [script, new RegExp(`^\\p{Script_Extensions=${script}}$`, 'u')] as const);
const ofAll = /^[\p{Script_Extensions=Common}\p{Script_Extensions=Inherited}]$/u;
const known = new Map<string, readonly Script[]>();

/** The scripts that a character is of; none for one that is of all, such as a digit. */
function scriptsOf(character: string): readonly Script[] {
  let own = known.get(character);
  if (own === undefined) {
    own = ofAll.test(character) ? [] : patterns.flatMap(([script, pattern]) => (pattern.test(character) ? [script] : []));
    if (own.length === 0 && !ofAll.test(character)) own = ['other'];
    known.set(character, own);
  }
  return own;
}

/** A character as tables have it: U+0435 (Cyrillic). */
export function characterInWords(character: string): string {
  const code = 'U+' + (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  const [script] = scriptsOf(character);
  return script === undefined || script === 'other' ? code : `${code} (${scriptInWords(script)})`;
}

export const scriptInWords = (script: Script): string => (script === 'other' ? 'another alphabet' : script.replace('_', ' '));

/** The first character in which two texts differ, of each; empty where it has none left. */
export function firstDifference(one: string, other: string): readonly [string, string] {
  const [a, b] = [[...one], [...other]];
  let at = 0;
  while (at < a.length && a[at] === b[at]) at++;
  return [a[at] ?? '', b[at] ?? ''];
}

/** True when two texts that are not the same look the same, whatever their letters are of. */
export const looksTheSame = (one: string, other: string): boolean =>
  one !== other && (one.normalize('NFKC') === other.normalize('NFKC') || skeleton(one) === skeleton(other));

/** Letters of the transcription of sounds: ɑ and ɡ are those of no name, and look like a and g. */
const phonetic = /[\u0250-\u02af\u1d00-\u1dbf]/;

/** Plain letters, marks and figures, and what ASCII has besides. */
const ordinary = /^(?:[\u0000-\u007f]|\p{M}|(?=[\p{L}\p{N}])[^\p{Script_Extensions=Common}])+$/u;

/**
 * True when two names can be taken for each other: they look the same, and not only as l and 1 do. Two that differ in letters of
 * one and the same alphabet, or in a letter and a figure, are what every writer knows to keep apart.
 */
export function areConfusable(one: string, other: string): boolean {
  if (!looksTheSame(one, other) || !(hasUnusual(one) || hasUnusual(other))) return false;
  if (one.normalize('NFKC') === other.normalize('NFKC') || !ordinary.test(one) || !ordinary.test(other)) return true;
  if (phonetic.test(one) || phonetic.test(other)) return true;
  const [a, b] = firstDifference(one, other).map(scriptsOf) as [readonly Script[], readonly Script[]];
  const isOneAlphabet = a.length === 0 || b.length === 0 || a.some((script) => b.includes(script));
  return !isOneAlphabet || scriptsTogether([...one, ...other]) === undefined;
}

/** Groups that write together, as names of sets: every script by itself, and those of `together`. */
const setsOf = (own: readonly Script[]): string[] => [
  ...own,
  ...Object.entries(together).flatMap(([name, of]) => (own.some((script) => (of as readonly Script[]).includes(script)) ? [name] : [])),
];

/** The resolved script set of some characters (UTS 39, section 5.1): empty is undefined here, and characters of all scripts give all. */
function scriptsTogether(characters: readonly string[]): readonly string[] | 'all' | undefined {
  let left: readonly string[] | 'all' = 'all';
  for (const character of characters) {
    const own = scriptsOf(character);
    if (own.length === 0) continue;
    const sets = setsOf(own);
    left = left === 'all' ? sets : left.filter((one) => sets.includes(one));
  }
  return left.length === 0 ? undefined : left;
}

/** The resolved script set of a text, as the names of its sets; `all` for one of no script of its own, none for a mixed one. */
export const resolvedScripts = (text: string): readonly string[] | 'all' => scriptsTogether([...text]) ?? [];

/** True at the restriction level “highly restrictive” (UTS 39, section 5.2) or below: one script, or Latin with Japanese, Chinese or Korean. */
function isHighlyRestrictive(text: string): boolean {
  const characters = [...text];
  if (scriptsTogether(characters) !== undefined) return true;
  const rest = scriptsTogether(characters.filter((character) => !scriptsOf(character).includes('Latin')));
  return rest !== undefined && rest !== 'all' && Object.keys(together).some((name) => rest.includes(name));
}

/** A name that mixes alphabets. */
export interface Mixture {
  /** A letter that could be taken for one of `other`, and the alphabet that it is of. */
  readonly letter: string;
  readonly of: Script;
  readonly other: Script;
  /** True when all letters of one of the two alphabets could be the other's: nobody can see that the name is mixed. */
  readonly isHidden: boolean;
}

/** How a name mixes alphabets of which one has letters like the other's; nothing where it does not. */
export function mixtureIn(name: string): Mixture | undefined {
  if (!hasUnusual(name) || isHighlyRestrictive(name)) return undefined;
  const letters = new Map<Script, string[]>();
  for (const character of new Set(name)) {
    const own = scriptsOf(character);
    const [script] = own;
    if (own.length === 1 && script !== undefined) letters.set(script, [...(letters.get(script) ?? []), character]);
  }
  let found: Mixture | undefined;
  for (const [of, own] of letters)
    for (const other of letters.keys()) {
      const alike = other === of ? [] : own.filter((letter) => isLikeOneOf(letter, other));
      const [letter] = alike;
      if (letter === undefined) continue;
      const isHidden = alike.length === own.length;
      if (found === undefined || (isHidden && !found.isHidden)) found = { letter, of, other, isHidden };
    }
  return found;
}

const likenesses = new Map<string, ReadonlySet<Script>>();

/** Whether some letter of that script looks like this one. */
function isLikeOneOf(letter: string, script: Script): boolean {
  let alike = likenesses.get(letter);
  if (alike === undefined) {
    const looks = fold(letter);
    const found = new Set([...looks].length === 1 ? scriptsOf(looks) : []);
    for (const source of tableRows().keys()) if (fold(source) === looks) for (const one of scriptsOf(source)) found.add(one);
    likenesses.set(letter, (alike = found));
  }
  return alike.has(script);
}
