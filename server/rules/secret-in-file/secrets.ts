// Where a file gives away a password, a code or a telephone number: in its comments, in its texts, and on lines of which
// something could not be read, such as one that starts with a word that the language does not have. Linear in its length.
import { type Reading, unitNamed } from '../../vocabulary/index.ts';
import { lineEndOf, lineStartOf } from '../fixes.ts';
import { quoted } from '../words.ts';

export type SecretKind = 'password' | 'code' | 'telephone';

export interface Secret {
  readonly kind: SecretKind;
  readonly start: number;
  readonly end: number;
}

/** Most that are told of one file. */
const most = 50;

const words = String.raw`(?:(?:[ \t]+|-)(?:is|are|was|now|the|for|to|of|at|on|gate|gates|door|keypad|panel|main|entrance|entry|site|lock|box|key|safe|user|users|master|installer|installers|engineer|engineers|admin|tenant|no|no\.|nr|nr\.|number|set|changed|remains|still))*`;
const link = String.raw`[ \t]*(?:[:=]|->|→)?[ \t]*`;
const digitsOf = (least: number, greatest: number): string => String.raw`\d(?:[ -]?\d){${least - 1},${greatest - 1}}`;

const password = new RegExp(
  String.raw`(?:pass ?word|pass ?code|pass ?phrase|passwd|\bpwd|pass ?wort|kennwort|wachtwoord|mot de passe|contrase[ñn]a|\b(?:wi-?fi|wpa2?)[ -]key)s?\b${words}([ \t]*[:=][ \t]*|[ \t]+)(?:["“'‘]([^"”'’\s][^"”'’\r\n]{1,60})["”'’]|([^\s"“”'’,;{}]{3,}))`,
  'giu',
);
const code = new RegExp(
  String.raw`\b(pin|code|kode|combination|keycode|pincode)s?\b${words}${link}(?:["“'‘]([^"”'’\r\n]{1,40})["”'’]|(${digitsOf(4, 12)})(?![\d]))`,
  'giu',
);
const transmitter =
  /\b(?:transmitter|remote|fob|handset|tag|card)s?(?:[ \t]+|-)(?:(?:serial|code|number|no\.?|nr\.?|id|is)[ \t:=-]*)+([0-9a-f]{5,16})\b/giu;

/** What codes are called that open nothing. */
const harmless =
  /(?:error|fault|blink|flash|colou?r|post|postal|zip|country|area|article|order|product|part|item|building|highway|traffic|date|type|model|source|status|hazard|trip|qr|bar|tax|material|steel|ral|diagnostic|din|hinge|pivot|split|cotter|shear|clevis|dowel|locating|steel|connector|bracket|lower|upper|top|bottom)[ \t-]*$/iu;
/** What follows “password:” where none is given. */
const noPassword =
  /^(?:none|see|ask|not|kept|held|stored|with|unknown|in|on|by|the|at|to|is|changed|required|needed|protected|protection|given|handed|set|n\/a|tbd|\?+|\*+|…+|\.+|x{3,}|-+|<.*>)$/iu;

const separator = String.raw`(?:[ \u00a0./-]|[ \u00a0]?\(|\)[ \u00a0-]?)?`;
const international = new RegExp(String.raw`\+[1-9](?:${separator}\d){7,14}(?!\d)`, 'gu');
const national = new RegExp(String.raw`\(?0\d(?:${separator}\d){6,13}(?!\d)`, 'gu');
const american = /(?:\([2-9]\d{2}\)[ -]?|(?:1-)?[2-9]\d{2}[.-])\d{3}[.-]\d{4}(?!\d)/gu;
const called = new RegExp(
  String.raw`\b(?:tel|telephone|phone|mobile|cell|call|fax|sms|whatsapp|telefon|handy|téléphone|teléfono)\b[.:]?(?:[ \t]+\p{L}{1,20}[.:]?){0,3}[ \t:=]*(\(?\d(?:${separator}\d){6,14})(?!\d)`,
  'giu',
);

const anyWord =
  /pass|\bpwd|\bpin|code|kode|combination|\btel|phone|mobile|\bcell|\bcall|\bfax|\bsms|whatsapp|handy|kennwort|wachtwoord|contrase|\bwi-?fi|\bwpa|transmitter|remote|\bfob|handset|\btag|\bcard|téléphone/i;
const anyNumber = /\d[\d \u00a0()./-]{6,}\d/;

/** Every secret has four digits or one of these words, and most stretches of a file have neither. */
const tellingWord =
  /pass ?(?:w|c|p)|mot de passe|pwd|kennwort|passwort|wachtwoord|contrase|wi-?fi|wpa|\bpins?\b|pincode|code|kode|combination/iy;
const leastDigits = 4;

/** The first three letters of each of those words, for a look that costs little: by the first two, a bit for each third. */
const beginnings = new Int32Array(32 * 32);
for (const [first, second, third] of ['pas', 'mot', 'pwd', 'ken', 'wac', 'con', 'wif', 'wi-', 'wpa', 'pin', 'cod', 'kod', 'com']) {
  const row = placeOf(first ?? '') * 32 + placeOf(second ?? '');
  beginnings[row] = (beginnings[row] ?? 0) | (1 << placeOf(third ?? ''));
}

/** The last five bits of a character: the same for a letter and its capital, and for some others, which does no harm here. */
function placeOf(letter: string): number {
  return letter.charCodeAt(0) & 31;
}

function worthALook(text: string, start: number, end: number): boolean {
  let digits = 0;
  let before = 0;
  let last = 0;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code < 58 && ++digits === leastDigits) return true;
    const place = code & 31;
    if ((((beginnings[before * 32 + last] as number) >> place) & 1) === 1) {
      tellingWord.lastIndex = at - 2;
      if (tellingWord.test(text)) return true;
    }
    before = last;
    last = place;
  }
  return false;
}

/** Every secret that a file gives away, in the order of the text; at most 50. */
export function secretsOf({ tree, problems }: Reading): Secret[] {
  let found: Map<number, Secret> | undefined;
  const look = (start: number, end: number): void => {
    if (worthALook(tree.text, start, end))
      for (const secret of secretsIn(tree.text.slice(start, end)))
        (found ??= new Map()).set(start + secret.start, { kind: secret.kind, start: start + secret.start, end: start + secret.end });
  };
  for (const comment of tree.comments) look(comment.start, comment.end);
  for (const text of tree.texts) look(text.start + 1, text.end);
  // Problems mostly come in the order of the text, so the line looked at last is the one to ask first.
  let from = 0;
  let to = -1;
  for (const problem of problems) {
    if (problem.start >= from && problem.start <= to) continue;
    from = lineStartOf(tree.text, problem.start);
    to = lineEndOf(tree.text, problem.start);
    look(from, to);
  }
  return found === undefined ? none : [...found.values()].sort((a, b) => a.start - b.start).slice(0, most);
}

const none: Secret[] = [];

/** Every secret that a piece of text gives away, in order; at most 50. The spans are of the whole hint, word and number. */
export function secretsIn(text: string): Secret[] {
  const found: Secret[] = [];
  const add = (kind: SecretKind, start: number, end: number): void => {
    if (!found.some((other) => start < other.end && end > other.start)) found.push({ kind, start, end });
  };
  if (anyWord.test(text)) {
    for (const match of text.matchAll(password)) {
      const token = match[3];
      const said = /[:=]/.test(match[1] ?? '');
      if (
        match[2] !== undefined
          ? !noPassword.test(match[2])
          : token !== undefined && !noPassword.test(token) && (said || /\d/.test(token)) && !isMeasured(text, match.index + match[0].length)
      )
        add('password', match.index, match.index + match[0].length);
    }
    for (const match of text.matchAll(code)) {
      const end = match.index + match[0].length;
      if (harmless.test(text.slice(Math.max(0, match.index - 20), match.index))) continue;
      const quote = match[2];
      const opensLine = text.slice(lineStartOf(text, match.index), match.index).trim() === '';
      if (
        quote !== undefined
          ? digitsIn(quote) >= 3 || (opensLine && /^\S{3,}$/u.test(quote))
          : !isMeasured(text, end) && !isDate(match[3] ?? '')
      )
        add('code', match.index, end);
    }
    for (const match of text.matchAll(transmitter))
      if (digitsIn(match[1] ?? '') >= 4) add('code', match.index, match.index + match[0].length);
    for (const match of text.matchAll(called))
      if (isTelephone(text, match[1] ?? '', match.index + match[0].length)) add('telephone', match.index, match.index + match[0].length);
  }
  if (anyNumber.test(text)) {
    for (const match of text.matchAll(international))
      if (!/[\w.+]/u.test(before(text, match.index))) add('telephone', match.index, match.index + match[0].length);
    for (const match of text.matchAll(national)) {
      const groups = match[0].match(/\d+/g) ?? [];
      const digits = digitsIn(match[0]);
      const parted =
        groups.length > 1 &&
        digits >= 9 &&
        groups.length <= 6 &&
        (groups[0] as string).length <= 5 &&
        groups.slice(1).every((group) => group.length > 1);
      const inOne = groups.length === 1 && digits >= 10 && /^\(?0[1-9]/.test(match[0]);
      if ((parted || inOne) && !/[\w.,+/-]/u.test(before(text, match.index)) && isTelephone(text, match[0], match.index + match[0].length))
        add('telephone', match.index, match.index + match[0].length);
    }
    for (const match of text.matchAll(american))
      if (!/[\w.,+/-]/u.test(before(text, match.index)) && isTelephone(text, match[0], match.index + match[0].length))
        add('telephone', match.index, match.index + match[0].length);
  }
  return found.sort((a, b) => a.start - b.start).slice(0, most);
}

/** A piece of a file in quotation marks, or what it is where it gives something away. */
export function quotedUnlessSecret(piece: string, text: string, at: number): string {
  const from = lineStartOf(text, at);
  return secretsIn(text.slice(from, lineEndOf(text, at))).length > 0 ? 'What stands here' : quoted(piece);
}

const before = (text: string, at: number): string => text.charAt(at - 1);
const digitsIn = (text: string): number => text.replace(/\D/g, '').length;

function isTelephone(text: string, number: string, end: number): boolean {
  return !isMeasured(text, end) && !isDate(number) && !/^[\w]|^[.,]\d|^[ \t]*\.\./u.test(text.slice(end, end + 4));
}

/** True when a unit follows: then it is a quantity. */
function isMeasured(text: string, end: number): boolean {
  const next = /^[ \t\u00a0]?([^\s"”,;(){}]{1,6})/u.exec(text.slice(end, end + 8));
  return next !== null && unitNamed((next[1] as string).replace(/[.:]$/, '')) !== undefined;
}

/** True for what starts like a date: year first with its month, or day and month with a year behind. */
function isDate(number: string): boolean {
  const yearFirst = /^(?:19|20)\d\d[-./](\d\d)(?!\d)/.exec(number);
  if (yearFirst !== null) return Number(yearFirst[1]) <= 12;
  const yearLast = /^(\d{1,2})[-./ ](\d{1,2})[-./ ](?:(?:19|20)\d\d(?!\d)|\d\d(?![-./ ]?\d))/.exec(number);
  return yearLast !== null && Number(yearLast[1]) <= 31 && Number(yearLast[2]) <= 12;
}
