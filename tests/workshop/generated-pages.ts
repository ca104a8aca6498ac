// What is written into pages: what a rule says of itself, as the first paragraph of “Why”, “What to do” and “Source”; and,
// where examples are from other texts, how to read them, as that of the examples. What else stands there is written by hand.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { allRules, type Rule } from '../../server/rules/index.ts';
import { root } from './generated-traceability.ts';

const widest = 120;

/** A paragraph as a page has it: a sentence, in lines that a person can read. */
function paragraph(text: string): string {
  const sentence = text.charAt(0).toUpperCase() + text.slice(1) + (text.endsWith('.') ? '' : '.');
  const lines: string[] = [];
  for (const word of sentence.split(' ')) {
    const line = lines.at(-1);
    if (line === undefined || line.length + 1 + word.length > widest) lines.push(word);
    else lines[lines.length - 1] = `${line} ${word}`;
  }
  return lines.join('\n');
}

/** A page whose section opens with this text, in place of the paragraph that it opened with. */
export function withOpening(page: string, section: string, text: string): string {
  const lines = page.split('\n');
  const heading = lines.indexOf(`## ${section}`);
  if (heading < 0) return page;
  const isLast = (line: string | undefined): boolean => line === undefined || line === '' || line.startsWith('#') || line.startsWith('```');
  let to = heading + 1;
  while (lines[to] === '') to++;
  while (!isLast(lines[to])) to++;
  const after = lines[to] === '' ? [] : [''];
  lines.splice(heading + 1, to - heading - 1, '', paragraph(text), ...after);
  return lines.join('\n');
}

/** A rule's page with what the rule says of itself. */
export function rulePageOf(rule: Rule, page: string): string {
  const own = { Why: rule.why, 'What to do': rule.remedy, Source: rule.source.text };
  return Object.entries(own).reduce((text, [section, said]) => withOpening(text, section, said), page);
}

const howToRead =
  'An example that begins with `# from` shows what differs from another text: a block stands in for the one of the same word and name, ' +
  '`…` for its lines that stay; `only` and `without` say what is left.';
const isHowToRead = (line: string | undefined): boolean => line?.startsWith(howToRead.slice(0, 60)) === true;

/** A page that says how its examples are read, and links to the base sites that they are from; nothing where all are whole. */
export function withBases(page: string): string {
  const names = [...new Set([...page.matchAll(/^# from ([a-z][a-z0-9-]*)/gm)].map(([, name]) => name as string))].sort();
  const section = page.includes('\n## Examples\n') ? 'Examples' : 'Example';
  const lines = page.split('\n');
  const first = lines.indexOf(`## ${section}`) + 2;
  if (first < 2) return page;
  if (isHowToRead(lines[first])) lines.splice(first, lines.indexOf('', first) - first + 1);
  if (names.length === 0) return lines.join('\n');
  const links = names.filter((name) => name !== 'above').map((name) => `[${name}](../../../examples/bases/${name}.gate)`);
  const told = [
    howToRead,
    ...(names.includes('above') ? ['“Above” is the nearest example above that is not itself from above.'] : []),
    ...(links.length === 0 ? [] : [`${links.join(' and ')} ${links.length === 1 ? 'is a whole site' : 'are whole sites'}.`]),
  ];
  lines.splice(first, 0, ...paragraph(told.join(' ')).split('\n'), '');
  return lines.join('\n');
}

/** The pages of all rules and figures, by their path. */
export function pages(): Record<string, string> {
  const all: Record<string, string> = {};
  for (const room of ['rules', 'figures'])
    for (const name of readdirSync(join(root, 'server', room)).sort()) {
      const path = `server/${room}/${name}/page.md`;
      if (!existsSync(join(root, path))) continue;
      const text = withBases(readFileSync(join(root, path), 'utf8').replaceAll('\r\n', '\n'));
      const rule = room === 'rules' ? allRules.find((one) => one.name === name) : undefined;
      all[path] = rule === undefined ? text : rulePageOf(rule, text);
    }
  return all;
}
