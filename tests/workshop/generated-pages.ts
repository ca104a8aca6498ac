// What a rule says of itself, written into its page: the first paragraph of “Why”, “What to do” and “Source”. What else such a section
// says stands in paragraphs below it and is written by hand.
import { existsSync, readFileSync } from 'node:fs';
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
export const rulePageOf = (rule: Rule, page: string): string =>
  [['Why', rule.why], ['What to do', rule.remedy], ['Source', rule.source.text]].reduce((text, [section = '', own = '']) => withOpening(text, section, own), page);

/** The pages of all rules, by their path. */
export function rulePages(): Record<string, string> {
  const pages: Record<string, string> = {};
  for (const rule of allRules) {
    const path = `server/rules/${rule.name}/page.md`;
    const full = join(root, path);
    if (existsSync(full)) pages[path] = rulePageOf(rule, readFileSync(full, 'utf8').replaceAll('\r\n', '\n'));
  }
  return pages;
}
