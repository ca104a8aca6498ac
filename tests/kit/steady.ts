// What formatting a text must leave as it is: whatever is found in it and offered for it, but for blanks and the spelling of signs.
import { parse, print } from '../../grammar/index.ts';
import { type Analysis, fixes, formatted } from '../../server/engine/index.ts';

/** Without blanks, and with signs in one spelling: what the canonical form may change. */
const plain = (text: string): string =>
  text
    .replace(/\s+/g, '')
    .replace(/\+-/g, '±')
    .replace(/\.{2,3}/g, '..')
    .replace(/\u2212/g, '-')
    .replace(/\\/g, '');

/** Every finding with what it says, the text that it stands on and what is offered; in one order. */
function toldOf(analysis: Analysis): string[] {
  const { text } = analysis;
  const offered = fixes(analysis, { start: 0, end: text.length });
  return [...analysis.findings, ...analysis.accepted.map((finding) => ({ ...finding, rule: `accepted ${finding.rule}` }))]
    .map((finding) =>
      [
        finding.rule,
        finding.severity,
        ...[finding.what, finding.why, finding.remedy, text.slice(finding.start, finding.end)].map(plain),
        ...finding.related.map((related) =>
          plain(related.message + (related.path === undefined ? text.slice(related.start, related.end) : '')),
        ),
        ...offered
          .filter((fix) => fix.finding.rule === finding.rule && fix.finding.start === finding.start && fix.finding.end === finding.end)
          .map((fix) =>
            plain(`${fix.class} ${fix.title} ${fix.edits.map((edit) => `${text.slice(edit.start, edit.end)}→${edit.text}`).join(' ')}`),
          ),
      ].join(' | '),
    )
    .sort();
}

/** What formatting a text changes though it must not; nothing, as it should be, and for a text whose shape cannot be read. */
export function unsteady(text: string, judge: (text: string) => Analysis): string[] {
  const found = formatted(text);
  if (!('text' in found)) return [];
  const faults: string[] = [];
  const again = formatted(found.text);
  if (!('text' in again)) return [`what was formatted cannot be formatted: ${again.problem}`];
  if (again.text !== found.text) faults.push(`formatted twice it is another text: ${JSON.stringify(again.text)}`);
  if (found.text.replace(/\r\n?/g, '\n') !== print(parse(text))) faults.push('it is not the canonical form');
  const [before, after] = [toldOf(judge(text)), toldOf(judge(found.text))];
  const [had, has] = [new Set(before), new Set(after)];
  for (const one of before) if (!has.has(one)) faults.push(`- ${one}`);
  for (const one of after) if (!had.has(one)) faults.push(`+ ${one}`);
  if (faults.length === 0 && before.length !== after.length) faults.push(`${before.length} findings became ${after.length}`);
  return faults;
}
