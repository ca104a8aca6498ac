// What asks for what: every rule under the document that it follows from, with the examples that hold it to that. A part of
// the manual.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { allRules } from '../../server/rules/index.ts';

/** The root of the repository, where this is bundled away from it; see generate.mjs. */
declare const pintleRoot: string | undefined;
export const root = typeof pintleRoot === 'string' ? pintleRoot : fileURLToPath(new URL('../..', import.meta.url));

type Rule = (typeof allRules)[number];

const standings = {
  published: 'published',
  derived: 'derived',
  'common practice': 'common practice',
  'from memory': 'from memory: decides no error',
} as const;

/** Documents, by how a source that speaks of them begins; the number of a standard tells its parts and years apart by itself. */
const documents: readonly (readonly [begins: RegExp, document: (found: RegExpExecArray) => string])[] = [
  [/^(EN(?: ISO)?) (\d+(?:-\d+)*)/, ([, body, number]) => `${body} ${number}`],
  [/^(IEC) (\d+(?:-\d+)*)/, ([, body, number]) => `${body} ${number}`],
  [/^(ASTM) ([A-Z]\d+)/, ([, body, number]) => `${body} ${number}`],
  [/^BS 7671/, () => 'BS 7671'],
  [/^UL 325/, () => 'UL 325'],
  [/^ASR A1\.7/, () => 'ASR A1.7'],
  [/^CPSC/, () => 'CPSC'],
  [/^BGR 232/, () => 'BGR 232'],
  [/^the language itself/, () => 'The language itself'],
  [/^the (?:model|range that the panel)/, () => 'What the models declare'],
];

const derived = 'Worked out: geometry, mechanics, circuits';
const practice = 'Common practice, no source';
/** What no document asks for stands last. */
const last: readonly string[] = ['What the models declare', derived, practice, 'The language itself'];

/** The document that a rule follows from in the first place; a document that it names further on stands in the requirement. */
export function documentOf({ source }: Pick<Rule, 'source'>): string {
  for (const [begins, document] of documents) {
    const found = begins.exec(source.text);
    if (found !== null) return document(found);
  }
  if (source.standing === 'derived') return derived;
  return source.standing === 'common practice' ? practice : 'Other documents';
}

/** How many examples of each kind stand on the page of a rule; each of them is run as a test. */
function examplesOf(name: string): { readonly flagged: number; readonly sound: number } {
  const page = readFileSync(join(root, 'server', 'rules', name, 'page.md'), 'utf8');
  const count = (kind: string): number =>
    page.split(/\r?\n/).filter((line) => line.startsWith('```gate ') && line.slice(8).trim().split(/\s+/)[0] === kind).length;
  return { flagged: count('flagged'), sound: count('sound') };
}

/** The section of the manual, as lines; `table` writes a table. */
export function traceability(table: (heads: readonly string[], rows: readonly (readonly string[])[]) => string[]): string[] {
  const groups = new Map<string, Rule[]>();
  for (const rule of allRules) {
    const document = documentOf(rule);
    groups.set(document, [...(groups.get(document) ?? []), rule]);
  }
  const place = (document: string): number => last.indexOf(document);
  const order = [...groups.keys()].sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1));
  const out = [
    '## What asks for what',
    '',
    'Every rule under what it follows from. The examples stand on the page of the rule: in a flagged one the rule finds what it',
    'is there for, in a sound one it finds nothing, and both are run as tests. How far a source can be trusted stands behind',
    'it: *published* where the number or demand is printed there, *derived* where it is worked out from what the file states,',
    '*common practice* where no document asks for it, *from memory* where the document was not at hand.',
    '',
  ];
  for (const document of order) {
    const rules = [...(groups.get(document) ?? [])].sort((a, b) =>
      a.source.text < b.source.text ? -1 : a.source.text > b.source.text ? 1 : a.name < b.name ? -1 : 1,
    );
    out.push(
      `### ${document}`,
      '',
      ...table(
        ['what asks for it', 'rule', 'what it finds', 'flagged examples', 'sound examples', 'standing'],
        rules.map((rule) => {
          const { flagged, sound } = examplesOf(rule.name);
          return [
            rule.source.text,
            `[${rule.name}](../rules/${rule.name}/page.md)`,
            rule.title,
            String(flagged),
            String(sound),
            standings[rule.source.standing],
          ];
        }),
      ),
      '',
    );
  }
  return out;
}
