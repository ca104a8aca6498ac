import { headPlace, type Installation } from '../../model/index.ts';
import { type Account, accountOf, type Entry, entryInWords, isDraft, type Lack } from '../../safeguards/index.ts';
import { graveness, installationRule, ofTheLanguage, type Report, type Severity } from '../rule.ts';
import { quoted, quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'not-judged',
  severity: 'error',
  title: 'Something that protects people is not judged, because a fact is missing.',
  why: 'What is not judged may be as it should be or may kill somebody; that nothing is found of it says neither.',
  remedy: 'State what is missing, as it was measured or as the leaflet says.',
  source: ofTheLanguage,
  acceptable: 'warnings',
  check: (installation, report) => {
    const account = accountOf(installation);
    if (account.open.length === 0) return;
    if (isDraft(installation)) return sayDraft(installation, account, report);
    for (const gap of gapsOf(account)) sayGap(gap, report);
  },
});

/** All that one block does not say. */
interface Gap {
  readonly lack: Lack;
  /** The words that are missing there, each once. */
  readonly words: Set<string>;
  readonly entries: Set<Entry>;
  severity: Severity;
}

function gapsOf({ open }: Account): Iterable<Gap> {
  const gaps = new Map<string, Gap>();
  for (const entry of open) {
    // These have rules of their own.
    if (entry.subject === 'forces' || entry.subject === 'release') continue;
    for (const lack of entry.lacks) {
      const key = `${lack.path ?? ''}\n${lack.at.start}`;
      const known = gaps.get(key);
      if (known === undefined) gaps.set(key, { lack, words: new Set([lack.word]), entries: new Set([entry]), severity: entry.grade });
      else {
        known.words.add(lack.word);
        known.entries.add(entry);
        if (graveness[entry.grade] > graveness[known.severity]) known.severity = entry.grade;
      }
    }
  }
  return gaps.values();
}

/** More things than these are counted and not named. */
const mostNamed = 4;
/** And no more than these characters of them. */
const mostCharacters = 180;

function sayGap({ lack, words, entries, severity }: Gap, report: (report: Report) => void): void {
  const [first] = entries;
  const isElsewhere = lack.path !== undefined;
  report({
    at: isElsewhere && first !== undefined ? first.at : lack.at,
    severity,
    what: `Not judged: ${namesOf(entries)}. ${lack.of === '' ? `The block “${lack.block}”` : quoted(lack.of)} does not state ${quotedList([...words], 5)}.`,
    remedy: lack.question,
    ...(isElsewhere
      ? { related: [{ message: 'the model that does not say it', path: lack.path as string, ...lack.at }] }
      : { lacks: [...words] }),
  });
}

/** What is not judged, as much of it as can be read. */
function namesOf(entries: ReadonlySet<Entry>): string {
  const named: string[] = [];
  let length = 0;
  for (const entry of entries) {
    const words = entryInWords(entry);
    if (named.length === mostNamed || (named.length > 0 && length + words.length > mostCharacters)) break;
    named.push(words);
    length += words.length;
  }
  const more = entries.size - named.length;
  return [...named, ...(more > 0 ? [`${more} more`] : [])].join(', ');
}

function sayDraft(installation: Installation, { entries, open, asks }: Account, report: (report: Report) => void): void {
  const first = asks[0];
  const { site } = installation;
  if (first === undefined || site === undefined) return;
  const own = first.lack.path === undefined ? first.lack : undefined;
  report({
    at: own?.at ?? headPlace(site),
    severity: 'note',
    what: `A draft: judged ${entries.length - open.length} of ${entries.length}. ${asks.length === 1 ? 'One fact' : `${asks.length} facts`} would settle the rest.`,
    remedy: first.lack.question,
    ...(own === undefined
      ? {}
      : { lacks: asks.filter(({ lack }) => lack.path === undefined && lack.at.start === own.at.start).map(({ lack }) => lack.word) }),
  });
}
